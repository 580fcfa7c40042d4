// What the house does to people: gas that escapes, products that spill, current, heat.

#include <algorithm>
#include <cmath>

#include "sim/exposure/contact.hpp"
#include "sim/exposure/scald.hpp"
#include "sim/exposure/shock.hpp"
#include "sim/math/functions.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/electrical_quantities.hpp"
#include "sim/worksite/hazards.hpp"
#include "sim/worksite/workplace.hpp"

namespace emberpath::worksite {

namespace {

// Chosen figures of a sheltered wall with a heater on it.
constexpr double nipple_m2 = 0.6 * 0.785e-6;  // discharge coefficient x bore of 1 mm
constexpr double open_joint_m2 = 0.6 * 3.0e-6;
constexpr double weep_at_pa = 2000.0;
constexpr double greatest_escape_m3_per_s = 2.0e-4;
constexpr double air_renews_in_s = 180.0, aired_renews_in_s = 45.0;
constexpr double nothing_left_m3 = 1.0e-7;
constexpr double smell_m3 = 0.3e-3;
constexpr double rectified_v = 325.0;     // peak of 230 V
constexpr double discharges_in_s = 20.0;  // through the resistor beside the capacitor: chosen
constexpr double weeps_below = 0.125;     // one joint in eight
constexpr double weep_m3_per_s = 5.0e-7;

double through(double area_m2, double pressure_pa, double gas_kg_per_m3) {
    return area_m2 * std::sqrt(2.0 * std::max(0.0, pressure_pa) / gas_kg_per_m3);
}

double pressure_at(Point point, const plant::Observables& p) {
    if (point == Point::manifold) return p.manifold_pa;
    return point == Point::inlet ? p.gas_inlet_pa : p.regulator_outlet_pa;
}

}  // namespace

bool Workplace::alarm_sounds() const {
    return doses.co_alarm_on && alarm_can_sound(*this) &&
           breathed_co() > job.practice.limits.co_eight_hours;
}

bool Workplace::gas_present(Point point) const {
    if (!services.gas_at_supply) return false;
    if (point != Point::regulator && !services.gas_at_heater) return false;
    return pressure_at(point, look().plant) > 50.0;
}

bool Workplace::joint_under_pressure(Joint joint) const {
    switch (joint) {
        case Joint::inlet:
        case Joint::inlet_union:
            return gas_present(Point::inlet);
        case Joint::manifold:
        case Joint::burner:
            return gas_present(Point::manifold);
        default:
            return gas_present(Point::regulator);
    }
}

double Workplace::weep_at(Joint joint) const {
    const double found =
        joint == Joint::inlet_union ? heater.plant.parameters.gas_union_leak_m3_per_s : 0.0;
    return fabric.weep_m3_per_s[static_cast<std::size_t>(joint)] + found;
}

double Workplace::escaping_m3_per_s(const HeaterView& view) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < fabric.point_open.size(); ++i) {
        const auto point = static_cast<Point>(i);
        if (!fabric.point_open[i] || bench.manometer_at == i || !gas_present(point)) continue;
        sum += through(nipple_m2, pressure_at(point, view.plant), view.parameters.gas_kg_per_m3);
    }
    for (std::size_t i = 0; i < joint_count; ++i)
        if (weep_at(static_cast<Joint>(i)) > 0.0 && joint_under_pressure(static_cast<Joint>(i)))
            sum += weep_at(static_cast<Joint>(i)) *
                   std::sqrt(std::max(0.0, view.plant.regulator_outlet_pa) / weep_at_pa);
    if (fabric.wide_open_joint && services.gas_at_supply)
        sum +=
            through(open_joint_m2, view.plant.regulator_outlet_pa, view.parameters.gas_kg_per_m3);
    return std::min(sum, greatest_escape_m3_per_s);
}

bool Workplace::ignition_source(const HeaterView& view) const {
    if (view.plant.flame_lit > 0.0 || view.plant.spark_heard > 0.5) return true;
    return std::any_of(services.appliance_on.begin(), services.appliance_on.end(),
                       [](std::uint8_t on) { return on != 0; });
}

void Workplace::escape_gas(const HeaterView& view) {
    const double rate = escaping_m3_per_s(view);
    inputs_.surroundings.test_nipple_leak_m3_per_s = rate;  // felt by the pipe in the next tick
    const double renews_in_s = precautions.aired ? aired_renews_in_s : air_renews_in_s;
    escaped_gas_m3 += tick_s * (rate - escaped_gas_m3 / renews_in_s);
    settle_low_gas(*this, rate);
    if (rate <= 0.0 && escaped_gas_m3 < nothing_left_m3) escaped_gas_m3 = 0.0;
    const double share = flammable_share(job.site.gas, escaped_gas_m3);
    if (!person.outside) {
        if (escaped_gas_m3 > smell_m3 && !smell_noticed_) say("It smells of gas.");
        smell_noticed_ = escaped_gas_m3 > smell_m3;
        doses.most_gas = std::max(doses.most_gas, share);
    }
    flash_where_it_can(view, share);
}

