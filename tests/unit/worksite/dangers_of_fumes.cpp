// Dangers of fumes, fire and heat, met twice: H19 to H26.

#include "tests/unit/worksite/danger_pairs.hpp"

namespace emberpath::worksite {

namespace {

const Acts electrode = dead + dressed +
                       Acts{"clean flame electrode", "refit cover", "unlock plug", "plug in heater",
                            "switch power on"};
const Acts combustion{"switch on analyser", "wait 1 min", "put probe in flue", "combustion test",
                      "take probe out"};

Job sooted() {
    return test_job({fault(Cause::exchanger_sooted, 0.8)});
}
Job gusty() {
    return test_job({fault(Cause::wind_gust, 0.6)});
}

std::vector<Danger> of_carbon_monoxide() {
    const Acts smoky{"take cover off", "open bath tap a little"};
    const Acts works_on = smoky + Acts{"wait 60 min", "wait 60 min", "wait 60 min"};
    const Acts gets_out = Acts{"switch on co alarm", "switch on analyser", "wait 1 min"} + smoky +
                          Acts{"wait 2 min",    "read room air", "close bath tap",
                               "air the place", "wait 60 min",   "wait 60 min"};
    const Acts alarmed = Acts{"switch on co alarm"} + smoky + Acts{"wait 2 min"};
    const Acts hours(15, "wait 60 min");
    Job strict = gusty();
    strict.practice.limits.co_ceiling = 35.0e-6;  // a lower one, so that the house reaches it
    const Acts draught{"open bath tap", "wait 60 s", "test draught with smoke", "hand in"};
    return {
        {"H19", "BloodInARoomWithFumes", "room_co", gusty(), gets_out, works_on,
         "You breathed more than 100 ppm of carbon monoxide for half an hour"},
        {"H19", "WhoStaysAboveTheCeiling", "co_ceiling", strict, gets_out, works_on,
         "is the ceiling"},
        {"H19", "WhoWorksOnUntilItIsTooMuch", "co_poisoning", gusty(), gets_out,
         works_on + Acts(12, "wait 60 min"), "% of your blood: your head aches"},
        {"H19", "WhoDoesNotLeaveAtTheAlarm", "co_poisoning", gusty(),
         alarmed + Acts{"go outside"} + hours, alarmed + hours, "% of your blood: your head aches"},
        {"H20", "HouseAfterWorkOnTheFlame", "no_combustion_test", test_job(),
         electrode + combustion + Acts{"hand in"}, electrode + Acts{"hand in"},
         "not proved at a small and a full draw"},
        {"H20", "WhoeverDrawsAfterWorkOnASootyHeater", "left_unsafe", sooted(),
         electrode + combustion + out_of_use + Acts{"hand in"}, electrode + Acts{"hand in"},
         "flue gas with CO/CO2 of"},
        {"H21",
         "RoomWithAnOpenFlueAndAFan",
         "spillage_left",
         open_flue(0.12),
         out_of_use + Acts{"hand in"},
         {"hand in"},
         "% of the products"},
        {"H21", "DraughtTestedKindly", "draught_untested", open_flue(0.001),
         electrode + Acts{"run rangehood"} + draught, electrode + draught, "tested kindly"},
    };
}

/// The igniter comes back in the middle of a light-up that a hasty reset began.
Job late_spark() {
    auto late = fault(Cause::igniter_failed);
    late.period_s = 1.0e6;
    late.present_s = 180.0 + 3.0 + 30.0 + 24.0 + 4.4;
    return test_job({late});
}

std::vector<Danger> of_flames() {
    Acts hasty{"open bath tap", "wait 30 s"}, patient = hasty;
    for (int i = 0; i < 4; ++i) {
        hasty = hasty + Acts{"press reset", "wait 10 s"};
        if (i < 2) patient = patient + Acts{"press reset", "wait 2 min"};
    }
    return {
        {"H22", "HandsBesideALateFlame", "hasty_reset", test_job({fault(Cause::igniter_failed)}),
         patient, hasty, "times with less than a minute between"},
        {"H22", "FaceBeforeGatheredGas", "hard_light_up", late_spark(), patient, hasty,
         "lit hard after hasty resets"},
        {"H23", "FaceBeforeAnOpenCase", "cover_off_running", test_job(), hot_bath,
         Acts{"take cover off"} + hot_bath, "fired with its cover off"},
        {"H23",
         "HouseholdOfAnOpenCase",
         "cover_left_off",
         test_job(),
         {"unplug heater", "take cover off", "refit cover", "plug in heater", "hand in"},
         {"unplug heater", "take cover off", "hand in"},
         "the cover is off"},
        {"H24",
         "TimberBesideTheFlue",
         "scorch_left",
         with([](Job& job) { job.site.dangers.scorched = true; }),
         Acts{"look around heater"} + out_of_use + Acts{"hand in"},
         {"hand in"},
         "browned timber, which gets to "},
    };
}

std::vector<Danger> of_heat() {
    const Acts hot = Acts{"set temperature to 60 °C"} + hot_bath;
    const Acts cups = Acts{"open bath tap", "wait 60 s"} + Acts(8, "measure flow at bath tap");
    Job care = test_job();
    care.panel.set_point_k = 321.15;  // 48 °C, where the rules allow 45 °C
    care.site.taps.at(1).washing = true;
    care.practice.dwellers = Dwellers::care;
    Job set_hot = test_job();
    set_hot.panel.set_point_k = 331.15;
    Job scalding = set_hot;
    scalding.panel.set_point_k = 333.15;
    Job basin = scalding;
    basin.site.taps[0].washing = true;
    return {
        {"H25", "BareHandOnHotMetal", "hot_parts", test_job(),
         hot + Acts{"close bath tap", "unplug heater", "take cover off", "put on gloves",
                    "unplug outlet sensor"},
         hot + Acts{"take cover off", "close bath tap", "unplug heater", "unplug outlet sensor"},
         "Heat in the skin of your hands"},
        {"H25", "BareHandUnderHotWater", "burnt", scalding, Acts{"put on gloves"} + cups, cups,
         "Your hand is scalded: water of"},
        {"H26",
         "SkinUnderTheTap",
         "scald_left",
         test_job({fault(Cause::outlet_sensor_drift, 1.0)}),
         out_of_use + Acts{"hand in"},
         {"hand in"},
         "with the panel set to"},
        {"H26",
         "ChildAtABasinThatWasSetHot",
         "scald_left",
         basin,
         {"set temperature to 50 °C", "hand in"},
         {"hand in"},
         ", which burns a hand in five seconds"},
        {"H26",
         "OldPeopleUnderTheShower",
         "delivery_limit",
         care,
         {"set temperature to 43 °C", "hand in"},
         {"hand in"},
         "; the rules allow 45.0 °C"},
        {"H26",
         "WhoWashesAtAHotSetting",
         "set_hot",
         set_hot,
         {"set temperature to 50 °C", "hand in"},
         {"hand in"},
         "Left set to 58.0 °C"},
    };
}

}  // namespace

std::vector<Danger> dangers_of_fumes() {
    std::vector<Danger> all = of_carbon_monoxide();
    for (auto& group : {of_flames(), of_heat()}) all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace emberpath::worksite
