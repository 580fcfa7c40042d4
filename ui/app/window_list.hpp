#pragma once
/// The jobs as the window lists them, with what came of the last attempt at each.

#include <filesystem>
#include <string>
#include <vector>

#include "ui/app/context.hpp"
#include "ui/screens/choose.hpp"

namespace emberpath::app {

[[nodiscard]] std::vector<screens::JobRow> job_rows(const Context& context);
/// The latest record of a job that was not handed in; empty when there is none.
[[nodiscard]] std::filesystem::path unfinished_record(const Context& context,
                                                      const std::string& job);
/// The latest record of a job if it is finished and its debrief is for the trainee; else empty.
[[nodiscard]] std::filesystem::path finished_record(const Context& context, const std::string& job);

}  // namespace emberpath::app
