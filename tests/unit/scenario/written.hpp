#pragma once
/// A scenario written into a folder of its own, for tests of the loader.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

#include "sim/scenario/scenario.hpp"

namespace emberpath::scenario {

/// A sound job on natural gas; tests replace single lines of it.
inline constexpr std::string_view sound_job = R"(title = "Job 9: 1 Sample Street"
call_out = "Hot water comes and goes"
set_point = "48 °C"

[heater]
gas = "natural gas"

[site]
name = "1 Sample Street"
gas = "natural gas"
arrival = "10 min"

[[site.tap]]
name = "kitchen tap"
flow = "9 L/min"

[[site.appliance]]
name = "cooktop"
heat_input = "36 MJ/h"

[[site.event]]
at = "2 min"
tap = "kitchen tap"
lasts = "3 min"

[customer]
words = "It runs hot, then cold, then hot again."
complaint = "drops out now and then"

[[fault]]
cause = "electrode_fouled"
severity = 0.9
)";

/// `text` with the first `old` replaced; the test fails when it is not there.
inline std::string with(std::string_view text, std::string_view old, std::string_view replacement) {
    std::string changed(text);
    const std::size_t at = changed.find(old);
    EXPECT_NE(at, std::string::npos) << old;
    if (at != std::string::npos) changed.replace(at, old.size(), replacement);
    return changed;
}

class Folder {
  public:
    Folder() {
        const auto* test = testing::UnitTest::GetInstance()->current_test_info();
        path_ = std::filesystem::path(EMBERPATH_BINARY_DIR) / "written" /
                (std::string(test->test_suite_name()) + "." + test->name());
        std::filesystem::remove_all(path_);
        std::filesystem::create_directories(path_);
    }
    ~Folder() { std::filesystem::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::filesystem::path write(std::string_view name, std::string_view text) const {
        std::filesystem::path file = path_ / name;
        std::filesystem::create_directories(file.parent_path());
        std::ofstream(file, std::ios::binary) << text;
        return file;
    }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

  private:
    std::filesystem::path path_;
};

inline Loaded load_text(std::string_view text) {
    const Folder folder;
    return load(folder.write("job.toml", text));
}

/// All problems as one text, with the folder left out of the file names.
inline std::string problems_of(const Loaded& loaded) {
    std::string all;
    for (diagnostics::Diagnostic problem : loaded.problems) {
        problem.file = std::filesystem::path(problem.file).filename().string();
        all += diagnostics::to_text(problem);
    }
    return all;
}

}  // namespace emberpath::scenario
