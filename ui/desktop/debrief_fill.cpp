#include "ui/desktop/debrief_fill.hpp"

#include <algorithm>
#include <cctype>
#include <set>

#include "sim/units/units.hpp"
#include "sim/worksite/cause_list.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

constexpr double tick_s = 0.1, seconds_per_minute = 60.0;
constexpr double still_allowed =
    0.05;  // a class below it counts as ruled out, as in the text debrief

/// What the parts of the view are made from.
struct Source {
    const records::Record& record;
    const worksite::Job& job;
    const scoring::Assessment& assessment;
    records::Debrief debrief;

    [[nodiscard]] double minute(std::int64_t tick) const {
        return std::max(
            0.0, (static_cast<double>(tick) * tick_s - job.site.arrival_s) / seconds_per_minute);
    }
};

int first_number(const records::RecordedAct& act) {
    for (const auto& reading : act.readings)
        if (reading.number > 0) return reading.number;
    return 0;
}

bool was_cited(const Source& from, const records::RecordedAct& act) {
    for (const auto& other : from.record.acts) {
        if (!other.sentence.starts_with("write because")) continue;
        for (const auto& reading : act.readings)
            if (reading.number > 0 &&
                (other.sentence + " ").find("#" + std::to_string(reading.number) + " ") !=
                    std::string::npos)
                return true;
    }
    return false;
}

std::string step_detail(const records::Debrief::Act& act) {
    std::string text = act.value;
    const auto add = [&](const std::string& words) {
        if (!words.empty()) text += (text.empty() ? "" : " · ") + words;
    };
    if (act.weighed) add(records::bits_text(act) + " bits");
    if (!act.ruled_out.empty()) add("now under 5 %: " + act.ruled_out);
    if (!act.better.empty()) add("most per minute then: " + act.better);
    return text;
}

/// "path -2.1, evidence -3.0": what this act lost.
std::string lost_at(const Source& from, std::size_t act) {
    std::string text;
    for (const auto& area : from.assessment.areas)
        for (const auto& lost : area.lost)
            if (lost.act == act && lost.item.empty())
                text +=
                    (text.empty() ? "" : ", ") + area.word + " " + records::lost_text(lost.points);
    return text;
}

void add_steps(screens::DebriefView& view, const Source& from) {
    for (std::size_t i = 0; i < from.record.acts.size(); ++i) {
        const auto& act = from.record.acts[i];
        screens::StepView step;
        step.minute = from.minute(act.end_tick);
        step.title = kit::capitalised(act.sentence);
        if (i < from.debrief.acts.size()) {
            step.detail = step_detail(from.debrief.acts[i]);
            if (const auto lost = lost_at(from, i); !lost.empty())
                step.detail += (step.detail.empty() ? "" : " · ") + ("lost: " + lost);
            step.bits = from.debrief.acts[i].weighed ? from.debrief.acts[i].bits : 0.0;
        }
        step.balloon = first_number(act);
        step.cited = was_cited(from, act);
        view.steps.push_back(std::move(step));
    }
    if (!view.steps.empty()) view.minutes = std::max(1.0, view.steps.back().minute);
}

int allowed(const std::vector<scoring::ClassProbability>& classes) {
    return static_cast<int>(std::count_if(
        classes.begin(), classes.end(),
        [](const scoring::ClassProbability& one) { return one.probability >= still_allowed; }));
}

/// Ways to set it right among the causes not struck out: what the evidence is counted in.
int classes_held(const std::vector<worksite::CauseLine>& causes,
                 const std::set<std::string>& struck) {
    std::set<std::string> remedies;
    for (const auto& cause : causes)
        if (!struck.contains(cause.word)) remedies.insert(cause.remedy_word);
    return static_cast<int>(remedies.size());
}

void add_causes_left(screens::DebriefView& view, const Source& from) {
    const auto causes = worksite::cause_list(worksite::traits_of(from.job));
    std::set<std::string> struck;
    view.causes = classes_held(causes, struck);
    screens::LeftView now{0.0, allowed(from.assessment.on_arrival), view.causes};
    view.left.push_back(now);
    for (std::size_t i = 0; i < from.record.acts.size(); ++i) {
        const auto& act = from.record.acts[i];
        constexpr std::string_view strike = "strike out ", suspect = "suspect ", doubt = "doubt ";
        if (act.sentence.starts_with(strike)) struck.insert(act.sentence.substr(strike.size()));
        if (act.sentence.starts_with(suspect)) struck.erase(act.sentence.substr(suspect.size()));
        if (act.sentence.starts_with(doubt)) struck.erase(act.sentence.substr(doubt.size()));
        for (const auto& worth : from.assessment.acts)
            if (worth.act == i && !worth.after.empty()) now.by_evidence = allowed(worth.after);
        now.held = classes_held(causes, struck);
        now.minute = from.minute(act.end_tick);
        view.left.push_back(now);
    }
}

