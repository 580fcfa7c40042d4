#pragma once
/// Counted things in sentences: "1 minute", "2 minutes", "0.9 minutes". English adds an s beside every figure but 1.
/// Checked   tests/unit/units/counted_test.cpp

#include <string>
#include <string_view>

namespace emberpath::units {

/// The figure as it will stand in the text, and what it counts, in the singular.
[[nodiscard]] inline std::string counted(std::string_view figure, std::string_view thing) {
    return std::string(figure) + " " + std::string(thing) + (figure == "1" ? "" : "s");
}
[[nodiscard]] inline std::string counted(long long count, std::string_view thing) {
    return counted(std::to_string(count), thing);
}

}  // namespace emberpath::units
