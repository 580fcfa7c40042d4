#pragma once
/// The program's own log: for those who look after the program, never for scores. Quiet unless asked for.

#include <filesystem>
#include <string_view>

namespace emberpath::app {

/// Writes to `file` from now on; throws BadInput when it cannot be opened.
void open_log(const std::filesystem::path& file);
void log_event(std::string_view what);
void log_fault(std::string_view what);

}  // namespace emberpath::app
