#pragma once
/// What an analyser meets in the flue. It does not feed back into the physics.
///
/// Equation  complete combustion of the burnt part, dry, per unit volume of fuel: CO2 = n_C,
///           O2 left = 0.2095 L (lambda - 1), N2 = 0.79 L lambda (L: stoichiometric air)
/// Source    [turns] chapter 2. The carbon monoxide correlation is a plausible shape, not data.
/// Checked   tests/laws/combustion_laws_test.cpp

#include "sim/plant/algebra.hpp"

namespace emberpath::plant {

template <class Real>
struct FlueComposition {
    Real excess_air_ratio;  // 0 where nothing burns
    Real o2_share, co2_share, co_share;
};

/// The burner's air brings along what the room holds and what returns of its own products.
template <class Real>
[[nodiscard]] FlueComposition<Real> flue_composition(const Parameters<Real>& p,
                                                     const State<Real>& x, const Algebra<Real>& a) {
    const MadeByFlame<Real> made = made_by_flame(p, x, a.gas, a.air_ratio);
    const Real room = p.intake_from_room;
    const Real burnt = made.burnt_m3_per_s;
    const Real air = a.air_m3_per_s;
    const FlueComposition<Real> idle{Real(0.0), oxygen_of_air - room * x[room_oxygen_used],
                                     room * x[room_co2], room * x[room_co]};
    const auto dark = made.burning_m3_per_s < Real(1e-7);
    if (math::all(dark)) return idle;
    const Real back = p.recirculated_share / (1.0 - p.recirculated_share);
    const Real fresh = air * a.intake_oxygen;
    const Real left = oxygen_of_air * (fresh - burnt * p.stoichiometric_air);
    const Real oxygen = math::select(Real(0.0) < left, left, Real(0.0));
    const Real made_carbon = burnt * p.carbon_per_mole;
    const Real carbon = made_carbon * (1.0 + back) + air * room * x[room_co2];
    const Real dry = carbon + 0.79 * air + oxygen;
    const Real co = carbon_monoxide_m3_per_s(p, made) * (1.0 + back) + air * room * x[room_co];
    const Real most_co = Real(0.06);
    const Real co_share = co / dry;
    return {math::select(dark, idle.excess_air_ratio,
                         fresh / (made.burning_m3_per_s * p.stoichiometric_air)),
            math::select(dark, idle.o2_share, oxygen / dry),
            math::select(dark, idle.co2_share, carbon / dry),
            math::select(dark, idle.co_share, math::select(co_share < most_co, co_share, most_co))};
}

}  // namespace emberpath::plant