/// Whoever is outside is not burnt; the visit ends all the same.
void Workplace::flash_where_it_can(const HeaterView& view, double share) {
    const bool gathered = share >= 1.0, low = low_gas_share(*this) >= 1.0;
    if ((!gathered && !low) || !ignition_source(view)) return;
    const std::string behind = " meets a flame and flashes where you had stood.";
    if (gathered)
        end_badly(
            "flash",
            "The gas that escaped, " + units::fixed(escaped_gas_m3 * 1000.0, 1) + " litres," +
                (person.outside ? behind
                                : " meets a flame and flashes. Your hands and face are burnt."));
    if (low)
        end_badly("flash",
                  "The propane that lies in the drain" +
                      (person.outside ? behind : " meets a flame and flashes at your feet."));
}

/// The limits of the place are broken by whoever stays; the body decides when the job ends.
void Workplace::judge_room_air() {
    const Limits& limits = job.practice.limits;
    if (alarm_sounds() && !doses.co_alarm_sounding)
        say("Your personal alarm sounds: carbon monoxide.");
    doses.co_alarm_sounding = alarm_sounds();
    if (const auto reached = co_limit_reached(doses, limits); !reached.empty())
        breach("room_co", "You breathed " + reached +
                              (doses.co_alarm_on ? "." : ", your alarm switched off."));
    if (breathed_co() > limits.co_ceiling)
        breach("co_ceiling", "You stayed in air with " + units::format_ppm(room_co()) +
                                 " of carbon monoxide; " + units::format_ppm(limits.co_ceiling) +
                                 " is the ceiling.");
    if (doses.blood_co >= limits.blood_unfit)
        end_badly("co_poisoning", "Carbon monoxide holds " +
                                      units::fixed(100.0 * doses.blood_co, 0) +
                                      " % of your blood: your head aches, you are dizzy and are "
                                      "led out.");
}

void Workplace::touch_metal(double metal_k) {
    doses.most_metal_k = std::max(doses.most_metal_k, metal_k);
    doses.hand_burn += exposure::contact_burn_share(metal_k, exposure::drawn_back_after_s);
    if (doses.hand_burn >= 1.0)
        breach("burnt", "Your hand is burnt: metal at " + units::format_temperature(metal_k) + ".");
}

void Workplace::touch_water(double water_k, double seconds) {
    constexpr double felt_hot_k = 316.15;  // 43 °C: below, the sources say nothing
    if (person.gloves || water_k < felt_hot_k) return;
    doses.most_water_k = std::max(doses.most_water_k, water_k);
    doses.hand_burn += exposure::burn_share(exposure::Burn::second_degree, water_k, seconds);
    if (doses.hand_burn >= 1.0)
        breach("burnt",
               "Your hand is scalded: water of " + units::format_temperature(water_k) + ".");
}

/// Gas left in the chamber lights late: a thump; with hasty resets it is the trainee's doing.
void Workplace::notice_light_up(const HeaterView& view) {
    if (!lit_just_now_ || view.plant.rough_light_up_m3 < hard_light_up_m3) return;
    notice("It lights with a thump.");
    if (person.hasty_resets > 0)
        breach("hard_light_up", "Gathered gas, " +
                                    units::fixed(view.plant.rough_light_up_m3 * 1000.0, 1) +
                                    " litres, lit hard after hasty resets.");
}

double Workplace::terminals_v() const {
    return look().plant.electrical.worst_terminal_v;
}

bool Workplace::terminals_live() const {
    return terminals_v() > job.practice.limits.dangerous_v;
}

bool meet_shock(Workplace& w, const plant::Touch& touch, ShockPath path, std::string_view rule,
                const std::string& words) {
    if (w.person.gloves) return false;
    meet_current(w.doses, touch, path);
    if (exposure::effect_of(touch.current_a) < exposure::Effect::cannot_let_go) return false;
    w.end_badly(rule, words);
    return true;
}

