"""Compares the heater at rest (tests/validation/steady_points_test.cpp wrote it down) with an independent
calculation, and writes what it found for the validation report. Usage: steady_points.py BUILD_FOLDER

Exit status: 0 all within their tolerance, 1 not so, 77 a package is missing (2 with EMBERPATH_EVERY_TEST set)."""

import csv
import os
import pathlib
import sys

try:
    import heater_model
except ImportError as missing:
    print(f"{missing}; install python3-iapws and python3-scipy", file=sys.stderr)
    sys.exit(2 if "EMBERPATH_EVERY_TEST" in os.environ else 77)

COLUMNS = ["id", "quantity", "conditions", "unit", "expected", "got", "tolerance", "outcome", "kind",
           "checked_by", "source"]
INLET_C = heater_model.INLET_K - 273.15
CRITICAL, OTHER = 0.02, 0.10  # relative

# column, what it is, unit, value in that unit, tolerance
VALUES = [
    ("water_m3_per_s", "water flow", "L/min", lambda v: v * 60000.0, CRITICAL),
    ("gas_m3_per_s", "gas rate", "m3/h", lambda v: v * 3600.0, CRITICAL),
    ("input_w", "heat input, gross", "kW", lambda v: v * 1e-3, CRITICAL),
    ("gas_inlet_pa", "working pressure", "kPa", lambda v: v * 1e-3, CRITICAL),
    ("outlet_k", "temperature rise of the water", "K", lambda v: v - heater_model.INLET_K, CRITICAL),
    ("air_m3_per_s", "air", "m3/h", lambda v: v * 3600.0, OTHER),
    ("fan_rev_per_s", "fan speed", "rev/min", lambda v: v * 60.0, OTHER),
    ("o2_share", "oxygen in dry flue gas", "%", lambda v: v * 100.0, OTHER),
    ("co2_share", "carbon dioxide in dry flue gas", "%", lambda v: v * 100.0, OTHER),
    ("flue_k", "flue temperature", "degC", lambda v: v - 273.15, OTHER),
    ("ionisation_a", "flame current", "uA", lambda v: v * 1e6, OTHER),
]


def read(folder, name):
    with (folder / name).open(newline="") as file:
        return list(csv.DictReader(file))


def sheets_of(folder):
    sheets = {}
    for row in read(folder, "heater_sheet.csv"):
        sheets.setdefault(row["gas"], {})[row["name"]] = float(row["value"])
    return sheets


def compare(row, expected):
    """One result a value, in trade units."""
    flow = float(row["water_m3_per_s"]) * 60000.0
    where = f"{row['gas']}, {row['rate']}, {flow:.1f} L/min"
    for column, what, unit, convert, tolerance in VALUES:
        got, wanted = convert(float(row[column])), convert(expected[column])
        within = abs(got - wanted) <= tolerance * abs(wanted)
        yield {"id": "", "quantity": what, "conditions": where, "unit": unit,
               "expected": f"{wanted:.4g}", "got": f"{got:.4g}",
               "tolerance": f"rel {tolerance:g} (off by {100.0 * (got / wanted - 1.0):+.1f} %)",
               "outcome": "pass" if within else "fail", "kind": "check",
               "checked_by": "tests/validation/steady_points.py",
               "source": "independent calculation: IAPWS-IF97 water (python3-iapws), NASA Glenn gases, "
                         "SciPy solvers"}


def main(build_folder):
    folder = pathlib.Path(build_folder) / "validation_results"
    sheets = sheets_of(folder)
    results = []
    for row in read(folder, "simulated_points.csv"):
        point = {key: float(value) for key, value in row.items() if key not in ("gas", "rate")}
        results += compare(row, heater_model.solve(sheets[row["gas"]], point, row["gas"]))
    with (folder / "steady_points.csv").open("w", newline="") as file:
        writer = csv.DictWriter(file, COLUMNS, lineterminator="\n")
        writer.writeheader()
        writer.writerows(results)
    for result in results:
        if result["outcome"] != "pass":
            print(result["conditions"], result["quantity"], "expected", result["expected"], "got",
                  result["got"], result["tolerance"], file=sys.stderr)
    print(f"{sum(r['outcome'] == 'pass' for r in results)} of {len(results)} values agree")
    return 0 if results and all(r["outcome"] == "pass" for r in results) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
