#include "sim/scoring/ledger.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <optional>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {

using Kind = worksite::LogEntry::Kind;

constexpr double least_share = 1.0e-6;  // of a class: less is as good as excluded

// What is read before the cure is read to find out, a combustion test as well.
bool is_test(const worksite::LogEntry& entry) {
    return entry.kind == Kind::test || entry.kind == Kind::look || entry.kind == Kind::proof;
}

// Readings that one instrument shows together are paid once; the readout lists its figures one by one.
double book_minutes(const PlayedAttempt& played, const Step& step, SetUps& set_ups) {
    std::array<double, 16> by_tool{};
    double set_up = 0.0;
    for (std::size_t i = 0; i < step.observation_count; ++i) {
        const auto quantity = played.tape.observations[step.first_observation + i].quantity;
        const worksite::QuantityInfo& row = worksite::info(quantity);
        set_up += set_ups.minutes(quantity) - row.minutes;
        set_ups.mark(quantity);
        double& most = by_tool[static_cast<std::size_t>(row.tool)];
        most =
            row.tool == worksite::Tool::readout ? most + row.minutes : std::max(most, row.minutes);
    }
    double total = set_up;
    for (const double minutes : by_tool) total += minutes;
    return total;
}

bool measures_room(const worksite::LogEntry& entry) {
    return std::any_of(entry.observations.begin(), entry.observations.end(), [](const auto& seen) {
        return seen.quantity == worksite::Quantity::room_co;
    });
}

class Keeper {
  public:
    Keeper(const PlayedAttempt& played, Evidence evidence, Until until)
        : played_(played),
          evidence_(std::move(evidence)),
          until_(until),
          stands_as_(stands_as_after(evidence_.shadows().hypotheses, {})) {}

    Ledger keep() {
        Ledger ledger{{}, now().classes(), {}, now(), 0.0, 0.0, {}};
        for (std::size_t act = 0; act < played_.log.size(); ++act)
            ledger.steps.push_back(step(act));
        if (!is_settled()) evidence_.live_until(played_.tape.events.size());
        ledger.end = now().classes();
        ledger.at_cure = cured_by_.has_value() ? *at_cure_ : now();
        ledger.set_ups = set_ups_;
        ledger.cured_by = cured_by_;
        return ledger;
    }

  private:
    [[nodiscard]] bool is_settled() const {
        return until_ == Until::the_cure && cured_by_.has_value();
    }
    [[nodiscard]] const Posterior& now() const { return evidence_.posterior(); }
    [[nodiscard]] std::size_t end_of_mark(std::size_t mark) const {
        return mark + 1 < played_.tape.event_of_mark.size() ? played_.tape.event_of_mark[mark + 1]
                                                            : played_.tape.events.size();
    }

    [[nodiscard]] std::size_t true_class() const { return played_.true_class.index(); }
    void note_separation(Step& s, std::size_t observation) const {
        if (s.cured_before || !is_own_reading(played_.tape.observations[observation])) return;
        const std::vector<double> bits = evidence_.separations(observation);
        s.separation.resize(bits.size(), 0.0);
        for (std::size_t c = 0; c < bits.size(); ++c)
            s.separation[c] = std::max(s.separation[c], bits[c]);
    }

    Step step(std::size_t act) {
        Step s;
        s.act = act;
        s.entry = &played_.log[act];
        const std::size_t mark = played_.mark_of_act[act];
        s.first_observation = played_.tape.marked[mark];
        const std::size_t next = mark + 1 < played_.tape.marks ? played_.tape.marked[mark + 1]
                                                               : played_.tape.observations.size();
        s.observation_count = next - s.first_observation;
        s.cured_before = cured_by_.has_value();
        s.before = now().classes();
        if (!cured_by_.has_value() && (s.entry->kind == Kind::wait || s.entry->remedy >= 0))
            remember(s, cycle_);
        if (!is_settled()) {
            evidence_.live_until(end_of_mark(mark));
            if (s.observation_count > 0) weigh(s, mark);
        }
        if (s.entry->remedy >= 0) remedy(act, static_cast<faults::Remedy>(s.entry->remedy));
        s.after = now().classes();
        return s;
    }

    /// Is it safe to breathe here? Whoever measures that before anything else acts safely and pays nothing for it.
    [[nodiscard]] bool is_first_of_room(const worksite::LogEntry& entry) const {
        return measures_room(entry) && std::none_of(played_.log.data(), &entry, measures_room);
    }

    void remember(Step& s, int cycle) const {
        s.posterior_before = std::make_shared<const Posterior>(now());
        s.set_ups_before = set_ups_;
        s.cycle = cycle;
    }

