#include "ui/views/services.hpp"

#include <array>

#include "ui/views/views.hpp"

namespace emberpath::views {

namespace {

struct Change {
    std::string_view service, words, state;  // acts that begin with `words` leave the service so
};

// clang-format off
constexpr std::array changes{
    Change{"gas",      "shut gas at",          "shut at the"},
    Change{"gas",      "open gas at",          "open at the"},
    Change{"gas",      "leak test",            "leak tested"},
    Change{"water",    "shut water at heater", "shut at the heater"},
    Change{"water",    "open water at heater", "open at the heater"},
    Change{"power",    "switch power off",     "switched off, not proved dead"},
    Change{"power",    "unplug heater",        "unplugged, not proved dead"},
    Change{"power",    "lock off plug",        "unplugged and locked, not proved dead"},
    Change{"power",    "test for dead",        "tested at the terminals: see the log"},
    Change{"power",    "plug in heater",       "plugged in"},
    Change{"power",    "switch power on",      "on"},
    Change{"cover",    "take cover off",       "off"},
    Change{"cover",    "refit cover",          "on"},
    Change{"room air", "read room air",        "read: see the log"},
};
constexpr std::array<std::string_view, 5> order{"gas", "water", "power", "cover", "room air"};
// clang-format on

/// "shut at the" and "shut gas at meter" make "shut at the meter".
std::string state_after(const Change& change, const std::string& words) {
    std::string state(change.state);
    if (change.state.ends_with("at the")) state += words.substr(change.words.size());
    return state;
}

}  // namespace

std::vector<ServiceRow> services(const std::vector<TimedWords>& log) {
    std::vector<ServiceRow> rows;
    rows.reserve(std::size(order));
    for (const auto service : order) rows.push_back({std::string(service), "not checked", {}});
    for (const auto& entry : log)
        for (const auto& change : changes)
            for (auto& row : rows)
                if (row.service == change.service && entry.words.starts_with(change.words))
                    row = {row.service, state_after(change, entry.words), entry.time};
    return rows;
}

std::vector<ServiceRow> services(const worksite::Attempt& attempt) {
    std::vector<TimedWords> words;
    for (auto& entry : log(attempt)) words.push_back({entry.words, entry.time});
    return services(words);
}

}  // namespace emberpath::views