/// The same classes and moments as in the text; each step's mark stands where its act ended.
void add_stands(screens::DebriefView& view, const Source& from) {
    if (from.debrief.stands.empty()) return;
    view.likely = from.debrief.leading;
    view.likely.emplace_back("all others");
    for (const auto& stand : from.debrief.stands) {
        screens::StandView made{0.0, stand.acts, stand.shares, {}};
        if (stand.acts > 0) made.minute = from.minute(from.record.acts[stand.acts - 1].end_tick);
        made.shares.push_back(stand.others);
        for (const double share : made.shares)
            made.figures.push_back(records::whole_per_cent(share) + " %");
        view.stands.push_back(std::move(made));
    }
}

struct Lane {
    const char *name, *rest;
    char ink;
    std::vector<std::string_view> off, on;
    const char* words;
};

void add_services(screens::DebriefView& view, const Source& from) {
    const Lane lanes[] = {{"Gas", "on", 'g', {"shut gas"}, {"open gas"}, "shut"},
                          {"Water", "on", 'c', {"shut water"}, {"open water"}, "shut"},
                          {"Power",
                           "on",
                           'p',
                           {"switch power off", "unplug heater"},
                           {"switch power on", "plug in heater"},
                           "off"},
                          {"Cover", "on", 'i', {"take cover off"}, {"refit cover"}, "off"}};
    for (const Lane& lane : lanes) {
        screens::ServiceLane made{lane.name, lane.rest, lane.ink, {}};
        bool off = false;
        for (const auto& act : from.record.acts) {
            const auto begins = [&](std::string_view words) {
                return act.sentence.starts_with(words);
            };
            const double at = from.minute(act.end_tick);
            if (!off && std::any_of(lane.off.begin(), lane.off.end(), begins)) {
                made.spans.push_back({at, view.minutes, lane.words});
                off = true;
            } else if (off && std::any_of(lane.on.begin(), lane.on.end(), begins)) {
                made.spans.back().to = at;
                off = false;
            }
        }
        view.services.push_back(std::move(made));
    }
}

void add_hazards(screens::DebriefView& view, const Source& from) {
    for (const auto& breach : from.assessment.breaches) {
        const bool known = breach.act < from.record.acts.size();
        if (known) view.steps[breach.act].unsafe = true;
        const double from_minute =
            known ? from.minute(from.record.acts[breach.act].tick) : view.minutes;
        const double least = view.minutes / 100.0;
        const double to = known ? from.minute(from.record.acts[breach.act].end_tick) : view.minutes;
        view.hazards.push_back({std::min(from_minute, view.minutes - least),
                                std::max(to, from_minute + least), breach.text});
    }
}

void add_outcome(screens::DebriefView& view, const Source& from) {
    const auto& debrief = from.debrief;
    view.job = debrief.title.substr(0, debrief.title.find(':'));
    if (!debrief.outcome.empty()) view.outcome = debrief.outcome.front();
    if (debrief.outcome.size() > 1) view.outcome_detail = debrief.outcome[1];
    view.outcome_good = from.assessment.fixed;
    if (const auto n = debrief.unsafe_acts.size(); n > 0) {
        view.unsafe = n == 1 ? "1 unsafe act" : std::to_string(n) + " unsafe acts";
        view.unsafe_detail = debrief.unsafe_acts.front().text;
    }
    view.score = records::score_text(debrief.overall);
    view.of = "of 100";
    view.passed = debrief.gates_met;
    view.verdict = debrief.gates_met ? "Safety gates met" : "Gates not met";
    view.floor = debrief.proposal;
    for (const auto& area : debrief.areas)
        view.areas.push_back({kit::capitalised(area.word), area.scored ? area.score / 100.0 : 0.0,
                              area.scored ? records::score_text(area.score) : "not scored",
                              area.reason, !debrief.gates_met && area.word == "safe work"});
}

