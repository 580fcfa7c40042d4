#include "tests/support/results.hpp"

#include <array>
#include <charconv>
#include <filesystem>

#include "tests/support/csv.hpp"

namespace emberpath::validation {

ResultsFile::ResultsFile(std::string_view subject) {
    if (subject.empty()) return;
    const std::filesystem::path folder =
        std::filesystem::path(EMBERPATH_BINARY_DIR) / "validation_results";
    std::filesystem::create_directories(folder);
    out_.open(folder / (std::string(subject) + ".csv"));
    out_ << columns;
}

void ResultsFile::add(const Result& r) {
    if (!out_.is_open()) return;
    const std::array fields{r.id,        r.quantity, r.conditions, r.unit,       r.expected, r.got,
                            r.tolerance, r.outcome,  r.kind,       r.checked_by, r.source};
    out_ << csv::joined(fields) << std::flush;
}

std::string number_text(double value, int digits) {
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::general, digits)
                         .ptr;
    return {buffer.data(), end};
}

std::string fixed_text(double value, int decimals) {
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::fixed, decimals)
                         .ptr;
    const std::string text{buffer.data(), end};
    // Nothing, however small its sign was.
    return text.find_first_of("123456789") == std::string::npos && text.starts_with('-')
               ? text.substr(1)
               : text;
}

std::string change_text(double value, int decimals) {
    const std::string text = fixed_text(value, decimals);
    return text.starts_with('-') ? text : "+" + text;
}

}  // namespace emberpath::validation
