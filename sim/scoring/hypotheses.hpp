#pragma once
/// The causes a shadow stands for: every cause of the catalogue that can occur at the site, at several
/// severities of its symptomatic range. Nothing here looks at the job's hidden faults.

#include <cstddef>
#include <vector>

#include "sim/worksite/job.hpp"

namespace emberpath::scoring {

/// Per cause and sign. On/off causes need one; causes whose readings hardly change over their range have fewer.
inline constexpr int severity_count = 7;

/// One shadow: a lane of the bank.
struct Hypothesis {
    faults::Fault fault;                                          // onset 0, steady
    faults::Remedy remedy = faults::Remedy::explain_to_customer;  // its class
    double prior = 0.0;                                           // sums to 1 over all hypotheses
    int lower = -1, upper = -1;  // neighbours in severity, same cause and sign; -1: none
};

/// Place of a class in every list that has one entry per class.
[[nodiscard]] constexpr std::size_t class_index(faults::Remedy remedy) {
    return static_cast<std::size_t>(remedy);
}

/// All hypotheses of a site (worksite::traits_of), in catalogue order, severities rising. Prior = trade frequency of the
/// cause, shared equally among its severities.
[[nodiscard]] std::vector<Hypothesis> hypotheses(const faults::SiteTraits& site);

/// Index of the sound house among them.
[[nodiscard]] std::size_t sound_house(const std::vector<Hypothesis>& all);

}  // namespace emberpath::scoring
