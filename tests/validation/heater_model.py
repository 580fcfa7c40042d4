"""The heater at rest, calculated anew: equations from their sources, real water (IAPWS-IF97), real gases
(NASA Glenn), networks solved by bracketing, the exchanger as a continuous one. What the invented heater was
given (the sheet) comes from the program's parameters or, where docs/physics/plant.md prints it, from here."""

import math

import numpy
from iapws import IAPWS97
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

import gases

INLET_K, AMBIENT_K, MAINS_PA = 287.15, 288.15, 400.0e3

# Chosen numbers of the invented heater (docs/physics/plant.md).
BANK_SHARE = (0.25, 0.30, 0.45)
FAN_REV_AT_FULL_DUTY, FAN_NOMINAL_AIR = 120.0, 0.0156 / 80.0
DRAUGHT_HEIGHT_M, AIR_KG_PER_M3 = 0.74, 1.225
RADIATED = 0.10
CASING_W_PER_K, POCKET_W_PER_K, ROOM_W_PER_K = 3.2, 0.3, 3.0
ENTHALPY_SCALE = 1200.0  # J/(kg K): the gas-side conductance is stated per kelvin of h / 1200

_kelvin = numpy.linspace(278.15, 372.15, 48)
_states = [IAPWS97(T=t, P=0.3) for t in _kelvin]
_water_h = CubicSpline(_kelvin, [s.h * 1e3 for s in _states])
_water_t = CubicSpline([s.h * 1e3 for s in _states], _kelvin)
_water_cp = _water_h.derivative()
WATER_KG_PER_M3 = IAPWS97(T=INLET_K, P=0.3).rho  # the flow is metered cold
LATENT_J_PER_MOL = (IAPWS97(T=298.15, x=1).h - IAPWS97(T=298.15, x=0).h) * 18.015268


def water_flow(sheet, point):
    """Darcy-Weisbach losses with fixed coefficients; exchanger and bypass side by side (Idelchik ch. 1, 2)."""
    side_by_side = sheet["exchanger_conductance"] + sheet["bypass_gain"] * point["bypass"] ** 2
    conductances = (sheet["water_valve_gain"], side_by_side, point["taps"])

    def pressure_left(q):
        drops = sum((q / g) ** 2 for g in conductances) + sheet["water_fixed_resistance"] * q * q
        return MAINS_PA - drops

    flow = brentq(pressure_left, 0.0, 1e-2, xtol=1e-12)
    return flow, flow * sheet["exchanger_conductance"] / side_by_side


def injector_flow(fuel, area, gauge_pa):
    """Volume at 15 degC: isentropic flow of a compressible gas (Bernoulli's limit for small pressures)."""
    mass = gases.SPECIES[fuel]["molar_mass"]
    density = gases.moles_per_m3(fuel) * mass
    kappa = 1.0 / (1.0 - gases.R / _heat_capacity(fuel))
    ratio = gases.ATMOSPHERE / (gases.ATMOSPHERE + gauge_pa)
    upstream = density / ratio
    term = 2.0 * kappa / (kappa - 1.0) * (gases.ATMOSPHERE + gauge_pa) * upstream
    term *= ratio ** (2.0 / kappa) - ratio ** ((kappa + 1.0) / kappa)
    return area * math.sqrt(term) / density


def _heat_capacity(species, kelvin=gases.METERED):
    return (gases.enthalpy(species, kelvin + 1.0) - gases.enthalpy(species, kelvin - 1.0)) / 2.0


def gas_flow(sheet, point, gas):
    """Manifold held at its target unless the supply cannot: flows of the banks and the working pressure."""
    fuel = gases.FUELS[gas][0]
    areas = [sheet["injector_1_m2"], point["bank_2"] * sheet["injector_2_m2"],
             point["bank_3"] * sheet["injector_3_m2"]]

    def inlet(q):
        drop = sheet["regulator_droop"] * q + sheet["gas_pipe_resistance"] * q * q
        return sheet["gas_no_load_pa"] - drop

    def surplus(pa):
        q = injector_flow(fuel, sum(areas), pa)
        return inlet(q) - sheet["gas_valve_resistance"] * q * q - pa

    manifold = point["manifold_pa"]
    if surplus(manifold) < 0.0:
        manifold = brentq(surplus, 1.0, manifold)
    banks = [injector_flow(fuel, area, manifold) if area > 0.0 else 0.0 for area in areas]
    return banks, inlet(sum(banks))


