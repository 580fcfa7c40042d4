#include "tests/validation/transient_stories.hpp"

namespace emberpath::validation {

using laws::celsius;
using laws::House;
using enum Reading;
using enum Moves;

namespace {

void set_to(House& house, double set_c) {
    house.inputs.panel.set_point_k = set_c + celsius;
}

/// Taps left alone while water pressure or the set point changes.
Story flow_step(std::string_view name, double from_lpm, void (*happens)(House&), Straying band) {
    Story story{.name = name, .asked_lpm = from_lpm, .happens = happens, .straying = band};
    return story;
}

const std::vector<Expected> less_fire{
    {gas_rate, falls},   {fan_speed, falls},        {air, falls},
    {water_flow, falls}, {working_pressure, rises}, {outlet, stays}};
const std::vector<Expected> more_fire{
    {gas_rate, rises},   {fan_speed, rises},        {air, rises},
    {water_flow, rises}, {working_pressure, falls}, {outlet, stays}};

std::vector<Story> flow_steps() {
    std::vector<Story> all{
        flow_step("draw falls from 10 to 6 L/min", 10.0, [](House& h) { h.open_taps(6.0); },
                  {1.2, 1.8, -1.5, 0.5}),
        flow_step("draw falls from 16 to 10 L/min", 16.0, [](House& h) { h.open_taps(10.0); },
                  {1.2, 1.8, -1.5, 0.5}),
        flow_step("draw falls from 10 to 3.5 L/min", 10.0, [](House& h) { h.open_taps(3.5); },
                  {1.2, 2.0, -2.0, 0.5}),
        flow_step("draw rises from 6 to 10 L/min", 6.0, [](House& h) { h.open_taps(10.0); },
                  {-0.5, 1.5, -2.8, -1.9}),
        flow_step("draw rises from 3.5 to 10 L/min", 3.5, [](House& h) { h.open_taps(10.0); },
                  {-0.5, 3.0, -9.0, -2.0}),
    };
    for (std::size_t i = 0; i < 3; ++i) all[i].expected = less_fire;
    for (std::size_t i = 3; i < 5; ++i) all[i].expected = more_fire;
    all[2].watched_s = 120.0;
    return all;
}

std::vector<Story> set_point_steps() {
    return {
        {.name = "set point rises from 45 to 55 degC at 8 L/min",
         .set_c = 45.0,
         .asked_lpm = 8.0,
         .happens = [](House& h) { set_to(h, 55.0); },
         .watched_s = 90.0,
         .expected = {{outlet, rises},
                      {gas_rate, rises},
                      {fan_speed, rises},
                      {air, rises},
                      {working_pressure, falls}},
         .straying = {0.0, 3.0, -10.5, -9.0}},
        {.name = "set point falls from 55 to 42 degC at 8 L/min",
         .set_c = 55.0,
         .asked_lpm = 8.0,
         .happens = [](House& h) { set_to(h, 42.0); },
         .watched_s = 90.0,
         .expected = {{outlet, falls},
                      {gas_rate, falls},
                      {oxygen, rises},  // two banks of three burn, in the air of three
                      {carbon_dioxide, falls},
                      {working_pressure, rises}},
         .straying = {12.0, 13.5, -4.0, 0.0}},
    };
}

std::vector<Story> starts_and_stops() {
    return {
        {.name = "tap opened on a cold heater, 10 L/min",
         .asked_lpm = 0.0,
         .happens = [](House& h) { h.open_taps(10.0); },
         .watched_s = 90.0,
         .expected = {{outlet, rises},
                      {gas_rate, rises},
                      {fan_speed, rises},
                      {flame_current, rises},
                      {carbon_dioxide, rises},
                      {oxygen, falls},
                      {working_pressure, falls},
                      {flue, rises}},
         .straying = {0.0, 2.6, -37.0, -30.0}},
        {.name = "tap closed after 10 L/min",
         .happens = [](House& h) { h.open_taps(0.0); },
         .watched_s = 45.0,
         .expected = {{water_flow, falls},
                      {gas_rate, falls},
                      {flame_current, falls},
                      {fan_speed, falls},
                      {working_pressure, rises},
                      {flue, falls},
                      {oxygen, rises}},
         .straying = {-1.0, 15.0, -30.0, 0.0}},
        {.name = "mains power lost at 10 L/min",
         .happens = [](House& h) { h.inputs.surroundings.power_on = 0.0; },
         .watched_s = 60.0,
         .expected = {{gas_rate, falls},
                      {flame_current, falls},
                      {fan_speed, falls},
                      {outlet, falls},
                      {working_pressure, rises},
                      {carbon_dioxide, falls}},
         .straying = {-0.5, 0.5, -38.0, -30.0}},
    };
}

std::vector<Story> services() {
    return {
        {.name = "cold water drawn elsewhere, 24 L/min, at 16 L/min asked",
         .set_c = 42.0,
         .asked_lpm = 16.0,
         .happens = [](House& h) { h.inputs.surroundings.cold_draw_m3_per_s = 4.0e-4; },
         .expected = less_fire,
         .straying = {0.0, 2.0, -2.0, 0.0}},
        {.name = "water pressure falls from 400 to 150 kPa at 10 L/min",
         .happens = [](House& h) { h.inputs.surroundings.mains_water_pa = 150.0e3; },
         .expected = less_fire,
         .straying = {0.5, 2.5, -2.0, 0.5}},
        {.name = "inlet water 8 K colder at 8 L/min",
         .asked_lpm = 8.0,
         .happens = [](House& h) { h.inputs.surroundings.inlet_water_k -= 8.0; },
         .watched_s = 90.0,
         .expected = {{gas_rate, rises},
                      {fan_speed, rises},
                      {working_pressure, falls},
                      {water_flow, stays},
                      {outlet, stays}},
         .straying = {-0.5, 2.0, -2.0, 0.0}},
        {.name = "another appliance takes 23 kW of gas, heater at 8 L/min",
         .asked_lpm = 8.0,
         .happens = [](House& h) { h.inputs.surroundings.other_gas_m3_per_s = 6.0e-4; },
         .expected = {{working_pressure, falls},
                      {manifold_pressure, stays},
                      {gas_rate, stays},
                      {outlet, stays},
                      {oxygen, stays},
                      {flame_current, stays}},
         .straying = {-0.3, 0.3, -0.3, 0.3}},
    };
}

}  // namespace

std::vector<Story> use_stories() {
    return joined({flow_steps(), set_point_steps(), starts_and_stops(), services()});
}

}  // namespace emberpath::validation
