// Dangers of water, places and people, met twice: H27 to H35.

#include "tests/unit/worksite/danger_pairs.hpp"

namespace emberpath::worksite {

namespace {

const Acts inside = dead + dressed;

std::vector<Danger> of_water() {
    const Acts drained{"shut water at heater", "drain heater"};
    const Acts bridged{"fit bridging conductor"};
    const Acts descale = inside + Acts{"shut water at heater", "drain heater",
                                       "descale heat exchanger", "open water at heater"};
    return {
        {"H27", "BoardUnderWater", "water_not_shut", test_job(),
         inside + Acts{"shut water at heater", "drain heater", "replace water valve"},
         inside + Acts{"replace water valve"}, "Water over the floor: 17 litres."},
        {"H27", "FloorUnderAnOpenUnion", "water_not_shut", test_job(),
         bridged + Acts{"shut water at heater", "undo water union"},
         bridged + Acts{"undo water union"}, "Water over the floor: 17 litres."},
        {"H27",
         "FloorUnderADrainThatRunsOn",
         "water_not_shut",
         test_job(),
         drained,
         {"drain heater"},
         "Water over the floor: 16 litres."},
        {"H27", "FloorUnderTheHeater", "not_drained", test_job(),
         inside + Acts{"shut water at heater", "drain heater", "replace flow sensor"},
         inside + Acts{"shut water at heater", "replace flow sensor"},
         "Water over the floor: 1.2 litres."},
        {"H27", "TurbineBehindAStrainerLeftOut", "strainer_out",
         test_job({fault(Cause::strainer_blocked, 1.0)}),
         drained + Acts{"clean inlet strainer", "open water at heater", "hand in"},
         drained + Acts{"leave inlet strainer out", "open water at heater", "hand in"},
         "the inlet's screen is left out"},
        {"H28", "DrinkingWater", "acid_to_taps", test_job(),
         descale + Acts{"flush heater", "open kitchen tap", "wait 1 min"},
         descale + Acts{"open kitchen tap", "wait 1 min"},
         "Most descaling acid in the water of a tap: 100 %"},
        {"H28", "EyesBesideTheAcid", "no_glasses", test_job(),
         inside + Acts{"shut water at heater", "drain heater", "descale heat exchanger"},
         dead + Acts{"put on gloves", "shut water at heater", "drain heater",
                     "descale heat exchanger"},
         "Acid was handled without safety glasses"},
    };
}

std::vector<Danger> of_heights_and_sheet() {
    const auto high = [](Job& job) {
        job.site.dangers.terminal_height_m = 4.0;
        job.site.dangers.soft_ground = true;
    };
    const auto in_roof = [](Job& job) { job.site.dangers.pipe_in_roof = true; };
    const Acts ready{"say where you go", "switch main switch off"};
    const Acts up{"look at gas pipe run"};
    const auto windy = [](Job& job) {
        job.site.dangers.terminal_height_m = 4.0;
        job.site.wind_pa = 45.0;
    };
    return {
        {"H29",
         "WhoClimbsOnSoftGround",
         "fall",
         with(high),
         {"check ladder", "tie ladder", "look at flue terminal"},
         {"check ladder", "look at flue terminal"},
         "you fall 4.0 m and land at 8.9 m/s"},
        {"H29",
         "WhoClimbsUnlooked",
         "ladder_unchecked",
         with(high),
         {"check ladder", "tie ladder", "look at flue terminal"},
         {"look at flue terminal"},
         "without a look at ground, wind and ties"},
        {"H29",
         "WhoClimbsInTheWind",
         "fall",
         with(windy),
         {"check ladder", "decline climb", "escalate to licensed colleague"},
         {"check ladder", "tie ladder", "look at flue terminal"},
         "A gust takes the ladder"},
        {"H30",
         "LungsBesideOldSheet",
         "fibres",
         with([](Job& job) { job.site.dangers.old_sheet = true; }),
         Acts{"look around heater", "escalate to asbestos assessor"} + out_of_use + Acts{"hand in"},
         {"look around heater", "put on glasses", "clear flue terminal", "hand in"},
         "dust that may hold asbestos lies about"},
        {"H31", "WhoCrawlsBesideLiveCables", "roof_space", with(in_roof), ready + up,
         Acts{"say where you go"} + up, ", with cables beside you live"},
        {"H31", "WhomNobodyWouldLookFor", "roof_space", with(in_roof), ready + up,
         Acts{"switch main switch off"} + up, ", nobody knowing where you were"},
        {"H31", "WhoStaysTooLong", "roof_space", with(in_roof),
         ready + up + up + Acts{"wait 10 min"} + up + Acts{"hand in"},
         ready + up + up + up + Acts{"hand in"},
         "in the roof space, for 12 minutes with no break of 10 between"},
        {"H31", "WhoFaintsUnderTheRoof", "roof_space", with(in_roof),
         ready + up + up + Acts{"wait 10 min"} + up + up + Acts{"wait 10 min"} + up + up,
         ready + up + up + up + up + up + up, "you faint"},
        {"H32", "ChildAtAnOpenHeater", "bystander",
         with([](Job& job) { job.site.dangers.children = true; }),
         Acts{"set temperature to 60 °C"} + hot_bath +
             Acts{"close bath tap", "keep people away", "unplug heater", "take cover off",
                  "wait 6 min"},
         Acts{"set temperature to 60 °C"} + hot_bath +
             Acts{"close bath tap", "unplug heater", "take cover off", "wait 6 min"},
         "A child reached into the open heater: metal at"},
    };
}

Licence outlet_sensor_left_out() {
    Licence licence;
    licence.name = "gasfitter";
    licence.remedies.at(static_cast<std::size_t>(faults::Remedy::replace_outlet_sensor)) = 0;
    return licence;
}

std::vector<Danger> of_what_stays() {
    const Acts shut{"shut gas at heater", "tag heater"};
    Job refusing = test_job();
    refusing.customer.agrees = Consent::never;
    Job apprentices = test_job();
    apprentices.practice.licence.name = "apprentice";
    apprentices.practice.licence.supervised = true;
    Job gasfitters = test_job({fault(Cause::outlet_sensor_drift, 1.0)});
    gasfitters.practice.licence = outlet_sensor_left_out();
    return {
        {"H33", "HouseholdThatFindsAShutHeater", "walked_off", test_job(),
         shut + Acts{"issue unsafe notice", "hand in"}, shut + Acts{"hand in"},
         "They turned it on again themselves", true},
        {"H33",
         "HouseholdThatFindsItOff",
         "services_off",
         test_job(),
         {"shut gas at heater", "open gas at heater", "hand in"},
         {"shut gas at heater", "hand in"},
         "power, gas or water is off"},
        {"H33", "HouseholdWhoseDistributorWasNotTold", "not_reported",
         test_job({fault(Cause::regulator_creeps, 1.0)}),
         out_of_use + Acts{"escalate to distributor", "hand in"},
         out_of_use + Acts{"escalate to electrician", "escalate to owner", "hand in"},
         "whom to tell was the distributor; you told the electrician and the owner"},
        {"H33", "HouseholdThatHeedsNoNotice", "walked_off", refusing,
         out_of_use + Acts{"escalate to technical regulator", "hand in"},
         out_of_use + Acts{"hand in"}, "They turned it on again themselves", true},
        {"H33", "OwnerOfARentedHeater", "not_reported",
         with([](Job& job) { job.customer.tenant = true; }),
         Acts{"escalate to owner"} + out_of_use + Acts{"hand in"}, out_of_use + Acts{"hand in"},
         "whom to tell was the owner; you told nobody"},
        {"H33", "WhoeverAnswersForWorkOutsideALicence", "out_of_scope", gasfitters,
         Acts{"escalate to licensed colleague"} + out_of_use,
         inside + Acts{"replace outlet sensor"}, "does not cover"},
        {"H33", "WhoeverAnswersForAnApprentice", "unsupervised", apprentices,
         Acts{"escalate to licensed colleague"} + inside + Acts{"replace igniter"},
         inside + Acts{"replace igniter"}, "you began without asking a licensed colleague"},
        {"H34", "WhoTrustsAnOldInstrument", "tool_unchecked", with([](Job& job) {
             job.kit.visited_on = "2026-11-25";
             job.kit.of(Instrument::thermometer).calibrated_on = "2024-05-02";
             job.kit.of(Instrument::thermometer).off_by = 4.0;
         }),
         Acts{"look at thermometer", "take spare thermometer"} + hot_bath +
             Acts{"measure temperature at bath tap"},
         hot_bath + Acts{"measure temperature at bath tap"}, "past the date on its label"},
    };
}

std::vector<Danger> of_handover() {
    const Acts pulled = inside + Acts{"unplug inlet sensor"};
    const Acts hose{"shut gas at heater", "open test point inlet", "attach manometer to inlet"};
    Job asked = test_job();
    asked.customer.agrees = Consent::when_asked;
    return {
        {"H35",
         "WhoComesAfterYou",
         "no_record",
         test_job(),
         {"look at display", "write cause no_fault", "write because #1", "write done looked",
          "write told all", "hand in"},
         {"look at display", "hand in"},
         "The record is not complete"},
        {"H35",
         "CustomerWhoWasNotTold",
         "not_told",
         test_job(),
         {"tell customer all", "hand in"},
         {"hand in"},
         "The customer was not told"},
        {"H35",
         "CustomerWhoWasNotAsked",
         "no_consent",
         asked,
         {"ask customer for consent", "switch power off"},
         {"switch power off"},
         "before the customer was asked"},
        {"H35", "HouseholdWithToolsOnTheHeater", "tools_left", test_job(),
         hose + Acts{"take manometer off", "close test point inlet", "hand in"},
         hose + Acts{"hand in"}, "tools hang on the heater"},
        {"H35", "HouseholdOfASensorLeftOut", "sensor_left_out", test_job(),
         pulled + Acts{"plug in inlet sensor", "hand in"}, pulled + Acts{"hand in"},
         "a sensor is unplugged"},
        {"H35", "HandsOnSharpSheet", "no_gloves", test_job(), inside + Acts{"replace igniter"},
         dead + Acts{"replace igniter"}, "with bare hands"},
    };
}

}  // namespace

std::vector<Danger> dangers_of_the_place() {
    std::vector<Danger> all = of_water();
    for (auto& group : {of_heights_and_sheet(), of_what_stays(), of_handover()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace emberpath::worksite
