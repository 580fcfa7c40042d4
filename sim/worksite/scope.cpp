// What a licence covers and what has to be handed on.

#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

bool is_work(const Act& act, Work work) {
    switch (work) {
        case Work::behind_cover:
            return act.verb == Verb::unplug_sensor || act.verb == Verb::bridge_limiter ||
                   act.verb == Verb::bridge_air_proof || act.verb == Verb::fit_resistor ||
                   act.verb == Verb::tape_lead || act.verb == Verb::attach_multimeter;
        case Work::gas_joints:
            return act.verb == Verb::open_point || act.verb == Verb::remake_joint;
        case Work::live_tests:
            return act.verb == Verb::measure_volts || act.verb == Verb::log_volts ||
                   act.verb == Verb::measure_amps ||
                   (act.verb == Verb::attach_multimeter &&
                    act.object == static_cast<std::size_t>(Probe::supply_terminals));
    }
    return false;
}

/// Storing a setting is the remedy that stores them all, bit by bit.
bool stores_a_setting(Verb verb) {
    return verb == Verb::change_gas || verb == Verb::change_altitude ||
           verb == Verb::change_highest || verb == Verb::change_frost ||
           verb == Verb::change_wall_count || verb == Verb::change_priority;
}

void alone(Workplace& w, std::string_view what) {
    if (w.job.practice.licence.supervised && !w.deeds.told_to(colleague))
        w.breach("unsupervised",
                 "As " + w.job.practice.licence.name +
                     " you began without asking a licensed colleague: " + std::string(what) + ".");
}

void outside(Workplace& w, std::string_view what) {
    w.breach("out_of_scope", "The licence \"" + w.job.practice.licence.name + "\" does not cover " +
                                 std::string(what) + ".");
}

}  // namespace

void judge_scope(Workplace& w, const Act& act) {
    const Licence& licence = w.job.practice.licence;
    if (act.verb == Verb::remedy || stores_a_setting(act.verb)) {
        const auto remedy = act.verb == Verb::remedy ? static_cast<faults::Remedy>(act.remedy)
                                                     : faults::Remedy::correct_settings;
        if (!faults::works_at_once(remedy)) return;
        const std::string what = "this work: " + std::string(faults::remedy_title(remedy));
        if (!licence.covers(remedy)) return outside(w, what);
        return alone(w, faults::remedy_title(remedy));
    }
    for (std::size_t i = 0; i < work_count; ++i) {
        const auto work = static_cast<Work>(i);
        if (!is_work(act, work)) continue;
        if (!licence.covers(work)) return outside(w, work_title(work));
        alone(w, work_title(work));
    }
}

bool rightly_handed_on(const Workplace& w, faults::Remedy remedy) {
    const bool at_terminal = works_at_terminal(remedy);
    const bool in_old_sheet =
        at_terminal && w.job.site.dangers.old_sheet && w.deeds.told_to(asbestos_assessor);
    const bool not_to_be_climbed =
        at_terminal && w.precautions.declined && w.deeds.told_to(colleague);
    const bool outside_licence =
        !w.job.practice.licence.covers(remedy) && w.deeds.told_to(colleague);
    return (outside_licence || in_old_sheet || not_to_be_climbed) && w.deeds.notice != never &&
           w.deeds.told != never && made_safe(w);
}

}  // namespace emberpath::worksite
