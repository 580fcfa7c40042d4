#pragma once
/// The heater's anatomy in units of its case, 190 wide and 224 high. It is an invented generic heater: one
/// drawing at two sizes, inside the house and on its own sheet.

#include <array>

#include "ui/kit/geometry.hpp"
#include "ui/screens/site_view.hpp"

namespace emberpath::screens::heater_plan {

using kit::Point;

// Where pipes and wires pass through the case.
inline constexpr double gas_x = 46.0, cold_x = 158.0, hot_x = 122.0, terminal_y = 152.0;

// The burner.
inline constexpr int bars = 9;
inline constexpr double bar_left = 50.0, bar_step = 9.0, bar_top = 134.0, flame_max = 44.0;

struct Mark {
    Spot spot;
    Point target, mark;
};

/// Best places of marks on the house sheet, where the heater is small.
// clang-format off
inline constexpr std::array house_marks{
    Mark{Spot::gas_inlet,        {gas_x, 213.0},  {-26.0, 206.0}},
    Mark{Spot::gas_manifold,     {gas_x, 166.0},  {15.0, 179.0}},
    Mark{Spot::inlet_pipe,       {cold_x, 211.0}, {212.0, 210.0}},
    Mark{Spot::outlet_pipe,      {hot_x, 211.0},  {92.0, 211.0}},
    Mark{Spot::exchanger_pipe,   {149.0, 84.0},   {212.0, 78.0}},
    Mark{Spot::flame_lead,       {141.0, 119.0},  {212.0, 114.0}},
    Mark{Spot::supply_terminals, {20.0, 152.0},   {-24.0, 132.0}},
    Mark{Spot::flow_sensor,      {cold_x + 8.0, 188.0}, {212.0, 176.0}},
    Mark{Spot::fan,              {93.0, 186.0},   {118.0, 174.0}},
};

/// Best places of marks and words on the heater's own sheet. `words_left`: the note stands left of the mark.
struct SheetMark {
    Spot spot;
    Point target, mark;
    bool words_left = false;
};
inline constexpr std::array sheet_marks{
    SheetMark{Spot::exchanger_fins,   {50.0, 32.0},   {-56.0, 32.0}, true},
    SheetMark{Spot::control_board,    {12.0, 74.0},   {-56.0, 74.0}, true},
    SheetMark{Spot::igniter,          {40.0, 117.0},  {-56.0, 106.0}, true},
    SheetMark{Spot::supply_terminals, {14.0, 152.0},  {-20.0, 135.0}, true},
    SheetMark{Spot::gas_manifold,     {gas_x, 166.0}, {16.0, 174.0}, true},
    SheetMark{Spot::gas_inlet,        {gas_x, 216.0}, {14.0, 204.0}, true},
    SheetMark{Spot::gas_valve,        {58.0, 196.0},  {246.0, 150.0}},
    SheetMark{Spot::outlet_pipe,      {hot_x, 211.0}, {106.0, 212.0}, true},
    SheetMark{Spot::exchanger_pipe,   {149.0, 84.0},  {212.0, 78.0}},
    SheetMark{Spot::flame_lead,       {141.0, 119.0}, {212.0, 108.0}},
    SheetMark{Spot::burner,           {134.0, 141.0}, {246.0, 141.0}},
    SheetMark{Spot::fan,              {101.0, 178.0}, {118.0, 171.0}},
    SheetMark{Spot::flow_sensor,      {cold_x + 8.0, 189.0}, {212.0, 175.0}},
    SheetMark{Spot::inlet_pipe,       {cold_x, 212.0}, {212.0, 208.0}},
    SheetMark{Spot::heater_gas_valve, {gas_x, 236.0}, {gas_x, 236.0}, true},
    SheetMark{Spot::heater_water_valve, {cold_x, 236.0}, {cold_x, 236.0}},
    SheetMark{Spot::room_air,         {212.0, 20.0},  {212.0, 20.0}},
};
// clang-format on

}  // namespace emberpath::screens::heater_plan
