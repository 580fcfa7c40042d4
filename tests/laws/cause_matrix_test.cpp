// Proves that each cause moves a named reading the right way at five severities of its range and shows at each of
// them, that no row of docs/cause_matrix.md is empty, and that the page is what the simulation gives.

#include "tests/laws/cause_matrix.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <ostream>
#include <sstream>
#include <string>
#include <vector>

namespace emberpath::laws {
namespace {

using faults::Cause;
using worksite::Quantity;

/// Where to look for a cause, and which way the reading goes: up, down, or to another word.
struct Expected {
    Cause cause;
    Quantity quantity;
    Occasion occasion;
    int direction;  // +1, -1; 0 for another word
    double sign = 1.0;
};

std::ostream& operator<<(std::ostream& out, const Expected& e) {
    return out << faults::info(e.cause).word << (e.sign < 0.0 ? ", negative" : "") << ": "
               << worksite::info(e.quantity).title << ", " << title(e.occasion);
}

// clang-format off
using C = Cause;
using Q = Quantity;
using O = Occasion;
constexpr Expected expected[] = {
    {C::flue_blocked, Q::flue_terminal, O::standby, 0},
    {C::wind_gust, Q::flame, O::small_draw, 0},
    {C::cylinder_low, Q::cylinder_mass, O::standby, -1},
    {C::gas_pipe_restriction, Q::gas_inlet_pressure, O::full_draw, -1},
    {C::regulator_droop, Q::regulator_pressure, O::full_draw, -1},
    {C::outlet_sensor_open, Q::outlet_ohms, O::standby, +1},
    {C::outlet_sensor_drift, Q::outlet_ohms, O::standby, +1},
    {C::outlet_sensor_drift, Q::outlet_ohms, O::standby, -1, -1.0},
    {C::electrode_fouled, Q::flame_current, O::full_draw, -1},
    {C::igniter_failed, Q::spark, O::light_up, 0},
    {C::exchanger_sooted, Q::exchanger_fins, O::standby, 0},
    {C::injector_blocked, Q::flame_current, O::full_draw, -1},
    {C::gas_valve_stuck_low, Q::manifold_pressure, O::full_draw, -1},
    {C::gas_valve_stuck_high, Q::display_word, O::small_draw, 0},
    {C::propane_in_gas, Q::flue_co2, O::light_up, +1},
    {C::strainer_blocked, Q::tap_flow, O::full_draw, -1},
    {C::water_valve_stuck_open, Q::tap_flow, O::full_draw, +1},
    {C::water_valve_stuck_shut, Q::tap_flow, O::full_draw, -1},
    {C::bypass_stuck, Q::exchanger_ohms, O::small_draw, -1},
    {C::flow_sensor_dragging, Q::readout_flow, O::middle_draw, -1},
    {C::exchanger_scaled, Q::readout_event, O::full_draw, 0},
    {C::outlet_sensor_short, Q::outlet_ohms, O::standby, -1},
    {C::inlet_sensor_open, Q::inlet_ohms, O::standby, +1},
    {C::inlet_sensor_short, Q::inlet_ohms, O::standby, -1},
    {C::inlet_sensor_drift, Q::inlet_ohms, O::standby, +1},
    {C::inlet_sensor_drift, Q::inlet_ohms, O::standby, -1, -1.0},
    {C::exchanger_sensor_open, Q::exchanger_ohms, O::standby, +1},
    {C::exchanger_sensor_short, Q::exchanger_ohms, O::standby, -1},
    {C::exchanger_sensor_drift, Q::exchanger_ohms, O::standby, +1},
    {C::exchanger_sensor_drift, Q::exchanger_ohms, O::standby, -1, -1.0},
    {C::fan_worn, Q::flue_o2, O::full_draw, -1},
    {C::tachometer_low, Q::fan_sound, O::full_draw, 0},
    {C::limiter_open, Q::readout_event, O::standby, 0},
    {C::gas_setting_wrong, Q::manifold_pressure, O::light_up, +1},
    {C::ambient_sensor_open, Q::readout_ambient, O::standby, -1},
    {C::ambient_sensor_short, Q::readout_ambient, O::standby, +1},
    {C::ambient_sensor_drift, Q::readout_ambient, O::standby, -1},
    {C::ambient_sensor_drift, Q::readout_ambient, O::standby, +1, -1.0},
    {C::earth_missing, Q::earth_ohms, O::standby, +1},
    {C::supply_swapped, Q::neutral_earth_volts, O::standby, +1},
    {C::neutral_broken, Q::pipe_volts, O::standby, +1},
    {C::supply_sags, Q::terminal_volts, O::standby, -1},
    {C::moisture_in_heater, Q::insulation_ohms, O::standby, -1},
    {C::valve_lead_chafed, Q::board_fuse, O::full_draw, 0},
    {C::valve_coil_open, Q::valve_coil_ohms, O::standby, +1},
    {C::igniter_lead_cracked, Q::spark_path, O::light_up, 0},
    {C::flame_lead_broken, Q::flame_lead_ohms, O::standby, +1},
    {C::gas_isolator_part_shut, Q::gas_valve_handle, O::standby, 0},
    {C::gas_isolator_part_shut, Q::gas_inlet_pressure, O::full_draw, 0},  // higher once the flame is lost
    {C::gas_screen_blocked, Q::manifold_pressure, O::full_draw, -1},
    {C::regulator_creeps, Q::regulator_pressure, O::standby, +1},
    {C::gas_union_weeps, Q::union_bubbles, O::standby, 0},
    {C::wrong_injectors, Q::flue_o2, O::light_up, +1},
    {C::high_fire_overset, Q::readout_manifold_command, O::full_draw, -1},
    {C::boil_off_small, Q::gas_inlet_pressure, O::long_draw, 0},  // the same
    {C::changeover_stuck, Q::gas_inlet_pressure, O::standby, -1},
    {C::second_stage_passes, Q::gas_inlet_pressure, O::full_draw, +1},
    {C::air_tube_water, Q::air_tube_needle, O::full_draw, 0},
    {C::companion_link_open, Q::companion_link_ohms, O::standby, +1},
    {C::intake_felted, Q::air_intake, O::standby, 0},
    {C::products_drawn_back, Q::intake_o2, O::full_draw, -1},
    {C::chamber_seam_open, Q::chamber_outside, O::standby, 0},
    {C::open_flue_blocked, Q::diverter_smoke, O::full_draw, 0},
    {C::room_too_tight, Q::diverter_smoke, O::full_draw, 0},
    {C::light_up_late, Q::flame, O::light_up, 0},
    {C::outlet_clogged, Q::readout_flow, O::middle_draw, -1},
    {C::flow_sensor_sticks, Q::readout_flow, O::small_draw, -1},
    {C::flow_sensor_wrong, Q::readout_flow, O::middle_draw, +1},
    {C::pinhole_inside, Q::casing_wet, O::standby, 0},
    {C::night_pressure_high, Q::water_pressure, O::standby, +1},
    {C::mixer_cross_flow, Q::tap_flow, O::cold_shut, +1},
    {C::tempering_valve_worn, Q::tap_temperature, O::full_draw, -1},
    {C::outlet_sensor_opens_warm, Q::readout_event, O::middle_draw, 0},
    {C::limiter_weak, Q::readout_event, O::full_draw, 0},
    {C::priority_elsewhere, Q::setting_priority, O::standby, 0},
    {C::link_cable_corroded, Q::link_wall_1_volts, O::standby, -1},
    {C::altitude_setting_wrong, Q::setting_altitude, O::standby, +1},
    {C::highest_setting_raised, Q::setting_highest, O::standby, +1},
    {C::second_supply, Q::terminal_volts, O::main_off, +1},
    {C::limiter_bridged, Q::limiter_leads, O::standby, 0},
};
// clang-format on

/// Below its greatest severity the chafed lead touches later than the occasions last, and a worn tempering valve
/// takes at first the 2 K that a household feels, where one reading of a thermometer is sure of 2.6 K.
bool shows_elsewhere(Cause cause, double severity) {
    const faults::CauseInfo& row = faults::info(cause);
    if (cause == Cause::valve_lead_chafed) return severity < row.greatest_severity;
    return cause == Cause::tempering_valve_worn && severity == row.least_severity;
}

void moves_the_right_way(const Expected& e) {
    const faults::CauseInfo& row = faults::info(e.cause);
    const auto q = static_cast<std::size_t>(e.quantity);
    const auto o = static_cast<std::size_t>(e.occasion);
    const double was = sound(premises_of(row)).on[o][q];
    const auto& all = found(e.cause, e.sign, premises_of(row));
    const std::vector<double> sizes = severities(row, e.sign);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (shows_elsewhere(e.cause, sizes[i])) continue;
        const double is = all[i].on[o][q];
        EXPECT_GE(apart(e.quantity, is, was), separable)
            << e << ", severity " << sizes[i] << ": " << worksite::text_of(e.quantity, was)
            << ", then " << worksite::text_of(e.quantity, is);
        if (e.direction != 0) {
            EXPECT_GT(e.direction * (is - was), 0.0) << e << ", severity " << sizes[i];
        }
    }
}

TEST(EveryCause, HasAReadingNamedForEachSign) {
    for (const faults::CauseInfo& row : faults::catalogue())
        for (const double sign : signs(row)) {
            bool named = row.cause == Cause::no_fault;
            for (const Expected& e : expected)
                named = named || (e.cause == row.cause && e.sign == sign);
            EXPECT_TRUE(named) << row.word << " " << sign;
        }
}

/// At every severity it is offered with, a cause shows on some instrument on some occasion.
void shows_over_its_whole_range(const faults::CauseInfo& row, double sign) {
    const std::vector<double> sizes = severities(row, sign);
    const auto& all = found(row.cause, sign, premises_of(row));
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (shows_elsewhere(row.cause, sizes[i])) continue;
        EXPECT_GE(apart(all[i], sound(premises_of(row)), instrument_sets.size() - 1), separable)
            << row.word << " " << sizes[i];
    }
}

/// One test, so that each house is simulated once. EMBERPATH_REGENERATE=1 rewrites the page.
TEST(CauseMatrix, EachCauseMovesItsReadingAndThePageIsWhatTheSimulationGives) {
    for (const Expected& e : expected) moves_the_right_way(e);
    for (const faults::CauseInfo& row : faults::catalogue())
        for (const double sign : signs(row))
            if (row.cause != Cause::no_fault) shows_over_its_whole_range(row, sign);
    const std::string name = std::string(EMBERPATH_SOURCE_DIR) + "/docs/cause_matrix.md";
    const std::string page = cause_matrix_page();
    EXPECT_EQ(page.find("No reading moves."), std::string::npos) << "a cause without effect";
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) std::ofstream(name) << page;
    std::ostringstream on_disk;
    on_disk << std::ifstream(name).rdbuf();
    EXPECT_TRUE(on_disk.str() == page) << "docs/cause_matrix.md is out of date; "
                                          "EMBERPATH_REGENERATE=1 rewrites it";
}

}  // namespace
}  // namespace emberpath::laws
