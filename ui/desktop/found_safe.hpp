#pragma once
/// What the trainee's own log says about gas in the air and about the power, and nothing else does.

#include "ui/desktop/job_fill.hpp"

namespace emberpath::desktop {

/// Gas was smelt, and it has not been said to be clear since.
[[nodiscard]] bool gas_is_smelt(const Known& known);

/// Isolated, the tester proved, no voltage found, the tester proved again, and nothing switched since.
[[nodiscard]] bool power_is_proved_dead(const Known& known);

}  // namespace emberpath::desktop
