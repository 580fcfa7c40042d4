#pragma once
/// The chapters of docs/validation.md: which results belong to each, and what a reader should know first.

#include <array>
#include <string_view>

namespace emberpath::validation {

struct Chapter {
    std::string_view subject;  // the results file
    std::string_view title;
    std::string_view introduction;
};

/// In the order of the report.
inline constexpr std::array chapters{
    Chapter{"01_water", "Water", ""},
    Chapter{"02_air_combustion_gases", "Air and combustion gases", ""},
    Chapter{"03_fuel_gases", "Fuel gases", ""},
    Chapter{"04_gas_flow", "Gas flow in injectors and pipes", ""},
    Chapter{"05_lpg", "Liquefied gas and cylinders", ""},
    Chapter{"06_heat_transfer", "Heat transfer", ""},
    Chapter{"07_hydraulics", "Water flow in pipes and valves", ""},
    Chapter{"08_combustion_analysis", "Analysis of flue gas", ""},
    Chapter{"09_thermistors", "Thermistors", ""},
    Chapter{"10_flame_fan", "Flame current and fans", ""},
    Chapter{"11_human_safety", "Harm to people", ""},
    Chapter{"12_control", "Control loops", ""},
    Chapter{"13_everyday_checks", "Everyday arithmetic of the trade", ""},
    Chapter{"steady_points", "The heater at rest, against an independent calculation",
            "Controller taken away; fan, valves and taps held until everything stands still (four "
            "hours).\n"
            "The other side (`tests/validation/heater_model.py`) shares no code with the program: "
            "water by\n"
            "IAPWS-IF97, gases by the NASA Glenn polynomials, a compressible injector, a "
            "continuous exchanger\n"
            "instead of eight cells, draught from densities, networks solved by bracketing. It "
            "shares the\n"
            "chosen numbers of the invented heater (areas, resistances, conductances, the "
            "flame-current\n"
            "curve), so it proves the solution, not those numbers. 2 % is allowed for what matters "
            "most, 10 %\n"
            "for the rest."},
    Chapter{
        "transients", "Transients",
        "A warm heater (or a cold one where told), something happens, and readings are averaged "
        "over eight\n"
        "seconds before and at the end. Expected: the direction of at least five readings, a "
        "band for how\n"
        "far the outlet strays from the set point, and the exact set of protections that "
        "respond. Natural\n"
        "gas and set point 50 degC unless told. A reading stays when it changes by less than a "
        "mechanic\n"
        "would call a change (the number under tolerance)."},
    Chapter{"day_draws", "Days of hot water use",
            "Draw patterns of the United States' simulated use test (10 CFR 430 Subpart B Appendix "
            "E: outlet\n"
            "51.7 degC, inlet 14.4, room 19.7) and a load profile of the European Union (814/2013, "
            "profile M:\n"
            "useful heat counts from a least temperature on; outlet 55 degC, inlet 10, room 20), "
            "drawn from the\n"
            "simulated heater under its controller, natural gas. Steady means endless draws of the "
            "same heat at\n"
            "the same flows. The one-node estimate adds the heat that a core of one temperature "
            "loses between\n"
            "draws; a day costs 0.4 to 1.9 points more than that (purging, lighting, the swing of "
            "the firing\n"
            "rate at each start), for which 2 points are allowed.\n\n"
            "Departures from the standards: efficiency is gas alone, electricity is not counted; "
            "temperature is\n"
            "that of the water leaving the heater, without a sensor's lag; taps are set for the "
            "flow, not\n"
            "regulated; mains pressure, inlet and room are constant; the day starts with a cold "
            "heater instead\n"
            "of after a draw, and ends after the last draw, since nothing stands by on gas; no "
            "maximum-flow\n"
            "test chooses the pattern; water has the plant's constant density and heat capacity."},
    Chapter{"short_draws", "Short draws cost efficiency",
            "Burch et al. 2008 found by modelling a measured tankless heater that a realistic draw "
            "pattern\n"
            "makes it about 8 % less efficient than draws of 40 L. The direction is met; the size "
            "is met in\n"
            "proportion to the heat that the core holds, not in full."},
};

/// The chapter that needs Python, SciPy and IAPWS libraries (tests/validation/steady_points.py).
inline constexpr std::string_view independent_subject = "steady_points";

}  // namespace emberpath::validation
