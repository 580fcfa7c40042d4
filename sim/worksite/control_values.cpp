// Readings of the controller's settings, memory and link cable.

#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

namespace {

using Q = Quantity;

double screen(const HeaterView& heater, const controller::Panel& panel, std::size_t wall) {
    if (panel.wall[wall].fitted < 0.5) return screen_none;
    if (heater.readout.link_wall_v[wall] < controller::link_least_v) return screen_dark;
    return heater.readout.heard[wall] > 0.5 ? screen_lit : screen_lit_unheard;
}

}  // namespace

std::optional<double> control_value(Quantity quantity, const HeaterView& heater,
                                    const controller::Panel& panel) {
    const controller::Readout& r = heater.readout;
    switch (quantity) {
        case Q::readout_water_valve:
            return r.water_valve_position;
        case Q::readout_fan_drive:
            return r.fan_duty;
        case Q::link_heater_volts:
            return r.link_unit_v;
        case Q::link_wall_1_volts:
            return r.link_wall_v[0];
        case Q::link_wall_2_volts:
            return r.link_wall_v[1];
        case Q::link_wall_3_volts:
            return r.link_wall_v[2];
        case Q::setting_altitude:
            return heater.settings.altitude_m;
        case Q::setting_gas:
            return heater.settings.gas;
        case Q::setting_highest:
            return heater.settings.maximum_set_k;
        case Q::setting_priority:
            return heater.settings.first_priority;
        case Q::history_event:
            return static_cast<double>(r.history[0].event);
        case Q::history_count:
            return r.history[0].count;
        case Q::wall_screen_1:
            return screen(heater, panel, 0);
        case Q::wall_screen_2:
            return screen(heater, panel, 1);
        case Q::wall_screen_3:
            return screen(heater, panel, 2);
        default:
            return std::nullopt;
    }
}

}  // namespace emberpath::worksite
