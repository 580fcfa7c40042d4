// What sets things right, and the short cuts that only seem to.

#include <algorithm>
#include <array>

#include "sim/worksite/doings.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

using faults::Remedy;

constexpr double regulator_half_turn_pa = 500.0;
constexpr double hot_water_on_cylinder_k = 35.0;

/// Index of {body} to whom it belongs.
std::size_t right_body(GasKind gas, faults::Whom whom) {
    switch (whom) {
        case faults::Whom::electrician:
            return electrician;
        case faults::Whom::electricity_distributor:
            return electricity_distributor;
        case faults::Whom::nobody:
        case faults::Whom::owner_of_the_gas:
            break;
    }
    return gas == GasKind::natural_gas ? gas_distributor : gas_supplier;
}

bool inside(Remedy remedy) {
    return faults::info(remedy).reach == faults::Reach::inside;
}

std::string can_be_done(const Workplace& w, const Act& act) {
    const auto remedy = static_cast<Remedy>(act.remedy);
    if (faults::info(remedy).joint == faults::GasJoint::cylinder &&
        w.job.site.gas != GasKind::propane_cylinder)
        return "There is no cylinder here.";
    if (remedy == Remedy::correct_settings) return settings_are_free(w, act);
    if (remedy == Remedy::set_manifold_pressure && !w.burner_runs())
        return "The burner must run while its pressure is set.";
    if (remedy == Remedy::set_manifold_pressure && w.setup.manometer != Quantity::manifold_pressure)
        return "The manometer must stand at the open manifold test point.";
    return inside(remedy) ? needs_cover_off(w, act) : std::string();
}

/// Settings are stored by the keys of the panel, with the power on: no hand goes inside. The screws of the gas
/// valve are turned with the burner running, by a long driver: gloves, and nothing at a terminal.
void protect(Workplace& w, Remedy remedy) {
    if (remedy == Remedy::correct_settings) return;
    const bool runs_meanwhile = remedy == Remedy::set_manifold_pressure;
    if (inside(remedy) && !runs_meanwhile) w.hands_inside("You began work inside");
    if (w.over()) return;
    if (inside(remedy) && !w.person.gloves)
        w.breach("no_gloves", "Sharp sheet metal was handled with bare hands.");
    if (faults::info(remedy).needs_glasses && !w.person.glasses)
        w.breach("no_glasses", remedy == Remedy::descale_exchanger
                                   ? "Acid was handled without safety glasses."
                                   : "Dirt was brushed out without safety glasses.");
}

void work(Workplace& w, const faults::RemedyInfo& info, double seconds) {
    const bool shut_at_supply = !w.services.gas_at_supply;
    switch (info.joint) {
        case faults::GasJoint::none:
            return w.pass(seconds);
        case faults::GasJoint::cylinder:
            return work_on_joint(w, Joint::cylinder, shut_at_supply, seconds);
        case faults::GasJoint::inlet_union:
            return work_on_joint(w, Joint::inlet_union, shut_at_supply || !w.services.gas_at_heater,
                                 seconds);
        case faults::GasJoint::burner:
            return work_on_joint(w, Joint::burner, shut_at_supply || !w.services.gas_at_heater,
                                 seconds);
    }
}

[[nodiscard]] Alterations without_what_is_replaced(Alterations made, Remedy remedy);

void do_remedy(Workplace& w, const Act& act) {
    const auto remedy = static_cast<Remedy>(act.remedy);
    const faults::RemedyInfo& info = faults::info(remedy);
    protect(w, remedy);
    if (w.over()) return;
    open_water_side(w, remedy);
    part_pipe(w, parted_by(remedy));
    if (w.over()) return;
    work(w, info, seconds_of(act));
    if (w.over()) return;
    after_work(w, remedy);
    w.entry.remedy = act.remedy;
    w.entry.part_minutes = info.part_minutes;
    const controller::Settings before = w.look().settings;
    if (auto next = without_what_is_replaced(w.fabric.alterations, remedy);
        next != w.fabric.alterations)
        w.set_alterations(next);
    w.carry_out(remedy);
    const bool stored_only = remedy == Remedy::correct_settings;
    if (stored_only ? moves_the_flame(before, w.look().settings) : info.touches_flame)
        w.deeds.flame_work = w.tick();
    if (works_at_once(remedy)) w.say("Done.");
}

/// The screen stays on the shelf: water runs freely, and so does what the screen was there for.
void leave_strainer_out(Workplace& w, const Act&) {
    open_water_side(w, Remedy::clean_strainer);
    auto next = w.fabric.alterations;
    next.strainer_out = true;
    w.set_alterations(next);
    w.breach("strainer_out", "The inlet's screen was left out.");
}

std::string strainer_is_in(const Workplace& w, const Act&) {
    return w.fabric.alterations.strainer_out ? "It is out already." : "";
}

