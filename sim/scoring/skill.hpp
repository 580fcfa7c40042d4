#pragma once
/// What several jobs together say about somebody: the published formulae, as pure functions. One job is
/// feedback; these are for whoever looks at many.
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

/// Two-parameter logistic item response.
/// Source    Birnbaum (1968), in Lord & Novick, Statistical Theories of Mental Test Scores, chapter 17
/// Probability [-] that somebody of this ability solves an item of this discrimination and difficulty.
[[nodiscard]] double solves(double ability, double discrimination, double difficulty);
/// Information of the item about the ability: a^2 P (1 - P).
[[nodiscard]] double item_information(double ability, double discrimination, double difficulty);

}  // namespace emberpath::scoring
