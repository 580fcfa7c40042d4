#include "sim/properties/equilibrium.hpp"

#include <cmath>

#include "sim/math/functions.hpp"

namespace emberpath::properties {

namespace {

constexpr double gas_constant = 8.314510;  // J/(mol K), of the coefficients
constexpr double bar_pa = 1.0e5;           // the coefficients' standard pressure
constexpr double atmosphere_pa = 101325.0;

/// Gibbs energy at 1 bar over R T [-].
double gibbs(Species species, double kelvin) {
    return enthalpy_j_per_mol(species, kelvin) / (gas_constant * kelvin) -
           entropy_j_per_mol_k(species, kelvin) / gas_constant;
}

/// Equilibrium constants of the reactions above, in powers of bar.
struct Constants {
    double monoxide, hydrogen, hydroxyl, hydrogen_atom, oxygen_atom, nitric_oxide;
};

Constants constants_at(double kelvin) {
    const double half_oxygen = 0.5 * gibbs(Species::oxygen, kelvin);
    const double half_hydrogen = 0.5 * gibbs(Species::hydrogen, kelvin);
    const double half_nitrogen = 0.5 * gibbs(Species::nitrogen, kelvin);
    const auto constant = [kelvin](double before, Species made, double beside) {
        return math::exp(before - gibbs(made, kelvin) - beside);
    };
    return {constant(gibbs(Species::carbon_dioxide, kelvin), Species::carbon_monoxide, half_oxygen),
            constant(gibbs(Species::water, kelvin), Species::hydrogen, half_oxygen),
            constant(half_hydrogen + half_oxygen, Species::hydroxyl, 0.0),
            constant(half_hydrogen, Species::hydrogen_atom, 0.0),
            constant(half_oxygen, Species::oxygen_atom, 0.0),
            constant(half_nitrogen + half_oxygen, Species::nitric_oxide, 0.0)};
}

/// Root r of a r^2 + b r = c, c >= 0.
double positive_root(double a, double b, double c) {
    return (std::sqrt(b * b + 4.0 * a * c) - b) / (2.0 * a);
}

/// Partial pressures [bar] where the root of that of oxygen is `root_oxygen` and every balance but oxygen's
/// holds. `per_bar` is the volume that turns pressures into moles.
Mixture pressures(const Constants& k, const Atoms& atoms, double per_bar, double root_oxygen) {
    Mixture p;
    p[Species::oxygen] = root_oxygen * root_oxygen;
    p[Species::oxygen_atom] = k.oxygen_atom * root_oxygen;
    const double split = k.monoxide / root_oxygen;
    p[Species::carbon_dioxide] = atoms.carbon / per_bar / (1.0 + split);
    p[Species::carbon_monoxide] = p[Species::carbon_dioxide] * split;
    const double broken = k.hydrogen / root_oxygen;
    const double root_water = positive_root(
        2.0 * (1.0 + broken), std::sqrt(broken) * (k.hydroxyl * root_oxygen + k.hydrogen_atom),
        atoms.hydrogen / per_bar);
    p[Species::water] = root_water * root_water;
    p[Species::hydrogen] = p[Species::water] * broken;
    const double root_hydrogen = std::sqrt(p[Species::hydrogen]);
    p[Species::hydroxyl] = k.hydroxyl * root_hydrogen * root_oxygen;
    p[Species::hydrogen_atom] = k.hydrogen_atom * root_hydrogen;
    const double root_nitrogen =
        positive_root(2.0, k.nitric_oxide * root_oxygen, atoms.nitrogen / per_bar);
    p[Species::nitrogen] = root_nitrogen * root_nitrogen;
    p[Species::nitric_oxide] = k.nitric_oxide * root_nitrogen * root_oxygen;
    return p;
}

double oxygen_atoms(const Mixture& p) {
    return 2.0 * p[Species::oxygen] + p[Species::oxygen_atom] + 2.0 * p[Species::carbon_dioxide] +
           p[Species::carbon_monoxide] + p[Species::water] + p[Species::hydroxyl] +
           p[Species::nitric_oxide];
}

/// Pressures with the oxygen balance too: bisection of the logarithm, on which it rises.
Mixture balanced(const Constants& k, const Atoms& atoms, double per_bar) {
    double low = -40.0, high = 3.0;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        const double found = oxygen_atoms(pressures(k, atoms, per_bar, math::exp(middle)));
        (found * per_bar < atoms.oxygen ? low : high) = middle;
    }
    return pressures(k, atoms, per_bar, math::exp(0.5 * (low + high)));
}

Mixture scaled(Mixture mixture, double factor) {
    for (double& moles : mixture.moles) moles *= factor;
    return mixture;
}

}  // namespace

Mixture equilibrium_products(const Atoms& atoms, double argon_moles, double temperature_k,
                             double pressure_pa) {
    const Constants k = constants_at(temperature_k);
    const double pressure_bar = pressure_pa / bar_pa;
    // The number of moles hardly depends on the pressures: it settles in a few rounds.
    double moles = atoms.carbon + 0.5 * (atoms.hydrogen + atoms.nitrogen) + argon_moles;
    Mixture products;
    for (int round = 0; round < 40; ++round) {
        const double per_bar = moles / pressure_bar;
        products = scaled(balanced(k, atoms, per_bar), per_bar);
        products[Species::argon] = argon_moles;
        moles = products.total();
    }
    return products;
}

EquilibriumFlame equilibrium_flame(Species fuel, double excess_air_ratio, double fuel_k,
                                   double air_k, const CombustionAir& air) {
    Atoms all = atoms(fuel);
    const double dry_air = excess_air_ratio * stoichiometric_air(all, air);
    Mixture oxidant;
    oxidant[Species::oxygen] = dry_air * air.oxygen_share;
    oxidant[Species::nitrogen] = dry_air * (1.0 - air.oxygen_share);
    oxidant[Species::water] = dry_air * air.water_per_mole;
    all.oxygen += 2.0 * oxidant[Species::oxygen] + oxidant[Species::water];
    all.nitrogen += 2.0 * oxidant[Species::nitrogen];
    all.hydrogen += 2.0 * oxidant[Species::water];
    const double reactants_j = enthalpy_j_per_mol(fuel, fuel_k) + enthalpy_j(oxidant, air_k);
    double low = 1000.0, high = 4000.0;
    for (int i = 0; i < 50; ++i) {
        const double middle = 0.5 * (low + high);
        const Mixture products = equilibrium_products(all, 0.0, middle, atmosphere_pa);
        (enthalpy_j(products, middle) < reactants_j ? low : high) = middle;
    }
    const double kelvin = 0.5 * (low + high);
    return {kelvin, equilibrium_products(all, 0.0, kelvin, atmosphere_pa)};
}

}  // namespace emberpath::properties
