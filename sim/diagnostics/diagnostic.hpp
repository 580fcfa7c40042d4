#pragma once
/// A problem in something a person wrote: where, what was found, what was expected, nearest valid word.

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace emberpath::diagnostics {

struct Diagnostic {
    std::string file;
    int line = 0;             // 1-based; 0 when the whole file is meant
    int column = 0;           // 1-based, in characters; 0 when the whole line is meant
    std::string found;        // `static_pressure: found 2.35, a number without a unit`
    std::string expected;     // `a pressure from 0 to 7 kPa, such as "2.35 kPa" or "23.5 mbar"`
    std::string source_line;  // the text of that line, for the caret; empty for none
    std::string suggestion;   // nearest valid word; empty for none
};

/// One problem as text, one to four lines, ending in a newline:
///
///     scenarios/jobs/thin.toml:9:19: static_pressure: found 2.35, a number without a unit
///         9 | static_pressure = 2.35
///           |                   ^
///       expected a pressure from 0 to 7 kPa, such as "2.35 kPa" or "23.5 mbar"
///
/// A suggestion follows the expectation: `; did you mean "gas_pipe_restriction"?`. Parts left empty are
/// left out. Control characters are shown as `?`.
[[nodiscard]] std::string to_text(const Diagnostic& problem);

/// All problems in the given order, then how many and what followed from it. `closing` is the part after
/// the count: "nothing was loaded" gives "2 problems; nothing was loaded.". No problems, no text.
[[nodiscard]] std::string to_text(std::span<const Diagnostic> problems, std::string_view closing);

/// The word nearest to `found` by edit distance (at most a third of its length away), or empty. Swapped
/// neighbours count as one slip, capitals as none; of equally near words the first one wins.
[[nodiscard]] std::string nearest_word(std::string_view found, std::span<const std::string> valid);

}  // namespace emberpath::diagnostics
