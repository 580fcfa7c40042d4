"""Ideal-gas thermochemistry from the NASA Glenn polynomials (McBride, Zehe, Gordon 2002, NASA/TP-2002-211556),
for the independent calculation of steady points. Shares no code with the program."""

import csv
import math
import pathlib

R = 8.314510  # J/(mol K), as the polynomials were fitted with
ATMOSPHERE = 101325.0  # Pa
METERED = 288.15  # K, the temperature at which gas and air volumes are stated


def _load():
    table = {}
    path = pathlib.Path(__file__).with_name("nasa9_coefficients.csv")
    with path.open(newline="") as file:
        for row in csv.DictReader(file):
            constants = [float(row[f"a{i}"]) for i in range(1, 8)] + [float(row["b1"])]
            span = (float(row["T_low_K"]), float(row["T_high_K"]))
            entry = table.setdefault(row["species"], {"ranges": []})
            entry["ranges"].append((span, constants))
            entry["molar_mass"] = float(row["molar_mass_g_mol"]) * 1e-3
            entry["formation"] = float(row["Hf298_J_mol"])
    return table


SPECIES = _load()
FUELS = {"natural gas": ("CH4", 1, 4), "propane": ("C3H8", 3, 8)}  # EN 437 G20 and G31
# Dry air, mole shares (common values).
AIR = {"N2": 0.78084, "O2": 0.20946, "Ar": 0.00934, "CO2": 0.00036}
# Critical temperature K, pressure Pa, acentric factor (Poling, Prausnitz, O'Connell 2001, appendix A).
CRITICAL = {"CH4": (190.56, 45.99e5, 0.011), "C3H8": (369.83, 42.48e5, 0.152)}


def enthalpy(species, kelvin):
    """J/mol, with the enthalpy of formation. Below a polynomial's range its first one goes on."""
    ranges = SPECIES[species]["ranges"]
    a = ranges[0][1]
    for span, constants in ranges:
        if span[0] <= kelvin <= span[1]:
            a = constants
            break
    series = -a[0] / kelvin**2 + a[1] * math.log(kelvin) / kelvin + a[2] + a[7] / kelvin
    series += sum(a[i] * kelvin ** (i - 2) / (i - 1) for i in range(3, 7))
    return series * R * kelvin


def mixture_enthalpy(moles, kelvin):
    """J (or W, of moles a second) of {species: moles}."""
    return sum(n * enthalpy(name, kelvin) for name, n in moles.items())


def mixture_mass(moles):
    return sum(n * SPECIES[name]["molar_mass"] for name, n in moles.items())


def compression_factor(fuel, kelvin=METERED, pressure=ATMOSPHERE):
    """Z from the second virial coefficient by Pitzer's correlation (Smith, Van Ness, Abbott, chapter 3)."""
    critical_k, critical_pa, acentric = CRITICAL[fuel]
    reduced = kelvin / critical_k
    first = 0.083 - 0.422 / reduced**1.6
    second = 0.139 - 0.172 / reduced**4.2
    return 1.0 + (first + acentric * second) * (pressure / critical_pa) / reduced


def moles_per_m3(fuel):
    """Of fuel gas as it is metered: 15 degC, 101.325 kPa."""
    return ATMOSPHERE / (compression_factor(fuel) * R * METERED)


def gross_heat(gas, latent_of_water):
    """J per mole of fuel burnt at 25 degC with its water condensed; `latent_of_water` in J/mol."""
    fuel, carbon, hydrogen = FUELS[gas]
    products = carbon * SPECIES["CO2"]["formation"] + 0.5 * hydrogen * SPECIES["H2O"]["formation"]
    return SPECIES[fuel]["formation"] - products + 0.5 * hydrogen * latent_of_water


def burn(gas, fuel_moles, air_moles):
    """Complete, lean combustion: {species: moles}. Raises ValueError when air is short."""
    _, carbon, hydrogen = FUELS[gas]
    out = {name: share * air_moles for name, share in AIR.items()}
    out["O2"] -= fuel_moles * (carbon + 0.25 * hydrogen)
    if out["O2"] < 0.0:
        raise ValueError("not enough air to burn completely")
    out["CO2"] += fuel_moles * carbon
    out["H2O"] = 0.5 * fuel_moles * hydrogen
    return out
