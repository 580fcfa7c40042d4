#pragma once
/// Lines of comma-separated values, with fields quoted where needed.

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace emberpath::csv {

/// The fields of one line: commas separate, quotes enclose, a doubled quote is one.
[[nodiscard]] std::vector<std::string> split(std::string_view line);

/// One line of these fields, ended by a line feed.
[[nodiscard]] std::string joined(std::span<const std::string> fields);

}  // namespace emberpath::csv
