#include "sim/worksite/vocabulary.hpp"

#include <algorithm>
#include <array>

#include "sim/worksite/electrical_quantities.hpp"

namespace emberpath::worksite {

namespace {

struct Fixed {
    std::string_view placeholder;
    std::size_t index;
    std::string_view text;
};

// The first line of an index is its canonical spelling.
// clang-format off
constexpr std::array fixed_spellings{
    Fixed{"topic", 0, "problem"}, Fixed{"topic", 0, "complaint"}, Fixed{"topic", 0, "what happens"},
    Fixed{"topic", 1, "when"}, Fixed{"topic", 2, "where"}, Fixed{"topic", 3, "changes"},
    Fixed{"topic", 4, "other appliances"}, Fixed{"topic", 4, "appliances"},
    Fixed{"topic", 5, "smell"}, Fixed{"topic", 5, "smells"}, Fixed{"topic", 6, "weather"},
    Fixed{"topic", 6, "wind"}, Fixed{"topic", 7, "history"}, Fixed{"topic", 7, "last service"},
    Fixed{"topic", 8, "safety"},
    Fixed{"thing", 0, "display"}, Fixed{"thing", 0, "panel"},
    Fixed{"thing", 1, "burner window"}, Fixed{"thing", 1, "window"}, Fixed{"thing", 1, "flame"},
    Fixed{"thing", 2, "flue terminal"}, Fixed{"thing", 2, "terminal"}, Fixed{"thing", 2, "flue"},
    Fixed{"thing", 3, "cylinder"}, Fixed{"thing", 4, "room"}, Fixed{"thing", 5, "power point"},
    Fixed{"thing", 5, "plug"}, Fixed{"thing", 6, "gas pipe run"}, Fixed{"thing", 6, "gas pipe"},
    Fixed{"thing", 7, "heat exchanger fins"}, Fixed{"thing", 7, "fins"},
    Fixed{"thing", 7, "heat exchanger"}, Fixed{"thing", 7, "exchanger fins"},
    Fixed{"thing", 8, "flame electrode"}, Fixed{"thing", 8, "electrode"},
    Fixed{"thing", 8, "electrode tip"}, Fixed{"thing", 9, "heater"},
    Fixed{"thing", 10, "switchboard"}, Fixed{"thing", 11, "board fuse"}, Fixed{"thing", 11, "fuse"},
    Fixed{"thing", 13, "changeover"}, Fixed{"thing", 13, "changeover lever"}, Fixed{"thing", 13, "changeover indicator"},
    Fixed{"thing", 14, "relief drain"}, Fixed{"thing", 14, "relief valve"}, Fixed{"thing", 15, "case floor"}, Fixed{"thing", 15, "floor of case"},
    Fixed{"cylinder", 0, "first cylinder"}, Fixed{"cylinder", 1, "second cylinder"}, Fixed{"cylinder", 1, "reserve cylinder"},
    Fixed{"thing", 20, "companion heater"}, Fixed{"thing", 20, "second heater"},
    Fixed{"thing", 12, "igniter lead"}, Fixed{"thing", 16, "gas valve"},
    Fixed{"thing", 16, "gas valve handle"}, Fixed{"thing", 17, "air intake"}, Fixed{"thing", 17, "intake"},
    Fixed{"thing", 18, "combustion chamber"}, Fixed{"thing", 18, "chamber"}, Fixed{"thing", 19, "limiter leads"},
    Fixed{"thing", 19, "overheat limiter"}, Fixed{"board switch", 0, "main switch"}, Fixed{"board switch", 1, "circuit breaker"},
    Fixed{"board switch", 1, "breaker"}, Fixed{"board switch", 2, "second supply"},
    Fixed{"watched", 0, "display"}, Fixed{"watched", 0, "panel"}, Fixed{"watched", 1, "burner window"},
    Fixed{"watched", 1, "window"}, Fixed{"watched", 1, "burner"}, Fixed{"watched", 1, "flame"},
    Fixed{"watched", 2, "igniter lead"}, Fixed{"watched", 3, "analyser"}, Fixed{"wear", 0, "gloves"}, Fixed{"wear", 0, "insulating gloves"}, Fixed{"wear", 1, "glasses"},
    Fixed{"wear", 1, "safety glasses"},
    Fixed{"point", 0, "inlet"}, Fixed{"point", 0, "inlet test point"}, Fixed{"point", 0, "heater inlet"},
    Fixed{"point", 1, "manifold"}, Fixed{"point", 1, "manifold test point"},
    Fixed{"point", 2, "regulator"}, Fixed{"point", 2, "regulator outlet"},
    Fixed{"point", 2, "regulator test point"},
    Fixed{"joint", 0, "inlet"}, Fixed{"joint", 1, "manifold"}, Fixed{"joint", 2, "regulator"},
    Fixed{"joint", 3, "cylinder"}, Fixed{"joint", 4, "burner"},
    Fixed{"joint", 5, "inlet union"},
    Fixed{"sensor", 0, "outlet sensor"}, Fixed{"sensor", 1, "inlet sensor"},
    Fixed{"sensor", 2, "exchanger sensor"},
    Fixed{"probe", 0, "outlet sensor"}, Fixed{"probe", 1, "inlet sensor"},
    Fixed{"probe", 2, "exchanger sensor"}, Fixed{"probe", 3, "flame lead"},
    Fixed{"probe", 3, "electrode lead"}, Fixed{"probe", 4, "supply terminals"},
    Fixed{"probe", 4, "terminals"},
    Fixed{"pipe", 0, "outlet pipe"}, Fixed{"pipe", 1, "inlet pipe"}, Fixed{"pipe", 2, "exchanger pipe"},
    Fixed{"item", 0, "all"}, Fixed{"item", 0, "everything"}, Fixed{"item", 1, "flow"},
    Fixed{"item", 2, "inlet temperature"}, Fixed{"item", 2, "inlet"},
    Fixed{"item", 3, "outlet temperature"}, Fixed{"item", 3, "outlet"},
    Fixed{"item", 4, "exchanger temperature"}, Fixed{"item", 4, "exchanger"},
    Fixed{"item", 5, "fan speed"}, Fixed{"item", 5, "fan"}, Fixed{"item", 6, "fan current"},
    Fixed{"item", 7, "flame current"}, Fixed{"item", 7, "flame"}, Fixed{"item", 8, "firing rate"},
    Fixed{"item", 9, "manifold pressure"}, Fixed{"item", 10, "correction"},
    Fixed{"item", 11, "air trim"}, Fixed{"item", 12, "phase"}, Fixed{"item", 13, "event"},
    Fixed{"item", 13, "latest event"}, Fixed{"item", 14, "water valve position"},
    Fixed{"item", 14, "water valve"}, Fixed{"item", 15, "fan drive"},
    Fixed{"gas kind", 0, "natural gas"}, Fixed{"gas kind", 1, "propane"},
    Fixed{"height", 0, "0 m"}, Fixed{"height", 1, "300 m"}, Fixed{"height", 2, "600 m"},
    Fixed{"height", 3, "900 m"}, Fixed{"height", 4, "1200 m"}, Fixed{"height", 5, "1500 m"},
    Fixed{"height", 6, "1800 m"}, Fixed{"height", 7, "2100 m"}, Fixed{"height", 8, "2400 m"},
    Fixed{"height", 9, "2700 m"}, Fixed{"height", 10, "3000 m"},
    Fixed{"on or off", 0, "off"}, Fixed{"on or off", 1, "on"},
    Fixed{"count", 0, "0"}, Fixed{"count", 1, "1"}, Fixed{"count", 2, "2"}, Fixed{"count", 3, "3"},
    Fixed{"whose", 0, "lowest"}, Fixed{"whose", 1, "first"}, Fixed{"whose", 2, "second"},
    Fixed{"whose", 3, "third"},
    Fixed{"test current", 0, "rated current"}, Fixed{"test current", 1, "twice rated current"},
    Fixed{"test current", 2, "five times rated current"},
    Fixed{"item", 16, "ambient temperature"}, Fixed{"item", 16, "ambient"},
    Fixed{"body", 0, "distributor"}, Fixed{"body", 0, "gas distributor"},
    Fixed{"body", 1, "gas supplier"}, Fixed{"body", 1, "supplier"}, Fixed{"body", 2, "electrician"},
    Fixed{"body", 3, "electricity distributor"},
    Fixed{"body", colleague, "licensed colleague"}, Fixed{"body", colleague, "colleague"},
    Fixed{"body", colleague, "supervisor"},
    Fixed{"body", asbestos_assessor, "asbestos assessor"}, Fixed{"body", asbestos_assessor, "assessor"},
    Fixed{"body", gas_distributor, "emergency line"}, Fixed{"body", owner, "owner"}, Fixed{"body", owner, "landlord"},
    Fixed{"body", technical_regulator, "technical regulator"}, Fixed{"body", technical_regulator, "regulator of safety"},
    Fixed{"body", plumber, "licensed plumber"}, Fixed{"body", plumber, "plumber"},
    Fixed{"body", manufacturer, "manufacturer"}, Fixed{"body", manufacturer, "maker"},
};

constexpr std::array readout_quantities{
    Quantity::readout_flow, Quantity::readout_inlet, Quantity::readout_outlet,
    Quantity::readout_exchanger, Quantity::readout_fan, Quantity::readout_fan_current,
    Quantity::readout_flame, Quantity::readout_firing_rate, Quantity::readout_manifold_command,
    Quantity::readout_correction, Quantity::readout_air_trim, Quantity::readout_phase,
    Quantity::readout_event, Quantity::readout_water_valve, Quantity::readout_fan_drive,
    Quantity::readout_ambient};

struct Meaning {
    std::string_view placeholder, meaning, example;
};
constexpr std::array meanings{
    Meaning{"topic", "a topic", ""}, Meaning{"thing", "a thing to look at", ""},
    Meaning{"watched", "what to watch", ""}, Meaning{"tap", "a tap", ""},
    Meaning{"appliance", "an appliance", ""}, Meaning{"gas valve", "a gas valve", ""},
    Meaning{"window", "a window or door of the house", ""}, Meaning{"fan", "an extraction fan of the house", ""},
    Meaning{"cylinder", "a cylinder of a pair", ""},
    Meaning{"wear", "what to wear", ""}, Meaning{"point", "a gas test point", ""},
    Meaning{"joint", "a gas joint", ""}, Meaning{"sensor", "a sensor", ""}, Meaning{"probe", "where the leads go", ""},
    Meaning{"pipe", "a pipe", ""}, Meaning{"item", "a quantity", ""}, Meaning{"body", "whom", ""},
    Meaning{"wall controller", "a wall controller", ""}, Meaning{"link end", "an end of the link cable", ""},
    Meaning{"gas kind", "a gas", ""}, Meaning{"height", "a height above the sea", ""},
    Meaning{"on or off", "on or off", ""}, Meaning{"count", "a number from 0 to 3", ""},
    Meaning{"whose", "lowest, first, second or third", ""},
    Meaning{"board switch", "a switch at the switchboard", ""},
    Meaning{"test current", "rated current, twice rated current or five times rated current", ""},
    Meaning{"terminal", "a terminal", ""}, Meaning{"other terminal", "another terminal", "heater neutral"},
    Meaning{"conductor", "a conductor", ""}, Meaning{"instrument", "an instrument", ""}, Meaning{"cause", "a cause of the catalogue", ""},
    Meaning{"duration", "a time from 1 s to 60 min, such as \"30 s\" or \"2 min\"", "30 s"},
    Meaning{"temperature", "a temperature, such as \"50 °C\"", "50 °C"},
    Meaning{"text", "your own words", "in your own words"},
    Meaning{"confidence", "how sure you are, from 0 % to 100 %, such as \"80 %\"", "80 %"},
    Meaning{"balloons", "numbers of readings, such as \"#1 #4\"", "#1"},
};
// clang-format on

/// "kitchen" for "kitchen tap": short forms that people say.
void add_named(std::vector<Spelling>& list, std::size_t index, const std::string& name) {
    list.push_back({index, name});
    if (name.size() > 4 && name.ends_with(" tap"))
        list.push_back({index, name.substr(0, name.size() - 4)});
}

void add_taps(std::vector<Spelling>& list, const Job& job, std::size_t first) {
    for (std::size_t i = 0; i < job.site.taps.size(); ++i)
        add_named(list, first + i, job.site.taps[i].name);
}

/// Topics that only this job has come after the standard ones, in the order of their names.
void add_topics(std::vector<Spelling>& list, const Job& job) {
    std::size_t next = list.back().index + 1;
    for (const auto& [topic, answer] : job.customer.answers) {
        const bool known = std::any_of(
            list.begin(), list.end(),
            [&, name = std::string_view(topic)](const Spelling& s) { return s.text == name; });
        if (!known) list.push_back({next++, topic});
    }
}

void add_causes(std::vector<Spelling>& list, const Job& job) {
    const faults::SiteTraits traits = traits_of(job);
    for (const auto& cause : faults::catalogue()) {
        if (!faults::can_act(cause, traits)) continue;
        list.push_back({static_cast<std::size_t>(cause.cause), std::string(cause.word)});
        list.push_back({static_cast<std::size_t>(cause.cause), std::string(cause.title)});
    }
}

std::vector<Spelling> terminal_spellings() {
    std::vector<Spelling> list;
    for (std::size_t i = 0; i < plant::reachable_terminal_count; ++i)
        list.push_back({i, std::string(terminal_name(i))});
    return list;
}

std::vector<Spelling> conductor_spellings() {
    std::vector<Spelling> list;
    for (std::size_t i = 0; i < plant::conductor_count; ++i)
        list.push_back({i, std::string(conductor_name(i))});
    return list;
}

std::vector<Spelling> instrument_spellings() {
    std::vector<Spelling> list;
    for (std::size_t i = 0; i < instrument_count; ++i)
        list.push_back({i, std::string(info(static_cast<Instrument>(i)).word)});
    return list;
}

}  // namespace

std::vector<Spelling> spellings(std::string_view placeholder, const Job& job) {
    std::vector<Spelling> list;
    if (placeholder == "terminal" || placeholder == "other terminal") return terminal_spellings();
    if (placeholder == "conductor") return conductor_spellings();
    if (placeholder == "instrument") return instrument_spellings();
    const bool cylinder = job.site.gas == GasKind::propane_cylinder;
    for (const auto& fixed : fixed_spellings)
        if (fixed.placeholder == placeholder)
            list.push_back({fixed.index, std::string(fixed.text)});
    if (placeholder == "topic") add_topics(list, job);
    if (placeholder == "thing") add_taps(list, job, static_cast<std::size_t>(Thing::first_tap));
    if (placeholder == "tap") add_taps(list, job, 0);
    if (placeholder == "cause") add_causes(list, job);
    if (placeholder == "window")
        for (std::size_t i = 0; i < job.site.windows.size(); ++i)
            list.push_back({i, job.site.windows[i].name});
    if (placeholder == "fan")
        for (std::size_t i = 0; i < job.site.fans.size(); ++i)
            list.push_back({i, job.site.fans[i].name});
    if (placeholder == "wall controller" || placeholder == "link end") {
        const bool ends = placeholder == "link end";
        if (ends) list.push_back({0, "heater"});
        for (std::size_t i = 0; i < job.site.wall_controllers.size(); ++i)
            list.push_back({ends ? i + 1 : i, job.site.wall_controllers[i]});
    }
    if (placeholder == "gas valve")
        list = {{0, "heater"}, {1, cylinder ? "cylinder" : "meter"}, {1, "supply"}};
    if (placeholder == "appliance") {
        list.push_back({0, "heater"});
        for (std::size_t i = 0; i < job.site.appliances.size(); ++i)
            list.push_back({i + 1, job.site.appliances[i].name});
    }
    return list;
}

std::vector<std::string> words_of(std::string_view placeholder, const Job& job) {
    std::vector<std::string> words;
    std::vector<std::size_t> seen;
    for (auto& spelling : spellings(placeholder, job)) {
        if (std::find(seen.begin(), seen.end(), spelling.index) != seen.end()) continue;
        seen.push_back(spelling.index);
        words.push_back(std::move(spelling.text));
    }
    return words;
}

std::string_view meaning_of(std::string_view placeholder) {
    for (const auto& row : meanings)
        if (row.placeholder == placeholder) return row.meaning;
    return placeholder;
}

std::string_view example_of(std::string_view placeholder) {
    for (const auto& row : meanings)
        if (row.placeholder == placeholder) return row.example;
    return {};
}

std::span<const Quantity> readout_items() {
    return readout_quantities;
}

std::vector<Part> parts_of(std::string_view pattern) {
    std::vector<Part> parts;
    for (std::size_t at = 0; at < pattern.size();) {
        const char c = pattern[at];
        if (c == ' ') {
            ++at;
            continue;
        }
        const char close = c == '{' ? '}' : c == '[' ? ']' : ' ';
        const auto end = std::min(pattern.find(close, at), pattern.size());
        if (c == '{')
            parts.push_back({Part::Kind::placeholder, pattern.substr(at + 1, end - at - 1)});
        else if (c == '[')
            parts.push_back({Part::Kind::optional, pattern.substr(at + 1, end - at - 1)});
        else
            parts.push_back({Part::Kind::literal, pattern.substr(at, end - at)});
        at = end + 1;
    }
    return parts;
}

std::vector<std::string_view> alternatives(std::string_view text) {
    std::vector<std::string_view> list;
    for (std::size_t at = 0; at <= text.size();) {
        const auto end = std::min(text.find('|', at), text.size());
        list.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return list;
}

}  // namespace emberpath::worksite
