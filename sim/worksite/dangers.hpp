#pragma once
/// What else is dangerous at a house, beside the heater's own fault, and what the person at work has done about
/// it. By default nothing is. Sizes are chosen; docs/safety.md says what the simulation makes of each.

#include <cstdint>

#include "sim/math/hash.hpp"

namespace emberpath::worksite {

/// Of the house: read from [site.dangers].
struct Dangers {
    double leak_m3_per_s = 0.0;      // at 2 kPa, of the joint at the regulator, before anybody came
    bool low_place = false;          // a drain or pit where gas heavier than air gathers
    bool cylinder_close = false;     // the cylinder stands at the flue outlet
    bool scorched = false;           // something that burns is too close to the flue
    double terminal_height_m = 0.0;  // above ground; from 2 m it needs a ladder
    bool soft_ground = false;        // under that ladder
    bool old_sheet = false;          // flue and wall through grey sheet that may hold asbestos
    bool pipe_in_roof = false;       // the gas pipe run can only be seen from the roof space
    bool children = false;           // play where the work is
};

/// Of the attempt. Ticks are site ticks; -1: never.
struct Precautions {
    bool gas_on_arrival = false;  // it smelt when the door opened
    bool aired = false;           // doors and windows wide open
    bool people_out = false, kept_away = false;
    bool tested_first = false;  // a leak test before any joint was worked on
    bool low_checked = false;   // the detector was held down there
    bool cylinder_moved = false;
    bool looked_around = false;
    bool ladder_checked = false, ladder_tied = false, declined = false;
    bool place_told = false;           // somebody knows that one goes up into the roof space
    bool drained = false;              // the water side, since it was shut
    bool sheet_disturbed = false;      // that may hold asbestos
    std::int64_t draught_tested = -1;  // burner on, windows shut, every fan on
    bool draught_kindly = false;       // only with air to help it
    std::int64_t wiring_work = -1;     // mains wiring was worked on then
    double air_in_pipe_m3 = 0.0;       // in the gas pipe, until it is purged or has gone through
    double low_gas_m3 = 0.0;           // lying in the low place
    double acid_share = 0.0;           // of the descaling acid, left in the heater's water
    double most_acid = 0.0;            // of it, that came out of a tap
    double spilt_water_m3 = 0.0;       // over the floor
    double unscreened_m3 = 0.0;        // of water since the inlet's screen was left out
    double child_burn = 0.0;           // share of a burn that blisters
    double hottest_roof_k = 0.0;       // air one worked in
    double roof_s = 0.0;  // in the roof space since the last break that was long enough
    double longest_roof_s = 0.0;
    std::int64_t roof_left_tick = -1;
    std::int64_t in_gas_ticks = 0;  // in air above the limit of the rules, not aired
    std::int64_t open_case_ticks = 0;
};

void add_to(math::Hash& hash, const Precautions& precautions);

}  // namespace emberpath::worksite
