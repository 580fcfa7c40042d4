#include "ui/desktop/job_desk.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/desktop/figures.hpp"
#include "ui/desktop/search.hpp"

namespace emberpath::desktop {

namespace {

constexpr double tick_s = 0.1;

std::string rest_after(const std::string& text, std::string_view begin) {
    return text.substr(begin.size());
}

}  // namespace

JobDesk::JobDesk(views::Visit& visit, const Preferences& preferences, Say say)
    : visit_(visit),
      preferences_(preferences),
      say_(std::move(say)),
      things_(things_of(visit.card())),
      offers_(offers_of(visit.card(), things_)),
      in_hand_(belt().size()),
      watcher_(visit.attempt().sight()) {
    status_time_ = views::clock_text(visit_.attempt());
}

Known JobDesk::known(const worksite::Sight& sight) const {
    const auto& attempt = visit_.attempt();
    return {visit_.card(),  visit_.suspects(),         attempt.log(), sight,   attempt.trail(),
            attempt.tick(), attempt.seconds_on_site(), preferences_,  things_, offers_};
}

// --- time ---

bool JobDesk::runs() const {
    const bool reading = front_ == screens::InFront::notice || front_ == screens::InFront::keys;
    return !paused_ && !reading && only_look_.empty() && !over() && !visit_.attempt().time_is_up();
}

void JobDesk::elapse(double wall_s) {
    if (!runs()) {
        owed_s_ = 0.0;
        return;
    }
    since_stall_s_ += wall_s;
    here_s_ += wall_s;
    if (wall_s > longest_stall_s) {
        constexpr double say_again_s = 60.0;  // a slow machine must not drown what matters
        constexpr double welcome_s = 2.0;     // nor the first words: first pictures are slow
        if (since_stall_s_ > say_again_s && here_s_ >= welcome_s)
            say("The program was held up for a moment; the house did not run on meanwhile.");
        since_stall_s_ = 0.0;
        wall_s = longest_stall_s;
    }
    owed_s_ += wall_s * speed_;
    const auto ticks = static_cast<std::int64_t>(std::floor(owed_s_ / tick_s + 1e-9));
    if (ticks <= 0) return;
    owed_s_ -= static_cast<double>(ticks) * tick_s;
    const auto acts = visit_.attempt().log().size();
    visit_.run(ticks);
    if (visit_.attempt().log().size() > acts) after(visit_.attempt().log().back());
    notice_changes();
    say_time_is_up();
}

void JobDesk::say_time_is_up() {
    if (said_time_is_up_ || over() || !visit_.attempt().time_is_up()) return;
    said_time_is_up_ = true;
    say("The time allowed is up. Write up what you found, and hand in.");
}

kit::SoundScene JobDesk::heard() const {
    if (!runs()) return {};
    const auto sight = visit_.attempt().sight();
    if (sight.outside) return {};
    return {sight.fan_rev_per_s, sight.spark_heard, sight.flame_share, sight.alarm};
}

/// What happens by itself is said once. What was said before stays beside it for as long as it takes to read;
/// the first words, until something is done.
void JobDesk::notice_changes() {
    std::string changes;
    for (const auto& one : watcher_.changes(visit_.attempt().sight(), visit_.attempt().tick()))
        changes += (changes.empty() ? "" : " ") + one;
    if (changes.empty()) return;
    constexpr double reading_s = 4.0;
    constexpr std::size_t longest = 130;  // [bytes] what a line of the usual window holds
    const std::string before = said_;
    const double since_s = said_at_s_;
    const bool stays = (visit_.attempt().log().empty() || here_s_ - since_s < reading_s) &&
                       before.size() + changes.size() < longest;
    say(std::move(changes));
    if (!stays || before.empty()) return;
    status_ = before + " " + status_;
    said_ = before;
    said_at_s_ = since_s;
}

void JobDesk::say(std::string sentence) {
    said_ = status_ = in_wished_unit(std::move(sentence), preferences_.kilopascal);
    status_time_ = views::clock_text(visit_.attempt());
    said_at_s_ = here_s_;
    if (say_) say_(status_time_ + " " + status_);
}

// --- acts ---

bool JobDesk::act(const std::string& sentence) {
    if (!only_look_.empty()) {
        say(only_look_);
        return false;
    }
    const auto done = visit_.perform(sentence);
    if (!done.refusal.empty()) {
        say(done.refusal);
        return false;
    }
    after(visit_.attempt().log().back());
    return true;
}

void JobDesk::after(const worksite::LogEntry& entry) {
    const auto sight = visit_.attempt().sight();
    std::string status = status_of(entry, known(sight));
    for (const std::string& change : watcher_.changes(sight, visit_.attempt().tick()))
        if (status.find(change) == std::string::npos) status += " " + change;
    // A reading that was taken too soon is a reading all the same; that it was is said.
    for (std::size_t tool = 0; tool < belt().size(); ++tool)
        if (entry.words.starts_with("read ") &&
            std::string_view(belt()[tool].name).ends_with(entry.words.substr(5)))
            if (const auto movement = movement_of(known(sight), tool); !movement.empty())
                status += " The figure is " + movement + ".";
    say(std::move(status));
    for (const auto& line : entry.shown) {
        const bool unsafe = line.starts_with("Unsafe: ");
        if (!unsafe && !over()) continue;
        if (!unsafe && line != entry.shown.back()) continue;
        if (entry.words == "hand in") continue;
        notice_title_ = unsafe ? "That was not safe" : "The job ends here";
        notice_ = unsafe ? rest_after(line, "Unsafe: ") : status_;
        front_ = screens::InFront::notice;
    }
    say_time_is_up();
}

void JobDesk::welcome(bool resumed) {
    if (resumed) take_what_hangs_somewhere();
    if (resumed)
        say("Attempt resumed at " + views::clock_text(visit_.attempt()) + ", after " +
            std::to_string(visit_.attempt().log().size()) + " acts.");
    else
        say("You are at the door. Ask the customer first: press 1. Then look before you touch.");
}

void JobDesk::only_look(std::string why, screens::ReplayView moment, std::string status) {
    only_look_ = std::move(why);
    moment_ = std::move(moment);
    paused_ = true;
    status_ = std::move(status);
    take_what_hangs_somewhere();
}

/// What was in hand is not in the record; what hung somewhere is.
void JobDesk::take_what_hangs_somewhere() {
    const auto sight = visit_.attempt().sight();
    for (std::size_t tool = belt().size(); tool-- > 0;)
        if (!tool_is_at(known(sight), tool).empty()) in_hand_ = tool;
}

void JobDesk::look_as(const JobDesk& other) {
    selected_ = other.selected_;
    sheet_ = other.sheet_;
    camera_ = other.camera_;
    compact_tab_ = other.compact_tab_;
}

bool JobDesk::back() {
    if (choosing_cause_ || choosing_confidence_) {
        choosing_cause_ = choosing_confidence_ = false;
        return true;
    }
    if (front_ != screens::InFront::nothing) {
        front_ = screens::InFront::nothing;
        return true;
    }
    if (page_ > 0) {
        page_ = 0;
        return true;
    }
    return false;
}

void JobDesk::select(const std::string& tag) {
    const auto thing = find_thing(things_, tag);
    if (thing >= things_.size()) return;
    selected_ = tag;
    just_selected_ = true;
    page_ = 0;
    front_ = screens::InFront::nothing;
    compact_tab_ = "sheet";
    const auto& point = things_[thing].point;
    say(point.tag == point.name ? "Selected: " + point.name + "."
                                : "Selected: " + point.tag + ", " + point.name + ".");
}

/// Opens the box with the beginning of a sentence that wants words of the trainee's own.
void JobDesk::say_it(const std::string& begin, kit::State& state) {
    front_ = screens::InFront::go_to;
    state.editors["goto.name"].reset(begin);
}

void JobDesk::go_to_named(kit::State& state) {
    const std::string said = state.editors["goto.name"].text();
    const auto rows = found(state);
    if (rows.empty()) {
        const auto refusal = visit_.attempt().check(said).text;
        say(refusal.empty() ? "Nothing of that name is here." : refusal);
        return;
    }
    const auto& row = rows.front();
    if (row.id.starts_with(suggested_act)) {  // only what was written out is done at once
        state.focus = "goto." + row.id;
        state.focus_shown = true;
        say("Enter again: " + row.name + ". Up and Down go to the others.");
        return;
    }
    front_ = screens::InFront::nothing;
    (void)obey({row.command, row.argument}, state);
}

void JobDesk::record() {
    const auto sight = visit_.attempt().sight();
    const std::string sentence = recording_sentence(known(sight), in_hand_, selected_);
    if (sentence.empty())
        say("Nothing to record: take a tool in hand, or select something to look at.");
    else
        act(sentence);
}

void JobDesk::take_tool(const std::string& number) {
    if (number.size() != 1 || number[0] < '1') return;
    const auto tool = static_cast<std::size_t>(number[0] - '1');
    if (tool >= belt().size()) return;
    in_hand_ = tool == in_hand_ ? belt().size() : tool;
    if (moment_) return;  // nobody takes it in hand: its glass is looked at
    say(in_hand_ < belt().size() ? std::string("In hand: ") + belt()[in_hand_].name + "."
                                 : "Nothing in hand.");
}

/// "tool 1>sheet.P1": a tool was dragged onto a point.
void JobDesk::drop(const std::string& what) {
    const auto mark = what.find('>');
    const auto dot = what.find('.', mark);
    if (!what.starts_with("tool ") || dot == std::string::npos) return;
    const auto tool = static_cast<std::size_t>(what[5] - '1');
    const std::string tag = what.substr(dot + 1);
    const auto thing = find_thing(things_, tag);
    if (tool >= belt().size() || thing >= things_.size()) return;
    in_hand_ = tool;
    selected_ = tag;
    page_ = 0;
    const std::string name(belt()[tool].name);
    for (const Offer& offer : offers_)
        if (!offer.open && offer.sentence.starts_with("attach " + name) &&
            std::find(offer.things.begin(), offer.things.end(), thing) != offer.things.end()) {
            act(offer.sentence);
            return;
        }
    if (name == "flue gas analyser" && tag == "A1")
        act("put probe in flue");
    else
        say("The " + name + " is not attached there. Press R to record with it.");
}

void JobDesk::press_panel(const std::string& key) {
    const auto sight = visit_.attempt().sight();
    constexpr double zero_celsius_k = 273.15;
    const auto set = [&](double step_k) {
        act("set temperature to " +
            std::to_string(std::lround(sight.set_point_k - zero_celsius_k + step_k)) + " °C");
    };
    if (key == "power") act(sight.heater_on ? "turn off heater" : "turn on heater");
    if (key == "reset") act("press reset");
    if (key == "up") set(1.0);
    if (key == "down") set(-1.0);
    if (key != "readout") return;
    if (!sight.readout_open) act("open service readout");
    if (visit_.attempt().sight().readout_open) selected_ = "readout";
    page_ = 0;
}

/// Held, doubtful, struck out, and held again; the last reading is pinned to it.
void JobDesk::next_belief(const std::string& word) {
    const auto sight = visit_.attempt().sight();
    for (const auto& cause : causes_of(known(sight))) {
        if (cause.word != word) continue;
        const char* verb = cause.belief == screens::Belief::held       ? "doubt "
                           : cause.belief == screens::Belief::doubtful ? "strike out "
                                                                       : "suspect ";
        if (act(verb + word))
            say(cause.title + (cause.belief == screens::Belief::held       ? ": doubtful."
                               : cause.belief == screens::Belief::doubtful ? ": struck out."
                                                                           : ": held again."));
    }
}

void JobDesk::wait_for(const std::string& how) {
    front_ = screens::InFront::nothing;
    wait_ = how;
    act(how == "change" ? "wait until something changes" : "wait " + how);
}

}  // namespace emberpath::desktop
