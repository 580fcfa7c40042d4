// Proves that an instrument nobody looked after misleads: the same hand at the same house, doing what its reading
// says, does the wrong thing by the neglected instrument and the right one by the other, and the record holds what
// came of it. What each hand does is decided by the reading alone.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "sim/properties/thermistor.hpp"
#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

constexpr double celsius = 273.15;

double latest(const Attempt& attempt, Quantity quantity) {
    const auto& log = attempt.log();
    for (auto entry = log.rbegin(); entry != log.rend(); ++entry)
        for (auto seen = entry->observations.rbegin(); seen != entry->observations.rend(); ++seen)
            if (seen->quantity == quantity) return seen->value;
    ADD_FAILURE() << "nothing read";
    return 0.0;
}

bool carried_out(const Attempt& attempt, faults::Remedy remedy) {
    for (const auto& entry : attempt.log())
        if (entry.remedy == static_cast<int>(remedy)) return true;
    return false;
}

bool met(const Attempt& attempt, const std::string& words) {
    for (const auto& line : attempt.day_after().lines)
        if (line.find(words) != std::string::npos) return true;
    return false;
}

/// Water that reads more than two kelvin above its setting is set lower by as much.
void set_by_thermometer(Attempt& attempt) {
    constexpr double set_k = celsius + 50.0, slack_k = 2.0;
    ASSERT_EQ(play(attempt, hot_bath + Acts{"wait 1 min", "measure temperature at bath tap"}), "");
    const double over_k = latest(attempt, Quantity::tap_temperature) - set_k;
    if (over_k > slack_k) {
        ASSERT_EQ(play(attempt,
                       {"set temperature to " + std::to_string(50 - std::lround(over_k)) + " °C"}),
                  "");
    }
    ASSERT_EQ(play(attempt, {"close bath tap", "hand in"}), "");
}

TEST(OverdueThermometer, ReadsHighAndSoundWaterIsSetLower) {
    const Job job = with([](Job& one) {
        one.kit.visited_on = "2026-11-25";
        one.kit.of(Instrument::thermometer).calibrated_on = "2024-05-02";
        one.kit.of(Instrument::thermometer).off_by = 4.0;
    });
    Attempt careful(job, 7, Mode::assessed), careless(job, 7, Mode::assessed);
    ASSERT_EQ(play(careful, {"look at thermometer", "take spare thermometer"}), "");
    set_by_thermometer(careful);
    set_by_thermometer(careless);
    EXPECT_NEAR(latest(careful, Quantity::tap_temperature), celsius + 50.0, 2.0);
    EXPECT_NEAR(latest(careless, Quantity::tap_temperature), celsius + 54.0, 2.0);
    EXPECT_FALSE(broke(careful, "tool_unchecked"));
    EXPECT_TRUE(broke(careless, "tool_unchecked"));
    EXPECT_FALSE(met(careful, "found it set lower than they had it"));
    EXPECT_TRUE(met(careless, "found it set lower than they had it"));
}

/// A sensor off its curve by more than a twentieth is replaced. Beta formula of IEC 60539, 10 kohm at 25 °C.
void replace_by_multimeter(Attempt& attempt, double sensor_k) {
    const double due = properties::beta_resistance_ohm(properties::BetaThermistor{}, sensor_k);
    ASSERT_EQ(play(attempt, dead + dressed +
                                Acts{"unplug outlet sensor", "attach multimeter to outlet sensor",
                                     "read multimeter", "take multimeter off"}),
              "");
    // Nobody looks on for what they believe to have found; else the spark that nobody heard is next.
    const bool off = std::abs(latest(attempt, Quantity::outlet_ohms) / due - 1.0) > 0.05;
    ASSERT_EQ(play(attempt, {off ? "replace outlet sensor" : "replace igniter"}), "");
    const Acts back{"plug in outlet sensor", "refit cover",     "unlock plug",
                    "plug in heater",        "switch power on", "hand in"};
    ASSERT_EQ(play(attempt, back), "");
}

TEST(MultimeterWithALowBattery, ReadsHighAndASoundSensorIsReplaced) {
    Job job = test_job({fault(Cause::igniter_failed)});
    job.site.events.clear();  // nobody has drawn: the sensor is as warm as the air
    job.kit.of(Instrument::multimeter).battery = Battery::low;
    const double air_k = job.site.ambient_k;
    Attempt careful(job, 7, Mode::assessed), careless(job, 7, Mode::assessed);
    ASSERT_EQ(play(careful, {"check multimeter", "take spare multimeter"}), "");
    replace_by_multimeter(careful, air_k);
    replace_by_multimeter(careless, air_k);
    EXPECT_NEAR(latest(careless, Quantity::outlet_ohms) / latest(careful, Quantity::outlet_ohms),
                1.08, 0.03);
    EXPECT_FALSE(carried_out(careful, faults::Remedy::replace_outlet_sensor));
    EXPECT_TRUE(carried_out(careless, faults::Remedy::replace_outlet_sensor));
    EXPECT_FALSE(met(careful, " cold"));
    EXPECT_TRUE(met(careless, " cold")) << "a sound part went for a new one, and nothing lights";
}

