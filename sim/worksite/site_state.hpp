#pragma once
/// What people can change at the house, the tools and the person at work. Plain data; one attempt owns it.

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <vector>

#include "sim/math/hash.hpp"
#include "sim/math/random.hpp"
#include "sim/worksite/acts.hpp"
#include "sim/worksite/attempt.hpp"
#include "sim/worksite/dangers.hpp"
#include "sim/worksite/kit.hpp"

namespace emberpath::worksite {

inline constexpr double tick_s = 0.1;
inline constexpr std::int64_t never = -1;
[[nodiscard]] inline std::int64_t ticks_in(double seconds) {
    return std::llround(seconds / tick_s);
}

/// Services, taps and panel as they stand.
struct Services {
    std::vector<double> tap_opening;         // 0 to 1
    std::vector<std::uint8_t> appliance_on;  // other gas appliances
    double set_point_k = 323.15;
    bool heater_on = true;
    bool reset_pressed = false;  // for the coming tick
    bool restart_asked = false;  // for the coming tick
    std::array<controller::WallController, controller::most_wall_controllers> wall{};
    bool point_switch_on = true, plugged_in = true, plug_locked = false;
    bool gas_at_heater = true, gas_at_supply = true, water_at_heater = true;
    double cold_draw_m3_per_s = 0.0;
    double wind_pa = 0.0;
    double cylinder_warmed_k = 0.0;  // above the air around it
    // Electricity beyond the socket outlet.
    bool main_switch_on = true, breaker_on = true, second_source_on = true;
    bool board_locked = false;       // lock and tag at the switchboard
    int safety_switch_closings = 0;  // somebody pushed it back
    int fuses_fitted = 0;            // new fuses for the heater's board
    bool bridge_fitted = false;      // conductor across the water union
    bool water_union_open = false;
    bool safety_switch_tested = false;  // the tester draws its current in the coming tick
    double damp = 0.5;                  // of the air at the heater while it is dry
    /// The lowest set value that somebody reads: of the wall controllers that are on, else the panel's.
    [[nodiscard]] double lowest_set_k() const;
    // The room and the weather around the heater.
    std::vector<std::uint8_t> window_open, fan_on;  // in the order of the site
    bool raining = false;
    bool reserve_first = false;  // where the changeover lever points
    [[nodiscard]] bool live() const { return point_switch_on && plugged_in; }
};

/// The pump of a supply line runs 45 s in each 240 s: known to all, like the gusts (chosen).
[[nodiscard]] double pump_runs_at(double time_s);
/// Share of the night [-]: the street draws little from half past eleven to five; ramps of an hour and a half
/// before and after (chosen). Time of day since midnight, any day.
[[nodiscard]] double night_at(double time_of_day_s);
/// Everything of the surroundings that hands and weather decide beyond taps and gas.
void surround(plant::Surroundings& at, const Site& site, const Services& services, double time_s);
/// As the household leaves it: windows, fans, weather.
void settle_in(Services& services, const Site& site);
/// One tick of it: what was poured over a cylinder runs off and cools.
void cool_cylinder(Services& services);
[[nodiscard]] plant::ElectricalSituation electrical_situation(const Services& services,
                                                              double time_s);

/// The heater and its gas joints as hands have left them.
struct Fabric {
    bool cover_on = true;
    std::array<bool, 3> point_open{};
    std::array<double, joint_count> weep_m3_per_s{};  // at 2 kPa: a joint made badly
    std::array<bool, joint_count> joint_unproved{};   // opened, not yet found sound under pressure
    bool wide_open_joint = false;                     // during work on a joint with gas on
    Alterations alterations;
    bool tagged = false;
};

/// Multimeter, manometer, analyser and readout.
struct Bench {
    std::optional<std::size_t> manometer_at;  // Point
    double manometer_offset_pa = 0.0;
    bool zeroed_under_pressure = false;
    std::optional<std::size_t> multimeter_at;  // Probe
    bool meter_fuse_gone = false;              // of the current range of the multimeter in use
    std::int64_t analyser_on_tick = never;
    bool zeroed_in_products = false;
    std::array<double, 3> analyser_zero{};  // O2, CO2, CO taken for clean air [share]
    bool probe_in_flue = false;
    bool readout_open = false;
    enum class Listed { nothing, read, past, wake, sure, back } listed = Listed::nothing;
    std::int64_t sure_tick = never;                   // when the display asked SURE
    std::array<bool, instrument_count> spare{};       // fetched from the van and in use
    std::array<bool, instrument_count> label_seen{};  // of the one in use
    [[nodiscard]] bool uses_spare(Instrument one) const {
        return spare[static_cast<std::size_t>(one)];
    }
};

/// The person at work.
struct Person {
    bool gloves = false, glasses = false;
    bool hurt = false;
    enum class Proof { none, tester_proved, found_dead, proved_dead } proof = Proof::none;
    std::int64_t last_reset_tick = never;
    int hasty_resets = 0;
    bool tingled = false;  // has felt a voltage on the pipes
    bool outside = false;  // in the open air, away from heater, gas and fumes
};

/// When things were last done, for proofs and handover. Ticks; `never` when not.
struct Deeds {
    std::int64_t lasting_remedy = never;  // one that works at once
    std::int64_t any_remedy = never;
    std::int64_t flame_work = never;       // burner, flue or igniter touched
    std::int64_t gas_work = never;         // a gas joint or test point opened
    std::int64_t leak_test = never;        // passed
    std::int64_t combustion_test = never;  // passed
    std::int64_t hot_water = never;        // measured at set temperature
    std::int64_t clear_display = never;    // seen clear after a minute of running
    std::int64_t told = never;
    std::int64_t notice = never;
    std::int64_t escalated = never;
    std::int64_t running_ticks = 0;  // since the latest lasting remedy
    std::int64_t consent = never;    // of the customer, to shutting off
    std::uint32_t bodies_told = 0;   // bit by index of {body}
    [[nodiscard]] bool told_to(std::size_t body) const { return (bodies_told >> body & 1U) != 0; }
};

/// The gust pattern that everybody at the house feels: two-second pulses about every period, seeded.
class Gusts {
  public:
    Gusts(std::uint64_t seed, double period_s);
    /// Shape at a time that never goes back, 0 to 1.
    [[nodiscard]] double shape_at(double time_s);

  private:
    math::Random random_;
    double period_s_;
    double begins_s_;
};

void add_to(math::Hash& hash, const Services& services);
void add_to(math::Hash& hash, const Fabric& fabric);
void add_to(math::Hash& hash, const Bench& bench);
void add_to(math::Hash& hash, const Person& person);
void add_to(math::Hash& hash, const Deeds& deeds);

}  // namespace emberpath::worksite
