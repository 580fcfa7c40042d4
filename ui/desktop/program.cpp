#include "ui/desktop/program.hpp"

#include <algorithm>
#include <chrono>

namespace emberpath::desktop {

namespace {

constexpr double loading_after_s = 0.3, draft_pause_s = 0.6;

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

template <class Result>
void Program::start_work(std::string title, std::string words,
                         std::function<Result(Progress&)> work,
                         std::function<void(Result&)> finish) {
    auto made = std::make_unique<Work>();
    made->title = std::move(title);
    made->words = std::move(words);
    made->from = place_ == Place::error ? after_trouble_ : place_;
    made->progress = std::make_shared<Progress>();
    auto result = std::make_shared<Result>();
    made->done = std::async(
        std::launch::async,
        [result, work = std::move(work), progress = made->progress] { *result = work(*progress); });
    if (work_) {  // only quiet work can be under way still
        work_->progress->abandoned = true;
        abandoned_.push_back(std::move(work_));
    }
    made->finish = [result, finish = std::move(finish)] { finish(*result); };
    work_ = std::move(made);
}

void Program::settle_work(double wall_s) {
    std::erase_if(abandoned_, [](const auto& work) { return is_ready(work->done); });
    if (!work_) return;
    work_->waited_s += wall_s;
    if (!is_ready(work_->done)) {
        if (!work_->quiet && work_->waited_s >= loading_after_s) place_ = Place::loading;
        return;
    }
    const auto done = std::move(work_);
    if (place_ == Place::loading) place_ = done->from;
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
            if (!over && desk_->over()) host_.keep_draft(desk_->draft());
        });
    if (unsaved_for_s_ >= 0.0 && (unsaved_for_s_ += wall_s) >= draft_pause_s) save_draft();
}

void Program::save_draft() {
    if (desk_) host_.keep_draft(desk_->draft());
    unsaved_for_s_ = -1.0;
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
    return {work_->title, work_->words, work_->progress->share.load(), !work_->to_the_end};
}

void Program::go(Place place) {
    if (place_ == place) return;
    place_ = place;
    help_ = false;
    state_.focus.clear();
    state_.scroll.clear();
    state_.prefix.clear();
    // What was in front stays behind with its place: its focus must not come back over the new one.
    state_.in_front.clear();
    state_.behind.clear();
}

