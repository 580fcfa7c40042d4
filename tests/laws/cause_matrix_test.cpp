// Proves that each cause moves a named reading the right way at the least, the middle and the greatest severity,
// that no row of docs/cause_matrix.md is empty, and that the page is what the simulation gives.

#include "tests/laws/cause_matrix.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <ostream>
#include <sstream>
#include <string>

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
};
// clang-format on

class EveryCause : public testing::TestWithParam<Expected> {};

TEST_P(EveryCause, MovesItsReadingTheRightWayAtEverySeverity) {
    const Expected& e = GetParam();
    const faults::CauseInfo& row = faults::info(e.cause);
    const auto q = static_cast<std::size_t>(e.quantity);
    const double was = find_on(e.occasion, Cause::no_fault, 0.0, row.cylinder_only)[q];
    const bool slow = e.cause == Cause::valve_lead_chafed;
    for (const double severity : severities(row, 3, e.sign)) {
        if (slow && severity == row.least_severity) continue;  // told of below
        const double is = find_on(e.occasion, e.cause, severity, row.cylinder_only)[q];
        EXPECT_GE(apart(e.quantity, is, was), separable)
            << "severity " << severity << ": " << worksite::text_of(e.quantity, was) << ", then "
            << worksite::text_of(e.quantity, is);
        if (e.direction != 0) {
            EXPECT_GT(e.direction * (is - was), 0.0) << "severity " << severity;
        }
    }
    if (slow)
        GTEST_SKIP() << "at its least severity the lead touches later than the occasions last; the "
                        "other severities were checked";
}

INSTANTIATE_TEST_SUITE_P(Catalogue, EveryCause, testing::ValuesIn(expected), [](const auto& row) {
    std::string name(faults::info(row.param.cause).word);
    if (row.param.sign < 0.0) name += "_negative";
    std::string camel;
    bool up = true;
    for (const char c : name) {
        if (c != '_') camel += up ? static_cast<char>(c - 'a' + 'A') : c;
        up = c == '_';
    }
    return camel;
});

TEST(EveryCause, HasAReadingNamedForEachSign) {
    for (const faults::CauseInfo& row : faults::catalogue())
        for (const double sign : signs(row)) {
            bool named = row.cause == Cause::no_fault;
            for (const Expected& e : expected)
                named = named || (e.cause == row.cause && e.sign == sign);
            EXPECT_TRUE(named) << row.word << " " << sign;
        }
}

/// EMBERPATH_REGENERATE=1 rewrites the page.
TEST(CauseMatrix, PageOnDiskIsWhatTheSimulationGives) {
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
