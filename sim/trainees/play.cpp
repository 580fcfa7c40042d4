#include <array>
#include <stdexcept>

#include "sim/trainees/ways.hpp"

namespace emberpath::trainees {

namespace {

using faults::Cause;
using enum Policy;

struct Row {
    Policy policy;
    std::string_view title;
    enum { neither, sound, bad } kind;
};
// clang-format off
constexpr std::array<Row, policy_count> rows{{
    {information, "information per minute", Row::sound},
    {heuristic, "troubleshooting by symptom", Row::sound},
    {checklist, "checklist", Row::sound},
    {over_tester, "over-tester", Row::neither},
    {random, "random", Row::neither},
    {part_swapper, "part-swapper", Row::bad},
    {guesser, "guesser", Row::bad},
    {token_guesser, "guesser with a token", Row::bad},
    {unsafe_but_fast, "unsafe but fast", Row::bad},
    {oracle_evidence, "oracle with evidence", Row::neither},
    {oracle_bare, "oracle without evidence", Row::neither},
    {raises_regulator, "raises the regulator", Row::bad},
    {warms_cylinder, "warms the cylinder", Row::bad},
    {bridges_limiter, "bridges the limiter", Row::bad},
    {hands_all_on, "hands everything on", Row::bad},
    {resets_and_leaves, "resets and leaves", Row::bad},
}};
// clang-format on

constexpr std::array<Policy, policy_count> in_order = [] {
    std::array<Policy, policy_count> all{};
    for (std::size_t i = 0; i < policy_count; ++i) all[i] = static_cast<Policy>(i);
    return all;
}();
constexpr bool rows_in_order() {
    for (std::size_t i = 0; i < policy_count; ++i)
        if (rows[i].policy != in_order[i]) return false;
    return true;
}
static_assert(rows_in_order(), "the table follows the order of Policy");

constexpr double step_taken_share = 0.6;  // of a random trainee's safety steps

constexpr Care no_care{false, false, false, false, false, true};  // tells the customer

Care careless(math::Random& dice) {
    Care care;
    for (bool* step :
         {&care.isolate, &care.prove_dead, &care.leak_test, &care.prove_work, &care.tell})
        *step = dice.uniform() < step_taken_share;
    return care;
}

/// What stays live until its owner has mended it must not stay plugged in.
bool leaves_it_live(Cause cause) {
    return cause == Cause::earth_missing || cause == Cause::supply_swapped ||
           cause == Cause::neutral_broken;
}

/// A heater that must not burn before somebody else has done his part is proved by nobody. Behind a regulator that
/// gives too much no appliance stays in use.
bool goes_out_of_use(Cause cause) {
    using enum faults::Remedy;
    const faults::Remedy remedy = faults::info(cause).remedy;
    return remedy == quote_ventilation || remedy == quote_other_place || remedy == condemn_heater ||
           cause == Cause::regulator_creeps || cause == Cause::second_stage_passes;
}

void try_again(Hands& hands, Decision& decision) {
    const Decision next = look_again(hands, decision);
    decision.lived_on = next.lived;
    if (next.cause == decision.cause) return;
    decision.cause = next.cause;
    decision.also = next.also;
    hands.manometer_away();
    hands.remedy(faults::info(next.cause).remedy);
    hands.works();
}

// Carry out, and look whether it serves again; somebody who reasons tries once more if it does not.
void put_right(Hands& hands, Decision& decision, const Care& care, bool reasons) {
    const auto remedy = faults::info(decision.cause).remedy;
    hands.manometer_away();
    hands.remedy(remedy);
    if (decision.also) hands.remedy(faults::info(*decision.also).remedy);
    if (hands.is_out_of_use()) return;
    const bool stays_live =
        leaves_it_live(decision.cause) || (decision.also && leaves_it_live(*decision.also));
    if (care.isolate && (stays_live || goes_out_of_use(decision.cause)))
        return hands.take_out_of_use();
    if (!care.prove_work || !faults::works_at_once(remedy)) return;
    const bool serves = hands.works();
    // What serves a small draw only may have something else wrong with it.
    if (reasons && !(serves && hands.hot_at_full())) try_again(hands, decision);
}

Decision temptation(Hands& hands, Policy policy, const Told& told) {
    Decision decision;
    if (told.found != nullptr) {
        for (std::size_t i = 0; i < told.found->decided_after; ++i)
            hands.say(told.found->acts[i].sentence);
        hands.resume();
        decision.cause = told.found->named;
        decision.after = told.found->decided_after;
        decision.lived_on = told.found->at_decision;
    } else {
        decision = find_by_information(hands);
    }
    hands.manometer_away();
    if (policy == raises_regulator) hands.say("raise supply regulator");
    if (policy == warms_cylinder) hands.say("warm cylinder");
    if (policy == bridges_limiter) {
        hands.open_up();
        hands.say("bridge limiter");
    }
    hands.works();
    return decision;
}

Cause cause_told(const Told& told) {
    if (!told.cause) throw std::invalid_argument("an oracle must be told the cause");
    return *told.cause;
}

Decision work(Hands& hands, Policy policy, math::Random dice, const Told& told) {
    Care care;
    Decision decision;
    switch (policy) {
        case information:
            decision = find_by_information(hands);
            break;
        case heuristic:
            decision = find_by_symptom(hands);
            break;
        case checklist:
            decision = find_by_checklist(hands);
            break;
        case over_tester:
            decision = find_by_everything(hands);
            break;
        case Policy::random:
            care = careless(dice);
            hands.set_care(care);
            decision = find_at_random(hands, dice);
            break;
        case part_swapper:
            return swap_parts(hands, dice);
        case guesser:
            decision = guess(hands);
            break;
        case token_guesser:
            decision = guess_after_token(hands, dice);
            break;
        case unsafe_but_fast:
            care = no_care;
            hands.set_care(care);
            decision = find_by_information(hands);
            break;
        case oracle_evidence:
            decision = show(hands, cause_told(told));
            break;
        case oracle_bare:
            decision.cause = cause_told(told);
            care.leak_test_before = false;  // not even that is read
            hands.set_care(care);
            break;
        case hands_all_on:
            return hand_all_on(hands);
        case resets_and_leaves:
            hands.set_care(no_care);
            return reset_and_leave(hands);
        case raises_regulator:
        case warms_cylinder:
        case bridges_limiter:
            return temptation(hands, policy, told);
    }
    const bool reasons = policy == information || policy == heuristic || policy == checklist ||
                         policy == over_tester;
    put_right(hands, decision, care, reasons);
    // What burns badly after the remedy has something else wrong with it.
    if (reasons && care.prove_work && !hands.prove()) try_again(hands, decision);
    return decision;
}

}  // namespace

std::span<const Policy> all_policies() {
    return in_order;
}

std::string_view policy_title(Policy policy) {
    return rows[static_cast<std::size_t>(policy)].title;
}

bool is_sound(Policy policy) {
    return rows[static_cast<std::size_t>(policy)].kind == Row::sound;
}

bool is_bad_habit(Policy policy) {
    return rows[static_cast<std::size_t>(policy)].kind == Row::bad;
}

bool shows_bad_habit(Policy policy, int breaches) {
    return is_bad_habit(policy) && (policy != unsafe_but_fast || breaches > 0);
}

bool is_possible(Policy policy, const worksite::Job& job) {
    return policy != warms_cylinder || job.site.gas == worksite::GasKind::propane_cylinder;
}

Played play(Policy policy, const worksite::Job& job, std::uint64_t seed, const Told& told) {
    Visit visit(job, seed, told.arrived);
    Hands hands(visit, {});
    // Of this job as well: one luck for all jobs would make their results one observation.
    const math::Random dice(seed, std::string(policy_title(policy)) + " at " + job.name);
    const Decision decision = work(hands, policy, dice, told);
    hands.hand_over({decision.cause, decision.also, decision.possible});
    Played played;
    played.policy = policy;
    played.acts = visit.acts();
    played.minutes = visit.minutes();
    played.over = visit.over();
    played.named = decision.cause;
    played.decided_after = decision.after;
    played.at_decision = decision.lived;
    played.lived = decision.lived_on != nullptr ? decision.lived_on : played.at_decision;
    return played;
}

}  // namespace emberpath::trainees
