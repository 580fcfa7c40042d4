#pragma once
/// The version a record is written by. Another version may compute other bits, so `verify` asks for the
/// same one. tests/unit/records compares it with CMakeLists.txt.

#include <string_view>

namespace emberpath::records {

inline constexpr std::string_view program_version = "0.2.0";
inline constexpr int record_schema = 1;

}  // namespace emberpath::records
