// Proves what each makeshift does to the heater, that it is refused where it stands already or cannot be got at, and
// that new work on the part takes it away.

#include <gtest/gtest.h>

#include <cstring>

#include "sim/properties/thermistor.hpp"
#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

constexpr double celsius = 273.15;
constexpr double resistor_k = celsius + 49.0;  // what the help says of it

const Acts water_off{"shut water at heater", "drain heater"};
const Acts to_the_readout{"refit cover",     "unlock plug", "plug in heater",
                          "switch power on", "wait 10 s",   "open service readout"};

double last(const Attempt& attempt) {
    const auto& seen = attempt.log().back().observations;
    if (seen.size() == 1) return seen.front().value;
    ADD_FAILURE() << attempt.log().back().words << ": " << seen.size() << " readings";
    return 0.0;
}

Job with_tempering() {
    return with([](Job& job) { job.site.taps.back().tempered = true; });
}

/// One makeshift, the work that takes it away, and what is said where it cannot be done.
struct Makeshift {
    const char* name;
    Job job;
    Acts before;  // the hand is ready
    const char* act;
    const char* again;  // what a second one is told
    const char* removed_by;
    const char*
        too_soon;  // what is said before the hand is ready; empty where it can be done at once
};
void PrintTo(const Makeshift& one, std::ostream* out) {
    *out << one.name;
}

const char* const covered = "The cover is on; it must come off first.";
std::vector<Makeshift> makeshifts() {
    const Acts open = dead + dressed, drained = open + water_off;
    const std::vector cracked{fault(Cause::igniter_lead_cracked, 0.6)};
    return {
        {"Resistor", test_job(), open, "fit resistor for outlet sensor",
         "The resistor is in already.", "replace outlet sensor", covered},
        {"Tape", test_job(cracked), open, "tape igniter lead", "There is tape on it already.",
         "replace igniter lead", covered},
        {"SensorOfAnotherCount", test_job(), drained, "fit flow sensor of another count",
         "The other one is in already.", "replace flow sensor", covered},
        {"ScreenLeftOut", test_job(), water_off, "leave inlet strainer out", "It is out already.",
         "clean inlet strainer", ""},
        {"TemperingBypassed", with_tempering(), water_off, "bypass tempering valve",
         "It is bypassed already.", "replace tempering valve", ""},
        {"LimiterBridged", test_job(), open, "bridge limiter", "", "remove bridge", covered},
    };
}

class EachMakeshift : public testing::TestWithParam<Makeshift> {};

bool same(const plant::PlantParameters& a, const plant::PlantParameters& b) {
    return std::memcmp(&a, &b, sizeof a) == 0;
}

TEST_P(EachMakeshift, IsInUntilWorkOnThePartTakesItAway) {
    const Makeshift& one = GetParam();
    Attempt attempt(one.job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, one.before), "");
    const auto left = attempt.truth().left_behind.size();
    ASSERT_EQ(play(attempt, {one.act}), "");
    EXPECT_EQ(attempt.truth().left_behind.size(), left + 1) << "and somebody can read of it";
    ASSERT_EQ(play(attempt, {one.removed_by}), "");
    EXPECT_EQ(attempt.truth().left_behind.size(), left);
    EXPECT_TRUE(same(attempt.truth().heater.parameters, one.job.healthy));
}

TEST_P(EachMakeshift, IsRefusedWhereItStandsAlreadyOrCannotBeReached) {
    const Makeshift& one = GetParam();
    Attempt attempt(one.job, 7, Mode::assessed);
    const auto refusal = [&] { return attempt.perform(one.act).refusal.text; };
    if (std::string_view(one.too_soon) != "") {
        EXPECT_EQ(refusal(), one.too_soon);
    }
    ASSERT_EQ(play(attempt, one.before + Acts{one.act}), "");
    if (std::string_view(one.again) != "") {
        EXPECT_EQ(refusal(), one.again);
    }
}

