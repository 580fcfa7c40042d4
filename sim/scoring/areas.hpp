#pragma once
/// The five area scores and the overall score, as pure functions of counted things. docs/scoring.md
/// explains each; weights and scales are chosen there.

#include <cstddef>
#include <span>

namespace emberpath::scoring {

/// One commitment: a remedy carried out or the final diagnosis.
struct Commitment {
    double probability = 0.0;  // of its class just before, from the trainee's own evidence
    double on_arrival = 0.0;   // of its class from the complaint alone
    double need = 0.9;
    double minutes = 0.0;  // of work
    double part_minutes = 0.0;
    bool cured = false;
    bool confirmed =
        true;  // something was measured or inspected first, beyond the heater's own word
};
/// Half of the warrant at most where nothing confirmed what display and event said: a controller reports
/// what it saw, not what is behind it. The half is chosen.
[[nodiscard]] double warrant_of(const Commitment& commitment);
/// Missing share of the probability needed: max(0, 1 - p / need).
[[nodiscard]] double shortfall(const Commitment& commitment);

/// E: mean warrant of all remedies (weight: square root of minutes + part) and the diagnosis (weight 8).
[[nodiscard]] double evidence_score(std::span<const Commitment> remedies,
                                    const Commitment& diagnosis);

/// One test's charge: what it cost beyond (1 + tau) times what its expected information is worth at the
/// best rate, tau = 1. With no information left anywhere the whole cost is charged.
[[nodiscard]] double test_charge_minutes(double minutes, double expected_bits,
                                         double best_bits_per_minute);
/// A confirming test late on costs less: factor 1 up to p = .90, falling smoothly to 1/2 at .99.
[[nodiscard]] double confirmation_factor(double leading_probability);

/// No path is measured against less than this, however short the reference policy's own.
inline constexpr double least_reference_minutes = 10.0;

struct PathCharges {
    double tests = 0.0, idle = 0.0, remedies = 0.0, submission = 0.0;  // minutes
    [[nodiscard]] double total() const { return tests + idle + remedies + submission; }
};
[[nodiscard]] double remedy_charge_minutes(const Commitment& remedy);
[[nodiscard]] double submission_charge_minutes(double diagnosis_probability);
/// P = 100 C / (C + .6 max(0, X - .2 C)); C is raised to 10 minutes when less.
[[nodiscard]] double path_score(double excess_minutes, double reference_minutes);

/// Waste of remedies: shortfall x (part + .3 minutes), at least .25 (1 - p) in place of the shortfall
/// where the remedy did not cure.
[[nodiscard]] double waste_minutes(std::span<const Commitment> remedies);
/// R = 100 (.5 fixed + .5 w_final) exp(-W / 60).
[[nodiscard]] double remedy_score(bool fixed, double warrant_of_diagnosis, double waste);

/// R where the heater was made safe and handed on instead: (60 + 40 w) exp(-W / 60) when no reading could
/// tell the open causes apart, w from all of them together; else 60 w exp(-W / 60), the remedy being within
/// reach.
[[nodiscard]] double handing_on_score(bool justified, double warrant_of_diagnosis, double waste);

/// S = 100 product (1 - d), and a further factor .45 for each critical breach.
struct Omission {
    double deduction = 0.0;
    bool critical = false;
};
[[nodiscard]] double safety_score(std::span<const Omission> omissions);

/// V = 100 x share of eight items, less those that are not called for, x .7 while the fault remains.
inline constexpr int proof_item_count = 8;
[[nodiscard]] double proof_score(int items_done, int items_not_needed, bool fault_remains);

/// Weight of an area (0 to 4, S E P R V) in the overall score; they sum to 1.
[[nodiscard]] double area_weight(std::size_t area);
/// What the weighted logarithms say an area takes from the overall score: w ln(100 / area), each area at least 2.
[[nodiscard]] double area_toll(std::size_t area, double score);

/// The five areas, 0 to 100.
struct AreaScores {
    double safety = 0.0, evidence = 0.0, path = 0.0, remedy = 0.0, proof = 0.0;
};
/// Geometric mean with weights .22 .25 .18 .20 .15, each area at least 2.
[[nodiscard]] double geometric_mean(const AreaScores& areas);
/// The same with one area (0 to 4, in that order) left out and the other weights raised alike.
[[nodiscard]] double geometric_mean_without(const AreaScores& areas, std::size_t left_out);
/// Soft ceiling: T = -4 ln(exp(-T/4) + exp(-(S + 20)/4)).
[[nodiscard]] double under_safety_ceiling(double score, double safety);
[[nodiscard]] double overall_score(const AreaScores& areas);

}  // namespace emberpath::scoring
