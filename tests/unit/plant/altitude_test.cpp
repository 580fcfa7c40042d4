// Proves what height does to the plant: the standard atmosphere's pressure and density, thinner air and gas for the
// same pressures, and nothing at all at the sea.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/step.hpp"

namespace emberpath::plant {
namespace {

State<double> at_rest() {
    State<double> x{};
    x[flue_gas] = 288.15;
    x[fan_speed] = 80.0;
    return x;
}

TEST(Altitude, SeaLevelChangesNothingBitForBit) {
    const PlantParameters sea = natural_gas_parameters();
    const PlantParameters same_place = with_altitude(sea, 0.0);
    for (std::size_t i = 0; i < parameter_count; ++i)
        EXPECT_EQ(flat(sea)[i], flat(same_place)[i]) << i;
}

/// Rows of the standard atmosphere's table: height, density over 1.2250 kg/m3, pressure in pascals.
struct Row {
    double height_m, density_share, pressure_pa;
};
TEST(Altitude, HasTheDensityAndPressureOfTheStandardAtmosphere) {
    for (const Row& row :
         {Row{1000.0, 1.1117 / 1.2250, 89876.0}, Row{2000.0, 1.0066 / 1.2250, 79501.0},
          Row{3000.0, 0.90925 / 1.2250, 70121.0}}) {
        const PlantParameters p = with_altitude(natural_gas_parameters(), row.height_m);
        EXPECT_NEAR(p.air_density_share, row.density_share, 2e-4) << row.height_m;
        EXPECT_NEAR(p.ambient_pa, row.pressure_pa, 30.0) << row.height_m;
    }
}

/// A fan moves the same volume at the same speed; its mass goes with the density.
TEST(Altitude, ThinsTheAirOfAFanByTheDensityAndItsHeadToo) {
    const Surroundings at;
    const PlantParameters sea = natural_gas_parameters(), high = with_altitude(sea, 2000.0);
    const State<double> x = at_rest();
    const double share = high.air_density_share;
    EXPECT_NEAR(air_flow(high, x, at) / air_flow(sea, x, at), share, 1e-9);
    const double loading = fan_loading_of(sea, air_flow(sea, x, at), 80.0);
    EXPECT_NEAR(fan_loading_of(high, air_flow(high, x, at), 80.0), loading, 1e-9);
    const double idle_a = 0.08;
    EXPECT_NEAR(
        (fan_current(high, 80.0, loading) - idle_a) / (fan_current(sea, 80.0, loading) - idle_a),
        share, 1e-9);
}

TEST(Altitude, ThinsTheGasOfAnInjectorByTheRootOfTheDensity) {
    signals::ActuatorCommands<double> open;
    open.main_solenoid = open.bank_solenoid[0] = 1.0;
    const PlantParameters sea = natural_gas_parameters(), high = with_altitude(sea, 2000.0);
    EXPECT_NEAR(injector_conductance(high, open)[0] / injector_conductance(sea, open)[0],
                std::sqrt(high.air_density_share), 1e-12);
}

TEST(Altitude, RaisesTheGaugePressureOfACylinderByWhatTheAirLacks) {
    const PlantParameters sea = propane_parameters(), high = with_altitude(sea, 2000.0);
    const double rise = vapour_of(288.15, 30.0, high.ambient_pa).gauge_pa -
                        vapour_of(288.15, 30.0, sea.ambient_pa).gauge_pa;
    EXPECT_NEAR(rise, sea.ambient_pa - high.ambient_pa, 1e-6);
}

/// Hydrostatics of thin air against a resistance of thin air: the volume that an open flue takes goes with the
/// density, and where the room is drawn down by the same volume the gaps lose more.
TEST(Altitude, ThinsTheDraughtOfAnOpenFlue) {
    Surroundings at;
    const PlantParameters sea = with_flue(natural_gas_parameters(), FlueKind::open_flued);
    const PlantParameters high = with_altitude(sea, 2000.0);
    State<double> x = at_rest();
    x[flue_gas] = 400.0;
    const double air = 0.030;  // more than it takes
    PlantParameters windless_sea = sea, windless_high = high;
    windless_sea.room_leak_gain = windless_high.room_leak_gain = 1e6;
    const double takes_sea = 1.0 - spilled_share(windless_sea, x, at, air);
    const double takes_high = 1.0 - spilled_share(windless_high, x, at, air);
    ASSERT_GT(takes_sea, 0.1);
    ASSERT_LT(takes_sea, 0.9);
    EXPECT_NEAR(takes_high / takes_sea, high.air_density_share, 1e-6);
    EXPECT_NEAR(room_depression(high, at, air) * high.air_density_share,
                room_depression(sea, at, air), 1e-9);
}

TEST(AirTube, TellsOfTheAirAndNotOfItsDensityShare) {
    const Surroundings at;
    for (const double height_m : {0.0, 2000.0}) {
        const PlantParameters p = with_altitude(with_air_tube(natural_gas_parameters()), height_m);
        const double full =
            80.0 * nominal_air_per_rev_m3 * p.air_density_share;  // as it is at full rate
        EXPECT_NEAR(air_tube_pressure(p, full, 80.0, at),
                    signals::air_tube_full_pa * p.air_density_share, 1e-9);
    }
}

TEST(AirTube, WaterInItHoldsBackItsColumnAndRocksWhileTheFanBlows) {
    PlantParameters p = with_air_tube(natural_gas_parameters());
    p.air_tube_water_pa = 30.0;
    Surroundings at;
    EXPECT_NEAR(air_tube_pressure(p, 0.0, 0.0, at), -30.0, 1e-12);
    double low = 1e9, high = -1e9;
    for (int tick = 0; tick < 50; ++tick) {
        at.time_s = tick * signals::tick_s;
        const double now = air_tube_pressure(p, 0.0156, 80.0, at);
        low = std::min(low, now);
        high = std::max(high, now);
    }
    EXPECT_GT(high - low, 15.0);
    EXPECT_LE(high - low, 24.0 + 1e-9);
}

TEST(AirTube, BridgedTellsWhatTheControllerWantsToHear) {
    PlantParameters p = with_air_tube(natural_gas_parameters());
    p.air_tube_water_pa = 80.0;
    p.air_tube_bridged = 1.0;
    EXPECT_NEAR(air_tube_pressure(p, 0.0, 80.0, Surroundings{}), signals::air_tube_full_pa, 1e-9);
}

}  // namespace
}  // namespace emberpath::plant
