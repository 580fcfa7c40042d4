#pragma once
/// What an attempt can be shown afterwards: the moments that cost most with the best act there, and what was
/// still open when the cause was settled.

#include <span>
#include <string>
#include <vector>

#include "sim/scoring/findings.hpp"

namespace emberpath::scoring {

/// A class that was still open, and the reading not yet taken that would best have told it from the rest.
struct Rival {
    Class of;
    double probability = 0.0;
    double separation = 0.0;  // of that reading: 0 nothing to 1 all
    std::string reading;      // its title
    bool was_asked = false;   // a reading that could have told it was taken, and left it open
};
inline constexpr double open_above = 0.05;      // probability from which a class counts as open
inline constexpr double separable_above = 0.1;  // less tells nothing in practice
/// Classes open beside the likeliest one, likeliest first. Modes count from the state at arrival.
[[nodiscard]] std::vector<Rival> rivals(const worksite::Job& job, const Shadows& shadows,
                                        const Posterior& posterior, const Tape& tape,
                                        int threads = 1);

/// "Could have been known" and "could not have been known", a sentence for each rival; and when a fault
/// that comes and goes was there.
[[nodiscard]] std::vector<std::string> still_open(const std::vector<Rival>& open, Class likeliest);

/// At most two, dearest first: breaches, readings, remedies, waits and the hand-in, by what they took from the
/// overall score, each with the best that could have been done there: a precaution, or the path of the reference
/// policy. `areas`: the five, with their lost points; what an area takes is area_toll, shared out by points: a
/// moment's toll is its part of that.
[[nodiscard]] std::vector<Moment> costliest_moments(const PlayedAttempt& played,
                                                    const Ledger& ledger, const Findings& f,
                                                    const Outcome& outcome,
                                                    const Hindsight& hindsight,
                                                    std::span<const Area> areas);

/// Mean squared distance, in scales, of the numeric readings before the cure from the shadow that was then
/// the likeliest: about 1 when the shadows can represent the house. 0 without such readings.
[[nodiscard]] double misfit(const PlayedAttempt& played, const Ledger& ledger,
                            const Shadows& shadows);

/// "gas pressure at the inlet at full draw, then spark just after a tap is opened".
[[nodiscard]] std::string path_in_words(const ReferenceRun& run, const worksite::Job& job);

}  // namespace emberpath::scoring
