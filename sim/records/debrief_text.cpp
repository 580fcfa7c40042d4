#include <algorithm>
#include <utility>

#include "sim/records/debrief.hpp"
#include "sim/records/debrief_parts.hpp"
#include "sim/records/layout.hpp"

namespace emberpath::records {

namespace {

constexpr std::size_t page = 100;
constexpr std::size_t margin = 2;
constexpr std::size_t widest_panel = 4;  // causes side by side

std::string heading(std::string_view title) {
    std::string text = "\n" + std::string(title) + "\n";
    return text + std::string(width_of(title), '-') + "\n";
}

std::string outcome_part(const Debrief& debrief) {
    std::string text = heading("Outcome");
    for (const auto& sentence : debrief.outcome) text += paragraph(sentence, page, margin);
    if (debrief.unsafe_acts.empty()) return text + "  No unsafe act.\n";
    text += "\n";
    for (const auto& unsafe : debrief.unsafe_acts) {
        std::string words = unsafe.critical ? "Critical. " : "Unsafe. ";
        words += unsafe.text;
        if (!unsafe.act.empty()) words += " [" + unsafe.act + "]";
        text += paragraph(words, page, margin, "! " + unsafe.time + "  ");
    }
    return text;
}

std::string aftermath_part(const Debrief& debrief) {
    std::string text = heading("Distance to harm");
    for (const auto& line : debrief.doses) text += paragraph(line, page, margin, "- ");
    if (debrief.day_after.empty()) return text;
    text += heading("The day after you left");
    for (const auto& line : debrief.day_after) text += paragraph(line, page, margin, "- ");
    return text;
}

std::string area_part(const Debrief& debrief) {
    const std::vector<Column> columns = {{9}, {4, true}, {10}, {67}};
    std::string text = heading("Areas");
    for (const auto& area : debrief.areas)
        text += row(columns,
                    {area.word, area.scored ? score_text(area.score) : "-",
                     band_text(area.low, area.high, area.scored), area.reason},
                    margin);
    text += "\n";
    const std::string span =
        band_text(debrief.overall_low, debrief.overall_high, debrief.overall_scored);
    text += row(columns,
                {"overall", overall_text(debrief), span,
                 span.empty() ? "of 100"
                              : "of 100; beside it the span over other priors, widths and houses"},
                margin);
    return text + paragraph(debrief.gates, page, margin);
}

std::string proposal_part(const Debrief& debrief) {
    std::string text = heading("Proposal") + paragraph(debrief.proposal, page, margin);
    for (const auto& decision : debrief.decisions) text += paragraph(decision, page, margin, "= ");
    return text + "\n  Decision (competent / not yet competent): ____________________\n" +
           "  Name, signature, date:                    ____________________\n";
}

std::string list_part(std::string_view title, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return {};
    std::string text = heading(title);
    for (const auto& sentence : sentences) text += paragraph(sentence, page, margin, "- ");
    return text;
}

std::string hindsight_part(const Debrief& debrief) {
    std::string text = list_part("What cost most", debrief.moments);
    if (!debrief.try_again.empty()) text += "\n" + paragraph(debrief.try_again, page, margin);
    text += list_part("What was still open", debrief.open);
    if (!debrief.reference.empty()) text += "\n" + paragraph(debrief.reference, page, margin);
    return text;
}

constexpr double small_charge = 0.5;  // points
const std::vector<Column>& lost_columns() {
    static const std::vector<Column> columns = {{9}, {6, true}, {5}, {70}};
    return columns;
}

/// Charges of one kind in one line.
struct Gathered {
    double points = 0.0;
    std::vector<std::string> things;
    void add(double more, const std::string& thing) {
        points += more;
        things.push_back(thing);
    }
    [[nodiscard]] std::string all(std::string_view between) const {
        std::string text;
        for (const auto& thing : things) text += (text.empty() ? "" : std::string(between)) + thing;
        return text;
    }
};

bool was_not_done(const Debrief::Lost& lost) {
    return !lost.act.empty() && lost.reason == "Not done: " + lost.missing + ".";
}

/// What was not done stands in one line of its area, small charges in another, with their times and acts.
std::string lost_of_area(const Debrief& debrief, const std::string& area) {
    std::string text, time;
    Gathered undone, small;
    std::vector<const Debrief::Lost*> small_ones;
    const auto line = [&](double points, const std::string& at, const std::string& words) {
        text += row(lost_columns(), {area, lost_text(points), at, words}, margin);
    };
    for (const auto& lost : debrief.lost) {
        if (lost.area != area) continue;
        if (was_not_done(lost)) {
            undone.add(lost.points, lost.missing);
            time = lost.time;
        } else if (lost.points < small_charge) {
            small_ones.push_back(&lost);
        } else {
            line(lost.points, lost.time, lost_words(lost));
        }
    }
    if (!undone.things.empty()) line(undone.points, time, "Not done: " + undone.all("; ") + ".");
    std::stable_sort(small_ones.begin(), small_ones.end(), [](const auto* a, const auto* b) {
        return std::pair(a->time.size(), a->time) < std::pair(b->time.size(), b->time);
    });
    for (const auto* lost : small_ones)
        small.add(lost->points,
                  lost->time + " " + (lost->missing.empty() ? lost->act : lost->missing));
    if (!small.things.empty())
        line(small.points, "", "under half a point each: " + small.all("; ") + ".");
    return text;
}

std::string lost_part(const Debrief& debrief) {
    if (debrief.lost.empty()) return {};
    std::string text = heading("Points lost") +
                       paragraph("Each area begins at 100; what it lost, and where.", page, margin);
    for (const auto& area : debrief.areas) text += lost_of_area(debrief, area.word);
    return text;
}

std::string act_part(const Debrief& debrief) {
    const std::vector<Column> columns = {{5}, {27}, {30}, {21}, {4, true}};
    std::string text = heading("Act by act") + paragraph(acts_in_words, page, margin);
    text += row(columns, {"time", "act", "what it showed", "now under 5 %", "bits"}, margin);
    for (const auto& act : debrief.acts)
        text += row(columns, {act.time, act.sentence, act.value, act.ruled_out, bits_text(act)},
                    margin);
    return text;
}

/// How the leading causes stood after each weighed act.
std::string stand_part(const Debrief& debrief) {
    if (debrief.stands.empty()) return {};
    std::vector<Column> columns = {{5}, {31}};
    std::vector<std::string> cells = {"time", "after"};
    for (const auto& cause : debrief.leading) {
        columns.push_back({11, true});
        cells.push_back(cause);
    }
    columns.push_back({6, true});
    cells.emplace_back("all others");
    std::string text = heading("How the causes stood") + paragraph(stands_in_words, page, margin);
    text += row(columns, cells, margin);
    for (const auto& stand : debrief.stands) {
        cells = {stand.time, stand.after};
        for (const double share : stand.shares) cells.push_back(whole_per_cent(share));
        cells.push_back(whole_per_cent(stand.others));
        text += row(columns, cells, margin);
    }
    return text;
}

/// A prediction without the unit that the reading beside it has too: "0.62" beside "1.80 kPa".
std::string beside(std::string predicted, const std::string& shown) {
    const auto unit = shown.rfind(' ');
    if (unit == std::string::npos || shown.find_first_of("0123456789") > unit) return predicted;
    const std::string tail = shown.substr(unit);
    for (auto at = predicted.find(tail); at != std::string::npos; at = predicted.find(tail))
        predicted.erase(at, tail.size());
    return predicted;
}

/// Columns first to last of the comparison, as wide as the page allows.
std::string panel(const Debrief& debrief, std::size_t first, std::size_t last) {
    std::vector<Column> columns = {{3, true}, {22}, {12}};
    const std::size_t room = page - margin - 41;  // beside the three columns above
    for (std::size_t i = first; i < last; ++i) columns.push_back({room / (last - first) - 2});
    std::vector<std::string> cells = {"#", "reading", "yours"};
    cells.insert(cells.end(), debrief.columns.begin() + static_cast<std::ptrdiff_t>(first),
                 debrief.columns.begin() + static_cast<std::ptrdiff_t>(last));
    std::string text = row(columns, cells, margin);
    for (const auto& reading : debrief.readings) {
        if (reading.same_everywhere) continue;
        cells = {std::to_string(reading.number), reading.title, reading.shown};
        for (std::size_t i = first; i < last; ++i)
            cells.push_back(beside(reading.cells[i].value, reading.shown) +
                            (reading.cells[i].ruled_out ? " x" : ""));
        text += row(columns, cells, margin);
    }
    return text;
}

std::string comparison_part(const Debrief& debrief) {
    std::string text = heading("The same readings under the other causes");
    if (debrief.readings.empty()) return text + "  No numbered reading was taken.\n";
    const bool all_same = std::all_of(debrief.readings.begin(), debrief.readings.end(),
                                      [](const auto& one) { return one.same_everywhere; });
    if (!all_same)
        text += paragraph(
            "What each reading would have shown if the cause were another. The first cause is that "
            "of this house; an x marks what your reading alone rules out.",
            page, margin);
    const std::size_t panels =
        all_same ? 0 : (debrief.columns.size() + widest_panel - 1) / widest_panel;
    for (std::size_t i = 0; i < panels; ++i)
        text += "\n" + panel(debrief, i * debrief.columns.size() / panels,
                             (i + 1) * debrief.columns.size() / panels);
    if (const auto others = left_out_text(debrief); !others.empty())
        text += "\n" + paragraph(others, page, margin);
    if (const auto same = same_everywhere_text(debrief); !same.empty())
        text += "\n" + paragraph(same, page, margin);
    for (const auto& words : debrief.against) text += "\n" + paragraph(words, page, margin);
    return text;
}

/// What each weighing rested on, for an assessor.
std::string inputs_part(const Debrief& debrief) {
    if (debrief.inputs.empty()) return {};
    const std::vector<Column> columns = {{3, true}, {24}, {10}, {45}, {6}};
    std::string text = heading("What each weighing rested on") +
                       paragraph(std::string(what_inputs_are) +
                                     " Where one cause had over 99 % already, it stands alone.",
                                 page, margin);
    text += row(columns, {"#", "reading", "yours", "expected", "weight"}, margin);
    for (const auto& input : debrief.inputs)
        for (std::size_t i = 0; i < (input.settled ? 1 : input.under.size()); ++i)
            text += row(
                columns,
                i == 0
                    ? std::vector<std::string>{input.number.empty() ? "" : input.number.substr(1),
                                               input.title + " (" + input.condition + ")",
                                               input.shown, input.under[i], input.weight}
                    : std::vector<std::string>{"", "", "", input.under[i], ""},
                margin);
    return text;
}

std::string limits_part(const Debrief& debrief) {
    std::string text = heading("Limits");
    for (const auto& limit : debrief.limits) text += paragraph(limit, page, margin, "- ");
    text += heading("Proof");
    for (const auto& proof : debrief.proof)
        text += row({{17}, {77}}, {proof.name, proof.value}, margin);
    return text;
}

}  // namespace

std::string to_text(const Debrief& debrief) {
    std::string text = "Debrief  " + debrief.title + "\n";
    text += paragraph(debrief.call_out, page);
    text += "Mode: " + debrief.mode + ". Time on site: " + debrief.time_on_site + ".\n";
    bool explained = false;
    for (const std::string& part :
         {outcome_part(debrief), aftermath_part(debrief), area_part(debrief),
          proposal_part(debrief), lost_part(debrief), hindsight_part(debrief), act_part(debrief),
          stand_part(debrief), comparison_part(debrief),
          list_part("For the assessor", debrief.for_assessor), inputs_part(debrief),
          limits_part(debrief)}) {
        text += part;
        if (explained || !speaks_of_bits(part)) continue;
        text += "\n" + paragraph(bit_in_words, page, margin);
        explained = true;
    }
    return text;
}

}  // namespace emberpath::records
