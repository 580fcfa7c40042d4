// Proves that a proof counts by what it shows: taken and bad it proves nothing, taken and good it does.

#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>
#include <variant>

#include "sim/plant/parameters.hpp"
#include "sim/worksite/doings.hpp"
#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

std::string text_of_breach(const Attempt& attempt, const std::string& rule) {
    for (const auto& one : attempt.breaches())
        if (one.rule == rule) return one.text;
    return {};
}

Job with_fluid(double reads) {
    Job job = test_job();
    job.kit.of(Instrument::leak_fluid).reads = reads;
    return job;
}

const Acts point_used{"leak test with fluid", "shut gas at heater", "open test point inlet",
                      "close test point inlet", "open gas at heater"};

TEST(LeakTest, WithFluidThatDoesNotFoamProvesNothing) {
    for (const bool foams : {true, false}) {
        Attempt attempt(with_fluid(foams ? 1.0 : 0.3), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, point_used + Acts{"leak test with fluid", "hand in"}), "");
        EXPECT_EQ(broke(attempt, "no_leak_test"), !foams) << all_shown(attempt);
    }
    Attempt spare(with_fluid(0.3), 7, Mode::assessed);
    ASSERT_EQ(play(spare, Acts{"take spare leak fluid"} + point_used +
                              Acts{"leak test with fluid", "hand in"}),
              "");
    EXPECT_FALSE(broke(spare, "no_leak_test")) << all_shown(spare);
}

/// What the eye cannot see the shadows are not told either.
TEST(LeakTest, WithFluidThatDoesNotFoamShowsNoBubblesAtAWeepingUnion) {
    Job job = with_fluid(0.3);
    job.faults = {fault(Cause::gas_union_weeps)};
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"leak test with fluid"}), "");
    for (const auto& seen : attempt.log().back().observations) {
        EXPECT_EQ(seen.quantity, Quantity::union_bubbles);
        EXPECT_EQ(seen.value, 0.0);
    }
}

/// The acts of a script on the inside of an attempt; nothing of them is judged.
void do_all(Workplace& house, const Acts& sentences) {
    for (const auto& sentence : sentences) {
        const auto parsed = parse_act(sentence, house.job);
        ASSERT_TRUE(std::holds_alternative<Act>(parsed)) << sentence;
        const Act& act = std::get<Act>(parsed);
        doing_of(act.verb).effect(house, act);
        if (doing_of(act.verb).when == Doing::When::after) house.pass(seconds_of(act));
    }
}

TEST(LeakTest, ByAManometerThatShowsNoPressureHeldProvesNothing) {
    const Acts zero{"zero manometer"}, hose{"attach manometer to inlet"};
    const Acts shut{"open gas at heater", "wait 5 s", "shut gas at meter"};
    for (const bool zeroed_open : {true, false}) {
        Workplace house(test_job(), 7, Mode::assessed, nullptr);
        do_all(house, {"shut gas at heater", "open test point inlet"});
        do_all(house, zeroed_open ? zero + hose + shut : hose + shut + zero);
        do_all(house, {"leak test by pressure hold"});
        EXPECT_EQ(house.deeds.leak_test != never, zeroed_open) << house.entry.shown.back();
    }
}

const Acts electrode = dead + dressed +
                       Acts{"clean flame electrode", "refit cover", "unlock plug", "plug in heater",
                            "switch power on"};
const Acts draught_at_its_worst{"run rangehood", "open bath tap", "wait 60 s",
                                "test draught with smoke", "hand in"};

TEST(DraughtTest, WhoseSmokeIsNotDrawnInProvesNothing) {
    for (const bool draws : {true, false}) {
        Attempt attempt(open_flue(draws ? 0.001 : 0.12), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, electrode + draught_at_its_worst), "");
        EXPECT_EQ(broke(attempt, "draught_untested"), !draws) << all_shown(attempt);
        if (draws) continue;
        EXPECT_EQ(text_of_breach(attempt, "draught_untested"),
                  "The smoke of the latest draught test was not drawn in.");
    }
}

