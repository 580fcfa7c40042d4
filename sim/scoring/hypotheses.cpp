#include "sim/scoring/hypotheses.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/scoring/severities.hpp"

namespace emberpath::scoring {

namespace {

faults::Fault there(faults::Cause cause) {
    faults::Fault fault;
    fault.cause = cause;
    fault.severity = faults::info(cause).greatest_severity;
    return fault;
}

/// `frequency`: of the cause in this direction, or of the pair.
void append(std::vector<Hypothesis>& all, const faults::CauseInfo& cause, double sign,
            double frequency, int pair = -1) {
    const std::vector<double> grid =
        pair >= 0
            ? even_severities(cause, chosen_pairs.at(static_cast<std::size_t>(pair)).severities)
            : severities_of(cause, sign < 0.0);
    const std::vector<double> shares = shares_of(cause, grid);
    for (std::size_t i = 0; i < grid.size(); ++i) {
        Hypothesis h;
        h.fault.cause = cause.cause;
        h.fault.severity = sign * grid[i];
        h.remedy = cause.remedy;
        h.prior = frequency * shares[i];
        h.pair = pair;
        const int here = static_cast<int>(all.size());
        h.lower = i > 0 ? here - 1 : -1;
        h.upper = i + 1 < grid.size() ? here + 1 : -1;
        all.push_back(h);
    }
}

}  // namespace

std::vector<Hypothesis> hypotheses(const faults::SiteTraits& site) {
    std::vector<Hypothesis> all;
    double total = 0.0;
    for (const faults::CauseInfo& cause : faults::catalogue()) {
        if (!faults::can_act(cause, site)) continue;
        const double each = cause.has_sign ? 0.5 * cause.frequency : cause.frequency;
        append(all, cause, 1.0, each);
        if (cause.has_sign) append(all, cause, -1.0, each);
        total += cause.frequency;
    }
    for (std::size_t i = 0; i < chosen_pairs.size(); ++i) {
        const ChosenPair& pair = chosen_pairs[i];
        const faults::CauseInfo& first = faults::info(pair.first);
        if (!faults::can_act(first, site) || !faults::can_act(faults::info(pair.second), site))
            continue;
        append(all, first, 1.0, pair.frequency, static_cast<int>(i));
        total += pair.frequency;
    }
    for (Hypothesis& h : all) h.prior /= total;
    return all;
}

std::size_t sound_house(const std::vector<Hypothesis>& all) {
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].fault.cause == faults::Cause::no_fault) return i;
    return 0;
}

Class class_of(const Hypothesis& h) {
    return h.is_pair() ? Class::of_pair(static_cast<std::size_t>(h.pair)) : Class(h.remedy);
}

std::vector<faults::Fault> faults_of(const Hypothesis& h) {
    if (h.fault.cause == faults::Cause::no_fault) return {};
    if (!h.is_pair()) return {h.fault};
    return {h.fault, there(chosen_pairs.at(static_cast<std::size_t>(h.pair)).second)};
}

std::vector<std::size_t> stands_as_after(const std::vector<Hypothesis>& all,
                                         std::span<const faults::Remedy> done) {
    const auto is_cured = [&](const faults::Fault& fault) {
        const faults::Remedy remedy = faults::info(fault.cause).remedy;
        return std::find(done.begin(), done.end(), remedy) != done.end();
    };
    const auto nearest_single = [&](const faults::Fault& left) {
        std::size_t best = sound_house(all);
        double least = std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i].is_pair() || all[i].fault.cause != left.cause) continue;
            const double apart = std::abs(all[i].fault.severity - left.severity);
            if (apart >= least) continue;
            least = apart;
            best = i;
        }
        return best;
    };
    std::vector<std::size_t> as(all.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        as[i] = i;
        std::vector<faults::Fault> left = faults_of(all[i]);
        if (std::erase_if(left, is_cured) == 0) continue;
        as[i] = left.empty() ? sound_house(all) : nearest_single(left.front());
    }
    return as;
}

}  // namespace emberpath::scoring
