#include "sim/worksite/cause_list.hpp"

#include "sim/faults/faults.hpp"

namespace emberpath::worksite {

std::vector<CauseLine> cause_list(std::optional<GasKind> gas) {
    std::vector<CauseLine> lines;
    for (const auto& cause : faults::catalogue()) {
        if (gas == GasKind::natural_gas && cause.cylinder_only) continue;
        if (gas == GasKind::propane_cylinder && cause.mains_only) continue;
        lines.push_back({std::string(cause.word), std::string(cause.title),
                         std::string(cause.effect), std::string(faults::remedy_title(cause.remedy)),
                         std::string(faults::remedy_word(cause.remedy)), cause.cylinder_only,
                         cause.mains_only});
    }
    return lines;
}

}  // namespace emberpath::worksite
