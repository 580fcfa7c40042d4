// Tools, their glasses and keys, and the recorder.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "ui/desktop/figures.hpp"
#include "ui/desktop/job_fill.hpp"

namespace emberpath::desktop {

namespace {

using screens::ToolIcon;

enum ToolIndex : std::size_t {
    manometer,
    multimeter,
    tester,
    analyser,
    thermometer,
    cup,
    scale,
    fluid
};

const views::Choice* choice_of(const Known& known, std::string_view placeholder) {
    for (const auto& choice : known.card.choices)
        if (choice.placeholder == placeholder) return &choice;
    return nullptr;
}

/// Tag of the thing that a word of a list means.
std::string tag_of(const Known& known, std::string_view placeholder,
                   std::optional<std::size_t> index) {
    const auto* choice = choice_of(known, placeholder);
    if (!index || choice == nullptr || *index >= choice->words.size()) return {};
    const std::string claim = std::string(placeholder) + ":" + choice->words[*index];
    for (const auto& thing : known.things)
        if (std::find(thing.claims.begin(), thing.claims.end(), claim) != thing.claims.end())
            return thing.point.tag;
    return {};
}

bool belongs_to(const worksite::GlassFigure& figure, std::size_t tool) {
    const auto kind = worksite::info(figure.quantity).tool;
    return (tool == manometer && kind == worksite::Tool::manometer) ||
           (tool == multimeter && kind == worksite::Tool::multimeter) ||
           (tool == analyser && kind == worksite::Tool::analyser);
}

std::string glass_label(worksite::Quantity quantity) {
    using Q = worksite::Quantity;
    if (quantity == Q::flue_o2) return "O₂";
    if (quantity == Q::flue_co2) return "CO₂";
    if (quantity == Q::flue_co) return "CO";
    return quantity == Q::flue_temperature ? "Temp" : "";
}

std::vector<screens::GlassRow> rows_of(const Known& known, std::size_t tool) {
    std::vector<screens::GlassRow> rows;
    for (const auto& figure : known.sight.figures) {
        if (!belongs_to(figure, tool)) continue;
        const Figure shown = figure_of(figure.quantity, figure.value, known.preferences.kilopascal);
        rows.push_back({glass_label(figure.quantity), shown.digits, shown.unit});
    }
    return rows;
}

std::optional<double> value_then(const Known& known, std::size_t seconds_ago,
                                 worksite::Quantity quantity) {
    if (known.trail.size() <= seconds_ago) return std::nullopt;
    for (const auto& then : known.trail[known.trail.size() - 1 - seconds_ago].figures)
        if (then.quantity == quantity) return then.value;
    return std::nullopt;
}

/// Seconds until a figure will stand within its last digit, judged as an eye on the glass would: from what
/// was shown two and four seconds ago, taking the approach for an exponential one. Unknown while the steps
/// do not become smaller.
std::optional<double> seconds_left(double now, double then, std::optional<double> before,
                                   double resolution) {
    constexpr double between_s = 2.0, longest_s = 300.0;
    if (!before || then == *before) return std::nullopt;
    const double ratio = (now - then) / (then - *before);
    if (ratio <= 0.0 || ratio >= 0.98) return std::nullopt;
    const double left = std::abs(now - then) * ratio / (1.0 - ratio);
    const double time_constant_s = -between_s / std::log(ratio);
    return std::clamp(time_constant_s * std::log(std::max(1.0, left / resolution)), 1.0, longest_s);
}

screens::ToolKey key(const char* name, const char* sentence, bool can, const char* needs) {
    return {name, sentence, can ? "" : needs, false};
}

std::vector<screens::ToolKey> keys_of(const Known& known, std::size_t tool) {
    const auto& s = known.sight;
    switch (tool) {
        case manometer:
            return {
                key("Zero", "zero manometer", true, ""), key("Clear", "clear hold", true, ""),
                key("Take off", "take manometer off", s.manometer_at.has_value(), "not attached")};
        case multimeter:
            return {key("Take off", "take multimeter off", s.multimeter_at.has_value(),
                        "not attached")};
        case tester:
            return {key("Prove", "prove tester", true, ""),
                    key("Test", "test for dead", !s.cover_on, "needs the cover off")};
        case analyser:
            return {key("On", "switch on analyser", true, ""),
                    key(s.probe_in_flue ? "Out" : "Probe",
                        s.probe_in_flue ? "take probe out" : "put probe in flue", true, ""),
                    key("Room", "read room air", s.analyser_on, "switched off")};
        case fluid:
            return {key("Test", "leak test with fluid", true, "")};
        default:
            return {};
    }
}

std::string note_of(const Known& known, std::size_t tool) {
    if (tool == analyser && known.sight.analyser_on && !known.sight.analyser_warm)
        return "warming up";
    return movement_of(known, tool);
}

/// The pointer under the manometer's digits.
void add_scale(screens::InstrumentView& view, const Known& known) {
    const bool kilopascal = known.preferences.kilopascal;
    for (const auto& figure : known.sight.figures)
        if (belongs_to(figure, manometer)) {
            view.has_scale = true;
            view.scale = {0.0, kilopascal ? 4.0 : 40.0,
                          figure_of(figure.quantity, figure.value, kilopascal).number};
        }
}

bool pressure_thing(const Known& known, std::string_view tag) {
    const auto i = find_thing(known.things, tag);
    return i < known.things.size() && known.things[i].point.shape == screens::PointShape::pressure;
}

/// The first sentence with that beginning that belongs to the thing.
std::string sentence_at(const Known& known, std::string_view tag, std::string_view begin) {
    const auto i = find_thing(known.things, tag);
    for (const auto& offer : known.offers)
        if (!offer.open && offer.sentence.starts_with(begin) &&
            std::find(offer.things.begin(), offer.things.end(), i) != offer.things.end())
            return offer.sentence;
    return {};
}

}  // namespace

const std::vector<Tool>& belt() {
    static const std::vector<Tool> tools{{"manometer", ToolIcon::manometer},
                                         {"multimeter", ToolIcon::multimeter},
                                         {"voltage tester", ToolIcon::voltage_tester},
                                         {"flue gas analyser", ToolIcon::analyser},
                                         {"thermometer", ToolIcon::thermometer},
                                         {"flow cup and watch", ToolIcon::flow_cup},
                                         {"scale", ToolIcon::scale},
                                         {"leak test fluid", ToolIcon::leak_fluid}};
    return tools;
}

std::string movement_of(const Known& known, std::size_t tool) {
    bool moves = false;
    double longest_s = 0.0;
    bool all_known = true;
    for (const auto& now : known.sight.figures) {
        if (!belongs_to(now, tool)) continue;
        const double resolution = worksite::info(now.quantity).resolution;
        const auto then = value_then(known, 2, now.quantity);
        if (!then || std::abs(*then - now.value) <= 2.0 * resolution) continue;
        moves = true;
        const auto left =
            seconds_left(now.value, *then, value_then(known, 4, now.quantity), resolution);
        all_known = all_known && left.has_value();
        longest_s = std::max(longest_s, left.value_or(0.0));
    }
    if (!moves) return "";
    if (!all_known) return "still moving";
    return "still moving, " + std::to_string(static_cast<int>(std::ceil(longest_s))) + " s";
}

std::string tool_is_at(const Known& known, std::size_t tool) {
    if (tool == manometer) return tag_of(known, "point", known.sight.manometer_at);
    if (tool == multimeter) return tag_of(known, "probe", known.sight.multimeter_at);
    if (tool == analyser && known.sight.probe_in_flue) return "A1";
    return {};
}

screens::BenchView bench_of(const Known& known, std::size_t in_hand) {
    screens::BenchView bench;
    for (std::size_t i = 0; i < belt().size(); ++i) {
        const std::string at = tool_is_at(known, i);
        bench.tools.push_back(
            {belt()[i].name, belt()[i].icon, i == in_hand, at.empty() ? "" : "on " + at});
    }
    if (in_hand >= belt().size()) return bench;
    auto& view = bench.in_hand;
    const std::string at = tool_is_at(known, in_hand);
    view.name = belt()[in_hand].name;
    if (!at.empty()) view.place = in_hand == analyser ? "in the flue" : "on " + at;
    view.rows = rows_of(known, in_hand);
    view.note = note_of(known, in_hand);
    view.keys = keys_of(known, in_hand);
    if (in_hand == manometer) add_scale(view, known);
    return bench;
}

std::string recording_sentence(const Known& known, std::size_t in_hand, std::string_view selected) {
    const auto& s = known.sight;
    switch (in_hand) {
        case manometer:
            return s.manometer_at ? "read manometer" : "";
        case multimeter:
            return s.multimeter_at ? "read multimeter" : "";
        case analyser:
            if (selected == "A2") return s.analyser_on ? "read room air" : "";
            return s.analyser_on ? "read analyser" : "";
        case thermometer:
            return sentence_at(known, selected, "measure temperature");
        case cup:
            return sentence_at(known, selected, "measure flow");
        case scale:
            return sentence_at(known, selected, "weigh");
        case tester:
        case fluid:
            return {};
        default:
            break;
    }
    if (pressure_thing(known, selected) && s.manometer_at) return "read manometer";
    if (selected == "readout") return "read readout all";
    return sentence_at(known, selected, "look at");
}

}  // namespace emberpath::desktop
