#include "tests/validation/transient_stories.hpp"

namespace emberpath::validation {

using controller::Event;
using laws::House;
using enum Reading;
using enum Moves;

namespace {

/// What every lockout of a running heater looks like from outside.
const std::vector<Expected> goes_out{{gas_rate, falls},       {flame_current, falls},
                                     {outlet, falls},         {working_pressure, rises},
                                     {carbon_dioxide, falls}, {oxygen, rises}};

Story locks_out(std::string_view name, double asked_lpm, void (*happens)(House&), double watched_s,
                std::vector<Event> responses) {
    return {.name = name,
            .asked_lpm = asked_lpm,
            .happens = happens,
            .watched_s = watched_s,
            .expected = goes_out,
            .straying = {-0.5, 0.5, -38.0, -30.0},
            .responses = std::move(responses),
            .locks_out = true};
}

std::vector<Story> sensors() {
    constexpr double open_ohm = 5.0e6;
    return {
        locks_out("outlet sensor opens at 10 L/min", 10.0,
                  [](House& h) { parts(h).outlet_sensor.series_ohm = open_ohm; }, 60.0,
                  {Event::outlet_sensor_out_of_range}),
        locks_out("inlet sensor opens at 10 L/min", 10.0,
                  [](House& h) { parts(h).inlet_sensor.series_ohm = open_ohm; }, 60.0,
                  {Event::inlet_sensor_out_of_range}),
        locks_out("exchanger sensor shorts at 10 L/min", 10.0,
                  [](House& h) { parts(h).exchanger_sensor.parallel_s = 1.0; }, 60.0,
                  {Event::exchanger_sensor_out_of_range}),
        locks_out("overheat limiter opens by itself at 10 L/min", 10.0,
                  [](House& h) { parts(h).limiter_bad = 1.0; }, 60.0,
                  {Event::overheat_limiter_open}),
    };
}

std::vector<Story> gas_and_flame() {
    Story low_gust{.name = "gusts at the terminal at 3.5 L/min",
                   .asked_lpm = 3.5,
                   .happens = [](House& h) { parts(h).gust_amplitude = 0.8; },
                   .each_tick = gust,
                   .watched_s = 90.0,
                   .expected = {{gas_rate, falls},
                                {flame_current, falls},
                                {outlet, falls},
                                {carbon_dioxide, falls},
                                {oxygen, rises}},
                   .straying = {-0.5, 5.0, -38.0, -30.0},
                   .responses = {Event::flame_lost},
                   .locks_out = true};  // the third time
    Story shut_off = locks_out("gas shut off at the meter at 10 L/min", 10.0,
                               [](House& h) { h.inputs.surroundings.gas_meter_valve = 0.0; }, 60.0,
                               {Event::flame_lost, Event::no_flame_at_light_up});
    shut_off.expected[3] = {working_pressure, falls};
    return {
        shut_off,
        {.name = "igniter dead when a tap opens, 10 L/min",
         .asked_lpm = 0.0,
         .happens =
             [](House& h) {
                 parts(h).igniter_works = 0.0;
                 h.open_taps(10.0);
             },
         .watched_s = 60.0,
         .expected = {{gas_rate, stays},
                      {flame_current, stays},
                      {carbon_dioxide, stays},
                      {oxygen, stays},
                      {water_flow, rises}},
         .straying = {-60.0, -30.0},
         .responses = {Event::no_flame_at_light_up},
         .locks_out = true},
        low_gust,
    };
}

std::vector<Story> air_and_heat() {
    Story stuck = locks_out("gas valve sticks at full pressure at 10 L/min", 10.0,
                            [](House& h) {
                                parts(h).gas_valve_stuck = 1.0;
                                parts(h).gas_valve_held_pa = 950.0;
                            },
                            120.0, {Event::overheat_limiter_open});
    // 34 kW into 10 L/min would end 14 K too hot, and the bypass opens to cool what it can.
    stuck.straying = {8.0, 25.0, -38.0, -30.0};
    Story scaled = locks_out("strong scale in the exchanger at 16 L/min", 16.0,
                             [](House& h) { parts(h).scale_k_per_w = 0.6 * 0.0022; }, 90.0,
                             {Event::overheat_limiter_open});
    return {
        locks_out("flue blocked almost shut at 16 L/min", 16.0,
                  [](House& h) { parts(h).flue_resistance *= 30.0; }, 90.0,
                  {Event::air_path_restricted}),
        scaled,
        stuck,
    };
}

}  // namespace

std::vector<Story> fault_stories() {
    return joined({sensors(), gas_and_flame(), air_and_heat()});
}

}  // namespace emberpath::validation
