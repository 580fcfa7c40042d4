#include "sim/scoring/evidence.hpp"

#include <algorithm>

#include "sim/scoring/glance.hpp"

namespace emberpath::scoring {

namespace {

constexpr double least_watch_s = 1.0;
constexpr double matters_above = 0.01;

}  // namespace

Evidence::Evidence(Bank& bank, const Tape& tape, worksite::Complaint heard)
    : bank_(&bank),
      shadows_(&bank.shadows()),
      tape_(&tape),
      heard_(heard),
      posterior_(bank.shadows().hypotheses) {
    posterior_.hear(heard, shadows_->complaints);
}

Evidence::Evidence(const Shadows& shadows, const Tape& tape, worksite::Complaint heard,
                   double width_factor)
    : bank_(nullptr),
      shadows_(&shadows),
      tape_(&tape),
      heard_(heard),
      posterior_(shadows.hypotheses, width_factor) {
    posterior_.hear(heard, shadows_->complaints);
}

void Evidence::live_until(std::size_t event) {
    at_ = std::max(at_, event);
    if (bank_ != nullptr) bank_->live_until(*tape_, event);
}

void Evidence::add(std::size_t observation) {
    posterior_.add(as_reading(tape_->observations[observation], tape_->cycles[observation]),
                   shadows_->observed[observation]);
}

void Evidence::weigh(std::size_t observation) {
    add(observation);
    weighed_.push_back(observation);
}

Information Evidence::expected(std::size_t observation) const {
    return posterior_.expected_information(
        as_reading(tape_->observations[observation], tape_->cycles[observation]),
        shadows_->observed[observation]);
}

std::vector<double> Evidence::separations(std::size_t observation) const {
    const Reading reading =
        as_reading(tape_->observations[observation], tape_->cycles[observation]);
    const std::vector<double> probability = posterior_.classes();
    // What hardly anybody would have thought of counts when this reading brings it up.
    Posterior after = posterior_;
    after.add(reading, shadows_->observed[observation]);
    const std::vector<double> raised = after.classes();
    std::vector<std::size_t> open;
    for (std::size_t c = 0; c < probability.size(); ++c)
        if (std::max(probability[c], raised[c]) >= matters_above) open.push_back(c);
    const std::vector<double> of_open =
        posterior_.separation_bits(reading, shadows_->observed[observation], open);
    std::vector<double> bits(probability.size(), 0.0);
    for (std::size_t i = 0; i < open.size(); ++i) bits[open[i]] = of_open[i];
    return bits;
}

// The total of its cause and sign, for each lane.
std::vector<double> Evidence::cause_totals() const {
    const std::vector<double>& p = posterior_.probabilities();
    const std::vector<std::size_t> family = representatives(posterior_.hypotheses());
    std::vector<double> totals(p.size(), 0.0);
    for (std::size_t i = 0; i < p.size(); ++i) totals[family[i]] += p[i];
    for (std::size_t i = 0; i < p.size(); ++i) totals[i] = totals[family[i]];
    return totals;
}

// A neighbour of a shadow that matters says how wide that one expects a reading.
bool Evidence::is_excluded(std::size_t lane) const {
    const Hypothesis& h = posterior_.hypotheses()[lane];
    const std::vector<double>& p = posterior_.probabilities();
    const auto matters = [&](int other) {
        return other >= 0 && p[static_cast<std::size_t>(other)] >= shadow_sleeps_below;
    };
    return !matters(static_cast<int>(lane)) && !matters(h.lower) && !matters(h.upper);
}

void Evidence::rest() {
    // Who goes over what the bank has lived through before must not wake what later readings excluded.
    if (bank_ == nullptr || bank_->lived() > at_) return;
    const std::vector<double> totals = cause_totals();
    const std::vector<double>& own = posterior_.probabilities();
    std::vector<bool> excluded, matters;
    for (std::size_t i = 0; i < own.size(); ++i) {
        excluded.push_back(is_excluded(i));
        matters.push_back(totals[i] > cause_wakes_above && own[i] > shadow_wakes_above);
    }
    if (bank_->wake(*tape_, matters)) {
        posterior_ = Posterior(shadows_->hypotheses);
        posterior_.hear(heard_, shadows_->complaints);
        for (const std::size_t observation : weighed_) add(observation);
        return;
    }
    bank_->let_sleep(excluded);
}

bool is_evidence(const worksite::Observation& observation) {
    using Q = worksite::Quantity;
    switch (observation.quantity) {
        case Q::complaint_heard:
        case Q::gas_in_air:
        case Q::readout_phase:
            return false;
        case Q::spark:
            return observation.value > 0.5 || observation.watched_s >= least_watch_s;
        default:
            return true;
    }
}

bool is_own_reading(const worksite::Observation& observation) {
    return is_evidence(observation) && !tells_controller_state(observation.quantity);
}

Reading as_reading(const worksite::Observation& observation, int cycle) {
    return {observation.quantity,    observation.hold, observation.condition,
            observation.value,       observation.tick, cycle,
            observation.beyond_class};
}

}  // namespace emberpath::scoring
