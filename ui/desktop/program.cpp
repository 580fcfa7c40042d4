#include "ui/desktop/program.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace emberpath::desktop {

namespace {

constexpr double loading_after_s = 0.3, draft_pause_s = 0.6;
constexpr double clock_pause_s = 2.0;  // between two marks of how far the clock has run

/// Somebody who comes back wants to go on; whoever is new begins at the top.
std::string first_choice(const std::vector<screens::JobRow>& jobs) {
    const auto left =
        std::find_if(jobs.begin(), jobs.end(), [](const auto& job) { return job.can_resume; });
    return left == jobs.end() ? jobs.front().id : left->id;
}

bool is_ready(const std::future<void>& future) {
    return future.wait_for(std::chrono::seconds(0)) == std::future_status::ready;
}

}  // namespace

Program::Program(Host& host, const kit::TextMetrics& metrics, kit::Clipboard& clipboard,
                 const Preferences& preferences, bool author)
    : host_(host),
      metrics_(metrics),
      clipboard_(clipboard),
      preferences_(preferences),
      keys_(screens::key_table()),
      author_(author) {
    if (preferences_.text_percent == 0) preferences_.text_percent = 100;
    auto [keys, problems] = key_map_for(preferences_);
    keys_ = std::move(keys);
    for (const std::string& problem : problems) say("A key of the settings file: " + problem + ".");
    if (!problems.empty()) settings_problem_ = problems.front();
    open_choose(problems.empty() ? "" : "A key could not be set: " + problems.front() + ".");
    if (author_) preview();
}

Program::~Program() {
    if (work_) abandoned_.push_back(std::move(work_));
    for (auto& work : abandoned_) {
        work->progress->abandoned = true;
        if (work->done.valid()) work->done.wait();
    }
}

// --- work that takes time ---

void Program::settle_work(double wall_s) {
    std::erase_if(abandoned_, [](const auto& work) { return is_ready(work->done); });
    if (!work_) return;
    work_->waited_s += wall_s;
    if (!is_ready(work_->done)) {
        if (work_->quiet && work_->progress->share > previewed_.view.simulated) {
            previewed_.view.simulated = work_->progress->share;
            changed_ = true;
        }
        if (!work_->quiet && work_->waited_s >= loading_after_s && place_ != Place::loading) {
            note_how_left();
            place_ = Place::loading;
        }
        return;
    }
    const auto done = std::move(work_);
    if (place_ == Place::loading) {
        place_ = done->from;
        take_up_again();
    }
    done->done.get();
    done->finish();
}

/// A record that can no longer be written ends the visit, not the program: what is on disk stays.
void Program::guarded(const std::function<void()>& doing) {
    try {
        doing();
    } catch (const std::exception& problem) {
        lose_visit(problem.what());
    }
}

void Program::lose_visit(const std::string& why) {
    desk_.reset();
    visit_.reset();
    question_.reset();
    Trouble trouble;
    trouble.title = "The attempt cannot go on";
    trouble.right = why;
    trouble.safe =
        "All acts up to the last one that was written are kept. Mend what is said above, then "
        "go on from the list.";
    trouble.ways = {{"Back", {"back"}},
                    {"Copy details", {"copy details"}},
                    {"Close the program", {"close window"}}};
    place_ = Place::choose;
    show(std::move(trouble));
}

void Program::elapse(double wall_s) {
    settle_work(wall_s);
    watch_files(wall_s);
    if (desk_ && place_ == Place::job)
        guarded([&] {
            const bool over = desk_->over();
            desk_->elapse(wall_s);
            if (!over && desk_->over()) save_draft();
        });
    if (desk_ && visit_ && place_ == Place::job && visit_->attempt().tick() != kept_tick_ &&
        (clock_unsaved_s_ += wall_s) >= clock_pause_s)
        save_draft();
    if (unsaved_for_s_ >= 0.0 && (unsaved_for_s_ += wall_s) >= draft_pause_s) save_draft();
}

void Program::save_draft() {
    unsaved_for_s_ = -1.0;
    clock_unsaved_s_ = 0.0;
    if (!desk_) return;
    if (visit_) kept_tick_ = visit_->attempt().tick();
    const std::string why = host_.keep_draft(desk_->draft());
    desk_->draft_is_lost(why);
    if (!why.empty()) say("The write-up is not kept: " + why);
}

kit::SoundScene Program::heard() const {
    return desk_ && place_ == Place::job && preferences_.sound ? desk_->heard() : kit::SoundScene{};
}

bool Program::moves() const {
    return busy() || changed_ || (desk_ && place_ == Place::job && desk_->runs());
}

bool Program::wants_key_repeat() const {
    return kit::wants_key_repeat(frame_, state_);
}

// --- screens ---

kit::Frame Program::frame(kit::Size size) {
    size_ = size;
    changed_ = false;
    frame_ = draw(size);
    const std::string before = state_.focus;
    kit::settle(frame_, state_);
    if (state_.focus != before) {
        frame_ = draw(size);
        kit::settle(frame_, state_);
    }
    if (place_ == Place::job && desk_) desk_->looked_at(frame_.tree, state_.focus);
    if (place_ == Place::replay && replay_) replay_->looked_at(frame_.tree, state_.focus);
    return frame_;
}

