// Proves that the customer is asked before services go off, can want a reason or refuse, and that a danger that
// is known needs no leave.

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using Script = std::vector<std::string>;

Job house_of(Consent agrees, std::vector<faults::Fault> faults = {}) {
    Job job = test_job(std::move(faults));
    job.customer.agrees = agrees;
    return job;
}

const Script each_shutting[] = {{"switch power off"},     {"unplug heater"},
                                {"shut gas at heater"},   {"shut gas at meter"},
                                {"shut water at heater"}, {"take cover off"}};

TEST(CustomersLeave, IsAskedBeforeAnythingIsShutOrOpened) {
    for (const Script& shutting : each_shutting) {
        Attempt unasked(house_of(Consent::when_asked), 7, Mode::assessed);
        ASSERT_EQ(play(unasked, shutting), "");
        EXPECT_TRUE(broke(unasked, "no_consent")) << shutting.front();
        Attempt asked(house_of(Consent::when_asked), 7, Mode::assessed);
        ASSERT_EQ(play(asked, {"ask customer for consent"}), "");
        ASSERT_EQ(play(asked, shutting), "");
        EXPECT_FALSE(broke(asked, "no_consent")) << shutting.front();
    }
}

TEST(CustomersLeave, IsNotNeededToLookAndMeasure) {
    Attempt attempt(house_of(Consent::when_asked), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"look at display", "open bath tap", "measure temperature at bath tap",
                             "close bath tap"}),
              "");
    EXPECT_TRUE(attempt.breaches().empty());
}

TEST(CustomersLeave, ComesOnceTheReasonIsTold) {
    Attempt attempt(house_of(Consent::after_reasons), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"ask customer for consent"}), "");
    EXPECT_NE(attempt.log().back().shown.front().find("Not now"), std::string::npos);
    ASSERT_EQ(play(attempt, {"tell customer the heater has to be opened to be looked at",
                             "ask customer for consent", "switch power off"}),
              "");
    EXPECT_FALSE(broke(attempt, "no_consent"));
    Attempt hasty(house_of(Consent::after_reasons), 7, Mode::assessed);
    ASSERT_EQ(play(hasty, {"ask customer for consent", "switch power off"}), "");
    EXPECT_TRUE(broke(hasty, "no_consent"));
}

TEST(CustomersLeave, IsNotNeededOnceADangerHasShown) {
    const Job rich = house_of(Consent::never, {fault(Cause::propane_in_gas, 0.5)});
    Attempt shown(rich, 7, Mode::assessed);
    ASSERT_EQ(play(shown, {"switch on analyser", "wait 60 s", "put probe in flue", "open bath tap",
                           "wait 60 s", "combustion test", "close bath tap", "shut gas at heater"}),
              "");
    EXPECT_FALSE(broke(shown, "no_consent")) << all_shown(shown);
    Attempt unknown(rich, 7, Mode::assessed);
    ASSERT_EQ(play(unknown, {"shut gas at heater"}), "");
    EXPECT_TRUE(broke(unknown, "no_consent"));
}

/// Current as well: metal at a voltage, an earth that is missing, wet insulation, a second feed.
/// Also when the air has cleared: the joint that leaked is still there.
TEST(CustomersLeave, IsNotNeededOnceItSmeltOfGasAtTheDoor) {
    Job leaky = house_of(Consent::when_asked);
    leaky.site.dangers.leak_m3_per_s = 5.0e-6;
    Attempt attempt(leaky, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"move people out", "shut gas at meter", "air the place", "wait 10 min",
                             "look at room"}),
              "");
    EXPECT_EQ(attempt.log().back().shown.front(), "No smell of gas.");
    ASSERT_EQ(play(attempt, {"switch power off", "take cover off"}), "");
    EXPECT_FALSE(broke(attempt, "no_consent"));
}

