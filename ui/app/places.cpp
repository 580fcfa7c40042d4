#include "ui/app/places.hpp"

#include <cstdlib>

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

fs::path from_environment(const char* name) {
    const char* value = std::getenv(name);
    return value && *value ? fs::path(value) : fs::path();
}

bool holds_jobs(const fs::path& folder) {
    std::error_code ignored;
    return fs::is_directory(folder / "jobs", ignored);
}

fs::path find_scenarios() {
    if (auto chosen = from_environment("EMBERPATH_SCENARIOS"); !chosen.empty()) return chosen;
    std::error_code ignored;
    const fs::path program = fs::read_symlink("/proc/self/exe", ignored);
    for (fs::path folder = program.parent_path(); !folder.empty(); folder = folder.parent_path()) {
        if (holds_jobs(folder / "scenarios")) return folder / "scenarios";
        if (holds_jobs(folder / "share/emberpath/scenarios"))
            return folder / "share/emberpath/scenarios";
        if (folder == folder.root_path()) break;
    }
    return holds_jobs("scenarios") ? fs::path("scenarios") : fs::path();
}

fs::path find_state() {
    if (auto state = from_environment("XDG_STATE_HOME"); !state.empty()) return state / "emberpath";
    if (auto home = from_environment("HOME"); !home.empty()) return home / ".local/state/emberpath";
    std::error_code ignored;
    return fs::temp_directory_path(ignored) / "emberpath";
}

fs::path find_settings() {
    if (auto home = from_environment("XDG_CONFIG_HOME"); !home.empty()) return home / "emberpath";
    if (auto home = from_environment("HOME"); !home.empty()) return home / ".config/emberpath";
    return find_state();
}

}  // namespace

Places find_places() {
    return {find_scenarios(), find_state(), find_settings()};
}

fs::path free_record_name(const fs::path& folder, const std::string& job) {
    for (int number = 1;; ++number) {
        std::string digits = std::to_string(number);
        if (digits.size() < 3) digits.insert(0, 3 - digits.size(), '0');
        std::string name = job;
        name.append("-").append(digits).append(".jsonl");
        fs::path file = folder / name;
        if (!fs::exists(file)) return file;
    }
}

fs::path new_record(const Places& places, const std::string& job) {
    const fs::path folder = places.state / "records";
    fs::create_directories(folder);
    return free_record_name(folder, job);
}

}  // namespace emberpath::app
