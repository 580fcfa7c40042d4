#pragma once
/// TOML in, a checked job out: every problem at once, in the author's own unit.

#include <filesystem>
#include <string>
#include <vector>

#include "sim/diagnostics/diagnostic.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::scenario {

struct Loaded {
    worksite::Job job;                              // meaningful only when there are no problems
    std::string hash;                               // over scenario, site and heater files
    std::vector<diagnostics::Diagnostic> problems;  // in file order
    [[nodiscard]] bool good() const { return problems.empty(); }
};

/// Reads scenarios/jobs/NAME.toml and the site and heater files it builds on. Does not throw for what a
/// user wrote, print or stop early.
[[nodiscard]] Loaded load(const std::filesystem::path& file);

/// What a checked job says against its own physics or gives away; see worksite::doubts_about().
[[nodiscard]] std::vector<std::string> doubts_about(const worksite::Job& job);

/// The job files of a folder, sorted by name.
[[nodiscard]] std::vector<std::filesystem::path> list_jobs(const std::filesystem::path& folder);

}  // namespace emberpath::scenario