/// Fires at a trickle, and at a draw for more water than there is.
void fit_other_flow_sensor(Workplace& w, const Act&) {
    w.hands_inside("Another flow sensor was fitted");
    if (w.over()) return;
    open_water_side(w, Remedy::replace_flow_sensor);
    if (w.over()) return;
    auto next = w.fabric.alterations;
    next.other_flow_sensor = true;
    next.grit = 0.0;
    w.set_alterations(next);
    w.breach("bridged",
             "A flow sensor was fitted that counts more than flows, so that the burner starts "
             "with too little water.");
}

std::string sensor_is_its_own(const Workplace& w, const Act& act) {
    if (w.fabric.alterations.other_flow_sensor) return "The other one is in already.";
    return needs_cover_off(w, act);
}

void tape_lead(Workplace& w, const Act&) {
    w.hands_inside("The igniter's lead was taped");
    if (w.over()) return;
    auto next = w.fabric.alterations;
    next.lead_taped = true;
    w.set_alterations(next);
}

std::string lead_is_bare(const Workplace& w, const Act& act) {
    if (w.fabric.alterations.lead_taped) return "There is tape on it already.";
    return needs_cover_off(w, act);
}

/// The heater believes in 49 °C from now on: it neither locks out for a broken sensor nor knows what it gives.
void fit_resistor(Workplace& w, const Act&) {
    w.hands_inside("A resistor was fitted");
    if (w.over()) return;
    auto next = w.fabric.alterations;
    next.outlet_sensor_fooled = true;
    w.set_alterations(next);
    w.breach(
        "bridged",
        "A resistor was fitted in place of the outlet sensor, so that nothing tells the heater "
        "how hot its water is.");
}

std::string sensor_measures(const Workplace& w, const Act& act) {
    if (w.fabric.alterations.outlet_sensor_fooled) return "The resistor is in already.";
    return needs_cover_off(w, act);
}

/// Whoever washes behind it gets the water as the pipe brings it.
void bypass_tempering(Workplace& w, const Act&) {
    open_water_side(w, Remedy::replace_tempering_valve);
    part_pipe(w, parted_by(Remedy::replace_tempering_valve));
    if (w.over()) return;
    auto next = w.fabric.alterations;
    next.tempering_bypassed = true;
    w.set_alterations(next);
    w.breach("bridged", "The tempering valve was bypassed.");
}

std::string valve_tempers(const Workplace& w, const Act&) {
    if (w.fabric.alterations.tempering_bypassed) return "It is bypassed already.";
    const auto& taps = w.job.site.taps;
    const bool there =
        std::any_of(taps.begin(), taps.end(), [](const Tap& tap) { return tap.tempered; });
    return there ? "" : "There is no tempering valve here.";
}

/// Work on a part undoes what hands did to it before.
Alterations without_what_is_replaced(Alterations made, Remedy remedy) {
    if (remedy == Remedy::clean_strainer) made.strainer_out = false;
    if (remedy == Remedy::replace_flow_sensor) {
        made.grit = 0.0;
        made.other_flow_sensor = false;
    }
    if (remedy == Remedy::replace_tempering_valve) made.tempering_bypassed = false;
    if (remedy == Remedy::replace_outlet_sensor) made.outlet_sensor_fooled = false;
    if (remedy == Remedy::replace_igniter_lead) made.lead_taped = false;
    return made;
}

/// What is not the gasfitter's is taken on by its owner, and by nobody else.
void hand_on(Workplace& w, const Act& act) {
    const auto remedy = static_cast<Remedy>(act.remedy);
    if (act.object != right_body(w.job.site.gas, faults::info(remedy).whom)) {
        w.say("They say it is not theirs.");
        return;
    }
    w.say("They take it on and give you a job number.");
    w.entry.remedy = act.remedy;
    w.deeds.escalated = w.tick();
    w.deeds.bodies_told |= body_bit(act.object);
    w.carry_out(remedy);
}

void move_regulator(Workplace& w, const Act& act) {
    auto next = w.fabric.alterations;
    const bool up = act.verb == Verb::raise_regulator;
    next.regulator_raised_pa += up ? regulator_half_turn_pa : -regulator_half_turn_pa;
    w.set_alterations(next);
    w.say(up ? "The screw goes in half a turn." : "The screw comes out half a turn.");
    if (next.regulator_raised_pa > 0.0)
        w.breach("regulator_raised", "The supply regulator was wound up.");
}

std::string regulator_can_go_back(const Workplace& w, const Act&) {
    return w.fabric.alterations.regulator_raised_pa > 0.0 ? "" : "It stands as you found it.";
}

