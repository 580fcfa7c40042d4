// What a licence covers and what has to be handed on.

#include "sim/worksite/doings.hpp"
#include "sim/worksite/skill.hpp"

namespace emberpath::worksite {

namespace {

bool is_work(const Act& act, Work work) {
    const bool live_probe = act.verb == Verb::attach_multimeter &&
                            act.object == static_cast<std::size_t>(Probe::supply_terminals);
    return work_of(act.verb) == work || (work == Work::live_tests && live_probe);
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
