#include "sim/trainees/belief.hpp"

#include <algorithm>
#include <array>

#include "sim/scoring/glance.hpp"

namespace emberpath::trainees {

namespace {

using worksite::Quantity;

constexpr double too_little_bits = 0.01;

}  // namespace

Belief::Belief(const Visit& visit) : Belief(visit, nullptr) {}

Belief::Belief(const Visit& visit, const Arrived& lived)
    : visit_(visit),
      bank_(std::make_shared<scoring::Bank>(lived != nullptr ? *lived : visit.at_arrival())),
      evidence_(*bank_, visit.tape(), visit.job().customer.complaint) {
    update();
}

void Belief::update() {
    const scoring::Tape& tape = visit_.tape();
    // Act by act, so that what the earlier readings exclude need not live through the later acts.
    for (; acts_ < tape.marks; ++acts_) {
        const bool last = acts_ + 1 == tape.marks;
        evidence_.live_until(last ? tape.events.size() : tape.event_of_mark[acts_ + 1]);
        const auto end = last ? tape.observations.size() : tape.marked[acts_ + 1];
        for (; weighed_ < end; ++weighed_)
            if (scoring::is_evidence(tape.observations[weighed_])) evidence_.weigh(weighed_);
        evidence_.rest();
    }
    if (!tape.cycles.empty()) cycle_ = tape.cycles.back();
    done_.clear();
    for (const auto& entry : visit_.log())
        if (entry.remedy >= 0) done_.push_back(static_cast<faults::Remedy>(entry.remedy));
    stands_as_ = scoring::stands_as_after(evidence_.posterior().hypotheses(), done_);
}

scoring::Class Belief::likeliest() const {
    return scoring::likeliest(classes());
}

faults::Remedy Belief::leading() const {
    const auto needed = scoring::remedies_of(likeliest());
    const auto open = std::find_if(needed.begin(), needed.end(), [&](faults::Remedy one) {
        return std::find(done_.begin(), done_.end(), one) == done_.end();
    });
    return open != needed.end() ? *open : needed.front();
}

double Belief::leading_probability() const {
    return scoring::needing(classes(), leading());
}

std::optional<faults::Cause> Belief::beside_leading() const {
    for (const faults::Remedy one : scoring::remedies_of(likeliest()))
        if (one != leading()) return cause_of(one);
    return std::nullopt;
}

scoring::Situation Belief::here(const scoring::SetUps& set_ups) const {
    scoring::Situation at{visit_.job(), bank_->shadows(), evidence_.posterior(), set_ups};
    at.stands_as = &stands_as_;
    return at;
}

faults::Cause Belief::cause_of(faults::Remedy remedy) const {
    std::array<double, faults::cause_count> of_cause{};
    const auto& all = evidence_.posterior().hypotheses();
    for (std::size_t i = 0; i < all.size(); ++i)
        for (const faults::Fault& fault : scoring::faults_of(all[i]))
            if (faults::info(fault.cause).remedy == remedy)
                of_cause[static_cast<std::size_t>(fault.cause)] +=
                    evidence_.posterior().probabilities()[i];
    return static_cast<faults::Cause>(std::max_element(of_cause.begin(), of_cause.end()) -
                                      of_cause.begin());
}

/// Every reading that could be taken and was not yet, with its minutes.
template <class Weigh>
void Belief::for_each_choice(const std::set<Plan>& done, const scoring::SetUps& set_ups,
                             std::size_t in_mode, Weigh weigh) const {
    const auto all = scoring::modes(visit_.job());
    for (std::size_t m = 0; m < all.size(); ++m)
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const Plan plan{m, static_cast<Quantity>(q)};
            if (done.contains(plan) || !can_be_taken(plan.second, visit_.job())) continue;
            Choice choice{plan, 0.0, set_ups.minutes(plan.second)};
            if (m != in_mode) choice.minutes += all[m].minutes;
            weigh(choice);
        }
}

Belief::Choice Belief::next(const std::set<Plan>& done, const scoring::SetUps& set_ups,
                            std::size_t in_mode) const {
    Choice best;
    const scoring::Situation at = here(set_ups);
    for_each_choice(done, set_ups, in_mode, [&](Choice choice) {
        const auto predicted = scoring::signature(at, choice.plan.first, choice.plan.second);
        const auto is_beaten = [&](double bits) {
            return bits < too_little_bits || bits / choice.minutes <= best.rate();
        };
        const scoring::Posterior& posterior = evidence_.posterior();
        const scoring::Reading reading = reading_of(choice.plan, in_mode);
        if (is_beaten(posterior.most_bits(predicted))) return;
        if (is_beaten(posterior.closer_most_bits(reading, predicted))) return;
        choice.bits = posterior.expected_bits(reading, predicted);
        if (choice.bits >= too_little_bits && choice.rate() > best.rate()) best = choice;
    });
    return best;
}

scoring::Reading Belief::reading_of(const Plan& plan, std::size_t in_mode) const {
    scoring::Reading reading;
    reading.quantity = plan.second;
    reading.condition.epoch = 0xffff0000U + static_cast<std::uint32_t>(plan.first);
    reading.cycle = plan.first == in_mode ? cycle_ : -1 - static_cast<int>(plan.first);
    return reading;
}

double Belief::separation(const Plan& plan, scoring::Class one, std::size_t in_mode) const {
    const scoring::SetUps unused;
    const scoring::Situation at = here(unused);
    const std::array of{one.index()};
    return evidence_.posterior()
        .separation_bits(reading_of(plan, in_mode), scoring::signature(at, plan.first, plan.second),
                         of)
        .front();
}

Belief::Choice Belief::confirming(faults::Remedy remedy, double least, const std::set<Plan>& done,
                                  const scoring::SetUps& set_ups, std::size_t in_mode) const {
    Choice best;
    for_each_choice(done, set_ups, in_mode, [&](Choice choice) {
        if (scoring::tells_controller_state(choice.plan.second)) return;
        choice.bits = separation(choice.plan, remedy, in_mode);
        if (choice.bits >= least && choice.rate() > best.rate()) best = choice;
    });
    return best;
}

bool can_be_taken(worksite::Quantity quantity, const worksite::Job& job) {
    switch (quantity) {
        case Quantity::flame_current:               // the readout shows the same for less
        case Quantity::exchanger_pipe_temperature:  // behind the cover, while it burns
        case Quantity::manifold_pressure:           // likewise
        case Quantity::terminal_volts:              // behind the cover, live
        case Quantity::active_earth_volts:
        case Quantity::neutral_earth_volts:
        case Quantity::rail_volts:
        case Quantity::valve_volts:
        case Quantity::link_volts:
        case Quantity::link_heater_volts:
        case Quantity::earth_ohms:  // behind the cover, plugged in
        case Quantity::safety_switch_current:
        case Quantity::air_tube_pressure:
        case Quantity::air_tube_needle:
        case Quantity::spark_path:
            return false;
        default:
            return scoring::can_be_proposed(quantity, job);
    }
}

}  // namespace emberpath::trainees