void Program::open_choose(std::string notice) {
    choose_.jobs = host_.jobs();
    choose_.notice = std::move(notice);
    const auto known = std::any_of(choose_.jobs.begin(), choose_.jobs.end(),
                                   [&](const auto& job) { return job.id == choose_.selected; });
    if (!known && !choose_.jobs.empty()) choose_.selected = choose_.jobs.front().id;
    go(Place::choose);
    state_.focus = "start.go";
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

// --- a visit ---

void Program::begin_job(const std::string& job, bool resume) {
    if (std::any_of(abandoned_.begin(), abandoned_.end(),
                    [](const auto& work) { return !work->quiet; })) {
        say("One moment: what was stopped is being put away.");
        return;
    }
    const bool assessed = choose_.assessed;
    start_work<Begun>(
        resume ? "Taking the attempt up again" : "Settling the house",
        resume ? "Doing again what you had done." : "Its last half hour before you arrive.",
        [this, job, resume, assessed](Progress& progress) {
            return resume ? host_.resume(job, progress) : host_.begin(job, assessed, progress);
        },
        [this](Begun& begun) {
            enter(std::move(begun), false);
            // Handed in, and not weighed before the program ended.
            if (place_ == Place::job && desk_->over()) visit_ended();
        });
}

void Program::enter(Begun begun, bool replayed) {
    if (!begun.trouble.title.empty()) return show(std::move(begun.trouble));
    auto& visit = replayed ? replayed_visit_ : visit_;
    auto& desk = replayed ? replay_ : desk_;
    std::unique_ptr<JobDesk> before = std::move(desk);
    const auto visit_before = std::move(visit);  // the desk before still looks at it
    visit = std::move(begun.visit);
    desk = std::make_unique<JobDesk>(*visit, preferences_,
                                     [this](const std::string& words) { say(words); });
    desk->set_draft(std::move(begun.draft));
    if (replayed) return show_replay(std::move(before));
    state_ = {};
    go(Place::job);
    state_.focus = "actions.1";
    desk->welcome(begun.resumed);
}

/// From act to act the eye stays where it was.
void Program::show_replay(std::unique_ptr<JobDesk> before) {
    const bool going_on = place_ == Place::replay && before;
    if (going_on) {
        replay_->look_as(*before);
    } else {
        state_ = {};
        go(Place::replay);
        state_.focus = "replay.on";
    }
    const auto key = [&](const char* command) { return keys_.caps(command, "replay"); };
    replay_->only_look("Replay: the house as it stood then, to look at. " + key("step back") +
                           " and " + key("step on") + " go from step to step, " + key("back") +
                           " goes back.",
                       replayed_moment(), explained_.view.status);
}

screens::ReplayView Program::replayed_moment() const {
    const auto& view = explained_.view;
    screens::ReplayView moment;
    moment.where =
        "step " + std::to_string(view.step + 1) + " of " + std::to_string(view.steps.size());
    if (view.step < view.steps.size()) moment.title = view.steps[view.step].title;
    moment.before = view.step > 0;
    moment.after = view.step + 1 < view.steps.size();
    moment.mark_before = screens::marked_step(view, false) != view.step;
    moment.mark_after = screens::marked_step(view, true) != view.step;
    return moment;
}

void Program::visit_ended() {
    if (busy()) return;
    save_draft();
    explain();
}

void Program::explain() {
    start_work<Explained>(
        "Weighing the evidence", "Your visit is replayed on houses with every other cause.",
        [this](Progress& progress) { return host_.explain(progress); },
        [this](Explained& explained) {
            desk_.reset();
            visit_.reset();
            if (!explained.trouble.title.empty()) return show(std::move(explained.trouble));
            if (!explained.shown)
                return open_choose("Handed in. The debrief is for you and your assessor.");
            explained_ = std::move(explained);
            state_ = {};
            go(Place::debrief);
            say(explained_.view.outcome + ". " + explained_.view.verdict + ".");
        });
    work_->to_the_end = true;
}

void Program::replay_step() {
    const std::size_t acts = explained_.view.step + 1;
    start_work<Begun>(
        "Going back in time", "The visit up to this step.",
        [this, acts](Progress& progress) { return host_.replay(acts, progress); },
        [this](Begun& begun) { enter(std::move(begun), true); });
}

void Program::preview() {
    start_work<Previewed>(
        "Working the job out", "Every reading, beside the sound house.",
        [this](Progress& progress) { return host_.preview(progress); },
        [this](Previewed& previewed) {
            if (!previewed.trouble.title.empty()) return show(std::move(previewed.trouble));
            const std::string tab = previewed_.view.tab;
            previewed_ = std::move(previewed);
            previewed_.view.tab = tab;
            state_ = {};
            go(Place::author);
            solve();
        });
}

/// While the author reads the readings already.
void Program::solve() {
    start_work<Solution>(
        "", "", [this](Progress& progress) { return host_.solve(progress); },
        [this](Solution& solution) {
            if (!solution.complete) return;
            add_solution(previewed_.view, solution);
            previewed_.view.status =
                "Every other cause was simulated too. Save the file, and it is "
                "looked at again.";
            changed_ = true;
            if (place_ == Place::author) say(previewed_.view.status);
        });
    work_->quiet = true;
}

/// The author saved: looked at again without being asked.
void Program::watch_files(double wall_s) {
    const bool here = place_ == Place::author || (place_ == Place::error && author_);
    if (!here || busy()) return;
    constexpr double every_s = 0.5;
    unwatched_for_s_ += wall_s;
    if (unwatched_for_s_ < every_s) return;
    unwatched_for_s_ = 0.0;
    if (!host_.job_file_changed()) return;
    say("The file was changed.");
    preview();
}

// --- settings ---

void Program::text_size(int percent) {
    preferences_.text_percent = percent;
    host_.keep(preferences_);
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
