// The drawing, the rail, the job card and the front panel.

#include <algorithm>

#include "sim/units/units.hpp"
#include "ui/desktop/figures.hpp"
#include "ui/desktop/found_safe.hpp"
#include "ui/desktop/job_fill.hpp"
#include "ui/kit/text.hpp"
#include "ui/views/services.hpp"

namespace emberpath::desktop {

namespace {

using screens::StateMark;

constexpr double zero_celsius_k = 273.15;

std::string opening_words(double opening, bool tap) {
    if (opening <= 0.0) return "off";
    if (!tap) return "on";
    return opening > 0.9 ? "fully open" : opening > 0.4 ? "half open" : "a little open";
}

void open_fixtures(screens::SiteView& site, const Known& known) {
    const auto index_in = [](const std::vector<std::string>& names, const std::string& name) {
        return static_cast<std::size_t>(std::find(names.begin(), names.end(), name) -
                                        names.begin());
    };
    for (auto& room : site.rooms)
        for (auto& fixture : room.fixtures) {
            const auto tap = index_in(known.card.taps, fixture.name);
            const auto appliance = index_in(known.card.appliances, fixture.name);
            if (tap < known.sight.tap_opening.size())
                fixture.opening = known.sight.tap_opening[tap];
            else if (appliance < known.sight.appliance_on.size())
                fixture.opening = known.sight.appliance_on[appliance] != 0 ? 1.0 : 0.0;
            fixture.state = opening_words(fixture.opening, tap < known.sight.tap_opening.size());
            fixture.hot = false;
        }
}

/// What the trainee saw when they last looked through the window; nothing before the first look.
std::optional<screens::FlameView> flame_of(const Known& known) {
    std::optional<screens::FlameView> flame;
    for (const auto& entry : known.log)
        for (const auto& seen : entry.observations) {
            if (seen.quantity != worksite::Quantity::flame) continue;
            const auto look = static_cast<std::size_t>(seen.value);
            flame = screens::FlameView{};
            flame->height = 0.75;
            flame->unrest = look == worksite::flame_restless ? 0.7 : 0.0;
            flame->yellow = look == worksite::flame_yellow_tipped;
        }
    if (!flame) return flame;
    flame->lit = known.sight.flame_share > 0.0;
    flame->spark = known.sight.spark_heard;
    return flame;
}

void add_tool(screens::PointView& point, const Known& known) {
    for (std::size_t tool = 0; tool < belt().size(); ++tool)
        if (tool_is_at(known, tool) == point.tag) point.tool = belt()[tool].name;
}

const std::string* state_of(const std::vector<views::ServiceRow>& rows, std::string_view name) {
    for (const auto& row : rows)
        if (row.service == name) return &row.state;
    return nullptr;
}

struct Cell {
    const char *id, *name, *service, *thing;
};
constexpr Cell service_cells[] = {{"gas", "Gas", "gas", "heater gas valve"},
                                  {"water", "Water", "water", "heater water valve"},
                                  {"power", "Power", "power", "power point"}};

/// Its first word, unless that alone would say something else: "leak tested" must not become "leak".
std::string brief(const std::string& state) {
    if (state.starts_with("leak tested")) return "Tested";
    return kit::capitalised(state.substr(0, state.find_first_of(" ,")));
}

/// As the trainee's hands and eyes left it; what was found out beyond that is added by others.
screens::ServiceCell service_cell(const std::vector<views::ServiceRow>& rows, const Cell& cell) {
    screens::ServiceCell made;
    made.id = cell.id;
    made.name = cell.name;
    made.leads_to = cell.thing;
    const std::string* state = state_of(rows, cell.service);
    const bool checked = state != nullptr && *state != "not checked";
    made.words = checked ? kit::capitalised(*state) : "Not checked";
    made.short_words = checked ? brief(*state) : "Unknown";
    const bool off = checked && (state->starts_with("shut") || state->starts_with("switched off") ||
                                 state->starts_with("unplugged"));
    made.mark = !checked ? StateMark::unknown : off ? StateMark::off : StateMark::on;
    return made;
}

/// A smell of gas is the house's own warning, in both modes.
screens::ServiceCell gas_cell(const Known& known, screens::ServiceCell cell) {
    if (!gas_is_smelt(known)) return cell;
    cell.words = cell.mark == StateMark::unknown ? "Smell of gas" : cell.words + ", smell of gas";
    cell.short_words = "Smell";
    cell.mark = StateMark::hazard;
    return cell;
}

screens::ServiceCell power_cell(const Known& known, screens::ServiceCell cell) {
    if (known.sight.panel_lit && !known.sight.cover_on) {
        cell.words = "On, cover off";
        cell.short_words = "On, open";
        cell.mark = known.card.mode == "coached" ? StateMark::hazard : StateMark::on;
        return cell;
    }
    if (known.sight.panel_lit) return cell;
    if (power_is_proved_dead(known)) {
        cell.words = "Proved dead";
        cell.short_words = "Dead";
        cell.mark = StateMark::proved;
    } else if (cell.words.starts_with("Tested")) {
        cell.mark = StateMark::unknown;  // what the tester found is for the trainee to read
    }
    return cell;
}

/// The last words that a look at something gave; empty before the first.
std::string last_seen(const Known& known, worksite::Quantity quantity) {
    std::string words;
    for (const auto& entry : known.log)
        for (const auto& seen : entry.observations)
            if (seen.quantity == quantity)
                words = text_of(figure_of(quantity, seen.value, known.preferences.kilopascal));
    return words;
}

/// How the terminal was last seen, or that it was cleared since.
std::string flue_words(const Known& known) {
    std::string words;
    for (const auto& entry : known.log) {
        if (entry.words == "clear flue terminal") words = "Cleared";
        for (const auto& seen : entry.observations)
            if (seen.quantity == worksite::Quantity::flue_terminal)
                words = kit::capitalised(
                    text_of(figure_of(seen.quantity, seen.value, known.preferences.kilopascal)));
    }
    return words;
}

screens::ServiceCell looked_at(const char* id, const char* name, const char* thing,
                               const std::string& words) {
    screens::ServiceCell cell;
    cell.id = id;
    cell.name = name;
    cell.leads_to = thing;
    cell.words = words.empty() ? "Not checked" : words;
    cell.short_words = words.empty() ? "Unknown" : "Seen";
    cell.mark = words.empty() ? StateMark::unknown : StateMark::on;
    return cell;
}

screens::ServiceCell air_cell(const Known& known) {
    const std::string co = last_seen(known, worksite::Quantity::room_co);
    auto cell = looked_at("air", "Room air", "A2", co.empty() ? co : "CO " + co);
    if (!co.empty()) cell.short_words = co;
    if (!known.sight.alarm) return cell;
    cell.words = "Alarm sounds";
    cell.short_words = "Alarm";
    cell.mark = StateMark::hazard;  // the house itself warns, in both modes
    return cell;
}

screens::ServiceCell you_cell(const Known& known) {
    screens::ServiceCell cell;
    cell.id = "you";
    cell.name = "You";
    cell.leads_to = "you";
    const bool gloves = known.sight.gloves, glasses = known.sight.glasses;
    cell.words = gloves && glasses ? "Glasses, gloves"
                 : gloves          ? "Gloves"
                 : glasses         ? "Glasses"
                                   : "Bare hands";
    cell.short_words = gloves && glasses ? "Both on" : cell.words;
    cell.mark = gloves || glasses ? StateMark::on : StateMark::off;
    if (known.sight.outside) {
        cell.words = "In the open air";
        cell.short_words = "Outside";
    }
    return cell;
}

}  // namespace

std::vector<screens::ServiceCell> cells_of(const Known& known) {
    std::vector<views::TimedWords> words;
    for (const auto& entry : known.log) words.push_back({entry.words, ""});
    const auto rows = views::services(words);
    std::vector<screens::ServiceCell> cells;
    for (const Cell& cell : service_cells) {
        auto made = service_cell(rows, cell);
        if (made.id == "gas") made = gas_cell(known, std::move(made));
        if (made.id == "power") made = power_cell(known, std::move(made));
        cells.push_back(std::move(made));
    }
    cells.push_back(looked_at("flue", "Flue", "flue terminal", flue_words(known)));
    cells.push_back(air_cell(known));
    cells.push_back(you_cell(known));
    return cells;
}

screens::SiteView site_view_of(const Known& known, const std::vector<TakenReading>& readings) {
    screens::SiteView site = site_of(known.card);
    open_fixtures(site, known);
    for (const Thing& thing : known.things) {
        if (!thing.on_sheet) continue;
        screens::PointView point = thing.point;
        point.out_of_reach = thing.under_cover && known.sight.cover_on;
        add_tool(point, known);
        for (const auto& reading : readings)
            if (reading.thing < known.things.size() &&
                known.things[reading.thing].point.tag == point.tag)
                point.balloons.push_back(reading.view.number);
        constexpr std::size_t most_shown = 4;  // the list has them all
        if (point.balloons.size() > most_shown)
            point.balloons.erase(point.balloons.begin(), point.balloons.end() - most_shown);
        site.points.push_back(std::move(point));
    }
    site.heater.cover_off = !known.sight.cover_on;
    site.heater.flame = flame_of(known);
    site.heater.fan_turns_per_s = known.sight.fan_rev_per_s;
    const bool others_on =
        std::any_of(known.sight.appliance_on.begin(), known.sight.appliance_on.end(),
                    [](std::uint8_t on) { return on != 0; });
    site.flow = {known.sight.water_runs, known.sight.water_runs,
                 known.sight.flame_share > 0.0 || others_on};
    site.seconds = known.seconds_on_site;
    return site;
}

screens::CardView card_of(const Known& known) {
    screens::CardView card{known.card.gas, known.card.call_out, false, known.card.call_out, {}};
    for (const auto& entry : known.log)
        for (const auto& line : entry.shown)
            if (line.size() > 2 && line.front() == '"' && line.back() == '"')
                card.said.push_back({entry.words, line.substr(1, line.size() - 2)});
    if (card.said.empty()) return card;
    card.words = card.said.back().words;
    card.spoken = true;
    return card;
}

screens::PanelView panel_of(const Known& known, const std::vector<TakenReading>& readings) {
    screens::PanelView panel;
    if (!known.sight.panel_lit) return panel;
    panel.word = std::string(
        worksite::category_word(worksite::Quantity::display_word, known.sight.display_word));
    if (panel.word.find_first_not_of(' ') == std::string::npos) panel.word.clear();
    panel.set_point = units::fixed(known.sight.set_point_k - zero_celsius_k, 0) + " °C";
    panel.service_readout_open = known.sight.readout_open;
    for (const auto& reading : readings)
        if (reading.view.where == "Panel") panel.balloon = reading.view.number;
    return panel;
}

}  // namespace emberpath::desktop
