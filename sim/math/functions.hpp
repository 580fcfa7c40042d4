#pragma once
/// exp and log that give the same bits with every compiler, flag set and pack width.
///
/// Method    Cody & Waite (1980) range reduction, then a polynomial of the remainder; no tables.
/// Range     exp: clamped to [-708, 709]; log: x > 0 and normal (subnormal or negative x is not defined)
/// Accuracy  within 2 units in the last place of the C library over the range
/// Errors    none: runs in every RK4 stage
/// Checked   tests/unit/math/functions_test.cpp

#include "sim/math/pack.hpp"

namespace emberpath::math {

namespace detail {

// The bit pattern of a Real as unsigned words, and back.
inline std::uint64_t words(double x) {
    return std::bit_cast<std::uint64_t>(x);
}
inline double from_words(std::uint64_t w, double) {
    return std::bit_cast<double>(w);
}
template <std::size_t N, class Isa>
typename Pack<N, Isa>::Words words(const Pack<N, Isa>& x) {
    return std::bit_cast<typename Pack<N, Isa>::Words>(x.v);
}
template <std::size_t N, class Isa>
Pack<N, Isa> from_words(typename Pack<N, Isa>::Words w, const Pack<N, Isa>&) {
    return Pack<N, Isa>(std::bit_cast<typename Pack<N, Isa>::Values>(w));
}

// Adding this constant rounds to an integer and leaves that integer in the low mantissa bits.
inline constexpr double rounding_constant = 6755399441055744.0;  // 1.5 * 2^52
inline constexpr double ln2_high = 6.93147180369123816490e-01;
inline constexpr double ln2_low = 1.90821492927058770002e-10;

}  // namespace detail

template <class Real>
[[nodiscard]] Real exp(const Real& argument) {
    const Real x = clamp(argument, Real(-708.0), Real(709.0));
    const Real shifted = x * 1.44269504088896340736 + detail::rounding_constant;
    const Real whole = shifted - detail::rounding_constant;
    const Real r = (x - whole * detail::ln2_high) - whole * detail::ln2_low;
    // Taylor coefficients 1/k!; |r| <= 0.347, so the first neglected term is below 5e-18. Even and odd powers
    // run beside each other: half the waiting of one long chain.
    const Real z = r * r;
    Real even = Real(1.0 / 479001600.0);
    even = even * z + 1.0 / 3628800.0;
    even = even * z + 1.0 / 40320.0;
    even = even * z + 1.0 / 720.0;
    even = even * z + 1.0 / 24.0;
    even = even * z + 0.5;
    Real odd = Real(1.0 / 6227020800.0);
    odd = odd * z + 1.0 / 39916800.0;
    odd = odd * z + 1.0 / 362880.0;
    odd = odd * z + 1.0 / 5040.0;
    odd = odd * z + 1.0 / 120.0;
    odd = odd * z + 1.0 / 6.0;
    const Real p = ((odd * r + even) * r + 1.0) * r + 1.0;
    const auto power = (detail::words(shifted) + 1023U) << 52;
    return p * detail::from_words(power, x);
}

template <class Real>
[[nodiscard]] Real log(const Real& x) {
    // x = m 2^e with m in [sqrt(1/2), sqrt(2)): subtract the pattern of sqrt(1/2) before taking e.
    const auto bits = detail::words(x);
    const auto offset = bits - 0x3fe6a09e667f3bcdU;
    const auto biased = (offset + (std::uint64_t{1024} << 52)) >> 52;  // e + 1024, positive
    const auto mantissa = bits - ((biased - 1024U) << 52);
    const Real m = detail::from_words(mantissa, x);
    const Real e = detail::from_words(biased | 0x4330000000000000U, x) - 4503599627371520.0;
    const Real s = (m - 1.0) / (m + 1.0);
    const Real z = s * s;
    // 2 artanh(s) = 2 s (1 + z/3 + z^2/5 + ...); z <= 0.0295, first neglected term below 1e-17.
    const Real z2 = z * z;
    Real even = Real(1.0 / 19.0);
    even = even * z2 + 1.0 / 15.0;
    even = even * z2 + 1.0 / 11.0;
    even = even * z2 + 1.0 / 7.0;
    even = even * z2 + 1.0 / 3.0;
    Real odd = Real(1.0 / 21.0);
    odd = odd * z2 + 1.0 / 17.0;
    odd = odd * z2 + 1.0 / 13.0;
    odd = odd * z2 + 1.0 / 9.0;
    odd = odd * z2 + 1.0 / 5.0;
    const Real p = odd * z + even;
    return e * detail::ln2_high + (2.0 * s + (2.0 * s * z * p + e * detail::ln2_low));
}

/// x^y for x > 0.
template <class Real>
[[nodiscard]] Real power(const Real& x, double y) {
    return exp(Real(y) * log(x));
}

}  // namespace emberpath::math
