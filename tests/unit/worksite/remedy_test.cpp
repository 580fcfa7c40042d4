// Proves that each cause is cured by its own remedy, exactly, and by no other; and that remedies which only
// hand on change nothing in the plant.

#include <gtest/gtest.h>

#include <cstring>

#include "sim/worksite/acts.hpp"
#include "sim/worksite/complaint.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using faults::Remedy;

bool same(const plant::PlantParameters& a, const plant::PlantParameters& b) {
    return std::memcmp(&a, &b, sizeof a) == 0;
}

std::vector<Cause> every_cause() {
    std::vector<Cause> all;
    for (const auto& row : faults::catalogue()) all.push_back(row.cause);
    return all;
}

const std::vector<std::string> to_the_readout{"plug in heater", "switch power on", "wait 10 s",
                                              "open service readout"};

/// The manometer at the manifold, cover off, burner running.
const std::vector<std::string> to_a_burning_heater{"open test point manifold",
                                                   "zero manometer",
                                                   "attach manometer to manifold",
                                                   "open gas at heater",
                                                   "open water at heater",
                                                   "plug in heater",
                                                   "switch power on",
                                                   "wait 10 s",
                                                   "open bath tap",
                                                   "wait 40 s"};

class EachCause : public testing::TestWithParam<Cause> {};

TEST_P(EachCause, IsCuredByItsRemedyAndByNoOther) {
    const auto& what = faults::info(GetParam());
    const std::vector faults{fault(what.cause, what.greatest_severity)};
    const Job job = what.cylinder_only ? cylinder_job(faults) : test_job(faults);
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(
        play(attempt, {"switch power off", "unplug heater", "shut water at heater", "drain heater",
                       "shut gas at heater", "put on gloves", "take cover off"}),
        "");
    const auto faulty = attempt.truth().heater.parameters;
    for (std::size_t r = 0; r < faults::remedy_count; ++r) {
        const auto remedy = static_cast<Remedy>(r);
        if (remedy == what.remedy) continue;
        if (remedy == Remedy::correct_settings) continue;  // at the lit panel: the next test
        if (remedy == Remedy::set_manifold_pressure) {
            EXPECT_NE(play(attempt, {"set manifold pressure to plate"}), "") << "nothing burns";
            continue;
        }
        if (remedy == Remedy::change_cylinder && !what.cylinder_only) continue;
        ASSERT_EQ(play(attempt, {sentence_of(remedy, job.site.gas)}), "");
        EXPECT_TRUE(same(attempt.truth().heater.parameters, faulty)) << r;
        EXPECT_EQ(attempt.truth().remaining.size(), 1U);
    }
    if (what.remedy == Remedy::correct_settings) {
        ASSERT_EQ(play(attempt, to_the_readout), "");
    }
    if (what.remedy == Remedy::set_manifold_pressure) {
        ASSERT_EQ(play(attempt, to_a_burning_heater), "");
    }
    ASSERT_EQ(play(attempt, {sentence_of(what.remedy, job.site.gas)}), "");
    EXPECT_EQ(attempt.log().back().remedy, static_cast<int>(what.remedy));
    EXPECT_TRUE(attempt.truth().remaining.empty());
    const auto& after = works_at_once(what.remedy) ? job.healthy : faulty;
    EXPECT_TRUE(same(attempt.truth().heater.parameters, after));
}

TEST_P(EachCause, IsCuredByStoringSettingsOnlyWhereTheyAreWrong) {
    const auto& what = faults::info(GetParam());
    const std::vector faults{fault(what.cause, what.greatest_severity)};
    const Job job = what.cylinder_only ? cylinder_job(faults) : test_job(faults);
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"switch power off", "unplug heater", "take cover off"}), "");
    const bool wrong = what.remedy == Remedy::correct_settings;
    if (!play(attempt, to_the_readout).empty()) {
        EXPECT_FALSE(wrong) << "the panel is dark: nothing can be stored";
        return;
    }
    ASSERT_EQ(play(attempt, {"correct installer settings"}), "");
    EXPECT_EQ(attempt.truth().remaining.empty(), wrong);
}

INSTANTIATE_TEST_SUITE_P(Causes, EachCause, testing::ValuesIn(every_cause()), [](const auto& i) {
    std::string name(faults::info(i.param).word);
    std::erase(name, '_');
    return name;
});

TEST(Cylinder, IsFullAfterItWasChanged) {
    Attempt attempt(cylinder_job({fault(Cause::cylinder_low, 0.95)}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"weigh cylinder"}), "");
    EXPECT_LT(attempt.log().back().observations[0].value, 5.0);
    ASSERT_EQ(play(attempt, {"leak test with fluid", "shut gas at cylinder", "change cylinder",
                             "weigh cylinder"}),
              "");
    EXPECT_GT(attempt.log().back().observations[0].value, 40.0);
    EXPECT_TRUE(attempt.breaches().empty());
}

