#pragma once
/// The inside of an attempt: house, heater, tools and person together under one clock. The act_*.cpp files
/// work on it; nothing outside sim/worksite includes it.

#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/math/random.hpp"
#include "sim/worksite/acts.hpp"
#include "sim/worksite/attempt.hpp"
#include "sim/worksite/complaint.hpp"
#include "sim/worksite/doses.hpp"
#include "sim/worksite/sight.hpp"
#include "sim/worksite/site_state.hpp"

namespace emberpath::worksite {

class Workplace {
  public:
    Workplace(Job job_given, Seeds seeds_given, Mode mode_given, Follower* follower_given);

    // --- time ---
    void step();                // one tick
    void pass(double seconds);  // stops early when the job has ended
    [[nodiscard]] std::int64_t tick() const { return tick_; }
    [[nodiscard]] double time_s() const { return static_cast<double>(tick_) * tick_s; }

    // --- what is so ---
    [[nodiscard]] HeaterView look() const;
    [[nodiscard]] Condition condition() const;
    [[nodiscard]] std::string condition_words() const;
    [[nodiscard]] const TickInputs& inputs() const { return inputs_; }
    [[nodiscard]] bool burner_runs() const;
    /// Mains reaches the board and it is alive: panel and readout are lit.
    [[nodiscard]] bool powered() const;
    /// The larger voltage of the heater's supply terminals against true earth [V].
    [[nodiscard]] double terminals_v() const;
    [[nodiscard]] bool terminals_live() const;
    /// What the board's capacitor still holds once the supply is off [V]; none while it is on.
    [[nodiscard]] double stored_v() const;
    void feel_stored_charge(std::string_view doing);
    /// A hand on the pipes: says and reads what is felt, ends the job where it would.
    void touch_pipes(bool always_read);
    /// Carbon monoxide where people breathe [share], of the plant's room.
    [[nodiscard]] double room_co() const { return heater.plant.state[plant::room_co]; }
    /// What the person at work breathes of it: nothing in the open air.
    [[nodiscard]] double breathed_co() const { return person.outside ? 0.0 : room_co(); }
    /// A flame or a spark within reach of gas.
    [[nodiscard]] bool ignition_source(const HeaterView& view) const;
    [[nodiscard]] bool alarm_sounds() const;  // the personal one, for carbon monoxide
    /// Here, or where one was before one went outside.
    [[nodiscard]] bool smells_gas() const { return smell_noticed_; }
    [[nodiscard]] bool gas_present(Point point) const;
    [[nodiscard]] bool joint_under_pressure(Joint joint) const;
    /// What a joint lets out at 2 kPa [m3/s], badly made here or found so.
    [[nodiscard]] double weep_at(Joint joint) const;
    /// Working on the sensor under the multimeter: the heater as if nothing were unplugged.
    [[nodiscard]] HeaterView look_plugged() const;
    [[nodiscard]] std::vector<faults::Fault> faults_left() const;
    [[nodiscard]] faults::Moment moment() const;

    // --- what is shown and kept ---
    void say(std::string line);
    void notice(std::string line);  // said only to somebody who is there
    /// A numbered reading: instrument error, rounding, one line; the follower hears of it if trusted.
    struct ReadingOf {
        Quantity quantity = Quantity::display_word;
        Hold hold = Hold::now;
        double watched_s = 0.0;
        bool trusted = true;
        double shift = 0.0;    // what wrong use adds
        double instead = 0.0;  // untrusted: shown in place of the model's value
        bool numbered = true;
        bool given = false;  // trusted, but `instead` is the value: what somebody said
        std::string note{};  // further words on the line
    };
    double read(const ReadingOf& what);
    /// What the same reading shows while nobody notes it down: no repeat error, nothing drawn or kept.
    [[nodiscard]] double on_glass(const ReadingOf& what) const;
    /// What that piece of the kit shows of a known value, as checks of instruments do: no repeat error.
    [[nodiscard]] double shown_of(Quantity quantity, double known, bool spare) const;
    /// An instrument past its date may be right; who has not looked cannot know.
    void judge_label(Instrument instrument);
    /// `better`: what would have kept it, where the rule has more than one precaution.
    void breach(std::string_view word, const std::string& text, std::string_view better = {});
    /// nullptr: that rule is not broken yet.
    [[nodiscard]] const Breach* known_breach(std::string_view word) const;
    [[nodiscard]] Breach* known_breach(std::string_view word);
    void end_badly(std::string_view word, const std::string& text);

