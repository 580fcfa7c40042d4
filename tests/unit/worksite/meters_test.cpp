// Proves that figures which an instrument says in a sentence err, wear and are labelled as those that are numbered, and
// that what shows no figure at all has a label too.

#include <gtest/gtest.h>

#include <algorithm>
#include <utility>

#include "sim/worksite/kit.hpp"
#include "tests/unit/worksite/kit_in_hand.hpp"

namespace emberpath::worksite {
namespace {

using Script = std::vector<std::string>;
using I = Instrument;
using Q = Quantity;

/// In a house that has lost its earth a few milliamperes go from the casing to whoever touches it.
TEST(Milliamperes, AreThoseOfTheMultimeterAsItIs) {
    const Script series{"put on gloves", "take cover off",
                        "measure amps between casing and true earth"};
    Piece low_shunt;
    low_shunt.reads = 0.5;
    const auto read_from = [&](const Piece& piece, const Script& first) {
        Job job = job_with(I::multimeter, piece);
        job.faults = {fault(faults::Cause::earth_missing)};
        Attempt attempt(job, 7, Mode::assessed);
        EXPECT_EQ(play(attempt, first + series), "");
        return last_read(attempt, Q::meter_current);
    };
    const double sound = read_from({}, {});
    EXPECT_GT(sound, 0.3e-3);
    EXPECT_NEAR(read_from(low_shunt, {}), 0.5 * sound, 0.11e-3);
    EXPECT_NEAR(read_from(low_shunt, {"take spare multimeter"}), sound, 0.11e-3);
    Piece old;
    old.calibrated_on = "2024-01-01";
    Attempt attempt(job_with(I::multimeter, old), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, series), "");
    EXPECT_TRUE(broke(attempt, "tool_unchecked"));
}

/// Its class moves it from house to house, by a few hundredths of the time and a millisecond or two.
TEST(BreakTime, ErrsWithinTheClassOfItsTester) {
    constexpr double true_s = 0.090;
    double least = 1.0, most = 0.0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        Attempt attempt(test_job(), seed, Mode::assessed);
        ASSERT_EQ(play(attempt, {"unplug heater", "time safety switch at rated current"}), "");
        const double shown = last_read(attempt, Q::break_time);
        EXPECT_NEAR(shown, true_s, 4.0 * (0.001 + 0.02 * true_s));
        least = std::min(least, shown);
        most = std::max(most, shown);
    }
    EXPECT_GT(most - least, 0.001);
}

/// What shows no figure is used all the same.
TEST(Label, CountsForFluidTesterAndAlarmAsWell) {
    Piece old;
    old.calibrated_on = "2024-01-01";
    const std::pair<I, std::string> used[] = {{I::leak_fluid, "leak test with fluid"},
                                              {I::voltage_tester, "prove tester"},
                                              {I::co_alarm, "switch on co alarm"},
                                              {I::gas_detector, "check low places"}};
    for (const auto& [instrument, act] : used) {
        Attempt unseen(job_with(instrument, old), 7, Mode::assessed);
        ASSERT_EQ(play(unseen, {act}), "");
        EXPECT_TRUE(broke(unseen, "tool_unchecked")) << act;
        Attempt looked(job_with(instrument, old), 7, Mode::assessed);
        ASSERT_EQ(play(looked, {"look at " + std::string(info(instrument).word), act}), "");
        EXPECT_FALSE(broke(looked, "tool_unchecked")) << act;
    }
}

}  // namespace
}  // namespace emberpath::worksite