kit::Frame Program::draw(kit::Size size) {
    screens::Setting setting{metrics_, state_, keys_, size};
    if (size.w < screens::least_size.w || size.h < screens::least_size.h)
        return screens::too_small_screen(setting);
    setting.help = help_;
    setting.question = question_ ? &*question_ : nullptr;
    switch (place_) {
        case Place::job:
            return screens::job_screen(setting, desk_->view(state_), desk_->in_front());
        case Place::replay:
            return screens::job_screen(setting, replay_->view(state_), replay_->in_front());
        case Place::write_up:
            return screens::write_up_screen(setting, desk_->write_up(state_));
        case Place::debrief:
            return screens::debrief_screen(setting, explained_.view);
        case Place::author:
            return screens::author_screen(setting, previewed_.view);
        case Place::settings:
            return screens::settings_screen(setting, settings_view());
        case Place::loading:
            return screens::loading_screen(setting, loading_view());
        case Place::error:
            return screens::error_screen(setting, trouble_);
        case Place::choose:
            break;
    }
    return screens::choose_screen(setting, choose_);
}

screens::LoadingView Program::loading_view() const {
    if (!work_) return {};
    constexpr double worth_saying_s = 3.0;
    const std::string since = work_->waited_s < worth_saying_s
                                  ? ""
                                  : std::to_string(static_cast<int>(work_->waited_s)) + " s so far";
    const double share = work_->progress->share, minutes = work_->progress->minutes;
    const bool counts = share >= 0.0 && minutes > 0.0 && !work_->counted.empty();
    const auto whole = [](double number) { return std::to_string(std::lround(number)); };
    const std::string words =
        counts ? whole(std::floor(share * minutes)) + " of " + whole(minutes) + " " + work_->counted
               : work_->words;
    return {work_->title, words, share, !work_->to_the_end, since};
}

/// With what was in front of it put away.
void Program::note_how_left() {
    left_[place_] = {state_.in_front.empty() ? state_.focus : state_.behind, state_.focus_shown,
                     state_.scroll};
}

void Program::go(Place place) {
    if (place_ == place) return;
    note_how_left();
    place_ = place;
    help_ = false;
    state_.focus.clear();
    state_.scroll.clear();
    state_.prefix.clear();
    // What was in front stays behind with its place: its focus must not come back over the new one.
    state_.in_front.clear();
    state_.behind.clear();
}

/// Goes back to where somebody was: the keyboard and the lists are as they were left.
void Program::return_to(Place place) {
    go(place);
    take_up_again();
}

void Program::take_up_again() {
    const auto was = left_.find(place_);
    if (was == left_.end()) return;
    state_.focus = was->second.focus;
    state_.focus_shown = was->second.focus_shown;
    state_.scroll = was->second.scroll;
}

void Program::open_choose(std::string notice) {
    Listed listed = host_.jobs();
    choose_.jobs = std::move(listed.jobs);
    choose_.notice = std::move(notice);
    choose_.author = author_;
    const auto known = std::any_of(choose_.jobs.begin(), choose_.jobs.end(),
                                   [&](const auto& job) { return job.id == choose_.selected; });
    if (!known && !choose_.jobs.empty()) choose_.selected = first_choice(choose_.jobs);
    go(Place::choose);
    state_.focus = "start.go";
    state_.scroll[screens::list_of_jobs] = screens::scroll_to_selected(choose_);
    if (!listed.trouble.title.empty()) show(std::move(listed.trouble));
}

/// Where the visit was begun: the list, or the author's preview.
void Program::home(std::string notice) {
    if (!from_preview_) return open_choose(std::move(notice));
    if (!notice.empty()) previewed_.view.status = std::move(notice);
    open_preview();
}

/// As it was, if it can be shown; a file that was changed meanwhile is looked at again by itself.
void Program::open_preview() {
    if (previewed_.job.empty()) return preview();
    go(Place::author);
    state_ = {};
    if (!solved_) solve();
}

void Program::show(Trouble trouble) {
    trouble_ = std::move(trouble);
    after_trouble_ = place_ == Place::loading ? Place::choose : place_;
    go(Place::error);
    state_.focus = "error.way.1";
    say(trouble_.title + ". " + trouble_.right);
}

void Program::say(const std::string& sentence) {
    host_.tell(sentence);
}

// --- settings ---

void Program::keep_preferences() {
    const std::string why = host_.keep(preferences_);
    if (why.empty()) return;
    settings_problem_ = "Not kept for the next time: " + why;
    say(settings_problem_);
}

void Program::text_size(int percent) {
    preferences_.text_percent = percent;
    keep_preferences();
    say("Text size " + std::to_string(percent) + " %.");
}

screens::SettingsView Program::settings_view() const {
    screens::SettingsView view;
    view.text_percent = preferences_.text_percent;
    view.night = preferences_.night;
    view.kilopascal = preferences_.kilopascal;
    view.reduce_motion = preferences_.reduce_motion;
    view.sound = preferences_.sound;
    view.character_keys = preferences_.character_keys;
    for (const kit::Binding& b : keys_.all())
        view.keys.push_back({b.id, b.chord, b.words, b.fixed});
    view.changing = changing_key_;
    view.compact_tab = settings_tab_;
    view.problem = settings_problem_;
    return view;
}

}  // namespace emberpath::desktop
