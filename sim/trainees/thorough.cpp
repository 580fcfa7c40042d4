#include "sim/trainees/thorough.hpp"

#include <algorithm>
#include <optional>
#include <set>

#include "sim/trainees/ways.hpp"

namespace emberpath::trainees {

namespace {

using worksite::Quantity;

constexpr double too_little_bits = 0.01;  // as the scorer has it
constexpr int most_further_readings = 40;

/// What somebody may think who has only heard the complaint.
class AtArrival {
  public:
    explicit AtArrival(const Visit& visit)
        : shadows_(visit.at_arrival().shadows()),
          posterior_(shadows_.hypotheses),
          mode_count_(scoring::modes(visit.job()).size()) {
        posterior_.hear(visit.job().customer.complaint, shadows_.complaints);
    }
    /// Nothing where it tells next to nothing in any.
    [[nodiscard]] std::optional<std::size_t> most_telling_mode(Quantity quantity) const {
        std::optional<std::size_t> best;
        double most = too_little_bits;
        for (std::size_t m = 0; m < mode_count_; ++m) {
            const auto predicted = shadows_.signatures[m].of(quantity);
            const scoring::Option option{quantity, m};
            const double bits = posterior_.most_bits(predicted) <= most
                                    ? 0.0
                                    : posterior_.expected_bits(reading_of(option), predicted);
            if (bits <= most) continue;
            most = bits;
            best = m;
        }
        return best;
    }

  private:
    const scoring::Shadows& shadows_;
    scoring::Posterior posterior_;
    std::size_t mode_count_;
};

void read_what_was_left_out(Hands& hands) {
    const AtArrival open_mind(hands.visit());
    std::set<Plan> left_out;
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        if (!can_be_taken(quantity, hands.visit().job())) continue;
        if (const auto mode = open_mind.most_telling_mode(quantity))
            left_out.insert({*mode, quantity});
    }
    std::optional<std::size_t> in;
    for (const Plan& plan : left_out) {  // one operating state after the other
        if (hands.latest(plan.second) != nullptr) continue;
        if (in != plan.first) hands.manometer_away();
        in = plan.first;
        hands.take(plan.first, plan.second);
    }
    hands.manometer_away();
}

void read_what_still_tells(Hands& hands) {
    Belief belief(hands.visit());
    std::set<Plan> done;
    scoring::SetUps set_ups;
    for (int i = 0; i < most_further_readings && !hands.visit().over(); ++i) {
        const auto choice = belief.next(done, set_ups, hands.mode());
        if (choice.bits <= 0.0) break;
        hands.take(choice.plan.first, choice.plan.second);
        done.insert(choice.plan);
        set_ups.mark(choice.plan.second);
        belief.update();
    }
    hands.manometer_away();
}

}  // namespace

void read_all_reasonable(Hands& hands) {
    hands.arrive();
    read_whole_checklist(hands);
    hands.manometer_away();
    read_what_was_left_out(hands);
    hands.look_round();
    hands.test_draught_with_air();
    hands.watch_lock_up();
    read_what_still_tells(hands);
}

}  // namespace emberpath::trainees
