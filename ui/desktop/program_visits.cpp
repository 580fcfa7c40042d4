// Work that takes time, and where it leads: visits, debriefs, replays, previews.

#include <algorithm>

#include "ui/desktop/program_work.hpp"

namespace emberpath::desktop {

void Program::begin_job(const std::string& job, bool resume) {
    if (std::any_of(abandoned_.begin(), abandoned_.end(),
                    [](const auto& work) { return !work->quiet; })) {
        say("One moment: what was stopped is being put away.");
        return;
    }
    const bool assessed = choose_.assessed;
    start_work<Begun>(
        resume ? "Taking the attempt up again" : "Settling the house",
        resume ? "Doing again what you had done." : "What happened in the house before you came.",
        [this, job, resume, assessed](Progress& progress) {
            return resume ? host_.resume(job, progress) : host_.begin(job, assessed, progress);
        },
        [this, job, resume](Begun& begun) {
            auto& ways = begun.trouble.ways;
            if (resume && !ways.empty())
                ways.insert(ways.begin() + 1, {"Start afresh", {"start now", job}});
            enter(std::move(begun), false);
            // Handed in, and not weighed before the program ended.
            if (place_ == Place::job && desk_->over()) visit_ended();
        });
    work_->counted = "minutes before you arrive.";
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
    go(Place::job);
    state_ = {};
    state_.focus = "actions.1";
    desk->welcome(begun.resumed);
}

/// From act to act the eye stays where it was.
void Program::show_replay(std::unique_ptr<JobDesk> before) {
    const bool going_on = place_ == Place::replay && before;
    if (going_on) {
        replay_->look_as(*before);
    } else {
        go(Place::replay);
        state_ = {};
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
                return home("Handed in. The debrief is for you and your assessor.");
            show_debrief(explained);
        });
    work_->to_the_end = true;
    work_->counted = "minutes before you came, in houses with every other cause.";
}

void Program::show_debrief(Explained& explained) {
    explained_ = std::move(explained);
    go(Place::debrief);
    state_ = {};
    const std::string& outcome = explained_.view.outcome;
    say(outcome + (outcome.ends_with('.') ? " " : ". ") + explained_.view.verdict + ".");
}

void Program::debrief_again(const std::string& job) {
    from_preview_ = false;
    start_work<Explained>(
        "Weighing the evidence", "Your visit is replayed on houses with every other cause.",
        [this, job](Progress& progress) { return host_.reopen(job, progress); },
        [this](Explained& explained) {
            if (!explained.trouble.title.empty()) return show(std::move(explained.trouble));
            show_debrief(explained);
        });
    work_->counted = "minutes before you came, in houses with every other cause.";
}

void Program::replay_step() {
    const std::size_t acts = explained_.view.step + 1;
    start_work<Begun>(
        "Going back in time", "The visit up to this step.",
        [this, acts](Progress& progress) { return host_.replay(acts, progress); },
        [this](Begun& begun) { enter(std::move(begun), true); });
    work_->counted = "minutes up to this step.";
}

void Program::preview() {
    start_work<Previewed>(
        "Working the job out", "Every reading, beside the sound house.",
        [this](Progress& progress) { return host_.preview(progress); },
        [this](Previewed& previewed) {
            if (!previewed.trouble.title.empty()) {
                previewed_.job.clear();  // what was shown before is no longer true
                return show(std::move(previewed.trouble));
            }
            solved_ = false;
            previewed.view.tab = previewed_.view.tab;
            previewed.view.shown = previewed_.view.shown;
            previewed_ = std::move(previewed);
            go(Place::author);
            state_ = {};
            solve();
        });
}

/// While the author reads the readings already.
void Program::solve() {
    start_work<Solution>(
        "", "", [this](Progress& progress) { return host_.solve(progress); },
        [this](Solution& solution) {
            previewed_.view.simulated = -1.0;
            changed_ = true;
            if (!solution.complete) return;
            add_solution(previewed_.view, solution);
            solved_ = true;
            previewed_.view.status =
                "Every other cause was simulated too. Save the file, and it is "
                "looked at again.";
            if (place_ == Place::author) say(previewed_.view.status);
        });
    work_->quiet = true;
    previewed_.view.simulated = 0.0;
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

}  // namespace emberpath::desktop
