#pragma once
/// Whether the files of a job are still those that were read.

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>

namespace emberpath::app {

/// When each file was last written, and how long it is.
using FileStamp = std::map<std::string, std::pair<std::filesystem::file_time_type, std::uintmax_t>>;

/// Of the job file and of all site, heater and rules files beside it.
[[nodiscard]] FileStamp stamp_of_job(const std::filesystem::path& job_file);

}  // namespace emberpath::app
