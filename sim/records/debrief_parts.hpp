#pragma once
/// Parts that a debrief is put together from; for this folder alone.

#include <string>
#include <string_view>
#include <vector>

#include "sim/records/debrief.hpp"

namespace emberpath::records {

/// "93 %", "under 1 %", "over 99 %".
[[nodiscard]] std::string share_text(double share);

/// What stands in the table of an assessor's inputs.
inline constexpr std::string_view what_inputs_are =
    "What the likeliest shadow of each leading cause expected, with its half-width; in brackets "
    "the cause, its probability before, and how well it fitted beside the best of these. A cause "
    "has several shadows, and another of them may have fitted better: its probability after is "
    "that of all. Weight: exponent of the likelihood.";

/// "04:10" since the trainee's time began.
[[nodiscard]] std::string time_on_site(std::int64_t tick, const worksite::Job& job);
[[nodiscard]] std::string joined(const std::vector<std::string>& parts, std::string_view between);

/// Classes of causes: that of this house, then the others by the largest share they ever had once
/// something was read.
[[nodiscard]] std::vector<scoring::Class> by_likelihood(const worksite::Job& job,
                                                        const scoring::Assessment& assessment);
/// What the act showed: its numbered readings if it has any, else the first line on screen.
[[nodiscard]] std::string value_of(const RecordedAct& act, const scoring::Assessment& assessment);
/// How the leading causes stood after every weighed act.
void add_stands(Debrief& debrief, const Record& record, const worksite::Job& job,
                const scoring::Assessment& assessment);

/// Where the points of each area went, in the order of the areas, most first.
[[nodiscard]] std::vector<Debrief::Lost> lost_of(const Record& record, const worksite::Job& job,
                                                 const scoring::Assessment& assessment);
/// "You said 80 %; your own readings gave 93 %."; empty where nothing was said.
[[nodiscard]] std::string confidence_in_words(const scoring::Assessment& assessment);
/// How far the evidence before the cure spoke for the true cause; says so where pairs of causes share its remedy.
[[nodiscard]] std::string evidence_for_truth(const scoring::Assessment& assessment);
/// Readings of `debrief` that by themselves rule out the cause of this house.
[[nodiscard]] std::vector<std::string> against_truth(const Debrief& debrief);

/// For an assessor.
[[nodiscard]] std::vector<std::string> words_for_assessor(const scoring::Assessment& assessment);
[[nodiscard]] std::vector<Debrief::Input> inputs_of(const scoring::Assessment& assessment);

}  // namespace emberpath::records
