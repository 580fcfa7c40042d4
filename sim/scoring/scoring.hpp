#pragma once
/// How good and how safe a path was, from shadow simulations of every other cause.
/// docs/scoring.md explains each formula; nothing here was typed by an author.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "sim/faults/faults.hpp"
#include "sim/scoring/classes.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath::scoring {

struct ClassProbability {
    Class of;
    double probability;
};

/// What one act was worth.
struct ActWorth {
    std::size_t act = 0;  // index into the attempt's log
    double minutes = 0.0;
    double bits_gained = 0.0;                     // entropy of classes before less after
    double bits_expected = 0.0;                   // expected when the act was chosen
    double best_bits_per_minute = 0.0;            // of the best allowed reading at that moment
    std::string best_alternative;                 // its title
    std::vector<ClassProbability> before, after;  // largest first
    std::vector<std::string> ruled_out;           // titles of classes that fell below 5 % here
};

/// Points that an area lost, and to what. Those of one area sum to 100 - its score (attribution.hpp).
struct Lost {
    static constexpr std::size_t no_act = static_cast<std::size_t>(-1);
    std::size_t act = no_act;  // index into the log; no_act: nothing was done that carries it
    std::string item;  // what is missing, where the act is no more than the hand-in without it
    double points = 0.0;
    std::string reason;  // one sentence
};

struct Area {
    std::string word;    // "safe work", "evidence", "path", "remedy", "proof"
    double score = 0.0;  // 0 to 100
    std::string reason;  // one sentence; names the act that cost most
    double low = 0.0,
           high = 0.0;  // over other priors, widths and houses; equal when not worked out
    bool scored = true;
    std::string not_scored_because;
    std::vector<Lost> lost{};  // most first; empty where not scored
};

/// "The same readings under the other causes": one row per reading, one column per class.
struct Comparison {
    int number = 0;            // balloon
    std::string title, shown;  // what was read
    struct Cell {
        Class of;
        std::string predicted;   // in trade units, over the severities that remain most likely
        bool ruled_out = false;  // by this reading alone
    };
    std::vector<Cell> cells;
};

/// What went into the weighing of one reading: for an assessor. In trade units, on the quantity's own scale.
struct LikelihoodInput {
    int number = 0;                       // balloon; 0: not numbered
    std::size_t act = 0;                  // index into the log
    std::string title, condition, shown;  // what was read, as the heater stood
    struct Under {
        Class of;
        double before = 0.0;    // probability of the class before this reading
        std::string predicted;  // by its likeliest shadow
        std::string scale;  // half-width of what that shadow expects; the share of looks for a word
        double likelihood = 0.0;  // of this reading alone, the best of those shown being 1
    };
    std::vector<Under> under;  // the leading classes before it, and the true one
    double exponent =
        0.0;  // with which its likelihood counted in the end (weights of a glance, tempering)
    std::size_t reads = 1;  // how many readings count together with it as one
};

/// One of the moments that cost most, with the best that could have been done there.
struct Moment {
    std::size_t act = 0;   // index into the log
    double minutes = 0.0;  // charged to the path
    double toll = 0.0;     // taken from the logarithm of the overall score; they are ranked by it
    std::string text;
};

/// For an assessor's attention only, never a penalty: did the readings tell more of the truth than anybody
/// could expect who did not know it?
struct Luck {
    double told_bits = 0.0, expected_bits = 0.0;  // about the true class, before the cure
    double variance = 0.0;                        // of what could be told [bits^2]
    double index = 0.0;  // (told - expected) / standard deviation; about 0 for honest work
    int readings = 0;    // acts that brought evidence
    double misfit =
        0.0;  // mean squared standardised distance of numeric readings from the likeliest shadow
};

struct Assessment {
    std::vector<ActWorth> acts;
    std::vector<Area> areas;     // S E P R V in this order
    double overall = 0.0;        // geometric mean under the soft safety ceiling
    bool overall_scored = true;  // all five areas are
    double overall_low = 0.0, overall_high = 0.0;
    bool gates_met = false;  // no critical breach
    std::vector<worksite::Breach> breaches;
    std::vector<ClassProbability> on_arrival, at_end;
    double true_class_probability = 0.0;  // at the end, before the cure
    double true_remedy_probability =
        0.0;                      // likewise, with the pairs of causes that need its remedy too
    double something_else = 0.0;  // likewise: of a cause that is not in the catalogue
    std::optional<double>
        stated_confidence;  // in the causes written down, by the trainee; no score asks
    double diagnosis_probability =
        0.0;                       // theirs by the trainee's own readings, before it was settled
    bool diagnosis_named = false;  // a cause of the catalogue was written and handed in
    std::string true_cause;        // titles, joined by " and "; after the attempt only
    std::string proposal;          // "propose: competent" never appears; see docs/scoring
    bool unopposed = false;        // scored, and nothing stands against it
    bool fixed = false;
    std::vector<Comparison> comparisons;
    std::vector<Moment> costliest;        // at most two, dearest first
    std::vector<std::string> still_open;  // what could and could not have been known
    std::string reference_path;           // readings of the reference policy, in words
    double reference_minutes = 0.0;
    double reference_leading = 0.0;  // what it ends on, with readings free of error
    worksite::ReleaseCheck release;  // what the job says of its check in other houses
    bool direct = false;             // on arrival the true class had what its remedy needs already
    Luck luck;
    std::vector<LikelihoodInput> inputs;  // of every reading before the cure, in order
    std::vector<double> overall_with;     // one for each of Terms::changes
};

/// An act with the tick at which it began.
struct TimedAct {
    std::int64_t tick;
    std::string sentence;
};
/// The overall score of an assessment with one area (0 to 4) left out and the safety ceiling kept.
[[nodiscard]] double overall_without(const Assessment& assessment, std::size_t area);

class Bank;
/// A scorer who chose otherwise: the prior of each cause `priors` times higher or lower, as a coin of its own falls,
/// and every width times `widths`.
struct Change {
    double priors = 1.0;     // >= 1
    double widths = 1.0;     // > 0
    std::uint64_t draw = 1;  // the coins
};
/// How an assessment is made.
struct Terms {
    /// Shadows that have lived through the history of the same job with the same seed, and perhaps through
    /// the first of these acts; nullptr: they are worked out, on as many threads as the machine has.
    const Bank* at_arrival = nullptr;
    bool explained = true;  // with bands, comparisons, costliest moments and what was still open
    int threads = 0;  // at most so many; 0: as many as the machine has. No result depends on it
    std::span<const Change> changes = {};  // what else the overall score is asked for
};
/// Plays the acts again on the true heater and on every shadow, and weighs each observation.
[[nodiscard]] Assessment assess(const worksite::Job& job, std::uint64_t seed, worksite::Mode mode,
                                const std::vector<TimedAct>& acts, const Terms& terms = {});

/// What a job's fault does to every reading beside the sound house, at standby, low and full draw.
struct PreviewRow {
    std::string condition, title, sound, faulty;
    bool changed = false;
};
[[nodiscard]] std::vector<PreviewRow> preview(const worksite::Job& job);

}  // namespace emberpath::scoring