    // --- what acts do ---
    void changed();  // the installation or its settings: a new epoch
    void set_tools(bool hold_cleared = false);
    void begin_watching(bool eyes);
    void stop_watching();
    void measure_share(std::size_t tap);  // of all hot flow, for the flow cup
    void set_alterations(const Alterations& alterations);
    /// Hands inside the cover: isolation, proof and heat decide what happens.
    void hands_inside(std::string_view doing);
    void open_joint(Joint joint);  // opened: to be proved
    void seal_joint(Joint joint);  // made again; may weep
    void carry_out(faults::Remedy remedy);
    [[nodiscard]] double uniform_for(std::string_view purpose, std::uint64_t number) const;

    void step_outside();
    void come_in();

    /// The house with nobody at work and another household plan: nothing done there comes back here.
    [[nodiscard]] Workplace left_alone(std::vector<HouseholdEvent> plan) const;
    void touch_metal(double metal_k);                  // a bare hand, drawn back at once
    void touch_water(double water_k, double seconds);  // on a bare hand
    [[nodiscard]] std::uint64_t hash() const;
    [[nodiscard]] double seconds_on_site() const {
        return static_cast<double>(tick_ - ticks_in(job.site.arrival_s)) * tick_s;
    }
    [[nodiscard]] bool time_is_up() const {
        return mode == Mode::assessed && job.time_allowed_s > 0.0 &&
               seconds_on_site() >= job.time_allowed_s;
    }
    [[nodiscard]] bool over() const {
        return write_up.handed_in || person.hurt || !beyond_model.empty();
    }

    Job job;
    Seeds seeds;
    Mode mode;
    Services services;
    Fabric fabric;
    Bench bench;
    Person person;
    Deeds deeds;
    Precautions precautions;
    WriteUp write_up;
    std::string
        beyond_model;  // what left the range in which the simulation is valid; ends the attempt
    std::vector<LogEntry> log;
    std::vector<Breach> breaches;
    LogEntry entry;                        // of the act being done
    std::vector<std::uint8_t> dealt_with;  // per fault of the job
    Heater<double> heater;
    Senses senses;
    ToolSetup setup;
    Household household;  // what the history would be called
    double escaped_gas_m3 = 0.0;
    Doses doses;                       // of the person at work
    double held_line_pa = 0.0;         // gas shut in between meter or cylinder and heater
    std::optional<Sight> seen_inside;  // as it was when the person stepped outside
    bool keeps_trail = false;
    std::deque<TrailPoint> trail;

  private:
    void build_inputs();
    void household_events();
    void apply(const HouseholdEvent& event);
    void around_the_heater(const HouseholdEvent& event);
    void refresh_parameters();
    void meet_live_terminal(const std::string& what);
    void escape_gas(const HeaterView& view);
    void flash_where_it_can(const HeaterView& view, double share);
    void judge_room_air();
    void take_breath();
    [[nodiscard]] bool needs_a_look();
    void notice_light_up(const HeaterView& view);
    void watch_phase();
    void watch_limits();
    void leave_trail();
    [[nodiscard]] double escaping_m3_per_s(const HeaterView& view) const;
    [[nodiscard]] bool air_holds_gas_back() const;
    void lose_air();
    void settle_history();
    void tell_follower(const Observation& seen);
    [[nodiscard]] double model_value(const ReadingOf& what) const;
    [[nodiscard]] double with_error(Quantity quantity, double value, double repeat,
                                    bool spare) const;
    [[nodiscard]] bool uses_spare(Quantity quantity) const;

    Follower* follower_;
    Gusts gusts_;
    TickInputs inputs_;
    std::vector<double> severities_;
    std::size_t next_event_ = 0;
    std::vector<HouseholdEvent> events_;  // by time
    std::int64_t tick_ = 0;
    std::int64_t changed_tick_ = 0;
    std::uint32_t epoch_ = 0;
    controller::Phase phase_ = controller::Phase::standby;
    bool arrived_ = false;
    bool was_changing_ = true;  // a fault's severity, in the tick before
    bool tools_resting_ = true;
    bool lit_just_now_ = false;
    int light_ups_ = 0;
    bool smell_noticed_ = false;
    std::int64_t charged_tick_ = never;  // the board had its supply then, last
    int readings_ = 0;
    std::uint64_t joints_made_ = 0;
    math::Random repeat_;
};

}  // namespace emberpath::worksite
