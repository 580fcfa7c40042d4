// Proves air and flue: the room's mass balance against closed-form values, an open flue that spills when fans
// draw, a roofed-over terminal that poisons its own air, wind on a balanced terminal, a leaking seam, lint, and
// propane in natural gas.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/room_air.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::PlantParameters;

/// Carbon monoxide [-] in a room after a steady release into it, by the plant's own equation.
double released(double room_m3, double litre_a_minute, double changes_an_hour, int minutes) {
    PlantParameters p = plant::natural_gas_parameters();
    p.room_m3 = room_m3;
    p.room_ventilation_m3_per_s = changes_an_hour * room_m3 / 3600.0;
    p.spill_into_room = 1.0;
    plant::State<double> x{};
    x[plant::flue_gas] = 288.15;
    const plant::RoomSource<double> source{0.01, 0.0, litre_a_minute * litre_per_minute};
    plant::State<double> d{};
    for (int tick = 0; tick < 600 * minutes; ++tick) {
        plant::room_derivative(p, x, {}, source, d);
        x[plant::room_co] += 0.1 * d[plant::room_co];
    }
    return x[plant::room_co];
}

// Single-zone mass balance C = G/(n V)(1-exp(-n t)); computed values, tolerance 2e-3 relative.
TEST(RoomAirReference, MatchesTheSingleZoneMassBalance) {
    EXPECT_NEAR(released(20.0, 0.05, 0.5, 60), 118.041e-6, 2e-3 * 118.041e-6);
    EXPECT_NEAR(released(20.0, 0.5, 0.5, 60), 1180.41e-6, 2e-3 * 1180.41e-6);
    EXPECT_NEAR(released(50.0, 2.0, 1.0, 30), 944.326e-6, 2e-3 * 944.326e-6);
    EXPECT_NEAR(released(10.0, 2.0, 0.0, 10), 2000e-6, 2e-3 * 2000e-6);
}

/// A house of one flue kind after five minutes of a full draw.
House flued(plant::FlueKind kind) {
    House house;
    auto& p = house.heater.plant.parameters;
    p = plant::with_flue(p, kind);
    house.run(2.0);
    house.open_taps(16.0);
    house.run(300.0);
    return house;
}

TEST(OpenFlue, TakesAllProductsUntilTheRoomIsDrawnDown) {
    House house = flued(plant::FlueKind::open_flued);
    EXPECT_EQ(house.look().plant.spilled_share, 0.0);
    EXPECT_LT(house.look().plant.room_co2_share, 3e-4);  // from lighting with a cold flue
    house.inputs.surroundings.extraction_m3_per_s = 0.15;
    house.run(300.0);
    const plant::Observables drawn = house.look().plant;
    EXPECT_GT(drawn.room_depression_pa, 4.0);
    EXPECT_GT(drawn.spilled_share, 0.5);
    EXPECT_GT(drawn.room_co2_share, 2e-3);
    house.inputs.surroundings.room_opening = 0.3;
    house.run(600.0);
    EXPECT_EQ(house.look().plant.spilled_share, 0.0);
    EXPECT_LT(house.look().plant.room_co2_share, 0.1 * drawn.room_co2_share);
}

TEST(OpenFlue, SpillageNeverShowsOnAnOutdoorHeater) {
    House house = flued(plant::FlueKind::outdoor);
    house.inputs.surroundings.extraction_m3_per_s = 0.15;
    house.run(60.0);
    EXPECT_EQ(house.look().plant.spilled_share, 0.0);
    EXPECT_EQ(house.look().plant.room_co_share, 0.0);
    EXPECT_EQ(house.look().plant.room_o2_share, plant::oxygen_of_air);
}

TEST(Spillage, OfACaseOrASeamNeedsNoOpenFlue) {
    plant::State<double> x{};
    x.fill(300.0);
    plant::Surroundings at;
    plant::PlantParameters p = plant::natural_gas_parameters();
    EXPECT_EQ(plant::spilled_share(p, x, at, 0.01), 0.0);
    at.cover_spill = 0.3;
    EXPECT_EQ(plant::spilled_share(p, x, at, 0.01), 0.3);
    p.intake_from_room = 1.0;
    p.seam_leak_share = 0.25;
    EXPECT_EQ(plant::spilled_share(p, x, at, 0.01), 0.55);
}

