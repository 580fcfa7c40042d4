// Site skills: readings.

#include <algorithm>
#include <array>

#include "sim/trainees/hands.hpp"

namespace emberpath::trainees {

namespace {

using worksite::Quantity;

constexpr std::int64_t warm_up_ticks = 600;

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

/// Electrical readings at the isolated and open heater.
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
        default:
            return {};
    }
}

// Readings that need the heater off and open; the mode is given up for them.
bool needs_open_heater(Quantity quantity) {
    return quantity == Quantity::exchanger_fins || quantity == Quantity::electrode_tip ||
           quantity == Quantity::outlet_ohms || quantity == Quantity::inlet_ohms ||
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
    return quantity == Quantity::setting_gas || quantity == Quantity::setting_altitude;
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

void Hands::readout(const std::string& sentence) {
    if (!readout_open_) say("open service readout");
    if (say(sentence) != nullptr) return;
    say("open service readout");  // the power was off in between
    say(sentence);
}

// The slide switch that frees them is behind the cover; the readout needs the mains.
void Hands::installer_settings() {
    open_up();
    power_back();
    say("wait 10 s");  // the panel wakes
    say("open service readout");
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
    if (const auto sentence = isolated_sentence(quantity); !sentence.empty()) {
        say(std::string(sentence));
        return;
    }
    say(quantity == Quantity::electrode_tip ? "look at flame electrode"
                                            : "look at heat exchanger fins");
}

void Hands::take(std::size_t mode, Quantity quantity) {
    if (needs_open_heater(quantity)) return take_inside(quantity);
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
        case Quantity::outlet_pipe_temperature:
            say("measure temperature of outlet pipe");
            return;
        case Quantity::inlet_pipe_temperature:
            say("measure temperature of inlet pipe");
            return;
        case Quantity::flue_o2:
        case Quantity::flue_co2:
        case Quantity::flue_co:
        case Quantity::flue_temperature:
            return analyse();
        case Quantity::cylinder_mass:
            say("weigh cylinder");
            return;
        case Quantity::cylinder_frost:
            say("look at cylinder");
            return;
        case Quantity::flue_terminal:
            say("look at flue terminal");
            return;
        case Quantity::spark:
        case Quantity::flame:
            say(mode == 1 ? "watch burner window for 20 s" : "watch burner window for 8 s");
            return;
        case Quantity::fan_sound:
            say("listen");
            return;
        case Quantity::switchboard:
            say("look at switchboard");
            return;
        case Quantity::tingle:
            say("touch " + largest_tap().name);
            return;
        case Quantity::leakage_current:
            say("clamp whole lead");
            return;
        case Quantity::companion_front:
            say("look at companion heater");
            return;
        case Quantity::companion_pipe_temperature:
            say("measure companion outlet pipe");
            return;
        case Quantity::companion_link_ohms:
            say("measure link between heaters");
            return;
        case Quantity::pipe_volts:
            say("put on gloves");
            say("measure volts between water pipe and true earth");
            return;
        default:
            close_up();
            say("look at display");
    }
}

}  // namespace emberpath::trainees
