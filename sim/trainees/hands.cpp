#include "sim/trainees/hands.hpp"

#include <algorithm>

namespace emberpath::trainees {

namespace {

constexpr std::int64_t minute = 600;  // ticks

/// A pipe that tingles is not touched twice with a bare hand.
bool felt_current(const worksite::LogEntry& entry) {
    return std::any_of(entry.observations.begin(), entry.observations.end(), [](const auto& seen) {
        return seen.quantity == worksite::Quantity::tingle && seen.value > 0.5;
    });
}

}  // namespace

bool shows(const worksite::LogEntry* entry, std::string_view words) {
    return entry != nullptr &&
           std::any_of(entry->shown.begin(), entry->shown.end(), [&](const std::string& line) {
               return line.find(words) != std::string::npos;
           });
}

const worksite::LogEntry* Hands::say(const std::string& sentence) {
    const worksite::LogEntry* entry = visit_.act(sentence);
    if (entry == nullptr) return nullptr;
    remember(sentence);
    const std::size_t place = visit_.log().size() - 1;
    const bool smelt_at_the_door = place == 0 && shows(entry, "It smells of gas.");
    if (shows(entry, "Your personal alarm sounds") && !airing_) leave_bad_air();
    if (smelt_at_the_door && care_.isolate) leave_gas();
    if (care_.isolate && !gloves_ && felt_current(visit_.log()[place])) say("put on gloves");
    return &visit_.log()[place];
}

// Nothing burns on; out of the room until it has aired.
void Hands::leave_bad_air() {
    airing_ = true;
    close_taps();
    mode_ = 0;
    say("air the place");
    say("wait 5 min");
    airing_ = false;
}

void Hands::remember(const std::string& s) {
    const auto tells = [&s](const char* begin) { return s.starts_with(begin); };
    if (s == "take cover off" || s == "refit cover") cover_off_ = s == "take cover off";
    if (tells("switch power")) switched_off_ = s.ends_with("off");
    if (s == "unplug heater" || s == "plug in heater") unplugged_ = s == "unplug heater";
    if (s == "lock off plug" || s == "unlock plug") locked_ = s == "lock off plug";
    if (s == "test for dead") proved_dead_ = true;
    if (s == "plug in heater" || s == "switch power on") proved_dead_ = false;
    if (tells("shut gas at")) gas_shut_ = true;
    if (tells("open gas at")) gas_shut_ = false;
    if (s == "put on gloves") gloves_ = true;
    if (s == "put on glasses") glasses_ = true;
    if (s == "put probe in flue" || s == "take probe out") probe_in_ = s == "put probe in flue";
    if (s == "open service readout") readout_open_ = true;
    if (tells("attach manometer to ")) manometer_ = s.substr(20);
    if (s == "take manometer off") manometer_.clear();
    if (s == "switch on analyser") analyser_tick_ = visit_.tick();
    if (s == "press reset") reset_tick_ = visit_.tick();
    if (tells("open test point") || tells("change cylinder") || tells("move cylinder") ||
        tells("clean heat exchanger"))
        joints_touched_ = true;
}

std::string Hands::supply() const {
    return visit_.job().site.gas == worksite::GasKind::natural_gas ? "meter" : "cylinder";
}

const worksite::Tap& Hands::largest_tap() const {
    const auto& taps = visit_.job().site.taps;
    return *std::max_element(taps.begin(), taps.end(),
                             [](const worksite::Tap& a, const worksite::Tap& b) {
                                 return a.conductance < b.conductance;
                             });
}

const worksite::Observation* Hands::latest(worksite::Quantity quantity) const {
    const auto& log = visit_.log();
    for (auto entry = log.rbegin(); entry != log.rend(); ++entry)
        for (auto seen = entry->observations.rbegin(); seen != entry->observations.rend(); ++seen)
            if (seen->quantity == quantity) return &*seen;
    return nullptr;
}

std::string Hands::latest_word(worksite::Quantity quantity) const {
    const auto* seen = latest(quantity);
    if (seen == nullptr) return {};
    return std::string(worksite::category_word(quantity, static_cast<std::size_t>(seen->value)));
}

void Hands::resume() {
    open_.clear();
    for (const auto& tap : visit_.job().site.taps) open_.push_back(tap.name);
    close_taps();
    mode_ = 0;
}

void Hands::arrive() {
    if (care_.isolate) say("look at room");  // and smell
    for (const char* topic : {"when", "where", "changes", "weather", "smell", "safety"})
        say(std::string("ask about ") + topic);
    say("ask customer for consent");
    look_around();
    say("look at display");
    say("switch on analyser");
    // A heater that takes its air from the room can poison it.
    if (care_.isolate && worksite::traits_of(visit_.job()).open_flue) say("switch on co alarm");
}

void Hands::isolate() {
    if (!gloves_) say("put on gloves");
    if (!care_.isolate) return;
    if (!switched_off_) say("switch power off");
    if (!unplugged_) say("unplug heater");
    if (!locked_) say("lock off plug");
}

void Hands::power_back() {
    if (locked_) say("unlock plug");
    if (unplugged_) say("plug in heater");
    if (switched_off_) say("switch power on");
}

void Hands::open_up() {
    close_taps();
    look_around();
    isolate();
    if (!cover_off_) say("take cover off");
    if (!care_.prove_dead || !care_.isolate || proved_dead_) return;
    say("prove tester");
    say("test for dead");
    say("prove tester");
}

void Hands::close_up() {
    if (cover_off_) say("refit cover");
    power_back();
}

void Hands::shut_gas() {
    if (care_.isolate && !gas_shut_) say("shut gas at " + supply());
}

void Hands::open_gas() {
    if (gas_shut_) say("open gas at " + supply());
}

void Hands::close_taps() {
    while (!open_.empty()) {  // an alarm meanwhile closes what is left
        const std::string tap = open_.front();
        open_.erase(open_.begin());
        say("close " + tap);
    }
    worst_draught(false);
}

const worksite::LogEntry* Hands::reset() {
    if (reset_tick_ >= 0 && visit_.tick() - reset_tick_ < minute) {
        const auto left = (minute - (visit_.tick() - reset_tick_)) / 10 + 1;
        say("wait " + std::to_string(left) + " s");
    }
    return say("press reset");
}

/// Against every fan that draws air out of the room, all shut: how it must still draw.
void Hands::worst_draught(bool begin) {
    if (begin == fans_run_) return;
    fans_run_ = begin;
    for (const auto& window : visit_.job().site.windows)
        if (begin) say("close " + window.name);
    for (const auto& fan : visit_.job().site.fans) say((begin ? "run " : "stop ") + fan.name);
}

void Hands::bring_into(std::size_t mode) {
    if (mode == 0 && open_.empty()) {
        mode_ = 0;
        return;
    }
    const scoring::Mode wanted = scoring::modes(visit_.job()).at(mode);
    close_up();
    open_gas();
    close_taps();
    worst_draught(wanted.worst_draught);
    mode_ = mode;
    if (mode == 0) return;
    reset();
    if (mode == 1) {
        open_ = {largest_tap().name};
        say("open " + open_.front() + " halfway");
        say("wait 60 s");
        return;
    }
    for (const auto& tap : visit_.job().site.taps) {
        open_.push_back(tap.name);
        say("open " + tap.name);
        if (mode == 3) return;  // one tap is enough to make it try
    }
    say("wait " + std::to_string(wanted.ticks / 10 - 10) + " s");
}

}  // namespace emberpath::trainees
