#pragma once
/// One attempt: a clock, a house with a hidden fault, tools, a body that can be hurt, and a log.
/// Acts come in as sentences; what comes out is only what the trainee may know.

#include <array>
#include <cstdint>
#include <deque>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sim/diagnostics/diagnostic.hpp"
#include "sim/worksite/job.hpp"
#include "sim/worksite/observation.hpp"
#include "sim/worksite/sight.hpp"

namespace emberpath::worksite {

enum class Mode { coached, assessed };

/// A safety rule broken, with what it did. `critical` closes the gate whatever else was done.
struct Breach {
    std::string rule;  // short word: "live_work", "gas_open", "no_leak_test" ...
    std::string text;  // what happened, in a sentence, with the figure that matters
    bool critical = false;
    double deduction = 0.2;  // of area S
    std::size_t act = 0;
    std::string better{};  // what would have kept it; empty: the precaution of its rule
};

/// Why a reading taken by the trainee helps or not is scoring's business; this is only what was done.
struct LogEntry {
    std::string words;               // the act in its canonical sentence
    std::int64_t begin_tick = 0;     // when it was started
    std::int64_t end_tick = 0;       // when its result was shown
    std::vector<std::string> shown;  // lines shown to the trainee
    std::vector<Observation> observations;
    enum class Kind {
        look,
        test,
        operate,
        safety,
        remedy,
        proof,
        talk,
        write,
        wait
    } kind = Kind::look;
    int remedy = -1;            // index of faults::Remedy when one was carried out
    double part_minutes = 0.0;  // remedy: price of the part in minutes of work
};

/// What the trainee wrote and decided.
struct WriteUp {
    std::string cause;                  // catalogue word; empty: nothing written
    std::vector<std::string> also;      // causes that were there beside it
    std::vector<std::string> possible;  // causes that the readings do not tell from it
    std::optional<double> confidence;   // in these causes, as stated: 0 to 1. It moves no score
    std::vector<int> because;           // balloon numbers
    std::string done, told;
    bool handed_in = false;
};

/// What the trainee did to the heater that is no remedy: wrong doings and disconnections. A pure map on
/// parameters like a fault, and the same for every lane.
struct Alterations {
    bool limiter_bridged = false;
    bool air_proof_bridged = false;    // a wire tells the controller of air that may not be there
    double regulator_raised_pa = 0.0;  // supply regulator wound up by so much
    std::array<bool, 3> sensor_unplugged{};  // outlet, inlet, exchanger
    /// What was stored at the service readout, by controller::Setting.
    std::array<std::optional<double>, controller::setting_count> stored{};
    bool board_harmed = false;  // by an insulation tester
    bool fuse_oversized = false;
    bool without_safety_switch = false;  // fed from an outlet that has none
    bool strainer_out = false;           // the inlet's screen lies on the shelf
    double grit = 0.0;               // that came in since, 0 to 1: what it does to the flow turbine
    bool other_flow_sensor = false;  // of another heater: it counts more than flows
    bool tempering_bypassed = false;    // a pipe round the tempering valve
    bool lead_taped = false;            // of the igniter
    bool outlet_sensor_fooled = false;  // a fixed resistor stands in for it
    bool operator==(const Alterations&) const = default;
};
[[nodiscard]] plant::PlantParameters with_alterations(plant::PlantParameters parameters,
                                                      const Alterations& alterations);
[[nodiscard]] controller::Settings with_alterations(controller::Settings settings,
                                                    const Alterations& alterations);
/// The job's sound house with these causes at this time and what hands did to it.
[[nodiscard]] Installation installation_of(const Job& job, std::span<const faults::Fault> faults,
                                           const faults::Moment& now,
                                           const Alterations& alterations = {});

/// Follows an attempt tick by tick: shadows, recorders, tests. Called in the order things happen.
class Follower {
  public:
    virtual ~Follower() = default;
    virtual void tick(const TickInputs& inputs) = 0;  // about to be simulated
    virtual void tools(const ToolSetup& setup, bool hold_cleared) = 0;
    /// A remedy that works at once was carried out (faults::works_at_once): its causes are gone.
    virtual void remedied(faults::Remedy remedy) = 0;
    /// A full cylinder stands there now; follows remedied(change_cylinder).
    virtual void cylinder_changed() = 0;
    /// Apply to every lane, after its faults. Replaces the alterations before.
    virtual void altered(const Alterations&) {}
    /// Looking or listening begins with tools() that switches it on. A reading from a tool used so wrongly
    /// that its number means something else is logged but never observed.
    virtual void observed(const Observation& observation) = 0;
    virtual void arrived() = 0;  // history over, the trainee's time begins
};

struct ActRefusal {
    std::string text;  // what was found and what was expected, nearest sentence
};

/// What chance does at a house. One number moves both, unless somebody asks what else the instruments could have
/// shown of the same hours there.
struct Seeds {
    std::uint64_t house = 1;        // gusts, and which joints weep when they are made
    std::uint64_t instruments = 1;  // their errors, of the day and of each reading
    Seeds(std::uint64_t both)
        : house(both), instruments(both) {}  // NOLINT: one seed is the usual case
    Seeds(std::uint64_t of_house, std::uint64_t of_instruments)
        : house(of_house), instruments(of_instruments) {}
};

class Attempt {
  public:
    /// Simulates the history up to arrival.
    Attempt(Job job, Seeds seeds, Mode mode, Follower* follower = nullptr);
    ~Attempt();
    Attempt(Attempt&&) noexcept;
    Attempt& operator=(Attempt&&) noexcept;

