#pragma once
/// A pack of doubles that behaves like one double, so that one templated source serves the trainee's
/// heater (Real = double) and eight shadow heaters at once (Real = Pack<8>).
///
/// Every operation is IEEE-exact and element-wise: lane i of a pack run has the bits of the scalar run.
/// Checked   tests/unit/math/pack_test.cpp

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

namespace emberpath::math {

/// Instruction sets get types of their own, so that code compiled for one never links into the other.
struct Baseline {};
struct Wide {};

/// The compiler's vector types. Spelled out per width: g++ 12 drops the attribute when N is dependent.
template <std::size_t N>
struct VectorOf;
template <>
struct VectorOf<4> {
    typedef double Values __attribute__((vector_size(32)));
    typedef std::uint64_t Words __attribute__((vector_size(32)));
    typedef std::int64_t Bits __attribute__((vector_size(32)));
};
template <>
struct VectorOf<8> {
    typedef double Values __attribute__((vector_size(64)));
    typedef std::uint64_t Words __attribute__((vector_size(64)));
    typedef std::int64_t Bits __attribute__((vector_size(64)));
};

template <std::size_t N, class Isa>
struct PackMask {
    typename VectorOf<N>::Bits v;
};

template <std::size_t N, class Isa = Baseline>
struct Pack {
    using Values = typename VectorOf<N>::Values;
    using Words = typename VectorOf<N>::Words;
    Values v;

    Pack() : v{} {}
    Pack(double same) : v(same - Values{}) {}  // NOLINT: implicit, so that packs mix with literals
    explicit Pack(Values values) : v(values) {}

    friend Pack operator+(const Pack& a, const Pack& b) { return Pack(a.v + b.v); }
    friend Pack operator-(const Pack& a, const Pack& b) { return Pack(a.v - b.v); }
    friend Pack operator*(const Pack& a, const Pack& b) { return Pack(a.v * b.v); }
    friend Pack operator/(const Pack& a, const Pack& b) { return Pack(a.v / b.v); }
    friend Pack operator-(const Pack& a) { return Pack(-a.v); }
    Pack& operator+=(const Pack& b) { return v += b.v, *this; }
    Pack& operator-=(const Pack& b) { return v -= b.v, *this; }
    Pack& operator*=(const Pack& b) { return v *= b.v, *this; }
    Pack& operator/=(const Pack& b) { return v /= b.v, *this; }

    using Mask = PackMask<N, Isa>;
    friend Mask operator<(const Pack& a, const Pack& b) { return {a.v < b.v}; }
    friend Mask operator>(const Pack& a, const Pack& b) { return {a.v > b.v}; }
    friend Mask operator<=(const Pack& a, const Pack& b) { return {a.v <= b.v}; }
    friend Mask operator>=(const Pack& a, const Pack& b) { return {a.v >= b.v}; }
    friend Mask operator==(const Pack& a, const Pack& b) { return {a.v == b.v}; }
    friend Mask operator!=(const Pack& a, const Pack& b) { return {a.v != b.v}; }
};

/// What a comparison of two Reals yields: bool, or a mask per lane.
template <class Real>
struct MaskOf {
    using type = bool;
};
template <std::size_t N, class Isa>
struct MaskOf<Pack<N, Isa>> {
    using type = PackMask<N, Isa>;
};
template <class Real>
using Mask = typename MaskOf<Real>::type;

template <class Real>
inline constexpr std::size_t lanes = 1;
template <std::size_t N, class Isa>
inline constexpr std::size_t lanes<Pack<N, Isa>> = N;

// Choice without branches. Both alternatives are always evaluated.
inline double select(bool condition, double yes, double no) {
    return condition ? yes : no;
}
template <std::size_t N, class Isa>
Pack<N, Isa> select(const PackMask<N, Isa>& condition, const Pack<N, Isa>& yes,
                    const Pack<N, Isa>& no) {
    return Pack<N, Isa>(condition.v ? yes.v : no.v);
}
template <std::size_t N, class Isa>
Pack<N, Isa> select(const PackMask<N, Isa>& condition, const Pack<N, Isa>& yes, double no) {
    return select(condition, yes, Pack<N, Isa>(no));
}
template <std::size_t N, class Isa>
Pack<N, Isa> select(const PackMask<N, Isa>& condition, double yes, const Pack<N, Isa>& no) {
    return select(condition, Pack<N, Isa>(yes), no);
}
template <std::size_t N, class Isa>
Pack<N, Isa> select(const PackMask<N, Isa>& condition, double yes, double no) {
    return select(condition, Pack<N, Isa>(yes), Pack<N, Isa>(no));
}

inline bool both(bool a, bool b) {
    return a && b;
}
inline bool either(bool a, bool b) {
    return a || b;
}
inline bool negate(bool a) {
    return !a;
}
inline bool any(bool a) {
    return a;
}
template <std::size_t N, class Isa>
PackMask<N, Isa> both(const PackMask<N, Isa>& a, const PackMask<N, Isa>& b) {
    return {a.v & b.v};
}
template <std::size_t N, class Isa>
PackMask<N, Isa> either(const PackMask<N, Isa>& a, const PackMask<N, Isa>& b) {
    return {a.v | b.v};
}
template <std::size_t N, class Isa>
PackMask<N, Isa> negate(const PackMask<N, Isa>& a) {
    return {~a.v};
}
template <std::size_t N, class Isa>
bool any(const PackMask<N, Isa>& a) {
    for (std::size_t i = 0; i < N; ++i)
        if (a.v[i] != 0) return true;
    return false;
}

template <class Real>
Real minimum(const Real& a, const Real& b) {
    return select(a < b, a, b);
}
template <class Real>
Real maximum(const Real& a, const Real& b) {
    return select(a > b, a, b);
}
template <class Real>
Real clamp(const Real& x, const Real& low, const Real& high) {
    return minimum(maximum(x, low), high);
}
template <class Real>
Real magnitude(const Real& x) {
    return select(x < Real(0.0), -x, x);
}

inline double square_root(double x) {
    return __builtin_sqrt(x);
}
template <std::size_t N, class Isa>
Pack<N, Isa> square_root(const Pack<N, Isa>& x) {
    Pack<N, Isa> root;
    for (std::size_t i = 0; i < N; ++i) root.v[i] = __builtin_sqrt(x.v[i]);
    return root;
}

inline double lane(double x, std::size_t) {
    return x;
}
inline void set_lane(double& x, std::size_t, double value) {
    x = value;
}
template <std::size_t N, class Isa>
double lane(const Pack<N, Isa>& x, std::size_t i) {
    return x.v[i];
}
template <std::size_t N, class Isa>
void set_lane(Pack<N, Isa>& x, std::size_t i, double value) {
    x.v[i] = value;
}

}  // namespace emberpath::math
