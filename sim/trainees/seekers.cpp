// Ways of working that read first and decide afterwards, by what their own shadows make of the readings.

#include <algorithm>
#include <array>
#include <optional>

#include "sim/scoring/findings.hpp"
#include "sim/scoring/glance.hpp"
#include "sim/trainees/ways.hpp"

namespace emberpath::trainees {

namespace {

using worksite::Quantity;

constexpr double likely_enough = 0.95;
constexpr double clearly_confirming = 0.3;  // of 1: with a margin over what the scorer asks
constexpr int most_readings = 60;  // a figure of the readout is one: it is the minutes that end it
constexpr double most_minutes = 75.0;

std::size_t acts_done(Hands& hands) {
    return hands.visit().acts().size();
}

Decision decide(Hands& hands, const Belief& belief) {
    return {belief.cause_of(belief.leading()), acts_done(hands), belief.lived(), nullptr,
            belief.beside_leading()};
}

bool of_the_analyser(Quantity quantity) {
    return worksite::info(quantity).tool == worksite::Tool::analyser;
}

// One look at the analyser or into the burner window shows several things at once.
void note_taken(const Plan& plan, std::set<Plan>& done, scoring::SetUps& set_ups) {
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto other = static_cast<Quantity>(q);
        const auto eye = [](Quantity one) {
            return one == Quantity::spark || one == Quantity::flame;
        };
        const bool same = other == plan.second ||
                          (of_the_analyser(other) && of_the_analyser(plan.second)) ||
                          (eye(other) && eye(plan.second));
        if (!same) continue;
        done.insert({plan.first, other});
        set_ups.mark(other);
    }
}

// What was told of each class by a reading of one's own: what the heater says of itself confirms nothing.
class Confirmed {
  public:
    void note(const Belief& belief, const Plan& plan, std::size_t in_mode) {
        if (scoring::tells_controller_state(plan.second)) return;
        const auto classes = belief.classes();
        for (std::size_t c = 0; c < classes.size(); ++c)
            if (classes[c] >= worth_confirming)
                best_[c] =
                    std::max(best_[c], belief.separation(plan, scoring::Class::at(c), in_mode));
    }
    [[nodiscard]] bool has(faults::Remedy remedy) const {
        for (std::size_t c = 0; c < best_.size(); ++c)
            if (best_[c] >= scoring::confirming_bits && needs(scoring::Class::at(c), remedy))
                return true;
        return false;
    }

  private:
    static constexpr double worth_confirming = 0.05;
    std::array<double, scoring::class_count> best_{};
};

struct Row {
    std::size_t mode;
    Quantity quantity;
    enum { asked, passed_over, standing_instead } where_nothing_burns = asked;
};
constexpr std::array usual{
    Row{0, Quantity::display_word},
    Row{0, Quantity::readout_event},
    Row{0, Quantity::readout_outlet},
    Row{0, Quantity::readout_inlet},
    Row{0, Quantity::flue_terminal},
    Row{0, Quantity::cylinder_frost},
    Row{0, Quantity::cylinder_mass},
    Row{3, Quantity::flame},
    Row{1, Quantity::flame},
    Row{1, Quantity::readout_flame, Row::passed_over},
    Row{1, Quantity::tap_temperature, Row::passed_over},
    Row{2, Quantity::fan_sound, Row::passed_over},
    Row{2, Quantity::tap_temperature, Row::passed_over},
    Row{2, Quantity::readout_outlet, Row::passed_over},
    Row{2, Quantity::outlet_pipe_temperature, Row::passed_over},
    Row{2, Quantity::readout_flow},
    Row{2, Quantity::readout_flame, Row::passed_over},
    Row{2, Quantity::readout_correction, Row::passed_over},
    Row{2, Quantity::readout_air_trim, Row::passed_over},
    Row{2, Quantity::flue_co, Row::passed_over},
    Row{2, Quantity::gas_inlet_pressure, Row::standing_instead},
    Row{2, Quantity::regulator_pressure, Row::standing_instead},
    Row{0, Quantity::outlet_ohms},
    Row{0, Quantity::electrode_tip},
    Row{0, Quantity::exchanger_fins},
};

// What the list has to say of a burner that runs is passed over where none does, and pressures are read standing.
std::optional<Plan> asked_by(const Row& row, bool burns) {
    if (burns || row.where_nothing_burns == Row::asked) return Plan{row.mode, row.quantity};
    if (row.where_nothing_burns == Row::passed_over) return std::nullopt;
    return Plan{0, row.quantity};
}

bool seen_without_flame(const Hands& hands) {
    return hands.latest_word(Quantity::flame) == worksite::category_word(Quantity::flame, 0);
}

bool is_found(const Belief& belief, const Confirmed& confirmed) {
    return belief.leading_probability() >= likely_enough && confirmed.has(belief.leading());
}

// Until the likeliest class is likely enough and confirmed by measuring or inspecting, before any remedy.
Decision go_on_by_information(Hands& hands, Belief belief, std::set<Plan> done,
                              Confirmed confirmed = {}) {
    scoring::SetUps set_ups;
    bool looked_round = false;
    for (int i = 0; i < most_readings; ++i) {
        if (is_found(belief, confirmed)) break;
        const bool likely = belief.leading_probability() >= likely_enough;
        if (hands.visit().minutes() > most_minutes || hands.visit().over()) break;
        const auto choice = likely ? belief.confirming(belief.leading(), clearly_confirming, done,
                                                       set_ups, hands.mode())
                                   : belief.next(done, set_ups, hands.mode());
        if (choice.bits <= 0.0 && !looked_round) {
            hands.look_round();
            belief.update();
            looked_round = true;
            continue;
        }
        if (choice.bits <= 0.0) break;
        confirmed.note(belief, choice.plan, hands.mode());
        hands.take(choice.plan.first, choice.plan.second);
        note_taken(choice.plan, done, set_ups);
        belief.update();
    }
    return decide(hands, belief);
}

}  // namespace

