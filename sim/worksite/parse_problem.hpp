#pragma once
/// What came of reading one sentence, and what to say when nothing did.

#include <cstddef>
#include <string>
#include <string_view>

#include "sim/diagnostics/diagnostic.hpp"
#include "sim/worksite/acts.hpp"

namespace emberpath::worksite {

/// The farthest place that a sentence pattern reached before something did not fit.
struct Furthest {
    std::size_t token = 0;
    std::string_view placeholder{};  // what was expected there; empty: nothing began to fit
    std::size_t offset = 0;          // in the sentence
};

struct Understanding {
    bool understood = false;
    bool too_long = false;
    Act act;
    Furthest furthest;
};
[[nodiscard]] Understanding read_sentence(std::string_view sentence, const Job& job);

/// found, expected, suggestion and column (within the sentence, 1-based) of a sentence that was not
/// understood; file, line and source line are left to the caller.
[[nodiscard]] diagnostics::Diagnostic explain(std::string_view sentence,
                                              const Understanding& reading, const Job& job);

}  // namespace emberpath::worksite
