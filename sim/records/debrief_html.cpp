#include <algorithm>

#include "sim/records/debrief.hpp"
#include "sim/records/debrief_parts.hpp"

namespace emberpath::records {

namespace {

// Colours and line weights as on the drawing sheet; ruled out is said by a cross, not by colour alone.
constexpr std::string_view style = R"(<style>
body { font: 15px/1.45 B612, "DejaVu Sans", Verdana, sans-serif; color: #1D2B36; background: #F7F5EF;
       max-width: 62em; margin: 2em auto; padding: 0 1.5em; }
h1 { font-size: 1.5em; margin-bottom: .2em; } h2 { font-size: 1.1em; margin: 1.8em 0 .5em;
       border-bottom: 1px solid #6C7982; padding-bottom: .2em; }
p { margin: .3em 0; } .quiet { color: #465664; }
table { border-collapse: collapse; width: 100%; font-size: .87em; }
th, td { text-align: left; vertical-align: top; padding: .3em .6em .3em 0; border-bottom: 1px solid #C9C8BF; }
th { font-weight: bold; border-bottom-color: #6C7982; } .number { text-align: right; padding-right: 1em; }
.out { color: #465664; background: #ECE9E0; } .danger { color: #9E1238; font-weight: bold; }
.line { display: inline-block; min-width: 18em; border-bottom: 1px solid #1D2B36; }
@media print { body { background: none; margin: 0; max-width: none; font-size: 10pt; }
  h2 { break-after: avoid; } tr { break-inside: avoid; } }
@page { size: A4; margin: 15mm; }
</style>)";

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == '&')
            out += "&amp;";
        else if (c == '<')
            out += "&lt;";
        else if (c == '>')
            out += "&gt;";
        else if (c == '"')
            out += "&quot;";
        else
            out += c;
    }
    return out;
}

std::string element(std::string_view tag, std::string_view text, std::string_view kind = {}) {
    std::string out = "<" + std::string(tag);
    if (!kind.empty()) out += " class=\"" + std::string(kind) + "\"";
    return out + ">" + escaped(text) + "</" + std::string(tag) + ">";
}

std::string table_row(std::string_view cells) {
    return "<tr>" + std::string(cells) + "</tr>\n";
}

std::string outcome_part(const Debrief& debrief) {
    std::string html = element("h2", "Outcome") + "\n";
    for (const auto& sentence : debrief.outcome) html += element("p", sentence) + "\n";
    if (debrief.unsafe_acts.empty()) return html + element("p", "No unsafe act.") + "\n";
    html += "<ul>\n";
    for (const auto& unsafe : debrief.unsafe_acts)
        html += "<li>" + element("span", unsafe.critical ? "Critical" : "Unsafe", "danger") + " " +
                escaped(unsafe.time + "  " + unsafe.text) + " " +
                element("span", unsafe.act, "quiet") + "</li>\n";
    return html + "</ul>\n";
}

std::string area_part(const Debrief& debrief) {
    std::string html = element("h2", "Areas") + "\n<table>\n";
    for (const auto& area : debrief.areas)
        html += table_row(element("th", area.word) +
                          element("td", area.scored ? score_text(area.score) : "-", "number") +
                          element("td", band_text(area.low, area.high, area.scored), "number") +
                          element("td", area.reason));
    html += table_row(
        element("th", "overall") + element("td", overall_text(debrief), "number") +
        element("td", band_text(debrief.overall_low, debrief.overall_high, debrief.overall_scored),
                "number") +
        element("td",
                "of 100; beside it the span over other priors, widths and "
                "houses"));
    html += "</table>\n";
    return html + element("p", debrief.gates, debrief.gates_met ? std::string_view() : "danger") +
           "\n";
}

std::string proposal_part(const Debrief& debrief) {
    std::string decided;
    for (const auto& decision : debrief.decisions) decided += element("p", decision) + "\n";
    return element("h2", "Proposal") + "\n" + element("p", debrief.proposal) + "\n" + decided +
           "<p>Decision (competent / not yet competent): <span class=\"line\">&nbsp;</span></p>\n"
           "<p>Name, signature, date: <span class=\"line\">&nbsp;</span></p>\n";
}

std::string list_part(std::string_view title, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return {};
    std::string html = element("h2", title) + "\n<ul>\n";
    for (const auto& sentence : sentences) html += element("li", sentence) + "\n";
    return html + "</ul>\n";
}

std::string lost_part(const Debrief& debrief) {
    if (debrief.lost.empty()) return {};
    std::string html = element("h2", "Points lost") + "\n" +
                       element("p", "Each area begins at 100; what it lost, and where.") +
                       "\n<table>\n";
    for (const auto& lost : debrief.lost)
        html += table_row(
            element("th", lost.area) + element("td", lost_text(lost.points), "number") +
            element("td", lost.time) +
            element("td", (lost.act.empty() ? "never handed in" : lost.act) +
                              (lost.missing.empty() ? "" : " (missing: " + lost.missing + ")")) +
            element("td", lost.reason));
    return html + "</table>\n";
}

std::string inputs_part(const Debrief& debrief) {
    if (debrief.inputs.empty()) return {};
    std::string html = element("h2", "What each weighing rested on") + "\n" +
                       element("p", what_inputs_are) + "\n<table>\n" +
                       table_row(element("th", "#") + element("th", "reading") +
                                 element("th", "condition") + element("th", "yours") +
                                 element("th", "expected") + element("th", "weight", "number"));
    for (const auto& input : debrief.inputs) {
        std::string expected;
        for (const auto& under : input.under)
            expected += (expected.empty() ? "" : "<br>") + escaped(under);
        html += table_row(element("td", input.number) + element("td", input.title) +
                          element("td", input.condition) + element("td", input.shown) + "<td>" +
                          expected + "</td>" + element("td", input.weight, "number"));
    }
    return html + "</table>\n";
}

std::string hindsight_part(const Debrief& debrief) {
    std::string html = list_part("What cost most", debrief.moments);
    if (!debrief.try_again.empty()) html += element("p", debrief.try_again) + "\n";
    html += list_part("What was still open", debrief.open);
    if (!debrief.reference.empty()) html += element("p", debrief.reference) + "\n";
    return html;
}

std::string act_part(const Debrief& debrief) {
    std::string html =
        element("h2", "Act by act") + "\n" + element("p", acts_in_words) + "\n<table>\n";
    html += table_row(element("th", "time") + element("th", "act") +
                      element("th", "what it showed") + element("th", "now under 5 %") +
                      element("th", "best reading then") + element("th", "bits", "number"));
    for (const auto& act : debrief.acts)
        html += table_row(element("td", act.time) + element("td", act.sentence) +
                          element("td", act.value) + element("td", act.ruled_out) +
                          element("td", act.better) + element("td", bits_text(act), "number"));
    return html + "</table>\n";
}

std::string stand_part(const Debrief& debrief) {
    if (debrief.stands.empty()) return {};
    std::string cells = element("th", "time") + element("th", "after");
    for (const auto& cause : debrief.leading) cells += element("th", cause, "number");
    std::string html = element("h2", "How the causes stood") + "\n" +
                       element("p", stands_in_words) + "\n<table>\n" +
                       table_row(cells + element("th", "all others", "number"));
    for (const auto& stand : debrief.stands) {
        cells = element("td", stand.time) + element("td", stand.after);
        for (const double share : stand.shares)
            cells += element("td", whole_per_cent(share), "number");
        html += table_row(cells + element("td", whole_per_cent(stand.others), "number"));
    }
    return html + "</table>\n";
}

/// Empty where every reading would have been the same.
std::string comparison_table(const Debrief& debrief) {
    if (std::all_of(debrief.readings.begin(), debrief.readings.end(),
                    [](const auto& one) { return one.same_everywhere; }))
        return {};
    std::string html =
        element("p",
                "What each reading would have shown if the cause were another. The first cause "
                "is that of this house; an x marks what your reading alone rules out.") +
        "\n<table>\n";
    std::string cells = element("th", "#") + element("th", "reading") + element("th", "yours");
    for (const auto& column : debrief.columns) cells += element("th", column);
    html += table_row(cells);
    for (const auto& reading : debrief.readings) {
        if (reading.same_everywhere) continue;
        cells = element("td", std::to_string(reading.number)) + element("td", reading.title) +
                element("th", reading.shown);
        for (const auto& cell : reading.cells)
            cells += element("td", cell.value + (cell.ruled_out ? " x" : ""),
                             cell.ruled_out ? "out" : std::string_view());
        html += table_row(cells);
    }
    return html + "</table>\n";
}

std::string comparison_part(const Debrief& debrief) {
    std::string html = element("h2", "The same readings under the other causes") + "\n";
    if (debrief.readings.empty())
        return html + element("p", "No numbered reading was taken.") + "\n";
    html += comparison_table(debrief);
    if (const auto others = left_out_text(debrief); !others.empty())
        html += element("p", others) + "\n";
    if (const auto same = same_everywhere_text(debrief); !same.empty())
        html += element("p", same) + "\n";
    for (const auto& words : debrief.against) html += element("p", words) + "\n";
    return html;
}

std::string limits_part(const Debrief& debrief) {
    std::string html = element("h2", "Limits") + "\n<ul>\n";
    for (const auto& limit : debrief.limits) html += element("li", limit) + "\n";
    html += "</ul>\n" + element("h2", "Proof") + "\n<table>\n";
    for (const auto& proof : debrief.proof)
        html += table_row(element("th", proof.name) + element("td", proof.value));
    return html + "</table>\n";
}

}  // namespace

std::string to_html(const Debrief& debrief) {
    std::string html =
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n" +
        element("title", "Debrief: " + debrief.title) + "\n" + std::string(style) +
        "\n</head>\n<body>\n" + element("h1", debrief.title) + "\n" +
        element("p", debrief.call_out) + "\n" +
        element("p",
                "Debrief. Mode: " + debrief.mode + ". Time on site: " + debrief.time_on_site + ".",
                "quiet") +
        "\n";
    bool explained = false;
    for (const std::string& part :
         {outcome_part(debrief), list_part("Distance to harm", debrief.doses),
          list_part("The day after you left", debrief.day_after), area_part(debrief),
          proposal_part(debrief), lost_part(debrief), hindsight_part(debrief), act_part(debrief),
          stand_part(debrief), comparison_part(debrief),
          list_part("For the assessor", debrief.for_assessor), inputs_part(debrief),
          limits_part(debrief)}) {
        html += part;
        if (explained || !speaks_of_bits(part)) continue;
        html += element("p", bit_in_words) + "\n";
        explained = true;
    }
    return html + "</body>\n</html>\n";
}

}  // namespace emberpath::records
