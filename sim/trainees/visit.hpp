#pragma once
/// A house as a simulated trainee meets it: sentences go in, log entries come out. What the trainee may
/// look at is here and nothing else; the job's hidden faults stay inside the attempt.

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sim/scoring/bank.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/scoring/tape.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath::trainees {

/// Shadows that have lived through the history of a job up to arrival; any attempt at it with the same
/// seed can go on from a copy, and so can what has lived on through its first acts. They know no fault.
using Arrived = std::shared_ptr<const scoring::Bank>;
/// On at most `threads` threads, and so is whatever lives on from it; no figure depends on how many.
[[nodiscard]] Arrived arrive(const worksite::Job& job, std::uint64_t seed, int threads = 1);

/// The job as its card, site and data plate show it: no faults, no intended remedy.
[[nodiscard]] worksite::Job as_seen(worksite::Job job);

class Visit {
  public:
    /// `arrived`: of the same job and seed; nullptr: worked out when it is needed.
    Visit(const worksite::Job& job, std::uint64_t seed, Arrived arrived = nullptr);
    Visit(const Visit&) = delete;
    Visit& operator=(const Visit&) = delete;

    /// Does one act. nullptr when it cannot be read, cannot be done now (the entry then has no effect),
    /// or the attempt is over.
    const worksite::LogEntry* act(std::string_view sentence);

    [[nodiscard]] const worksite::Job& job() const { return seen_; }
    [[nodiscard]] const std::vector<worksite::LogEntry>& log() const { return attempt_.log(); }
    [[nodiscard]] bool over() const { return attempt_.over(); }
    [[nodiscard]] double minutes() const { return attempt_.seconds_on_site() / 60.0; }
    [[nodiscard]] std::int64_t tick() const { return attempt_.tick(); }
    [[nodiscard]] const std::vector<scoring::TimedAct>& acts() const { return acts_; }
    /// What happened to the heater so far, for the trainee's own shadows.
    [[nodiscard]] const scoring::Tape& tape() const { return recorder_.tape(); }
    [[nodiscard]] const scoring::Bank& at_arrival() const;

  private:
    worksite::Job seen_;
    scoring::Recorder recorder_;
    worksite::Attempt attempt_;
    std::vector<scoring::TimedAct> acts_;
    mutable Arrived arrived_;
};

}  // namespace emberpath::trainees
