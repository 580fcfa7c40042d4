#pragma once
/// The shadows of an attempt as they live through it: one heater per hypothesis, the same history, the same
/// acts. They follow a tape as it grows, and those that cannot matter any more may sleep.
///
/// Lanes live in groups of eight, so that a group's state stays in cache and threads share nothing. Lanes
/// never exchange values: results are the same for any number of threads and either instruction set.
/// No privileged shadow: nothing here reads the job's faults.
///
/// Sleep. The middle severity of each cause is its representative and never sleeps. The other severities of
/// a cause that the readings have as good as excluded are left where they are; what they would have shown
/// is taken from the nearest severity that is awake. Woken, they live through what they missed, and nothing is lost.

#include <cstddef>
#include <memory>
#include <vector>

#include "sim/scoring/shadow_bank.hpp"

namespace emberpath::scoring {

class Bank {
  public:
    /// `threads`: at most so many work at a time. The job's faults are not read.
    explicit Bank(const worksite::Job& job, int threads = 1);
    Bank(const worksite::Job& job, std::vector<Hypothesis> hypotheses, int threads);
    ~Bank();
    /// A copy goes on from the same instant: one history serves several attempts.
    Bank(const Bank& other);
    Bank& operator=(const Bank&) = delete;

    /// Lives on to event `end` of the tape (not included), at most to the end of it.
    void live_until(const Tape& tape, std::size_t end);
    /// Events lived through so far.
    [[nodiscard]] std::size_t lived() const { return lived_; }
    [[nodiscard]] const Shadows& shadows() const { return shadows_; }

    /// Lets the excluded lanes sleep (one flag each, representatives stay awake), as soon as the others fit
    /// into fewer groups: those are filled anew.
    void let_sleep(const std::vector<bool>& excluded);
    /// Wakes the groups that hold one of these lanes; they catch up on the tape. True when any slept.
    bool wake(const Tape& tape, const std::vector<bool>& lanes);
    [[nodiscard]] bool is_asleep(std::size_t lane) const { return asleep_[lane]; }
    [[nodiscard]] std::size_t groups_awake() const;
    /// Group-ticks computed so far: what the shadows have cost.
    [[nodiscard]] std::size_t group_ticks() const { return group_ticks_; }

  private:
    struct Groups;
    void make_room(const Tape& tape);
    void speak_for_sleepers(std::size_t first, std::size_t last, const Tape& tape);
    [[nodiscard]] std::size_t speaker_of(std::size_t lane) const;

    std::shared_ptr<const worksite::Job> job_;  // the groups refer to it
    int threads_;
    Shadows shadows_;
    std::vector<std::size_t> representative_;  // of each lane; itself for a representative
    std::vector<bool> asleep_;                 // by lane
    std::unique_ptr<Groups> groups_;
    std::size_t lived_ = 0, group_ticks_ = 0;
};

/// The representative of each lane: the middle severity of its cause and sign.
[[nodiscard]] std::vector<std::size_t> representatives(const std::vector<Hypothesis>& all);

}  // namespace emberpath::scoring
