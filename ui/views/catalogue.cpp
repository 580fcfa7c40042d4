#include "ui/views/catalogue.hpp"

#include "sim/worksite/cause_list.hpp"

namespace emberpath::views {

std::vector<std::string> suspects(const worksite::Job& job) {
    std::vector<std::string> titles;
    for (const auto& cause : worksite::cause_list(job.site.gas)) titles.push_back(cause.title);
    return titles;
}

std::vector<CauseRow> catalogue() {
    std::vector<CauseRow> rows;
    for (const auto& cause : worksite::cause_list())
        rows.push_back({cause.word, cause.title, cause.effect, cause.remedy,
                        cause.cylinder_only ? "cylinder gas only"
                        : cause.mains_only  ? "natural gas only"
                                            : "any house"});
    return rows;
}

}  // namespace emberpath::views
