#pragma once
/// What stands out in an author's house and kit beside the fault: a trainee may take it for one.

#include <string>
#include <vector>

#include "sim/worksite/job.hpp"

namespace emberpath::desktop {

/// One sentence each, from the job's own data and nothing else; empty when all is as usual. What counts as
/// usual is chosen: pressures and temperatures between those that most shipped houses have.
[[nodiscard]] std::vector<std::string> quirks_of(const worksite::Job& job);

}  // namespace emberpath::desktop
