#include "sim/scoring/comparison.hpp"

#include <algorithm>

#include "sim/scoring/ledger.hpp"

namespace emberpath::scoring {

namespace {

constexpr double still_likely_share = 0.1;
constexpr double ruled_out_below = 0.05;  // of the best class's likelihood for this reading alone

std::vector<std::size_t> likely_lanes(const Posterior& posterior, Class one) {
    double most = 0.0;
    const std::vector<double>& p = posterior.probabilities();
    for (std::size_t i = 0; i < p.size(); ++i)
        if (posterior.class_of()[i] == one.index()) most = std::max(most, p[i]);
    std::vector<std::size_t> lanes;
    for (std::size_t i = 0; i < p.size(); ++i)
        if (posterior.class_of()[i] == one.index() && p[i] >= still_likely_share * most)
            lanes.push_back(i);
    return lanes;
}

std::string predicted_text(worksite::Quantity quantity, std::span<const double> values,
                           const std::vector<std::size_t>& lanes) {
    if (worksite::info(quantity).categorical) {
        std::vector<std::string> words;
        for (const std::size_t i : lanes) {
            std::string word = worksite::text_of(quantity, values[i]);
            if (std::find(words.begin(), words.end(), word) == words.end())
                words.push_back(std::move(word));
        }
        std::string text = words.front();
        for (std::size_t i = 1; i < words.size(); ++i) text += " or " + words[i];
        return text;
    }
    double low = values[lanes.front()];
    double high = low;
    for (const std::size_t i : lanes) {
        low = std::min(low, values[i]);
        high = std::max(high, values[i]);
    }
    const std::string from = worksite::text_of(quantity, low);
    const std::string to = worksite::text_of(quantity, high);
    return from == to ? from : from + " to " + to;
}

Comparison compare_one(const worksite::Observation& seen, int cycle,
                       std::span<const double> predicted, const Posterior& posterior) {
    Comparison row;
    row.number = seen.number;
    row.title = std::string(worksite::info(seen.quantity).title);
    row.shown = worksite::text_of(seen.quantity, seen.value);
    const std::vector<double> likelihood =
        posterior.likelihoods(as_reading(seen, cycle), predicted);
    std::vector<double> of_class;
    for (std::size_t c = 0; c < class_count; ++c) {
        const std::vector<std::size_t> lanes = likely_lanes(posterior, Class::at(c));
        if (lanes.empty()) continue;
        double most = 0.0;
        for (const std::size_t i : lanes) most = std::max(most, likelihood[i]);
        of_class.push_back(most);
        row.cells.push_back({Class::at(c), predicted_text(seen.quantity, predicted, lanes), false});
    }
    const double best = *std::max_element(of_class.begin(), of_class.end());
    for (std::size_t i = 0; i < row.cells.size(); ++i)
        row.cells[i].ruled_out = of_class[i] < ruled_out_below * best;
    return row;
}

}  // namespace

std::vector<Comparison> compare(const Tape& tape, const Shadows& shadows,
                                const Posterior& posterior) {
    std::vector<Comparison> rows;
    for (std::size_t i = 0; i < tape.observations.size(); ++i) {
        const worksite::Observation& seen = tape.observations[i];
        if (seen.number <= 0 || !is_evidence(seen)) continue;
        rows.push_back(compare_one(seen, tape.cycles[i], shadows.observed[i], posterior));
    }
    return rows;
}

}  // namespace emberpath::scoring