def air_flow(sheet, point, flue_k, flue_kg_per_m3):
    """Fan curve by the affinity laws against the path's losses and the draught of the warm column."""
    column = 9.80665 * DRAUGHT_HEIGHT_M * (AIR_KG_PER_M3 * gases.METERED / AMBIENT_K - flue_kg_per_m3)
    losses = sheet["fan_internal_resistance"] + sheet["air_cold_resistance"]
    losses += sheet["air_warm_resistance"] * flue_k / 398.0

    def air_at(rev):
        return math.sqrt((sheet["fan_head"] * rev * rev + column) / losses)

    def torque_left(rev):
        loading = air_at(rev) / (rev * FAN_NOMINAL_AIR)
        return FAN_REV_AT_FULL_DUTY * point["fan_duty"] - rev * (0.82 + 0.18 * loading)

    rev = brentq(torque_left, 1.0, 200.0)
    return air_at(rev), rev


class FlueGas:
    """Products per second, their enthalpy per kilogram and its inverse."""

    def __init__(self, moles):
        self.moles = moles
        self.kg_per_s = gases.mixture_mass(moles)
        kelvin = numpy.linspace(270.0, 2400.0, 214)
        enthalpy = [gases.mixture_enthalpy(moles, t) / self.kg_per_s for t in kelvin]
        self.enthalpy = CubicSpline(kelvin, enthalpy)
        self.kelvin = CubicSpline(enthalpy, kelvin)

    def density(self, kelvin):
        return gases.ATMOSPHERE * self.kg_per_s / (sum(self.moles.values()) * gases.R * kelvin)


class Exchanger:
    """Two gas passes across a continuous coil: the last half of the water path meets the hot gas first.
    Effectiveness 1 - exp(-NTU) at each place (Incropera et al. 2007, table 11.3, C_r = 0)."""

    def __init__(self, flue, water_kg_per_s, lit_share, radiated_w):
        self.flue, self.water, self.radiated = flue, water_kg_per_s, radiated_w
        conductance = 67.0 * (flue.kg_per_s / 0.020) ** 0.65 * (0.45 + 0.55 * lit_share)
        self.effectiveness = 1.0 - math.exp(-0.5 * conductance / (flue.kg_per_s * ENTHALPY_SCALE))
        self.film = max(60.0, 2600.0 * (water_kg_per_s / 0.33) ** 0.8)

    def metal(self, gas_h, water_k, radiated, casing_k):
        """Metal temperature where what the gas gives equals what water and casing take (per whole coil)."""
        gas_capacity = 2.0 * self.flue.kg_per_s * self.effectiveness

        def surplus(metal_k):
            given = gas_capacity * (gas_h - float(self.flue.enthalpy(metal_k))) + radiated
            return given - self.film * (metal_k - water_k) - CASING_W_PER_K * (metal_k - casing_k)

        return brentq(surplus, 250.0, 900.0, xtol=1e-7)

    def half(self, gas_h, water_k, radiated, casing_k):
        """One gas pass: water temperature after it, gas enthalpy after it, mean metal temperature."""

        def slope(_, y):
            metal_k = self.metal(gas_h, y[0], radiated, casing_k)
            heat = self.film * (metal_k - y[0])
            leaving = gas_h - self.effectiveness * (gas_h - float(self.flue.enthalpy(metal_k)))
            return [heat / (self.water * float(_water_cp(y[0]))), 2.0 * leaving, 2.0 * metal_k]

        end = solve_ivp(slope, (0.0, 0.5), [water_k, 0.0, 0.0], rtol=1e-7, atol=1e-6).y[:, -1]
        return end[0], end[1], end[2]

    def run(self, entering_h, casing_k):
        """Water and gas leaving, mean metal temperature; the gas between the passes is found by bracketing."""

        def both(between_h):
            first = self.half(between_h, INLET_K, 0.0, casing_k)
            second = self.half(entering_h, first[0], 2.0 * self.radiated, casing_k)
            return first, second

        def mismatch(between_h):
            return both(between_h)[1][1] - between_h

        coolest = float(self.flue.enthalpy(280.0))
        between = brentq(mismatch, coolest, entering_h, xtol=1.0)
        first, second = both(between)
        return second[0], first[1], 0.5 * (first[2] + second[2])


