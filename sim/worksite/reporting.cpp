// Who has to be told of what stays dangerous, and whether they were.

#include <algorithm>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

constexpr double raised_pa = 500.0;

/// Of distributor and gas supplier only the one whose gas it is.
Bodies bodies_of(const Job& job, Matter matter) {
    const bool mains = job.site.gas == GasKind::natural_gas;
    return job.practice.tell.at(static_cast<std::size_t>(matter)) &
           ~body_bit(mains ? gas_supplier : gas_distributor);
}

/// "the electrician", "the distributor or the technical regulator", "the distributor and the owner".
std::string names_of(Bodies bodies, std::string_view joined_by) {
    const auto words = words_of("body", Job{});
    const std::string between = " " + std::string(joined_by) + " the ";
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        if ((bodies & body_bit(i)) != 0) text += (text.empty() ? "the " : between) + words[i];
    return text;
}

bool pipes_live(const Workplace& w) {
    return w.look().plant.electrical.pipe_v > w.job.practice.limits.dangerous_pipe_v;
}

bool heater_live(const Workplace& w) {
    const auto r = w.look().plant.electrical;
    return r.casing_v > w.job.practice.limits.dangerous_v ||
           r.neutral_earth_v > w.job.practice.limits.dangerous_v;
}

bool locks_up_too_high(const Workplace& w) {
    return w.look().parameters.gas_lock_up_pa > w.job.healthy.gas_lock_up_pa + raised_pa;
}

bool sheet_concerns(const Workplace& w) {
    const bool in_the_way =
        w.job.site.dangers.old_sheet && w.deeds.any_remedy == never && w.deeds.notice != never;
    return w.precautions.sheet_disturbed || in_the_way;
}

/// Found when the house was looked at as it is left. Where nothing tempers the water, the set point is the
/// trainee's own: lowered, not reported.
bool too_hot_tempered(const Workplace& w) {
    const auto& taps = w.job.site.taps;
    const bool tempered =
        std::any_of(taps.begin(), taps.end(), [](const Tap& tap) { return tap.tempered; });
    return tempered && w.known_breach("delivery_limit") != nullptr;
}

/// What can be seen without letting the heater run.
bool is_so(const Workplace& w, Matter matter) {
    switch (matter) {
        case Matter::live_supply:
            return pipes_live(w);
        case Matter::live_wiring:
            return heater_live(w) && !pipes_live(w);
        case Matter::gas_escapes:
            return any_weep(w);
        case Matter::over_pressure:
            return too_much_pressure(w);
        case Matter::cylinder_place:
            return w.job.site.dangers.cylinder_close && !w.precautions.cylinder_moved;
        case Matter::old_sheet:
            return sheet_concerns(w);
        case Matter::hot_delivery:
            return too_hot_tempered(w);
        case Matter::board_lost:
            return w.fabric.alterations.board_harmed;
        case Matter::refused:
            return refuses(w) && (w.deeds.notice != never || (!usable(w) && w.fabric.tagged));
        case Matter::out_of_use:
            return !usable(w) && w.fabric.tagged;
        case Matter::rented:
            break;
    }
    if (!w.job.customer.tenant) return false;
    for (std::size_t i = 0; i + 1 < matter_count; ++i)
        if (is_so(w, static_cast<Matter>(i))) return true;
    return false;
}

}  // namespace

bool reported(const Workplace& w, Matter matter) {
    const Bodies bodies = bodies_of(w.job, matter);
    return bodies == 0 || (bodies & w.deeds.bodies_told) != 0;
}

std::string whom_to_tell(const Workplace& w, Matter matter) {
    return names_of(bodies_of(w.job, matter), "or");
}

bool too_much_pressure(const Workplace& w) {
    return locks_up_too_high(w) ||
           w.look().parameters.regulator_creep_pa_per_s > w.job.healthy.regulator_creep_pa_per_s;
}

std::string pressure_words(const Workplace& w) {
    if (!locks_up_too_high(w))
        return "never locks up: its pressure climbs for as long as nothing is drawn";
    return "locks up at " + units::format_pressure(w.look().parameters.gas_lock_up_pa) +
           ", where a sound one does at " + units::format_pressure(w.job.healthy.gas_lock_up_pa);
}

bool refuses(const Workplace& w) {
    return w.job.customer.agrees == Consent::never;
}

/// Casing or pipes at a voltage that hurts, and those whose it is to mend do not know.
bool left_live(const Workplace& w) {
    const bool pipes = pipes_live(w) && !reported(w, Matter::live_supply);
    const Matter whose = pipes_live(w) ? Matter::live_supply : Matter::live_wiring;
    return pipes || (heater_live(w) && (w.services.plugged_in || !reported(w, whose)));
}

/// Where the voltage stands: a neutral that is live is out of reach until somebody trusts the switch.
std::string live_words(const Workplace& w) {
    const auto r = w.look().plant.electrical;
    const double touched_v = std::max(r.casing_v, r.pipe_v);
    return touched_v > w.job.practice.limits.dangerous_pipe_v
               ? units::fixed(touched_v, 0) + " V on casing or pipes"
               : units::fixed(r.neutral_earth_v, 0) +
                     " V on the heater's neutral, whatever its switch says";
}

void judge_left_live(Workplace& w) {
    if (!left_live(w)) return;
    const Matter whose = pipes_live(w) ? Matter::live_supply : Matter::live_wiring;
    w.breach("left_live",
             "Left with " + live_words(w) +
                 (reported(w, whose)
                      ? ", and plugged in."
                      : ", and nobody told who can mend it: " + whom_to_tell(w, whose) + "."));
}

void judge_reports(Workplace& w) {
    std::string text;
    for (std::size_t i = 0; i < matter_count; ++i) {
        const auto matter = static_cast<Matter>(i);
        if (reported(w, matter) || !is_so(w, matter)) continue;
        text += (text.empty() ? "Of " : "; of ") + std::string(matter_title(matter)) +
                ", whom to tell was " + whom_to_tell(w, matter);
    }
    if (text.empty()) return;
    const std::string told = names_of(w.deeds.bodies_told, "and");
    w.breach("not_reported",
             text + (told.empty() ? "; you told nobody." : "; you told " + told + "."));
}

}  // namespace emberpath::worksite