/// "04:35  #4 gas left in the cylinder by weight: flame electrode fouled 40 %, ... all others 12 %".
std::vector<std::string> stands_of(const records::Debrief& debrief) {
    std::vector<std::string> lines;
    for (const auto& stand : debrief.stands) {
        std::string line = (stand.time == "-" ? "" : stand.time + "  ") + stand.after + ": ";
        for (std::size_t i = 0; i < stand.shares.size(); ++i)
            line += debrief.leading[i] + " " + records::whole_per_cent(stand.shares[i]) + " %, ";
        lines.push_back(line + "all others " + records::whole_per_cent(stand.others) + " %");
    }
    return lines;
}

/// What the printed debrief says besides, and in full what the strip above may have to cut.
void add_sections(screens::DebriefView& view, const Source& from) {
    const auto& debrief = from.debrief;
    std::vector<std::string> unsafe;
    for (const auto& act : debrief.unsafe_acts)
        unsafe.push_back(act.time + " " + act.act + ": " + act.text);
    std::vector<std::string> lost;
    for (const auto& one : debrief.lost)
        lost.push_back(kit::capitalised(one.area) + " " + records::lost_text(one.points) + "  " +
                       one.time + " " + records::lost_words(one));
    if (std::any_of(lost.begin(), lost.end(), records::speaks_of_bits))
        lost.emplace_back(records::bit_in_words);
    std::vector<std::string> short_way;
    if (!debrief.reference.empty()) short_way.push_back(debrief.reference);
    std::vector<std::string> moments = debrief.moments;
    if (!debrief.try_again.empty()) moments.push_back(debrief.try_again);
    view.sections = {{"What came of it", debrief.outcome},
                     {"Unsafe acts", std::move(unsafe)},
                     {"How near to harm", debrief.doses},
                     {"The day after", debrief.day_after},
                     {"Points lost", std::move(lost)},
                     {"What cost most", std::move(moments)},
                     {"How the causes stood", stands_of(debrief)},
                     {"A short way", std::move(short_way)},
                     {"Left open", debrief.open},
                     {"Against the cause", debrief.against},
                     {"What this cannot tell", debrief.limits}};
}

/// "2.31 kPa" without its unit, which stands beside the trainee's own reading.
std::string digits_of(const std::string& text) {
    const bool number = !text.empty() && (text.front() == '-' || std::isdigit(text.front()) != 0);
    return number ? text.substr(0, text.find(' ')) : text;
}

std::string short_range(const std::string& text) {
    const auto to = text.find(" to ");
    if (to == std::string::npos) return digits_of(text);
    const std::string first = digits_of(text.substr(0, to)), last = digits_of(text.substr(to + 4));
    return first + "–" + last;
}

void add_table(screens::DebriefView& view, const Source& from) {
    for (const auto& column : from.debrief.columns)
        view.columns.push_back(kit::capitalised(column));
    for (const auto& reading : from.debrief.readings) {
        screens::ComparedRow row;
        row.balloon = reading.number;
        row.condition = reading.title;
        row.yours = reading.shown;
        for (const auto& cell : reading.cells)
            row.cells.push_back({short_range(cell.value), cell.ruled_out});
        view.rows.push_back(std::move(row));
    }
}

/// The step that told most is looked at first.
std::size_t best_step(const screens::DebriefView& view) {
    const auto best =
        std::max_element(view.steps.begin(), view.steps.end(),
                         [](const auto& a, const auto& b) { return a.bits < b.bits; });
    return static_cast<std::size_t>(best - view.steps.begin());
}

}  // namespace

screens::DebriefView debrief_view(const records::Record& record, const worksite::Job& job,
                                  const scoring::Assessment& assessment) {
    const Source from{record, job, assessment, records::make_debrief(record, job, assessment)};
    screens::DebriefView view;
    add_steps(view, from);
    add_causes_left(view, from);
    add_stands(view, from);
    add_services(view, from);
    add_hazards(view, from);
    add_outcome(view, from);
    add_sections(view, from);
    add_table(view, from);
    view.step = best_step(view);
    if (view.step < view.steps.size())
        view.status = "Step " + std::to_string(view.step + 1) + " of " +
                      std::to_string(view.steps.size()) + " told you most.";
    return view;
}

}  // namespace emberpath::desktop
