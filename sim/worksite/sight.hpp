#pragma once
/// What a person standing at the heater sees and hears at this instant without doing anything: how hands
/// have left things, the lit display, the figures on instruments that are connected, and sounds. A front
/// end that draws the house is made from this and from the log alone, so it cannot show more.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

/// A figure on a glass: of a connected instrument, or of the heater's own service readout. It carries the
/// instrument's error of the day and its rounding; a recorded reading adds its own repeat error.
struct GlassFigure {
    Quantity quantity = Quantity::display_word;
    double value = 0.0;  // SI, as shown; category index if categorical
};

struct Sight {
    // As hands have left it.
    std::vector<double> tap_opening;                // 0 to 1, in the order of Site::taps
    std::vector<std::uint8_t> appliance_on;         // in the order of Site::appliances
    std::vector<std::uint8_t> window_open, fan_on;  // in the order of Site::windows and Site::fans
    bool raining = false;
    bool reserve_first = false;  // changeover lever of a pair
    bool heater_on = true;       // at its panel
    bool switch_on = true, plugged_in = true, plug_locked = false;
    bool gas_at_heater = true, gas_at_supply = true, water_at_heater = true;
    bool cover_on = true, tagged = false;
    std::array<bool, 3> point_open{};        // Point: a gas test point's screw is loose
    std::array<bool, 3> sensor_unplugged{};  // outlet, inlet, exchanger
    bool gloves = false, glasses = false;

    // Tools.
    std::optional<std::size_t> manometer_at;   // word of "point" by index
    std::optional<std::size_t> multimeter_at;  // word of "probe" by index
    bool analyser_on = false, analyser_warm = false, probe_in_flue = false;
    bool readout_open = false;         // and lit
    std::vector<GlassFigure> figures;  // of every connected instrument and the open readout

    // Seen and heard.
    bool panel_lit = true;
    std::size_t display_word = 0;  // category of Quantity::display_word
    double set_point_k = 323.15;
    controller::Phase phase = controller::Phase::standby;  // as sounds and display give it away
    bool water_runs = false;                               // at the taps that are open
    double fan_rev_per_s = 0.0;                            // as its pitch
    bool spark_heard = false;
    double flame_share = 0.0;  // of the burner area, as its roar: 0 none to 1
    bool alarm = false;        // the personal alarm for carbon monoxide sounds
    bool outside = false;      // the person: house and heater are as they were left, unheard
    std::string condition;     // "burner running, kitchen tap open fully"
    std::vector<std::string> noticed;  // said or smelt since the last act
};

/// What was on the glasses and the display at one moment, for a recorder.
struct TrailPoint {
    std::int64_t tick = 0;
    std::size_t display_word = 0;
    double set_point_k = 0.0;
    std::vector<GlassFigure> figures;
};
/// A trail has one point a second and at most this many; the oldest go first.
inline constexpr std::size_t longest_trail = 1800;

class Workplace;
[[nodiscard]] Sight sight_of(const Workplace& w);
[[nodiscard]] std::vector<GlassFigure> figures_of(const Workplace& w);

}  // namespace emberpath::worksite
