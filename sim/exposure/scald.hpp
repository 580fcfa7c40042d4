#pragma once
/// Hot water on skin: how long until it burns. A teaching aid; children and old people burn sooner.
/// Checked   tests/reference/exposure_reference_test.cpp

namespace emberpath::exposure {

enum class Burn {
    second_degree,  // blisters
    third_degree    // the whole thickness of the skin
};

/// Time in water of one temperature until skin is burnt so deep [s].
///
/// Equation  logarithm of the time, straight between the table's points; beyond its ends the slope of the last
///           pair goes on
/// Source    [moritz1947] as tabulated by the plumbing trade (adult skin), its second degree at
///           60 degC from memory; third degree at 65.6 degC [cpsc5098]
/// Range     40 to 80 degC; below 43 degC the table says nothing and the time is at least hours
[[nodiscard]] double time_to_burn_s(Burn burn, double water_k);

/// Share of a burn that a spell adds: 1 is a burn. Shares of spells at different temperatures add up, as
/// the damage integral of [henriques1947] does.
[[nodiscard]] double burn_share(Burn burn, double water_k, double seconds);

/// Rate of damage of skin at one temperature of its basal layer [1/s]; its integral 1 is complete necrosis.
/// Equation  A exp(-E / (R T)), A 3.1e98 1/s, E 6.28e5 J/mol      Source [henriques1947], from memory
/// The skin lags the water: for water temperatures take time_to_burn_s.
inline constexpr double necrosis_factor_per_s = 3.1e98;
inline constexpr double necrosis_energy_j_per_mol = 6.28e5;
[[nodiscard]] double skin_damage_per_s(double basal_skin_k);

}  // namespace emberpath::exposure
