#include "tests/validation/transient_stories.hpp"

namespace emberpath::validation {

using laws::House;
using enum Reading;
using enum Moves;

namespace {

/// Mains gas with a fifth of its volume propane.
void mix_in_propane(House& house) {
    parts(house) = plant::with_propane_in_gas(parts(house), 0.2);
}

std::vector<Story> gas_supply() {
    const std::vector<Expected> starved{{working_pressure, falls}, {manifold_pressure, falls},
                                        {gas_rate, falls},         {outlet, falls},
                                        {oxygen, rises},           {carbon_dioxide, falls},
                                        {flame_current, falls},    {water_flow, stays}};
    return {
        {.name = "gas pipe far too narrow at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).gas_pipe_resistance *= 15.0; },
         .watched_s = 90.0,
         .expected = starved,
         .straying = {-0.5, 0.5, -10.0, -2.0}},
        {.name = "gas regulator droops at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).regulator_droop *= 12.0; },
         .watched_s = 90.0,
         .expected = starved,
         .straying = {-0.5, 0.5, -12.0, -1.0}},
        {.name = "a fifth of propane in the mains gas at full draw",
         .asked_lpm = 16.0,
         .happens = mix_in_propane,
         .watched_s = 120.0,
         .expected = {{carbon_dioxide, rises},
                      {oxygen, falls},
                      {carbon_monoxide, rises},
                      {flame_current, rises},
                      {correction, falls},
                      {outlet, stays}},
         .straying = {1.0, 8.0, -1.0, 1.0}},
        {.name = "injector of bank 1 choked by a third at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).injector_m2[0] *= 0.67; },
         .watched_s = 90.0,
         .expected = {{gas_rate, falls},
                      {flame_current, falls},
                      {oxygen, rises},
                      {carbon_dioxide, falls},
                      {correction, rises}},
         .straying = {-0.5, 1.0, -4.0, -0.3}},
        {.name = "gas for 20 minutes from a nearly empty cylinder at full draw",
         .propane = true,
         .asked_lpm = 16.0,
         .happens =
             [](House& h) {
                 h.heater.plant.state[plant::cylinder_liquid_kg] = 3.0;
                 h.inputs.surroundings.cylinder_ambient_k = 275.15;
             },
         .watched_s = 1200.0,
         .expected = {{working_pressure, falls},
                      {manifold_pressure, falls},
                      {gas_rate, falls},
                      {outlet, falls},
                      {oxygen, rises},
                      {flame_current, falls}},
         .straying = {-0.5, 1.0, -36.0, -1.0}},
    };
}

std::vector<Story> air_and_flue() {
    return {
        {.name = "flue terminal partly blocked at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).flue_resistance *= 1.7; },
         .watched_s = 90.0,
         .expected = {{fan_speed, rises},
                      {air, stays},
                      {gas_rate, stays},
                      {outlet, stays},
                      {carbon_monoxide, stays}},
         .straying = {-0.5, 0.5, -0.5, 0.5}},
        {.name = "gusts at the terminal at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).gust_amplitude = 0.6; },
         .each_tick = gust,
         .watched_s = 88.0,
         .expected = {{fan_speed, rises},
                      {gas_rate, stays},
                      {outlet, stays},
                      {water_flow, stays},
                      {working_pressure, stays}},
         .straying = {-0.5, 1.0, -1.0, 0.5}},
        {.name = "worn fan at full draw",
         .asked_lpm = 16.0,
         .happens =
             [](House& h) {
                 parts(h).fan_drive = 0.76;
                 parts(h).fan_head *= 0.82;
                 parts(h).fan_bearing_a = 0.072;
             },
         .watched_s = 120.0,
         .expected = {{air, falls},
                      {oxygen, falls},
                      {carbon_dioxide, rises},
                      {carbon_monoxide, rises},
                      {flame_current, rises},
                      {outlet, stays}},
         .straying = {-0.5, 1.0, -1.0, 0.5}},
        {.name = "soot on the fins at full draw",
         .asked_lpm = 16.0,
         .happens =
             [](House& h) {
                 parts(h).gas_side_ua_factor = 0.85;
                 parts(h).air_exchanger_resistance *= 2.0;
                 parts(h).soot = 0.5;
             },
         .watched_s = 120.0,
         .expected = {{flue, rises},
                      {carbon_monoxide, rises},
                      {fan_speed, rises},
                      {correction, rises},
                      {working_pressure, stays}},
         .straying = {-0.5, 0.5, -3.0, 0.0}},
    };
}

std::vector<Story> sensing() {
    return {
        {.name = "flame electrode fouled at 10 L/min",
         .happens = [](House& h) { parts(h).ionisation_gain = 0.4; },
         .expected = {{flame_current, falls},
                      {gas_rate, stays},
                      {outlet, stays},
                      {carbon_dioxide, stays},
                      {fan_speed, stays}},
         .straying = {-0.2, 0.2, -0.2, 0.2}},
        {.name = "outlet sensor drifts and reads hot at 10 L/min",
         .happens = [](House& h) { parts(h).outlet_sensor.gain = 0.85; },
         .watched_s = 120.0,
         .expected = {{outlet, falls},
                      {gas_rate, falls},
                      {fan_speed, falls},
                      {flue, falls},
                      {correction, falls},
                      {manifold_pressure, falls}},
         .straying = {-0.5, 0.2, -9.0, -3.0}},
        {.name = "flow sensor reads 30 % low at full draw",
         .asked_lpm = 16.0,
         .happens = [](House& h) { parts(h).flow_sensor_gain = 0.7; },
         .watched_s = 120.0,
         .expected = {{outlet, falls},
                      {water_flow, rises},
                      {correction, rises},
                      {oxygen, stays},
                      {carbon_monoxide, stays}},
         .straying = {-0.5, 0.5, -12.0, -2.0}},
        {.name = "bypass sticks half open at 10 L/min",
         .happens =
             [](House& h) {
                 parts(h).bypass_stuck = 1.0;
                 parts(h).bypass_position = 0.5;
             },
         .watched_s = 90.0,
         .expected = {{exchanger_outlet, rises},
                      {hottest_metal, rises},
                      {outlet, stays},
                      {working_pressure, stays},
                      {oxygen, stays}},
         .straying = {-0.5, 1.5, -4.0, 0.0}},
        {.name = "water valve sticks half shut at full draw",
         .set_c = 42.0,
         .asked_lpm = 16.0,
         .happens =
             [](House& h) {
                 parts(h).water_valve_stuck = 1.0;
                 parts(h).water_valve_position = 0.5;
             },
         .watched_s = 90.0,
         .expected = {{water_flow, falls},
                      {gas_rate, falls},
                      {fan_speed, falls},
                      {outlet, stays},
                      {working_pressure, rises}},
         .straying = {-0.5, 2.0, -2.0, 0.5}},
    };
}

}  // namespace

std::vector<Story> silent_stories() {
    return joined({gas_supply(), air_and_flue(), sensing()});
}

}  // namespace emberpath::validation
