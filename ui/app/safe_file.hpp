#pragma once
/// Small files that must survive a power cut whole: the old content or the new one, never half of it.

#include <filesystem>
#include <string>

namespace emberpath::app {

/// Writes `text` beside the file, brings it to disk, gives it the file's name, and brings the folder to disk.
/// A folder that is missing is made. Returns why it could not be done, as a sentence; empty: it is kept.
[[nodiscard]] std::string write_safely(const std::filesystem::path& file, const std::string& text);

}  // namespace emberpath::app
