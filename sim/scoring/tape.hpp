#pragma once
/// Everything that happened to the heater during an attempt, in order, so that it can happen to every
/// shadow as well: inputs of each tick, tools, remedies, and the instants at which something was read.

#include <cstddef>
#include <vector>

#include "sim/worksite/attempt.hpp"

namespace emberpath::scoring {

struct Tape {
    enum class Kind : unsigned char {
        tick,
        tools,
        remedy,
        cylinder,
        alteration,
        observation,
        arrival,
        mark
    };
    struct Event {
        Kind kind;
        std::size_t index;  // into the list of its kind; remedy: the Remedy; mark: its number
    };
    struct Tools {
        worksite::ToolSetup setup;
        bool hold_cleared = false;
    };
    std::vector<Event> events;
    std::vector<worksite::TickInputs> ticks;
    std::vector<Tools> tools;
    std::vector<worksite::Alterations> alterations;
    std::vector<worksite::Observation> observations;
    std::vector<int> cycles;          // demand cycle of each observation
    std::vector<std::size_t> marked;  // observations taken before each mark
    std::vector<std::size_t> event_of_mark;
    std::size_t marks = 0;
    /// Event after which the trainee's time begins; the whole length when nobody arrived yet.
    [[nodiscard]] std::size_t arrival_event() const;
};

/// Listens to an attempt and writes the tape. A mark is set by whoever plays the acts, before each act.
class Recorder : public worksite::Follower {
  public:
    void tick(const worksite::TickInputs& inputs) override;
    void tools(const worksite::ToolSetup& setup, bool hold_cleared) override;
    void remedied(faults::Remedy remedy) override;
    void cylinder_changed() override;
    void altered(const worksite::Alterations& alterations) override;
    void observed(const worksite::Observation& observation) override;
    void arrived() override;
    void mark();

    [[nodiscard]] const Tape& tape() const { return tape_; }

  private:
    Tape tape_;
    bool drawing_ = false;
    int cycle_ = 0;
};

}  // namespace emberpath::scoring
