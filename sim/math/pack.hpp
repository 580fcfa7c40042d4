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

/// The compiler's vector types. Wide ones are exactly one register: g++ 12 takes longer vectors apart
/// value by value in comparisons. In baseline instructions one long vector is what it handles best.
/// Spelled out per width: g++ 12 drops the attribute when N is dependent.
template <std::size_t N, class Isa>
struct RegisterOf;
template <>
struct RegisterOf<8, Baseline> {
    typedef double Values __attribute__((vector_size(64)));
    typedef std::uint64_t Words __attribute__((vector_size(64)));
    typedef std::int64_t Bits __attribute__((vector_size(64)));
};
template <>
struct RegisterOf<4, Baseline> {
    typedef double Values __attribute__((vector_size(32)));
    typedef std::uint64_t Words __attribute__((vector_size(32)));
    typedef std::int64_t Bits __attribute__((vector_size(32)));
};
template <std::size_t N>
struct RegisterOf<N, Wide> : RegisterOf<4, Baseline> {};

/// N lanes as registers of one kind.
template <std::size_t N, class Isa, class Register>
struct Registers {
    static constexpr std::size_t size = sizeof(Register) / sizeof(double);
    static constexpr std::size_t count = N / size;
    static_assert(N % size == 0);
    Register r[count];
};

template <std::size_t N, class Isa>
struct PackMask {
    using Bits = Registers<N, Isa, typename RegisterOf<N, Isa>::Bits>;
    Bits v;
    [[nodiscard]] bool lane(std::size_t i) const {
        return v.r[i / Bits::size][i % Bits::size] != 0;
    }
};

/// The bit patterns of a pack, with the few operations exp and log need.
template <std::size_t N, class Isa>
struct PackWords : Registers<N, Isa, typename RegisterOf<N, Isa>::Words> {
    template <class Do>
    [[nodiscard]] PackWords each(Do act) const {
        PackWords out;
        for (std::size_t k = 0; k < PackWords::count; ++k) out.r[k] = act(this->r[k]);
        return out;
    }
    friend PackWords operator+(const PackWords& a, std::uint64_t b) {
        return a.each([b](auto w) { return w + b; });
    }
    friend PackWords operator-(const PackWords& a, std::uint64_t b) {
        return a.each([b](auto w) { return w - b; });
    }
    friend PackWords operator|(const PackWords& a, std::uint64_t b) {
        return a.each([b](auto w) { return w | b; });
    }
    friend PackWords operator<<(const PackWords& a, int by) {
        return a.each([by](auto w) { return w << by; });
    }
    friend PackWords operator>>(const PackWords& a, int by) {
        return a.each([by](auto w) { return w >> by; });
    }
    friend PackWords operator-(const PackWords& a, const PackWords& b) {
        PackWords out;
        for (std::size_t k = 0; k < PackWords::count; ++k) out.r[k] = a.r[k] - b.r[k];
        return out;
    }
};

template <std::size_t N, class Isa = Baseline>
struct Pack {
    using Values = Registers<N, Isa, typename RegisterOf<N, Isa>::Values>;
    using Words = PackWords<N, Isa>;
    using Mask = PackMask<N, Isa>;
    Values v;

    Pack() : v{} {}
    Pack(double same) {  // NOLINT: implicit, so that packs mix with literals
        for (auto& r : v.r) r = same - typename RegisterOf<N, Isa>::Values{};
    }
    explicit Pack(const Values& values) : v(values) {}

    friend Pack operator+(const Pack& a, const Pack& b) {
        return each(a, b, [](auto x, auto y) { return x + y; });
    }
    friend Pack operator-(const Pack& a, const Pack& b) {
        return each(a, b, [](auto x, auto y) { return x - y; });
    }
    friend Pack operator*(const Pack& a, const Pack& b) {
        return each(a, b, [](auto x, auto y) { return x * y; });
    }
    friend Pack operator/(const Pack& a, const Pack& b) {
        return each(a, b, [](auto x, auto y) { return x / y; });
    }
    friend Pack operator-(const Pack& a) {
        return each(a, a, [](auto x, auto) { return -x; });
    }
    Pack& operator+=(const Pack& b) { return *this = *this + b; }
    Pack& operator-=(const Pack& b) { return *this = *this - b; }
    Pack& operator*=(const Pack& b) { return *this = *this * b; }
    Pack& operator/=(const Pack& b) { return *this = *this / b; }

