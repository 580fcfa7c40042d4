#pragma once
/// The program, given its arguments and streams: what main() calls and what tests call.

#include <string>
#include <vector>

#include "ui/app/context.hpp"

namespace emberpath::app {

/// Never throws; returns the exit status.
[[nodiscard]] int run(const std::vector<std::string>& arguments, Context& context);

}  // namespace emberpath::app
