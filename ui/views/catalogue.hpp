#pragma once
/// The causes as the trainee's list of suspects and as the manual prints them.

#include <string>
#include <vector>

#include "sim/worksite/job.hpp"

namespace emberpath::views {

/// A cause as the write-up spells it and as people read it.
struct Suspect {
    std::string word, title;
};
/// All causes a house like this can have, in catalogue order: the same for every fault.
[[nodiscard]] std::vector<Suspect> suspects(const worksite::Job& job);

struct CauseRow {
    std::string word, title, effect, remedy, where;  // where: "any house", "natural gas only" ...
};
[[nodiscard]] std::vector<CauseRow> catalogue();

}  // namespace emberpath::views
