// Site skills: readings.

#include <algorithm>
#include <array>

#include "sim/trainees/hands.hpp"

namespace emberpath::trainees {

namespace {

using worksite::Quantity;

constexpr std::int64_t warm_up_ticks = 600;
constexpr double poor_flow_m3s = 2.0 / 60000.0;  // hardly more than a trickle

std::string readout_item(Quantity quantity) {
    switch (quantity) {
        case Quantity::readout_flow:
            return "flow";
        case Quantity::readout_inlet:
            return "inlet temperature";
        case Quantity::readout_outlet:
            return "outlet temperature";
        case Quantity::readout_exchanger:
            return "exchanger temperature";
        case Quantity::readout_fan:
            return "fan speed";
        case Quantity::readout_fan_current:
            return "fan current";
        case Quantity::readout_flame:
            return "flame current";
        case Quantity::readout_firing_rate:
            return "firing rate";
        case Quantity::readout_manifold_command:
            return "manifold pressure";
        case Quantity::readout_correction:
            return "correction";
        case Quantity::readout_water_valve:
            return "water valve position";
        case Quantity::readout_fan_drive:
            return "fan drive";
        case Quantity::readout_air_trim:
            return "air trim";
        case Quantity::readout_ambient:
            return "ambient temperature";
        case Quantity::readout_event:
            return "event";
        default:
            return {};
    }
}

/// How a figure of the readout is asked for, or empty.
std::string readout_sentence(Quantity quantity) {
    if (quantity == Quantity::history_event || quantity == Quantity::history_count)
        return "read event history";
    const std::string item = readout_item(quantity);
    return item.empty() ? item : "read readout " + item;
}

/// Looks and electrical readings at the isolated and open heater.
std::string_view isolated_sentence(Quantity quantity) {
    switch (quantity) {
        case Quantity::insulation_ohms:
            return "test insulation between heater active and casing";
        case Quantity::valve_coil_ohms:
            return "measure ohms between valve lead and low-voltage common";
        case Quantity::valve_lead_ohms:
            return "measure ohms between valve lead and casing";
        case Quantity::igniter_lead_ohms:
            return "test insulation between igniter lead and casing";
        case Quantity::flame_lead_ohms:
            return "measure ohms between flame input and flame lead";
        case Quantity::board_fuse:
            return "look at board fuse";
        case Quantity::limiter_leads:
            return "look at limiter leads";
        case Quantity::chamber_outside:
            return "look at combustion chamber";
        case Quantity::electrode_tip:
            return "look at flame electrode";
        case Quantity::exchanger_fins:
            return "look at heat exchanger fins";
        default:
            return {};
    }
}

/// From outside, with the eyes, a hand, a clamp or a thermometer, in any mode.
std::string_view outside_sentence(Quantity quantity) {
    switch (quantity) {
        case Quantity::outlet_pipe_temperature:
            return "measure temperature of outlet pipe";
        case Quantity::inlet_pipe_temperature:
            return "measure temperature of inlet pipe";
        case Quantity::cylinder_mass:
            return "weigh cylinder";
        case Quantity::cylinder_frost:
            return "look at cylinder";
        case Quantity::flue_terminal:
            return "look at flue terminal";
        case Quantity::air_intake:
            return "look at air intake";
        case Quantity::gas_valve_handle:
            return "look at gas valve";
        case Quantity::union_bubbles:
            return "leak test with fluid";
        case Quantity::fan_sound:
            return "listen";
        case Quantity::light_up_sound:
            return "listen to light-up";
        case Quantity::switchboard:
            return "look at switchboard";
        case Quantity::leakage_current:
            return "clamp whole lead";
        case Quantity::companion_front:
            return "look at companion heater";
        case Quantity::companion_pipe_temperature:
            return "measure companion outlet pipe";
        case Quantity::companion_link_ohms:
            return "measure link between heaters";
        case Quantity::display_word:
            return "look at display";
        case Quantity::diverter_smoke:
            return "test draught with smoke";
        default:
            return {};
    }
}

// Readings that need the heater off and open; the mode is given up for them.
bool needs_open_heater(Quantity quantity) {
    return quantity == Quantity::outlet_ohms || quantity == Quantity::inlet_ohms ||
           quantity == Quantity::exchanger_ohms || !isolated_sentence(quantity).empty();
}

/// At a wall controller, or empty.
std::string wall_sentence(Quantity quantity, const worksite::Site& site) {
    constexpr std::array volts{Quantity::link_wall_1_volts, Quantity::link_wall_2_volts,
                               Quantity::link_wall_3_volts};
    constexpr std::array screens{Quantity::wall_screen_1, Quantity::wall_screen_2,
                                 Quantity::wall_screen_3};
    for (std::size_t i = 0; i < site.wall_controllers.size() && i < volts.size(); ++i) {
        if (quantity == volts.at(i)) return "measure link cable at " + site.wall_controllers[i];
        if (quantity == screens.at(i)) return "look at " + site.wall_controllers[i];
    }
    return {};
}

bool is_setting(Quantity quantity) {
    return quantity == Quantity::setting_gas || quantity == Quantity::setting_altitude ||
           quantity == Quantity::setting_highest || quantity == Quantity::setting_priority;
}

std::string point_of(Quantity quantity) {
    if (quantity == Quantity::gas_inlet_pressure) return "inlet";
    if (quantity == Quantity::regulator_pressure) return "regulator";
    return {};
}

}  // namespace

void Hands::manometer_to(const std::string& point) {
    if (manometer_ == point) return;
    manometer_away();
    close_taps();
    if (!gloves_) say("put on gloves");
    shut_gas();
    say("open test point " + point);
    say("attach manometer to " + point);
    say("zero manometer");
    open_gas();
    mode_ = 0;
}

void Hands::manometer_away() {
    if (manometer_.empty()) return;
    const std::string point = manometer_;
    close_taps();
    mode_ = 0;
    shut_gas();
    say("take manometer off");
    say("close test point " + point);
    open_gas();
}

void Hands::watch_lock_up() {
    manometer_to(point_of(Quantity::gas_inlet_pressure));
    say("wait 10 min");
    say("read manometer");
    manometer_away();
}

void Hands::readout(const std::string& sentence) {
    if (!readout_open_) say("open service readout");
    if (say(sentence) != nullptr) return;
    say("open service readout");  // the power was off in between
    say(sentence);
}

// The readout needs the mains, and after it the panel takes a while.
void Hands::wake_readout() {
    power_back();
    say("wait 10 s");
    say("open service readout");
}

// The slide switch that frees them is behind the cover.
void Hands::installer_settings() {
    open_up();
    wake_readout();
    say("read installer settings");
    mode_ = 0;
}

void Hands::ohms(const std::string& sensor) {
    open_up();
    say("unplug " + sensor);
    say("attach multimeter to " + sensor);
    say("read multimeter");
    say("take multimeter off");
    say("plug in " + sensor);
}

void Hands::analyse() {
    if (analyser_tick_ < 0) say("switch on analyser");
    const auto left = (warm_up_ticks - (visit_.tick() - analyser_tick_)) / 10 + 1;
    if (left > 1) say("wait " + std::to_string(left) + " s");
    if (!probe_in_) {
        say("put probe in flue");
        say("wait 30 s");
    }
    say("read analyser");
}

void Hands::at_a_tap(const std::string& what) {
    const std::string tap = open_.empty() ? largest_tap().name : open_.back();
    if (open_.empty()) {
        say("open " + tap);
        open_.push_back(tap);
    }
    say("measure " + what + " at " + tap);
}

/// What is behind the cover: the heater is opened for it, isolated.
void Hands::take_inside(Quantity quantity) {
    mode_ = 0;
    if (quantity == Quantity::outlet_ohms) return ohms("outlet sensor");
    if (quantity == Quantity::inlet_ohms) return ohms("inlet sensor");
    if (quantity == Quantity::exchanger_ohms) return ohms("exchanger sensor");
    open_up();
    say(std::string(isolated_sentence(quantity)));
}

void Hands::look_round() {
    manometer_away();
    each_outlet();
    smallest_and_largest_draw();
    for (const char* sentence :
         {"look at relief drain", "measure water pressure", "read intake air", "read case air"})
        say(sentence);
    test_draught();
    open_up();
    say("look at case floor");
    close_up();
}

namespace {

/// Full draw against the fans of the room, where it has any.
std::size_t worst_mode(const worksite::Job& job) {
    constexpr std::size_t full_draw = 2;
    const auto all = scoring::modes(job);
    const auto worst = std::find_if(all.begin(), all.end(),
                                    [](const scoring::Mode& one) { return one.worst_draught; });
    return worst == all.end() ? full_draw : static_cast<std::size_t>(worst - all.begin());
}

}  // namespace

void Hands::test_draught() {
    if (visit_.job().healthy.open_flued < 0.5) return;
    take(worst_mode(visit_.job()), Quantity::diverter_smoke);
    close_taps();
    mode_ = 0;
}

void Hands::test_draught_with_air() {
    const worksite::Site& site = visit_.job().site;
    if (visit_.job().healthy.open_flued < 0.5 || site.windows.empty()) return;
    bring_into(worst_mode(visit_.job()));
    for (const auto& window : site.windows) say("open " + window.name);
    say("wait 30 s");
    say("test draught with smoke");
    analyse();
    for (const auto& window : site.windows) say("close " + window.name);
    close_taps();
    mode_ = 0;
}

// Cup against readout where the turbine turns slowest, and with the heater off, which throttles nothing then.
void Hands::smallest_and_largest_draw() {
    const std::string tap = largest_tap().name;
    say("open " + tap + " a little");
    say("wait 20 s");
    say("measure flow at " + tap);
    readout("read readout flow");
    say("close " + tap);
    say("turn off heater");
    for (const auto& one : visit_.job().site.taps) say("open " + one.name);
    say("wait 20 s");
    for (const auto& one : visit_.job().site.taps) say("measure flow at " + one.name);
    readout("read readout flow");
    for (const auto& one : visit_.job().site.taps) say("close " + one.name);
    say("turn on heater");
}

void Hands::each_outlet(bool until_one_is_poor) {
    bring_into(0);
    close_up();
    for (const auto& tap : visit_.job().site.taps) {
        say("open " + tap.name);
        say("wait 40 s");
        say("measure flow at " + tap.name);
        const auto* flow = latest(Quantity::tap_flow);
        const bool poor = flow != nullptr && flow->value < poor_flow_m3s;
        say("measure temperature at " + tap.name);
        say("close " + tap.name);
        if (poor && until_one_is_poor) return;
    }
}

void Hands::take(std::size_t mode, Quantity quantity) {
    if (needs_open_heater(quantity)) return take_inside(quantity);
    if (quantity == Quantity::flue_terminal && !goes_up()) return;
    if (const auto point = point_of(quantity); !point.empty()) manometer_to(point);
    if (mode != mode_ || mode == 3) bring_into(mode);
    if (const auto sentence = wall_sentence(quantity, visit_.job().site); !sentence.empty()) {
        say(sentence);
        return;
    }
    if (is_setting(quantity)) return installer_settings();
    if (const auto sentence = readout_sentence(quantity); !sentence.empty()) {
        close_up();
        return readout(sentence);
    }
    switch (quantity) {
        case Quantity::gas_inlet_pressure:
        case Quantity::regulator_pressure:
            say("read manometer");
            return;
        case Quantity::tap_temperature:
            return at_a_tap("temperature");
        case Quantity::tap_flow:
            return at_a_tap("flow");
        case Quantity::flue_o2:
        case Quantity::flue_co2:
        case Quantity::flue_co:
        case Quantity::flue_temperature:
            return analyse();
        case Quantity::spark:
        case Quantity::flame:
            say(mode == 1 ? "watch burner window for 20 s" : "watch burner window for 8 s");
            return;
        case Quantity::tingle:
            say("touch " + largest_tap().name);
            return;
        case Quantity::pipe_volts:
            say("put on gloves");
            say("measure volts between water pipe and true earth");
            return;
        default:
            if (quantity == Quantity::display_word) close_up();
            say(std::string(outside_sentence(quantity)));
    }
}

}  // namespace emberpath::trainees
