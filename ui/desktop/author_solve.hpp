#pragma once
/// Whether an author's job can be solved: what a careful person would read, and which causes look alike.
/// Simulates every cause of the catalogue, so it takes seconds.

#include <atomic>

#include "sim/worksite/job.hpp"
#include "ui/screens/author.hpp"

namespace emberpath::desktop {

/// Two causes count as told apart when readings make one of them this many times likelier (chosen).
inline constexpr double told_apart_odds = 99.0;
/// Causes shown beside the job's own: those that look most like it.
inline constexpr std::size_t rivals_shown = 5;

/// What simulating every cause adds to the preview.
struct Solution {
    std::vector<screens::CheckView> checks;
    std::vector<std::string> safe_path;  // readings of the reference policy, in order
    std::vector<std::string> causes;     // the job's own first, then the likest
    std::vector<std::vector<screens::PairView>> pairs;
    bool complete = false;  // false: abandoned
};
/// `share` goes from 0 to 1; true in `abandoned` stops it soon.
[[nodiscard]] Solution solve(const worksite::Job& job, std::atomic<double>& share,
                             const std::atomic<bool>& abandoned);
/// Puts it into a view; what stood there of an earlier one is replaced.
void add_solution(screens::AuthorView& view, const Solution& solution);

}  // namespace emberpath::desktop
