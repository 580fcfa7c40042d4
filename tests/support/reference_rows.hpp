#pragma once
/// Published values as data: one CSV per subject under tests/reference, one row per value with its source and
/// tolerance. A test names, for every row, the function that computes the value or the reason for leaving
/// the row out; a row that is neither fails the test.

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace emberpath::reference {

struct Row {
    std::string id, quantity, conditions, value, unit, tolerance, source, status, note;
};

/// The rows of tests/reference/NAME.csv. Throws std::runtime_error when the file is not as it should be.
[[nodiscard]] std::vector<Row> read_rows(std::string_view name);

/// The number that follows `key` in the row's conditions ("T=" in "T=300 K, p=3 MPa" is 300). The key must
/// start a word. Throws std::runtime_error when it is not there: a row is never checked with a guess.
[[nodiscard]] double after(const Row& row, std::string_view key);

/// The number that stands before `text` in the row's conditions ("6" before " L/min").
[[nodiscard]] double before(const Row& row, std::string_view text);

/// The row with its conditions cut to what follows `text`: for keys that occur once per stream.
[[nodiscard]] Row from(const Row& row, std::string_view text);

/// The number that follows `key` anywhere in a text.
[[nodiscard]] double number_after(std::string_view text, std::string_view key);

[[nodiscard]] bool mentions(const Row& row, std::string_view text);  // in its conditions

using Match = std::function<bool(const Row&)>;
/// Rows whose quantity starts with this text.
[[nodiscard]] Match quantity(std::string text);
/// Rows whose quantity starts with `text` and holds `part`.
[[nodiscard]] Match quantity(std::string text, std::string part);
/// Rows of this space-separated list of identifiers.
[[nodiscard]] Match rows(std::string ids);

/// How a row is computed. `tolerance` says which of the row's tolerances is meant, counting from 0: rows
/// that state two ("rel 2e-2 (code formula); rel 7e-2 (Darcy)") mean them for two kinds of model.
struct Check {
    std::string_view name;  // of the function that computes it, as the results list it
    Match match;
    std::function<double(const Row&)> compute;
    std::size_t tolerance = 0;
};

/// Why a row is not checked. A known miss is one that the model fails: it is computed, and fails the test once it is
/// met. Anything else is out of the model's scope.
struct Skip {
    Match match;
    std::string_view reason;
    bool known_miss = false;
};

struct Tally {
    std::size_t rows = 0, checked = 0, plausibility = 0, skipped = 0, known_misses = 0, failed = 0;
};

/// Runs every row of a file, fails the running test for each row that is off, unaccounted for, or skipped
/// by an entry that no row needs; writes its results (tests/support/results.hpp) and prints a
/// count. Rows of status "memory" are recalled rather than read: they count as plausibility checks.
Tally check_file(std::string_view name, std::span<const Check> checks, std::span<const Skip> skips);

/// The same for rows in hand; an empty name writes no results.
Tally check_rows(std::string_view name, std::span<const Row> rows, std::span<const Check> checks,
                 std::span<const Skip> skips);

/// Whether `got` lies within the tolerance text (one alternative) of `expected`. Throws for a text that is
/// no pass-or-fail tolerance, such as "info".
[[nodiscard]] bool within(double got, double expected, std::string_view tolerance);

}  // namespace emberpath::reference
