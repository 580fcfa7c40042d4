// Proves that a pack behaves as so many independent doubles: every lane keeps the bits of the scalar.

#include "sim/math/pack.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "sim/math/random.hpp"

namespace emberpath::math {
namespace {

template <class P>
class Packs : public testing::Test {};
using Widths = testing::Types<Pack<4>, Pack<8>, Pack<8, Wide>>;
TYPED_TEST_SUITE(Packs, Widths);

template <class P>
P drawn(Random& random, double span = 20.0) {
    P pack;
    for (std::size_t i = 0; i < lanes<P>; ++i) set_lane(pack, i, (random.uniform() - 0.5) * span);
    return pack;
}

TYPED_TEST(Packs, AllIsTrueOnlyWhenEveryLaneIs) {
    for (std::size_t odd = 0; odd < lanes<TypeParam>; ++odd) {
        TypeParam pack(1.0);
        EXPECT_TRUE(all(pack > TypeParam(0.0)));
        set_lane(pack, odd, -1.0);
        EXPECT_FALSE(all(pack > TypeParam(0.0))) << odd;
        EXPECT_TRUE(any(pack > TypeParam(0.0))) << odd;
    }
    EXPECT_TRUE(all(true));
    EXPECT_FALSE(all(false));
}

/// One expression with every operator, written once for scalar and pack.
template <class Real>
Real everything(const Real& a, const Real& b) {
    Real c = (a + b) * (a - b) / (magnitude(b) + 0.1) - 2.0 * a;
    c += a;
    c *= Real(0.5);
    c -= b;
    c /= Real(3.0);
    const Real low = minimum(a, b), high = maximum(a, b);
    const auto inside = both(c > low, negate(c >= high));
    const auto outside = either(c<low, c> high);
    return select(inside, square_root(magnitude(c)), clamp(-c, low, high)) +
           select(outside, 1.0, Real(0.0)) + select(a <= b, Real(2.0), 0.0) + select(a == b, a, b) +
           select(a != b, 4.0, 8.0);
}

TYPED_TEST(Packs, EveryLaneHasTheBitsOfTheScalar) {
    Random random(11, "pack");
    for (int n = 0; n < 2000; ++n) {
        const auto a = drawn<TypeParam>(random);
        const auto b = n % 5 == 0 ? a : drawn<TypeParam>(random);
        const TypeParam all = everything(a, b);
        for (std::size_t i = 0; i < lanes<TypeParam>; ++i)
            EXPECT_EQ(lane(all, i), everything(lane(a, i), lane(b, i)));
    }
}

TYPED_TEST(Packs, StartAtZeroAndSpreadOneNumber) {
    const TypeParam zero;
    const TypeParam same(-2.5);
    const TypeParam minus_zero(-0.0);
    for (std::size_t i = 0; i < lanes<TypeParam>; ++i) {
        EXPECT_EQ(lane(zero, i), 0.0);
        EXPECT_EQ(lane(same, i), -2.5);
        EXPECT_TRUE(std::signbit(lane(minus_zero, i)));
    }
}

TYPED_TEST(Packs, SettingALaneLeavesTheOthersAlone) {
    for (std::size_t i = 0; i < lanes<TypeParam>; ++i) {
        TypeParam pack(1.0);
        set_lane(pack, i, 7.0);
        for (std::size_t k = 0; k < lanes<TypeParam>; ++k)
            EXPECT_EQ(lane(pack, k), k == i ? 7.0 : 1.0);
        EXPECT_TRUE(any(pack > TypeParam(6.0)));
        EXPECT_FALSE(any(pack > TypeParam(7.0)));
        EXPECT_FALSE(any(both(pack > TypeParam(6.0), pack < TypeParam(6.5))));
    }
}

TYPED_TEST(Packs, BadNumbersStayInTheirLane) {
    TypeParam pack(4.0);
    set_lane(pack, 1, std::numeric_limits<double>::quiet_NaN());
    set_lane(pack, 2, -4.0);
    const TypeParam root = square_root(pack);
    EXPECT_EQ(lane(root, 0), 2.0);
    EXPECT_TRUE(std::isnan(lane(root, 1)));
    EXPECT_TRUE(std::isnan(lane(root, 2)));
    EXPECT_EQ(lane(root, 3), 2.0);
}

TEST(Scalars, HaveOneLane) {
    double x = 1.0;
    set_lane(x, 0, 3.0);
    EXPECT_EQ(lane(x, 0), 3.0);
    EXPECT_EQ(lanes<double>, 1U);
    EXPECT_EQ((lanes<Pack<8>>), 8U);
    EXPECT_EQ(clamp(5.0, 0.0, 1.0), 1.0);
    EXPECT_EQ(clamp(-5.0, 0.0, 1.0), 0.0);
    EXPECT_EQ(magnitude(-2.0), 2.0);
    EXPECT_TRUE(either(false, true));
    EXPECT_FALSE(both(false, true));
}

}  // namespace
}  // namespace emberpath::math