/// One hand on the worse terminal, the other on the casing: the network says what flows.
void Workplace::meet_live_terminal(const std::string& what) {
    using plant::Terminal;
    const std::string volts = units::fixed(terminals_v(), 0) + " V";
    breach("live_work", what + " with " + volts + " on the terminals beside your hands.");
    if (person.gloves) return;
    const HeaterView view = look();
    const auto wiring = plant::wiring_of(view.parameters, view.plant, inputs_.surroundings);
    const double body_ohm = exposure::body_impedance_ohm(terminals_v(), 0.5);
    plant::Touch most;
    for (const Terminal terminal : {Terminal::heater_active, Terminal::heater_neutral}) {
        const auto touched = plant::touch(wiring, terminal, Terminal::casing, body_ohm);
        if (touched.current_a > most.current_a) most = touched;
    }
    if (!meet_shock(*this, most, ShockPath::hand_to_hand, "live_work",
                    "Your hand meets a live terminal: " + volts + ", " +
                        units::fixed(most.current_a * 1000.0, 0) +
                        " mA from hand to hand. You are taken away."))
        say("Your hand tingles: " + units::fixed(most.current_a * 1000.0, 1) + " mA.");
}

double Workplace::stored_v() const {
    if (terminals_live() || charged_tick_ == never) return 0.0;
    const double since_s = static_cast<double>(tick_ - charged_tick_) * tick_s;
    return rectified_v * math::exp(-since_s / discharges_in_s);
}

/// A jolt from the capacitor: it does not hold the hand, but the hand goes where nobody sent it.
void Workplace::feel_stored_charge(std::string_view doing) {
    const double volts = stored_v();
    if (volts < job.practice.limits.stored_charge_v) return;
    const std::string held = units::fixed(volts, 0) + " V";
    breach("stored_charge", std::string(doing) + " while the board's capacitor held " + held + ".");
    if (!person.gloves)
        say("A jolt goes through your hand: the capacitor still held " + held + ".");
}

/// The current is that of the reading: what a hand feels is asked of every shadow alike.
void Workplace::touch_pipes(bool always_read) {
    using plant::Terminal;
    const HeaterView view = look();
    const double volts = view.plant.electrical.pipe_v;
    plant::Touch touched{hand_to_floor_a(volts)};
    const bool felt = exposure::effect_of(touched.current_a) != exposure::Effect::nothing_felt;
    if (felt && !person.gloves) {
        const auto wiring = plant::wiring_of(view.parameters, view.plant, inputs_.surroundings);
        const double path_ohm = exposure::body_impedance_ohm(volts, 0.5) + floor_path_ohm;
        touched.cut_after_s =
            plant::touch(wiring, Terminal::water_pipe, Terminal::true_earth, path_ohm).cut_after_s;
    }
    if (always_read || (felt && !person.tingled)) read({Quantity::tingle});
    if (felt && person.tingled && !person.gloves && !always_read)
        breach("live_pipe",
               "You went on working on pipes that stand at " + units::fixed(volts, 0) + " V.");
    if (felt) person.tingled = true;
    (void)meet_shock(
        *this, touched, ShockPath::hand_to_foot, "live_pipe",
        "The pipe stands at " + units::fixed(volts, 0) + " V and your hand does not let go.");
}

void Workplace::hands_inside(std::string_view doing) {
    const std::string what(doing);
    if (terminals_live()) return meet_live_terminal(what);
    feel_stored_charge(what);
    if (person.proof != Person::Proof::proved_dead)
        breach("not_proved_dead", what + " with the power off, but not proved dead.");
    const bool plug_locked = !services.plugged_in && services.plug_locked;
    const bool board_locked =
        (!services.main_switch_on || !services.breaker_on) && services.board_locked;
    if (!plug_locked && !board_locked)
        breach("not_locked", what + " while anybody could have switched on again.");
    const double metal_k = look().plant.hottest_metal_k;
    if (person.gloves || metal_k <= job.practice.limits.bare_hand_metal_k) return;
    touch_metal(metal_k);
    breach("hot_parts",
           what + " with bare hands, metal at " + units::format_temperature(metal_k) + ".");
}

void Workplace::open_joint(Joint joint) {
    fabric.joint_unproved[static_cast<std::size_t>(joint)] = true;
    deeds.gas_work = tick_;
    fabric.weep_m3_per_s[static_cast<std::size_t>(joint)] = 0.0;
    deeds.leak_test = never;
}

void Workplace::seal_joint(Joint joint) {
    fabric.joint_unproved[static_cast<std::size_t>(joint)] = true;
    deeds.gas_work = tick_;
    const bool weeps = uniform_for("joint", ++joints_made_) < weeps_below;
    fabric.weep_m3_per_s[static_cast<std::size_t>(joint)] = weeps ? weep_m3_per_s : 0.0;
}

}  // namespace emberpath::worksite