    /// Does one act; its time passes. Returns the log entry (also kept), or why it cannot be read.
    struct Outcome {
        const LogEntry* entry = nullptr;
        ActRefusal refusal;
    };
    Outcome perform(std::string_view sentence);
    /// Checks a sentence without doing it. Empty text: it can be done.
    [[nodiscard]] ActRefusal check(std::string_view sentence) const;
    /// Simulated time it would take [s]; 0 when it cannot be read.
    [[nodiscard]] double seconds_for(std::string_view sentence) const;
    /// Lets time pass without an act (the window's running clock). When the job ends badly meanwhile, that
    /// is kept as the wait it was and returned, so that a record of the acts leads to the same end.
    const LogEntry* run(std::int64_t ticks);

    /// What a person standing there sees and hears now.
    [[nodiscard]] Sight sight() const;
    /// From now on, what the glasses show is kept once a second, through acts and waits.
    void keep_trail();
    [[nodiscard]] const std::deque<TrailPoint>& trail() const;

    [[nodiscard]] std::int64_t tick() const;
    [[nodiscard]] double seconds_on_site() const;
    [[nodiscard]] const std::vector<LogEntry>& log() const;
    [[nodiscard]] const std::vector<Breach>& breaches() const;
    [[nodiscard]] const WriteUp& write_up() const;
    [[nodiscard]] Mode mode() const;
    /// The time allowed is used up: the house is left as it is, and only writing is not refused.
    [[nodiscard]] bool time_is_up() const;
    [[nodiscard]] bool over() const;  // handed in, ended badly, or beyond the model
    /// Why the simulation had to stop, as a sentence; empty while it is valid. Such an attempt is no evidence.
    [[nodiscard]] const std::string& beyond_model() const;
    [[nodiscard]] std::uint64_t state_hash() const;  // heater, controller, site, tools, body

    /// For scoring and debrief after the end only: never pass on to a trainee's screen.
    struct Truth {
        const Job& job;
        std::vector<faults::Fault> remaining;  // neither cured nor handed on as it should be
        HeaterView heater;
        std::vector<std::string> left_behind;  // hazards left: "gas escapes at the inlet union"
        std::vector<std::string> verified;     // of the eight items of proof and handover: done
        std::vector<std::string> unproved;     // not done
        std::vector<std::string> not_needed;   // not called for by the work, or out of use
        bool made_safe;                        // out of use, tagged, with a notice that is heeded
        std::vector<std::string> doses;        // what the person at work took up, in sentences
        Complaint noticed;                     // what the simulated history would have been called
    };
    [[nodiscard]] Truth truth() const;
    /// What the household meets in the day after, simulated on the state left behind: sentences, and a hash of
    /// the state a day later. Takes a second or two.
    struct After {
        std::vector<std::string> lines;
        std::string state;
        bool operator==(const After&) const = default;
    };
    [[nodiscard]] After day_after() const;

  private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

/// One row of the trainee's language, for help, manual and completion.
struct Phrase {
    std::string_view pattern;  // "attach manometer to {point}"
    std::string_view help;
    double seconds;               // simulated time it takes
    double part_minutes = 0.0;    // price of the part it uses up, in minutes of work
    std::string_view skill = {};  // kind of work a licence has to cover; empty: anybody
};
[[nodiscard]] std::span<const Phrase> phrases();

/// A script: one act a line, `#` comments. All problems at once.
struct Script {
    struct Line {
        int number;
        std::string sentence;
    };
    std::vector<Line> lines;
    std::vector<diagnostics::Diagnostic> problems;
};
[[nodiscard]] Script read_script(std::string_view text, std::string_view file, const Job& job);

}  // namespace emberpath::worksite
