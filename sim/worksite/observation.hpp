#pragma once
/// What a trainee can be shown, quantity by quantity, and what each costs. The same functions give the
/// true heater's value (with instrument error added) and every shadow's prediction (without).

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "sim/worksite/heater.hpp"

namespace emberpath::worksite {

enum class Tool {
    none,
    manometer,
    multimeter,
    analyser,
    thermometer,
    flow_cup,
    scale,
    readout,
    senses,
    clamp,
    safety_switch_tester,
    gas_detector,
    water_gauge
};

enum class Quantity {
    // numeric, SI
    gas_inlet_pressure,
    regulator_pressure,
    manifold_pressure,
    tap_temperature,
    tap_flow,
    outlet_pipe_temperature,
    inlet_pipe_temperature,
    exchanger_pipe_temperature,
    flue_o2,
    flue_co2,
    flue_co,
    flue_temperature,
    room_co,
    gas_in_air,
    outlet_ohms,
    inlet_ohms,
    exchanger_ohms,
    flame_current,
    terminal_volts,
    cylinder_mass,
    readout_flow,
    readout_inlet,
    readout_outlet,
    readout_exchanger,
    readout_fan,
    readout_fan_current,
    readout_flame,
    readout_firing_rate,
    readout_manifold_command,
    readout_correction,
    readout_air_trim,
    readout_ambient,
    // electrical, by multimeter and clamp (sim/worksite/electrical_quantities.hpp)
    active_earth_volts,
    neutral_earth_volts,
    pipe_volts,
    rail_volts,
    valve_volts,
    link_volts,
    leakage_current,
    earth_ohms,
    insulation_ohms,
    valve_coil_ohms,
    valve_lead_ohms,
    igniter_lead_ohms,
    flame_lead_ohms,
    safety_switch_current,
    volts_between,  // any two terminals: ToolSetup says which
    ohms_between,
    clamp_current,
    // categorical: the value is the index of a word
    complaint_heard,
    display_word,
    readout_phase,
    readout_event,
    spark,
    flame,
    fan_sound,
    flue_terminal,
    exchanger_fins,
    electrode_tip,
    cylinder_frost,
    switchboard,
    board_fuse,
    spark_path,
    tingle,
    // the controller's settings, memory and link cable
    readout_water_valve,
    readout_fan_drive,
    link_heater_volts,
    link_wall_1_volts,
    link_wall_2_volts,
    link_wall_3_volts,
    setting_altitude,
    history_count,
    setting_gas,
    history_event,
    wall_screen_1,
    wall_screen_2,
    wall_screen_3,
    // the house beside its heater (sim/worksite/house_values.cpp)
    water_pressure,
    night_water_pressure,
    reserve_mass,
    intake_o2,
    case_co,
    changeover_indicator,
    relief_drain,
    casing_wet,
    diverter_smoke,
    setting_highest,
    setting_priority,
    // more to look at and listen to (sim/worksite/look_values.cpp)
    gas_valve_handle,
    air_intake,
    chamber_outside,
    limiter_leads,
    union_bubbles,
    light_up_sound,
    air_tube_pressure,
    air_tube_needle,
    companion_front,
    companion_pipe_temperature,
    companion_link_ohms,
    // what an instrument shows of what no shadow foretells: said in a sentence, no evidence
    meter_current,
    break_time,
};
inline constexpr std::size_t quantity_count = 99;  // that a heater's model gives a value
inline constexpr std::size_t figure_count = 101;   // that an instrument shows, those included

/// A reading is the value now, or an extreme since the tool was attached or its hold was cleared.
enum class Hold { now, highest, lowest };

struct QuantityInfo {
    Quantity quantity;
    std::string_view word;   // as records spell it
    std::string_view title;  // "gas pressure at the heater inlet"
    Tool tool;
    bool categorical;
    bool logarithmic;       // compare logarithms (ohms, CO)
    double error_absolute;  // instrument: scale = absolute + relative * |value|, SI
    double error_relative;
    double resolution;      // shown to this step, SI
    double model_floor;     // scoring: what the model itself may be off by, SI (or in log)
    double minutes;         // cost of one reading
    double set_up_minutes;  // on first use of the tool at this point
    int category_count;     // categorical only
};
[[nodiscard]] const QuantityInfo& info(Quantity quantity);
/// Where a resistance leaves the range of what measures it [ohm].
[[nodiscard]] double greatest_ohm(Quantity quantity);
/// Where the range of what shows a figure ends [SI]; infinite for the readout, for words, and where nothing at a
/// house gets there.
[[nodiscard]] double most_shown(Quantity quantity);
/// It is shown as "over range", not as a number.
[[nodiscard]] bool over_range(Quantity quantity, double value);
/// Word for a category ("spark", "partly covered").
[[nodiscard]] std::string_view category_word(Quantity quantity, std::size_t category);
/// A value as the trade writes it: "1.82 kPa", "48.9 °C", "over range", or the word of a category.
[[nodiscard]] std::string text_of(Quantity quantity, double value);
/// Catalogue entry spelt so in records; nullptr when there is none.
[[nodiscard]] const QuantityInfo* find_quantity(std::string_view word);

// Indices of categories that other code asks for.
enum FlameLook : std::size_t {
    flame_none,
    flame_lit_then_out,
    flame_steady,
    flame_restless,
    flame_yellow_tipped
};
enum FanSound : std::size_t { fan_silent, fan_normal, fan_loud };
enum TerminalLook : std::size_t { terminal_clear, terminal_partly_covered, terminal_covered };
enum FinsLook : std::size_t { fins_clean, fins_lightly_sooted, fins_heavily_sooted };
enum TipLook : std::size_t { tip_clean, tip_coated, tip_heavily_coated };
enum SwitchboardLook : std::size_t {
    board_all_on,
    board_safety_switch_open,
    board_breaker_open,
    board_switched_off
};
enum FuseLook : std::size_t { fuse_whole, fuse_blown };
enum SparkPath : std::size_t { path_no_spark, path_at_burner, path_to_frame };
enum TingleFelt : std::size_t { tingle_none, tingle_felt };
enum WallScreen : std::size_t { screen_none, screen_dark, screen_lit_unheard, screen_lit };
enum ChangeoverLook : std::size_t { change_first, change_both, change_reserve };
enum ReliefLook : std::size_t { relief_dry, relief_drips };
enum WetLook : std::size_t { case_dry, case_wet };
enum SmokeLook : std::size_t { smoke_drawn_in, smoke_hangs, smoke_blown_out };
enum NeedleLook : std::size_t { needle_steady, needle_jumpy };
enum CompanionLook : std::size_t { companion_none, companion_waits, companion_fires };
enum HandleLook : std::size_t { handle_in_line, handle_part_way, handle_across };
enum IntakeLook : std::size_t { intake_clear, intake_partly_felted, intake_felted };
enum ChamberLook : std::size_t { chamber_clean, chamber_scorched };
enum FrostLook : std::size_t { frost_no_cylinder, frost_none, frost_line_high, frost_line_low };

/// Operating condition under which a reading was taken. Re-reads of the same quantity under the same
/// key are one grouped observation.
struct Condition {
    controller::Phase phase = controller::Phase::standby;  // as anybody can hear and see
    std::uint32_t epoch = 0;  // raised by every act that changes the installation or its settings
    bool settled = false;     // nothing changed for a while
    std::uint32_t place = 0;  // where leads or clamp were, of readings that can be taken anywhere
    bool spare = false;       // the other instrument was used
    auto operator<=>(const Condition&) const = default;
};

struct Observation {
    int number = 0;       // the balloon: 1, 2, 3 ...; 0 for what is not a numbered reading
    std::size_t act = 0;  // index into the attempt's log
    std::int64_t tick = 0;
    Quantity quantity = Quantity::display_word;
    Hold hold = Hold::now;
    double watched_s = 0.0;  // senses: how long they looked or listened
    double value = 0.0;  // as shown: error and resolution included; category index if categorical
    Condition condition;
    /// How far a worn instrument was off beyond its class [SI]. Told to followers alone: no log holds it.
    double beyond_class = 0.0;
};

inline constexpr std::size_t no_tap = plant::tap_count;

/// Where tools are attached; decides what each lane's gauges follow.
struct ToolSetup {
    Quantity manometer = Quantity::display_word;  // a pressure, or display_word for "not attached"
    bool analyser_sampling = false;               // probe in the flue
    bool meter_in_flame_lead = false;             // multimeter in series with the electrode
    double tap_opening_share = 0.0;  // of the tap being measured, share of all hot flow
    std::size_t tap = no_tap;        // which one it is, of a house that lists its outlets
    bool watching = false;           // eyes on the burner window and display
    bool listening = false;
    Quantity meter = Quantity::display_word;  // a voltage being logged, or display_word
    std::size_t lead_a = 0,
                lead_b = 0;  // plant::Terminal under the multimeter's leads; equal: nowhere
    std::size_t clamp = plant::conductor_count;  // plant::Conductor in the clamp; the count: none
};

/// Lagged, peak-held instrument states and what was seen or heard, for one lane.
struct Gauge {
    double shown = 0.0, highest = 0.0, lowest = 0.0;
    bool primed = false;
    /// First-order lag over one tick (implicit Euler: no exponential); the first value is shown at once.
    void follow(double input, double lag_s);
    void clear_hold();
};
struct Senses {
    Gauge manometer, meter, flame_current, o2, co2, co, flue_temperature;
    double burning_s = 0.0;                          // watched flame, without a break
    Gauge air_ratio, flame_unrest;                   // while watching a burning flame [-]
    Quantity manometer_at = Quantity::display_word;  // where the manometer was in the last tick
    bool spark_seen = false, flame_seen = false;     // while watching or listening
    double loudest_fan_rev_per_s = 0.0;
    /// After every tick of the heater. A tool that is not attached goes back to rest.
    void step(const HeaterView& heater, const ToolSetup& tools);
    /// Looking or listening begins: forget what was seen and heard before.
    void start_watching();
    /// The hold key of every instrument.
    void clear_holds();
};
/// Nothing attached and nobody looking: step() would only put the gauges to rest.
[[nodiscard]] bool at_rest(const ToolSetup& tools);

/// The error-free value of a quantity in one lane. For a category, its index. Pressures follow the
/// manometer where it is attached and are instantaneous elsewhere. spark and flame report what was seen
/// since watching began. complaint_heard is not physics of the instant: 0 here; see the shadow bank.
[[nodiscard]] double value_of(Quantity quantity, Hold hold, const HeaterView& heater,
                              const Senses& senses, const TickInputs& inputs,
                              const ToolSetup& tools);

/// The same for the house beside its heater; nothing for other quantities.
[[nodiscard]] std::optional<double> house_value(Quantity quantity, const HeaterView& heater,
                                                const TickInputs& inputs);
/// The same for what needs a closer look, leak fluid or an ear; nothing for others.
[[nodiscard]] std::optional<double> look_value(Quantity quantity, const HeaterView& heater,
                                               const TickInputs& inputs);

/// The same for readings of the controller's settings, memory and link cable; nothing for others.
[[nodiscard]] std::optional<double> control_value(Quantity quantity, const HeaterView& heater,
                                                  const controller::Panel& panel);

}  // namespace emberpath::worksite
