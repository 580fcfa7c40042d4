#pragma once
/// The trainee's language: what a sentence means, and how each act is spelt. One table (phrases.cpp) feeds
/// the parser, the help and docs/acts.md.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sim/faults/faults.hpp"
#include "sim/worksite/attempt.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::worksite {

enum class Verb {
    ask,
    look,
    watch,
    listen,
    listen_for,
    open_tap,
    close_tap,
    turn_on,
    turn_off,
    set_temperature,
    press_reset,
    press_list,
    press_take,
    set_wall,
    wall_on,
    wall_off,
    look_at_wall,
    measure_link,
    power_off,
    power_on,
    unplug,
    plug_in,
    lock_plug,
    unlock_plug,
    shut_gas,
    open_gas,
    shut_water,
    open_water,
    prove_tester,
    test_for_dead,
    put_on,
    take_off,
    cover_off,
    cover_on,
    open_point,
    close_point,
    remake_joint,
    attach_manometer,
    manometer_off,
    zero_manometer,
    read_manometer,
    clear_hold,
    unplug_sensor,
    plug_in_sensor,
    attach_multimeter,
    multimeter_off,
    read_multimeter,
    analyser_on,
    probe_in,
    probe_out,
    read_analyser,
    read_room_air,
    co_alarm_on,
    co_alarm_off,
    read_gas_detector,
    measure_tap_temperature,
    measure_flow,
    measure_pipe,
    weigh_cylinder,
    open_readout,
    open_readout_at_wall,
    read_readout,
    read_history,
    read_settings,
    read_plate,
    change_gas,
    change_altitude,
    change_highest,
    change_frost,
    change_wall_count,
    change_priority,
    wait,
    wait_for_change,
    wait_for_change_at_most,
    remedy,
    hand_on,  // a remedy that is not the gasfitter's, to whom it belongs
    leak_test_fluid,
    leak_test_hold,
    combustion_test,
    raise_regulator,
    lower_regulator,
    bridge_limiter,
    unbridge_limiter,
    warm_cylinder,
    leave_strainer_out,
    fit_other_flow_sensor,
    bypass_tempering,
    ask_consent,
    tell_customer,
    unsafe_notice,
    tag_heater,
    escalate,
    suspect,
    doubt,
    strike_out,
    write_cause,
    write_also_cause,
    write_possible_cause,
    write_confidence,
    write_because,
    write_done,
    write_told,
    hand_in,
    // electricity
    board_off,
    board_on,
    close_safety_switch,
    lock_board,
    unlock_board,
    test_safety_switch,
    time_safety_switch,
    measure_volts,
    log_volts,
    measure_ohms,
    insulation_test,
    measure_amps,
    clamp,
    fit_bridge,
    take_bridge_off,
    undo_union,
    make_union,
    fit_fuse,
    fit_larger_fuse,
    touch_tap,
    // the house
    open_window,
    close_window,
    run_fan,
    stop_fan,
    turn_changeover,
    weigh_second_cylinder,
    measure_water_pressure,
    log_water_pressure,
    read_intake_air,
    read_case_air,
    test_draught,
    // the kit
    look_at_tool,
    check_tool,
    compare_tool,
    take_spare,
    // what else is dangerous at a house
    look_around,
    air_place,
    people_out,
    keep_away,
    purge_pipe,
    check_low_places,
    move_cylinder,
    drain_heater,
    flush_heater,
    check_ladder,
    tie_ladder,
    decline_climb,
    say_where,
    bypass_safety_switch,
    restore_safety_switch,
    listen_to_light_up,
    // an air tube, and a companion heater
    bridge_air_proof,
    measure_air_tube,
    measure_companion_pipe,
    measure_companion_link,
    fit_resistor,  // in place of the outlet sensor
    tape_lead,     // of the igniter
    // where the person at work stands
    go_outside,
    go_in,
};

// Closed lists of things that sentences name; the order is that of the vocabulary below.
enum class Thing : std::size_t {
    display,
    burner_window,
    flue_terminal,
    cylinder,
    room,
    power_point,
    gas_pipe_run,
    fins,
    electrode,
    heater,
    switchboard,
    board_fuse,
    igniter_lead,
    changeover,
    relief_drain,
    casing_floor,
    gas_valve,
    air_intake,
    chamber,
    limiter_leads,
    companion,
    first_tap,  // then every tap of the site
};
enum class Point : std::size_t { inlet, manifold, regulator };
/// Gas joints that work can open; the first three are the test points.
enum class Joint : std::size_t { inlet, manifold, regulator, cylinder, burner, inlet_union };
inline constexpr std::size_t joint_count = 6;
/// Of the bodies one can escalate to: {body}.
enum Body : std::size_t {
    gas_distributor,  // of the network, with its emergency line
    gas_supplier,     // of the cylinders
    electrician,
    electricity_distributor,
    colleague,  // licensed
    asbestos_assessor,
    owner,
    technical_regulator,
    plumber,
    manufacturer,
};
inline constexpr std::size_t body_count = 10;
enum class Probe : std::size_t {
    outlet_sensor,
    inlet_sensor,
    exchanger_sensor,
    flame_lead,
    supply_terminals
};

/// A sentence understood.
struct Act {
    Verb verb = Verb::wait;
    std::size_t object = 0;    // index into the list of its placeholder
    std::size_t second = 0;    // of a placeholder that begins with "other"
    int remedy = -1;           // Verb::remedy and Verb::hand_on: a faults::Remedy
    std::size_t option = 0;    // of "[a|b|c]": 0 none said, then 1, 2, 3
    double number = 0.0;       // seconds, kelvin, or a share of 1
    std::string text;          // free words
    std::vector<int> numbers;  // balloons
    bool operator==(const Act&) const = default;
};

/// One row of the table: pattern, help and time, with what the parser and the log need.
struct PhraseRow {
    Verb verb;
    LogEntry::Kind kind;
    Phrase phrase;
    int remedy = -1;  // Verb::remedy and Verb::hand_on: which
};
[[nodiscard]] std::span<const PhraseRow> phrase_rows();
[[nodiscard]] const PhraseRow& row_of(const Act& act);
/// How a remedy is said; one that is handed on names its owner.
[[nodiscard]] std::string sentence_of(faults::Remedy remedy, GasKind gas);
/// Simulated time of an act [s]; what is being looked at or waited for counts.
[[nodiscard]] double seconds_of(const Act& act);

/// What a placeholder of a pattern can be in this house, in canonical spelling; empty for open ones
/// ({duration}, {temperature}, {text}, {balloons}).
[[nodiscard]] std::vector<std::string> words_of(std::string_view placeholder, const Job& job);

/// Understood, or one message with the nearest sentences.
[[nodiscard]] std::variant<Act, ActRefusal> parse_act(std::string_view sentence, const Job& job);
/// The sentence as records and logs spell it; parse_act() reads it back to the same act.
[[nodiscard]] std::string render(const Act& act, const Job& job);
/// Every sentence that can be said in this house, once; open placeholders by an example.
[[nodiscard]] std::vector<std::string> all_sentences(const Job& job);
/// Up to `count` sentences near to what was said; the first is the nearest.
[[nodiscard]] std::vector<std::string> nearest_sentences(std::string_view said, const Job& job,
                                                         std::size_t count);

/// A sentence as tokens: small letters, articles and politeness dropped, synonyms made one.
struct Token {
    std::string word;
    std::size_t begin = 0;  // offset in the sentence
};
[[nodiscard]] std::vector<Token> tokens_of(std::string_view sentence);

}  // namespace emberpath::worksite
