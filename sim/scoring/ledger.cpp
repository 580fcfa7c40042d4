#include "sim/scoring/ledger.hpp"

#include <algorithm>
#include <array>
#include <memory>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {

using Kind = worksite::LogEntry::Kind;

constexpr double least_watch_s = 1.0;

bool is_test(const worksite::LogEntry& entry) {
    return entry.kind == Kind::test || entry.kind == Kind::look;
}

// Readings that come from one instrument at one instant are paid once.
double book_minutes(const PlayedAttempt& played, const Step& step, SetUps& set_ups) {
    std::array<double, 16> by_tool{};
    double set_up = 0.0;
    for (std::size_t i = 0; i < step.observation_count; ++i) {
        const auto quantity = played.tape.observations[step.first_observation + i].quantity;
        const worksite::QuantityInfo& row = worksite::info(quantity);
        set_up += set_ups.minutes(quantity) - row.minutes;
        set_ups.mark(quantity);
        double& most = by_tool[static_cast<std::size_t>(row.tool)];
        most = std::max(most, row.minutes);
    }
    double total = set_up;
    for (const double minutes : by_tool) total += minutes;
    return total;
}

class Keeper {
  public:
    Keeper(const PlayedAttempt& played, const Shadows& shadows)
        : played_(played), shadows_(shadows), posterior_(shadows.hypotheses) {
        posterior_.hear(played.job.customer.complaint, shadows.complaints);
        cured_.assign(shadows.hypotheses.size(), false);
    }

    Ledger keep() {
        Ledger ledger{{}, posterior_.classes(), {}, posterior_, 0.0, 0.0};
        for (std::size_t act = 0; act < played_.log.size(); ++act)
            ledger.steps.push_back(step(act));
        ledger.end = posterior_.classes();
        ledger.at_cure = cured_true_ ? *at_cure_ : posterior_;
        for (const Step& s : ledger.steps) ledger.test_charge += s.charge;
        return ledger;
    }

  private:
    Step step(std::size_t act) {
        Step s;
        s.act = act;
        s.entry = &played_.log[act];
        const std::size_t mark = played_.mark_of_act[act];
        s.first_observation = played_.tape.marked[mark];
        const std::size_t next = mark + 1 < played_.tape.marks ? played_.tape.marked[mark + 1]
                                                               : played_.tape.observations.size();
        s.observation_count = next - s.first_observation;
        s.cured_before = cured_true_;
        s.before = posterior_.classes();
        if (s.observation_count > 0) weigh(s, mark);
        if (s.entry->remedy >= 0) remedy(static_cast<faults::Remedy>(s.entry->remedy));
        s.after = posterior_.classes();
        return s;
    }

    void weigh(Step& s, std::size_t mark) {
        for (std::size_t i = 0; i < s.observation_count; ++i)
            s.weighed =
                s.weighed || is_evidence(played_.tape.observations[s.first_observation + i]);
        if (!s.weighed) return;
        const bool charged = is_test(*s.entry) && !s.cured_before;
        if (charged)
            s.best =
                best_option({played_.job, shadows_, posterior_, set_ups_, &shadows_.passive[mark],
                             &cured_, as_things_stand, played_.tape.cycles[s.first_observation]});
        s.book_minutes = book_minutes(played_, s, set_ups_);
        for (std::size_t i = 0; i < s.observation_count; ++i) {
            const std::size_t index = s.first_observation + i;
            const worksite::Observation& seen = played_.tape.observations[index];
            if (!is_evidence(seen)) continue;
            const Reading reading = as_reading(seen, played_.tape.cycles[index]);
            s.expected_bits += posterior_.expected_bits(reading, shadows_.observed[index]);
            posterior_.add(reading, shadows_.observed[index]);
        }
        if (!charged) return;
        const double best_rate = std::max(s.best.rate(), s.expected_bits / s.book_minutes);
        const double leading = *std::max_element(s.before.begin(), s.before.end());
        s.charge = test_charge_minutes(s.book_minutes, s.expected_bits, best_rate) *
                   confirmation_factor(leading);
    }

    void remedy(faults::Remedy done) {
        if (done == played_.true_class && !cured_true_) {
            cured_true_ = true;
            at_cure_ = std::make_unique<Posterior>(posterior_);
        }
        for (std::size_t i = 0; i < cured_.size(); ++i)
            if (shadows_.hypotheses[i].remedy == done) cured_[i] = true;
    }

    const PlayedAttempt& played_;
    const Shadows& shadows_;
    Posterior posterior_;
    std::unique_ptr<Posterior> at_cure_;
    std::vector<bool> cured_;
    SetUps set_ups_;
    bool cured_true_ = false;
};

// A wait is paid by the readings that follow it, as far as they were worth more than they cost.
bool measures_room(const worksite::LogEntry& entry) {
    return std::any_of(entry.observations.begin(), entry.observations.end(), [](const auto& seen) {
        return seen.quantity == worksite::Quantity::room_co;
    });
}

double idle_minutes(const std::vector<Step>& steps) {
    double idle = 0.0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (steps[i].entry->kind != Kind::wait || steps[i].cured_before) continue;
        const auto ticks = steps[i].entry->end_tick - steps[i].entry->begin_tick;
        double left = static_cast<double>(ticks) / 600.0;
        for (std::size_t k = i + 1; k < steps.size(); ++k) {
            const Kind next = steps[k].entry->kind;
            if (next == Kind::wait || steps[k].entry->remedy >= 0) break;
            if (next == Kind::safety || next == Kind::proof || measures_room(*steps[k].entry))
                left = 0.0;  // a wait that safety or proof needs is no idling
            const double rate = std::max(steps[k].best.rate(), 1.0e-9);
            if (steps[k].weighed)
                left -= std::max(0.0, 2.0 * steps[k].expected_bits / rate - steps[k].book_minutes);
        }
        idle += std::max(0.0, left);
    }
    return idle;
}

}  // namespace

bool is_evidence(const worksite::Observation& observation) {
    using Q = worksite::Quantity;
    switch (observation.quantity) {
        case Q::complaint_heard:
        case Q::room_co:
        case Q::terminal_volts:
        case Q::readout_phase:
            return false;
        case Q::spark:
            return observation.value > 0.5 || observation.watched_s >= least_watch_s;
        default:
            return true;
    }
}

Reading as_reading(const worksite::Observation& observation, int cycle) {
    return {observation.quantity, observation.hold, observation.condition,
            observation.value,    observation.tick, cycle};
}

Ledger keep_ledger(const PlayedAttempt& played, const Shadows& shadows) {
    Ledger ledger = Keeper(played, shadows).keep();
    ledger.idle_charge = idle_minutes(ledger.steps);
    return ledger;
}

}  // namespace emberpath::scoring