TEST(RoofedTerminal, BreathesItsOwnProductsAndMakesCarbonMonoxideInTime) {
    House house = flued(plant::FlueKind::outdoor);
    const plant::Observables fresh = house.look().plant;
    auto& p = house.heater.plant.parameters;
    p.room_m3 = 35.0;
    p.room_ventilation_m3_per_s = 0.02;
    p.spill_into_room = 0.9;
    p.intake_from_room = 1.0;
    house.run(300.0);
    const plant::Observables early = house.look().plant;
    house.run(1500.0);
    const plant::Observables late = house.look().plant;
    EXPECT_LT(early.intake_o2_share, fresh.intake_o2_share - 0.01);
    EXPECT_LT(late.intake_o2_share, early.intake_o2_share);
    EXPECT_GT(late.co_share, 2.0 * fresh.co_share);
    EXPECT_GT(late.room_co_share, 2.0 * early.room_co_share);
    EXPECT_NEAR(late.room_co2_share / (plant::oxygen_of_air - late.room_o2_share), 0.5, 0.02);
}

TEST(RoomSealed, FeelsLittleOfAWindThatAnOutdoorTerminalFeelsWhole) {
    House outdoor = flued(plant::FlueKind::outdoor);
    House sealed = flued(plant::FlueKind::room_sealed);
    EXPECT_EQ(outdoor.look().plant.air_m3_per_s, sealed.look().plant.air_m3_per_s);
    const double before = outdoor.look().plant.air_m3_per_s;
    for (House* house : {&outdoor, &sealed}) house->inputs.surroundings.steady_wind_pa = 40.0;
    const auto lost = [&](House& house) {
        house.run(0.1);
        return before - house.look().plant.air_m3_per_s;
    };
    const double by_outdoor = lost(outdoor);
    EXPECT_GT(by_outdoor, 0.05 * before);
    EXPECT_LT(lost(sealed), 0.25 * by_outdoor);
}

TEST(Recirculation, LowersIntakeOxygenByTheSteadyMixture) {
    House house = flued(plant::FlueKind::outdoor);
    house.heater.plant.parameters.recirculated_share = 0.2;
    house.run(120.0);
    const plant::Observables o = house.look().plant;
    // What comes in is four fifths outdoor air and one fifth of what goes out, wet volumes apart.
    EXPECT_NEAR(o.intake_o2_share, 0.8 * plant::oxygen_of_air + 0.2 * o.o2_share, 2e-3);
    EXPECT_GT(o.co2_share, 0.09);
}

TEST(SeamLeak, HeatsTheCaseAndShowsProductsInItWithEnergyClosed) {
    House house = flued(plant::FlueKind::outdoor);
    const plant::Observables sound = house.look().plant;
    EXPECT_EQ(sound.casing_co2_share, 0.0);
    house.heater.plant.parameters.seam_leak_share = 0.02;
    house.run(3600.0);
    const plant::Observables o = house.look().plant;
    EXPECT_GT(o.casing_k, sound.casing_k + 60.0);
    EXPECT_GT(o.casing_co2_share, 2e-3);
    const double out = o.heat_to_water_w + o.flue_loss_w + o.casing_loss_w + o.storage_w;
    EXPECT_NEAR(out / o.heat_input_w, 1.0, 1e-10);
}

TEST(Lint, ChokesTheAirBeforeTheFan) {
    House house = flued(plant::FlueKind::outdoor);
    const plant::Observables clean = house.look().plant;
    house.heater.plant.parameters.intake_resistance = 1.0e6;
    house.run(1.0);
    EXPECT_LT(house.look().plant.air_m3_per_s, 0.85 * clean.air_m3_per_s);
}

TEST(PropaneInGas, NoneChangesNothingAndAllIsPropane) {
    PlantParameters natural = plant::natural_gas_parameters();
    PlantParameters same = plant::with_propane_in_gas(natural, 0.0);
    for (std::size_t i = 0; i < plant::parameter_count; ++i)
        EXPECT_EQ(plant::flat(same)[i], plant::flat(natural)[i]);
    const PlantParameters all = plant::with_propane_in_gas(natural, 1.0);
    const PlantParameters propane = plant::propane_parameters();
    EXPECT_NEAR(all.gross_j_per_m3 / propane.gross_j_per_m3, 1.0, 5e-3);
    EXPECT_NEAR(all.gas_kg_per_m3 / propane.gas_kg_per_m3, 1.0, 5e-3);
    EXPECT_NEAR(all.stoichiometric_air / propane.stoichiometric_air, 1.0, 0.02);
    EXPECT_NEAR(all.co2_max, propane.co2_max, 1e-3);
    EXPECT_NEAR(all.net_to_gross, propane.net_to_gross, 2e-3);
}

TEST(PropaneInGas, AFifthIsSilentButRichInTheFlue) {
    House house;
    auto& p = house.heater.plant.parameters;
    p = plant::with_propane_in_gas(p, 0.2);
    house.run(2.0);
    house.open_taps(16.0);
    house.run(300.0);
    const worksite::HeaterView view = house.look();
    EXPECT_EQ(view.readout.event, controller::readout(House().heater.controller, 0).event);
    EXPECT_GT(view.plant.co2_share, 0.085);
    EXPECT_GT(view.plant.co_share, 25e-6);
}

}  // namespace
}  // namespace emberpath::laws
