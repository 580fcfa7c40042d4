// What sets things right, and the short cuts that only seem to.

#include <array>

#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

using faults::Remedy;

constexpr double regulator_half_turn_pa = 500.0;
constexpr double hot_water_on_cylinder_k = 35.0;

bool inside(Remedy remedy) {
    return remedy == Remedy::replace_outlet_sensor || remedy == Remedy::clean_flame_electrode ||
           remedy == Remedy::replace_igniter || remedy == Remedy::clean_exchanger;
}
bool touches_flame(Remedy remedy) {
    return (inside(remedy) && remedy != Remedy::replace_outlet_sensor) ||
           remedy == Remedy::clear_flue_terminal || remedy == Remedy::fit_wind_guard;
}
bool needs_glasses(Remedy remedy) {
    return remedy == Remedy::clean_exchanger || remedy == Remedy::clear_flue_terminal;
}

std::string can_be_done(const Workplace& w, const Act& act) {
    const auto remedy = static_cast<Remedy>(act.object);
    if (remedy == Remedy::change_cylinder && w.job.site.gas != GasKind::propane_cylinder)
        return "There is no cylinder here.";
    return inside(remedy) ? needs_cover_off(w, act) : std::string();
}

/// Work on a joint that carries gas: shut, or the room fills while it is open.
void work_on_joint(Workplace& w, Joint joint, bool shut, double seconds) {
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

void protect(Workplace& w, Remedy remedy, std::string_view doing) {
    if (inside(remedy)) w.hands_inside("You began to " + std::string(doing));
    if (inside(remedy) && !w.person.gloves)
        w.breach("no_gloves", "Sharp sheet metal was handled with bare hands.");
    if (needs_glasses(remedy) && !w.person.glasses)
        w.breach("no_glasses", "Dirt was brushed out without safety glasses.");
}

void do_remedy(Workplace& w, const Act& act) {
    const auto remedy = static_cast<Remedy>(act.object);
    const double seconds = seconds_of(act);
    const auto doing = row_of(act).phrase.pattern;
    protect(w, remedy, doing);
    if (w.over()) return;
    if (remedy == Remedy::change_cylinder)
        work_on_joint(w, Joint::cylinder, !w.services.gas_at_supply, seconds);
    else if (remedy == Remedy::clean_exchanger)
        work_on_joint(w, Joint::burner, !w.services.gas_at_heater || !w.services.gas_at_supply,
                      seconds);
    else
        w.pass(seconds);
    if (w.over()) return;
    w.entry.remedy = static_cast<int>(remedy);
    w.entry.part_minutes = row_of(act).part_minutes;
    if (touches_flame(remedy)) w.deeds.flame_work = w.tick();
    w.carry_out(remedy);
    if (works_at_once(remedy)) w.say("Done.");
}

/// A supply regulator on mains gas is the distributor's, on cylinders the gas supplier's.
void escalate_regulator(Workplace& w, const Act& act) {
    const std::size_t owner = w.job.site.gas == GasKind::natural_gas ? 0 : 1;
    if (act.object != owner) {
        w.say("They say the regulator is not theirs.");
        return;
    }
    w.say("They take it on and give you a job number.");
    w.entry.remedy = static_cast<int>(Remedy::escalate_regulator);
    w.deeds.escalated = w.tick();
    w.carry_out(Remedy::escalate_regulator);
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
    const bool on = act.verb == Verb::bridge_limiter;
    w.hands_inside(on ? "A bridge was fitted" : "The bridge was taken off");
    if (w.over()) return;
    auto next = w.fabric.alterations;
    next.limiter_bridged = on;
    w.set_alterations(next);
    if (on) w.breach("bridged", "The overheat limiter was bridged.");
}

std::string bridge_is_there(const Workplace& w, const Act& act) {
    if (!w.fabric.alterations.limiter_bridged) return "There is no bridge.";
    return needs_cover_off(w, act);
}

void warm_cylinder(Workplace& w, const Act&) {
    w.services.cylinder_warmed_k = hot_water_on_cylinder_k;
    w.breach("cylinder_warmed", "Hot water was poured over the cylinder.");
    w.changed();
}

std::string cylinder_here(const Workplace& w, const Act&) {
    return w.job.site.gas == GasKind::propane_cylinder ? "" : "There is no cylinder here.";
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::remedy, can_be_done, do_remedy, When::own},
    Doing{Verb::escalate_regulator, no_obstacle, escalate_regulator},
    Doing{Verb::raise_regulator, no_obstacle, move_regulator},
    Doing{Verb::lower_regulator, regulator_can_go_back, move_regulator},
    Doing{Verb::bridge_limiter, needs_cover_off, bridge},
    Doing{Verb::unbridge_limiter, bridge_is_there, bridge},
    Doing{Verb::warm_cylinder, cylinder_here, warm_cylinder, When::before},
};

}  // namespace

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
    plant::set_parameters(
        heater.plant, 0,
        with_alterations(faults::with_faults(job.healthy, faults_left(), time_s()),
                         fabric.alterations));
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
