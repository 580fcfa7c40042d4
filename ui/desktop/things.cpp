#include "ui/desktop/things.hpp"

#include <algorithm>
#include <array>

namespace emberpath::desktop {

namespace {

using screens::FixtureKind;
using screens::PointShape;
using screens::Spot;

struct Row {
    const char *tag, *name, *note;
    PointShape shape;
    Spot spot;
    bool under_cover, on_sheet;
    const char *claims, *aliases;  // separated by |
};

// What every house has. Claims and aliases are words of the trainee's language.
// clang-format off
constexpr std::array rows{
    Row{"customer", "the customer", "", PointShape::part, Spot::heater, false, false,
        "topic:*|body:*", "customer|issue unsafe notice|quote|explain"},
    Row{"panel", "the heater's front panel", "", PointShape::part, Spot::display, false, false,
        "thing:display|watched:display", "set temperature|press reset|open service readout"},
    Row{"readout", "the heater's service readout", "", PointShape::part, Spot::display, false, false,
        "item:*", "service readout"},
    Row{"P1", "gas pressure at the heater inlet", "gas inlet", PointShape::pressure, Spot::gas_inlet, false, true,
        "point:inlet|joint:inlet", "leak test|manometer|clear hold"},
    Row{"P2", "manifold pressure", "manifold", PointShape::pressure, Spot::gas_manifold, true, true,
        "point:manifold|joint:manifold", "manometer|clear hold"},
    Row{"P3", "gas pressure at the regulator outlet", "", PointShape::pressure, Spot::gas_regulator, false, true,
        "point:regulator|joint:regulator", "supply regulator|regulator|manometer|clear hold"},
    Row{"T1", "inlet pipe and its sensor", "cold in", PointShape::temperature, Spot::inlet_pipe, false, true,
        "pipe:inlet pipe|sensor:inlet sensor|probe:inlet sensor", "inlet sensor|multimeter"},
    Row{"T2", "outlet pipe and its sensor", "hot out", PointShape::temperature, Spot::outlet_pipe, false, true,
        "pipe:outlet pipe|sensor:outlet sensor|probe:outlet sensor", "outlet sensor|multimeter"},
    Row{"T3", "pipe leaving the exchanger, and its sensor", "exchanger", PointShape::temperature, Spot::exchanger_pipe, true, true,
        "pipe:exchanger pipe|sensor:exchanger sensor|probe:exchanger sensor", "exchanger sensor|multimeter"},
    Row{"E1", "supply terminals", "supply terminals", PointShape::electrical, Spot::supply_terminals, true, true,
        "probe:supply terminals", "prove tester|test for dead|multimeter"},
    Row{"E2", "flame lead and electrode", "flame lead", PointShape::electrical, Spot::flame_lead, true, true,
        "probe:flame lead|thing:flame electrode", "flame electrode|multimeter"},
    Row{"A1", "flue gas", "", PointShape::air, Spot::flue_sample, false, true,
        "watched:analyser", "analyser|probe in flue|probe out|combustion test"},
    Row{"A2", "room air", "", PointShape::air, Spot::room_air, false, true,
        "thing:room", "room air|switch on analyser"},
    Row{"flue terminal", "flue terminal", "Flue terminal", PointShape::part, Spot::flue_terminal, false, true,
        "thing:flue terminal", "flue terminal|wind guard"},
    Row{"power point", "power point", "Power point", PointShape::part, Spot::power_point, false, true,
        "thing:power point|board switch:*", "switch power|plug|unplug heater|plug in heater|switchboard|safety switch"},
    Row{"heater", "the heater and its cover", "", PointShape::part, Spot::heater, false, true,
        "thing:heater|appliance:heater", "cover|tag heater"},
    Row{"heater gas valve", "gas valve at the heater", "", PointShape::part, Spot::heater_gas_valve, false, true,
        "gas valve:heater", ""},
    Row{"heater water valve", "water valve at the heater", "", PointShape::part, Spot::heater_water_valve, false, true,
        "", "shut water|open water"},
    Row{"fins", "heat exchanger fins", "Heat exchanger fins", PointShape::part, Spot::exchanger_fins, true, true,
        "thing:heat exchanger fins", "heat exchanger"},
    Row{"burner", "burner and its window", "Burner, nine bars", PointShape::part, Spot::burner, false, true,
        "thing:burner window|watched:burner window|joint:burner", "burner"},
    Row{"igniter", "igniter", "Igniter", PointShape::part, Spot::igniter, true, true, "", "igniter"},
    Row{"control board", "control board and wiring", "Control board", PointShape::part, Spot::control_board, true, true,
        "conductor:*", "bridge|fuse"},
    Row{"gas source", "", "", PointShape::part, Spot::gas_source, false, true,
        "thing:gas pipe run|thing:cylinder|joint:cylinder", "cylinder|gas pipe"},
    Row{"source gas valve", "", "", PointShape::part, Spot::source_valve, false, true,
        "gas valve:meter|gas valve:cylinder", ""},
    Row{"you", "you: gloves, glasses, ears", "", PointShape::part, Spot::heater, false, false,
        "wear:*", "listen|go outside|go back in"},
};
// clang-format on

std::vector<std::string> split(std::string_view text, char at) {
    std::vector<std::string> parts;
    while (!text.empty()) {
        const auto end = text.find(at);
        parts.emplace_back(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    return parts;
}

const views::Choice* choice_of(const views::JobCard& card, std::string_view placeholder) {
    for (const auto& choice : card.choices)
        if (choice.placeholder == placeholder) return &choice;
    return nullptr;
}

bool on_cylinder(const views::JobCard& card) {
    const auto* valves = choice_of(card, "gas valve");
    return valves != nullptr &&
           std::find(valves->words.begin(), valves->words.end(), "cylinder") != valves->words.end();
}

/// Names of what stands at the gas source depend on the house.
void name_source(Thing& thing, bool cylinder) {
    auto& p = thing.point;
    if (p.spot == Spot::gas_source) {
        p.tag = cylinder ? "cylinder" : "gas meter";
        p.name = cylinder ? "gas cylinder and pipe" : "gas meter and pipe";
        p.note = cylinder ? "Cylinder" : "Gas meter";
    }
    if (p.spot == Spot::source_valve) {
        p.tag = cylinder ? "cylinder gas valve" : "meter gas valve";
        p.name = cylinder ? "gas valve at the cylinder" : "gas valve at the meter";
    }
}

bool is_tap(FixtureKind kind) {
    return kind != FixtureKind::cooktop && kind != FixtureKind::oven &&
           kind != FixtureKind::room_heater;
}

bool claims(const Thing& thing, std::string_view placeholder, std::string_view word) {
    for (const std::string& claim : thing.claims) {
        const std::string_view c(claim);
        const auto colon = c.find(':');
        if (c.substr(0, colon) != placeholder) continue;
        if (c.substr(colon + 1) == "*" || c.substr(colon + 1) == word) return true;
    }
    return false;
}

void add_fixtures(std::vector<Thing>& things, const screens::SiteView& site) {
    int index = 0, tag = 4;
    for (const auto& room : site.rooms)
        for (const auto& fixture : room.fixtures) {
            const bool tap = is_tap(fixture.kind);
            Thing thing;
            thing.point.tag = tap ? "T" + std::to_string(tag++) : fixture.name;
            thing.point.name = fixture.name;
            thing.point.shape = tap ? PointShape::temperature : PointShape::part;
            thing.point.spot = tap ? Spot::tap : Spot::appliance;
            thing.point.fixture = index++;
            thing.claims = {"tap:" + fixture.name, "thing:" + fixture.name,
                            "appliance:" + fixture.name};
            things.push_back(std::move(thing));
        }
}

/// Words that no thing of the table claims: electrical ones go to the board, all others to the heater.
void claim_the_rest(std::vector<Thing>& things, const views::JobCard& card) {
    for (const auto& choice : card.choices) {
        if (choice.open || choice.placeholder == "cause") continue;
        const bool electrical = choice.placeholder == "probe" || choice.placeholder == "sensor" ||
                                choice.placeholder.find("terminal") != std::string::npos ||
                                choice.placeholder == "connector";
        Thing& home = things[find_thing(things, electrical ? "control board" : "heater")];
        for (const auto& word : choice.words) {
            const bool known = std::any_of(things.begin(), things.end(), [&](const Thing& thing) {
                return claims(thing, choice.placeholder, word);
            });
            if (!known) home.claims.push_back(choice.placeholder + ":" + word);
        }
    }
}

}  // namespace

std::vector<Thing> things_of(const views::JobCard& card) {
    std::vector<Thing> things;
    const bool cylinder = on_cylinder(card);
    for (const Row& row : rows) {
        Thing thing;
        thing.point.tag = row.tag;
        thing.point.name = row.name;
        thing.point.note = row.note;
        thing.point.shape = row.shape;
        thing.point.spot = row.spot;
        thing.under_cover = row.under_cover;
        thing.on_sheet = row.on_sheet;
        thing.claims = split(row.claims, '|');
        thing.aliases = split(row.aliases, '|');
        name_source(thing, cylinder);
        things.push_back(std::move(thing));
    }
    add_fixtures(things, site_of(card));
    claim_the_rest(things, card);
    return things;
}

std::size_t find_thing(const std::vector<Thing>& things, std::string_view tag) {
    const auto found = std::find_if(things.begin(), things.end(),
                                    [&](const Thing& thing) { return thing.point.tag == tag; });
    return static_cast<std::size_t>(found - things.begin());
}

std::size_t thing_named_in(const std::vector<Thing>& things, std::string_view title) {
    std::size_t best = things.size(), longest = 0;
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (things[i].point.name == title) return i;
        const auto try_word = [&](std::string_view word) {
            if (word.size() > longest && title.find(word) != std::string_view::npos) {
                best = i;
                longest = word.size();
            }
        };
        try_word(things[i].point.name);
        for (const auto& alias : things[i].aliases) try_word(alias);
        for (const auto& claim : things[i].claims) {
            const std::string_view word = std::string_view(claim).substr(claim.find(':') + 1);
            if (word != "*") try_word(word);
        }
    }
    return best;
}

}  // namespace emberpath::desktop