TEST(CustomersLeave, IsNotNeededOnceWiringHasShownItsDanger) {
    struct Shown {
        Cause cause;
        Script looked;
        double severity = 1.0;
    };
    const Shown shown[] = {
        {Cause::neutral_broken, {"touch kitchen tap"}},
        {Cause::neutral_broken,
         {"put on gloves", "measure volts between water pipe and true earth"}},
        {Cause::moisture_in_heater, {"clamp whole lead"}, 0.2},
        {Cause::supply_swapped,
         {"put on gloves", "measure volts between socket neutral and socket earth"}},
    };
    for (const Shown& one : shown) {
        Attempt known(house_of(Consent::never, {fault(one.cause, one.severity)}), 7,
                      Mode::assessed);
        ASSERT_EQ(play(known, one.looked), "");
        ASSERT_EQ(play(known, {"unplug heater"}), "");
        EXPECT_FALSE(broke(known, "no_consent")) << all_shown(known);
        Attempt sound(house_of(Consent::never), 7, Mode::assessed);
        ASSERT_EQ(play(sound, one.looked), "");
        ASSERT_EQ(play(sound, {"unplug heater"}), "");
        EXPECT_TRUE(broke(sound, "no_consent")) << all_shown(sound);
    }
}

/// Whoever refuses does not heed a notice alone.
TEST(Refusal, NeedsSomebodyToBeCalled) {
    const Job job = house_of(Consent::never, {fault(Cause::exchanger_sooted, 0.9)});
    const Script part{"shut gas at heater", "tag heater", "issue unsafe notice"};
    Attempt noticed(job, 7, Mode::assessed);
    ASSERT_EQ(play(noticed, part), "");
    EXPECT_NE(all_shown(noticed).find("will not sign"), std::string::npos);
    ASSERT_EQ(play(noticed, {"hand in"}), "");
    EXPECT_TRUE(broke(noticed, "walked_off"));
    EXPECT_TRUE(broke(noticed, "not_reported"));
    Attempt called(job, 7, Mode::assessed);
    ASSERT_EQ(play(called, part), "");
    ASSERT_EQ(play(called, {"escalate to distributor", "hand in"}), "");
    EXPECT_FALSE(broke(called, "walked_off"));
    EXPECT_FALSE(broke(called, "not_reported"));
}

TEST(Refusal, IsReportedWhereTheHeaterStaysInUseBehindANoticeAsWell) {
    const Job job = house_of(Consent::never, {fault(Cause::exchanger_sooted, 0.9)});
    Attempt left(job, 7, Mode::assessed), told(job, 7, Mode::assessed);
    ASSERT_EQ(play(left, {"issue unsafe notice", "hand in"}), "");
    EXPECT_TRUE(broke(left, "not_reported"));
    ASSERT_EQ(play(told, {"issue unsafe notice", "escalate to technical regulator", "hand in"}),
              "");
    EXPECT_FALSE(broke(told, "not_reported"));
}

TEST(Report, DoesNotReplaceTheNotice) {
    for (const Consent agrees : {Consent::given, Consent::never}) {
        Attempt told(house_of(agrees), 7, Mode::assessed);
        ASSERT_EQ(play(told, {"shut gas at heater", "tag heater", "escalate to distributor"}), "");
        EXPECT_FALSE(told.truth().made_safe);
        ASSERT_EQ(play(told, {"issue unsafe notice"}), "");
        EXPECT_TRUE(told.truth().made_safe);
    }
}

TEST(HotDelivery, IsThePlumbersWhereAValveTempersItAndElsewhereTheTraineesOwn) {
    for (const bool tempering : {false, true}) {
        Job job = test_job();
        job.panel.set_point_k = 333.15;
        for (Tap& tap : job.site.taps) tap.washing = true;
        if (tempering) job.site.taps.back().tempered = true;
        Attempt attempt(job, 7, Mode::assessed);
        ASSERT_EQ(play(attempt, {"hand in"}), "");
        EXPECT_TRUE(broke(attempt, "delivery_limit"));
        EXPECT_EQ(broke(attempt, "not_reported"), tempering);
    }
}

TEST(Refusal, DoesNotStopTheHandAndHasItsConsequence) {
    Attempt attempt(house_of(Consent::never), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"ask customer for consent", "switch power off"}), "");
    EXPECT_TRUE(broke(attempt, "no_consent"));
    EXPECT_FALSE(attempt.breaches().front().critical);
}

}  // namespace
}  // namespace emberpath::worksite
