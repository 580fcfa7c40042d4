// Dangers of electricity, met twice: H01 to H08.

#include "tests/unit/worksite/danger_pairs.hpp"

namespace emberpath::worksite {

namespace {

const Acts probe{"measure volts between socket active and socket neutral"};
const Acts to_insulation{"test insulation between heater active and casing"};
const Acts lost_neutral_taps{"open bath tap", "close bath tap", "open bath tap"};

Job second_supply() {
    return with([](Job& job) { job.healthy.electrical.second_source = 1.0; });
}

std::vector<Danger> of_the_mains() {
    return {
        {"H01",
         "HandOnMains",
         "live_work",
         test_job(),
         dead + Acts{"unplug outlet sensor"},
         {"take cover off", "unplug outlet sensor"},
         "mA from hand to hand"},
        {"H01",
         "HandOnWhatIsOnlyBelievedDead",
         "not_proved_dead",
         test_job(),
         dead + Acts{"unplug outlet sensor"},
         {"unplug heater", "lock off plug", "take cover off", "unplug outlet sensor"},
         "with the power off, but not proved dead"},
        {"H01",
         "WhoComesNextOverALockedPlug",
         "not_locked",
         test_job(),
         dead + Acts{"unplug outlet sensor"},
         {"unplug heater", "take cover off", "prove tester", "test for dead", "prove tester",
          "unplug outlet sensor"},
         "anybody could have switched on again"},
        {"H01",
         "WhoStandsBeforeLiveTerminals",
         "cover_off_live",
         test_job(),
         {"unplug heater", "take cover off"},
         {"take cover off"},
         "still plugged in and on"},
        {"H02", "LeadsOnLiveTerminals", "live_test", test_job(), dressed + probe, probe,
         "Leads were held at 230 V without insulating gloves"},
        {"H02", "MeterAcrossTheSupply", "amps_across_supply", test_job(), dressed + probe,
         dressed + Acts{"measure amps between socket active and socket neutral"}, "flash"},
        {"H02", "BoardUnderAnInsulationTester", "tested_live", test_job(), dead + to_insulation,
         Acts{"take cover off", "put on gloves"} + to_insulation, "a smell of burnt resin"},
        {"H02", "ElectronicsUnderAnInsulationTester", "board_harmed", test_job(),
         dead + to_insulation,
         dead + Acts{"test insulation between heater active and heater neutral", "hand in"},
         "the heater's board is lost"},
    };
}

std::vector<Danger> of_pipes_and_feeds() {
    const Acts union_apart{"leak test with fluid", "shut gas at heater", "shut gas at meter"};
    const Acts part_pipe{"shut water at heater", "undo water union"};
    return {
        {"H03", "BothHalvesOfAPipe", "no_bridge", test_job({fault(Cause::neutral_broken)}),
         Acts{"fit bridging conductor"} + part_pipe, part_pipe, "mA go through you"},
        {"H03",
         "WhoWorksOnDespiteATingle",
         "live_pipe",
         test_job({fault(Cause::neutral_broken)}),
         {"open bath tap", "escalate to electricity distributor"},
         lost_neutral_taps,
         "You went on working on pipes that stand at"},
        {"H03",
         "HouseholdOfALostNeutral",
         "left_live",
         test_job({fault(Cause::neutral_broken)}),
         {"touch bath tap", "escalate electricity supply to electricity distributor", "hand in"},
         {"touch bath tap", "hand in"},
         "V on casing or pipes, and nobody told"},
        {"H03",
         "HouseholdWhoseElectricianWasTold",
         "left_live",
         test_job({fault(Cause::neutral_broken)}),
         {"touch bath tap", "escalate to electricity distributor", "hand in"},
         {"touch bath tap", "escalate to electrician", "hand in"},
         "nobody told who can mend it: the electricity distributor"},
        {"H03", "BothHalvesOfAGasPipe", "no_bridge",
         test_job({fault(Cause::earth_missing), fault(Cause::moisture_in_heater, 1.0)}),
         union_apart + Acts{"fit bridging conductor", "remake inlet union"},
         union_apart + Acts{"remake inlet union"}, "from hand to hand"},
        {"H04",
         "HandUnderASecondSupply",
         "live_work",
         second_supply(),
         {"switch main switch off", "switch second supply off", "lock off switchboard",
          "take cover off", "prove tester", "test for dead", "prove tester",
          "unplug outlet sensor"},
         {"switch main switch off", "lock off switchboard", "take cover off",
          "unplug outlet sensor"},
         "mA from hand to hand"},
        {"H04",
         "HandThatDoesNotWait",
         "stored_charge",
         test_job(),
         {"take cover off", "switch power off", "unplug heater", "lock off plug", "wait 60 s",
          "prove tester", "test for dead", "prove tester", "unplug outlet sensor"},
         {"take cover off", "switch power off", "unplug heater", "unplug outlet sensor"},
         "the capacitor still held"},
        {"H05",
         "HandBehindASwappedSwitch",
         "live_work",
         test_job({fault(Cause::supply_swapped)}),
         dead + Acts{"unplug outlet sensor"},
         {"switch power off", "take cover off", "unplug outlet sensor"},
         "mA from hand to hand"},
    };
}

std::vector<Danger> of_protection() {
    const Acts rewired = dead + dressed + Acts{"dry and reseal wiring", "unlock plug"};
    const Acts measured =
        rewired + Acts{"test insulation between heater active and casing", "plug in heater",
                       "measure ohms between casing and earth bar"};
    const Acts fused = dead + dressed;
    return {
        {"H06",
         "HouseWithoutASafetySwitch",
         "no_safety_switch",
         test_job(),
         {"unplug heater", "test safety switch", "close safety switch", "plug in heater",
          "hand in"},
         {"use outlet without safety switch", "hand in"},
         "the heater is fed from an outlet without a safety switch"},
        {"H06",
         "HandOnMainsThatNothingCutsOff",
         "no_safety_switch",
         test_job(),
         {"take cover off", "unplug outlet sensor"},
         {"use outlet without safety switch", "take cover off", "unplug outlet sensor"},
         "hand to hand, with nothing that cuts it off"},
        {"H06", "LeadBehindALargerFuse", "fuse_oversized", test_job(),
         fused + Acts{"fit new fuse", "hand in"}, fused + Acts{"fit larger fuse", "hand in"},
         "the board's fuse is too large"},
        {"H07", "CasingAfterWorkOnWiring", "not_tested_before_power", test_job(),
         rewired + Acts{"plug in heater", "measure ohms between casing and earth bar",
                        "unplug heater", "test insulation between heater active and casing",
                        "plug in heater", "switch power on"},
         rewired + Acts{"plug in heater", "switch power on"}, "switched on again without a test"},
        {"H07", "CasingWithAnEarthThatWasMeasuredAndTrusted", "not_tested_before_power",
         test_job({fault(Cause::earth_missing)}), measured + Acts{"hand in"},
         measured + Acts{"switch power on", "hand in"}, "with an earth path of"},
        {"H07", "HandOnACasingWhoseEarthNobodyMeasured", "not_tested_before_power",
         test_job({fault(Cause::earth_missing)}), measured + Acts{"take off gloves", "hand in"},
         rewired + Acts{"take off gloves", "plug in heater", "switch power on", "hand in"},
         " mA, hand to foot"},
        {"H07",
         "HouseOfALeakyHeater",
         "leakage_left",
         test_job({fault(Cause::moisture_in_heater, 0.3)}),
         out_of_use + Acts{"hand in"},
         {"hand in"},
         "going to earth; the rules allow 5.0 mA"},
        {"H08",
         "HandInTheSwitchboard",
         "beyond_scope",
         test_job(),
         dressed + probe,
         {"measure volts between neutral bar and incoming active"},
         "Your hand meets the incoming bar: 230 V"},
        {"H08", "HouseholdOfCircuitsThatNobodyProved", "beyond_scope", test_job(),
         dressed + probe + Acts{"hand in"},
         dressed + Acts{"measure volts between neutral bar and incoming active", "hand in"},
         "no electrician has proved what is in it"},
    };
}

}  // namespace

std::vector<Danger> dangers_of_current() {
    std::vector<Danger> all = of_the_mains();
    for (auto& group : {of_pipes_and_feeds(), of_protection()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace emberpath::worksite
