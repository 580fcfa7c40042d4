// Proves what the rail says of gas and power: what the trainee smelt and proved, and nothing that they did not.
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"
#include "ui/desktop/job_fill.hpp"

namespace emberpath::desktop {
namespace {

using screens::StateMark;

const char* const no_voltage = "The tester shows no voltage on any pair of terminals.";
const char* const works = "The tester shows the voltage of its proving unit.";
const char* const live =
    "The tester shows 230 V from active to neutral, 230 V from active to earth.";

/// What a trainee has done and been shown, without a house behind it.
struct Told {
    views::JobCard card;
    std::vector<views::Suspect> suspects;
    std::deque<worksite::TrailPoint> trail;
    Preferences preferences;
    std::vector<Thing> things;
    std::vector<Offer> offers;
    worksite::Sight sight;
    std::vector<worksite::LogEntry> log;

    Told() { sight.panel_lit = false; }
    Told& did(const std::string& words, const std::string& shown = "") {
        worksite::LogEntry entry;
        entry.words = words;
        if (!shown.empty()) entry.shown.push_back(shown);
        log.push_back(std::move(entry));
        return *this;
    }
    Told& proved_dead() {
        return did("prove tester", works)
            .did("test for dead", no_voltage)
            .did("prove tester", works);
    }
    [[nodiscard]] screens::ServiceCell cell(const std::string& id) const {
        const Known known{card, suspects, log, sight, trail, 0, 0.0, preferences, things, offers};
        for (auto& cell : cells_of(known))
            if (cell.id == id) return cell;
        ADD_FAILURE() << "there is no cell " << id;
        return {};
    }
};

TEST(PowerCell, IsProvedAfterProvingTestingAndProving) {
    const auto cell = Told().did("unplug heater").proved_dead().cell("power");
    EXPECT_EQ(cell.mark, StateMark::proved);
    EXPECT_EQ(cell.words, "Proved dead");
}

TEST(PowerCell, StaysProvedWhenThePlugIsLockedOffAfterwards) {
    const auto cell = Told().did("unplug heater").proved_dead().did("lock off plug").cell("power");
    EXPECT_EQ(cell.mark, StateMark::proved);
    EXPECT_EQ(cell.words, "Proved dead");
}

TEST(PowerCell, IsNotMarkedOnAfterATestForDeadWhileThePanelIsDark) {
    EXPECT_EQ(Told().did("test for dead").cell("power").mark, StateMark::unknown);
}

TEST(PowerCell, IsNotProvedWhenAStepIsMissing) {
    Told untested, unproved_after, unproved_before, dark, charged, not_isolated;
    untested.did("unplug heater").did("prove tester", works).did("prove tester", works);
    EXPECT_EQ(untested.cell("power").mark, StateMark::off);
    unproved_after.did("unplug heater").did("prove tester", works).did("test for dead", no_voltage);
    EXPECT_EQ(unproved_after.cell("power").mark, StateMark::unknown);
    unproved_before.did("unplug heater")
        .did("test for dead", no_voltage)
        .did("prove tester", works);
    EXPECT_EQ(unproved_before.cell("power").mark, StateMark::unknown);
    dark.did("unplug heater").did("prove tester", works).did("test for dead", no_voltage);
    dark.did("prove tester", "The tester stays dark on its proving unit.");
    EXPECT_EQ(dark.cell("power").mark, StateMark::unknown);
    charged.did("unplug heater").did("prove tester", works).did("test for dead", no_voltage);
    charged.log.back().shown.emplace_back("Across the board's capacitor it shows 300 V, falling.");
    charged.did("prove tester", works);
    EXPECT_EQ(charged.cell("power").mark, StateMark::unknown);
    EXPECT_EQ(not_isolated.proved_dead().cell("power").mark, StateMark::unknown)
        << "dead for a reason that nobody knows, and may come back";
}

TEST(PowerCell, IsNoLongerProvedOnceSomethingIsSwitched) {
    for (const std::string act :
         {"switch power on", "plug in heater", "switch main switch off",
          "switch circuit breaker on", "switch second supply on", "close safety switch",
          "use outlet without safety switch", "take spare voltage tester"}) {
        Told told;
        told.did("switch main switch off").did("unplug heater").proved_dead();
        ASSERT_EQ(told.cell("power").mark, StateMark::proved);
        EXPECT_NE(told.did(act).cell("power").mark, StateMark::proved) << act;
    }
    Told found_live;
    found_live.did("unplug heater").proved_dead().did("test for dead", live);
    EXPECT_EQ(found_live.cell("power").mark, StateMark::unknown);
}

TEST(PowerCell, IsProvedInAHouseThatWasMadeDead) {
    Person person;
    person.enter_house();
    for (const char* act : {"ask customer for consent", "switch power off", "unplug heater",
                            "lock off plug", "put on gloves", "take cover off", "wait 5 min"})
        person.say(act);
    for (const char* act : {"prove tester", "test for dead"}) {
        person.say(act);
        EXPECT_NE(person.node("rail.power")->value, "Proved dead, proved") << act;
    }
    person.say("prove tester");
    EXPECT_EQ(person.node("rail.power")->value, "Proved dead, proved");
    person.say("plug in heater");
    EXPECT_EQ(person.node("rail.power")->value, "Proved dead, proved") << "it is locked off";
    person.press(kit::Key::escape);  // out of the box that refused
    person.say("unlock plug");
    person.say("plug in heater");
    EXPECT_EQ(person.last_act(), "plug in heater");
    EXPECT_EQ(person.node("rail.power")->value, "Plugged in");
}

TEST(GasCell, WarnsFromTheFirstSmellUntilTheAirIsFoundClear) {
    for (const char* mode : {"coached", "assessed"}) {
        Told told;
        told.card.mode = mode;
        EXPECT_EQ(told.cell("gas").mark, StateMark::unknown);
        told.sight.noticed = {"It smells of gas."};
        EXPECT_EQ(told.cell("gas").mark, StateMark::hazard);
        EXPECT_EQ(told.cell("gas").words, "Smell of gas");
        told.sight.noticed.clear();
        told.did("shut gas at meter", "It smells of gas.");
        EXPECT_EQ(told.cell("gas").mark, StateMark::hazard);
        EXPECT_EQ(told.cell("gas").words, "Shut at the meter, smell of gas");
        told.did("look at display");
        EXPECT_EQ(told.cell("gas").mark, StateMark::hazard) << "nobody said that it is clear";
        told.did("look at room", "No smell of gas.");
        EXPECT_EQ(told.cell("gas").mark, StateMark::off);
    }
}

TEST(GasCell, WarnsInAHouseThatSmellsAndNotInOneThatDoesNot) {
    worksite::Job leaking = worksite::test_job();
    leaking.site.dangers.leak_m3_per_s = 3.0e-5;
    Person there(leaking), elsewhere;
    there.enter_assessed();
    elsewhere.enter_assessed();
    EXPECT_EQ(there.node("rail.gas")->value, "Smell of gas, hazard");
    EXPECT_EQ(elsewhere.node("rail.gas")->value, "Not checked");
    there.say("open front door");
    there.say("ask about problem");
    EXPECT_EQ(there.node("rail.gas")->value, "Smell of gas, hazard");
}

TEST(YouCell, SaysWhereSomebodyIsWhoWentOutside) {
    Person person;
    person.enter_assessed();
    EXPECT_EQ(person.node("rail.you")->value, "Bare hands");
    person.say("go outside");
    EXPECT_EQ(person.node("rail.you")->value, "In the open air");
    person.say("go back in");
    EXPECT_EQ(person.node("rail.you")->value, "Bare hands");
}

}  // namespace
}  // namespace emberpath::desktop
