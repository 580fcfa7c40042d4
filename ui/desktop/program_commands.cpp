// What events and commands do, screen by screen.

#include <algorithm>

#include "ui/desktop/program.hpp"

namespace emberpath::desktop {

namespace {

screens::Question before_handing_in() {
    return {"Hand in and leave the house?",
            "The attempt ends here; nothing can be done after it.",
            "Hand in",
            "Stay",
            {"hand in now"},
            true};
}

}  // namespace

void Program::event(const kit::Event& event) {
    if (take_new_key(event)) return;
    const kit::Services services{metrics_, keys_, clipboard_};
    for (const kit::Command& command : kit::handle(event, frame_, services, state_))
        guarded([&] { obey(command); });
}

/// While a key is being changed, the next one becomes it.
bool Program::take_new_key(const kit::Event& event) {
    if (place_ != Place::settings || changing_key_.empty()) return false;
    kit::Chord chord;
    if (const auto* press = std::get_if<kit::KeyPress>(&event)) {
        if (press->key == kit::Key::escape) {
            changing_key_.clear();
            return true;
        }
        const bool writes =
            !press->modifiers.control && !press->modifiers.alt && press->key >= kit::Key::a;
        if (writes || press->key == kit::Key::tab) return true;
        chord = {press->key, 0, press->modifiers};
    } else if (const auto* typed = std::get_if<kit::Character>(&event)) {
        chord.character = typed->code;
    } else {
        return false;
    }
    const std::string text = kit::text_of(chord);
    settings_problem_ = keys_.rebind(changing_key_, text);
    if (settings_problem_.empty()) {
        preferences_.keys[changing_key_] = text;
        keep_preferences();
    }
    say(settings_problem_.empty() ? text + " is the new key." : settings_problem_);
    changing_key_.clear();
    return true;
}

void Program::obey(const kit::Command& command) {
    if (obey_everywhere(command)) return;
    switch (place_) {
        case Place::choose:
            return obey_choose(command);
        case Place::job:
            return obey_job(command);
        case Place::write_up:
            return obey_write_up(command);
        case Place::debrief:
        case Place::replay:
            return obey_debrief(command);
        case Place::author:
            return obey_author(command);
        case Place::settings:
            return obey_settings(command);
        case Place::error:
            if (command.name == "copy details")
                clipboard_.set(trouble_.title + "\n" + trouble_.place + "\n" + trouble_.line +
                               "\n" + trouble_.right + "\n");
            if (command.name == "look again")
                return author_ && after_trouble_ == Place::author ? preview() : open_choose("");
            if (command.name == "start now") begin_job(command.argument, false);
            return;
        case Place::loading:
            return;
    }
}

bool Program::obey_everywhere(const kit::Command& c) {
    if (c.name == "back") {
        back();
    } else if (c.name == "close window") {
        save_draft();
        if (visit_ && desk_ && !desk_->over()) host_.leave(*visit_);
        closed_ = true;
    } else if (c.name == "help") {
        if (place_ == Place::job && desk_)
            desk_->open_help();
        else
            help_ = true;
    } else if (c.name == "text larger" || c.name == "text smaller") {
        constexpr int sizes[] = {100, 125, 150, 175, 200};
        int next = preferences_.text_percent;
        if (c.name == "text larger")
            next = *std::min(std::upper_bound(std::begin(sizes), std::end(sizes), next),
                             std::end(sizes) - 1);
        else
            next = *std::max(std::lower_bound(std::begin(sizes), std::end(sizes), next) - 1,
                             std::begin(sizes));
        text_size(next);
    } else if (c.name == "text usual") {
        text_size(100);
    } else if (c.name == "day or night") {
        preferences_.night = !preferences_.night;
        keep_preferences();
    } else if (c.name == "settings") {
        if (place_ == Place::loading || place_ == Place::settings) return true;
        behind_settings_ = place_;
        go(Place::settings);
    } else {
        return false;
    }
    return true;
}

void Program::back() {
    if (question_) {
        question_.reset();
        return;
    }
    if (help_) {
        help_ = false;
        return;
    }
    switch (place_) {
        case Place::loading:
            if (work_ && work_->to_the_end) {
                say("The visit is handed in; this is worked out to its end.");
                return;
            }
            if (work_) {
                work_->progress->abandoned = true;
                const Place from = work_->from;
                abandoned_.push_back(std::move(work_));
                return_to(from);
            }
            return;
        case Place::settings:
            return_to(behind_settings_);
            return;
        case Place::error:
            if (after_trouble_ == Place::debrief || after_trouble_ == Place::replay)
                return_to(Place::debrief);
            else
                open_choose("");
            return;
        case Place::write_up:
            if (!desk_->back()) return_to(Place::job);
            return;
        case Place::replay:
            if (!replay_->back()) return_to(Place::debrief);
            return;
        case Place::job:
            if (desk_->back()) {
                if (desk_->over()) visit_ended();
                return;
            }
            question_ = screens::Question{"Leave this house for now?",
                                          "The attempt is kept. You can go on with it later.",
                                          "Leave",
                                          "Stay",
                                          {"leave"},
                                          false};
            return;
        case Place::debrief:
            home("");
            return;
        case Place::author:
            open_choose("");
            return;
        case Place::choose:
            question_ = screens::Question{"Close Emberpath?",
                                          "Everything is kept.",
                                          "Close",
                                          "Stay",
                                          {"close window"},
                                          false};
            return;
    }
}

bool Program::is_under_way(const std::string& job) const {
    return std::any_of(choose_.jobs.begin(), choose_.jobs.end(),
                       [&](const screens::JobRow& row) { return row.id == job && row.can_resume; });
}

void Program::obey_choose(const kit::Command& c) {
    if (busy()) return;
    if (c.name == "mode") choose_.assessed = c.argument == "assessed";
    if (c.name == "choose") {
        // Enter on the chosen house goes there; the pointer has a button for it.
        const bool again = c.argument == choose_.selected && state_.focus_shown;
        choose_.selected = c.argument;
        if (!again) return;
        from_preview_ = false;
        return begin_job(c.argument, is_under_way(c.argument));
    }
    if (c.name == "preview" && author_) return open_preview();
    if (c.name == "debrief") return debrief_again(c.argument);
    if (c.name == "start" && is_under_way(c.argument)) {
        question_ =
            screens::Question{"Start afresh at this house?",
                              "The attempt that you left stays on disk, but the list goes on "
                              "with the new one.",
                              "Start afresh",
                              "Keep the old one",
                              {"start now", c.argument},
                              false};
        return;
    }
    const bool begins = c.name == "start" || c.name == "start now";
    if (!begins && c.name != "resume") return;
    question_.reset();
    from_preview_ = false;
    begin_job(c.argument.empty() ? choose_.selected : c.argument, c.name == "resume");
}

void Program::obey_job(const kit::Command& c) {
    if (c.name == "leave") {
        question_.reset();
        save_draft();
        host_.leave(*visit_);
        desk_.reset();
        visit_.reset();
        home("Your attempt was kept.");
        return;
    }
    if (c.name == "write-up") {
        go(Place::write_up);
        state_.focus = "form.cause";
        return;
    }
    if (c.name == "hand in now") {
        question_.reset();
        desk_->act("hand in");
    } else {
        desk_->obey(c, state_);
    }
    if (desk_->wants_to_hand_in()) question_ = before_handing_in();
    if (desk_->over() && desk_->in_front() == screens::InFront::nothing) visit_ended();
}

/// Into the field that was written in last; those that say what was read are for it.
void Program::cite(const std::string& reading) {
    using namespace screens::write_up_field;
    auto& editor = state_.editors[written_last_ == proved ? proved : because];
    editor.insert(U" #");
    for (const char digit : reading) editor.type(static_cast<char32_t>(digit), kit::most_citations);
    desk_->read_editors(state_);
    unsaved_for_s_ = 0.0;
}

void Program::obey_write_up(const kit::Command& c) {
    if (c.name == "edited") {
        written_last_ = c.argument;
        desk_->read_editors(state_);
        unsaved_for_s_ = 0.0;
    } else if (c.name == "house") {
        save_draft();
        return_to(Place::job);
    } else if (c.name == "cite") {
        cite(c.argument);
    } else if (c.name == "fill") {
        state_.editors[c.argument].reset(desk_->fill_for(c.argument), kit::most_citations);
        state_.focus = c.argument;
        desk_->read_editors(state_);
        unsaved_for_s_ = 0.0;
    } else if (c.name == "hand in") {
        desk_->read_editors(state_);
        const std::string why = desk_->hand_in_refusal();
        if (!why.empty())
            say("Not yet: " + why + ".");
        else
            question_ = before_handing_in();
    } else if (c.name == "hand in now") {
        question_.reset();
        desk_->hand_in();
        if (desk_->over()) visit_ended();
    } else {
        desk_->obey(c, state_);
    }
}

/// Another act of the debrief, or of the replay, which goes there.
void Program::step_to(std::size_t step) {
    auto& view = explained_.view;
    if (step >= view.steps.size() || step == view.step || busy()) return;
    view.step = step;
    view.status = "Step " + std::to_string(view.step + 1) + " of " +
                  std::to_string(view.steps.size()) + ": " + view.steps[view.step].title + ". " +
                  view.steps[view.step].detail;
    say(view.status);
    if (place_ == Place::replay) replay_step();
}

/// The chart's lower lane: causes, or remedies left.
void Program::show_lane(const kit::Command& c) {
    auto& view = explained_.view;
    view.compact_tab = "steps";
    if (view.stands.empty()) {
        view.status = "Nothing was weighed, so that no cause can be charted.";
    } else {
        view.causes_shown = c.name == "lane" ? c.argument == "causes" : !view.causes_shown;
        view.status = view.causes_shown ? "The chart shows how likely the causes were."
                                        : "The chart shows how many remedies were left.";
    }
    say(view.status);
}

void Program::obey_debrief(const kit::Command& c) {
    auto& view = explained_.view;
    std::size_t step = view.step;
    if (c.name == "step back" && step > 0) --step;
    if (c.name == "step on") ++step;
    if (c.name == "mark back") step = screens::marked_step(view, false);
    if (c.name == "mark on") step = screens::marked_step(view, true);
    if (c.name == "step at") step = screens::step_near(frame_, view, state_.pointer);
    if (c.name == "step of reading")
        for (std::size_t i = 0; i < view.steps.size(); ++i)
            if (std::to_string(view.steps[i].balloon) == c.argument) step = i;
    if (step != view.step) return step_to(step);
    if (place_ == Place::replay) {
        if (replay_) replay_->obey(c, state_);
        return;
    }
    if (c.name == "tab") view.compact_tab = c.argument;
    if (c.name == "lane" || c.name == "other lane") show_lane(c);
    if (c.name == "table") {
        view.compact_tab = "table";
        state_.focus = "table.list";
    }
    if (c.name == "other remedies" && !view.columns.empty())
        view.first_column = (view.first_column + 1) % view.columns.size();
    if (c.name == "replay" && !busy()) replay_step();
    if (c.name == "save report") view.status = host_.save_report();
    if (c.name == "another") home("");
}

void Program::obey_author(const kit::Command& c) {
    if (c.name == "tab") previewed_.view.tab = c.argument;
    if (c.name == "show") previewed_.view.shown = c.argument;
    if (c.name == "look again" && !busy()) preview();
    if (c.name == "play" && !busy() && !previewed_.job.empty()) {
        from_preview_ = true;
        begin_job(previewed_.job, false);
    }
}

void Program::obey_settings(const kit::Command& c) {
    settings_problem_.clear();
    const bool on = c.argument == "on";
    if (c.name == "text size") return text_size(std::stoi("0" + c.argument));
    if (c.name == "tab") settings_tab_ = c.argument;
    if (c.name == "theme") preferences_.night = c.argument == "night";
    if (c.name == "pressure unit") preferences_.kilopascal = c.argument == "kPa";
    if (c.name == "reduce motion") preferences_.reduce_motion = on;
    if (c.name == "sound") preferences_.sound = on;
    if (c.name == "character keys") {
        preferences_.character_keys = on;
        keys_.use_characters(on);
    }
    if (c.name == "change key") changing_key_ = c.argument;
    if (c.name == "reset keys")
        question_ = screens::Question{"Give every key its first meaning?",
                                      "Keys that you changed are forgotten.",
                                      "All as at first",
                                      "Keep mine",
                                      {"reset keys now"},
                                      false};
    if (c.name == "reset keys now") {
        question_.reset();
        preferences_.keys.clear();
        keys_ = key_map_for(preferences_).keys;
        say("All keys are as they were at first.");
    }
    keep_preferences();
}

}  // namespace emberpath::desktop
