// Short cuts of jobs on gas, cylinders, air and flue.

#include "tests/jobs/short_cuts.hpp"

namespace emberpath {

namespace {

using namespace short_cut;
using worksite::Quantity;

const Script up{"raise supply regulator", "raise supply regulator"};

ShortCut regulator_raised(const char* name, const char* job, const Script& turns) {
    return {name,
            job,
            draw("bath tap"),
            turns + Script{"wait 60 s", "measure temperature at bath tap"},
            warm,
            hot,
            hotter,
            {"an open burner takes"},
            {"regulator_raised", "pressure_left", "not_reported"}};
}

std::vector<ShortCut> of_gas() {
    constexpr std::uint64_t joint_weeps =
        20;  // a seed whose first joint is one of the one in eight
    const Script pressure_read{"shut gas at heater",     "open test point inlet",
                               "zero manometer",         "attach manometer to inlet",
                               "open gas at heater",     "read manometer",
                               "shut gas at heater",     "take manometer off",
                               "close test point inlet", "open gas at heater"};
    return {
        regulator_raised("RegulatorRaisedForAThinPipe", "sorrel", up + up),
        regulator_raised("RegulatorRaisedForAWeakSupply", "heron", up),
        {"PressureMeasuredAndTheJointNotTested",
         "heron",
         {},
         pressure_read,
         Quantity::gas_inlet_pressure,
         1500.0,
         2600.0,
         {"Gas escaped: "},
         {"leak_left", "not_reported"},
         joint_weeps},
    };
}

std::vector<ShortCut> of_cylinders() {
    const Script bath = draw("bath tap");
    return {
        {"HotWaterOverTheCylinder",
         "quarry",
         bath,
         Script{"close bath tap", "warm cylinder", "wait 5 min", "press reset"} +
             draw("kitchen tap"),
         warm,
         hot,
         hotter,
         {"Hot water was poured over the cylinder: where it runs the vapour can stand at "},
         {"cylinder_warmed", "cylinder_left", "not_reported"}},
        regulator_raised("RegulatorRaisedAtTheCylinder", "sedge", up),
    };
}

std::vector<ShortCut> of_air_and_flue() {
    const Script bath = draw("bath tap"), kitchen = draw("kitchen tap");
    return {
        reset_alone("ResetOnAWindyDay", "harrier", kitchen, "kitchen tap", kitchen),
        reset_alone("ResetAndWashedHandsUnderABlockedFlue", "linnet", bath, "bath tap",
                    draw("basin tap")),
        {"HeightStoredSoThatTheAirLooksEnough",
         "linnet",
         bath,
         Script{"close bath tap"} + isolate + to_the_settings +
             Script{"change altitude setting to 1800 m", "refit cover"} + restart + bath,
         warm,
         hot,
         hotter,
         {"The flue gas had a CO/CO2 of up to"},
         {"off_plate", "no_combustion_test"}},
        that_bites_as_found(
            {"DraughtTestedKindly",
             "mallow",
             {"open kitchen tap", "run range hood", "wait 2 min", "test draught with smoke"},
             {"stop range hood", "open kitchen window", "wait 60 s", "test draught with smoke",
              "close kitchen window"},
             Quantity::diverter_smoke,
             0.0,
             0.4,
             {" % of the products of combustion entered the room"},
             {"spillage_left", "scorch_left"}},
            "a test is no work: the room is as it was"),
    };
}

}  // namespace

std::vector<ShortCut> short_cuts_of_gas_and_flue() {
    std::vector<ShortCut> all = of_gas();
    for (const auto& group : {of_cylinders(), of_air_and_flue()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace emberpath
