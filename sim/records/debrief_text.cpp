#include <algorithm>

#include "sim/records/debrief.hpp"
#include "sim/records/layout.hpp"

namespace emberpath::records {

namespace {

constexpr std::size_t page = 100;
constexpr std::size_t margin = 2;
constexpr std::size_t cells_per_panel = 5;

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

std::string area_part(const Debrief& debrief) {
    const std::vector<Column> columns = {{12}, {5, true}, {77}};
    std::string text = heading("Areas");
    for (const auto& area : debrief.areas)
        text += row(columns, {area.word, area.scored ? score_text(area.score) : "-", area.reason},
                    margin);
    text += "\n";
    text += row(columns, {"overall", score_text(debrief.overall), "of 100"}, margin);
    return text + paragraph(debrief.gates, page, margin);
}

std::string proposal_part(const Debrief& debrief) {
    return heading("Proposal (a person decides)") + paragraph(debrief.proposal, page, margin) +
           "\n  Decision (competent / not yet competent): ____________________\n" +
           "  Name, signature, date:                    ____________________\n";
}

std::string act_part(const Debrief& debrief) {
    const std::vector<Column> columns = {{5}, {28}, {28}, {23}, {4, true}};
    std::string text = heading("Act by act");
    text += row(columns, {"time", "act", "what it showed", "ruled out", "bits"}, margin);
    for (const auto& act : debrief.acts)
        text += row(columns, {act.time, act.sentence, act.value, act.ruled_out, bits_text(act)},
                    margin);
    return text;
}

/// A prediction without its unit where the reading beside it has the same: "0.62" beside "1.80 kPa".
std::string beside(const std::string& predicted, const std::string& shown) {
    const auto unit = shown.rfind(' ');
    if (unit == std::string::npos || shown.find_first_of("0123456789") > unit) return predicted;
    const std::string tail = shown.substr(unit);
    if (!predicted.ends_with(tail) || predicted.size() == tail.size()) return predicted;
    return predicted.substr(0, predicted.size() - tail.size());
}

/// Columns first to last of the comparison, as wide as the page allows.
std::string panel(const Debrief& debrief, std::size_t first, std::size_t last) {
    std::vector<Column> columns = {{3, true}, {21}, {11}};
    for (std::size_t i = first; i < last; ++i) columns.push_back({9});
    std::vector<std::string> cells = {"#", "reading", "yours"};
    cells.insert(cells.end(), debrief.columns.begin() + static_cast<std::ptrdiff_t>(first),
                 debrief.columns.begin() + static_cast<std::ptrdiff_t>(last));
    std::string text = row(columns, cells, margin);
    for (const auto& reading : debrief.readings) {
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
    text += paragraph(
        "What each reading would have shown if the cause were another. An x marks "
        "what your reading alone rules out.",
        page, margin);
    for (std::size_t first = 0; first < debrief.columns.size(); first += cells_per_panel)
        text +=
            "\n" + panel(debrief, first, std::min(first + cells_per_panel, debrief.columns.size()));
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
    return text + outcome_part(debrief) + area_part(debrief) + proposal_part(debrief) +
           act_part(debrief) + comparison_part(debrief) + limits_part(debrief);
}

}  // namespace emberpath::records
