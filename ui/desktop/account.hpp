#pragma once
/// What the trainee's own record says was found and done, as words to begin a write-up with. Only what was
/// done and noted comes in; nothing here knows what was wrong.

#include <string>
#include <vector>

#include "sim/worksite/attempt.hpp"
#include "ui/views/visit.hpp"

namespace emberpath::desktop {

using Log = std::vector<worksite::LogEntry>;

/// "Replace outlet sensor, refit cover."; empty when nothing was set right or handed on.
[[nodiscard]] std::string done_in(const Log& log);
/// "Combustion test; readings after it #5 #6."; empty when nothing was proved or read after the last remedy.
[[nodiscard]] std::string proved_in(const Log& log);
/// What the customer was told last; empty when nothing was.
[[nodiscard]] std::string told_in(const Log& log);
/// For the customer: the cause that was written down, and what was done; empty while there is neither.
[[nodiscard]] std::string account_of(const Log& log, const std::vector<views::Suspect>& suspects);

}  // namespace emberpath::desktop
