// Site skills: what a house asks for beside its heater's fault. Taken as seen and smelt, never from the site's file.

#include <cstdlib>

#include "sim/trainees/hands.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::trainees {

namespace {

using faults::Remedy;

constexpr int most_airings = 12;

/// "In the drain the detector shows 32 % of what can burn.", as a share; over range is all of it.
double share_in_the_drain(const worksite::LogEntry& entry) {
    constexpr std::string_view before = "the detector shows ";
    for (const std::string& line : entry.shown) {
        const auto at = line.find(before);
        if (at == std::string::npos) continue;
        const std::string figure = line.substr(at + before.size());
        return figure.starts_with("over range") ? 1.0 : std::strtod(figure.c_str(), nullptr) / 100;
    }
    return 0.0;
}

}  // namespace

// People first, then the gas, then the air; nothing is switched before the joint is tight and no gas lies low.
void Hands::leave_gas() {
    say("move people out");
    say("shut gas at " + supply());
    say("air the place");
    open_gas();
    for (int i = 0; i < most_joint_repairs; ++i) {
        const auto* entry = say("leak test with fluid");
        if (!shows(entry, "Bubbles")) break;
        remake(*entry);
    }
    const double limit = visit_.job().practice.limits.gas_in_air;
    for (int i = 0; i < most_airings; ++i) {
        const auto* entry = say("check low places");
        if (entry == nullptr || share_in_the_drain(*entry) <= limit) return;
        say("wait 5 min");
    }
}

void Hands::look_around() {
    if (looked_around_ || !care_.isolate) return;
    looked_around_ = true;
    if (visit_.log().empty()) say("look at room");  // and smell
    const auto* entry = say("look around heater");
    needs_ladder_ = shows(entry, "a ladder's work");
    old_sheet_ = shows(entry, "may hold asbestos");
    scorched_ = shows(entry, "is browned");
    cylinder_close_ = shows(entry, "where the flue blows");
    if (shows(entry, "Children")) say("keep people away");
}

/// Ground and wind before every climb. False: one stays down.
bool Hands::goes_up() {
    look_around();
    if (!needs_ladder_) return true;
    const auto* entry = say("check ladder");
    const bool soft = shows(entry, "gives way"), windy = shows(entry, "pulls at it");
    if (windy) say("decline climb");
    if (soft && !windy && !ladder_tied_) {
        ladder_tied_ = true;
        say("tie ladder");
    }
    return !windy;
}

bool Hands::leaves_terminal_alone(Remedy remedy) {
    if (!worksite::works_at_terminal(remedy)) return false;
    const bool climbs = goes_up();
    if (climbs && !old_sheet_) return false;
    if (!climbs) say("escalate to licensed colleague");
    take_out_of_use();
    return true;
}

void Hands::move_cylinder() {
    if (!cylinder_close_) return;
    cylinder_close_ = false;
    if (care_.leak_test && care_.leak_test_before) say("leak test with fluid");
    shut_gas();
    say("move cylinder");
    open_gas();
    say("purge gas pipe");
}

}  // namespace emberpath::trainees
