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
    int column = 0;
    std::string found;        // `static_pressure: found 2.35, a number without a unit`
    std::string expected;     // `a pressure from 0 to 7 kPa, such as "2.35 kPa" or "23.5 mbar"`
    std::string source_line;  // the text of that line, for the caret; empty for none
    std::string suggestion;   // nearest valid word; empty for none
};

/// One problem as text, two to four lines, ending in a newline.
[[nodiscard]] std::string to_text(const Diagnostic& problem);

/// All problems and the closing sentence ("2 problems; nothing was loaded.").
[[nodiscard]] std::string to_text(std::span<const Diagnostic> problems, std::string_view closing);

/// The word nearest to `found` by edit distance (at most a third of its length away), or empty.
[[nodiscard]] std::string nearest_word(std::string_view found, std::span<const std::string> valid);

}  // namespace emberpath::diagnostics
