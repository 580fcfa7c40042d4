#include "tests/validation/transient_stories.hpp"

namespace emberpath::validation {

using controller::Event;
using laws::House;
using enum Reading;
using enum Moves;

namespace {

/// A tap is opened on a cold heater that never lights: water runs cold, nothing burns, all is at rest again.
Story never_lights(std::string_view name, void (*happens)(House&), Event response) {
    return {.name = name,
            .asked_lpm = 0.0,
            .happens = happens,
            .watched_s = 60.0,
            .expected = {{gas_rate, stays},
                         {flame_current, stays},
                         {carbon_dioxide, stays},
                         {fan_speed, stays},
                         {water_flow, rises}},
            .straying = {-60.0, -25.0},
            .responses = {response},
            .locks_out = true};
}

std::vector<Story> starts() {
    Story empty = never_lights(
        "cylinder empty when a tap opens, propane",
        [](House& h) {
            parts(h).cylinder_empty = 1.0;
            h.open_taps(10.0);
        },
        Event::no_flame_at_light_up);
    empty.propane = true;
    empty.expected.push_back({working_pressure, falls});
    Story standstill = never_lights(
        "flow sensor stands still when a tap opens",
        [](House& h) {
            parts(h).flow_sensor_gain = 0.0;
            h.open_taps(10.0);
        },
        Event::none);
    standstill.responses = {};
    standstill.locks_out = false;
    return {
        never_lights(
            "tachometer shows three fifths when a tap opens",
            [](House& h) {
                parts(h).tachometer_gain = 0.6;
                h.open_taps(10.0);
            },
            Event::no_flame_at_light_up),
        never_lights(
            "tachometer dead when a tap opens",
            [](House& h) {
                parts(h).tachometer_gain = 0.0;
                h.open_taps(10.0);
            },
            Event::fan_speed_not_reached),
        never_lights(
            "gas valve sticks nearly shut when a tap opens",
            [](House& h) {
                parts(h).gas_valve_stuck = 1.0;
                parts(h).gas_valve_held_pa = 30.0;
                h.open_taps(10.0);
            },
            Event::no_flame_at_light_up),
        never_lights(
            "flame electrode dead when a tap opens",
            [](House& h) {
                parts(h).ionisation_gain = 0.05;
                h.open_taps(10.0);
            },
            Event::no_flame_at_light_up),
        empty,
        standstill,
    };
}

std::vector<Story> lockouts() {
    const std::vector<Expected> goes_out{{gas_rate, falls},       {flame_current, falls},
                                         {outlet, falls},         {working_pressure, rises},
                                         {carbon_dioxide, falls}, {oxygen, rises}};
    return {
        {.name = "pure propane in the mains gas at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h) = plant::with_propane_in_gas(parts(h), 1.0); },
         .expected = goes_out,
         .straying = {5.0, 30.0, -38.0, -30.0},
         .responses = {Event::overheat_limiter_open},
         .locks_out = true},
        {.name = "exchanger choked with soot at full draw",
         .asked_lpm = 16.0,
         .happens =
             [](House& h) {
                 parts(h).gas_side_ua_factor = 0.7;
                 parts(h).air_exchanger_resistance *= 5.0;
                 parts(h).soot = 1.0;
             },
         .expected = goes_out,
         .straying = {-0.5, 2.0, -38.0, -30.0},
         .responses = {Event::air_path_restricted},
         .locks_out = true},
        {.name = "gas valve sticks at two fifths of full pressure at full draw",
         .asked_lpm = 16.0,
         .happens =
             [](House& h) {
                 parts(h).gas_valve_stuck = 1.0;
                 parts(h).gas_valve_held_pa = 380.0;
             },
         .watched_s = 120.0,
         .expected = goes_out,
         .straying = {-0.5, 2.0, -38.0, -30.0},
         .responses = {Event::flame_lost},
         .locks_out = true},
    };
}

std::vector<Story> unnoticed() {
    const std::vector<Expected> nothing{{gas_rate, stays},  {outlet, stays},
                                        {fan_speed, stays}, {water_flow, stays},
                                        {oxygen, stays},    {flame_current, stays}};
    return {
        {.name = "tap shut for half a minute and opened again, 10 L/min",
         .happens =
             [](House& h) {
                 h.open_taps(0.0);
                 h.run(30.0);
                 h.open_taps(10.0);
             },
         .watched_s = 90.0,
         .expected = nothing,
         .straying = {0.0, 2.5, -20.0, -10.0}},
        {.name = "exchanger sensor drifts at 10 L/min",
         .happens = [](House& h) { parts(h).exchanger_sensor.gain = 1.3; },
         .expected = nothing,
         .straying = {-0.2, 0.2, -0.2, 0.2}},
        {.name = "inlet sensor drifts and reads cold at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).inlet_sensor.gain = 1.4; },
         .watched_s = 120.0,
         .expected = {{water_flow, falls},
                      {gas_rate, falls},
                      {fan_speed, falls},
                      {correction, falls},
                      {outlet, stays}},
         .straying = {0.0, 8.0, -2.0, 0.5}},
        {.name = "strainer blocked at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).strainer_resistance += 3.96 * 3.6e12; },
         .watched_s = 90.0,
         .expected = {{water_flow, falls},
                      {gas_rate, falls},
                      {fan_speed, falls},
                      {outlet, stays},
                      {working_pressure, rises}},
         .straying = {0.0, 3.0, -2.0, 0.5}},
        {.name = "water valve sticks open at full draw",
         .asked_lpm = 16.0,
         .happens =
             [](House& h) {
                 parts(h).water_valve_stuck = 1.0;
                 parts(h).water_valve_position = 1.0;
             },
         .watched_s = 90.0,
         .expected = {{water_flow, rises},
                      {outlet, falls},
                      {oxygen, stays},
                      {working_pressure, stays},
                      {carbon_monoxide, stays}},
         .straying = {-0.5, 0.5, -8.0, -2.0}},
        {.name = "tachometer shows a fifth too little at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).tachometer_gain = 0.8; },
         .watched_s = 90.0,
         .expected = {{fan_speed, rises},
                      {air, rises},
                      {oxygen, rises},
                      {carbon_dioxide, falls},
                      {flame_current, falls},
                      {working_pressure, stays}},
         .straying = {-0.5, 1.0, -4.0, 0.5}},
    };
}

}  // namespace

std::vector<Story> wear_stories() {
    return joined({starts(), lockouts(), unnoticed()});
}

}  // namespace emberpath::validation
