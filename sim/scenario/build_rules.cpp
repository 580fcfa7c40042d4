// Limits and licences of a place.
#include <algorithm>
#include <array>
#include <utility>

#include "sim/scenario/build.hpp"
#include "sim/worksite/acts.hpp"

namespace emberpath::scenario {

namespace {

using worksite::Limits;

constexpr std::array limit_keys{
    std::pair{"co_eight_hours", &Limits::co_eight_hours},
    std::pair{"co_hour", &Limits::co_hour},
    std::pair{"co_half_hour", &Limits::co_half_hour},
    std::pair{"co_quarter_hour", &Limits::co_quarter_hour},
    std::pair{"co_ceiling", &Limits::co_ceiling},
    std::pair{"co_ratio", &Limits::co_ratio},
    std::pair{"gas_in_air", &Limits::gas_in_air},
    std::pair{"bathroom_water", &Limits::bathroom_water_k},
    std::pair{"care_water", &Limits::care_water_k},
    std::pair{"earth_continuity", &Limits::earth_continuity_ohm},
    std::pair{"insulation", &Limits::insulation_ohm},
    std::pair{"earth_leakage", &Limits::earth_leakage_a},
    std::pair{"rcd_trips_at", &Limits::rcd_trips_at_a},
    std::pair{"rcd_within", &Limits::rcd_within_s},
    std::pair{"rcd_within_at_two", &Limits::rcd_within_at_two_s},
    std::pair{"rcd_within_at_five", &Limits::rcd_within_at_five_s},
    std::pair{"scald_water", &Limits::scald_water_k},
    std::pair{"spillage", &Limits::spillage},
    std::pair{"bare_hand_metal", &Limits::bare_hand_metal_k},
    std::pair{"dangerous_voltage", &Limits::dangerous_v},
    std::pair{"dangerous_pipe_voltage", &Limits::dangerous_pipe_v},
    std::pair{"blood_headache", &Limits::blood_headache},
    std::pair{"blood_unfit", &Limits::blood_unfit},
    std::pair{"stored_charge", &Limits::stored_charge_v},
    std::pair{"leak_test_from", &Limits::leak_test_from_pa},
    std::pair{"leak_test_drop", &Limits::leak_test_drop_pa},
    std::pair{"roof_stay", &Limits::roof_stay_s},
    std::pair{"ladder_height", &Limits::ladder_height_m},
    std::pair{"ladder_wind", &Limits::ladder_wind_pa},
};

Limits make_limits(const Values& written, Problems& problems) {
    Limits limits;
    for (const auto& [key, member] : limit_keys)
        if (const Item* item = written.good(key)) limits.*member = item->number;
    const Item* ceiling = written.good("co_ceiling");
    if (ceiling != nullptr && limits.co_ceiling < limits.co_eight_hours)
        problems.add(ceiling->at,
                     {"co_ceiling: found " + in_quotes(ceiling->text) + ", below co_eight_hours",
                      "a ceiling above the mean",
                      {}});
    const Item* unfit = written.good("blood_unfit");
    if (unfit != nullptr && limits.blood_unfit <= limits.blood_headache)
        problems.add(unfit->at,
                     {"blood_unfit: found " + in_quotes(unfit->text) + ", not above blood_headache",
                      "a share above that of the headache",
                      {}});
    return limits;
}

/// A limit that a file may leave out needs a source all the same where it is written.
void check_sources(const Values& limits, const Values& rules, Problems& problems) {
    const auto sources = rules.tables.find("sources");
    if (sources == rules.tables.end()) return;  // the whole table is asked for
    for (const auto& [key, member] : limit_keys) {
        const Item* limit = limits.written(key);
        const bool asked = find_field(Section::sources, key)->fallback == required;
        if (limit != nullptr && !asked && sources->second.written(key) == nullptr)
            problems.add(
                limit->key_at,
                {std::string(key) + ": found without its source", "the same key in [sources]", {}});
    }
}

/// Sets what is listed; everything else keeps what it was.
void set_listed(worksite::Licence& licence, const Item& listed, std::uint8_t to) {
    for (const std::string& word : listed.words) {
        for (const faults::RemedyInfo& info : faults::remedies)
            if (info.word == word) licence.remedies[static_cast<std::size_t>(info.remedy)] = to;
        for (std::size_t i = 0; i < worksite::work_count; ++i)
            if (worksite::work_word(static_cast<worksite::Work>(i)) == word) licence.works[i] = to;
    }
}

worksite::Licence make_licence(const Values& written, Problems& problems) {
    worksite::Licence licence;
    licence.name = written.text("name");
    const Item* supervised = written.good("supervised");
    licence.supervised = supervised != nullptr && supervised->flag;
    const Item* without = written.good("leaves_out");
    const Item* only = written.good("covers_only");
    if (without != nullptr && only != nullptr)
        problems.add(only->key_at, {"covers_only: found beside leaves_out", "one of the two", {}});
    if (only != nullptr) {
        std::fill(licence.remedies.begin(), licence.remedies.end(), std::uint8_t{0});
        std::fill(licence.works.begin(), licence.works.end(), std::uint8_t{0});
        set_listed(licence, *only, 1);
    }
    if (without != nullptr) set_listed(licence, *without, 0);
    return licence;
}

/// What is not listed keeps whom it usually concerns; an empty list: nobody.
void set_bodies(worksite::Practice& practice, const Values& listed) {
    const auto bodies = worksite::words_of("body", worksite::Job{});
    for (std::size_t i = 0; i < worksite::matter_count; ++i) {
        const Item* item = listed.good(worksite::matter_word(static_cast<worksite::Matter>(i)));
        if (item == nullptr) continue;
        practice.tell[i] = 0;
        for (std::size_t body = 0; body < bodies.size(); ++body)
            if (std::find(item->words.begin(), item->words.end(), bodies[body]) !=
                item->words.end())
                practice.tell[i] |= worksite::body_bit(body);
    }
}

void check_names(const Values& rules, Problems& problems) {
    std::vector<std::string> seen;
    for (const Values& licence : rules.list("licence")) {
        const Item* name = licence.good("name");
        if (name == nullptr) continue;
        if (std::find(seen.begin(), seen.end(), name->text) != seen.end())
            problems.add(name->at, {"name: found " + in_quotes(name->text) + " a second time",
                                    "a name of its own for each licence",
                                    {}});
        seen.push_back(name->text);
    }
}

}  // namespace

worksite::Practice make_practice(const Values& site, const Values& rules, Problems& problems) {
    worksite::Practice made;
    made.name = rules.text("name");
    made.date = date_of(rules, "date", problems);
    made.holds_in = rules.text("holds_in");
    const auto limits = rules.tables.find("limits");
    if (limits != rules.tables.end()) {
        made.limits = make_limits(limits->second, problems);
        check_sources(limits->second, rules, problems);
    }
    const auto told = rules.tables.find("tell");
    if (told != rules.tables.end()) set_bodies(made, told->second);
    check_names(rules, problems);
    for (const Values& licence : rules.list("licence"))
        made.licences.push_back(make_licence(licence, problems));
    if (!made.licences.empty()) made.licence = made.licences.front();
    if (site.text("dwellers") == "care") made.dwellers = worksite::Dwellers::care;
    return made;
}

}  // namespace emberpath::scenario