    friend Mask operator<(const Pack& a, const Pack& b) {
        return compare(a, b, [](auto x, auto y) { return x < y; });
    }
    friend Mask operator>(const Pack& a, const Pack& b) {
        return compare(a, b, [](auto x, auto y) { return x > y; });
    }
    friend Mask operator<=(const Pack& a, const Pack& b) {
        return compare(a, b, [](auto x, auto y) { return x <= y; });
    }
    friend Mask operator>=(const Pack& a, const Pack& b) {
        return compare(a, b, [](auto x, auto y) { return x >= y; });
    }
    friend Mask operator==(const Pack& a, const Pack& b) {
        return compare(a, b, [](auto x, auto y) { return x == y; });
    }
    friend Mask operator!=(const Pack& a, const Pack& b) {
        return compare(a, b, [](auto x, auto y) { return x != y; });
    }

  private:
    template <class Do>
    static Pack each(const Pack& a, const Pack& b, Do act) {
        Pack out;
        for (std::size_t k = 0; k < Values::count; ++k) out.v.r[k] = act(a.v.r[k], b.v.r[k]);
        return out;
    }
    template <class Do>
    static Mask compare(const Pack& a, const Pack& b, Do act) {
        Mask out;
        for (std::size_t k = 0; k < Values::count; ++k) out.v.r[k] = act(a.v.r[k], b.v.r[k]);
        return out;
    }
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
    Pack<N, Isa> out;
    for (std::size_t k = 0; k < out.v.count; ++k)
        out.v.r[k] = condition.v.r[k] ? yes.v.r[k] : no.v.r[k];
    return out;
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
    PackMask<N, Isa> out;
    for (std::size_t k = 0; k < out.v.count; ++k) out.v.r[k] = a.v.r[k] & b.v.r[k];
    return out;
}
template <std::size_t N, class Isa>
PackMask<N, Isa> either(const PackMask<N, Isa>& a, const PackMask<N, Isa>& b) {
    PackMask<N, Isa> out;
    for (std::size_t k = 0; k < out.v.count; ++k) out.v.r[k] = a.v.r[k] | b.v.r[k];
    return out;
}
template <std::size_t N, class Isa>
PackMask<N, Isa> negate(const PackMask<N, Isa>& a) {
    PackMask<N, Isa> out;
    for (std::size_t k = 0; k < out.v.count; ++k) out.v.r[k] = ~a.v.r[k];
    return out;
}
template <std::size_t N, class Isa>
bool any(const PackMask<N, Isa>& a) {
    for (std::size_t i = 0; i < N; ++i)
        if (a.lane(i)) return true;
    return false;
}

/// True when every lane is: the work of an alternative that no lane would choose may then be left out. Nothing
/// else may hang on it, or a lane's bits would depend on its neighbours.
inline bool all(bool a) {
    return a;
}
template <std::size_t N, class Isa>
bool all(const PackMask<N, Isa>& a) {
    auto every = a.v.r[0];
    for (std::size_t k = 1; k < a.v.count; ++k) every &= a.v.r[k];
    bool yes = true;
    for (std::size_t i = 0; i < PackMask<N, Isa>::Bits::size; ++i) yes = yes && every[i] != 0;
    return yes;
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

inline double lane(double x, std::size_t) {
    return x;
}
inline void set_lane(double& x, std::size_t, double value) {
    x = value;
}
template <std::size_t N, class Isa>
double lane(const Pack<N, Isa>& x, std::size_t i) {
    return x.v.r[i / x.v.size][i % x.v.size];
}
template <std::size_t N, class Isa>
void set_lane(Pack<N, Isa>& x, std::size_t i, double value) {
    x.v.r[i / x.v.size][i % x.v.size] = value;
}

inline double square_root(double x) {
    return __builtin_sqrt(x);
}
template <std::size_t N, class Isa>
Pack<N, Isa> square_root(const Pack<N, Isa>& x) {
    Pack<N, Isa> root;
    for (std::size_t i = 0; i < N; ++i) set_lane(root, i, __builtin_sqrt(lane(x, i)));
    return root;
}

}  // namespace emberpath::math