/// A repair with a reading of its own, once taken where it shows the repair and once where it cannot.
struct OwnProof {
    const char* name;
    Job job;
    Acts repair, good, bad;
};
void PrintTo(const OwnProof& one, std::ostream* out) {
    *out << one.name;
}

Job with_tube() {
    Job job = test_job({fault(Cause::air_tube_water, 0.8)});
    job.healthy = plant::with_air_tube(job.healthy);
    job.settings.air_by_tube = 1.0;
    return job;
}

Job with_companion() {
    Job job = test_job({fault(Cause::companion_link_open)});
    job.site.taps.at(2) = test_tap("bath tap", 40.0);
    job.healthy = plant::with_companion(job.healthy, job.settings.full_heat_input_w);
    job.settings.companion = 1.0;
    return job;
}

Job with_tempering() {
    Job job = test_job({fault(Cause::tempering_valve_worn, 0.6)});
    job.panel.set_point_k = 327.15;
    job.site.taps.at(2).tempered = true;
    return job;
}

Job with_gauge(double reads) {
    Job job = test_job({fault(Cause::night_pressure_high)});
    job.kit.of(Instrument::water_gauge).reads = reads;
    return job;
}

/// A second tube leaks, which the work on the first leaves as it is.
Job with_tube_that_leaks(double other_leak_gain) {
    Job job = test_job({fault(Cause::pinhole_inside, 0.6)});
    job.healthy.casing_leak_gain = other_leak_gain;
    return job;
}

/// Its lead has a resistance of its own, which a new sensor leaves as it is.
Job with_ambient_lead_of(double ohm) {
    Job job = test_job({fault(Cause::ambient_sensor_drift, 1.0)});
    job.healthy.ambient_sensor.series_ohm += ohm;
    return job;
}

Job with_bridge() {
    return test_job({fault(Cause::limiter_bridged)});
}

std::vector<OwnProof> own_proofs() {
    const Acts inside = dead + dressed;
    const Acts back{"refit cover", "unlock plug", "plug in heater", "switch power on", "wait 10 s"};
    const Acts drained{"shut water at heater", "drain heater"};
    const Acts blown{"unlock plug",   "plug in heater", "switch power on",          "wait 10 s",
                     "open bath tap", "wait 60 s",      "measure air tube pressure"};
    const Acts valve = drained + Acts{"fit bridging conductor", "replace tempering valve",
                                      "take bridging conductor off", "open water at heater"};
    const Acts limiter = drained + Acts{"fit bridging conductor", "fit pressure limiting valve",
                                        "take bridging conductor off", "open water at heater",
                                        "measure water pressure"};
    const Acts tube = drained + Acts{"replace leaking tube", "open water at heater", "wait 5 min",
                                     "look at case floor"};
    const Acts ambient = Acts{"replace ambient sensor"} + back +
                         Acts{"open service readout", "read readout ambient temperature"};
    return {
        {"LimiterLeads",
         with_bridge(),
         inside,
         {"restore overheat limiter", "look at limiter leads"},
         {"replace overheat limiter", "look at limiter leads"}},
        {"AirTube",
         with_tube(),
         inside + Acts{"drain air tube"},
         blown,
         {"measure air tube pressure"}},
        {"Companion",
         with_companion(),
         inside + Acts{"remake link between heaters"} + back,
         {"open bath tap", "wait 2 min", "look at companion heater"},
         {"open kitchen tap a little", "wait 2 min", "look at companion heater"}},
        {"TemperedTap",
         with_tempering(),
         valve,
         {"open bath tap", "wait 90 s", "measure temperature at bath tap"},
         {"turn off heater", "open bath tap", "wait 90 s", "measure temperature at bath tap"}},
        {"WaterGauge", with_gauge(1.0), {}, limiter, {}},
        {"LeakingTube", with_tube_that_leaks(0.0), inside, tube, {}},
        {"LeakingTubeBesideAnother", with_tube_that_leaks(6.0e-9), inside, {}, tube},
        {"AmbientSensor", with_ambient_lead_of(0.0), inside, ambient, {}},
        {"AmbientSensorOnABadLead", with_ambient_lead_of(20.0e3), inside, {}, ambient},
        {"WaterGaugeThatReadsFarTooHigh", with_gauge(2.0), {}, {}, limiter},
    };
}

