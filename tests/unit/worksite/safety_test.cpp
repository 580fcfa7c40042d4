// Proves that each safety rule is broken by the act it forbids, that it does what the physics says, and that
// safe work breaks none.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "sim/worksite/hazards.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using Script = std::vector<std::string>;

const Script isolate{"switch power off", "unplug heater", "lock off plug",
                     "take cover off",   "prove tester",  "test for dead",
                     "prove tester",     "put on gloves", "put on glasses"};
const Script restore{"refit cover", "unlock plug", "plug in heater", "switch power on"};
const Script prove{"open bath tap",        "wait 90 s",          "measure temperature at bath tap",
                   "look at display",      "switch on analyser", "wait 1 min",
                   "put probe in flue",    "combustion test",    "take probe out",
                   "leak test with fluid", "close bath tap"};
const Script leave{"write cause no_fault", "write because #1",  "write done all",
                   "write told all",       "tell customer all", "hand in"};

struct Broken {
    const char* rule;
    Job job;
    Script script;
};
void PrintTo(const Broken& broken, std::ostream* out) {
    *out << broken.rule;
}

/// "wait 5 s" so many times, each with a reset before.
Script resets(int times) {
    Script script{"open bath tap", "wait 30 s"};
    for (int i = 0; i < times; ++i) script = script + Script{"press reset", "wait 10 s"};
    return script;
}

Job hot_job() {
    Job job = test_job({fault(Cause::outlet_sensor_drift, 1.0)});
    return job;
}

Job set_hot_job() {
    Job job = test_job();
    job.panel.set_point_k = 331.15;
    return job;
}

/// An open flue in a tight room, and a fan stronger than its draught.
Job spilling_job() {
    Job job = test_job();
    job.healthy = plant::with_flue(job.healthy, plant::FlueKind::open_flued);
    job.healthy.room_leak_gain = 0.02;
    job.site.fans = {{"rangehood", 0.12, false}};
    return job;
}

std::vector<Broken> each_rule() {
    const Script open_bath{"open bath tap", "wait 40 s"};
    const Script manometer_on{"shut gas at heater", "open test point inlet",
                              "attach manometer to inlet", "open gas at heater"};
    return {
        {"live_work", test_job(), {"take cover off", "replace outlet sensor"}},
        {"not_proved_dead",
         test_job(),
         {"unplug heater", "lock off plug", "take cover off", "unplug outlet sensor"}},
        {"not_locked", test_job(), {"unplug heater", "take cover off", "unplug outlet sensor"}},
        {"cover_off_live", test_job(), {"take cover off"}},
        {"live_test", test_job(), {"take cover off", "attach multimeter to supply terminals"}},
        {"cover_off_running", test_job(), Script{"take cover off"} + open_bath},
        {"gas_open", test_job(), {"open test point inlet"}},
        {"flash", test_job(), Script{"turn on cooktop", "open test point inlet", "wait 5 min"}},
        {"gas_left_open", test_job(), {"open test point inlet", "hand in"}},
        {"no_leak_test",
         test_job(),
         {"shut gas at heater", "open test point inlet", "close test point inlet", "hand in"}},
        {"no_combustion_test", test_job(),
         Script{"look at display"} + isolate + Script{"clean flame electrode"} + restore + leave},
        {"hasty_reset", test_job({fault(Cause::igniter_failed)}), resets(4)},
        {"hot_parts", test_job(),
         Script{"set temperature to 60 °C"} + open_bath +
             Script{"take cover off", "close bath tap", "unplug heater", "unplug outlet sensor"}},
        {"no_gloves", test_job(), {"unplug heater", "take cover off", "replace igniter"}},
        {"no_glasses", test_job(), {"clear flue terminal"}},
        {"bridged", test_job(), isolate + Script{"bridge limiter"}},
        {"regulator_raised", test_job(), {"raise supply regulator"}},
        {"cylinder_warmed", cylinder_job(), {"warm cylinder"}},
        {"room_co", test_job({fault(Cause::wind_gust, 0.6)}),
         Script{"take cover off", "open bath tap a little", "wait 60 min"}},
        {"left_unsafe", test_job({fault(Cause::exchanger_sooted, 0.8)}), {"hand in"}},
        {"scald_left", hot_job(), {"hand in"}},
        {"set_hot", set_hot_job(), {"hand in"}},
        {"cover_left_off", test_job(), {"unplug heater", "take cover off", "hand in"}},
        {"tools_left", test_job(), manometer_on + Script{"hand in"}},
        {"sensor_left_out", test_job(),
         isolate + Script{"unplug inlet sensor"} + restore + Script{"hand in"}},
        {"services_off", test_job(), {"shut gas at heater", "hand in"}},
        {"not_told", test_job(), {"hand in"}},
        {"no_record", test_job(), {"hand in"}},
        {"walked_off", test_job(), {"shut gas at heater", "tag heater", "hand in"}},
        {"beyond_scope", test_job(), {"measure volts between neutral bar and incoming active"}},
        {"tested_live",
         test_job(),
         {"take cover off", "test insulation between heater active and casing"}},
        {"amps_across_supply",
         test_job(),
         {"measure amps between socket active and socket neutral"}},
        {"live_pipe",
         test_job({fault(Cause::neutral_broken)}),
         {"open bath tap", "close bath tap", "open bath tap"}},
        {"no_bridge", test_job(), {"shut water at heater", "undo water union"}},
        {"fuse_oversized", test_job(), isolate + Script{"fit larger fuse"}},
        {"left_live", test_job({fault(Cause::neutral_broken)}), {"hand in"}},
        {"spillage_left", spilling_job(), {"hand in"}},
    };
}

