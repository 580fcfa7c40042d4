// Instruments that are not as they should be, what a release check found, and dangers of the house.

#include <array>
#include <optional>
#include <utility>

#include "sim/scenario/build.hpp"
#include "sim/units/counted.hpp"

namespace emberpath::scenario {

namespace {

using worksite::Instrument;

int count_of(const Values& values, const char* key, Problems& problems) {
    const Item* item = values.good(key);
    return item == nullptr ? 0 : whole_number(*item, key, "a whole number", problems);
}

/// What the offset of an instrument is measured in, and how far it can be off.
struct Offset {
    Instrument instrument;
    units::Dimension dimension;
    double most_si;
};
constexpr std::array offsets{
    Offset{Instrument::thermometer, units::Dimension::temperature_difference, 20.0},
    Offset{Instrument::analyser, units::Dimension::share, 0.05},
    Offset{Instrument::multimeter, units::Dimension::resistance, 100.0},
    Offset{Instrument::clamp_meter, units::Dimension::current, 1.0},
    Offset{Instrument::safety_switch_tester, units::Dimension::current, 0.02},
    Offset{Instrument::scale, units::Dimension::mass, 20.0},
    Offset{Instrument::gas_detector, units::Dimension::share, 0.5},
    Offset{Instrument::water_gauge, units::Dimension::pressure, 200.0e3},
};

double offset_of(const Item& item, Instrument instrument, Problems& problems) {
    for (const Offset& row : offsets) {
        if (row.instrument != instrument) continue;
        const units::Parsed parsed =
            units::parse(row.dimension, item.text, -row.most_si, row.most_si);
        if (parsed.good()) return parsed.si;
        problems.add(item.at, {"off_by: found " + parsed.found,
                               units::expectation(row.dimension, -row.most_si, row.most_si),
                               parsed.suggestion});
        return 0.0;
    }
    problems.add(item.key_at, {"off_by: found an offset of an instrument that has none",
                               "no such key; \"reads\" for one that reads high or low",
                               {}});
    return 0.0;
}

worksite::Battery battery_of(const Values& tool, Instrument instrument, Problems& problems) {
    const Item* item = tool.good("battery");
    if (item == nullptr || item->text == "good") return worksite::Battery::good;
    if (!worksite::info(instrument).has_battery)
        problems.add(item->at,
                     {"battery: found one of an instrument that has none", "no such key", {}});
    return item->text == "low" ? worksite::Battery::low : worksite::Battery::flat;
}

}  // namespace

std::string date_of(const Values& values, const char* key, Problems& problems) {
    const Item* item = values.good(key);
    if (item == nullptr) return {};
    if (worksite::days_of(item->text)) return item->text;
    problems.add(item->at, {std::string(key) + ": found " + in_quotes(item->text) + ", no date",
                            "a date, year first, such as \"2026-11-25\"",
                            {}});
    return {};
}

worksite::Kit make_kit(const Values& job, Problems& problems) {
    worksite::Kit kit;
    kit.visited_on = date_of(job, "date", problems);
    std::array<bool, worksite::instrument_count> named{};
    for (const Values& tool : job.list("tool")) {
        const Item* name = tool.good("name");
        if (name == nullptr) continue;
        const auto instrument = *worksite::find_instrument(name->text);
        bool& seen = named[static_cast<std::size_t>(instrument)];
        if (seen)
            problems.add(name->at, {"name: found " + in_quotes(name->text) + " a second time",
                                    "each instrument once",
                                    {}});
        seen = true;
        worksite::Piece& piece = kit.of(instrument);
        piece.calibrated_on = date_of(tool, "calibrated_on", problems);
        piece.battery = battery_of(tool, instrument, problems);
        piece.reads = tool.number("reads");
        if (const Item* off = tool.good("off_by"))
            piece.off_by = offset_of(*off, instrument, problems);
    }
    return kit;
}

worksite::ReleaseCheck make_release_check(const Values& job, Problems& problems) {
    worksite::ReleaseCheck made;
    const auto found = job.tables.find("release");
    if (found == job.tables.end()) return made;
    const Values& written = found->second;
    made.checked_on = date_of(written, "checked_on", problems);
    made.of = written.text("of");
    made.houses = count_of(written, "houses", problems);
    made.shown = count_of(written, "shown", problems);
    if (written.good("refused") != nullptr) made.refused = written.text("refused");
    const Item* shown = written.good("shown");
    if (shown != nullptr && written.good("houses") != nullptr && made.shown > made.houses)
        problems.add(shown->at,
                     {"shown: found " + shown->raw + " of " + units::counted(made.houses, "house"),
                      "no more than there are houses",
                      {}});
    return made;
}

worksite::Dangers make_dangers(const Values& site, Problems& problems) {
    worksite::Dangers made;
    const auto found = site.tables.find("dangers");
    if (found == site.tables.end()) return made;
    const Values& written = found->second;
    constexpr std::array flags{std::pair{"low_place", &worksite::Dangers::low_place},
                               std::pair{"cylinder_close", &worksite::Dangers::cylinder_close},
                               std::pair{"scorched", &worksite::Dangers::scorched},
                               std::pair{"soft_ground", &worksite::Dangers::soft_ground},
                               std::pair{"old_sheet", &worksite::Dangers::old_sheet},
                               std::pair{"pipe_in_roof", &worksite::Dangers::pipe_in_roof},
                               std::pair{"children", &worksite::Dangers::children}};
    for (const auto& [key, member] : flags)
        if (const Item* item = written.good(key)) made.*member = item->flag;
    if (const Item* leak = written.good("gas_leak")) made.leak_m3_per_s = leak->number;
    made.terminal_height_m = written.number("terminal_height");
    if (const Item* close = written.good("cylinder_close");
        close != nullptr && close->flag && !burns_propane(site))
        problems.add(close->key_at, {"cylinder_close: found a cylinder at a house on natural gas",
                                     "no such key, or gas = \"propane cylinder\"",
                                     {}});
    return made;
}

}  // namespace emberpath::scenario
