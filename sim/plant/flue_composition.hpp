#pragma once
/// What an analyser meets in the flue. Scalar: it does not feed back into the physics.
///
/// Equation  complete combustion of the burnt part, dry, per unit volume of fuel: CO2 = n_C,
///           O2 left = 0.2095 L (lambda - 1), N2 = 0.79 L lambda (L: stoichiometric air)
/// Source    [turns] chapter 2. The carbon monoxide correlation is a plausible shape, not data.
/// Checked   tests/laws/combustion_laws_test.cpp

#include <algorithm>

#include "sim/plant/algebra.hpp"

namespace emberpath::plant {

struct FlueComposition {
    double excess_air_ratio;
    double o2_share, co2_share, co_share;
};

/// The burner's air brings along what the room holds and what returns of its own products.
[[nodiscard]] inline FlueComposition flue_composition(const Parameters<double>& p,
                                                      const State<double>& x,
                                                      const Algebra<double>& a) {
    const MadeByFlame<double> made = made_by_flame(p, x, a.gas, a.air_ratio);
    const double room = p.intake_from_room;
    const double burnt = made.burnt_m3_per_s;
    const double air = a.air_m3_per_s;
    FlueComposition out{0.0, oxygen_of_air - room * x[room_oxygen_used], room * x[room_co2],
                        room * x[room_co]};
    if (made.burning_m3_per_s < 1e-7) return out;
    const double back = p.recirculated_share / (1.0 - p.recirculated_share);
    const double fresh = air * a.intake_oxygen;
    const double oxygen = std::max(0.0, oxygen_of_air * (fresh - burnt * p.stoichiometric_air));
    const double made_carbon = burnt * p.carbon_per_mole;
    const double carbon = made_carbon * (1.0 + back) + air * room * x[room_co2];
    const double dry = carbon + 0.79 * air + oxygen;
    const double co = carbon_monoxide_m3_per_s(p, made) * (1.0 + back) + air * room * x[room_co];
    out.excess_air_ratio = fresh / (made.burning_m3_per_s * p.stoichiometric_air);
    out.o2_share = oxygen / dry;
    out.co2_share = carbon / dry;
    out.co_share = std::min(0.06, co / dry);
    return out;
}

}  // namespace emberpath::plant