class EachRule : public testing::TestWithParam<Broken> {};

TEST_P(EachRule, IsBrokenByWhatItForbids) {
    Attempt attempt(GetParam().job, 7, Mode::assessed);
    const auto refused = play(attempt, GetParam().script);
    EXPECT_TRUE(refused.empty() || attempt.over()) << refused;
    EXPECT_TRUE(broke(attempt, GetParam().rule)) << all_shown(attempt);
    for (const auto& one : attempt.breaches()) {
        const bool ended = one.text.find("The job ended there.") != std::string::npos;
        EXPECT_EQ(one.critical, rule(one.rule).critical || ended);
        EXPECT_EQ(one.rule, rule(one.rule).word) << "a rule of the table";
        EXPECT_LT(one.act, attempt.log().size() + 1);
    }
}

INSTANTIATE_TEST_SUITE_P(Rules, EachRule, testing::ValuesIn(each_rule()), [](const auto& i) {
    std::string name(i.param.rule);
    std::erase(name, '_');
    return name;
});

TEST(SafetyRules, AreAllBrokenSomewhereInTheseTests) {
    std::set<std::string> tried{
        "leak_left", "hard_light_up", "co_poisoning", "out_of_scope", "unsupervised", "co_ceiling",
        "burnt", "no_consent", "delivery_limit",
        // hazard_rows_test.cpp and kit_test.cpp
        "spark_in_gas", "stayed_in_gas", "people_in_gas", "no_leak_test_before", "not_purged",
        "low_unchecked", "low_gas_left", "draught_untested", "cylinder_left", "scorch_left",
        "off_plate", "water_not_shut", "not_drained", "acid_to_taps", "ladder_unchecked", "fall",
        "fibres", "roof_space", "bystander", "no_safety_switch", "not_tested_before_power",
        "tool_unchecked", "stored_charge", "bridge_left", "strainer_out", "leakage_left",
        "not_reported", "not_proved", "pressure_left",
        "board_harmed"};  // below, or in the tests of doses, scope, consent
    for (const auto& broken : each_rule()) tried.insert(broken.rule);
    for (const auto& row : rules()) EXPECT_TRUE(tried.contains(std::string(row.word))) << row.word;
}

TEST(SafeWork, BreaksNoRule) {
    const Script work =
        Script{"leak test with fluid",  "look at display",        "shut gas at heater",
               "open test point inlet", "zero manometer",         "attach manometer to inlet",
               "open gas at heater",    "read manometer",         "shut gas at heater",
               "take manometer off",    "close test point inlet", "open gas at heater"} +
        isolate + Script{"replace outlet sensor", "clean flame electrode", "replace igniter",
                         "shut gas at heater",    "clean heat exchanger",  "open gas at heater"} +
        restore + prove + leave;
    Attempt attempt(test_job(), 3, Mode::assessed);
    ASSERT_EQ(play(attempt, work), "");
    for (const auto& one : attempt.breaches()) ADD_FAILURE() << one.rule << ": " << one.text;
    EXPECT_EQ(attempt.truth().verified.size(), 8U);
    EXPECT_TRUE(attempt.truth().left_behind.empty());
}

