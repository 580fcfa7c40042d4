#pragma once
/// The house as a drawing: rooms in a row, pipes under the floor, fixtures in their rooms. Lengths are
/// drawing units; the whole is scaled to the sheet. Any site gives a plan: nothing is drawn by hand.

#include <map>
#include <utility>

#include "ui/kit/geometry.hpp"
#include "ui/screens/site_view.hpp"

namespace emberpath::screens {

enum class Service { gas, cold, hot, power, flue };

struct PipeRun {
    Service service = Service::cold;
    kit::Path path;  // in the direction of flow
    bool moving = false;
    bool letters = true;
    bool rises = false;     // crosses other pipes on a bridge
    double own_main = 0.0;  // this much of its beginning belongs to the main it leaves
};

struct Valve {
    kit::Point at;
    bool upright = false;  // on an upright pipe
    Service service = Service::cold;
};

struct PlacedRoom {
    std::string name;
    kit::Rect r;
};

struct PlacedFixture {
    FixtureView view;
    kit::Rect r;  // where it stands
    int index = 0;
};

/// Where a point's leader ends, and where its mark would best be drawn.
struct Anchor {
    kit::Point target, mark;
};

struct HousePlan {
    kit::Rect extent;  // all that is drawn
    kit::Rect house;   // outside of its walls
    double ground_y = 0.0;
    kit::Rect heater;  // its case
    kit::Rect source;  // meter box or cylinder
    std::vector<PlacedRoom> rooms;
    std::vector<PlacedFixture> fixtures;
    std::vector<PipeRun> pipes;
    std::vector<kit::Point> junctions;
    std::vector<std::size_t> junction_pipes;  // index of the pipe each belongs to
    std::vector<Valve> valves;
    kit::Path flue;  // centre line from the heater to the terminal
    std::map<std::pair<Spot, int>, Anchor> anchors;
};

[[nodiscard]] HousePlan plan_of(const SiteView& site);

/// Size of the heater's case in its own units, and of the house's walls.
inline constexpr kit::Size heater_units{190.0, 224.0};
inline constexpr double wall = 9.0;

}  // namespace emberpath::screens
