#pragma once
/// The causes a shadow stands for: every cause of the catalogue that can occur at the site, at several
/// severities of its symptomatic range, and the chosen pairs of causes. Nothing here looks at the job's hidden
/// faults.

#include <cstddef>
#include <vector>

#include "sim/scoring/classes.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::scoring {

/// One shadow: a lane of the bank.
struct Hypothesis {
    faults::Fault fault;                                          // onset 0, steady
    faults::Remedy remedy = faults::Remedy::explain_to_customer;  // of that fault
    int pair = -1;               // index into chosen_pairs; -1: a single cause
    double prior = 0.0;          // sums to 1 over all hypotheses
    int lower = -1, upper = -1;  // neighbours in severity, same cause and sign; -1: none
    [[nodiscard]] bool is_pair() const { return pair >= 0; }
};

[[nodiscard]] Class class_of(const Hypothesis& hypothesis);
/// None for the sound house.
[[nodiscard]] std::vector<faults::Fault> faults_of(const Hypothesis& hypothesis);

/// All hypotheses of a site (worksite::traits_of), in catalogue order, then the pairs, severities rising. Prior = trade
/// frequency of the cause or pair, shared among its severities (severities.hpp).
[[nodiscard]] std::vector<Hypothesis> hypotheses(const faults::SiteTraits& site);

/// Index of the sound house among them.
[[nodiscard]] std::size_t sound_house(const std::vector<Hypothesis>& all);
/// The hypothesis whose house each of them is once these remedies have been carried out: itself, what is left of a
/// pair (at the nearest severity), or the sound house.
[[nodiscard]] std::vector<std::size_t> stands_as_after(const std::vector<Hypothesis>& all,
                                                       std::span<const faults::Remedy> done);

}  // namespace emberpath::scoring
