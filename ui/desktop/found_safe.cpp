#include "ui/desktop/found_safe.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <string_view>

namespace emberpath::desktop {

namespace {

bool says(const worksite::LogEntry& entry, std::string_view sentence) {
    return std::any_of(entry.shown.begin(), entry.shown.end(),
                       [&](const std::string& line) { return line.starts_with(sentence); });
}

/// An act that parts the heater from its supply, and the one that joins it again.
struct Isolation {
    std::string_view off, on;
};
constexpr std::array isolations{
    Isolation{"switch power off", "switch power on"}, Isolation{"unplug heater", "plug in heater"},
    Isolation{"switch main switch off", "switch main switch on"},
    Isolation{"switch circuit breaker off", "switch circuit breaker on"}};

/// After any of these the terminals, or the tester, are not those that were proved.
constexpr std::array<std::string_view, 7> others{"switch second supply",
                                                 "close safety switch",
                                                 "test safety switch",
                                                 "time safety switch",
                                                 "use outlet without safety switch",
                                                 "use own outlet",
                                                 "take spare voltage tester"};

enum class Stage { none, tester_proved, found_dead, proved_dead };

/// By what the tester showed, whichever words led to it.
Stage after_testing(Stage before, const worksite::LogEntry& entry) {
    if (says(entry, "The tester shows the voltage of its proving unit")) {
        const bool found = before == Stage::found_dead || before == Stage::proved_dead;
        return found ? Stage::proved_dead : Stage::tester_proved;
    }
    if (!says(entry, "The tester ")) return before;
    if (!says(entry, "The tester shows no voltage")) return Stage::none;  // live, or a dark tester
    if (says(entry, "Across the board's capacitor")) return before;  // charged still: not dead yet
    return before == Stage::tester_proved ? Stage::found_dead : before;
}

}  // namespace

bool gas_is_smelt(const Known& known) {
    bool smelt = false;
    const auto hear = [&smelt](const std::vector<std::string>& lines) {
        for (const std::string& line : lines) {
            if (line.starts_with("It smells of gas")) smelt = true;
            if (line.starts_with("No smell of gas")) smelt = false;
        }
    };
    for (const auto& entry : known.log) hear(entry.shown);
    hear(known.sight.noticed);
    return smelt;
}

bool power_is_proved_dead(const Known& known) {
    Stage stage = Stage::none;
    std::set<std::string_view> parted;
    for (const auto& entry : known.log) {
        for (const Isolation& one : isolations) {
            const bool off = entry.words == one.off, on = entry.words == one.on;
            if (off) parted.insert(one.off);
            if (on) parted.erase(one.off);
            if (off || on) stage = Stage::none;
        }
        if (std::any_of(others.begin(), others.end(),
                        [&](std::string_view begin) { return entry.words.starts_with(begin); }))
            stage = Stage::none;
        stage = after_testing(stage, entry);
    }
    return stage == Stage::proved_dead && !parted.empty();
}

}  // namespace emberpath::desktop
