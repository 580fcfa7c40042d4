#include "sim/scoring/inputs.hpp"

#include <algorithm>
#include <numeric>
#include <string>
#include <utility>

#include "sim/math/functions.hpp"
#include "sim/scoring/findings.hpp"
#include "sim/scoring/likelihood.hpp"
#include "sim/scoring/posterior.hpp"

namespace emberpath::scoring {

namespace {

constexpr std::size_t leading_classes = 3;

// The likeliest classes, and the true one where it is none of them.
std::vector<std::size_t> leading(const std::vector<double>& classes, std::size_t true_class) {
    std::vector<std::size_t> order(classes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return classes[a] > classes[b]; });
    order.resize(std::min(order.size(), leading_classes));
    if (std::find(order.begin(), order.end(), true_class) == order.end())
        order.push_back(true_class);
    return order;
}

// No lane: the class cannot occur at the site.
std::size_t likeliest_lane(const Posterior& posterior, std::size_t class_index) {
    const std::vector<double>& p = posterior.probabilities();
    std::size_t best = p.size();
    for (std::size_t i = 0; i < p.size(); ++i)
        if (posterior.class_of()[i] == class_index && (best == p.size() || p[i] > p[best]))
            best = i;
    return best;
}

std::string condition_text(const worksite::Condition& condition) {
    return std::string(controller::phase_name(condition.phase)) +
           (condition.settled ? ", settled" : "") + (condition.spare ? ", spare instrument" : "");
}

/// Half-width as a difference: a temperature's in kelvin, a resistance's as a factor.
std::string scale_text(const Posterior& posterior, const Reading& reading,
                       std::span<const double> predicted, std::size_t lane) {
    const worksite::QuantityInfo& row = worksite::info(reading.quantity);
    if (row.categorical) {
        const Eye eye = eye_for(reading.quantity);
        return percent(predicted[lane] == 0.0 ? 1.0 - eye.imagined : eye.found) + " of looks";
    }
    const double scale = posterior.scale_of(reading, predicted, lane);
    if (row.logarithmic) return "factor " + figure(math::exp(scale), 2);
    return "± " + (is_temperature(reading.quantity) ? figure(scale, 1) + " K"
                                                    : worksite::text_of(reading.quantity, scale));
}

LikelihoodInput input_of(const worksite::Observation& seen, const Reading& reading,
                         std::span<const double> predicted, const Posterior& posterior,
                         std::size_t true_class) {
    LikelihoodInput input;
    input.number = seen.number;
    input.act = seen.act;
    input.title = std::string(worksite::info(seen.quantity).title);
    input.condition = condition_text(seen.condition);
    input.shown = worksite::text_of(seen.quantity, seen.value);
    const std::vector<double> likelihood = posterior.likelihoods(reading, predicted);
    const std::vector<double> classes = posterior.classes();
    double best = 0.0;
    for (const std::size_t c : leading(classes, true_class)) {
        const std::size_t lane = likeliest_lane(posterior, c);
        if (lane == predicted.size()) continue;
        input.under.push_back({Class::at(c), classes[c],
                               worksite::text_of(seen.quantity, predicted[lane]),
                               scale_text(posterior, reading, predicted, lane), likelihood[lane]});
        best = std::max(best, likelihood[lane]);
    }
    for (LikelihoodInput::Under& under : input.under) under.likelihood /= std::max(best, 1.0e-280);
    return input;
}

}  // namespace

std::vector<LikelihoodInput> likelihood_inputs(const PlayedAttempt& played, const Ledger& ledger,
                                               const Shadows& shadows) {
    Posterior posterior(shadows.hypotheses);
    posterior.hear(played.job.customer.complaint, shadows.complaints);
    std::vector<LikelihoodInput> inputs;
    std::vector<std::size_t> groups;
    for (const Step& step : ledger.steps)
        for (std::size_t i = 0; i < step.observation_count && !step.cured_before; ++i) {
            const std::size_t index = step.first_observation + i;
            const worksite::Observation& seen = played.tape.observations[index];
            if (!is_evidence(seen)) continue;
            const Reading reading = as_reading(seen, played.tape.cycles[index]);
            inputs.push_back(input_of(seen, reading, shadows.observed[index], posterior,
                                      played.true_class.index()));
            groups.push_back(posterior.add(reading, shadows.observed[index]));
        }
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const Posterior::Counted counted = posterior.counted(groups[i]);
        inputs[i].exponent = counted.exponent;
        inputs[i].reads = counted.reads;
    }
    return inputs;
}

}  // namespace emberpath::scoring
