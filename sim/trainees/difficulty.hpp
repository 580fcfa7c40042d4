#pragma once
/// How much a job asks of whoever finds its fault: how far complaint and display speak against it, and how long the
/// reference path is. It tells jobs from each other, not people; no score depends on it.

#include <string>
#include <string_view>

namespace emberpath::trainees {

struct Difficulty {
    /// Self-information of the true class after complaint and display [bits]: -log2 of its probability
    /// (Shannon 1948). 0: they say it; each further bit halves what they leave of it.
    double surprise_bits = 0.0;
    /// C of the path formula [min]: what the reference policy reads, never less than 10.
    double reference_minutes = 0.0;
    bool two_faults = false;    // both have to be found
    double missed_share = 0.0;  // of the ordinary attempts: met with an objection
};

/// "easy" while complaint and display speak for the cause or hardly against it, one fault is there and the reference
/// path is short; "hard" where one of them asks much; else "middling". The bounds are chosen.
[[nodiscard]] std::string_view word(const Difficulty& difficulty);
/// What makes it so: "complaint and display speak against the true cause (5.7 bits)"; empty where nothing does.
[[nodiscard]] std::string reasons(const Difficulty& difficulty);

}  // namespace emberpath::trainees
