// Proves that generators repeat, that streams of one seed are independent, and their known answers.

#include "sim/math/random.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "sim/math/hash.hpp"

namespace emberpath::math {
namespace {

TEST(RandomNumbers, FollowThePublishedSplitmix64) {
    // First outputs for seed 1234567, as printed with the reference implementation of splitmix64.
    Random random(1234567);
    EXPECT_EQ(random.next(), 6457827717110365317U);
    EXPECT_EQ(random.next(), 3203168211198807973U);
    EXPECT_EQ(random.next(), 9817491932198370423U);
    EXPECT_EQ(random.next(), 4593380528125082431U);
    EXPECT_EQ(random.next(), 16408922859458223821U);
}

TEST(RandomNumbers, RepeatForTheSameSeedAndPurpose) {
    Random a(42, "wind"), b(42, "wind"), c(43, "wind");
    bool differs = false;
    for (int i = 0; i < 100; ++i) {
        const std::uint64_t drawn = a.next();
        EXPECT_EQ(drawn, b.next());
        differs = differs || drawn != c.next();
    }
    EXPECT_TRUE(differs);
}

TEST(RandomNumbers, DrawingFromOneStreamNeverMovesAnother) {
    Random alone(42, "manometer");
    Random first(42, "manometer"), other(42, "analyser");
    for (int i = 0; i < 100; ++i) {
        for (int k = 0; k < i % 7; ++k) (void)other.next();
        EXPECT_EQ(alone.next(), first.next());
    }
}

double correlation(Random& a, Random& b) {
    constexpr int count = 100000;
    double sum = 0.0;
    for (int i = 0; i < count; ++i) sum += (a.uniform() - 0.5) * (b.uniform() - 0.5);
    return 12.0 * sum / count;
}

TEST(RandomNumbers, StreamsOfOneSeedAreUncorrelated) {
    const std::vector<const char*> purposes{"wind", "analyser", "manometer", "customer"};
    for (std::size_t i = 0; i < purposes.size(); ++i)
        for (std::size_t k = 0; k < i; ++k) {
            Random a(7, purposes[i]), b(7, purposes[k]);
            EXPECT_LT(std::abs(correlation(a, b)), 5.0 / std::sqrt(100000.0));
        }
}

TEST(RandomNumbers, NeighbouringSeedsAreUncorrelated) {
    for (std::uint64_t seed = 1; seed < 20; ++seed) {
        Random a(seed, "x"), b(seed + 1, "x");
        EXPECT_LT(std::abs(correlation(a, b)), 5.0 / std::sqrt(100000.0));
    }
}

TEST(RandomNumbers, UniformHasItsMomentsAndItsRange) {
    Random random(5, "uniform");
    constexpr int count = 200000;
    double sum = 0.0, square = 0.0;
    for (int i = 0; i < count; ++i) {
        const double u = random.uniform();
        ASSERT_GE(u, 0.0);
        ASSERT_LT(u, 1.0);
        sum += u;
        square += u * u;
    }
    EXPECT_NEAR(sum / count, 0.5, 5.0 * std::sqrt(1.0 / 12.0 / count));
    EXPECT_NEAR(square / count, 1.0 / 3.0, 0.005);
}

TEST(RandomNumbers, NormalHasItsMomentsAndItsBounds) {
    Random random(6, "normal");
    constexpr int count = 200000;
    double sum = 0.0, square = 0.0;
    int within_one = 0;
    for (int i = 0; i < count; ++i) {
        const double x = random.normal();
        ASSERT_LE(std::abs(x), 6.0);
        sum += x;
        square += x * x;
        if (std::abs(x) < 1.0) ++within_one;
    }
    EXPECT_NEAR(sum / count, 0.0, 5.0 / std::sqrt(count));
    EXPECT_NEAR(square / count, 1.0, 0.02);
    EXPECT_NEAR(static_cast<double>(within_one) / count, 0.6827, 0.008);
}

TEST(Fingerprints, FollowThePublishedFnv1a) {
    // Fowler, Noll & Vo: 64-bit FNV-1a of "", "a" and "foobar".
    Hash hash;
    EXPECT_EQ(hash.text(), "cbf29ce484222325");
    hash.add(std::string_view("a"));
    EXPECT_EQ(hash.text(), "af63dc4c8601ec8c");
    Hash word;
    word.add(std::string_view("foobar"));
    EXPECT_EQ(word.text(), "85944171f73967e8");
}

TEST(Fingerprints, TellEveryBitOfANumberApart) {
    Hash zero, minus_zero, pieces, whole;
    zero.add(0.0);
    minus_zero.add(-0.0);
    EXPECT_NE(zero.value(), minus_zero.value());
    pieces.add(std::string_view("ab"));
    pieces.add(std::string_view("c"));
    whole.add(std::string_view("abc"));
    EXPECT_EQ(pieces.value(), whole.value());
}

}  // namespace
}  // namespace emberpath::math
