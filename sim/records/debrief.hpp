#pragma once
/// The debrief of a finished attempt: one table of facts, and three ways to print it. Text, JSON and
/// HTML are made from the same Debrief, so they cannot disagree.

#include <string>
#include <vector>

#include "sim/records/record.hpp"

namespace emberpath::records {

struct Debrief {
    // What this is about.
    std::string title;     // "Job 1: 8 Tanager Court"
    std::string call_out;  // the line on the job card
    std::string mode;      // "coached" or "assessed"
    std::string time_on_site;

    // 1. Outcome and unsafe acts, in words.
    std::vector<std::string> outcome;
    struct UnsafeAct {
        std::string time, act, text;
        bool critical = false;
    };
    std::vector<UnsafeAct> unsafe_acts;

    // 2. Areas, overall, gates.
    struct Area {
        std::string word;
        double score = 0.0;
        bool scored = true;
        std::string reason;  // or why it is not scored
    };
    std::vector<Area> areas;
    double overall = 0.0;
    bool gates_met = false;
    std::string gates;  // in words

    // 3. What the program proposes; a person decides.
    std::string proposal;

    // 4. One line per act.
    struct Act {
        std::string time, sentence, value, ruled_out;
        double bits = 0.0;
        bool weighed = false;  // it gave evidence
    };
    std::vector<Act> acts;

    // 5. The same readings under the other causes.
    struct Cell {
        std::string value;
        bool ruled_out = false;
    };
    struct Reading {
        int number = 0;
        std::string title, shown;
        std::vector<Cell> cells;       // one for each column
        bool same_everywhere = false;  // every cause would have shown the same
    };
    std::vector<std::string> columns;  // causes by remedy; that of this house first
    std::vector<Reading> readings;

    // 6. Limits, and what the record proves.
    std::vector<std::string> limits;
    struct Proof {
        std::string name, value;
    };
    std::vector<Proof> proof;
};

/// `record` must be good and closed or complete; `assessment` is what assess() made of it.
[[nodiscard]] Debrief make_debrief(const Record& record, const worksite::Job& job,
                                   const scoring::Assessment& assessment);

/// Plain text, at most 100 columns.
[[nodiscard]] std::string to_text(const Debrief& debrief);
/// One JSON object, indented; schema in docs/guide.md.
[[nodiscard]] std::string to_json(const Debrief& debrief);
/// A page of its own: no scripts, nothing fetched, fit to print on A4.
[[nodiscard]] std::string to_html(const Debrief& debrief);

/// Score as every form prints it: whole points.
[[nodiscard]] std::string score_text(double score);
/// Which readings would have been the same under every cause; empty for none.
[[nodiscard]] std::string same_everywhere_text(const Debrief& debrief);
/// Bits as every form prints them: one decimal, and "-" for none.
[[nodiscard]] std::string bits_text(const Debrief::Act& act);

}  // namespace emberpath::records