INSTANTIATE_TEST_SUITE_P(House, EachMakeshift, testing::ValuesIn(makeshifts()),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(Resistor, MakesTheHeaterRead49DegreesWhateverTheWaterIs) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, dead + dressed + Acts{"fit resistor for outlet sensor"} +
                                to_the_readout + Acts{"read readout outlet temperature"}),
              "");
    EXPECT_NEAR(last(attempt), resistor_k, 1.0);
    EXPECT_LT(attempt.truth().heater.plant.outlet_water_k, resistor_k - 10.0) << "nobody has drawn";
    ASSERT_EQ(play(attempt, {"set temperature to 60 °C", "open kitchen tap", "wait 3 min",
                             "read readout outlet temperature"}),
              "");
    EXPECT_NEAR(last(attempt), resistor_k, 1.0);
    EXPECT_GT(attempt.truth().heater.plant.outlet_water_k, resistor_k + 10.0);
}

TEST(Resistor, HasWhatASoundSensorHasAt49Degrees) {
    const auto fooled = [] {
        Alterations made;
        made.outlet_sensor_fooled = true;
        return with_alterations(plant::natural_gas_parameters(), made).outlet_sensor.series_ohm;
    }();
    EXPECT_NEAR(properties::beta_temperature_k(properties::BetaThermistor{}, fooled), resistor_k,
                0.5);
}

/// Four fifths of the crack count on, dry as wet: what sparked across before does so still, a little later.
TEST(Tape, TakesAFifthOfACrack) {
    const std::vector cracked{fault(Cause::igniter_lead_cracked, 0.6)};
    Attempt attempt(test_job(cracked), 7, Mode::assessed);
    const auto crack = [&] {
        return attempt.truth().heater.parameters.electrical.igniter_lead_crack;
    };
    const double bare = crack();
    ASSERT_GT(bare, 0.0);
    ASSERT_EQ(play(attempt, dead + dressed + Acts{"tape igniter lead"}), "");
    EXPECT_NEAR(crack() / bare, 0.8, 1.0e-9);
}

TEST(OtherFlowSensor, CountsMoreThanFlows) {
    const auto counted = [](bool other) {
        Alterations made;
        made.other_flow_sensor = other;
        return with_alterations(plant::natural_gas_parameters(), made).flow_sensor_gain;
    };
    EXPECT_NEAR(counted(true) / counted(false), 1.6, 1.0e-9) << "as its sentence says in help";
}

TEST(HighestTemperature, HoldsWhatTheHeaterGivesOnceItIsStored) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    const Acts live{"unlock plug", "plug in heater", "switch power on", "wait 10 s",
                    "open service readout"};
    ASSERT_EQ(play(attempt, dead + dressed + live +
                                Acts{"change highest temperature to 49 °C", "refit cover"}),
              "");
    (void)attempt.perform("set temperature to 55 °C");  // more than the panel offers now
    ASSERT_EQ(play(attempt, {"open kitchen tap", "wait 2 min"}), "");
    EXPECT_NEAR(attempt.truth().heater.plant.outlet_water_k, celsius + 49.0, 1.0);
}

TEST(Makeshift, NeedsThePartItIsFor) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    EXPECT_EQ(attempt.perform("bypass tempering valve").refusal.text,
              "There is no tempering valve here.");
    EXPECT_EQ(attempt.perform("set supply regulator back").refusal.text,
              "It stands as you found it.");
    EXPECT_EQ(attempt.perform("warm cylinder").refusal.text, "There is no cylinder here.");
    ASSERT_EQ(play(attempt, dead + dressed), "");
    EXPECT_EQ(attempt.perform("remove bridge").refusal.text, "There is no bridge.");
    EXPECT_EQ(attempt.perform("bridge air proving").refusal.text,
              "This heater proves its air without a tube.");
}

/// A casing whose earth is missing and that nobody measured: the hand on it feels what the network drives to the
/// floor, more than is felt at all and less than holds a hand fast.
TEST(CasingWithoutAnEarth, IsFeltByWhoeverTouchesItUntested) {
    Attempt attempt(test_job({fault(Cause::earth_missing)}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, dead + dressed +
                                Acts{"dry and reseal wiring", "unlock plug", "take off gloves",
                                     "plug in heater", "switch power on", "hand in"}),
              "");
    const std::string begins = "Most current through your body: ", ends = " mA, hand to foot";
    double felt_ma = 0.0;
    for (const std::string& line : attempt.truth().doses)
        if (line.starts_with(begins) && line.find(ends) != std::string::npos)
            felt_ma = std::stod(line.substr(begins.size()));
    EXPECT_GE(felt_ma, 0.5);
    EXPECT_LT(felt_ma, 10.0);
}

}  // namespace
}  // namespace emberpath::worksite