TEST(TakenOutOfUse, NeedsNoProofOfRunningAndIsLeftBehindAsWhatItIs) {
    Attempt attempt(test_job({fault(Cause::igniter_failed, 1.0)}), 3, Mode::assessed);
    ASSERT_EQ(play(attempt, {"shut gas at heater", "switch power off", "tag heater",
                             "issue unsafe notice", "tell customer it is out of use"}),
              "");
    const auto truth = attempt.truth();
    EXPECT_EQ(truth.not_needed.size(), 4U) << "no work on joints or flame, and it is out of use";
    EXPECT_TRUE(truth.made_safe);
    EXPECT_EQ(truth.verified.size() + truth.unproved.size() + truth.not_needed.size(), 8U);
    ASSERT_EQ(truth.left_behind.size(), 1U);
    EXPECT_EQ(truth.left_behind.front(), "the heater is out of use, with a tag on it");
}

TEST(LockedOut, IsLeftBehindAsWhatItIs) {
    Attempt attempt(test_job({fault(Cause::igniter_failed, 1.0)}), 3, Mode::assessed);
    ASSERT_EQ(play(attempt, {"press reset", "open bath tap", "wait 2 min", "close bath tap"}), "");
    ASSERT_FALSE(attempt.truth().left_behind.empty());
    EXPECT_EQ(attempt.truth().left_behind.front(), "the heater is locked out");
}

TEST(Shock, NeedsALiveTerminalAndABareHand) {
    Attempt bare(test_job(), 7, Mode::assessed), gloved(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(bare, {"take cover off", "unplug outlet sensor"}), "");
    EXPECT_TRUE(bare.over());
    ASSERT_EQ(play(gloved, {"put on gloves", "take cover off", "unplug outlet sensor"}), "");
    EXPECT_FALSE(gloved.over());
    EXPECT_TRUE(broke(gloved, "live_work"));
}

TEST(Proving, IsLostWhenThePowerIsTouched) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, isolate), "");
    ASSERT_EQ(play(attempt, {"unplug outlet sensor"}), "");
    EXPECT_TRUE(attempt.breaches().empty());
    ASSERT_EQ(play(attempt, {"unlock plug", "plug in heater", "unplug heater", "lock off plug",
                             "plug in outlet sensor"}),
              "");
    EXPECT_TRUE(broke(attempt, "not_proved_dead"));
}

TEST(Proving, NeedsTheTesterProvedBeforeAndAfter) {
    for (const Script& order :
         {Script{"test for dead", "prove tester"}, Script{"prove tester", "test for dead"}}) {
        Attempt attempt(test_job(), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, Script{"unplug heater", "lock off plug", "take cover off"} + order +
                                    Script{"unplug outlet sensor"}),
                  "");
        EXPECT_TRUE(broke(attempt, "not_proved_dead"));
    }
}

TEST(Proving, ShowsTheVoltageOfALiveHeater) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"take cover off", "prove tester", "test for dead"}), "");
    EXPECT_TRUE(attempt.log().back().shown.front().starts_with(
        "The tester shows 230 V from active to neutral"))
        << attempt.log().back().shown.front();
}

TEST(EscapedGas, DoesNotFlashWithoutAFlame) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"open test point inlet", "wait 5 min", "look at room"}), "");
    EXPECT_FALSE(attempt.over());
    EXPECT_EQ(attempt.log().back().shown.front(), "It smells of gas.");
}

TEST(EscapedGas, IsStoppedByTheHoseAndByTheValve) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(
        play(attempt, {"shut gas at meter", "open test point inlet", "attach manometer to inlet",
                       "open gas at meter", "turn on cooktop", "wait 10 min", "look at room"}),
        "");
    EXPECT_EQ(attempt.log().back().shown.front(), "No smell of gas.");
    EXPECT_TRUE(attempt.breaches().empty());
}

/// A seed whose first joint weeps; the share of such seeds is one in eight.
std::uint64_t seed_with_weeping_joint(int& weeping) {
    std::uint64_t found = 0;
    weeping = 0;
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        Attempt attempt(test_job(), seed, Mode::assessed);
        EXPECT_EQ(
            play(attempt, {"shut gas at heater", "open test point inlet", "close test point inlet",
                           "open gas at heater", "leak test with fluid"}),
            "");
        if (attempt.log().back().shown.front() == "No bubbles.") continue;
        ++weeping;
        if (found == 0) found = seed;
    }
    return found;
}

