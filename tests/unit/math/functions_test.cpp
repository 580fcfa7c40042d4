// Proves that exp, log and power stay within their stated distance of the C library and keep the same bits.

#include "sim/math/functions.hpp"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>

#include "sim/math/hash.hpp"
#include "sim/math/random.hpp"

namespace emberpath::math {
namespace {

/// Distance in units in the last place between two finite numbers of one sign.
std::int64_t ulps(double a, double b) {
    const std::int64_t between = std::bit_cast<std::int64_t>(a) - std::bit_cast<std::int64_t>(b);
    return between < 0 ? -between : between;
}

TEST(Functions, ExpIsWithinTwoUlpsOfTheCLibrary) {
    Random random(1, "exp");
    std::int64_t worst = 0;
    for (int i = 0; i < 400000; ++i) {
        const double span =
            i % 2 == 0 ? 1416.0 : 8.0;  // the whole range, and where the model works
        const double x = (random.uniform() - 0.5) * span;
        worst = std::max(worst, ulps(exp(x), std::exp(x)));
    }
    EXPECT_LE(worst, 2);
}

TEST(Functions, LogIsWithinTwoUlpsOfTheCLibrary) {
    Random random(2, "log");
    std::int64_t worst = 0;
    for (int i = 0; i < 400000; ++i) {
        const double x = i % 2 == 0 ? std::exp((random.uniform() - 0.5) * 1400.0)
                                    : 0.5 + 1.5 * random.uniform();  // cancellation near one
        worst = std::max(worst, ulps(log(x), std::log(x)));
    }
    EXPECT_LE(worst, 2);
}

TEST(Functions, KnownAnswers) {
    EXPECT_EQ(exp(0.0), 1.0);
    EXPECT_EQ(log(1.0), 0.0);
    EXPECT_DOUBLE_EQ(exp(1.0), 2.718281828459045);
    EXPECT_DOUBLE_EQ(log(2.0), 0.6931471805599453);
    EXPECT_DOUBLE_EQ(log(10.0), 2.302585092994046);
    EXPECT_DOUBLE_EQ(power(2.0, 0.5), std::sqrt(2.0));
    EXPECT_DOUBLE_EQ(power(10.0, -3.0), 1e-3);
}

TEST(Functions, ExpIsClampedOutsideItsRange) {
    EXPECT_EQ(exp(-1e9), exp(-708.0));
    EXPECT_EQ(exp(1e9), exp(709.0));
    EXPECT_GT(exp(-1e9), 0.0);
    EXPECT_TRUE(std::isfinite(exp(1e9)));
}

TEST(Functions, LogUndoesExp) {
    for (double x = -700.0; x <= 700.0; x += 0.37)
        EXPECT_NEAR(log(exp(x)), x, 5e-16 + 2e-16 * std::abs(x));
}

TEST(Functions, PowerFollowsTheCLibrary) {
    Random random(3, "power");
    for (int i = 0; i < 20000; ++i) {
        const double x = std::exp((random.uniform() - 0.5) * 20.0);
        const double y = (random.uniform() - 0.5) * 8.0;
        // The rounding of y log x is magnified by its size.
        const double expected = std::pow(x, y);
        EXPECT_NEAR(power(x, y), expected, (4e-16 + 4e-16 * std::abs(y * std::log(x))) * expected);
    }
}

TEST(Functions, EveryLaneOfAPackHasTheBitsOfTheScalar) {
    Random random(4, "lanes");
    for (int i = 0; i < 5000; ++i) {
        Pack<8> x, y;
        for (std::size_t k = 0; k < 8; ++k) {
            set_lane(x, k, (random.uniform() - 0.5) * 1500.0);
            set_lane(y, k, std::exp((random.uniform() - 0.5) * 100.0));
        }
        const Pack<8> e = exp(x), l = log(y), p = power(y, 0.8);
        for (std::size_t k = 0; k < 8; ++k) {
            EXPECT_EQ(lane(e, k), exp(lane(x, k)));
            EXPECT_EQ(lane(l, k), log(lane(y, k)));
            EXPECT_EQ(lane(p, k), power(lane(y, k), 0.8));
        }
    }
}

// The fingerprint was taken once with g++ 12 at -O2. Every compiler, optimisation level and machine must
// give the same one, or records made elsewhere could not be verified.
TEST(Functions, KeepTheSameBitsEverywhere) {
    Random random(5, "bits");
    Hash hash;
    for (int i = 0; i < 10000; ++i) {
        const double x = (random.uniform() - 0.5) * 100.0;
        hash.add(exp(x));
        hash.add(log(magnitude(x) + 1e-9));
        hash.add(power(magnitude(x) + 1e-9, 0.65));
    }
    EXPECT_EQ(hash.text(), "0bb0367d74903ec0");
}

}  // namespace
}  // namespace emberpath::math
