#include "ui/views/services.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <string_view>

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

/// What parts the heater from a supply is undone by the same words with "on"; the plug has words of its own.
constexpr std::array<std::array<std::string_view, 2>, 4> isolations{{
    {"switch power off", "switch power on"},
    {"unplug heater", "plug in heater"},
    {"switch main switch off", "switch main switch on"},
    {"switch circuit breaker off", "switch circuit breaker on"},
}};
/// After these it is another supply, or another tester.
constexpr std::array<std::string_view, 7> undo_the_proof{"switch second supply",
                                                         "close safety switch",
                                                         "test safety switch",
                                                         "time safety switch",
                                                         "use outlet without safety switch",
                                                         "use own outlet",
                                                         "take spare voltage tester"};

/// Dead is what was isolated, and found without voltage by a tester that was proved before and after.
class Proof {
  public:
    void hear(const worksite::LogEntry& act) {
        for (const auto& [off, on] : isolations) {
            if (act.words != off && act.words != on) continue;
            if (act.words == off) off_.insert(off);
            if (act.words == on) off_.erase(off);
            steps_ = 0;
        }
        for (const auto begin : undo_the_proof)
            if (act.words.starts_with(begin)) steps_ = 0;
        if (says(act, "The tester shows the voltage of its proving unit"))
            steps_ = steps_ < 2 ? 1 : 3;
        else if (says(act, "The tester shows no voltage"))
            found_nothing(says(act, "Across the board's capacitor"));
        else if (says(act, "The tester "))
            steps_ = 0;  // live, or dark on its proving unit
    }
    [[nodiscard]] bool given() const { return steps_ == 3 && !off_.empty(); }

  private:
    static bool says(const worksite::LogEntry& act, std::string_view begin) {
        return std::any_of(act.shown.begin(), act.shown.end(),
                           [&](const std::string& line) { return line.starts_with(begin); });
    }
    /// What the board still holds is no proof yet, and an unproved tester shows nothing either.
    void found_nothing(bool charged) {
        if (steps_ == 1 && !charged) steps_ = 2;
    }
    int steps_ = 0;  // tester proved, no voltage found, tester proved again
    std::set<std::string_view> off_;
};

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

bool power_is_proved_dead(const std::vector<worksite::LogEntry>& log) {
    Proof proof;
    for (const auto& act : log) proof.hear(act);
    return proof.given();
}

std::vector<ServiceRow> services(const worksite::Attempt& attempt) {
    std::vector<TimedWords> words;
    for (const auto& entry : log(attempt)) words.push_back({entry.words, entry.time});
    const bool dead = power_is_proved_dead(attempt.log());
    auto rows = services(words);
    for (auto& row : rows)
        if (row.service == "power" && dead) row.state = "proved dead at the terminals";
    return rows;
}

}  // namespace emberpath::views
