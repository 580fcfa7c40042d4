#include "ui/views/catalogue.hpp"

#include "sim/worksite/cause_list.hpp"

namespace emberpath::views {

std::vector<Suspect> suspects(const worksite::Job& job) {
    std::vector<Suspect> found;
    for (const auto& cause : worksite::cause_list(worksite::traits_of(job)))
        found.push_back({cause.word, cause.title});
    return found;
}

std::vector<CauseRow> catalogue() {
    std::vector<CauseRow> rows;
    for (const auto& cause : worksite::cause_list())
        rows.push_back({cause.word, cause.title, cause.effect, cause.remedy,
                        !cause.needs.empty()  ? "needs " + cause.needs
                        : cause.cylinder_only ? "cylinder gas only"
                        : cause.mains_only    ? "natural gas only"
                                              : "any house"});
    return rows;
}

}  // namespace emberpath::views
