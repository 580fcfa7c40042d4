#include "sim/worksite/cause_list.hpp"

#include <algorithm>

#include "sim/faults/faults.hpp"
#include "sim/worksite/attempt.hpp"
#include "sim/worksite/site_state.hpp"

namespace emberpath::worksite {

namespace {

/// Is it night at any time of the history, or of a visit of two hours?
bool sees_a_night(const Site& site) {
    constexpr double visit_s = 7200.0, step_s = 600.0;
    const double begin_s = site.visit_s - site.arrival_s;
    for (int i = 0; i * step_s <= site.arrival_s + visit_s; ++i)
        if (night_at(begin_s + i * step_s) > 0.5) return true;
    return false;
}

}  // namespace

std::vector<CauseLine> cause_list(const std::optional<faults::SiteTraits>& site) {
    std::vector<CauseLine> lines;
    for (const auto& cause : faults::catalogue()) {
        if (site && !faults::can_act(cause, *site)) continue;
        const bool anywhere = cause.needs == faults::Needs::nothing;
        lines.push_back({std::string(cause.word), std::string(cause.title),
                         std::string(cause.effect), std::string(faults::remedy_title(cause.remedy)),
                         std::string(faults::remedy_word(cause.remedy)), cause.cylinder_only,
                         cause.mains_only,
                         anywhere ? std::string() : std::string(faults::title(cause.needs))});
    }
    return lines;
}

std::vector<std::string> causes_in(const WriteUp& written) {
    if (written.cause.empty()) return {};
    std::vector<std::string> words = {written.cause};
    words.insert(words.end(), written.also.begin(), written.also.end());
    words.insert(words.end(), written.possible.begin(), written.possible.end());
    return words;
}

std::string titles_of_causes_in(const WriteUp& written) {
    std::string titles;
    const auto add = [&](const std::string& word, const char* joint) {
        const faults::CauseInfo* known = faults::find_cause(word);
        if (known != nullptr) titles += (titles.empty() ? "" : joint) + std::string(known->title);
    };
    add(written.cause, "");
    for (const auto& word : written.also) add(word, " and ");
    for (const auto& word : written.possible) add(word, " or ");
    return titles;
}

faults::SiteTraits traits_of(const Job& job) {
    faults::SiteTraits traits;
    traits.cylinder = job.site.gas == GasKind::propane_cylinder;
    traits.cylinder_pair = job.healthy.reserve_fitted > 0.5;
    traits.open_flue = job.healthy.open_flued > 0.5;
    traits.tempering_valve = std::any_of(job.site.taps.begin(), job.site.taps.end(),
                                         [](const Tap& tap) { return tap.tempered; });
    traits.night = sees_a_night(job.site);
    traits.high_set_value = job.panel.set_point_k > job.settings.maximum_set_k + 0.05;
    traits.air_tube = job.settings.air_by_tube > 0.5;
    traits.companion = job.settings.companion > 0.5;
    traits.outlets = job.site.taps.size();
    traits.wall_controllers = static_cast<std::size_t>(
        std::count_if(job.panel.wall.begin(), job.panel.wall.end(),
                      [](const controller::WallController& wall) { return wall.fitted > 0.5; }));
    return traits;
}

}  // namespace emberpath::worksite
