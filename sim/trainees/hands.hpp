#pragma once
/// Site skills: from an intention ("read the working pressure at the inlet", "replace the igniter", "prove
/// and hand over") to the sentences that do it in this house, with or without the safety steps. Remembers
/// only what was said before.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/scoring/modes.hpp"
#include "sim/trainees/visit.hpp"

namespace emberpath::trainees {

/// Which steps a trainee takes. All of them: by the book.
struct Care {
    // Off, unplugged, locked, before a hand goes inside; gas shut at joints; what the house asks for.
    bool isolate = true;
    bool prove_dead = true;  // tester proved, dead, tester proved
    bool leak_test = true;
    bool leak_test_before = true;  // a joint is undone
    bool prove_work = true;        // combustion, hot water and display after the remedy
    bool tell = true;              // customer and record
};

/// What goes into the record.
struct Story {
    faults::Cause cause = faults::Cause::no_fault;
    std::optional<faults::Cause> also = std::nullopt;
    std::vector<faults::Cause> possible{};  // or these, beside the first
    std::string done = "see the readings", told = "what was found";
};

/// Whether a line that was shown holds these words. False for no entry.
[[nodiscard]] bool shows(const worksite::LogEntry* entry, std::string_view words);

class Hands {
  public:
    Hands(Visit& visit, Care care)
        : visit_(visit), care_(care), set_point_k_(visit.job().panel.set_point_k) {}

    /// Says one sentence and remembers what it changed. nullptr: it could not be done.
    const worksite::LogEntry* say(const std::string& sentence);
    void set_care(Care care) { care_ = care; }
    /// After sentences of somebody else's were said: which taps stand open, what is proved.
    void resume();

    /// What anybody does first: a few questions, display, analyser left to warm up, air of the room.
    void arrive();
    /// Takes one reading in a mode of scoring::modes(); several values may come with it.
    void take(std::size_t mode, worksite::Quantity quantity);
    void take_inside(worksite::Quantity quantity);
    /// Carries a remedy out. `care.isolate` false: on a live heater, gloves on.
    void remedy(faults::Remedy remedy);
    /// Flow and temperature at every hot outlet by itself; or until one of them gives hardly anything.
    void each_outlet(bool until_one_is_poor = false);
    /// An open flue at full draw, against every fan of its room; nothing where the flue is not open.
    void test_draught();
    /// The same with every window open: a flue that draws then was short of air, one that is not clear goes on
    /// spilling (common practice). Nothing without an open flue and a window.
    void test_draught_with_air();
    /// Gas pressure at the heater after ten minutes in which nothing was drawn: a regulator that does not shut
    /// lets it rise all the while.
    void watch_lock_up();
    /// What reasoning did not think of: every outlet by itself, water pressure, case and drains.
    void look_round();
    /// Unplugged, locked, gas shut, tagged, with a notice: it stays so.
    void take_out_of_use();
    [[nodiscard]] bool is_out_of_use() const { return out_of_use_; }
    /// Draws hot water for a minute and looks: does it serve (again)?
    bool works();
    /// Everything back, and proved; false when it burns badly all the same. Once is enough until the next remedy.
    [[nodiscard]] bool prove();
    /// Everything back, proved, told, written, handed in; made safe where it burns badly.
    void hand_over(const Story& story);

    void bring_into(std::size_t mode);
    [[nodiscard]] std::size_t mode() const { return mode_; }
    /// When it was last looked at (works()): hot at the largest tap fully open.
    [[nodiscard]] bool hot_at_full() const { return hot_at_full_; }
    [[nodiscard]] Visit& visit() { return visit_; }
    /// Latest value of a quantity that was read, if any was.
    [[nodiscard]] const worksite::Observation* latest(worksite::Quantity quantity) const;
    [[nodiscard]] std::string latest_word(worksite::Quantity quantity) const;

    void open_up();   // isolate, cover off, prove dead
    void close_up();  // cover on, power on
    void manometer_away();

  private:
    static constexpr int most_joint_repairs = 4;  // in a row; what weeps then is not worked on
    void smallest_and_largest_draw();
    void leave_bad_air();
    void leave_gas();
    void look_around();
    [[nodiscard]] bool goes_up();
    /// Handed on and the heater taken out of use: old sheet, or a ladder in the wind.
    [[nodiscard]] bool leaves_terminal_alone(faults::Remedy remedy);
    void move_cylinder();
    void worst_draught(bool begin);
    void remember(const std::string& sentence);
    void isolate();
    void power_back();
    void shut_gas();
    void open_gas();
    void close_taps();
    const worksite::LogEntry* reset();
    void restart();
    void manometer_to(const std::string& point);
    void readout(const std::string& sentence);
    void wake_readout();
    void installer_settings();
    void ohms(const std::string& sensor);
    void analyse();
    void at_a_tap(const std::string& what);
    void prove_joints();
    void remake(const worksite::LogEntry& bubbles);
    void prove_combustion();
    void test_wiring();
    void set_manifold(const std::string& sentence);
    void make_safe();
    void give_notice();
    void prove_and_put_back();
    void write(const Story& story);
    [[nodiscard]] std::string supply() const;
    [[nodiscard]] const worksite::Tap& largest_tap() const;

    Visit& visit_;
    Care care_;
    double set_point_k_;  // at the panel
    std::size_t mode_ = 0;
    bool cover_off_ = false, switched_off_ = false, unplugged_ = false, locked_ = false;
    bool proved_dead_ = false, gas_shut_ = false, gloves_ = false, glasses_ = false;
    bool airing_ = false, fans_run_ = false;
    bool looked_around_ = false, needs_ladder_ = false, ladder_tied_ = false, old_sheet_ = false,
         scorched_ = false, cylinder_close_ = false;
    bool hot_at_full_ = false;
    bool probe_in_ = false, readout_open_ = false, joints_touched_ = false, running_proved_ = false,
         out_of_use_ = false, proved_ = false, burns_badly_ = false;
    std::string manometer_;          // point; empty: not attached
    std::vector<std::string> open_;  // taps
    std::int64_t analyser_tick_ = -1, reset_tick_ = -1;
};

}  // namespace emberpath::trainees
