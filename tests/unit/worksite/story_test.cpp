// Proves the whole way through one natural-gas job, as a person would work it: an igniter that gives no spark,
// found by its silence, set right, proved and handed over; and the same job done by swapping parts live.

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;

class IgniterJob : public testing::Test {
  protected:
    void act(const std::string& sentence) { ASSERT_EQ(play(attempt, {sentence}), ""); }
    void act(const std::vector<std::string>& sentences) {
        for (const auto& sentence : sentences) act(sentence);
    }
    /// The word or number read last of this quantity, as the trade writes it.
    std::string last(Quantity quantity) const {
        std::string text = "never read";
        for (const auto& entry : attempt.log())
            for (const auto& seen : entry.observations)
                if (seen.quantity == quantity) text = text_of(quantity, seen.value);
        return text;
    }
    Attempt attempt{test_job({fault(Cause::igniter_failed)}), 7, Mode::assessed};
};

TEST_F(IgniterJob, IsSolvedFromSilenceToHandover) {
    act({"ask about the problem", "ask about when", "look at the display"});
    EXPECT_EQ(last(Quantity::display_word), "BARE");  // no flame at light-up

    // One light-up attempt, watched and heard: gas and fan are there, spark and flame are not.
    act({"open bath tap", "press reset", "watch burner window for 12 s"});
    EXPECT_EQ(last(Quantity::spark), "no spark");
    EXPECT_EQ(last(Quantity::flame), "none");
    act({"shut gas at heater", "open test point inlet", "zero manometer",
         "attach manometer to inlet", "open gas at heater", "wait 60 s", "press reset", "listen",
         "read manometer"});
    EXPECT_EQ(last(Quantity::fan_sound), "normal");
    EXPECT_EQ(last(Quantity::spark), "no spark");
    EXPECT_EQ(last(Quantity::gas_inlet_pressure).substr(0, 2), "2.");
    act({"shut gas at heater", "take manometer off", "close test point inlet", "open gas at heater",
         "close bath tap"});

    // Isolate, prove dead, look at the rival, replace.
    act({"switch power off", "unplug heater", "lock off plug", "take cover off", "prove tester",
         "test for dead", "prove tester", "put on gloves", "look at flame electrode"});
    EXPECT_EQ(last(Quantity::electrode_tip), "clean");
    act({"shut gas at heater", "replace igniter", "open gas at heater", "refit cover",
         "unlock plug", "plug in heater", "switch power on"});
    EXPECT_TRUE(attempt.truth().remaining.empty());

    // Prove: flame, heat, flue gas, joints, display.
    act({"press reset", "open bath tap", "watch burner window for 12 s"});
    EXPECT_EQ(last(Quantity::flame), "steady");
    act({"wait 90 s", "measure temperature at bath tap", "look at display", "switch on analyser",
         "wait 1 min", "put probe in flue", "combustion test", "take probe out",
         "leak test with fluid", "close bath tap"});
    act({"write cause igniter_failed", "write because #1 #2 #5", "write done new igniter",
         "write told what failed", "tell the customer what failed and what was done", "hand in"});

    EXPECT_TRUE(attempt.over());
    EXPECT_TRUE(attempt.breaches().empty()) << attempt.breaches().front().text;
    EXPECT_EQ(attempt.truth().verified.size(), 8U);
    EXPECT_TRUE(attempt.truth().left_behind.empty());
    EXPECT_EQ(attempt.write_up().cause, "igniter_failed");
    EXPECT_LT(attempt.seconds_on_site(), 60.0 * 60.0);
}

TEST_F(IgniterJob, RecordsASecondCauseAndOnesThatCannotBeToldApart) {
    EXPECT_EQ(attempt.perform("write also cause flue_blocked").entry, nullptr);
    act({"write cause igniter_failed", "write also cause flue_blocked",
         "write possible cause igniter_lead_cracked"});
    EXPECT_EQ(attempt.write_up().also, (std::vector<std::string>{"flue_blocked"}));
    EXPECT_EQ(attempt.write_up().possible, (std::vector<std::string>{"igniter_lead_cracked"}));
    EXPECT_EQ(attempt.perform("write possible cause igniter_failed").entry, nullptr);
    EXPECT_NE(attempt.perform("write cause no_fault").entry, nullptr);
    EXPECT_TRUE(attempt.write_up().also.empty());
    EXPECT_TRUE(attempt.write_up().possible.empty());
}

TEST_F(IgniterJob, EndsInHospitalWhenPartsAreSwappedLive) {
    act({"look at display", "take cover off", "clean flame electrode"});
    EXPECT_TRUE(attempt.over());
    EXPECT_TRUE(broke(attempt, "live_work"));
    EXPECT_EQ(attempt.truth().remaining.size(), 1U);
    EXPECT_FALSE(attempt.write_up().handed_in);
}

}  // namespace
}  // namespace emberpath::worksite
