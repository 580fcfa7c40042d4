// Proves that shadows and readings find the cause: for eleven causes on mains and cylinder, at severities between
// two shadows, a sensible set of readings with instrument error puts the true class first.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <string>

#include "sim/scoring/ledger.hpp"
#include "sim/scoring/posterior.hpp"
#include "sim/scoring/shadow_bank.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using worksite::GasKind;
using worksite::Quantity;

struct Case {
    Cause cause;
    GasKind gas;
    double share;  // of the symptomatic range; no multiple of 1/6, so never a shadow's own severity
    double sign = 1.0;
    friend std::ostream& operator<<(std::ostream& out, const Case& c) {
        return out << faults::info(c.cause).word << " at " << c.share * c.sign;
    }
};

worksite::Job job_with(const Case& c) {
    worksite::Job job = plain_job(c.gas);
    if (c.cause == Cause::no_fault) return job;
    const faults::CauseInfo& info = faults::info(c.cause);
    const double severity =
        info.on_off ? 1.0
                    : c.sign * (info.least_severity +
                                c.share * (info.greatest_severity - info.least_severity));
    job.faults = {{c.cause, severity}};
    return job;
}

// One fixed round a careful person would make; nothing depends on the cause.
void work_through(DrivenHouse& house) {
    house.live_until_arrival();
    house.recorder().mark();
    house.read(Quantity::display_word);
    house.read(Quantity::readout_event);
    house.read(Quantity::flue_terminal);
    if (house.job().site.gas == GasKind::propane_cylinder) house.read(Quantity::cylinder_mass);
    house.press_reset();
    house.run(5.0);
    worksite::ToolSetup tools;
    tools.watching = tools.listening = tools.analyser_sampling = true;
    tools.tap_opening_share = 1.0;
    tools.manometer = Quantity::gas_inlet_pressure;
    house.tools(tools);
    house.open_taps(0.25);
    house.run(6.0);
    house.read(Quantity::spark);
    house.read(Quantity::flame);
    house.read(Quantity::light_up_sound);
    house.run(84.0);
    house.read(Quantity::readout_flow);
    house.read(Quantity::gas_inlet_pressure);
    house.read(Quantity::flue_co2);
    house.read(Quantity::tap_temperature);
    house.read(Quantity::readout_outlet);
    house.read(Quantity::flame);
    house.open_taps(1.0);
    house.run(90.0);
    house.read(Quantity::gas_inlet_pressure);
    house.read(Quantity::flame);
    house.read(Quantity::flue_co2);
    house.read(Quantity::flue_co);
    house.read(Quantity::flue_temperature);
    house.read(Quantity::readout_flame);
    house.read(Quantity::readout_fan);
    house.read(Quantity::tap_temperature);
    house.read(Quantity::readout_outlet);
    house.read(Quantity::display_word);
    tools.manometer = Quantity::regulator_pressure;
    house.tools(tools);
    house.run(10.0);
    house.read(Quantity::regulator_pressure);
    if (house.job().site.gas == GasKind::propane_cylinder) {
        house.run(1500.0);  // until the frost line shows how full it is
        house.read(Quantity::cylinder_frost);
    }
    house.open_tap_alone(1);
    house.run(30.0);
    tools.tap = 1;
    house.tools(tools);
    house.read(Quantity::tap_flow);
    house.read(Quantity::readout_flow);
    house.open_taps(0.0);
    house.run(60.0);
    house.read(Quantity::regulator_pressure);
    house.read(Quantity::gas_valve_handle);
    house.read(Quantity::outlet_ohms);
    house.read(Quantity::outlet_pipe_temperature);
    house.read(Quantity::exchanger_ohms);
    house.read(Quantity::exchanger_pipe_temperature);
    house.read(Quantity::readout_ambient);
    house.read(Quantity::terminal_volts);
    house.read(Quantity::electrode_tip);
    house.read(Quantity::exchanger_fins);
}

