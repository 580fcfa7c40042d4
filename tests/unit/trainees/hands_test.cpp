// Proves: simulated trainees see what a person sees and no more, their hands keep the safety rules when told
// to and break them when told not to, and the same seed gives the same acts.
#include "sim/trainees/hands.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "sim/trainees/belief.hpp"
#include "sim/trainees/rating.hpp"
#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::trainees {
namespace {

using faults::Cause;
using faults::Remedy;
using worksite::Quantity;

/// What the sentences of a visit break, and what was shown.
struct Replayed {
    explicit Replayed(const worksite::Job& job, const std::vector<scoring::TimedAct>& acts)
        : attempt(job, 1, worksite::Mode::assessed) {
        for (const auto& act : acts) {
            EXPECT_EQ(attempt.tick(), act.tick) << act.sentence;
            EXPECT_NE(attempt.perform(act.sentence).entry, nullptr) << act.sentence;
        }
    }
    bool broke(const std::string& rule) const {
        const auto& all = attempt.breaches();
        return std::any_of(all.begin(), all.end(),
                           [&](const worksite::Breach& b) { return b.rule == rule; });
    }
    worksite::Attempt attempt;
};

TEST(Visit, ShowsTheJobWithoutItsFaults) {
    const auto job = small_house(Cause::igniter_failed);
    const Visit visit(job, 1);
    EXPECT_TRUE(visit.job().faults.empty());
    EXPECT_EQ(visit.job().intended, Remedy::explain_to_customer);
    EXPECT_EQ(visit.job().customer.complaint, job.customer.complaint);
}

TEST(Visit, LeavesOutWhatCannotBeDone) {
    Visit visit(small_house(Cause::igniter_failed), 1);
    EXPECT_EQ(visit.act("look at flame electrode"), nullptr);  // the cover is on
    EXPECT_EQ(visit.act("dance"), nullptr);
    EXPECT_TRUE(visit.acts().empty());
}

TEST(Hands, ReplaceAnIgniterAndHandOverWithoutBreakingARule) {
    const auto job = small_house(Cause::igniter_failed);
    Visit visit(job, 1);
    Hands hands(visit, {});
    hands.take(3, Quantity::spark);
    EXPECT_EQ(hands.latest_word(Quantity::spark), "no spark");
    hands.remedy(Remedy::replace_igniter);
    EXPECT_TRUE(hands.works());
    hands.hand_over({Cause::igniter_failed});
    const Replayed replayed(job, visit.acts());
    for (const auto& breach : replayed.attempt.breaches()) ADD_FAILURE() << breach.text;
    EXPECT_TRUE(replayed.attempt.write_up().handed_in);
    EXPECT_EQ(replayed.attempt.truth().verified.size(), 7U);
    EXPECT_EQ(replayed.attempt.truth().not_needed.size(), 1U) << "no gas joint was opened";
    EXPECT_TRUE(replayed.attempt.truth().remaining.empty());
}

TEST(Hands, TakeEveryReadingThatTheyAreTakenToKnow) {
    auto job = small_house(Cause::no_fault);
    for (const auto gas : {worksite::GasKind::natural_gas, worksite::GasKind::propane_cylinder}) {
        job.site.gas = gas;
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const auto quantity = static_cast<Quantity>(q);
            if (!can_be_taken(quantity, job)) continue;
            Visit visit(job, 1);
            Hands hands(visit, {});
            hands.take(2, quantity);
            EXPECT_NE(hands.latest(quantity), nullptr) << worksite::info(quantity).title;
        }
    }
}

TEST(Hands, ReadWallControllersAndHistoryAndSettingsWithoutBreakingARule) {
    auto job = small_house(Cause::igniter_failed);
    job.site.wall_controllers = {"bathroom controller"};
    job.panel.wall[0] = {1.0, 1.0, 323.15, 1.0};
    job.settings.wall_controllers = 1.0;
    Visit visit(job, 1);
    Hands hands(visit, {});
    for (const Quantity quantity : {Quantity::wall_screen_1, Quantity::link_wall_1_volts,
                                    Quantity::history_event, Quantity::setting_gas}) {
        EXPECT_TRUE(can_be_taken(quantity, job));
        hands.take(0, quantity);
        EXPECT_NE(hands.latest(quantity), nullptr) << worksite::info(quantity).word;
    }
    EXPECT_FALSE(can_be_taken(Quantity::wall_screen_2, job));
    hands.take(0, Quantity::outlet_ohms);
    hands.remedy(Remedy::replace_igniter);
    hands.hand_over({Cause::igniter_failed});
    const Replayed replayed(job, visit.acts());
    for (const auto& breach : replayed.attempt.breaches()) ADD_FAILURE() << breach.text;
}

