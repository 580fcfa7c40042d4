#pragma once
/// What each act does. The tables of the act_*.cpp files together hold every verb once; a test counts.

#include <span>
#include <string>

#include "sim/worksite/hazards.hpp"
#include "sim/worksite/workplace.hpp"

namespace emberpath::worksite {

struct Doing {
    Verb verb;
    /// Why it cannot be done now, as the person at the heater would see it; empty: it can.
    std::string (*obstacle)(const Workplace&, const Act&);
    void (*effect)(Workplace&, const Act&);
    enum class When {
        after,
        before,
        own
    } when = When::after;  // its time passes; own: the effect lets it
};

/// A flame younger than this is not judged by its flue gas or by what it spills: flue, fan and exchanger are
/// still settling (chosen; a combustion test waits longer).
inline constexpr double flame_settles_s = 30.0;

[[nodiscard]] std::span<const Doing> look_doings();
[[nodiscard]] std::span<const Doing> service_doings();
[[nodiscard]] std::span<const Doing> electrical_doings();
[[nodiscard]] std::span<const Doing> measure_doings();
[[nodiscard]] std::span<const Doing> supply_doings();
[[nodiscard]] std::span<const Doing> gas_doings();
[[nodiscard]] std::span<const Doing> flue_doings();
[[nodiscard]] std::span<const Doing> water_doings();
[[nodiscard]] std::span<const Doing> house_doings();
[[nodiscard]] std::span<const Doing> panel_doings();
[[nodiscard]] std::span<const Doing> remedy_doings();
[[nodiscard]] std::span<const Doing> proof_doings();
[[nodiscard]] std::span<const Doing> protection_doings();
[[nodiscard]] std::span<const Doing> write_doings();
[[nodiscard]] std::span<const Doing> kit_doings();
[[nodiscard]] std::span<const Doing> danger_doings();
[[nodiscard]] const Doing& doing_of(Verb verb);

/// Why the instrument an act needs does not work; empty: it does.
[[nodiscard]] std::string battery_refuses(const Workplace& w, const Act& act);
/// An instrument that shows no figure of the catalogue is used too: its label counts as well.
void judge_label_in_hand(Workplace& w, const Act& act);
[[nodiscard]] bool tester_is_dark(const Workplace& w);    // shows nothing, whatever there is
[[nodiscard]] bool alarm_can_sound(const Workplace& w);   // the personal one
[[nodiscard]] bool leak_fluid_foams(const Workplace& w);  // where a joint leaks

[[nodiscard]] inline std::string no_obstacle(const Workplace&, const Act&) {
    return {};
}
[[nodiscard]] inline std::string needs_cover_off(const Workplace& w, const Act&) {
    return w.fabric.cover_on ? "The cover is on; it must come off first." : "";
}
/// Installer settings can be read and stored: panel lit, readout open, cover off.
[[nodiscard]] std::string settings_are_free(const Workplace& w, const Act& act);
/// The act has nothing but its time.
inline void nothing(Workplace&, const Act&) {}

/// What the connected instruments would read now, right or wrong as they are used.
[[nodiscard]] Workplace::ReadingOf manometer_reading(const Workplace& w, Hold hold);
[[nodiscard]] Workplace::ReadingOf multimeter_reading(const Workplace& w);
/// The multimeter's leads come away from where they hang, in the time that takes; nothing where they hang nowhere.
void leave_attached_place(Workplace& w);
[[nodiscard]] std::vector<Workplace::ReadingOf> analyser_readings(const Workplace& w,
                                                                  Hold hold = Hold::now);
/// Four numbered readings of the analyser as it stands, or of the extremes it holds.
void read_analyser_now(Workplace& w, Hold hold = Hold::now);
/// Its figures eight times over a while, the last time as numbered readings: a trend.
void watch_analyser(Workplace& w, double seconds);
/// What a cell (0 oxygen, 1 carbon dioxide, 2 carbon monoxide) adds while it is cold, or because it was zeroed in
/// products.
[[nodiscard]] double cell_shift(const Workplace& w, std::size_t cell);
[[nodiscard]] bool analyser_ready(const Workplace& w);
[[nodiscard]] bool analyser_sound(const Workplace& w);

/// Why an act cannot be done by somebody in the open air; empty: it can, or they are not there.
[[nodiscard]] std::string outside_refuses(const Workplace& w, const Act& act);
/// Time passes on the way out: leaving gas is not staying in it.
void leave_meanwhile(Workplace& w, double seconds);

/// Work on a joint that carries gas: shut, or the room fills while it is open.
void work_on_joint(Workplace& w, Joint joint, bool shut, double seconds);

// Dangers of the house (sim/worksite/dangers.hpp).
inline constexpr double sinking_share = 0.5;  // of escaping propane, into a low place: chosen
/// Propane in the low place as a share of its lower flammability limit.
[[nodiscard]] double low_gas_share(const Workplace& w);
[[nodiscard]] bool too_windy_for_ladders(const Workplace& w);
/// The door opens: what has leaked since before.
void meet_house(Workplace& w);
/// Every tick of the visit.
void follow_dangers(Workplace& w);
void settle_low_gas(Workplace& w, double escaping_m3_per_s);
/// Before an act: a spark in gas; ladders, roofs and old sheet on its way.
void judge_spark(Workplace& w, const Act& act);
void judge_places(Workplace& w, const Act& act);
/// Time of an act in this house [s]: a pipe run in a roof space is crawled along first.
[[nodiscard]] double seconds_here(const Workplace& w, const Act& act);
/// During and after a remedy: water that runs out, air, acid, wiring.
void open_water_side(Workplace& w, faults::Remedy remedy);
/// The water side stands open under the mains until somebody has run to the stop tap.
void run_out_until_shut(Workplace& w);
/// A drain that is opened with the water on: so long it runs on, past what its bucket holds.
void drain_under_pressure(Workplace& w, double seconds);
/// A tick with the inlet's screen out: what the water carries collects in the flow turbine.
void let_grit_in(Workplace& w);
/// `better`: what would have kept it.
void lose_board(Workplace& w, const std::string& how, std::string_view better);
void after_work(Workplace& w, faults::Remedy remedy);
/// Gas and altitude decide what burns with what air; limits, frost and priority leave the flame alone.
[[nodiscard]] bool moves_the_flame(const controller::Settings& before,
                                   const controller::Settings& after);
/// A joint is about to be worked on.
void judge_untested_joint(Workplace& w);
/// What a gauge on a cylinder of liquid propane at this temperature shows, in words.
[[nodiscard]] std::string gauge_words(double propane_k);
/// Gas in air as a share of its lower flammability limit: "32 % of what can burn".
[[nodiscard]] std::string burnable_words(double share);
/// Power comes back: what that shows takes so long [s] where the wiring was worked on and not tested.
[[nodiscard]] double power_back_s(const Workplace& w);
void judge_power_back(Workplace& w);
/// What dangers did, in sentences for the debrief.
[[nodiscard]] std::vector<std::string> danger_lines(const Workplace& w);
/// On leaving; `flue_k`: hottest flue gas of the household's draws [K].
void judge_dangers_left(Workplace& w, bool usable, double flue_k);
[[nodiscard]] std::vector<std::string> dangers_left(const Workplace& w, bool usable);

/// Work outside the licence, or an apprentice on their own: judged before the act is done.
void judge_scope(Workplace& w, const Act& act);
/// Services shut or the heater opened against or without the customer's word.
void judge_consent(Workplace& w, const Act& act);
/// Where the leads were when volts_between or ohms_between was read.
[[nodiscard]] plant::Pair leads_of(const Condition& condition);
/// Something at this visit has shown that it is dangerous to go on using the heater.
[[nodiscard]] bool danger_is_known(const Workplace& w);
/// Outside the licence, and left as it should be: isolated, tagged, noticed, told, a colleague called.
[[nodiscard]] bool rightly_handed_on(const Workplace& w, faults::Remedy remedy);

/// Can the household use the heater as it is left? A shut valve behind a tag and a notice stays shut.
[[nodiscard]] bool usable(const Workplace& w);
/// The overheat limiter cannot open the circuit, whoever put the wire there.
[[nodiscard]] bool limiter_is_held_shut(const Workplace& w);
/// The latest reading of a quantity at this tick or after it; nullptr: none.
[[nodiscard]] const Observation* latest_since(const Workplace& w, Quantity quantity,
                                              std::int64_t tick);

/// Who is told (Practice::tell): a matter is reported once one of its bodies was called.
[[nodiscard]] bool reported(const Workplace& w, Matter matter);
[[nodiscard]] std::string whom_to_tell(const Workplace& w, Matter matter);
/// The customer agrees to nothing, and heeds no notice.
[[nodiscard]] bool refuses(const Workplace& w);
/// The gas regulator locks up too high, or never: every appliance behind it gets more gas than it is made for.
[[nodiscard]] bool too_much_pressure(const Workplace& w);
/// How it does, after "a gas regulator that".
[[nodiscard]] std::string pressure_words(const Workplace& w);
[[nodiscard]] bool left_live(const Workplace& w);
[[nodiscard]] std::string live_words(const Workplace& w);
void judge_left_live(Workplace& w);
void judge_reports(Workplace& w);
[[nodiscard]] bool any_weep(const Workplace& w);
/// The trainee has seen bubbles at a joint that weeps now.
[[nodiscard]] bool a_weep_foamed(const Workplace& w);
[[nodiscard]] std::string milliamperes(double ampere);
/// A current that goes through whoever touches, gloves aside: the highest is kept, and from where a hand cannot let go
/// the job ends by this rule, told in these words. True: it ended there.
bool meet_shock(Workplace& w, const plant::Touch& touch, ShockPath path, std::string_view rule,
                const std::string& words);

/// Water as hot as the tap ought to give it.
[[nodiscard]] bool is_due(const Workplace& w, const Tap& tap, double water_k);
/// A repair that has a reading of its own (own_proof) and was left without it, or with one that shows it wrong.
void judge_repair_proof(Workplace& w);
/// Two halves of a pipe in two hands: what stands across the gap goes through whoever holds them.
void part_pipe(Workplace& w, Parted pipe);

/// What is left when the trainee goes: breaches of leaving, and the words for the debrief.
void judge_leaving(Workplace& w);
[[nodiscard]] std::vector<std::string> left_behind(const Workplace& w);
/// Services shut off behind a tag, with a notice to those who live there; where they refuse, somebody who has power
/// over them was told as well.
[[nodiscard]] bool made_safe(const Workplace& w);
struct ProofItems {
    std::vector<std::string> done, missing, not_needed;
};
[[nodiscard]] ProofItems proof_items(const Workplace& w);
inline constexpr std::size_t verified_item_count = 8;

}  // namespace emberpath::worksite
