#pragma once
/// What sets a cause right: how it is said, what it costs, where it reaches, and whether a gasfitter may
/// do it or must hand it on. One table: acts, scoring, the trainee players and the manual read it.
/// Minutes and prices are chosen for the invented heater.

#include <array>
#include <cstddef>
#include <string_view>

namespace emberpath::faults {

/// Causes that share a remedy form one class: no trainee has to tell them apart.
enum class Remedy {
    explain_to_customer,  // no fault
    clear_flue_terminal,
    fit_wind_guard,  // approved terminal part, within scope
    change_cylinder,
    quote_larger_gas_pipe,  // advise and hand on; outside this visit
    escalate_regulator,     // distributor's or supplier's equipment
    replace_outlet_sensor,
    clean_flame_electrode,
    replace_igniter,
    clean_exchanger,
    // electrical
    escalate_wiring,              // fixed wiring: an electrician's
    escalate_electricity_supply,  // up to the meter: the electricity distributor's
    dry_and_reseal,
    replace_valve_lead,
    replace_gas_valve,
    replace_igniter_lead,
    replace_flame_lead,
    // what wears, sticks and drifts
    clean_injectors,
    escalate_gas_quality,
    clean_strainer,
    replace_water_valve,
    replace_bypass_valve,
    replace_flow_sensor,
    descale_exchanger,
    replace_inlet_sensor,
    replace_exchanger_sensor,
    replace_ambient_sensor,
    replace_fan,
    replace_limiter,
    correct_settings,
    // the services of the house, and what earlier hands have left
    open_gas_valve,
    clean_gas_screen,
    remake_inlet_union,
    fit_right_injectors,
    set_manifold_pressure,
    quote_more_cylinders,
    escalate_changeover,
    clean_air_intake,
    quote_other_place,
    condemn_heater,
    clear_open_flue,
    quote_ventilation,
    set_spark_gap,
    clean_outlet,
    replace_leaking_tube,
    fit_pressure_limiter,
    repair_mixer,
    replace_tempering_valve,
    remake_link_joint,
    restore_limiter,
    drain_air_tube,
    remake_companion_link,
};
inline constexpr std::size_t remedy_count = 52;

/// Where the hands have to go.
enum class Reach {
    words,    // nothing at the house changes
    outside,  // at the house, cover on
    inside,   // behind the cover: isolate first
};

/// Whose it is when it is not the gasfitter's.
enum class Whom {
    nobody,            // within a gasfitter's licence
    owner_of_the_gas,  // distributor on mains gas, supplier on cylinders
    electrician,
    electricity_distributor,
};

/// Whose trade it is: what a licence covers goes by that (scenarios/rules).
enum class Skill {
    words,  // explaining, quoting and handing on are open to everybody
    gas,    // gas, air, flue, flame and settings
    electrical,
    water,
};
[[nodiscard]] constexpr std::string_view skill_title(Skill skill) {
    switch (skill) {
        case Skill::words:
            return {};
        case Skill::gas:
            return "gas work";
        case Skill::electrical:
            return "electrical work";
        case Skill::water:
            return "plumbing";
    }
    return {};
}

/// The gas joint that has to be undone.
enum class GasJoint { none, cylinder, burner, inlet_union };

struct RemedyInfo {
    Remedy remedy;
    std::string_view word;      // as records spell it
    std::string_view title;     // as people read it
    std::string_view sentence;  // how it is said; {body} where it is handed on
    std::string_view help;
    double minutes;       // of hands or telephone, tools ready, everything isolated
    double part_minutes;  // price of the part, in minutes of work
    bool reversible;      // and cheap: less evidence will do
    Reach reach;
    Whom whom;
    bool touches_flame;  // burner, air, flue or ignition: combustion is to be proved again
    bool needs_glasses;  // dirt or acid can fly
    Skill skill;
    GasJoint joint;
    std::string_view about = {};  // what its causes have in common, in a word or two: "gas valve"
};

// clang-format off
inline constexpr std::array<RemedyInfo, remedy_count> remedies{{
    {Remedy::explain_to_customer, "explain_to_customer", "explain to the customer", "explain to customer",
     "no fault: show what the heater can do and how to use it",
     5.0, 0.0, true, Reach::words, Whom::nobody, false, false, Skill::words, GasJoint::none, "nothing wrong"},
    {Remedy::clear_flue_terminal, "clear_flue_terminal", "clear the flue terminal", "clear flue terminal",
     "from safe access",
     10.0, 0.0, true, Reach::outside, Whom::nobody, true, true, Skill::gas, GasJoint::none, "flue terminal"},
    {Remedy::fit_wind_guard, "fit_wind_guard", "fit a wind guard", "fit wind guard",
     "approved terminal part",
     20.0, 30.0, false, Reach::outside, Whom::nobody, true, false, Skill::gas, GasJoint::none, "gusts at the terminal"},
    {Remedy::change_cylinder, "change_cylinder", "change the gas cylinder", "change cylinder",
     "a full one in its place",
     8.0, 40.0, false, Reach::outside, Whom::nobody, false, false, Skill::gas, GasJoint::cylinder, "gas cylinder"},
    {Remedy::quote_larger_gas_pipe, "quote_larger_gas_pipe", "quote a larger gas pipe", "quote larger gas pipe",
     "advise limits of use now, hand on the work",
     10.0, 0.0, false, Reach::words, Whom::nobody, false, false, Skill::words, GasJoint::none, "gas pipe"},
    {Remedy::escalate_regulator, "escalate_regulator", "escalate the gas regulator", "escalate regulator to {body}",
     "hand it on to whom it belongs",
     6.0, 0.0, false, Reach::words, Whom::owner_of_the_gas, false, false, Skill::words, GasJoint::none, "gas regulator"},
    {Remedy::replace_outlet_sensor, "replace_outlet_sensor", "replace the outlet sensor", "replace outlet sensor",
     "new part",
     10.0, 25.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "outlet sensor"},
    {Remedy::clean_flame_electrode, "clean_flame_electrode", "clean the flame electrode", "clean flame electrode",
     "tip and seat",
     10.0, 0.0, true, Reach::inside, Whom::nobody, true, false, Skill::gas, GasJoint::none, "flame electrode"},
    {Remedy::replace_igniter, "replace_igniter", "replace the igniter", "replace igniter",
     "new part",
     15.0, 30.0, false, Reach::inside, Whom::nobody, true, false, Skill::electrical, GasJoint::none, "igniter"},
    {Remedy::clean_exchanger, "clean_exchanger", "clean the heat exchanger", "clean heat exchanger",
     "burner out, fins brushed, burner back",
     45.0, 10.0, false, Reach::inside, Whom::nobody, true, true, Skill::gas, GasJoint::burner, "exchanger fins"},
    {Remedy::escalate_wiring, "escalate_wiring", "hand the wiring to an electrician", "escalate wiring to {body}",
     "fixed wiring and power point; whom it belongs to",
     6.0, 0.0, false, Reach::words, Whom::electrician, false, false, Skill::words, GasJoint::none, "fixed wiring"},
    {Remedy::escalate_electricity_supply, "escalate_electricity_supply", "report the electricity supply", "escalate electricity supply to {body}",
     "the line up to the meter; whom it belongs to",
     6.0, 0.0, false, Reach::words, Whom::electricity_distributor, false, false, Skill::words, GasJoint::none, "electricity supply"},
    {Remedy::dry_and_reseal, "dry_and_reseal", "dry and reseal the heater's wiring", "dry and reseal wiring",
     "dry it, renew the seals of cover and cable entry",
     40.0, 10.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "damp wiring"},
    {Remedy::replace_valve_lead, "replace_valve_lead", "replace the gas valve's lead", "replace valve lead",
     "new lead on a new route, and a new fuse of the same rating",
     20.0, 15.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "gas valve lead"},
    {Remedy::replace_gas_valve, "replace_gas_valve", "replace the gas valve", "replace gas valve",
     "new part, manifold pressure set to the data plate",
     40.0, 70.0, false, Reach::inside, Whom::nobody, true, false, Skill::gas, GasJoint::burner, "gas valve"},
    {Remedy::replace_igniter_lead, "replace_igniter_lead", "replace the igniter's lead", "replace igniter lead",
     "new part",
     10.0, 15.0, false, Reach::inside, Whom::nobody, true, false, Skill::electrical, GasJoint::none, "igniter lead"},
    {Remedy::replace_flame_lead, "replace_flame_lead", "replace the flame lead", "replace flame lead",
     "new part",
     10.0, 10.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "flame lead"},
    {Remedy::clean_injectors, "clean_injectors", "clean the injectors", "clean injectors",
     "burner out, injectors cleared, burner back",
     35.0, 2.0, false, Reach::inside, Whom::nobody, true, true, Skill::gas, GasJoint::burner, "injectors"},
    {Remedy::escalate_gas_quality, "escalate_gas_quality", "escalate the quality of the gas", "escalate gas quality to {body}",
     "the gas that comes is not what the heater is made for",
     10.0, 0.0, false, Reach::words, Whom::owner_of_the_gas, false, false, Skill::words, GasJoint::none, "gas quality"},
    {Remedy::clean_strainer, "clean_strainer", "clean the inlet strainer", "clean inlet strainer",
     "screen out, rinsed, back; water shut",
     10.0, 0.0, true, Reach::outside, Whom::nobody, false, false, Skill::water, GasJoint::none, "inlet strainer"},
    {Remedy::replace_water_valve, "replace_water_valve", "replace the water valve", "replace water valve",
     "new part; water shut and drained",
     20.0, 40.0, false, Reach::inside, Whom::nobody, false, false, Skill::water, GasJoint::none, "water valve"},
    {Remedy::replace_bypass_valve, "replace_bypass_valve", "replace the bypass valve", "replace bypass valve",
     "new part; water shut and drained",
     20.0, 30.0, false, Reach::inside, Whom::nobody, false, false, Skill::water, GasJoint::none, "bypass valve"},
    {Remedy::replace_flow_sensor, "replace_flow_sensor", "replace the flow sensor", "replace flow sensor",
     "the right part, turbine and pick-up; water shut and drained",
     15.0, 30.0, false, Reach::inside, Whom::nobody, false, false, Skill::water, GasJoint::none, "flow sensor"},
    {Remedy::descale_exchanger, "descale_exchanger", "descale the heat exchanger", "descale heat exchanger",
     "isolated from the taps, acid pumped round; flush after it",
     60.0, 10.0, false, Reach::inside, Whom::nobody, false, true, Skill::water, GasJoint::none, "scale in the exchanger"},
    {Remedy::replace_inlet_sensor, "replace_inlet_sensor", "replace the inlet sensor", "replace inlet sensor",
     "new part",
     10.0, 25.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "inlet sensor"},
    {Remedy::replace_exchanger_sensor, "replace_exchanger_sensor", "replace the exchanger sensor", "replace exchanger sensor",
     "new part",
     10.0, 25.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "exchanger sensor"},
    {Remedy::replace_ambient_sensor, "replace_ambient_sensor", "replace the ambient sensor", "replace ambient sensor",
     "new part",
     8.0, 20.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "ambient sensor"},
    {Remedy::replace_fan, "replace_fan", "replace the fan", "replace fan",
     "motor, wheel and speed sensor as one part",
     25.0, 70.0, false, Reach::inside, Whom::nobody, true, false, Skill::electrical, GasJoint::none, "fan"},
    {Remedy::replace_limiter, "replace_limiter", "replace the overheat limiter", "replace overheat limiter",
     "only after real overheating is ruled out",
     10.0, 20.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "overheat limiter"},
    {Remedy::correct_settings, "correct_settings", "correct the installer settings", "correct installer settings",
     "all of them as the data plate and the house ask",
     4.0, 0.0, true, Reach::inside, Whom::nobody, true, false, Skill::gas, GasJoint::none, "installer settings"},
    {Remedy::open_gas_valve, "open_gas_valve", "open the heater's gas valve fully", "open gas valve fully",
     "handle in line with the pipe",
     1.0, 0.0, true, Reach::outside, Whom::nobody, false, false, Skill::gas, GasJoint::none, "heater's gas valve"},
    {Remedy::clean_gas_screen, "clean_gas_screen", "clean the gas inlet screen", "clean gas inlet screen",
     "screen out, blown through, back",
     20.0, 2.0, false, Reach::inside, Whom::nobody, false, true, Skill::gas, GasJoint::burner, "gas inlet screen"},
    {Remedy::remake_inlet_union, "remake_inlet_union", "remake the inlet union", "remake inlet union",
     "new washer, tightened, to be proved",
     10.0, 2.0, true, Reach::outside, Whom::nobody, false, false, Skill::gas, GasJoint::inlet_union, "inlet union"},
    {Remedy::fit_right_injectors, "fit_right_injectors", "fit the injectors of the data plate", "fit injectors of data plate",
     "burner out, the plate's set in, burner back",
     50.0, 40.0, false, Reach::inside, Whom::nobody, true, false, Skill::gas, GasJoint::burner, "injectors of the other gas"},
    {Remedy::set_manifold_pressure, "set_manifold_pressure", "set the manifold pressure to the plate", "set manifold pressure to plate",
     "low and high fire, screws sealed again",
     12.0, 0.0, true, Reach::inside, Whom::nobody, true, false, Skill::gas, GasJoint::none, "manifold pressure"},
    {Remedy::quote_more_cylinders, "quote_more_cylinders", "quote more gas cylinders", "quote more cylinders",
     "advise limits of use now, the supplier plans the rest",
     10.0, 0.0, false, Reach::words, Whom::nobody, false, false, Skill::words, GasJoint::none, "size of the cylinder"},
    {Remedy::escalate_changeover, "escalate_changeover", "escalate the changeover", "escalate changeover to {body}",
     "equipment of whoever supplies the gas",
     6.0, 0.0, false, Reach::words, Whom::owner_of_the_gas, false, false, Skill::words, GasJoint::none, "changeover"},
    {Remedy::clean_air_intake, "clean_air_intake", "clean the air intake", "clean air intake",
     "lint out of the grille and off the fan",
     10.0, 0.0, true, Reach::outside, Whom::nobody, true, true, Skill::gas, GasJoint::none, "air intake"},
    {Remedy::quote_other_place, "quote_other_place", "quote a better place for the heater", "quote better place for heater",
     "out of use until its products can leave",
     10.0, 0.0, false, Reach::words, Whom::nobody, false, false, Skill::words, GasJoint::none, "place of the heater"},
    {Remedy::condemn_heater, "condemn_heater", "condemn the heater", "condemn heater",
     "beyond repair: out of use for good",
     10.0, 0.0, false, Reach::words, Whom::nobody, false, false, Skill::words, GasJoint::none, "combustion chamber"},
    {Remedy::clear_open_flue, "clear_open_flue", "clear the open flue", "clear open flue",
     "brushed from safe access",
     30.0, 0.0, false, Reach::outside, Whom::nobody, true, true, Skill::gas, GasJoint::none, "open flue"},
    {Remedy::quote_ventilation, "quote_ventilation", "quote ventilation for the room", "quote ventilation",
     "out of use with the fan on until vents are made",
     10.0, 0.0, false, Reach::words, Whom::nobody, false, false, Skill::words, GasJoint::none, "air of the room"},
    {Remedy::set_spark_gap, "set_spark_gap", "set the spark gap and clean the ports", "set spark gap",
     "gap by gauge, ports brushed",
     15.0, 0.0, true, Reach::inside, Whom::nobody, true, true, Skill::gas, GasJoint::none, "spark gap"},
    {Remedy::clean_outlet, "clean_outlet", "clean the clogged outlet", "clean clogged outlet",
     "screen or shower head off, rinsed, back",
     5.0, 0.0, true, Reach::outside, Whom::nobody, false, false, Skill::water, GasJoint::none, "clogged outlet"},
    {Remedy::replace_leaking_tube, "replace_leaking_tube", "replace the leaking tube", "replace leaking tube",
     "water shut and drained, case dried",
     40.0, 50.0, false, Reach::inside, Whom::nobody, false, false, Skill::water, GasJoint::none, "leaking tube"},
    {Remedy::fit_pressure_limiter, "fit_pressure_limiter", "fit a pressure limiting valve", "fit pressure limiting valve",
     "at the meter; water shut",
     40.0, 40.0, false, Reach::outside, Whom::nobody, false, false, Skill::water, GasJoint::none, "water pressure"},
    {Remedy::repair_mixer, "repair_mixer", "repair the mixer", "repair mixer",
     "non-return valves of the one that lets cold across; water shut",
     20.0, 15.0, false, Reach::outside, Whom::nobody, false, false, Skill::water, GasJoint::none, "mixer"},
    {Remedy::replace_tempering_valve, "replace_tempering_valve", "replace the tempering valve", "replace tempering valve",
     "new part, set to its scale; water shut",
     30.0, 50.0, false, Reach::outside, Whom::nobody, false, false, Skill::water, GasJoint::none, "tempering valve"},
    {Remedy::remake_link_joint, "remake_link_joint", "remake the link cable's joint", "remake link cable joint",
     "cut back, new sealed joint",
     12.0, 3.0, false, Reach::outside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "link cable"},
    {Remedy::restore_limiter, "restore_limiter", "restore the overheat limiter", "restore overheat limiter",
     "bridge off, its leads back",
     10.0, 5.0, false, Reach::inside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "bridge over the limiter"},
    {Remedy::drain_air_tube, "drain_air_tube", "drain the air tube and lay it anew", "drain air tube",
     "emptied, laid with fall and no sag",
     15.0, 2.0, false, Reach::inside, Whom::nobody, true, false, Skill::gas, GasJoint::none, "air tube"},
    {Remedy::remake_companion_link, "remake_companion_link", "remake the link between the heaters", "remake link between heaters",
     "ends cut back, clamped anew",
     12.0, 3.0, false, Reach::outside, Whom::nobody, false, false, Skill::electrical, GasJoint::none, "link between the heaters"},
}};
// clang-format on

namespace remedy_table {
constexpr bool in_enum_order() {
    for (std::size_t i = 0; i < remedy_count; ++i)
        if (remedies[i].remedy != static_cast<Remedy>(i)) return false;
    return true;
}
static_assert(in_enum_order(), "the table follows the order of Remedy");
}  // namespace remedy_table

[[nodiscard]] constexpr const RemedyInfo& info(Remedy remedy) {
    return remedies[static_cast<std::size_t>(remedy)];
}
[[nodiscard]] constexpr std::string_view remedy_word(Remedy remedy) {
    return info(remedy).word;
}
[[nodiscard]] constexpr std::string_view remedy_title(Remedy remedy) {
    return info(remedy).title;
}
/// Does the plant change, now and by our hands? Words and what is handed on change nothing in this visit.
[[nodiscard]] constexpr bool works_at_once(Remedy remedy) {
    return info(remedy).reach != Reach::words;
}

}  // namespace emberpath::faults
