// What each act showed, under short names, and how likely the leading causes were after it.
#include <algorithm>
#include <array>
#include <span>
#include <utility>

#include "sim/records/debrief_parts.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::records {

namespace {

constexpr std::size_t most_leading = 4;  // beside them all others together

using Names = std::pair<std::string_view, std::string_view>;

std::string named(std::string_view title, std::span<const Names> names) {
    for (const auto& [whole, part] : names)
        if (whole == title) return std::string(part);
    return std::string(title);
}

/// The name under which a figure stands among others of the same act.
std::string short_name(std::string_view title) {
    static constexpr std::array<Names, 6> names{{
        {"oxygen in the flue gas", "O2"},
        {"carbon dioxide in the flue gas", "CO2"},
        {"carbon monoxide in the flue gas", "CO"},
        {"flue gas temperature", "flue"},
        {"flame at the burner window", "flame"},
        {"spark at the igniter", ""},  // its word says it: "no spark"
    }};
    return named(title, names);
}

/// A title that fits one line of the table; what the service readout shows is marked so in one word.
std::string reading_name(std::string_view title) {
    static constexpr std::array<Names, 7> names{{
        {"carbon monoxide in the room", "CO in the room"},
        {"water temperature at the tap", "water at the tap"},
        {"temperature of the outlet pipe", "outlet pipe"},
        {"temperature of the inlet pipe", "inlet pipe"},
        {"gas pressure at the heater inlet", "gas at the heater inlet"},
        {"gas pressure at the regulator outlet", "gas at the regulator"},
        {"voltage from the water pipe to true earth", "water pipe to true earth"},
    }};
    std::string name = named(title, names);
    constexpr std::string_view readout = " on the service readout";
    const auto at = name.find(readout);
    if (at == std::string::npos) return name;
    name.replace(at, readout.size(), " (readout)");
    if (at > 0 && name[at - 1] == ',') name.erase(at - 1, 1);
    return name;
}

std::vector<const scoring::Comparison*> readings_of(const RecordedAct& act,
                                                    const scoring::Assessment& assessment) {
    std::vector<const scoring::Comparison*> found;
    for (const auto& reading : act.readings)
        for (const auto& comparison : assessment.comparisons)
            if (reading.number != 0 && comparison.number == reading.number)
                found.push_back(&comparison);
    return found;
}

std::string numbered(const scoring::Comparison& reading) {
    return "#" + std::to_string(reading.number) + " ";
}

/// "#12 O2 11.9 %; #13 CO2 5.7 %". An act that reads the same twice is the combustion test: small draw, then full.
std::string several(const std::vector<const scoring::Comparison*>& readings) {
    const bool twice = std::count_if(readings.begin(), readings.end(), [&](const auto* one) {
                           return one->title == readings.front()->title;
                       }) == 2;
    std::string text = twice ? "small draw: " : "";
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const scoring::Comparison& one = *readings[i];
        const bool again = twice && i > 0 && one.title == readings.front()->title;
        if (i > 0) text += again ? "; full draw: " : "; ";
        const std::string name = short_name(one.title);
        text += numbered(one) + name + (name.empty() ? "" : " ") + one.shown;
    }
    return text;
}

/// "#6 outlet pipe", "#12 to #19 combustion test", "wait 30 s".
std::string reading_in_short(const RecordedAct& act, const scoring::Assessment& assessment) {
    const auto readings = readings_of(act, assessment);
    if (readings.empty()) return act.sentence;
    if (readings.size() == 1)
        return numbered(*readings.front()) + reading_name(readings.front()->title);
    return numbered(*readings.front()) + (readings.size() == 2 ? "and " : "to ") +
           numbered(*readings.back()) + act.sentence;
}

/// The class of this house, then these, each once, by the largest share they ever had once something was read.
std::vector<scoring::Class> truth_and_likeliest(const std::vector<scoring::Class>& all,
                                                const worksite::Job& job,
                                                const scoring::Assessment& assessment) {
    std::array<double, scoring::class_count> largest{};
    for (const auto& worth : assessment.acts)
        for (const auto& [one, probability] : worth.after) {
            double& most = largest.at(one.index());
            if (worth.bits_gained != 0.0) most = std::max(most, probability);
        }
    std::vector<scoring::Class> classes = {scoring::class_or_first_of(job.faults)};
    for (const scoring::Class one : all)
        if (std::find(classes.begin(), classes.end(), one) == classes.end()) classes.push_back(one);
    std::stable_sort(classes.begin() + 1, classes.end(),
                     [&](auto a, auto b) { return largest.at(a.index()) > largest.at(b.index()); });
    return classes;
}

Debrief::Stand stand_of(const std::vector<scoring::ClassProbability>& all,
                        const std::vector<scoring::Class>& leading) {
    Debrief::Stand stand;
    stand.others = 1.0;
    for (const scoring::Class one : leading) {
        const auto found =
            std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.of == one; });
        stand.shares.push_back(found == all.end() ? 0.0 : found->probability);
        stand.others -= stand.shares.back();
    }
    stand.others = std::max(0.0, stand.others);
    return stand;
}

}  // namespace

std::string whole_per_cent(double share) {
    if (share < 0.01) return "<1";
    if (share > 0.99) return ">99";
    return units::fixed(100.0 * share, 0);
}

std::string value_of(const RecordedAct& act, const scoring::Assessment& assessment) {
    const auto readings = readings_of(act, assessment);
    if (readings.size() > 1) return several(readings);
    if (!readings.empty()) return numbered(*readings.front()) + readings.front()->shown;
    return act.shown.empty() ? std::string() : act.shown.front();
}

std::vector<scoring::Class> by_likelihood(const worksite::Job& job,
                                          const scoring::Assessment& assessment) {
    std::vector<scoring::Class> all;
    for (const auto& comparison : assessment.comparisons)
        for (const auto& cell : comparison.cells) all.push_back(cell.of);
    return truth_and_likeliest(all, job, assessment);
}

void add_stands(Debrief& debrief, const Record& record, const worksite::Job& job,
                const scoring::Assessment& assessment) {
    if (!assessment.overall_scored) return;  // no shadow stands for the truth
    std::vector<scoring::Class> all;
    for (const auto& one : assessment.on_arrival) all.push_back(one.of);
    auto leading = truth_and_likeliest(all, job, assessment);
    leading.erase(
        leading.begin() + static_cast<std::ptrdiff_t>(std::min(leading.size(), most_leading)),
        leading.end());
    std::vector<Debrief::Stand> stands = {stand_of(assessment.on_arrival, leading)};
    stands.front().after = "on arrival";
    stands.front().time = "-";
    for (const auto& worth : assessment.acts) {
        if (worth.act >= record.acts.size() || record.acts[worth.act].readings.empty()) continue;
        const RecordedAct& act = record.acts[worth.act];
        stands.push_back(stand_of(worth.after, leading));
        stands.back().time = time_on_site(act.tick, job);
        stands.back().after = reading_in_short(act, assessment);
        stands.back().acts = worth.act + 1;
    }
    if (stands.size() < 2) return;
    for (const scoring::Class one : leading) debrief.leading.push_back(scoring::class_title(one));
    debrief.stands = std::move(stands);
}

}  // namespace emberpath::records