TEST(Hands, MeasureTheWorkingPressureWithGasShutWhileTheJointIsOpen) {
    const auto job = small_house(Cause::gas_pipe_restriction);
    Visit visit(job, 1);
    Hands hands(visit, {});
    hands.take(0, Quantity::gas_inlet_pressure);
    const double standing = hands.latest(Quantity::gas_inlet_pressure)->value;
    hands.take(2, Quantity::gas_inlet_pressure);
    EXPECT_LT(hands.latest(Quantity::gas_inlet_pressure)->value, 0.7 * standing);
    hands.hand_over({Cause::gas_pipe_restriction});
    const Replayed replayed(job, visit.acts());
    EXPECT_FALSE(replayed.broke("gas_open"));
    EXPECT_FALSE(replayed.broke("no_leak_test"));
    EXPECT_FALSE(replayed.broke("tools_left"));
}

TEST(Hands, WithoutCareWorkLiveAndOpenJointsUnderPressure) {
    const auto job = small_house(Cause::igniter_failed);
    Visit visit(job, 1);
    Hands hands(visit, {false, false, false, false, false, true});
    hands.take(0, Quantity::gas_inlet_pressure);
    hands.remedy(Remedy::replace_igniter);
    hands.hand_over({Cause::igniter_failed});
    const Replayed replayed(job, visit.acts());
    for (const char* rule : {"gas_open", "live_work", "no_leak_test", "no_combustion_test"})
        EXPECT_TRUE(replayed.broke(rule)) << rule;
}

TEST(Hands, FindOutWhenItDoesNotWork) {
    Visit visit(small_house(Cause::igniter_failed), 1);
    Hands hands(visit, {});
    EXPECT_FALSE(hands.works());
}

// No gas comes to it, and that is not for them to mend.
TEST(Hands, LeaveAHeaterThatWillNotBurnOffWithATag) {
    const auto job = small_house(Cause::igniter_failed);
    Visit visit(job, 1);
    Hands hands(visit, {});
    EXPECT_FALSE(hands.works());
    hands.hand_over({Cause::igniter_failed});
    const Replayed replayed(job, visit.acts());
    EXPECT_TRUE(replayed.attempt.truth().made_safe);
    EXPECT_FALSE(replayed.broke("walked_off"));
}

struct OfTheHouse {
    const char* rule;
    void (*holds)(worksite::Dangers&);
    Remedy remedy;
    bool draws = false;
};

worksite::Job house_that(const OfTheHouse& one) {
    auto job = small_house(Cause::igniter_failed);
    one.holds(job.site.dangers);
    if (job.site.dangers.low_place || job.site.dangers.cylinder_close)
        job.site.gas = worksite::GasKind::propane_cylinder;
    return job;
}

bool is_broken(const OfTheHouse& one, Care care) {
    const auto job = house_that(one);
    Visit visit(job, 1);
    Hands hands(visit, care);
    hands.arrive();
    hands.take(0, Quantity::flue_terminal);
    hands.remedy(one.remedy);
    if (one.remedy == Remedy::replace_igniter) {
        hands.open_up();
        hands.say("wait 6 min");
    }
    if (one.draws) hands.works();
    hands.hand_over({Cause::igniter_failed});
    const Replayed replayed(job, visit.acts());
    for (const auto& breach : replayed.attempt.breaches())
        if (care.isolate) ADD_FAILURE() << one.rule << ": " << breach.text;
    return replayed.broke(one.rule);
}

TEST(Hands, HeedWhatIsDangerousAtTheHouseUnlessCareIsLeftOut) {
    const Care none{false, false, false, false, false, true};
    const auto leaks = [](worksite::Dangers& d) {
        d.leak_m3_per_s = 2.0e-6;
        d.low_place = true;
    };
    const auto high = [](worksite::Dangers& d) {
        d.terminal_height_m = 3.0;
        d.soft_ground = true;
    };
    const auto sheet = [](worksite::Dangers& d) { d.old_sheet = true; };
    const std::vector<OfTheHouse> all{
        {"spark_in_gas", leaks, Remedy::replace_igniter, true},
        {"people_in_gas", leaks, Remedy::replace_igniter},
        {"low_unchecked", leaks, Remedy::replace_igniter},
        {"cylinder_left", [](worksite::Dangers& d) { d.cylinder_close = true; },
         Remedy::replace_igniter},
        {"scorch_left", [](worksite::Dangers& d) { d.scorched = true; }, Remedy::replace_igniter},
        {"ladder_unchecked", high, Remedy::replace_igniter},
        {"fall", high, Remedy::replace_igniter},
        {"fibres", sheet, Remedy::clear_flue_terminal},
        {"bystander", [](worksite::Dangers& d) { d.children = true; }, Remedy::replace_igniter},
    };
    for (const OfTheHouse& one : all) {
        EXPECT_FALSE(is_broken(one, {})) << one.rule;
        EXPECT_TRUE(is_broken(one, none)) << one.rule;
    }
}

TEST(Hands, StayDownInTheWindAndHandTheTerminalOn) {
    auto job = small_house(Cause::flue_blocked);
    job.site.dangers.terminal_height_m = 3.0;
    job.site.wind_pa = 45.0;
    Visit visit(job, 1);
    Hands hands(visit, {});
    hands.take(0, Quantity::display_word);
    hands.take(0, Quantity::flue_terminal);
    EXPECT_EQ(hands.latest(Quantity::flue_terminal), nullptr);
    hands.remedy(Remedy::clear_flue_terminal);
    EXPECT_TRUE(hands.is_out_of_use());
    hands.hand_over({Cause::flue_blocked});
    const Replayed replayed(job, visit.acts());
    for (const auto& breach : replayed.attempt.breaches()) ADD_FAILURE() << breach.text;
    EXPECT_TRUE(replayed.attempt.truth().made_safe);
}

