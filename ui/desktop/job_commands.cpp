// What each command does to a visit.

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "ui/desktop/job_desk.hpp"

namespace emberpath::desktop {

namespace {

constexpr std::array speeds{1, 5, 20};

int next_speed(int speed) {
    const auto at = std::find(speeds.begin(), speeds.end(), speed);
    return at == speeds.end() || at + 1 == speeds.end() ? speeds.front() : *(at + 1);
}

/// The one act that nothing can be done after.
bool is_hand_in(const std::string& sentence) {
    std::string words;
    for (const char c : sentence)
        if (c != ' ' || (!words.empty() && words.back() != ' '))
            words += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    while (!words.empty() && words.back() == ' ') words.pop_back();
    return words == "hand in";
}

}  // namespace

bool JobDesk::obey_time(const kit::Command& c) {
    constexpr std::array of_time{"pause", "speed", "wait", "choose wait", "wait for"};
    const bool about_time = std::find(of_time.begin(), of_time.end(), c.name) != of_time.end();
    if (about_time && visit_.attempt().time_is_up()) {
        say("The time allowed is up.");
    } else if (c.name == "pause") {
        paused_ = only_look_.empty() ? !paused_ : true;
        say(paused_ ? "Time stands still." : "Time runs.");
    } else if (c.name == "speed") {
        speed_ = c.argument.empty()   ? next_speed(speed_)
                 : c.argument == "5"  ? 5
                 : c.argument == "20" ? 20
                                      : 1;
        say(speed_ == 1 ? "Real time." : std::to_string(speed_) + " times real time.");
    } else if (c.name == "wait") {
        wait_for(wait_);
    } else if (c.name == "choose wait") {
        front_ = screens::InFront::waits;
    } else if (c.name == "wait for") {
        wait_for(c.argument);
    } else {
        return false;
    }
    return true;
}

/// Nearer or farther: about a place of the screen, which stays where it is, or about what is to be seen.
void JobDesk::zoom(double by, std::optional<kit::Point> about) {
    constexpr double nearest = 3.0, farthest = 1.0;
    const double before = camera_.zoom;
    camera_.zoom = std::clamp(before * by, farthest, nearest);
    const double k = camera_.zoom / before;
    if (!about || camera_.zoom == farthest) {
        camera_ = {.zoom = camera_.zoom};
        return;
    }
    const kit::Point from_middle = *about - sheet_middle_;
    camera_.x = from_middle.x * (1.0 - k) + camera_.x * k;
    camera_.y = from_middle.y * (1.0 - k) + camera_.y * k;
}

bool JobDesk::obey_camera(const kit::Command& c, const kit::State& state) {
    constexpr double step = 1.2;
    if (c.name == "zoom in" || c.name == "zoom out") {
        zoom(c.name == "zoom in" ? step : 1.0 / step, std::nullopt);
    } else if (c.name == "wheel") {
        zoom(c.argument == "+1" ? step : 1.0 / step, state.pointer);
    } else if (c.name == "pan") {
        const bool fixed = roam_ && roam_->left + roam_->right + roam_->up + roam_->down <= 0.0;
        if (fixed && !state.roaming) say("All of the drawing is in view.");
        char* rest = nullptr;
        camera_.x += std::strtod(c.argument.c_str(), &rest);
        camera_.y += std::strtod(rest, nullptr);
    } else {
        return false;
    }
    return true;
}

void JobDesk::looked_at(const kit::Tree& tree, const std::string& focus) {
    if (std::exchange(just_selected_, false)) focus_at_selection_ = focus;
    const kit::Node* drawing = tree.get("sheet.points");
    if (drawing == nullptr || !drawing->roam) return;
    roam_ = drawing->roam;
    sheet_middle_ = drawing->bounds.centre();
    camera_.x = roam_->at.x;
    camera_.y = roam_->at.y;
    camera_.shows = roam_->shows;
    camera_.placed = true;
}

bool JobDesk::obey_view(const kit::Command& c, kit::State& state) {
    using screens::SheetShown;
    if (c.name == "other sheet") {
        sheet_ = sheet_ == SheetShown::house ? SheetShown::heater : SheetShown::house;
        camera_ = {};
        say(sheet_ == SheetShown::house ? "The house." : "The heater.");
    } else if (c.name == "tab") {
        compact_tab_ = c.argument;
    } else if (c.name == "job card") {
        front_ = screens::InFront::job_card;
    } else if (c.name == "go to") {
        say_it("", state);
    } else if (c.name == "say") {
        say_it(c.argument + " ", state);
    } else if (c.name == "more actions") {
        ++page_;
    } else if (c.name == "panel" && c.argument.empty()) {
        compact_tab_ = "panel";
        select("panel");
        compact_tab_ = "panel";
        state.focus = "panel.power";
        state.focus_shown = true;
    } else if (c.name == "causes") {
        const bool there = state.focus.starts_with("causes.");
        compact_tab_ = there ? "sheet" : "causes";
        state.focus = there || visit_.suspects().empty()
                          ? "evidence.record"
                          : "causes." + visit_.suspects().front().word;
        state.focus_shown = true;
    } else {
        return false;
    }
    return true;
}

bool JobDesk::obey_hands(const kit::Command& c, kit::State& state) {
    if (c.name == "act") {
        wants_to_hand_in_ = only_look_.empty() && is_hand_in(c.argument) &&
                            visit_.attempt().check(c.argument).text.empty();
        if (!wants_to_hand_in_) act(c.argument);
    } else if (c.name == "select") {
        select(c.argument);
    } else if (c.name == "go to named") {
        go_to_named(state);
    } else if (c.name == "record") {
        record();
    } else if (c.name == "tool") {
        take_tool(c.argument);
    } else if (c.name.starts_with("tool.")) {
        take_tool(c.name.substr(5));
    } else if (c.name == "drop") {
        drop(c.argument);
    } else if (c.name == "panel") {
        press_panel(c.argument);
    } else if (c.name == "cause") {
        next_belief(c.argument);
    } else if (c.name == "reading") {
        const auto sight = visit_.attempt().sight();
        for (const auto& reading : readings_of(known(sight)))
            if (std::to_string(reading.view.number) == c.argument && reading.thing < things_.size())
                select(things_[reading.thing].point.tag);
    } else if (c.name == "choose cause") {
        choosing_cause_ = true;
        choosing_as_ = screens::CauseAs::the_cause;
    } else if (c.name == "choose confidence") {
        choosing_confidence_ = true;
    } else if (c.name == "confidence is") {
        choosing_confidence_ = false;
        act("write confidence " + c.argument + " %");
    } else if (c.name == "cause as") {
        choosing_as_ = c.argument == "as-well"   ? screens::CauseAs::as_well
                       : c.argument == "or-this" ? screens::CauseAs::or_this
                                                 : screens::CauseAs::the_cause;
    } else if (c.name == "cause is") {
        choosing_cause_ = false;
        act(std::string(choosing_as_ == screens::CauseAs::as_well   ? "write also cause "
                        : choosing_as_ == screens::CauseAs::or_this ? "write possible cause "
                                                                    : "write cause ") +
            c.argument);
    } else if (c.name == "not now") {
        say("Not now: " + c.argument);
    } else {
        return false;
    }
    return true;
}

bool JobDesk::obey(const kit::Command& c, kit::State& state) {
    if (front_ == screens::InFront::go_to && c.name == "act") front_ = screens::InFront::nothing;
    return obey_time(c) || obey_camera(c, state) || obey_view(c, state) || obey_hands(c, state);
}

}  // namespace emberpath::desktop
