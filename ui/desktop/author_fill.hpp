#pragma once
/// Fills the author's preview from a scenario that loaded without a problem. For authors: it names the fault.

#include <string>

#include "sim/scenario/scenario.hpp"
#include "ui/screens/author.hpp"

namespace emberpath::desktop {

/// Simulates the job and the sound house at three draws, and each other cause at the same: seconds of work.
[[nodiscard]] screens::AuthorView author_view(const scenario::Loaded& loaded,
                                              const std::string& file);

}  // namespace emberpath::desktop