void bridge(Workplace& w, const Act& act) {
    const bool air = act.verb == Verb::bridge_air_proof;
    const bool on = air || act.verb == Verb::bridge_limiter;
    w.hands_inside(on ? "A bridge was fitted" : "The bridge was taken off");
    if (w.over()) return;
    auto next = w.fabric.alterations;
    if (!on || air) next.air_proof_bridged = on;
    if (!on || !air) next.limiter_bridged = on;
    w.set_alterations(next);
    if (on)
        w.breach("bridged",
                 air ? "The air proving was bridged." : "The overheat limiter was bridged.");
}

std::string tube_is_there(const Workplace& w, const Act& act) {
    if (w.job.settings.air_by_tube < 0.5) return "This heater proves its air without a tube.";
    return needs_cover_off(w, act);
}

std::string bridge_is_there(const Workplace& w, const Act& act) {
    const Alterations& made = w.fabric.alterations;
    if (!made.limiter_bridged && !made.air_proof_bridged) return "There is no bridge.";
    return needs_cover_off(w, act);
}

void warm_cylinder(Workplace& w, const Act&) {
    w.services.cylinder_warmed_k = hot_water_on_cylinder_k;
    const double water_k = w.job.site.ambient_k + hot_water_on_cylinder_k;
    w.breach("cylinder_warmed",
             "Hot water was poured over the cylinder: where it runs the vapour can stand at " +
                 gauge_words(water_k) + " above the air's pressure, where it stood at " +
                 gauge_words(w.job.site.ambient_k) + ".");
    w.changed();
}

std::string cylinder_here(const Workplace& w, const Act&) {
    return w.job.site.gas == GasKind::propane_cylinder ? "" : "There is no cylinder here.";
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::remedy, can_be_done, do_remedy, When::own},
    Doing{Verb::hand_on, no_obstacle, hand_on},
    Doing{Verb::raise_regulator, no_obstacle, move_regulator},
    Doing{Verb::lower_regulator, regulator_can_go_back, move_regulator},
    Doing{Verb::bridge_limiter, needs_cover_off, bridge},
    Doing{Verb::bridge_air_proof, tube_is_there, bridge},
    Doing{Verb::unbridge_limiter, bridge_is_there, bridge},
    Doing{Verb::warm_cylinder, cylinder_here, warm_cylinder, When::before},
    Doing{Verb::leave_strainer_out, strainer_is_in, leave_strainer_out},
    Doing{Verb::fit_other_flow_sensor, sensor_is_its_own, fit_other_flow_sensor},
    Doing{Verb::tape_lead, lead_is_bare, tape_lead},
    Doing{Verb::fit_resistor, sensor_measures, fit_resistor},
    Doing{Verb::bypass_tempering, valve_tempers, bypass_tempering},
};

}  // namespace

void work_on_joint(Workplace& w, Joint joint, bool shut, double seconds) {
    judge_untested_joint(w);
    w.open_joint(joint);
    if (!shut) {
        w.say("Gas hisses out.");
        w.breach("gas_open", "A gas joint was undone with the gas on.");
        w.fabric.wide_open_joint = true;
    }
    w.pass(seconds);
    w.fabric.wide_open_joint = false;
    w.seal_joint(joint);
}

bool moves_the_flame(const controller::Settings& before, const controller::Settings& after) {
    return before.gas != after.gas || before.altitude_m != after.altitude_m;
}

std::string sentence_of(Remedy remedy, GasKind gas) {
    constexpr std::string_view blank = "{body}";
    std::string sentence(faults::info(remedy).sentence);
    if (const auto at = sentence.find(blank); at != std::string::npos)
        sentence.replace(at, blank.size(),
                         words_of("body", Job{})[right_body(gas, faults::info(remedy).whom)]);
    return sentence;
}

std::span<const Doing> remedy_doings() {
    return table;
}

void Workplace::carry_out(Remedy remedy) {
    const bool lasting = works_at_once(remedy);
    for (std::size_t i = 0; i < job.faults.size(); ++i)
        if (faults::info(job.faults[i].cause).remedy == remedy) dealt_with[i] = 1;
    deeds.any_remedy = tick_;
    if (!lasting) return;
    deeds.lasting_remedy = tick_;
    deeds.running_ticks = 0;
    severities_.clear();
    heater.install(0, installation_of(job, faults_left(), moment(), fabric.alterations));
    if (remedy == Remedy::replace_valve_lead) ++services.fuses_fitted;
    if (remedy == Remedy::replace_leaking_tube) plant::dry_casing(heater.plant);
    if (follower_) follower_->remedied(remedy);
    if (remedy == Remedy::change_cylinder) {
        services.cylinder_warmed_k = 0.0;
        build_inputs();
        plant::change_cylinder(heater.plant, inputs_.surroundings);
        if (follower_) follower_->cylinder_changed();
    }
    changed();
}

}  // namespace emberpath::worksite