/// Flue gas above the limit of the rules puts a heater out of use.
void judge_by_analyser(Attempt& attempt, const Limits& limits) {
    ASSERT_EQ(play(attempt, {"read analyser"}), "");
    constexpr double least_co2 = 0.05;  // nobody divides by less
    const double co2 = std::max(least_co2, latest(attempt, Quantity::flue_co2));
    const bool bad = latest(attempt, Quantity::flue_co) > limits.co_ratio * co2;
    ASSERT_EQ(play(attempt, {"take probe out", "close bath tap"}), "");
    if (bad) {
        ASSERT_EQ(play(attempt, out_of_use), "");
    }
    ASSERT_EQ(play(attempt, {"hand in"}), "");
}

TEST(AnalyserZeroedInProducts, TakesThemForAirAndAFlameSetTooHighIsLeftInUse) {
    const Job job = test_job({fault(Cause::high_fire_overset, 1.0)});
    Attempt careful(job, 7, Mode::assessed), careless(job, 7, Mode::assessed);
    const Acts burning{"open bath tap", "wait 2 min"};
    ASSERT_EQ(play(careful, Acts{"switch on analyser", "wait 60 s", "put probe in flue"} + burning),
              "");
    ASSERT_EQ(play(careless,
                   Acts{"put probe in flue"} + burning + Acts{"switch on analyser", "wait 60 s"}),
              "");
    judge_by_analyser(careful, job.practice.limits);
    judge_by_analyser(careless, job.practice.limits);
    EXPECT_GT(latest(careful, Quantity::flue_co), 300.0e-6);
    EXPECT_LT(latest(careless, Quantity::flue_co), 100.0e-6);
    EXPECT_FALSE(broke(careful, "left_unsafe"));
    EXPECT_TRUE(broke(careless, "left_unsafe"));
}

/// A burner that burns at another pressure than it is asked for is set to its plate.
void set_by_manometer(Attempt& attempt, bool zeroed) {
    constexpr double slack_pa = 30.0;
    Acts acts = dead + dressed + Acts{"shut gas at heater", "open test point manifold"};
    if (zeroed) acts.emplace_back("zero manometer");
    acts = acts + Acts{"attach manometer to manifold",
                       "open gas at heater",
                       "unlock plug",
                       "plug in heater",
                       "switch power on",
                       "wait 10 s",
                       "open service readout",
                       "open bath tap",
                       "wait 1 min",
                       "read manometer",
                       "read readout manifold pressure"};
    ASSERT_EQ(play(attempt, acts), "");
    const double off_pa = latest(attempt, Quantity::manifold_pressure) -
                          latest(attempt, Quantity::readout_manifold_command);
    if (std::abs(off_pa) > slack_pa) {
        ASSERT_EQ(play(attempt, {"set manifold pressure to plate"}), "");
    }
    ASSERT_EQ(play(attempt, {"close bath tap", "hand in"}), "");
}

TEST(ManometerThatWasNotZeroed, ReadsOffAndASoundBurnerIsSetAnew) {
    constexpr std::uint64_t seed = 7;  // of a manometer that stands well off its zero
    Attempt careful(test_job(), seed, Mode::assessed), careless(test_job(), seed, Mode::assessed);
    set_by_manometer(careful, true);
    set_by_manometer(careless, false);
    EXPECT_GT(std::abs(latest(careful, Quantity::manifold_pressure) -
                       latest(careless, Quantity::manifold_pressure)),
              30.0);
    EXPECT_FALSE(carried_out(careful, faults::Remedy::set_manifold_pressure));
    EXPECT_TRUE(carried_out(careless, faults::Remedy::set_manifold_pressure));
    EXPECT_FALSE(broke(careful, "no_combustion_test"));
    EXPECT_TRUE(broke(careless, "no_combustion_test"));  // the flame was touched, for nothing
}

/// More leakage than the rules allow puts a heater out of use.
void judge_by_clamp(Attempt& attempt, const std::string& around, Quantity read, double limit_a) {
    ASSERT_EQ(play(attempt, {"clamp " + around}), "");
    if (latest(attempt, read) > limit_a) {
        ASSERT_EQ(play(attempt, out_of_use), "");
    }
    ASSERT_EQ(play(attempt, {"hand in"}), "");
}

/// Around one conductor the clamp is in its coarse range, from 10 mA on; around both it shows tenths of one.
TEST(ClampInItsCoarseRange, ShowsNoLeakageAndALeakyHeaterIsLeftInUse) {
    const Job job = test_job({fault(Cause::moisture_in_heater, 0.11)});
    const double limit_a = job.practice.limits.earth_leakage_a;
    Attempt careful(job, 7, Mode::assessed), careless(job, 7, Mode::assessed);
    judge_by_clamp(careful, "whole lead", Quantity::leakage_current, limit_a);
    judge_by_clamp(careless, "lead earth", Quantity::clamp_current, limit_a);
    EXPECT_GT(latest(careful, Quantity::leakage_current), limit_a);
    EXPECT_EQ(latest(careless, Quantity::clamp_current), 0.0);
    EXPECT_FALSE(broke(careful, "leakage_left"));
    EXPECT_TRUE(broke(careless, "leakage_left"));
}

}  // namespace
}  // namespace emberpath::worksite
