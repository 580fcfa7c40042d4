// Proves that the sound heater under its controller meets its nominal table (docs/physics/nominal.md): every
// draw on natural gas, inlet 14 degC, mains 400 kPa, five minutes after a cold start.

#include <gtest/gtest.h>

#include <cmath>

#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

/// One row of the table, in the units it is printed in.
struct Nominal {
    const char* name;
    double set_c, asked_lpm;
    double given_lpm, input_kw, output_kw, manifold_kpa, rpm;
    double co2_percent, o2_percent, co_ppm, flue_c, outlet_c;
    double banks;
};

std::ostream& operator<<(std::ostream& out, const Nominal& row) {
    return out << row.name;
}

// clang-format off
constexpr Nominal table[] = {
    // name                set asked given in     out   manif. rpm   CO2  O2    CO  flue  outlet banks
    {"Set45Draw3and5",      45,  3.5,  3.5,  8.84,  7.50, 0.142, 1445, 4.9, 12.2,  9,  73, 45.0, 2},
    {"Set45Draw6",          45,  6.0,  6.0, 15.6,  12.9,  0.443, 2547, 5.1, 11.9, 10, 110, 45.0, 2},
    {"Set45Draw10",         45, 10.0, 10.0, 24.9,  21.4,  0.342, 2880, 7.3,  7.9, 14,  84, 45.0, 3},
    {"Set45Draw16",         45, 16.0, 16.0, 40.8,  34.3,  0.920, 4742, 7.5,  7.6, 15, 125, 45.0, 3},
    {"Set45Draw20",         45, 20.0, 16.0, 40.8,  34.3,  0.920, 4742, 7.5,  7.6, 15, 125, 45.0, 3},
    {"Set50Draw3and5",      50,  3.5,  3.5, 10.4,   8.70, 0.196, 1693, 5.0, 12.1, 10,  84, 50.0, 2},
    {"Set50Draw6",          50,  6.0,  6.0, 17.2,  14.9,  0.162, 1983, 7.2,  8.1, 14,  63, 50.0, 3},
    {"Set50Draw10",         50, 10.0, 10.0, 29.1,  24.9,  0.468, 3368, 7.4,  7.8, 15,  97, 50.0, 3},
    {"Set50Draw16",         50, 16.0, 13.8, 40.9,  34.3,  0.923, 4753, 7.5,  7.6, 15, 127, 50.0, 3},
    {"Set50Draw20",         50, 20.0, 13.8, 40.9,  34.3,  0.923, 4753, 7.5,  7.6, 15, 127, 50.0, 3},
    {"Set60Draw3and5",      60,  3.5,  3.5, 13.5,  11.1,  0.331, 2203, 5.1, 11.9, 10, 105, 60.0, 2},
    {"Set60Draw6",          60,  6.0,  6.0, 22.2,  19.1,  0.271, 2562, 7.3,  7.9, 14,  81, 60.0, 3},
    {"Set60Draw10",         60, 10.0, 10.0, 37.8,  31.8,  0.788, 4385, 7.5,  7.6, 15, 124, 60.0, 3},
    {"Set60Draw16",         60, 16.0, 10.8, 41.0,  34.3,  0.929, 4779, 7.5,  7.6, 15, 132, 60.0, 3},
    {"Set60Draw20",         60, 20.0, 10.8, 41.0,  34.3,  0.929, 4779, 7.5,  7.6, 15, 132, 60.0, 3},
};
// clang-format on

class NominalTable : public testing::TestWithParam<Nominal> {
  protected:
    NominalTable() : house(warmed_up({GetParam().name, GetParam().set_c, GetParam().asked_lpm})) {}
    House house;
};

/// Two per cent of the printed value.
void expect_two_percent(double got, double printed, const char* what) {
    EXPECT_NEAR(got, printed, 0.02 * printed) << what;
}