Posterior weigh(const DrivenHouse& house, const Shadows& shadows) {
    Posterior posterior(shadows.hypotheses);
    for (std::size_t i = 0; i < house.tape().observations.size(); ++i)
        posterior.add(as_reading(house.tape().observations[i], house.tape().cycles[i]),
                      shadows.observed[i]);
    return posterior;
}

std::string summary(const Posterior& posterior) {
    std::string text;
    const auto classes = posterior.classes();
    for (std::size_t i = 0; i < classes.size(); ++i)
        if (classes[i] > 0.001)
            text += remedy_title(Class::at(i)) + " " + std::to_string(classes[i]) + "; ";
    return text;
}

class EveryCause : public ::testing::TestWithParam<Case> {};

TEST_P(EveryCause, OffTheGridIsFoundFirst) {
    DrivenHouse house(job_with(GetParam()), 4711);
    work_through(house);
    const Shadows shadows = run_shadows(house.job(), house.tape(), 2);
    const Posterior posterior = weigh(house, shadows);
    const auto truth = static_cast<std::size_t>(faults::info(GetParam().cause).remedy);
    const std::vector<double> classes = posterior.classes();
    EXPECT_EQ(std::max_element(classes.begin(), classes.end()) - classes.begin(),
              static_cast<std::ptrdiff_t>(truth))
        << summary(posterior);
    EXPECT_GT(classes[truth], 0.8) << summary(posterior);
}

INSTANTIATE_TEST_SUITE_P(
    Catalogue, EveryCause,
    ::testing::Values(Case{Cause::no_fault, GasKind::natural_gas, 0.0},
                      Case{Cause::flue_blocked, GasKind::natural_gas, 0.58},
                      Case{Cause::flue_blocked, GasKind::natural_gas, 0.90},
                      Case{Cause::wind_gust, GasKind::natural_gas, 0.58},
                      Case{Cause::cylinder_low, GasKind::propane_cylinder, 0.58},
                      Case{Cause::cylinder_low, GasKind::propane_cylinder, 0.90},
                      Case{Cause::cylinder_low, GasKind::propane_cylinder, 0.92},
                      Case{Cause::wind_gust, GasKind::natural_gas, 0.08},
                      Case{Cause::gas_pipe_restriction, GasKind::natural_gas, 0.58},
                      Case{Cause::gas_pipe_restriction, GasKind::natural_gas, 0.25},
                      Case{Cause::regulator_droop, GasKind::natural_gas, 0.58},
                      Case{Cause::regulator_droop, GasKind::natural_gas, 0.25},
                      Case{Cause::outlet_sensor_open, GasKind::natural_gas, 1.0},
                      Case{Cause::outlet_sensor_drift, GasKind::natural_gas, 0.58},
                      Case{Cause::outlet_sensor_drift, GasKind::natural_gas, 0.58, -1.0},
                      Case{Cause::electrode_fouled, GasKind::natural_gas, 0.58},
                      Case{Cause::igniter_failed, GasKind::natural_gas, 1.0},
                      Case{Cause::exchanger_sooted, GasKind::natural_gas, 0.58},
                      Case{Cause::exchanger_sooted, GasKind::natural_gas, 0.90}));

TEST(ShadowBank, GivesTheSameBitsOnOneThreadAndOnThree) {
    DrivenHouse house(job_with({Cause::flue_blocked, GasKind::natural_gas, 0.58}), 12);
    house.live_until_arrival();
    house.open_taps(1.0);
    house.run(30.0);
    house.read(Quantity::gas_inlet_pressure);
    house.read(Quantity::flue_co);
    const Shadows one = run_shadows(house.job(), house.tape(), 1);
    const Shadows three = run_shadows(house.job(), house.tape(), 3);
    EXPECT_EQ(one.observed, three.observed);
    EXPECT_EQ(one.complaints, three.complaints);
}

