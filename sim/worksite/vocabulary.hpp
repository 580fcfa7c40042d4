#pragma once
/// What the placeholders of the phrase table can stand for in one house, in every spelling that is read.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sim/worksite/acts.hpp"

namespace emberpath::worksite {

/// One thing in one spelling; the first spelling of an index is the canonical one.
struct Spelling {
    std::size_t index;
    std::string text;
};
/// Empty for open placeholders and unknown ones.
[[nodiscard]] std::vector<Spelling> spellings(std::string_view placeholder, const Job& job);

/// What the placeholder means, for messages: "a tap", "a time".
[[nodiscard]] std::string_view meaning_of(std::string_view placeholder);
/// A text that an open placeholder reads: "30 s".
[[nodiscard]] std::string_view example_of(std::string_view placeholder);

/// Quantities of the service readout in the order of {item}, after "all".
[[nodiscard]] std::span<const Quantity> readout_items();

/// A pattern taken apart.
struct Part {
    enum class Kind { literal, optional, placeholder } kind = Kind::literal;
    std::string_view text;  // the word, "a|b|c", or the name in braces
};
[[nodiscard]] std::vector<Part> parts_of(std::string_view pattern);
/// "a|b|c" as a, b, c.
[[nodiscard]] std::vector<std::string_view> alternatives(std::string_view text);

}  // namespace emberpath::worksite