TEST(Regulator, BelongsToWhoeverSuppliesTheGas) {
    Attempt mains(test_job({fault(Cause::regulator_droop)}), 7, Mode::assessed);
    ASSERT_EQ(play(mains, {"escalate regulator to gas supplier"}), "");
    EXPECT_EQ(mains.truth().remaining.size(), 1U);
    ASSERT_EQ(play(mains, {"escalate regulator to distributor"}), "");
    EXPECT_TRUE(mains.truth().remaining.empty());
    Attempt cylinder(cylinder_job({fault(Cause::regulator_droop)}), 7, Mode::assessed);
    ASSERT_EQ(play(cylinder, {"escalate regulator to gas supplier"}), "");
    EXPECT_TRUE(cylinder.truth().remaining.empty());
}

TEST(RaisedRegulator, LiftsTheWorkingPressureAndIsCritical) {
    Attempt attempt(test_job({fault(Cause::regulator_droop)}), 7, Mode::assessed);
    const std::vector<std::string> read{"wait 20 s", "read manometer"};
    ASSERT_EQ(play(attempt, {"shut gas at heater", "open test point inlet", "zero manometer",
                             "attach manometer to inlet", "open gas at heater", "open bath tap"}),
              "");
    ASSERT_EQ(play(attempt, read), "");
    const double before = attempt.log().back().observations[0].value;
    ASSERT_EQ(play(attempt, {"raise supply regulator"}), "");
    ASSERT_EQ(play(attempt, read), "");
    EXPECT_GT(attempt.log().back().observations[0].value, before + 150.0);
    EXPECT_TRUE(attempt.breaches().at(0).critical);
    ASSERT_EQ(play(attempt, {"set supply regulator back"}), "");
    ASSERT_EQ(play(attempt, read), "");
    EXPECT_NEAR(attempt.log().back().observations[0].value, before, 60.0);
}

TEST(HiddenFault, BeginsAtItsOnset) {
    auto late = fault(Cause::igniter_failed);
    late.onset_s = 400.0;
    Attempt attempt(test_job({late}), 7, Mode::assessed);
    EXPECT_EQ(attempt.truth().heater.parameters.igniter_works, 1.0);
    ASSERT_EQ(play(attempt, {"wait 4 min"}), "");
    EXPECT_EQ(attempt.truth().heater.parameters.igniter_works, 0.0);
}

// --- complaints from the simulated history ---

Job with_showers(Job job, double minutes, int times) {
    job.site.events.clear();
    for (int i = 0; i < times; ++i) {
        const double at = 60.0 + i * (minutes * 60.0 + 120.0);
        job.site.events.push_back({at, HouseholdEvent::Kind::tap, 1, 1.0});
        job.site.events.push_back({at + minutes * 60.0, HouseholdEvent::Kind::tap, 1, 0.0});
    }
    job.site.arrival_s = 120.0 + times * (minutes * 60.0 + 120.0);
    return job;
}

TEST(Household, ComplainsOfWhatItGot) {
    const auto of = [](Job job) { return simulated_complaint(job, 7); };
    EXPECT_EQ(of(with_showers(test_job(), 4.0, 3)), Complaint::none);
    EXPECT_EQ(of(with_showers(test_job({fault(Cause::igniter_failed)}), 4.0, 3)),
              Complaint::no_hot_water);
    Job small = with_showers(test_job({fault(Cause::outlet_sensor_drift, 1.0)}), 4.0, 3);
    small.site.taps[1] =
        test_tap("shower", 6.0);  // at full fire the heater cannot overheat the water
    EXPECT_EQ(of(small), Complaint::too_hot);
    EXPECT_EQ(of(with_showers(test_job({fault(Cause::outlet_sensor_drift, -0.6)}), 4.0, 3)),
              Complaint::not_hot_enough);
    Job winter = with_showers(cylinder_job({fault(Cause::cylinder_low, 0.94)}), 25.0, 1);
    winter.site.ambient_k = 278.15;
    EXPECT_EQ(of(winter), Complaint::goes_cold_after_a_while);
}

TEST(Household, CallsAFaultThatComesAndGoesByItsName) {
    auto fading = fault(Cause::igniter_failed);
    fading.period_s = 1.0e6;  // absent again after the first shower
    fading.present_s = 200.0;
    Job job = with_showers(test_job({fading}), 4.0, 4);
    job.site.events.push_back({350.0, HouseholdEvent::Kind::reset, 0, 1.0});
    EXPECT_EQ(simulated_complaint(job, 7), Complaint::drops_out_now_and_then);
}

}  // namespace
}  // namespace emberpath::worksite