TEST(ShadowBank, LooksAtNoHiddenFault) {
    DrivenHouse house(job_with({Cause::flue_blocked, GasKind::natural_gas, 0.58}), 12);
    house.live_until_arrival();
    house.read(Quantity::display_word);
    worksite::Job without = house.job();
    without.faults.clear();
    EXPECT_EQ(run_shadows(house.job(), house.tape(), 1).observed,
              run_shadows(without, house.tape(), 1).observed);
}

TEST(ShadowBank, ACuredShadowShowsTheSoundHouse) {
    DrivenHouse house(job_with({Cause::igniter_failed, GasKind::natural_gas, 1.0}), 12);
    house.live_until_arrival();
    house.read(Quantity::flame);
    house.remedy(faults::Remedy::replace_igniter);
    house.press_reset();
    house.run(20.0);
    house.open_taps(1.0);
    house.run(300.0);
    house.read(Quantity::gas_inlet_pressure);
    const Shadows shadows = run_shadows(house.job(), house.tape(), 1);
    const std::size_t sound = sound_house(shadows.hypotheses);
    for (std::size_t i = 0; i < shadows.hypotheses.size(); ++i) {
        if (shadows.hypotheses[i].fault.cause != Cause::igniter_failed) continue;
        EXPECT_NEAR(shadows.observed[1][i], shadows.observed[1][sound], 1.0);
    }
}

/// Severities of one cause or pair and sign, lowest first.
std::vector<double> severities_from(const std::vector<Hypothesis>& all, std::size_t first) {
    std::vector<double> found;
    for (int i = static_cast<int>(first); i >= 0; i = all[static_cast<std::size_t>(i)].upper)
        found.push_back(std::abs(all[static_cast<std::size_t>(i)].fault.severity));
    std::sort(found.begin(), found.end());
    return found;
}

const std::array sites{
    faults::SiteTraits{}, faults::SiteTraits{.cylinder = true},
    faults::SiteTraits{.open_flue = true, .tempering_valve = true, .wall_controllers = 2},
    faults::SiteTraits{.cylinder = true,
                       .cylinder_pair = true,
                       .open_flue = true,
                       .tempering_valve = true,
                       .night = true,
                       .high_set_value = true,
                       .air_tube = true,
                       .companion = true,
                       .outlets = 4,
                       .wall_controllers = 2}};

TEST(Hypotheses, CanAllOccurAtTheSiteAndHavePriorsThatSumToOne) {
    for (const faults::SiteTraits& site : sites) {
        double prior = 0.0;
        for (const Hypothesis& h : hypotheses(site)) {
            EXPECT_GT(h.prior, 0.0);
            prior += h.prior;
            EXPECT_TRUE(faults::can_act(faults::info(h.fault.cause), site));
        }
        EXPECT_NEAR(prior, 1.0, 1e-12);
    }
}

TEST(Hypotheses, SpanTheSymptomaticRangeWithFiveToNineSeveritiesOrAFewWhereLittleShows) {
    for (const faults::SiteTraits& site : sites) {
        const auto all = hypotheses(site);
        int graded = 0, usual = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i].lower >= 0 || all[i].is_pair()) continue;
            const faults::CauseInfo& info = faults::info(all[i].fault.cause);
            const std::vector<double> found = severities_from(all, i);
            if (info.on_off || info.cause == Cause::no_fault) {
                EXPECT_EQ(found.size(), 1U) << info.word;
                continue;
            }
            ++graded;
            usual += found.size() >= 5 ? 1 : 0;
            EXPECT_GE(found.size(), 3U) << info.word;
            EXPECT_NEAR(found.front(), info.least_severity, 1e-12) << info.word;
            EXPECT_NEAR(found.back(), info.greatest_severity, 1e-12) << info.word;
            EXPECT_EQ(std::adjacent_find(found.begin(), found.end(), std::greater_equal<>()),
                      found.end())
                << info.word;
        }
        EXPECT_GT(2 * usual, graded);
    }
}

}  // namespace
}  // namespace emberpath::scoring
