#pragma once
/// Opens the window and runs it until it is closed.

#include "ui/app/context.hpp"

namespace emberpath::app {

/// Empty when a window can be opened here; else why not, in words.
[[nodiscard]] std::string why_no_window();
/// `author_file`: a scenario file to preview first; empty: choose a job.
[[nodiscard]] Status author(Context& context, const std::string& job);
[[nodiscard]] Status run_window(Context& context, const std::filesystem::path& author_file);

}  // namespace emberpath::app