class RepairWithAReadingOfItsOwn : public testing::TestWithParam<OwnProof> {};

TEST_P(RepairWithAReadingOfItsOwn, IsProvedByARightReadingAndByNoOther) {
    const OwnProof& one = GetParam();
    for (const bool good : {true, false}) {
        const Acts& proof = good ? one.good : one.bad;
        if (proof.empty()) continue;
        Attempt attempt(one.job, 7, Mode::assessed);
        ASSERT_EQ(play(attempt, one.repair + proof + Acts{"hand in"}), "") << all_shown(attempt);
        EXPECT_EQ(broke(attempt, "not_proved"), !good) << all_shown(attempt);
        if (good) continue;
        EXPECT_NE(text_of_breach(attempt, "not_proved").find("it was not as it should be at"),
                  std::string::npos)
            << text_of_breach(attempt, "not_proved");
    }
}

INSTANTIATE_TEST_SUITE_P(Each, RepairWithAReadingOfItsOwn, testing::ValuesIn(own_proofs()),
                         [](const auto& one) { return std::string(one.param.name); });

/// The words for a heater that nobody can use say why.
TEST(Leaving, NamesTheSafetySwitchWhereThatIsWhatStandsOpen) {
    Attempt open(test_job({fault(Cause::moisture_in_heater)}), 7, Mode::assessed);
    ASSERT_EQ(play(open, {"hand in"}), "");
    EXPECT_EQ(text_of_breach(open, "services_off"),
              "The safety switch was left open without a tag.");
    Attempt shut(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(shut, {"shut gas at meter", "hand in"}), "");
    EXPECT_EQ(text_of_breach(shut, "services_off"),
              "Power, gas or water was left off without a tag.");
    const auto says = [](const Attempt& attempt, const char* words) {
        const auto left = attempt.truth().left_behind;
        return std::find(left.begin(), left.end(), words) != left.end();
    };
    EXPECT_TRUE(says(open, "the safety switch is open"));
    EXPECT_FALSE(says(shut, "the safety switch is open"));
    EXPECT_TRUE(says(shut, "power, gas or water is off"));
}

/// The new tube comes with a dry case, so that a look into it proves something; what still leaks wets it again.
TEST(CaseFloor, IsDryOnceTheLeakingTubeIsNewAndStaysWetUnderDriedWiring) {
    const Acts open = dead + dressed, look{"look at case floor"};
    const Acts drained{"shut water at heater", "drain heater"}, on{"open water at heater"};
    const auto looks = [](const Attempt& attempt) {
        return static_cast<std::size_t>(attempt.log().back().observations.at(0).value);
    };
    for (const char* work : {"replace leaking tube", "dry and reseal wiring"}) {
        Attempt attempt(test_job({fault(Cause::pinhole_inside, 0.6)}), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, open + look), "");
        EXPECT_EQ(looks(attempt), case_wet);
        ASSERT_EQ(play(attempt, drained + Acts{work} + on + Acts{"wait 5 min"} + look), "");
        const bool tube = std::string_view(work) == "replace leaking tube";
        EXPECT_EQ(looks(attempt), tube ? case_dry : case_wet) << work;
        ASSERT_EQ(play(attempt, {"hand in"}), "");
        EXPECT_EQ(text_of_breach(attempt, "not_proved"), "") << work;
    }
}

}  // namespace
}  // namespace emberpath::worksite
