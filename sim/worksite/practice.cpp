#include "sim/worksite/practice.hpp"

#include <algorithm>
#include <array>

#include "sim/worksite/acts.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::array<std::string_view, work_count> work_words{"behind_cover", "gas_joints",
                                                              "live_tests"};

struct MatterInfo {
    std::string_view word, title;
    Bodies usual;
};
constexpr Bodies owner_of_gas = body_bit(gas_distributor) | body_bit(gas_supplier);
constexpr std::array<MatterInfo, matter_count> matters{{
    {"live_supply", "pipes at a voltage", body_bit(electricity_distributor)},
    {"live_wiring", "wiring that leaves casing or neutral at a voltage", body_bit(electrician)},
    {"gas_escapes", "a gas joint that weeps", owner_of_gas},
    {"over_pressure", "a gas regulator that gives too much", owner_of_gas},
    {"cylinder_place", "a cylinder where it gets hot", body_bit(gas_supplier)},
    {"old_sheet", "old sheet that may hold asbestos", body_bit(asbestos_assessor)},
    {"hot_delivery", "water above the limit at a fixture for washing", body_bit(plumber)},
    {"board_lost", "a heater whose board is lost", body_bit(manufacturer)},
    {"refused", "an unsafe heater that the customer will have neither shut nor mended",
     owner_of_gas | body_bit(technical_regulator)},
    {"out_of_use", "a heater taken out of use", 0},
    {"rented", "a dangerous heater in a rented house", body_bit(owner)},
}};

}  // namespace

std::string_view matter_word(Matter matter) {
    return matters.at(static_cast<std::size_t>(matter)).word;
}

std::string_view matter_title(Matter matter) {
    return matters.at(static_cast<std::size_t>(matter)).title;
}

std::array<Bodies, matter_count> usual_bodies() {
    std::array<Bodies, matter_count> all{};
    for (std::size_t i = 0; i < matter_count; ++i) all.at(i) = matters.at(i).usual;
    return all;
}

std::string_view work_word(Work work) {
    return work_words.at(static_cast<std::size_t>(work));
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
