#pragma once
/// What a flue-gas analyser works out from what it measures. These are the instrument's short formulas, with
/// 20.9 % oxygen in air; combustion.hpp has the exact balances. Shares are 0 to 1, by volume, dry.
/// Checked   tests/reference/flue_analysis_reference_test.cpp

#include <string_view>

namespace emberpath::properties {

inline constexpr double analyser_oxygen_in_air = 0.209;

/// Constants of the flue-loss formula for one fuel. Source [bimschv] Anlage 2; a1 there is [memory].
struct SiegertConstants {
    std::string_view fuel;
    double a1;  // for use with CO2
    double a2;  // for use with O2
    double b;
    double maximum_carbon_dioxide;  // instrument practice; 0 where not read
};
// clang-format off
inline constexpr SiegertConstants siegert_natural_gas{"natural gas", 0.37, 0.66, 0.009, 0.118};
inline constexpr SiegertConstants siegert_lpg{"propane", 0.42, 0.63, 0.008, 0.138};
inline constexpr SiegertConstants siegert_light_oil{"light oil", 0.50, 0.68, 0.007, 0.0};
inline constexpr SiegertConstants siegert_town_gas{"town gas", 0.0, 0.63, 0.011, 0.0};
// clang-format on

/// Flue loss [share of the net heat input].
/// Equation  (tA - tL) (A2 / (21 - O2) + B), in percent      Source [bimschv] Anlage 2
/// Range     dry oxygen below 20 %; for propane 0.2 to 0.6 points low against the exact balance
template <class Real>
[[nodiscard]] Real siegert_flue_loss(const SiegertConstants& fuel, Real flue_less_air_k,
                                     Real dry_oxygen_share) {
    return 0.01 * flue_less_air_k * (fuel.a2 / (21.0 - 100.0 * dry_oxygen_share) + fuel.b);
}

/// The same from carbon dioxide. Equation (tA - tL) (A1 / CO2 + B).     Range CO2 above 1 %
template <class Real>
[[nodiscard]] Real siegert_flue_loss_from_co2(const SiegertConstants& fuel, Real flue_less_air_k,
                                              Real dry_co2_share) {
    return 0.01 * flue_less_air_k * (fuel.a1 / (100.0 * dry_co2_share) + fuel.b);
}

/// Carbon dioxide worked out from oxygen [share]. Equation CO2max (20.9 - O2) / 20.9.
template <class Real>
[[nodiscard]] Real co2_from_oxygen(Real maximum_co2_share, Real dry_oxygen_share) {
    return maximum_co2_share * (analyser_oxygen_in_air - dry_oxygen_share) / analyser_oxygen_in_air;
}

/// Excess-air ratio as the instrument shows it. Equation 20.9 / (20.9 - O2).     Range O2 below 20 %
/// It overstates: 1.31 for methane at 5 % where the mole balance gives 1.28.
template <class Real>
[[nodiscard]] Real instrument_excess_air_ratio(Real dry_oxygen_share) {
    return analyser_oxygen_in_air / (analyser_oxygen_in_air - dry_oxygen_share);
}

/// Carbon monoxide if the flue gas were free of excess air (any unit). Equation CO 20.9 / (20.9 - O2).
template <class Real>
[[nodiscard]] Real air_free_co(Real co, Real dry_oxygen_share) {
    return co * instrument_excess_air_ratio(dry_oxygen_share);
}

/// CO/CO2 ratio of two shares: the number by which a flame is judged whatever the dilution.
template <class Real>
[[nodiscard]] Real co_to_co2_ratio(Real co_share, Real co2_share) {
    return co_share / co2_share;
}

/// A concentration stated at another oxygen content.
/// Equation  E (21 - O2 reference) / (21 - O2 measured)      Source [bimschv13] Anlage 4
template <class Real>
[[nodiscard]] Real at_reference_oxygen(Real concentration, Real measured_oxygen_share,
                                       Real reference_oxygen_share) {
    return concentration * (0.21 - reference_oxygen_share) / (0.21 - measured_oxygen_share);
}

}  // namespace emberpath::properties
