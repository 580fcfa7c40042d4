// Proves that no order of acts breaks an attempt: twenty thousand random acts on four houses leave the clock
// monotone, every value finite, and the same state when done again.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/math/random.hpp"
#include "sim/worksite/acts.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;

struct House {
    const char* name;
    Job job;
    std::uint64_t seed;
};
void PrintTo(const House& house, std::ostream* out) {
    *out << house.name;
}

/// Long acts are rare in a visit; leaving is rarer still.
std::string draw(math::Random& random, const std::vector<std::string>& sentences, const Job& job) {
    for (;;) {
        const auto& sentence =
            sentences[static_cast<std::size_t>(random.next() % sentences.size())];
        const auto parsed = parse_act(sentence, job);
        const auto* act = std::get_if<Act>(&parsed);
        if (act == nullptr) return sentence;
        const double seconds = seconds_of(*act);
        const double keep = sentence == "hand in" ? 0.02 : seconds > 100.0 ? 0.05 : 1.0;
        if (random.uniform() < keep) return sentence;
    }
}

void expect_sound(const LogEntry& entry, std::int64_t before) {
    EXPECT_EQ(entry.begin_tick, before);
    EXPECT_GE(entry.end_tick, entry.begin_tick);
    for (const auto& seen : entry.observations) {
        EXPECT_TRUE(std::isfinite(seen.value)) << info(seen.quantity).word;
        EXPECT_LE(seen.tick, entry.end_tick);
    }
}

class RandomActs : public testing::TestWithParam<House> {};

TEST_P(RandomActs, KeepTheClockGoingAndTheValuesFinite) {
    constexpr int acts = 5000;
    const auto& house = GetParam();
    const auto sentences = all_sentences(house.job);
    math::Random random(house.seed, "random acts");
    auto attempt = std::make_unique<Attempt>(house.job, house.seed, Mode::coached);
    std::vector<std::string> done;
    int replayed = 0, ended = 0;
    for (int i = 0; i < acts; ++i) {
        // Little can be done outside; whoever went there soon comes back.
        const bool returns = attempt->sight().outside && random.uniform() < 0.2;
        const auto sentence =
            returns ? std::string("go back in") : draw(random, sentences, house.job);
        const auto before = attempt->tick();
        const auto outcome = attempt->perform(sentence);
        if (outcome.entry == nullptr) {
            EXPECT_EQ(attempt->tick(), before);
            continue;
        }
        done.push_back(sentence);
        expect_sound(*outcome.entry, before);
        if (HasFatalFailure() || HasNonfatalFailure()) FAIL() << sentence;
        if (!attempt->over() && done.size() < 60) continue;
        const auto truth = attempt->truth();
        EXPECT_LE(truth.verified.size(), 8U);
        EXPECT_TRUE(std::isfinite(truth.heater.plant.outlet_water_k));
        if (++ended % 20 == 0) {  // and again, to the same bits
            Attempt again(house.job, attempt->log().empty() ? house.seed : house.seed + ended - 1,
                          Mode::coached);
            for (const auto& entry : attempt->log()) ASSERT_EQ(play(again, {entry.words}), "");
            EXPECT_EQ(again.state_hash(), attempt->state_hash());
            ++replayed;
        }
        attempt = std::make_unique<Attempt>(house.job, house.seed + ended, Mode::coached);
        done.clear();
    }
    EXPECT_GE(replayed, 1) << ended;
}

INSTANTIATE_TEST_SUITE_P(
    Houses, RandomActs,
    testing::Values(House{"sound", test_job(), 1},
                    House{"gusts", test_job({fault(Cause::wind_gust, 0.6)}), 1000},
                    House{"cylinder", cylinder_job({fault(Cause::cylinder_low, 0.95)}), 2000},
                    House{"soot", test_job({fault(Cause::exchanger_sooted, 0.8)}), 3000}),
    [](const auto& i) { return std::string(i.param.name); });

}  // namespace
}  // namespace emberpath::worksite