TEST(WeepingJoint, IsFoundByTheTestRemadeAndProved) {
    int weeping = 0;
    const auto seed = seed_with_weeping_joint(weeping);
    EXPECT_GE(weeping, 3);
    EXPECT_LE(weeping, 20);
    const Script work{"shut gas at heater", "open test point inlet", "close test point inlet",
                      "open gas at heater"};
    Attempt careless(test_job(), seed, Mode::assessed);
    ASSERT_EQ(play(careless, work + Script{"hand in"}), "");
    EXPECT_TRUE(broke(careless, "leak_left"));
    Attempt careful(test_job(), seed, Mode::assessed);
    ASSERT_EQ(play(careful,
                   work + Script{"leak test with fluid", "shut gas at heater", "remake joint inlet",
                                 "open gas at heater", "leak test with fluid", "hand in"}),
              "");
    EXPECT_FALSE(broke(careful, "leak_left"));
    EXPECT_FALSE(broke(careful, "no_leak_test"));
}

TEST(WeepingJoint, LetsTheHeldPressureFall) {
    int weeping = 0;
    const auto weeps = seed_with_weeping_joint(weeping);
    const Script work{
        "shut gas at meter", "open test point regulator",  "close test point regulator",
        "open gas at meter", "shut gas at heater",         "open test point inlet",
        "zero manometer",    "attach manometer to inlet",  "open gas at heater",
        "shut gas at meter", "leak test by pressure hold", "open gas at meter"};
    for (const auto& [seed, sound] : {std::pair{weeps, false}, std::pair{weeps + 1, true}}) {
        Attempt attempt(test_job(), seed, Mode::assessed);
        ASSERT_EQ(play(attempt, work), "");
        const auto line = attempt.log()[attempt.log().size() - 2].shown.front();
        const auto at = line.rfind("minutes ");
        const double after_kpa = std::stod(line.substr(at + 8));
        EXPECT_EQ(after_kpa > 2.0, sound) << line;
    }
}

/// The igniter comes back at some moment of a light-up attempt that a hasty reset began.
TEST(Resets, LightHardWhenTheSparkComesLate) {
    bool thump = false;
    for (int tenth = 0; tenth < 60 && !thump; ++tenth) {
        auto late = fault(Cause::igniter_failed);
        late.period_s = 1.0e6;
        late.present_s = 180.0 + 3.0 + 30.0 + 24.0 + 0.1 * tenth;
        Attempt attempt(test_job({late}), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, resets(3)), "");
        thump = broke(attempt, "hard_light_up");
        EXPECT_EQ(all_shown(attempt).find("It lights with a thump.") != std::string::npos, thump);
    }
    EXPECT_TRUE(thump);
}

TEST(MadeSafe, NeedsShutGasATagAndAReport) {
    const Job job = test_job({fault(Cause::exchanger_sooted, 0.8)});
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, Script({"look at display", "shut gas at heater", "tag heater",
                                    "issue unsafe notice"}) +
                                leave),
              "");
    EXPECT_TRUE(attempt.breaches().empty()) << all_shown(attempt);
    EXPECT_EQ(attempt.truth().left_behind.size(), 1U) << "the heater itself, out of use";
    EXPECT_EQ(attempt.truth().verified.size(), 4U);
    EXPECT_EQ(attempt.truth().not_needed.size(), 4U) << "no work on joints or flame, out of use";
}

/// One rule, three ways to lose it: the advice is that of the way it went.
TEST(Board, ThatIsLostComesWithTheAdviceThatWouldHaveKeptIt) {
    const struct {
        Script acts;
        const char* advice;
    } ways[] = {
        {isolate + Script{"test insulation between heater active and heater neutral"},
         "keep the insulation tester off electronics"},
        {{"take cover off", "put on gloves", "test insulation between heater active and casing"},
         "prove dead before an insulation test"},
        {isolate + Script{"fit bridging conductor", "replace flow sensor"},
         "shut the water and drain the heater before its water side is opened"},
    };
    for (const auto& [acts, advice] : ways) {
        Attempt attempt(test_job(), 7, Mode::coached);
        ASSERT_EQ(play(attempt, acts), "");
        const auto& all = attempt.breaches();
        const auto lost = std::find_if(all.begin(), all.end(), [](const Breach& breach) {
            return breach.rule == "board_harmed";
        });
        ASSERT_NE(lost, all.end()) << all_shown(attempt);
        EXPECT_EQ(better_than(*lost), advice);
        EXPECT_NE(all_shown(attempt).find(lost->text + " Better: " + advice + "."),
                  std::string::npos)
            << all_shown(attempt);
    }
}

}  // namespace
}  // namespace emberpath::worksite
