#pragma once
/// The debrief of a finished attempt: one table of facts, and three ways to print it. Text, JSON and
/// HTML are made from the same Debrief, so they cannot disagree.

#include <string>
#include <string_view>
#include <vector>

#include "sim/records/decision.hpp"
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

    std::vector<std::string> doses;      // how near the person at work came to harm
    std::vector<std::string> day_after;  // what the household met in the next 24 hours

    // 2. Areas, overall, gates.
    struct Area {
        std::string word;
        double score = 0.0;
        bool scored = true;
        std::string reason;            // or why it is not scored
        double low = 0.0, high = 0.0;  // under other priors, widths and houses
    };
    std::vector<Area> areas;
    double overall = 0.0;
    bool overall_scored = true;
    double overall_low = 0.0, overall_high = 0.0;
    bool gates_met = false;
    std::string gates;  // in words

    // 3. What the program proposes; a person decides.
    std::string proposal;
    std::vector<std::string> decisions;  // what persons decided since, each in words

    // The moments that cost most, what was still open, and how it could have gone.
    std::vector<std::string> moments;
    std::string try_again;  // how to go on from the first of them; empty without one
    std::vector<std::string> open;
    std::string reference;

    // Where the points went: those of an area sum to 100 - its score.
    struct Lost {
        std::string area, time, act, missing, reason;  // no act: nothing was done that carries it
        double points = 0.0;
    };
    std::vector<Lost> lost;

    // 4. One line per act.
    struct Act {
        std::string time, sentence, value;
        std::string ruled_out;  // causes that fell below 5 % here
        double bits = 0.0;      // negative where it left more open than before
        bool weighed = false;   // it gave evidence
        std::string
            better{};  // reading that would have told most per minute then; empty: none asked
    };
    std::vector<Act> acts;

    // How likely the leading causes were, on arrival and after every reading that was weighed.
    struct Stand {
        std::string time, after;     // "#6 outlet pipe"
        std::vector<double> shares;  // one for each of `leading`
        double others = 0.0;         // of all other causes together
        std::size_t acts = 0;        // done by then; 0 on arrival
    };
    std::vector<std::string> leading;  // causes by remedy; that of this house first
    std::vector<Stand> stands;         // empty where nothing was weighed

    // 5. The same readings under the other causes.
    struct Cell {
        std::string value;
        bool ruled_out = false;
    };
    struct Reading {
        int number = 0;
        std::string title, shown;
        std::vector<Cell> cells;       // one for each column
        bool same_everywhere = false;  // every cause shown would have shown the same
    };
    std::vector<std::string> columns;  // causes by remedy; that of this house first
    std::size_t columns_left_out = 0;  // classes that never were among the likeliest
    std::vector<Reading> readings;
    std::vector<std::string>
        against;  // readings that by themselves speak against the true cause, in words

    // For an assessor's eyes: what is no part of any score. Empty for a trainee.
    std::vector<std::string> for_assessor;
    struct Input {  // of one weighing
        std::string number, title, condition, shown, weight;
        std::vector<std::string> under;  // "2.84 kPa, ± 0.07 kPa (igniter failed, 40 %)"
        bool settled = false;            // one cause had over 99 % before it
    };
    std::vector<Input> inputs;

    // 6. Limits, and what the record proves.
    std::vector<std::string> limits;
    struct Proof {
        std::string name, value;
    };
    std::vector<Proof> proof;
};

/// `record` must be good and closed or complete; `assessment` is what assess() made of it.
/// Who reads it: a trainee, or an assessor who also sees what is no part of any score.
enum class Reader { trainee, assessor };
[[nodiscard]] Debrief make_debrief(const Record& record, const worksite::Job& job,
                                   const scoring::Assessment& assessment,
                                   Reader reader = Reader::trainee,
                                   const std::vector<Decision>& decisions = {});

/// Plain text, at most 100 columns.
[[nodiscard]] std::string to_text(const Debrief& debrief);
/// One JSON object, indented; schema in docs/guide.md.
[[nodiscard]] std::string to_json(const Debrief& debrief);
/// A page of its own: no scripts, nothing fetched, fit to print on A4.
[[nodiscard]] std::string to_html(const Debrief& debrief);

/// Score as every form prints it: whole points.
[[nodiscard]] std::string score_text(double score);
/// "95 to 99": least and most over other priors, widths and houses; empty where not scored.
[[nodiscard]] std::string band_text(double low, double high, bool scored);
/// "-" when an area could not be scored.
[[nodiscard]] std::string overall_text(const Debrief& debrief);
/// How many classes the comparison leaves out; empty for none.
[[nodiscard]] std::string left_out_text(const Debrief& debrief);
/// Which readings would have been the same under every cause shown; empty for none.
[[nodiscard]] std::string same_everywhere_text(const Debrief& debrief);
/// "-12.5": points lost, one decimal.
[[nodiscard]] std::string lost_text(double points);
/// "read manometer: 3.5 minutes for a reading when ..."; what was left undone has no act before it.
[[nodiscard]] std::string lost_words(const Debrief::Lost& lost);
/// Bits as every form prints them: one decimal, "-" where nothing was weighed.
[[nodiscard]] std::string bits_text(const Debrief::Act& act);
/// What a bit is: every form says it once, below the first part that speaks of bits.
[[nodiscard]] bool speaks_of_bits(std::string_view text);
inline constexpr std::string_view bit_in_words =
    "One bit halves what is open: two bits leave a quarter of it.";
inline constexpr std::string_view acts_in_words =
    "Now under 5 %: causes that this act brought below it. Bits: how much less was open after it; "
    "with a minus, more.";
/// "37", "<1", ">99": a share in whole per cent.
[[nodiscard]] std::string whole_per_cent(double share);
inline constexpr std::string_view stands_in_words =
    "Per cent that the readings so far gave to each cause. The first is that of this house.";

}  // namespace emberpath::records
