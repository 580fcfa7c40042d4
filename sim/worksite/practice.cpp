#include "sim/worksite/practice.hpp"

#include <algorithm>
#include <array>

namespace emberpath::worksite {

namespace {

struct WorkWords {
    std::string_view word, title;
};
constexpr std::array<WorkWords, work_count> works{{
    {"behind_cover", "work behind the heater's cover"},
    {"gas_joints", "opening and making gas joints"},
    {"live_tests", "measuring on live parts"},
}};

}  // namespace

std::string_view work_word(Work work) {
    return works.at(static_cast<std::size_t>(work)).word;
}

std::string_view work_title(Work work) {
    return works.at(static_cast<std::size_t>(work)).title;
}

bool Licence::covers(faults::Remedy remedy) const {
    return !faults::works_at_once(remedy) || remedies.at(static_cast<std::size_t>(remedy)) != 0;
}

bool Licence::covers(Work work) const {
    return works.at(static_cast<std::size_t>(work)) != 0;
}

std::vector<std::string> licence_names(const Practice& practice) {
    std::vector<std::string> names;
    for (const auto& licence : practice.licences) names.push_back(licence.name);
    return names;
}

bool take_licence(Practice& practice, std::string_view name) {
    if (name.empty()) return true;
    const auto found = std::find_if(practice.licences.begin(), practice.licences.end(),
                                    [&](const Licence& one) { return one.name == name; });
    if (found == practice.licences.end()) return false;
    practice.licence = *found;
    return true;
}

}  // namespace emberpath::worksite
