// Power comes back after work on mains wiring: was it tested before, and what does it find?

#include "sim/exposure/shock.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/electrical_quantities.hpp"

namespace emberpath::worksite {

namespace {

constexpr double found_out_in_s = 1.0;  // chosen

/// Mains wiring that was worked on counts as tested once earth path and insulation were read after it, and the
/// latest of each is within the limits of the rules. What is missing, in words; empty: nothing.
std::string untested_since(const Workplace& w, std::int64_t tick) {
    const Observation* earth = latest_since(w, Quantity::earth_ohms, tick);
    const Observation* insulation = latest_since(w, Quantity::insulation_ohms, tick);
    if (earth == nullptr || insulation == nullptr)
        return "without a test of its earth path and insulation";
    const Limits& limits = w.job.practice.limits;
    if (earth->value > limits.earth_continuity_ohm)
        return "with an earth path of " + text_of(Quantity::earth_ohms, earth->value) +
               ", where the rules allow " +
               text_of(Quantity::earth_ohms, limits.earth_continuity_ohm);
    if (insulation->value < limits.insulation_ohm)
        return "with an insulation of " + text_of(Quantity::insulation_ohms, insulation->value) +
               ", where the rules ask for " +
               text_of(Quantity::insulation_ohms, limits.insulation_ohm);
    return {};
}

std::string untested(const Workplace& w) {
    const auto since = w.precautions.wiring_work;
    return since == never ? std::string() : untested_since(w, since);
}

/// A second later a protection has opened, or metal stands at a voltage and the hand on it tells.
void meet_energised(Workplace& w) {
    using plant::Terminal;
    w.pass(found_out_in_s);
    const HeaterView view = w.look();
    if (view.plant.electrical_latches.safety_switch_tripped > 0.5)
        return w.say("The safety switch opens.");
    const auto wiring = plant::wiring_of(view.parameters, view.plant, w.inputs().surroundings);
    const double volts = plant::volts_between(wiring, Terminal::casing, Terminal::true_earth,
                                              plant::multimeter_input_ohm);
    if (volts < w.job.practice.limits.dangerous_v) return;
    const double body_ohm = exposure::body_impedance_ohm(volts, 0.5) + floor_path_ohm;
    const auto touched = plant::touch(wiring, Terminal::casing, Terminal::true_earth, body_ohm);
    const std::string stands = "The casing stands at " + units::fixed(volts, 0) + " V";
    if (!meet_shock(
            w, touched, ShockPath::hand_to_foot, "not_tested_before_power",
            stands + " and your hand does not let go: " + milliamperes(touched.current_a) + "."))
        w.say(stands + ": " + milliamperes(touched.current_a) + " go through whoever touches it.");
}

}  // namespace

double power_back_s(const Workplace& w) {
    return untested(w).empty() ? 0.0 : found_out_in_s;
}

void judge_power_back(Workplace& w) {
    if (!w.services.live()) return;
    const std::string missing = untested(w);
    if (missing.empty()) return;
    w.breach("not_tested_before_power",
             "Mains wiring that was worked on was switched on again " + missing + ".");
    meet_energised(w);
}

}  // namespace emberpath::worksite