TEST(Hands, TouchAPipeThatTinglesOnceOnlyWithABareHand) {
    for (const bool careful : {true, false}) {
        const auto job = small_house(Cause::neutral_broken);
        Visit visit(job, 1);
        Care care;
        care.isolate = careful;
        Hands hands(visit, care);
        hands.take(1, Quantity::tap_temperature);
        hands.take(2, Quantity::tap_temperature);
        EXPECT_EQ(hands.latest_word(Quantity::tingle), "a tingle");
        EXPECT_NE(Replayed(job, visit.acts()).broke("live_pipe"), careful);
    }
}

TEST(Hands, TestTheDraughtOfAnOpenFlueWithTheFanOnAndTheWindowShut) {
    for (const double fan_m3_per_s : {0.01, 0.15}) {
        const auto job = open_flued_house(fan_m3_per_s);
        Visit visit(job, 1);
        Hands hands(visit, {});
        hands.test_draught();
        std::vector<std::string> said;
        for (const auto& act : visit.acts()) said.push_back(act.sentence);
        const auto place = [&](const char* s) { return std::find(said.begin(), said.end(), s); };
        EXPECT_LT(place("close kitchen window"), place("test draught with smoke"));
        EXPECT_LT(place("run range hood"), place("test draught with smoke"));
        EXPECT_LT(place("test draught with smoke"), place("stop range hood"));
        EXPECT_NE(place("stop range hood"), said.end());
        EXPECT_EQ(hands.latest_word(Quantity::diverter_smoke),
                  fan_m3_per_s > 0.1 ? "blown out" : "drawn in");
    }
}

TEST(Hands, TakeAnOpenFlueThatSpillsOutOfUse) {
    const auto job = open_flued_house(0.15);
    Visit visit(job, 1);
    Hands hands(visit, {});
    EXPECT_TRUE(hands.works());
    EXPECT_FALSE(hands.prove());
    hands.hand_over({Cause::no_fault});
    const Replayed replayed(job, visit.acts());
    EXPECT_TRUE(replayed.attempt.truth().made_safe);
}

/// What a heater taken out of use in this house breaks of the rules on reports.
bool leaves_somebody_untold(bool tenant, worksite::Consent agrees, Care care) {
    auto job = small_house(Cause::igniter_failed);
    job.customer.tenant = tenant;
    job.customer.agrees = agrees;
    Visit visit(job, 1);
    Hands hands(visit, care);
    hands.take_out_of_use();
    hands.hand_over({Cause::igniter_failed});
    const Replayed replayed(job, visit.acts());
    EXPECT_EQ(replayed.broke("walked_off"), replayed.broke("not_reported") && !tenant);
    return replayed.broke("not_reported");
}

TEST(Hands, TellTheOwnerOfARentedHeaterAndTheRegulatorWhereTheNoticeIsRefused) {
    Care says_nothing;
    says_nothing.tell = false;
    EXPECT_FALSE(leaves_somebody_untold(true, worksite::Consent::given, {}));
    EXPECT_TRUE(leaves_somebody_untold(true, worksite::Consent::given, says_nothing));
    EXPECT_FALSE(leaves_somebody_untold(false, worksite::Consent::never, {}));
    EXPECT_TRUE(leaves_somebody_untold(false, worksite::Consent::never, says_nothing));
}

TEST(Play, TheSameSeedGivesTheSameActs) {
    const auto job = small_house(Cause::igniter_failed);
    for (const Policy policy : {Policy::heuristic, Policy::part_swapper, Policy::guesser}) {
        const auto once = play(policy, job, 3), again = play(policy, job, 3);
        ASSERT_EQ(once.acts.size(), again.acts.size());
        for (std::size_t i = 0; i < once.acts.size(); ++i) {
            EXPECT_EQ(once.acts[i].tick, again.acts[i].tick);
            EXPECT_EQ(once.acts[i].sentence, again.acts[i].sentence);
        }
    }
}

TEST(Play, InformationFindsTheDeadIgniterFromItsOwnReadings) {
    const auto job = small_house(Cause::igniter_failed);
    const auto played = play(Policy::information, job, 1);
    EXPECT_EQ(played.named, Cause::igniter_failed);
    EXPECT_TRUE(played.over);
    EXPECT_GT(played.decided_after, 8U);
}

TEST(Play, AnOracleMustBeTold) {
    EXPECT_THROW((void)play(Policy::oracle_bare, small_house(Cause::igniter_failed), 1),
                 std::invalid_argument);
}

TEST(Play, NobodyWarmsACylinderWhereThereIsNone) {
    EXPECT_FALSE(is_possible(Policy::warms_cylinder, small_house(Cause::igniter_failed)));
}

}  // namespace
}  // namespace emberpath::trainees