def ionisation(air, air_shares, bank_1):
    """The chosen curve (a plausible shape, not data) at the excess air of bank 1."""
    excess = air * air_shares[0] / bank_1
    return 12.0e-6 / (1.0 + ((excess - 1.05) / 0.6) ** 4)


class Burner:
    """What the sheet and the point fix before any heat is exchanged: fuel, heat set free, shares of the air."""

    def __init__(self, sheet, point, gas):
        self.fuel, carbon, hydrogen = gases.FUELS[gas]
        self.gas, self.oxygen_needed = gas, carbon + 0.25 * hydrogen
        self.banks, self.working_pa = gas_flow(sheet, point, gas)
        self.moles = sum(self.banks) * gases.moles_per_m3(self.fuel)
        self.gross_w = self.moles * gases.gross_heat(gas, LATENT_J_PER_MOL)
        self.net_w = self.gross_w - self.moles * 0.5 * hydrogen * LATENT_J_PER_MOL
        lit = [1.0, point["bank_2"], point["bank_3"]]
        weights = [share * (1.0 + on) for share, on in zip(BANK_SHARE, lit)]
        self.air_shares = [weight / sum(weights) for weight in weights]
        self.lit_share = sum(share * on for share, on in zip(BANK_SHARE, lit))

    def entering_enthalpy(self, air_moles, flue):
        """Of the flue gas before the exchanger, what is radiated taken off [J/kg]."""
        reactants = self.moles * gases.enthalpy(self.fuel, AMBIENT_K)
        reactants += air_moles * gases.mixture_enthalpy(gases.AIR, AMBIENT_K)
        return (reactants - RADIATED * self.net_w) / flue.kg_per_s

    def flame_current(self, air_moles):
        demand = self.banks[0] * gases.moles_per_m3(self.fuel) * self.oxygen_needed / gases.AIR["O2"]
        return ionisation(air_moles, self.air_shares, demand)


def outlet(coil_k, water, through_exchanger, casing_k):
    """Exchanger water mixed with the bypass's, less what the outlet pocket loses: temperature and loss."""
    mixed = float(_water_h(coil_k)) * through_exchanger
    mixed += float(_water_h(INLET_K)) * (water - through_exchanger)
    mixed /= water
    lost = POCKET_W_PER_K * (float(_water_t(mixed)) - casing_k)
    return float(_water_t(mixed - lost / (water * WATER_KG_PER_M3))), lost


def solve(sheet, point, gas):
    """All values of one point. Iterates on flue and casing temperature until both stand still."""
    burner = Burner(sheet, point, gas)
    water, through_exchanger = water_flow(sheet, point)
    flue_k, casing_k, density, moved = 380.0, 300.0, 0.9, 1.0
    for _ in range(60):
        air, rev = air_flow(sheet, point, flue_k, density)
        air_moles = air * AIR_KG_PER_M3 / gases.mixture_mass(gases.AIR)
        flue = FlueGas(gases.burn(gas, burner.moles, air_moles))
        coil = Exchanger(flue, through_exchanger * WATER_KG_PER_M3, burner.lit_share,
                         RADIATED * burner.net_w)
        coil_k, leaving_h, metal_k = coil.run(burner.entering_enthalpy(air_moles, flue), casing_k)
        outlet_k, lost = outlet(coil_k, water, through_exchanger, casing_k)
        warmer_k = AMBIENT_K + (CASING_W_PER_K * (metal_k - casing_k) + lost) / ROOM_W_PER_K
        moved = abs(float(flue.kelvin(leaving_h)) - flue_k) + abs(warmer_k - casing_k)
        flue_k, casing_k = float(flue.kelvin(leaving_h)), casing_k + 0.4 * (warmer_k - casing_k)
        density = flue.density(flue_k)
        if moved < 1e-4:
            break
    if moved >= 1e-4:
        raise RuntimeError("flue and casing did not come to rest")
    dry = sum(n for name, n in flue.moles.items() if name != "H2O")
    return {
        "water_m3_per_s": water, "gas_m3_per_s": sum(burner.banks), "input_w": burner.gross_w,
        "gas_inlet_pa": burner.working_pa, "outlet_k": outlet_k, "air_m3_per_s": air,
        "fan_rev_per_s": rev, "o2_share": flue.moles["O2"] / dry,
        "co2_share": flue.moles["CO2"] / dry, "flue_k": flue_k,
        "ionisation_a": burner.flame_current(air_moles),
    }
