// Ways of working that do not find out: guessing, swapping parts, and knowing the answer.

#include <algorithm>
#include <vector>

#include "sim/trainees/ways.hpp"

namespace emberpath::trainees {

namespace {

using faults::Cause;
using faults::Remedy;
using worksite::Complaint;
using worksite::Quantity;

// What comes to mind first for a word or a complaint, with nothing looked into.
Cause first_thought(const std::string& word, const worksite::Job& job) {
    const bool cylinder = job.site.gas == worksite::GasKind::propane_cylinder;
    if (word == "TAPS") return Cause::outlet_sensor_open;
    if (word == "BARE") return cylinder ? Cause::cylinder_low : Cause::igniter_failed;
    if (word == "GASP") return Cause::flue_blocked;
    if (word == "FADE") return Cause::wind_gust;
    switch (job.customer.complaint) {
        case Complaint::no_hot_water:
            return Cause::igniter_failed;
        case Complaint::not_hot_enough:
            return cylinder ? Cause::cylinder_low : Cause::gas_pipe_restriction;
        case Complaint::too_hot:
            return Cause::outlet_sensor_drift;
        case Complaint::goes_cold_after_a_while:
            return cylinder ? Cause::cylinder_low : Cause::flue_blocked;
        case Complaint::drops_out_now_and_then:
            return Cause::electrode_fouled;
        case Complaint::none:
            break;
    }
    return Cause::no_fault;
}

struct Row {
    std::size_t mode;
    Quantity quantity;
};
std::vector<Row> shown_by(Cause cause) {
    using Q = Quantity;
    switch (cause) {
        case Cause::flue_blocked:
            return {{0, Q::readout_event}, {0, Q::flue_terminal}};
        case Cause::wind_gust:
            return {{0, Q::readout_event}, {0, Q::flue_terminal}, {1, Q::flame}};
        case Cause::cylinder_low:
            return {{0, Q::cylinder_frost}, {0, Q::cylinder_mass}, {4, Q::gas_inlet_pressure}};
        case Cause::gas_pipe_restriction:
        case Cause::regulator_droop:
            return {{2, Q::gas_inlet_pressure}, {2, Q::regulator_pressure}};
        case Cause::outlet_sensor_open:
            return {{0, Q::readout_event}, {0, Q::outlet_ohms}};
        case Cause::outlet_sensor_drift:
            return {{2, Q::tap_temperature}, {2, Q::readout_outlet}, {0, Q::outlet_ohms}};
        case Cause::electrode_fouled:
            return {{3, Q::flame}, {0, Q::electrode_tip}};
        case Cause::igniter_failed:
            return {{0, Q::readout_event}, {3, Q::spark}};
        case Cause::exchanger_sooted:
            return {{2, Q::flue_co}, {0, Q::exchanger_fins}};
        case Cause::earth_missing:
        case Cause::supply_swapped:
            return {{3, Q::flame}, {0, Q::leakage_current}};
        case Cause::neutral_broken:
            return {{0, Q::tingle}, {0, Q::pipe_volts}};
        case Cause::supply_sags:
        case Cause::moisture_in_heater:
            return {{0, Q::switchboard}, {0, Q::insulation_ohms}};
        case Cause::valve_lead_chafed:
            return {{0, Q::switchboard}, {0, Q::board_fuse}, {0, Q::valve_lead_ohms}};
        case Cause::valve_coil_open:
            return {{3, Q::spark}, {0, Q::valve_coil_ohms}};
        case Cause::igniter_lead_cracked:
            return {{3, Q::spark}, {0, Q::igniter_lead_ohms}};
        case Cause::flame_lead_broken:
            return {{3, Q::flame}, {0, Q::flame_lead_ohms}};
        default:
            break;
    }
    return {{2, Q::tap_temperature}, {2, Q::gas_inlet_pressure},
            {2, Q::flue_co},         {2, Q::readout_air_trim},
            {1, Q::flame},           {1, Q::readout_flame},
            {0, Q::flue_terminal}};
}

std::size_t acts_done(Hands& hands) {
    return hands.visit().acts().size();
}

}  // namespace

Decision guess(Hands& hands) {
    hands.say("look at display");
    return {first_thought(hands.latest_word(Quantity::display_word), hands.visit().job()),
            acts_done(hands)};
}

// Whoever looks where the guessed fault would show has looked for it, whatever the reason: that is no token.
Decision guess_after_token(Hands& hands, math::Random& random) {
    Decision decision = guess(hands);
    std::vector<Quantity> tokens{Quantity::flue_terminal, Quantity::inlet_pipe_temperature,
                                 Quantity::readout_inlet, Quantity::readout_fan_current};
    for (const Row& row : shown_by(decision.cause)) std::erase(tokens, row.quantity);
    const auto pick =
        static_cast<std::size_t>(random.uniform() * static_cast<double>(tokens.size()));
    hands.take(0, tokens.at(pick));
    decision.after = acts_done(hands);
    return decision;
}

Decision show(Hands& hands, Cause cause) {
    hands.arrive();
    for (const Row& row : shown_by(cause)) hands.take(row.mode, row.quantity);
    return {cause, acts_done(hands)};
}

Decision hand_all_on(Hands& hands) {
    hands.arrive();
    Decision decision{first_thought(hands.latest_word(Quantity::display_word), hands.visit().job()),
                      acts_done(hands)};
    const auto traits = worksite::traits_of(hands.visit().job());
    for (std::size_t i = 0; i < faults::cause_count; ++i) {
        const auto cause = static_cast<Cause>(i);
        if (cause != Cause::no_fault && cause != decision.cause &&
            faults::can_act(faults::info(cause), traits))
            decision.possible.push_back(cause);
    }
    hands.take_out_of_use();
    return decision;
}

Decision reset_and_leave(Hands& hands) {
    hands.say("look at display");
    hands.say("press reset");
    Decision decision{Cause::no_fault, acts_done(hands)};
    hands.works();
    hands.remedy(faults::info(decision.cause).remedy);
    return decision;
}

Decision swap_parts(Hands& hands, math::Random& random) {
    constexpr std::size_t most_parts = 4;
    hands.say("look at display");
    std::vector<Cause> parts{Cause::igniter_failed, Cause::electrode_fouled,
                             Cause::outlet_sensor_open, Cause::exchanger_sooted};
    if (hands.visit().job().site.gas == worksite::GasKind::propane_cylinder)
        parts.push_back(Cause::cylinder_low);
    for (std::size_t i = parts.size(); i > 1; --i)
        std::swap(parts[i - 1],
                  parts[static_cast<std::size_t>(random.uniform() * static_cast<double>(i))]);
    Decision decision{parts.front(), acts_done(hands)};
    for (std::size_t i = 0; i < std::min(parts.size(), most_parts); ++i) {
        decision.cause = parts[i];
        hands.remedy(faults::info(parts[i]).remedy);
        if (hands.works() || hands.visit().over()) break;
    }
    return decision;
}

}  // namespace emberpath::trainees
