#pragma once
/// Where the program finds its scenarios and keeps its records and log.

#include <filesystem>
#include <string>
#include <vector>

namespace emberpath::app {

struct Places {
    std::filesystem::path scenarios;  // holds jobs/, sites/, heaters/; empty when not found
    std::filesystem::path state;      // holds records/ and spoken.txt, the window's sentences
    std::filesystem::path settings;   // holds settings.txt
};

/// Scenarios: $EMBERPATH_SCENARIOS, else the folder `scenarios` beside the program or above it, else
/// ../share/emberpath/scenarios. State: $XDG_STATE_HOME/emberpath, else ~/.local/state/emberpath,
/// else a folder for temporary files. Settings: $XDG_CONFIG_HOME/emberpath, else ~/.config/emberpath,
/// else the state folder.
[[nodiscard]] Places find_places();

/// The first of JOB-001.jsonl, JOB-002.jsonl ... that does not exist in `folder`.
[[nodiscard]] std::filesystem::path free_record_name(const std::filesystem::path& folder,
                                                     const std::string& job);
/// Where the program keeps a record whose file nobody named; creates the folder, not the file.
[[nodiscard]] std::filesystem::path new_record(const Places& places, const std::string& job);

}  // namespace emberpath::app
