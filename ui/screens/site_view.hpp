#pragma once
/// What the drawing sheet shows: the house, its services and the heater, as far as the trainee has seen
/// them. Plain words and trade units; nothing here says what is wrong.

#include <optional>
#include <string>
#include <vector>

namespace emberpath::screens {

enum class GasSource { meter, cylinder };
enum class FixtureKind { sink, basin, shower, bath, laundry_tub, cooktop, oven, room_heater };

/// A tap or another gas appliance, as it stands now.
struct FixtureView {
    FixtureKind kind = FixtureKind::sink;
    std::string name{};    // "kitchen tap"
    std::string state{};   // "½ open", "off"
    double opening = 0.0;  // of a tap: 0 shut to 1 open; of an appliance: 0 or 1
    bool hot = false;      // hot water is felt there now
};

struct RoomView {
    std::string name{};  // "Kitchen"
    std::vector<FixtureView> fixtures{};
};

/// Where on the drawing something is.
enum class Spot {
    gas_inlet,
    gas_manifold,
    gas_regulator,
    inlet_pipe,
    outlet_pipe,
    exchanger_pipe,
    flame_lead,
    supply_terminals,
    flow_sensor,
    fan,
    flue_sample,
    room_air,
    tap,  // which one: PointView::fixture
    // Parts without a tag.
    gas_source,    // meter or cylinder
    source_valve,  // gas valve at the meter or cylinder
    heater_gas_valve,
    heater_water_valve,
    water_main,
    power_point,
    flue_terminal,
    heater,
    appliance,  // which one: PointView::fixture
    // On the heater's own sheet.
    exchanger_fins,
    burner,
    igniter,
    control_board,
    gas_valve,
    display,
};

enum class PointShape { pressure, temperature, electrical, flow, air, part };

/// A place where something can be attached, measured or done.
struct PointView {
    std::string tag{};   // "P1"; for a part its word: "flue terminal"
    std::string name{};  // "gas pressure at the heater inlet"
    std::string note{};  // short words beside it where there is room: "gas inlet"
    PointShape shape = PointShape::part;
    Spot spot = Spot::heater;
    int fixture = -1;             // taps and appliances: counted through all rooms
    std::string tool{};           // attached here: "manometer"; empty: nothing
    std::vector<int> balloons{};  // readings taken here
    bool out_of_reach = false;    // under the cover while it is on
};

/// A reading the trainee may see while looking at the burner window; absent: they are not looking.
struct FlameView {
    bool lit = false;
    double height = 0.0;  // 0 to 1 of full rate
    double unrest = 0.0;  // 0 steady to 1 lifting and falling
    bool yellow = false;
    bool spark = false;
};

struct HeaterView {
    bool cover_off = false;
    std::optional<FlameView> flame{};
    double fan_turns_per_s = 0.0;  // as heard; 0: silent
    bool board_shown = true;
};

/// Services as the trainee last set or found them.
struct FlowView {
    bool cold_moving = false, hot_moving = false, gas_moving = false;
};

struct SiteView {
    std::string outside = "Street side";  // what lies to the left of the house
    std::string heater_room = "Utility";
    GasSource gas = GasSource::meter;
    std::string meter_figure{};  // as the dial shows it; empty: not read
    std::vector<RoomView> rooms{};
    std::vector<PointView> points{};
    HeaterView heater{};
    FlowView flow{};
    double seconds = 0.0;  // of simulated time, for what moves
};

/// Where the eye is on a sheet.
struct Camera {
    double zoom = 1.0;        // 1 fits the whole drawing
    double x = 0.0, y = 0.0;  // shift from the middle [logical px]
    bool placed =
        false;  // moved or looked through before; else what is to be seen is in the middle
    std::string shows{};  // node of what it was moved for; another one is brought into view
};

}  // namespace emberpath::screens
