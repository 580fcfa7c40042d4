#pragma once
/// One script of acts in many houses, weighed against predictions that were worked out once.

#include <cstdint>
#include <optional>

#include "sim/scoring/shadow_bank.hpp"
#include "sim/trainees/release.hpp"

namespace emberpath::trainees {

/// Of the house in which the script is made: its gusts, joints and instruments. Every other house shares the
/// gusts and joints, which its shadows share too.
inline constexpr std::uint64_t script_seed = 1;

struct Script {
    std::vector<scoring::TimedAct> acts;
    scoring::Tape tape;
    double minutes = 0.0;
    worksite::Complaint met = worksite::Complaint::none;  // what the household met before arrival
    /// Those that are evidence.
    [[nodiscard]] std::size_t readings() const;
};
/// read_all_reasonable() in the job's own house.
[[nodiscard]] Script script_of(const worksite::Job& job, const Arrived& arrived);

/// The script in other_house(job, number), with instrument errors of its own. `shadows` have lived through the
/// script's tape. Nothing where that household would have complained otherwise: it is no house of this job.
[[nodiscard]] std::optional<HouseSeen> go_through(const Script& script,
                                                  const scoring::Shadows& shadows,
                                                  const worksite::Job& job, std::uint64_t number);

/// For each observation of `script` the one of `played` that is the same reading at the same instant, or -1. Marks
/// number the acts on both tapes.
[[nodiscard]] std::vector<std::ptrdiff_t> matched(const scoring::Tape& script,
                                                  const scoring::Tape& played);

}  // namespace emberpath::trainees
