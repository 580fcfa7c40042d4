// Short cuts of jobs on ignition, flame and sensors.

#include "tests/jobs/short_cuts.hpp"

namespace emberpath {

namespace {

using namespace short_cut;
using worksite::Quantity;

std::vector<ShortCut> of_flame() {
    const Script kitchen = draw("kitchen tap");
    const Script analysed{"switch on analyser", "wait 60 s",  "put probe in flue",
                          "open bath tap",      "wait 2 min", "read analyser"};
    return {
        that_burns({"HeightStoredForAFlameThatIsSetTooHigh",
                    "basalt",
                    analysed,
                    Script{"close bath tap"} + isolate + to_the_settings +
                        Script{"change altitude setting to 1800 m", "refit cover", "open bath tap",
                               "wait 2 min", "read analyser", "take probe out"},
                    Quantity::flue_co,
                    0.0,
                    100.0e-6,
                    {"Left set to a height of 1800 m"},
                    {"off_plate", "no_combustion_test"}},
                   0.3),
        reset_alone("ResetOnADryMorning", "sundew", kitchen, "kitchen tap", kitchen),
        {"LeadTapedLive",
         "sundew",
         kitchen,
         {"close kitchen tap", "put on gloves", "take cover off", "tape igniter lead",
          "refit cover", "press reset", "open kitchen tap", "wait 2 min",
          "measure temperature at kitchen tap"},
         warm,
         hot,
         hotter,
         {"on the terminals beside your hands", "the igniter's lead is taped"},
         {"cover_off_live", "live_work"}},
    };
}

ShortCut resistor(const char* name, const char* job) {
    const Script at_once{"open kitchen tap", "wait 30 s", "measure temperature at kitchen tap"};
    return {name,
            job,
            draw("kitchen tap"),
            Script{"close kitchen tap"} + isolate + Script{"fit resistor for outlet sensor"} +
                restore + Script{"press reset"} + at_once,
            warm,
            hot,
            hotter,
            {takes},
            {"bridged", "scald_left"}};
}

std::vector<ShortCut> of_sensors() {
    const Script kitchen = draw("kitchen tap");
    return {
        {"SetLowerForASensorThatReadsLow",
         "fennel",
         kitchen,
         {"set temperature to 43 °C", "wait 60 s", "measure temperature at kitchen tap"},
         warm,
         celsius + 48.0,
         celsius + 52.0,
         {"found it set lower than they had it and set it back"},
         {"not_told"},
         1,
         false},
        {"SetLowerForASensorThatOpensWarm",
         "avocet",
         kitchen,
         Script{"close kitchen tap", "wait 5 min", "set temperature to 44 °C", "press reset"} +
             kitchen,
         warm,
         celsius + 42.0,
         celsius + 46.0,
         {"found it set lower than they had it and set it back"},
         {"not_told"},
         1,
         false},
        resistor("ResistorForASensorThatOpensWarm", "avocet"),
        resistor("ResistorForABrokenSensor", "tanager"),
    };
}

}  // namespace

std::vector<ShortCut> short_cuts_of_flame_and_sensors() {
    std::vector<ShortCut> all = of_flame();
    const auto sensors = of_sensors();
    all.insert(all.end(), sensors.begin(), sensors.end());
    return all;
}

}  // namespace emberpath