    void weigh(Step& s, std::size_t mark) {
        for (std::size_t i = 0; i < s.observation_count; ++i)
            s.weighed =
                s.weighed || is_evidence(played_.tape.observations[s.first_observation + i]);
        if (!s.weighed) return;
        const bool charged = is_test(*s.entry) && !s.cured_before && !is_first_of_room(*s.entry);
        cycle_ = played_.tape.cycles[s.first_observation];
        if (charged) {
            remember(s, cycle_);
            s.best = best_option({played_.job, evidence_.shadows(), now(), set_ups_,
                                  &evidence_.shadows().passive[mark], &stands_as_, as_things_stand,
                                  played_.tape.cycles[s.first_observation], played_.threads,
                                  &foreseen()});
        }
        s.book_minutes = book_minutes(played_, s, set_ups_);
        for (std::size_t i = 0; i < s.observation_count; ++i) {
            const std::size_t index = s.first_observation + i;
            const worksite::Observation& seen = played_.tape.observations[index];
            if (!is_evidence(seen)) continue;
            note_separation(s, index);
            const Information expected = evidence_.expected(index);
            s.expected_bits += expected.bits;
            s.expected_variance += expected.variance;
            evidence_.weigh(index);
        }
        s.told_of_truth_bits = log2_of(std::max(now().classes()[true_class()], least_share) /
                                       std::max(s.before[true_class()], least_share));
        evidence_.rest();
        if (!charged) return;
        const double best_rate = std::max(s.best.rate(), s.expected_bits / s.book_minutes);
        const double leading = *std::max_element(s.before.begin(), s.before.end());
        s.charge = test_charge_minutes(s.book_minutes, s.expected_bits, best_rate) *
                   confirmation_factor(leading);
    }

    void remedy(std::size_t act, faults::Remedy done) {
        done_.push_back(done);
        stands_as_ = stands_as_after(evidence_.shadows().hypotheses, done_);
        foreseen_.reset();
        if (cured_by_.has_value() || !needs(played_.true_class, done)) return;
        for (const faults::Remedy needed : remedies_of(played_.true_class))
            if (std::find(done_.begin(), done_.end(), needed) == done_.end()) return;
        cured_by_ = act;
        at_cure_ = std::make_unique<Posterior>(now());
    }

    const Foreseen& foreseen() {
        if (!foreseen_.has_value())
            foreseen_.emplace(played_.job, evidence_.shadows(), now(), &stands_as_);
        return *foreseen_;
    }

    const PlayedAttempt& played_;
    Evidence evidence_;
    Until until_;
    std::unique_ptr<Posterior> at_cure_;
    std::vector<faults::Remedy> done_;
    std::vector<std::size_t> stands_as_;
    std::optional<Foreseen> foreseen_;  // as the lanes stand now
    SetUps set_ups_;
    int cycle_ = -1;  // demand cycle of the last reading
    std::optional<std::size_t> cured_by_;
};

/// What work by the book waits for at one go: a place aired, water cooled, a regulator watched. Chosen.
constexpr double longest_needed_wait_minutes = 10.0;

// A wait is paid by the readings that follow it, as far as they were worth more than they cost; for safety and proof it
// is free as long as they may need it.
void charge_idling(std::vector<Step>& steps) {
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (steps[i].entry->kind != Kind::wait || steps[i].cured_before) continue;
        const auto ticks = steps[i].entry->end_tick - steps[i].entry->begin_tick;
        double left = static_cast<double>(ticks) / 600.0;
        bool is_needed = false;
        for (std::size_t k = i + 1; k < steps.size(); ++k) {
            const Kind next = steps[k].entry->kind;
            if (next == Kind::wait || steps[k].entry->remedy >= 0) break;
            is_needed = is_needed || next == Kind::safety || next == Kind::proof ||
                        measures_room(*steps[k].entry);
            const double rate = std::max(steps[k].best.rate(), 1.0e-9);
            if (steps[k].weighed)
                left -= std::max(0.0, 2.0 * steps[k].expected_bits / rate - steps[k].book_minutes);
        }
        if (is_needed) left -= longest_needed_wait_minutes;
        steps[i].idle_minutes = std::max(0.0, left);
    }
}

/// What a finished job is proved by: proof itself, hot water, the word on the display.
bool proves_the_work(const PlayedAttempt& played, const Step& step) {
    using worksite::Quantity;
    if (step.entry->kind == Kind::proof) return true;
    const auto first =
        played.tape.observations.begin() + static_cast<std::ptrdiff_t>(step.first_observation);
    return std::all_of(first, first + static_cast<std::ptrdiff_t>(step.observation_count),
                       [](const worksite::Observation& seen) {
                           return seen.quantity == Quantity::tap_temperature ||
                                  seen.quantity == Quantity::display_word;
                       });
}

// Where the cure is words, proof is worth the same before them as after them; so is a wait that it needs.
void spare_last_proof(const PlayedAttempt& played, Ledger& ledger) {
    const auto works = [](const Step& step) {
        return step.entry->remedy >= 0 &&
               !is_handed_on(static_cast<faults::Remedy>(step.entry->remedy));
    };
    if (!ledger.cured_by || works(ledger.steps[*ledger.cured_by])) return;
    bool proof_follows = false;
    for (std::size_t i = *ledger.cured_by; i-- > 0;) {
        Step& step = ledger.steps[i];
        if (works(step) || (step.weighed && !proves_the_work(played, step))) return;
        proof_follows = proof_follows || step.weighed || step.entry->kind == Kind::proof;
        step.charge = 0.0;
        if (proof_follows)
            step.idle_minutes = std::max(0.0, step.idle_minutes - longest_needed_wait_minutes);
    }
}

}  // namespace

Ledger keep_ledger(const PlayedAttempt& played, Evidence evidence, Until until) {
    Ledger ledger = Keeper(played, std::move(evidence), until).keep();
    charge_idling(ledger.steps);
    spare_last_proof(played, ledger);
    for (const Step& step : ledger.steps) {
        ledger.test_charge += step.charge;
        ledger.idle_charge += step.idle_minutes;
    }
    return ledger;
}

}  // namespace emberpath::scoring
