#pragma once
/// What several jobs together say about somebody. One job is feedback; this is for whoever looks at many
/// (`emberpath series`).
///
/// Checked   tests/unit/scoring/worked_examples_test.cpp

namespace emberpath::scoring {

/// Knowledge tracing.
/// Source    Corbett & Anderson (1995), User Modeling and User-Adapted Interaction 4, 253-278, equations
///           for P(L) after an answer and after practice
struct Tracing {
    double learns = 0.4;   // from one opportunity to the next
    double slips = 0.2;    // knows, and answers wrongly
    double guesses = 0.2;  // does not know, and answers rightly
};
/// Probability [-] that a skill is known after one more answer, given `known` before it.
[[nodiscard]] double known_after(double known, bool right, const Tracing& tracing);

}  // namespace emberpath::scoring
