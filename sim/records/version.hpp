#pragma once
/// The version and the build a record is written by. Another version may compute other bits, so `verify` asks for
/// the same one. Between two versions the simulation moves as well: a record that differs and carries another
/// build's mark is not false for that. tests/unit/records compares the version with CMakeLists.txt.

#include <string_view>

namespace emberpath::records {

inline constexpr std::string_view program_version = "0.2.0";
inline constexpr int record_schema = 1;

/// Sixteen hexadecimal digits over every source of the simulation (sim/records/build_mark.cmake): the same
/// sources give the same mark with any compiler, and so do their results.
[[nodiscard]] std::string_view build_mark();

}  // namespace emberpath::records