Decision find_by_information(Hands& hands) {
    hands.arrive();
    return go_on_by_information(hands, Belief(hands.visit()), {{0, Quantity::display_word}});
}

Decision look_again(Hands& hands, const Decision& before) {
    Belief belief(hands.visit(), before.lived);
    if (belief.cause_of(belief.leading()) == before.cause) return decide(hands, belief);
    return go_on_by_information(hands, std::move(belief), {});
}

Decision find_by_symptom(Hands& hands) {
    hands.arrive();
    read_by_symptom(hands);
    return go_on_by_information(hands, Belief(hands.visit()), {{0, Quantity::display_word}});
}

// Down the list until it is found; what the list leaves open, by information.
Decision find_by_checklist(Hands& hands) {
    hands.arrive();
    Belief belief(hands.visit());
    Confirmed confirmed;
    std::set<Plan> done{{0, Quantity::display_word}};
    scoring::SetUps unused;
    for (const Row& row : usual) {
        const auto plan = asked_by(row, !seen_without_flame(hands));
        if (!plan || !can_be_taken(row.quantity, hands.visit().job()) || done.contains(*plan))
            continue;
        if (is_found(belief, confirmed)) return decide(hands, belief);
        confirmed.note(belief, *plan, hands.mode());
        hands.take(plan->first, plan->second);
        note_taken(*plan, done, unused);
        belief.update();
    }
    return go_on_by_information(hands, std::move(belief), done, confirmed);
}

void read_whole_checklist(Hands& hands) {
    for (const Row& row : usual)
        if (can_be_taken(row.quantity, hands.visit().job())) hands.take(row.mode, row.quantity);
}

Decision find_by_everything(Hands& hands) {
    hands.arrive();
    const auto all = scoring::modes(hands.visit().job());
    for (std::size_t m = 0; m < all.size(); ++m) {
        std::set<Plan> done;
        scoring::SetUps unused;
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const Plan plan{m, static_cast<Quantity>(q)};
            if (!can_be_taken(plan.second, hands.visit().job()) || done.contains(plan)) continue;
            hands.take(m, plan.second);
            note_taken(plan, done, unused);
        }
        hands.manometer_away();
    }
    hands.look_round();
    return decide(hands, Belief(hands.visit()));
}

// A beginner who reads what comes to mind, then picks a cause about as often as it is likely.
Decision find_at_random(Hands& hands, math::Random& random) {
    hands.arrive();
    const auto count = 2 + static_cast<int>(random.uniform() * 5.0);
    for (int taken = 0; taken < count && !hands.visit().over();) {
        const auto mode = static_cast<std::size_t>(random.uniform() * 4.0);
        const auto quantity =
            static_cast<Quantity>(random.uniform() * static_cast<double>(worksite::quantity_count));
        if (!can_be_taken(quantity, hands.visit().job())) continue;
        hands.take(mode, quantity);
        ++taken;
    }
    const Belief belief(hands.visit());
    const auto classes = belief.classes();
    double left = random.uniform();
    for (std::size_t i = 0; i < classes.size(); ++i) {
        left -= classes[i];
        if (left < 0.0)
            return {belief.cause_of(scoring::remedies_of(scoring::Class::at(i)).front()),
                    acts_done(hands), belief.lived()};
    }
    return decide(hands, belief);
}

}  // namespace emberpath::trainees
