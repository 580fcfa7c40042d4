// Short cuts of jobs on water, control, current, two causes at once, and of jobs without a fault.

#include "tests/jobs/short_cuts.hpp"

namespace emberpath {

namespace {

using namespace short_cut;
using worksite::Quantity;

constexpr double dark = 0.0;  // no word on the display

const Script bridge_limiter =
    isolate + Script{"bridge limiter"} + restore + restart + draw("kitchen tap");

/// It starts at a trickle, and fires for more water than there is: where more runs, until it is too hot inside.
ShortCut other_count(const char* name, const char* job, const Script& drawn, const std::string& tap,
                     const Script& bites) {
    return {name,
            job,
            drawn,
            Script{"close " + tap} + isolate +
                Script{"shut water at heater", "drain heater", "fit flow sensor of another count",
                       "open water at heater"} +
                restore + drawn,
            warm,
            hot,
            hotter,
            bites,
            {"bridged"}};
}

std::vector<ShortCut> of_water() {
    const Script bath = draw("bath tap");
    const Script flow{"measure flow at bath tap"};
    const Script trickle{"open kitchen tap a little", "wait 2 min",
                         "measure temperature at kitchen tap"};
    const Script without_screen{"close bath tap", "shut water at heater", "drain heater",
                                "leave inlet strainer out", "open water at heater"};
    return {
        {"InletWithoutItsScreen",
         "teasel",
         bath + flow,
         without_screen + bath + flow,
         Quantity::tap_flow,
         litres_a_minute(12.0),
         litres_a_minute(20.0),
         {"not hot enough"},
         {"strainer_out"}},
        other_count("FlowSensorOfAnotherCountForAClog", "pumice", draw("upstairs shower"),
                    "upstairs shower", {takes}),
        other_count("FlowSensorOfAnotherCountForASticking", "vetch", trickle, "kitchen tap",
                    {takes, "The heater locked out"}),
        that_bites_as_found(
            {"AnotherTapRunBesideADeadShower",
             "pumice",
             draw("upstairs shower"),
             {"open kitchen tap", "wait 2 min", "measure temperature at upstairs shower"},
             warm,
             hot,
             hotter,
             {" cold"},
             {}},
            "alone the shower is as cold as it was"),
    };
}

std::vector<ShortCut> of_control() {
    const Script kitchen = draw("kitchen tap");
    return {
        {"SetLowerForTheBoyAndNobodyTold",
         "lupin",
         draw("basin tap"),
         {"set temperature to 50 °C", "wait 60 s", "measure temperature at basin tap"},
         warm,
         celsius + 47.0,
         celsius + 53.0,
         {"found it set lower than they had it and set it back"},
         {"not_told"},
         1,
         false},
        {"KitchenTurnedDownForTheBathroom",
         "plover",
         draw("shower"),
         {"set kitchen controller to 41 °C", "wait 60 s", "measure temperature at shower"},
         warm,
         celsius + 39.0,
         celsius + 43.0,
         {"found it set lower than they had it and set it back"},
         {"not_told"},
         1,
         false},
        that_bites_as_found({"LeftAsTheyAskedForIt",
                             "lupin",
                             {},
                             kitchen,
                             warm,
                             celsius + 62.0,
                             celsius + 67.0,
                             {takes},
                             {"delivery_limit", "set_hot", "scald_left"}},
                            "to leave it so is the short cut"),
        {"LimiterBridgedOverAWrongSetting",
         "marigold",
         kitchen,
         Script{"close kitchen tap"} + bridge_limiter,
         warm,
         hot,
         hotter,
         {takes},
         {"bridged", "bridge_left", "left_unsafe"}},
    };
}

std::vector<ShortCut> of_current() {
    const Script kitchen = draw("kitchen tap");
    return {
        followed_by({"SwitchThatIsTrusted",
                     "flint",
                     {"look at display"},
                     {"switch power off", "look at display"},
                     Quantity::display_word,
                     dark,
                     dark,
                     {" mA from hand to hand"},
                     {"cover_off_live", "live_work"}},
                    {"take cover off", "unplug outlet sensor"}),
        {"OutletWithoutASafetySwitch",
         "willow",
         kitchen,
         Script{"close kitchen tap", "use outlet without safety switch", "close safety switch",
                "press reset"} +
             kitchen,
         warm,
         hot,
         hotter,
         {"leaked to earth, and no safety switch opened"},
         {"no_safety_switch", "leakage_left"}},
    };
}

std::vector<ShortCut> of_two_causes() {
    const Script kitchen = draw("kitchen tap");
    return {
        {"LimiterBridgedOverScale",
         "rowan",
         kitchen,
         Script{"close kitchen tap"} + bridge_limiter,
         warm,
         hot,
         hotter,
         {"it was bridged and stopped nothing"},
         {"bridged", "bridge_left"}},
        {"RegulatorRaisedForTheSecondOfTwoCauses",
         "clover",
         kitchen,
         Script{"close kitchen tap"} + isolate + Script{"replace outlet sensor"} + restore +
             Script{"press reset", "raise supply regulator", "raise supply regulator",
                    "raise supply regulator", "raise supply regulator"} +
             draw("bath tap"),
         warm,
         hot,
         hotter,
         {"an open burner takes"},
         {"regulator_raised", "pressure_left", "not_reported"}},
    };
}

std::vector<ShortCut> of_use() {
    const Script bath = draw("bath tap"), kitchen = draw("kitchen tap");
    return {
        that_burns({"HeaterTurnedUpForATiredTemperingValve",
                    "osier",
                    bath,
                    {"set temperature to 60 °C", "wait 60 s", "measure temperature at bath tap"},
                    warm,
                    celsius + 45.0,
                    hotter,
                    {"Left set to 60.0 °C"},
                    {"set_hot"}},
                   1.0),
        {"TemperingValveBypassed",
         "osier",
         bath,
         Script{"close bath tap", "shut water at heater", "drain heater", "put on gloves",
                "fit bridging conductor", "bypass tempering valve", "take bridging conductor off",
                "open water at heater"} +
             bath,
         warm,
         celsius + 46.0,
         hotter,
         {" at the shower: a hand held in it for five seconds"},
         {"bridged", "delivery_limit", "not_reported"}},
        that_burns({"HighestTemperatureStoredForTheDishes",
                    "tansy",
                    kitchen,
                    Script{"close kitchen tap"} + isolate + to_the_settings +
                        Script{"change highest temperature to 75 °C", "refit cover",
                               "set temperature to 70 °C"} +
                        kitchen,
                    warm,
                    celsius + 66.0,
                    celsius + 74.0,
                    {" at the basin tap, which burns a hand in five seconds"},
                    {"delivery_limit", "set_hot", "scald_left"}},
                   1.0),
        {"SetLowerForTwoShowers",
         "juniper",
         {"open upstairs shower", "open downstairs shower", "wait 2 min",
          "measure flow at upstairs shower"},
         {"set temperature to 40 °C", "wait 2 min", "measure flow at upstairs shower"},
         Quantity::tap_flow,
         litres_a_minute(6.5),
         litres_a_minute(20.0),
         {"found it set lower than they had it and set it back"},
         {"not_told"},
         1,
         false},
    };
}

}  // namespace

std::vector<ShortCut> short_cuts_of_water_and_control() {
    std::vector<ShortCut> all = of_water();
    for (const auto& group : {of_control(), of_current(), of_two_causes(), of_use()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace emberpath
