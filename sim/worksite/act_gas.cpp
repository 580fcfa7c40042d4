// Gas test points, joints and the manometer.

#include <array>
#include <string>

#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::array<std::string_view, joint_count> joint_names{
    "inlet test point", "manifold test point", "regulator test point",
    "cylinder joint",   "burner joint",        "inlet union"};

std::string within_reach(const Workplace& w, const Act& act) {
    const bool inside = act.object == static_cast<std::size_t>(Point::manifold);
    return inside ? needs_cover_off(w, act) : std::string();
}

std::string screw_is_free(const Workplace& w, const Act& act) {
    if (w.bench.manometer_at == act.object)
        return "The hose covers the screw; take the manometer off first.";
    return within_reach(w, act);
}

void inside_if_manifold(Workplace& w, std::size_t point, std::string_view doing) {
    if (point == static_cast<std::size_t>(Point::manifold)) w.hands_inside(doing);
}

void open_point(Workplace& w, const Act& act) {
    inside_if_manifold(w, act.object, "A test point was opened inside");
    if (w.over()) return;
    const auto point = static_cast<Point>(act.object);
    // What was shut in before it goes out by the screw: a hose attached then meets no pressure.
    if (point != Point::manifold && !w.services.gas_at_supply) w.held_line_pa = 0.0;
    w.fabric.point_open[act.object] = true;
    w.open_joint(static_cast<Joint>(act.object));
    if (w.gas_present(point)) {
        w.say("Gas hisses out.");
        w.breach("gas_open",
                 "The " + std::string(joint_names[act.object]) + " was opened with the gas on.");
    }
    w.changed();
}

void close_point(Workplace& w, const Act& act) {
    inside_if_manifold(w, act.object, "A test point was closed inside");
    if (w.over()) return;
    if (w.fabric.point_open[act.object]) w.seal_joint(static_cast<Joint>(act.object));
    w.fabric.point_open[act.object] = false;
    w.set_tools();
    w.changed();
}

std::string joint_exists(const Workplace& w, const Act& act) {
    const bool cylinder = act.object == static_cast<std::size_t>(Joint::cylinder);
    if (cylinder && w.job.site.gas != GasKind::propane_cylinder)
        return "There is no cylinder here.";
    const bool inside = act.object == static_cast<std::size_t>(Joint::manifold) ||
                        act.object == static_cast<std::size_t>(Joint::burner);
    return inside ? needs_cover_off(w, act) : std::string();
}

void remake_joint(Workplace& w, const Act& act) {
    const auto joint = static_cast<Joint>(act.object);
    if (joint == Joint::manifold || joint == Joint::burner)
        w.hands_inside("A joint was made inside");
    if (w.over()) return;
    if (w.joint_under_pressure(joint))
        w.breach("gas_open",
                 "The " + std::string(joint_names[act.object]) + " was undone with the gas on.");
    judge_untested_joint(w);
    if (joint == Joint::inlet_union) part_pipe(w, Parted::gas);
    if (w.over()) return;
    w.open_joint(joint);
    if (joint == Joint::inlet_union) {
        // Where it had been made sound before, that is only a joint made anew.
        if (w.heater.plant.parameters.gas_union_leak_m3_per_s > 0.0)
            w.entry.remedy = static_cast<int>(faults::Remedy::remake_inlet_union);
        w.carry_out(faults::Remedy::remake_inlet_union);
        after_work(w, faults::Remedy::remake_inlet_union);
    }
    if (joint == Joint::cylinder) after_work(w, faults::Remedy::change_cylinder);
    w.seal_joint(joint);
    w.changed();
}

std::string hose_is_free(const Workplace& w, const Act& act) {
    if (w.bench.manometer_at) return "The manometer is attached already; take it off first.";
    return within_reach(w, act);
}

void attach_manometer(Workplace& w, const Act& act) {
    inside_if_manifold(w, act.object, "The hose was attached inside");
    if (w.over()) return;
    w.bench.manometer_at = act.object;
    w.set_tools();
}

std::string manometer_is_on(const Workplace& w, const Act&) {
    return w.bench.manometer_at ? "" : "The manometer is not attached.";
}

void manometer_off(Workplace& w, const Act&) {
    const auto at = *w.bench.manometer_at;
    inside_if_manifold(w, at, "The hose was taken off inside");
    if (w.over()) return;
    w.bench.manometer_at.reset();
    w.set_tools();
    if (!w.fabric.point_open[at] || !w.gas_present(static_cast<Point>(at))) return;
    w.say("Gas hisses out.");
    w.breach("gas_open",
             "The hose came off the open " + std::string(joint_names[at]) + " with the gas on.");
}

/// Gas shut in between supply and heater: the model has no pipe volume, the hose sees it all the same.
bool sees_held_line(const Workplace& w) {
    return w.setup.manometer == Quantity::gas_inlet_pressure && !w.services.gas_at_supply &&
           w.services.gas_at_heater && w.held_line_pa > 0.0;
}

double at_the_hose(const Workplace& w) {
    if (sees_held_line(w)) return w.held_line_pa;
    if (w.setup.manometer == Quantity::display_word) return 0.0;
    return value_of(w.setup.manometer, Hold::now, w.look(), w.senses, w.inputs(), w.setup);
}

void zero_manometer(Workplace& w, const Act&) {
    const double pressure = at_the_hose(w);
    w.bench.zeroed_under_pressure = pressure > 20.0 || pressure < -20.0;
    w.bench.manometer_offset_pa = w.bench.zeroed_under_pressure ? -pressure : 0.0;
    w.say("The manometer shows 0.00 kPa.");
}

void read_manometer(Workplace& w, const Act& act) {
    const Hold hold = act.option == 1 ? Hold::highest : act.option == 2 ? Hold::lowest : Hold::now;
    w.read(manometer_reading(w, hold));
}

void clear_hold(Workplace& w, const Act&) {
    w.set_tools(true);
}

constexpr std::array table{
    Doing{Verb::open_point, screw_is_free, open_point},
    Doing{Verb::close_point, screw_is_free, close_point},
    Doing{Verb::remake_joint, joint_exists, remake_joint},
    Doing{Verb::attach_manometer, hose_is_free, attach_manometer},
    Doing{Verb::manometer_off, manometer_is_on, manometer_off},
    Doing{Verb::zero_manometer, no_obstacle, zero_manometer},
    Doing{Verb::read_manometer, manometer_is_on, read_manometer},
    Doing{Verb::clear_hold, no_obstacle, clear_hold},
};

}  // namespace

Workplace::ReadingOf manometer_reading(const Workplace& w, Hold hold) {
    constexpr std::array at{Quantity::gas_inlet_pressure, Quantity::manifold_pressure,
                            Quantity::regulator_pressure};
    Workplace::ReadingOf what{at[*w.bench.manometer_at]};
    what.hold = hold;
    what.shift = w.bench.manometer_offset_pa;
    what.trusted =
        w.setup.manometer == what.quantity && !w.bench.zeroed_under_pressure && !sees_held_line(w);
    if (!what.trusted)
        what.instead =
            sees_held_line(w) ? w.held_line_pa
            : w.setup.manometer == Quantity::display_word
                ? 0.0
                : value_of(what.quantity, what.hold, w.look(), w.senses, w.inputs(), w.setup);
    return what;
}

std::span<const Doing> gas_doings() {
    return table;
}

}  // namespace emberpath::worksite
