#pragma once
/// Runs the whole program in this process, with its own state folder, and keeps what it said.

#include <sstream>
#include <string>
#include <vector>

#include "tests/unit/records/sample.hpp"
#include "ui/app/run.hpp"

namespace emberpath::app {

class Program {
  public:
    /// Exit status of one call.
    int operator()(const std::vector<std::string>& arguments, const std::string& typed = {},
                   bool terminal = false) {
        std::istringstream in(typed);
        std::ostringstream out, err;
        Context context{in, out, err, places(), terminal, false};
        const int status = run(arguments, context);
        output = out.str();
        talk = err.str();
        return status;
    }
    [[nodiscard]] std::string file(const std::string& name) const { return folder_.file(name); }
    /// Writes a text file and returns its path.
    [[nodiscard]] std::string written(const std::string& name, const std::string& text) const {
        records::sample::write(folder_.file(name), text);
        return file(name);
    }
    std::string output, talk;

  private:
    [[nodiscard]] Places places() const {
        return {std::filesystem::path(EMBERPATH_SOURCE_DIR) / "scenarios", folder_.file("state"),
                folder_.file("settings")};
    }
    records::sample::Folder folder_;
};

}  // namespace emberpath::app
