#pragma once
/// Heat from flue gas to metal to water: eight cells, gas in two cross-flow passes.
///
/// Equation  eps = 1 - exp(-NTU) (metal at one temperature, row C_r = 0)   [incropera2007] table 11.3
///           hA water side = 2600 W/K (m / 0.33 kg/s)^0.8                  exponent: [dittus1930]
///           UA gas side = 67 W/K (m_g / 0.020 kg/s)^0.65 (0.45 + 0.55 lit share)   chosen; exponent
///           range as for finned tubes in [kays1984]
/// Enthalpy  h(t) = 1060 t + 0.11 t^2 J/kg, t in degrees Celsius: within 2.5 % of the products of
///           methane and propane at excess-air ratios from 1.5 to 3.5. Gas is reckoned in
///           theta = h / 1200 J/(kg K), so that energy is conserved exactly although the heat capacity
///           varies.
/// Checked   tests/laws/exchanger_laws_test.cpp, tests/laws/energy_laws_test.cpp; the effectiveness in
///           tests/reference (HeatTransferReference)

#include "sim/math/functions.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/properties/heat_transfer.hpp"

namespace emberpath::plant {

inline constexpr double zero_celsius_k = 273.15;
inline constexpr double water_j_per_kg_k = 4186.0;
inline constexpr double water_kg_per_m3 = 990.0;  // at delivery temperature
inline constexpr double flue_gas_j_per_kg_k = 1200.0;
inline constexpr double air_kg_per_m3 = 1.225;  // dry, 15 degC, 101.325 kPa [usstd1976]
inline constexpr double radiated_share = 0.10;  // of the net heat, straight to the hot row
inline constexpr double casing_w_per_k = 0.4;   // each cell to the casing air

/// theta of a gas temperature [K of the enthalpy scale, zero at 0 degC].
template <class Real>
[[nodiscard]] Real enthalpy_temperature(const Real& kelvin) {
    const Real t = kelvin - zero_celsius_k;
    return t * (1060.0 + 0.11 * t) * (1.0 / flue_gas_j_per_kg_k);
}

/// Temperature [K] of a theta.
template <class Real>
[[nodiscard]] Real temperature_of_enthalpy(const Real& theta) {
    const Real root = math::square_root(
        math::maximum(1060.0 * 1060.0 + (4.0 * 0.11 * flue_gas_j_per_kg_k) * theta, Real(1.0)));
    return (root - 1060.0) * (1.0 / 0.22) + zero_celsius_k;
}

/// Effectiveness of one pass of flue gas over metal at one temperature [-].
template <class Real>
[[nodiscard]] Real gas_side_effectiveness(const Real& ua_w_per_k, const Real& flue_gas_kg_per_s) {
    return properties::constant_temperature_effectiveness(
        ua_w_per_k / (flue_gas_kg_per_s * flue_gas_j_per_kg_k));
}

/// Gas-side conductance of the whole exchanger [W/K].
template <class Real>
[[nodiscard]] Real gas_side_conductance(const Parameters<Real>& p, const Real& flue_gas_kg_per_s,
                                        const Real& lit_share) {
    return 67.0 * p.gas_side_ua_factor * math::power(flue_gas_kg_per_s * (1.0 / 0.020), 0.65) *
           (0.45 + 0.55 * lit_share);
}

/// Water-side conductance of one cell, scale in series [W/K].
template <class Real>
[[nodiscard]] Real water_side_conductance(const Parameters<Real>& p, const Real& water_kg_per_s) {
    const Real relative = math::maximum(water_kg_per_s * (1.0 / 0.33), Real(1e-6));
    constexpr double all_but_still = 0.008;  // 2600 W/K times this to the power of 0.8 is below 60
    Real ha = Real(60.0);
    if (!math::all(relative < Real(all_but_still)))
        ha = math::maximum(ha, 2600.0 * math::power(relative, 0.8));
    return (1.0 / static_cast<double>(cell_count)) / (1.0 / ha + p.scale_k_per_w);
}

template <class Real>
struct GasSide {
    std::array<Real, cell_count> to_metal_w;
    Real leaving_theta;
    Real flue_gas_kg_per_s;
    Real entering_theta;
    Real flame_theta;  // entering, with what the flame radiates
};

/// What enters the exchanger on the gas side.
template <class Real>
struct Firing {
    Real net_w;              // heat set free
    Real flue_gas_kg_per_s;  // at least 2e-4
    Real lit_share;          // of the burner's area
};

/// Hot gas meets cells 7..4 (the last water pass), then 0..3.
template <class Real>
[[nodiscard]] GasSide<Real> gas_side(const Parameters<Real>& p, const State<Real>& x,
                                     const Firing<Real>& firing, double air_k) {
    const Real& net_w = firing.net_w;
    const Real& flue_gas_kg_per_s = firing.flue_gas_kg_per_s;
    constexpr std::size_t half = cell_count / 2;
    GasSide<Real> out;
    out.flue_gas_kg_per_s = flue_gas_kg_per_s;
    const Real ua = gas_side_conductance(p, flue_gas_kg_per_s, firing.lit_share);
    const Real eps = gas_side_effectiveness(ua * 0.5, flue_gas_kg_per_s);
    const Real capacity = flue_gas_kg_per_s * flue_gas_j_per_kg_k;
    const Real per_cell = capacity * (1.0 / static_cast<double>(half));
    out.entering_theta =
        enthalpy_temperature(Real(air_k)) + net_w * (1.0 - radiated_share) / capacity;
    out.flame_theta = enthalpy_temperature(Real(air_k)) + net_w / capacity;
    Real theta = out.entering_theta;
    for (const std::size_t first : {half, std::size_t{0}}) {
        Real given = Real(0.0);
        for (std::size_t i = first; i < first + half; ++i) {
            out.to_metal_w[i] = per_cell * eps * (theta - enthalpy_temperature(x[metal_0 + i]));
            given += out.to_metal_w[i];
        }
        theta = theta - given / capacity;
    }
    for (std::size_t i = half; i < cell_count; ++i)
        out.to_metal_w[i] += net_w * (radiated_share / static_cast<double>(half));
    out.leaving_theta = theta;
    return out;
}

}  // namespace emberpath::plant