TEST_P(NominalTable, IsMetWithinTwoPercent) {
    const Nominal& row = GetParam();
    const plant::Observables now = house.look().plant;
    expect_two_percent(now.hot_water_m3_per_s / litre_per_minute, row.given_lpm, "L/min given");
    expect_two_percent(now.heat_input_w / 1e3, row.input_kw, "kW in");
    expect_two_percent(now.heat_to_water_w / 1e3, row.output_kw, "kW out");
    expect_two_percent(now.manifold_pa / 1e3, row.manifold_kpa, "manifold kPa");
    expect_two_percent(now.fan_rev_per_s * 60.0, row.rpm, "fan rpm");
    EXPECT_EQ(house.look().readout.banks_open, row.banks);
}

TEST_P(NominalTable, HasTheFlueAndOutletItPrints) {
    const Nominal& row = GetParam();
    const plant::Observables now = house.look().plant;
    EXPECT_NEAR(now.co2_share * 100.0, row.co2_percent, 0.1);
    EXPECT_NEAR(now.o2_share * 100.0, row.o2_percent, 0.1);
    EXPECT_NEAR(now.co_share * 1e6, row.co_ppm, 1.0);
    EXPECT_NEAR(now.flue_k - celsius, row.flue_c, 0.02 * row.flue_c);
    EXPECT_NEAR(now.outlet_water_k - celsius, row.outlet_c, 0.2);
}

INSTANTIATE_TEST_SUITE_P(Draws, NominalTable, testing::ValuesIn(table),
                         [](const auto& row) { return row.param.name; });

TEST(NominalBehaviour, SmallestDrawBurnsOneBank) {
    const House house = warmed_up({"basin", 38.0, 2.6});
    const worksite::HeaterView now = house.look();
    EXPECT_EQ(now.readout.banks_open, 1.0);
    EXPECT_NEAR(now.plant.heat_input_w, 5350.0, 107.0);
    EXPECT_NEAR(now.plant.co2_share, 0.028, 0.001);
    EXPECT_NEAR(now.plant.outlet_water_k, 38.0 + celsius, 0.2);
}

TEST(NominalBehaviour, FullLoadMeetsTheElectricalAndGasReadings) {
    const plant::Observables now = warmed_up({"full", 50.0, 16.0}).look().plant;
    EXPECT_NEAR(now.gas_inlet_pa, 1820.0, 20.0);
    EXPECT_NEAR(now.air_m3_per_s * 3600.0, 56.0, 1.12);
    EXPECT_NEAR(now.fan_current_a, 0.57, 0.0114);
    EXPECT_NEAR(now.ionisation_a, 9.0e-6, 0.18e-6);
    EXPECT_NEAR(now.outlet_ohm, 4101.0, 41.0);
    EXPECT_NEAR(now.exchanger_ohm, 4026.0, 81.0);
}

/// Seconds from opening the tap until `reached` holds.
template <class Reached>
double seconds_until(House& house, double limit_s, Reached reached) {
    const auto ticks = std::lround(limit_s / signals::tick_s);
    for (long tick = 1; tick <= ticks; ++tick) {
        house.run(signals::tick_s);
        if (reached(house.look())) return static_cast<double>(tick) * signals::tick_s;
    }
    return limit_s;
}

TEST(NominalBehaviour, ColdHeaterReachesTheSetPointInAboutTenSeconds) {
    for (const double asked : {3.5, 6.0, 10.0, 16.0}) {
        House house(false, 50.0);
        house.run(2.0);
        house.open_taps(asked);
        const double t = seconds_until(house, 60.0, [](const worksite::HeaterView& v) {
            return std::abs(v.plant.outlet_water_k - (50.0 + celsius)) < 1.0;
        });
        EXPECT_GE(t, 5.0) << asked << " L/min";
        EXPECT_LE(t, 20.0) << asked << " L/min";
    }
}

}  // namespace
}  // namespace emberpath::laws
