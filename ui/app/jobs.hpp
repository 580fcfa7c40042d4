#pragma once
/// From the JOB a user types to a checked scenario.

#include <string>
#include <vector>

#include "sim/scenario/scenario.hpp"
#include "ui/app/context.hpp"

namespace emberpath::app {

struct JobFile {
    std::string name;  // as records spell it: the word, or the path that was given
    std::filesystem::path file;
};

/// The shipped jobs, sorted.
[[nodiscard]] std::vector<JobFile> shipped_jobs(const Context& context);
/// A job as people choose it.
struct ListedJob {
    std::string name;
    std::string line;  // "Job 3: 14 Sorrel Street. Bath never gets properly hot"
    bool good = false;
};
/// The shipped jobs by their number: Job 2 before Job 10.
[[nodiscard]] std::vector<ListedJob> listed_jobs(const Context& context);
/// A job's word, or a path to a .toml file. Throws BadInput, naming the nearest word.
[[nodiscard]] JobFile find_job(const Context& context, const std::string& word);
/// Throws BadInput with every problem of the scenario.
[[nodiscard]] scenario::Loaded load_job(const JobFile& job);
/// A whole file as text; throws BadInput.
[[nodiscard]] std::string read_text(const std::filesystem::path& file);
/// Writes a file in one go; throws BadInput.
void write_text(const std::filesystem::path& file, const std::string& text);

}  // namespace emberpath::app
