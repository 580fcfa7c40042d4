// Proves that the fuse of a multimeter stays blown until another meter is in hand, and that leads which hang elsewhere
// are moved as one moves them.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/worksite/site_state.hpp"
#include "tests/unit/worksite/dangerous_houses.hpp"
#include "tests/unit/worksite/kit_in_hand.hpp"

namespace emberpath::worksite {
namespace {

using testing::HasSubstr;
using testing::Not;
using Q = Quantity;

const Acts across{"measure amps between socket active and socket neutral"};
const Acts in_series{"measure amps between casing and true earth"};

std::string last_shown(const Attempt& attempt) {
    std::string text;
    for (const auto& line : attempt.log().back().shown) text += line + "\n";
    return text;
}

/// Without its earth a few milliamperes go from the casing to whoever touches it.
Job lost_earth() {
    return test_job({fault(Cause::earth_missing)});
}

class MeterFuse : public testing::Test {
  protected:
    void act(const Acts& acts) { ASSERT_EQ(play(attempt_, acts), ""); }
    Attempt attempt_{lost_earth(), 7, Mode::assessed};
};

TEST_F(MeterFuse, ShowsACurrentWhereItWasNeverPutAcrossASupply) {
    act(dressed + Acts{"take cover off"} + in_series);
    EXPECT_GT(last_read(attempt_, Q::meter_current), 0.3e-3);
    act({"look at multimeter"});
    EXPECT_THAT(last_shown(attempt_), Not(HasSubstr("has gone")));
    act({"check multimeter"});
    EXPECT_THAT(last_shown(attempt_), Not(HasSubstr("has gone")));
}

TEST_F(MeterFuse, StaysBlownSoThatNoCurrentIsShownAnyMore) {
    act(dressed + Acts{"take cover off"} + across);
    EXPECT_THAT(last_shown(attempt_), HasSubstr("its fuse has gone"));
    act(in_series);
    EXPECT_LE(last_read(attempt_, Q::meter_current), 0.1e-3);
    act(across);
    EXPECT_THAT(last_shown(attempt_), Not(HasSubstr("flash")));
    EXPECT_THAT(last_shown(attempt_), HasSubstr("The meter shows 0."));
}

TEST_F(MeterFuse, IsFoundByLookAndByCheckAndNotInTheSpare) {
    act(dressed + Acts{"take cover off"} + across + Acts{"look at multimeter"});
    EXPECT_THAT(last_shown(attempt_), HasSubstr("The fuse of its current range has gone"));
    act({"check multimeter"});
    EXPECT_THAT(last_shown(attempt_), HasSubstr("The fuse of its current range has gone"));
    act({"take spare multimeter", "look at multimeter"});
    EXPECT_THAT(last_shown(attempt_), Not(HasSubstr("has gone")));
    act(in_series);
    EXPECT_GT(last_read(attempt_, Q::meter_current), 0.3e-3);
}

TEST(MeterFuseState, IsPartOfTheHash) {
    Bench sound, blown;
    blown.meter_fuse_gone = true;
    math::Hash of_sound, of_blown;
    add_to(of_sound, sound);
    add_to(of_blown, blown);
    EXPECT_NE(of_sound.text(), of_blown.text());
}

/// Volts have a range of their own.
TEST_F(MeterFuse, LeavesVoltsAsTheyAre) {
    act(dressed + across + Acts{"measure volts between socket active and socket neutral"});
    EXPECT_NEAR(last_read(attempt_, Q::volts_between), 230.0, 8.0);
}

/// The burner runs with the meter in the lead: a sound one shows its microamperes.
TEST(FlameCurrent, IsNotShownBehindAFuseThatHasGone) {
    const Acts running = dead + Acts{"attach multimeter to flame lead",
                                     "unlock plug",
                                     "plug in heater",
                                     "switch power on",
                                     "open bath tap",
                                     "wait 40 s",
                                     "read multimeter"};
    Attempt sound(test_job(), 7, Mode::assessed), blown(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(sound, running), "");
    EXPECT_GT(last_read(sound, Q::flame_current), 1.0e-6);
    ASSERT_EQ(play(blown, across + running), "");
    EXPECT_LE(last_read(blown, Q::flame_current), 0.3e-6);
}

const Acts at_inlet = dead + Acts{"unplug inlet sensor", "attach multimeter to inlet sensor"};

TEST(HangingLeads, DoNotKeepTheInsulationTesterAway) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, at_inlet + Acts{"test insulation between heater active and casing"}),
              "");
    EXPECT_GT(last_read(attempt, Q::insulation_ohms), 1.0e6);
    EXPECT_TRUE(attempt.sight().multimeter_at.has_value()) << "they hang where they hung";
    ASSERT_EQ(play(attempt, {"read multimeter"}), "");
}

TEST(HangingLeads, AreMovedForAnotherMeasurement) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, at_inlet), "");
    const auto before = attempt.tick();
    ASSERT_EQ(play(attempt, {"measure volts between socket active and socket neutral"}), "");
    EXPECT_EQ(attempt.tick() - before, 200) << "as help lists it";
    EXPECT_THAT(last_shown(attempt), HasSubstr("come off where they hung"));
    EXPECT_FALSE(attempt.sight().multimeter_at.has_value());
    EXPECT_FALSE(attempt.check("read multimeter").text.empty());
}

TEST(HangingLeads, AreMovedToTheNextSensor) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, at_inlet + Acts{"unplug outlet sensor"}), "");
    EXPECT_THAT(attempt.check("attach multimeter to inlet sensor").text, HasSubstr("already"));
    ASSERT_EQ(play(attempt, {"attach multimeter to outlet sensor", "read multimeter"}), "");
    EXPECT_GT(last_read(attempt, Q::outlet_ohms), 100.0);
}

/// A bare hand that takes them off live terminals meets what stands there; off dead ones, nothing.
TEST(HangingLeads, AreTakenOffInsideOnlyByAHandThatHasProvedItDead) {
    const Acts volts{"measure volts between socket active and socket neutral"};
    Attempt proved(test_job(), 7, Mode::assessed), live(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(proved, at_inlet + volts), "");
    EXPECT_FALSE(broke(proved, "live_work"));
    ASSERT_EQ(
        play(live, at_inlet + Acts{"unlock plug", "plug in heater", "switch power on"} + volts),
        "");
    EXPECT_TRUE(live.over());
    EXPECT_TRUE(broke(live, "live_work"));
    EXPECT_TRUE(live.log().back().observations.empty()) << "nothing was measured";
}

}  // namespace
}  // namespace emberpath::worksite
