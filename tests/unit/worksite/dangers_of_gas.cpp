// Dangers of gas, met twice: H09 to H18.

#include "tests/unit/worksite/danger_pairs.hpp"

namespace emberpath::worksite {

namespace {

const Acts point{"open test point inlet", "wait 20 s"};
const Acts safe_arrival{"move people out", "shut gas at meter", "air the place",
                        "escalate to distributor"};
const Acts made_dead = dead + dressed;

void much_leaks(Job& job) {
    job.site.dangers.leak_m3_per_s = 3.0e-5;
}

std::vector<Danger> of_opening_and_arrival() {
    const Acts beside_a_flame{"turn on cooktop", "open test point inlet", "wait 5 min"};
    return {
        {"H09", "AirAroundAnOpenJoint", "gas_open", test_job(), Acts{"shut gas at heater"} + point,
         point, "Most gas in the air at your hands"},
        {"H09", "HandsBesideAFlame", "flash", test_job(),
         Acts{"shut gas at heater"} + beside_a_flame, beside_a_flame, "meets a flame and flashes"},
        {"H09",
         "HouseWithAnOpenTestPoint",
         "gas_left_open",
         test_job(),
         {"shut gas at heater", "open test point inlet", "close test point inlet",
          "open gas at heater", "leak test with fluid", "hand in"},
         {"shut gas at heater", "open test point inlet", "open gas at heater", "hand in"},
         "the inlet test point is open"},
        {"H10",
         "HouseThatSmellsOfGas",
         "spark_in_gas",
         with(leak),
         safe_arrival + Acts{"wait 4 min", "switch power off"},
         {"look at room", "switch power off"},
         "A switch or a flame was worked in air that smelt of gas: "},
        {"H10",
         "WhoTelephonesInIt",
         "spark_in_gas",
         with(leak),
         {"move people out", "escalate to distributor"},
         {"escalate to distributor"},
         "A telephone was used in air that smelt of gas: "},
        {"H10",
         "WhoMovesThePlugInIt",
         "spark_in_gas",
         with(leak),
         {"move people out", "shut gas at meter", "air the place", "wait 4 min",
          "use outlet without safety switch"},
         {"use outlet without safety switch"},
         "A switch or a flame was worked in air that smelt of gas: "},
        {"H10",
         "WhoeverSwitchesInEnoughOfIt",
         "flash",
         with(much_leaks),
         safe_arrival + Acts{"wait 5 min", "switch power off"},
         {"look at room", "switch power off"},
         "and it flashes"},
        {"H10",
         "WhoStaysInGas",
         "stayed_in_gas",
         with(leak),
         safe_arrival + Acts{"wait 2 min"},
         {"look at room", "wait 2 min"},
         "You stayed a minute in air with "},
        {"H10",
         "WhoLeavesItAndTelephonesOutside",
         "spark_in_gas",
         with(leak),
         {"go outside", "shut gas at meter", "escalate to distributor"},
         {"shut gas at meter", "escalate to distributor"},
         "A telephone was used in air that smelt of gas: "},
        {"H10",
         "WhoDoesNotLeaveIt",
         "stayed_in_gas",
         with(leak),
         {"go outside", "wait 5 min"},
         {"wait 5 min"},
         "You stayed a minute in air with "},
        {"H10",
         "PeopleOfTheHouse",
         "people_in_gas",
         with(leak),
         safe_arrival + Acts{"hand in"},
         {"hand in"},
         "stayed in it while it smelt of gas"},
    };
}

std::vector<Danger> of_leaks() {
    const Acts clean{"clean heat exchanger"};
    const Acts opened{"shut gas at heater", "open test point inlet", "close test point inlet",
                      "open gas at heater"};
    const Acts proved{"leak test with fluid", "shut gas at heater", "remake joint inlet",
                      "open gas at heater", "leak test with fluid"};
    const Acts union_remade{"leak test with fluid", "shut gas at meter", "shut gas at heater",
                            "remake inlet union",   "open gas at meter", "open gas at heater",
                            "leak test with fluid"};
    constexpr std::uint64_t joint_weeps =
        20;  // a seed whose first joint is one of the one in eight
    return {
        {"H11", "WhoIsBlamedForAnOldLeak", "no_leak_test_before", with(leak),
         made_dead + Acts{"leak test with fluid", "shut gas at meter"} + clean,
         made_dead + Acts{"shut gas at meter"} + clean, "laid to you"},
        {"H11",
         "HouseWithAnOldLeak",
         "leak_left",
         with(leak),
         {"air the place", "leak test with fluid", "shut gas at meter", "remake joint regulator",
          "open gas at meter", "leak test with fluid", "hand in"},
         {"air the place", "hand in"},
         "a gas joint weeps"},
        {"H12", "HouseholdOfAJointThatWeeps", "leak_left", test_job(),
         opened + proved + Acts{"hand in"}, opened + Acts{"hand in"}, "Gas escaped: ", true,
         joint_weeps},
        {"H12", "JointNobodyProved", "no_leak_test", test_job(),
         opened + Acts{"leak test with fluid", "hand in"}, opened + Acts{"hand in"},
         "was opened and never proved sound"},
        {"H13", "LightUpAfterAnOpenPipe", "not_purged", cylinder_job(),
         Acts{"shut gas at cylinder", "change cylinder", "open gas at cylinder", "purge gas pipe"} +
             hot_bath,
         Acts{"shut gas at cylinder", "change cylinder", "open gas at cylinder"} + hot_bath,
         "lit with air in its gas pipe"},
        {"H13", "LightUpAfterARemadeUnion", "not_purged", test_job(),
         union_remade + Acts{"purge gas pipe"} + hot_bath, union_remade + hot_bath,
         "lit with air in its gas pipe"},
    };
}

std::vector<Danger> of_propane() {
    return {
        {"H14",
         "DrainBelowThePropane",
         "low_gas_left",
         on_cylinder(leak_over_a_drain),
         {"air the place", "shut gas at cylinder", "check low places", "wait 15 min",
          "check low places", "remake joint regulator", "open gas at cylinder",
          "leak test with fluid", "hand in"},
         {"look at room", "hand in"},
         "propane lies in the drain"},
        {"H14",
         "WhoTrustsTheAirAboveADrain",
         "low_unchecked",
         on_cylinder(leak_over_a_drain),
         {"shut gas at cylinder", "check low places", "hand in"},
         {"shut gas at cylinder", "hand in"},
         "nobody held a detector down the drain"},
        {"H15",
         "CylinderInTheFluesOutlet",
         "cylinder_left",
         on_cylinder([](Job& job) { job.site.dangers.cylinder_close = true; }),
         {"look at cylinder", "leak test with fluid", "shut gas at cylinder", "move cylinder",
          "open gas at cylinder", "leak test with fluid", "hand in"},
         {"look at cylinder", "hand in"},
         "2016 kPa at 60.0 °C"},
        {"H15",
         "CylinderUnderHotWater",
         "cylinder_warmed",
         cylinder_job(),
         {"weigh cylinder", "hand in"},
         {"weigh cylinder", "warm cylinder", "hand in"},
         "Hot water was poured over the cylinder"},
    };
}

std::vector<Danger> of_settings_and_guards() {
    const Acts closed{"refit cover",     "unlock plug", "plug in heater",
                      "switch power on", "wait 10 s",   "hand in"};
    const Acts looked = made_dead + Acts{"look at limiter leads"};
    const Acts restored = looked + Acts{"restore overheat limiter"};
    const Acts report{"escalate regulator to distributor"};
    const Acts height{"open service readout", "take cover off",
                      "change altitude setting to 1800 m"};
    const Acts set_to_plate = made_dead + Acts{"shut gas at heater", "open test point manifold",
                                               "zero manometer",     "attach manometer to manifold",
                                               "open gas at heater", "unlock plug",
                                               "plug in heater",     "switch power on",
                                               "wait 10 s"} +
                              hot_bath +
                              Acts{"set manifold pressure to plate",
                                   "read manometer",
                                   "close bath tap",
                                   "shut gas at heater",
                                   "take manometer off",
                                   "close test point manifold",
                                   "refit cover",
                                   "open gas at heater"};
    const Acts plate{"open service readout", "take cover off", "change gas setting to propane"};
    return {
        {"H16",
         "EveryApplianceOfTheHouse",
         "regulator_raised",
         test_job(),
         {"escalate regulator to distributor", "hand in"},
         {"raise supply regulator", "hand in"},
         "the supply regulator is wound up"},
        {"H16", "HouseBehindARegulatorThatCreeps", "pressure_left",
         test_job({fault(Cause::regulator_creeps, 1.0)}),
         report + Acts{"shut gas at meter", "tag heater", "issue unsafe notice",
                       "tell customer the gas stays shut", "hand in"},
         report + Acts{"tell customer the distributor comes", "hand in"},
         "gas comes by a regulator that never locks up"},
        {"H17", "BurnerOnAnotherGas", "off_plate", test_job(),
         plate + Acts{"change gas setting to natural gas", "refit cover", "hand in"},
         plate + Acts{"refit cover", "hand in"}, "flue gas with CO/CO2 of 0.0"},
        {"H17", "HouseholdOfABurnerThatOverheats", "off_plate", test_job(),
         plate + Acts{"change gas setting to natural gas", "refit cover", "hand in"},
         plate + Acts{"refit cover", "hand in"}, "The heater locked out", true},
        {"H17",
         "BurnerLeftAboveItsPlate",
         "left_unsafe",
         test_job({fault(Cause::high_fire_overset, 1.0)}),
         set_to_plate + Acts{"hand in"},
         {"hand in"},
         "flue gas with CO/CO2 of 0.0"},
        {"H17", "BurnerOnTheAirOfAnotherHeight", "off_plate", test_job(),
         height + Acts{"change altitude setting to 0 m", "refit cover", "hand in"},
         height + Acts{"refit cover", "hand in"}, "% of a burn", true},
        {"H18", "NextFaultBehindABridge", "bridged", test_job(),
         made_dead + Acts{"look at flame electrode", "hand in"},
         made_dead + Acts{"bridge limiter", "hand in"}, "the overheat limiter is bridged"},
        {"H18", "HouseholdOfABridgeThatWasFound", "bridge_left",
         test_job({fault(Cause::limiter_bridged, 1.0)}),
         restored + Acts{"look at limiter leads"} + closed, looked + closed,
         "Left in use with the overheat limiter bridged"},
        {"H18", "GuardThatNobodyLookedAtAgain", "not_proved",
         test_job({fault(Cause::limiter_bridged, 1.0)}),
         restored + Acts{"look at limiter leads"} + closed, restored + closed,
         "nobody did \"look at limiter leads\""},
    };
}

}  // namespace

std::vector<Danger> dangers_of_gas() {
    std::vector<Danger> all = of_opening_and_arrival();
    for (auto& group : {of_leaks(), of_propane(), of_settings_and_guards()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace emberpath::worksite
