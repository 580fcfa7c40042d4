#pragma once
/// Walls, rooms, ground, fixtures, flue and supplies of a house plan.

#include "ui/screens/house_plan.hpp"
#include "ui/screens/sheet_pen.hpp"

namespace emberpath::screens {

/// Cut walls, roof, floor and ground, and the names of the rooms.
void draw_building(const SheetPen& pen, const HousePlan& plan, const SiteView& site,
                   LabelPlacer& placer);
void draw_flue(const SheetPen& pen, const HousePlan& plan);
/// Meter or cylinder, power point, fixtures; with their words where there is room.
void draw_supplies(const SheetPen& pen, const HousePlan& plan, const SiteView& site);
struct Spray {
    double seconds = 0.0;
    bool still = false;
};
void draw_fixture(const SheetPen& pen, const PlacedFixture& fixture, const Spray& spray);

}  // namespace emberpath::screens
