#include "sim/scoring/neighbours.hpp"

#include <algorithm>
#include <cmath>

#include "sim/scoring/likelihood.hpp"

namespace emberpath::scoring {

namespace {

using worksite::Quantity;

bool in_one_regime(const Snapshot& signature, std::size_t a, std::size_t b) {
    constexpr std::array words{Quantity::display_word, Quantity::readout_event,
                               Quantity::readout_phase};
    return std::all_of(words.begin(), words.end(), [&](Quantity word) {
        return signature.of(word)[a] == signature.of(word)[b];
    });
}

/// Does this shadow stand for one of the faults, alone or as the pair that they are?
bool stands_for(const Hypothesis& h, std::span<const faults::Fault> faults) {
    const auto like = [&](const faults::Fault& fault) {
        return fault.cause == h.fault.cause && (fault.severity < 0.0) == (h.fault.severity < 0.0);
    };
    return std::any_of(faults.begin(), faults.end(), like) &&
           (!h.is_pair() || class_of(faults) == class_of(h));
}

void widen(const worksite::Job& job, const Snapshot& signature, std::size_t mode, std::size_t a,
           std::size_t b, Gap& gap) {
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        if (!can_be_proposed(quantity, job) || worksite::info(quantity).categorical) continue;
        const auto values = signature.of(quantity);
        const double widths = widths_apart(quantity, values[a], values[b]);
        if (widths <= gap.widths) continue;
        gap.widths = widths;
        gap.quantity = quantity;
        gap.mode = mode;
    }
}

}  // namespace

double widths_apart(Quantity quantity, double a, double b) {
    const double share = draw_spread_share(quantity);
    const auto variance = [&](double value) {
        Width width = width_of(quantity, value);
        width.spread = worksite::info(quantity).logarithmic ? share : share * std::abs(value);
        return width.scale(1) * width.scale(1);
    };
    return std::abs(on_scale(quantity, a) - on_scale(quantity, b)) /
           std::sqrt(variance(a) + variance(b));
}

std::vector<Gap> gaps_between(const worksite::Job& job, const Shadows& shadows,
                              std::span<const faults::Fault> faults) {
    std::vector<Gap> gaps;
    const std::vector<Hypothesis>& all = shadows.hypotheses;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].upper < 0 || !stands_for(all[i], faults)) continue;
        const auto next = static_cast<std::size_t>(all[i].upper);
        Gap gap{all[i].fault, all[next].fault, all[i].is_pair()};
        for (std::size_t m = 0; m < shadows.signatures.size(); ++m)
            if (in_one_regime(shadows.signatures[m], i, next))
                widen(job, shadows.signatures[m], m, i, next, gap);
        gaps.push_back(gap);
    }
    return gaps;
}

}  // namespace emberpath::scoring
