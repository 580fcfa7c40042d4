#include "ui/screens/sample_screens.hpp"

#include "ui/screens/overlays.hpp"

namespace emberpath::screens {

namespace {

NamedScreen job(std::string name, JobView view, InFront front = InFront::nothing) {
    return {std::move(name), [view = std::move(view), front](const Setting& s) {
                return job_screen(s, view, front);
            }};
}

/// Going through a visit again: looking only.
JobView replayed(JobView view) {
    view.rail.paused = view.rail.replay = true;
    view.replay = ReplayView{.where = "step 9 of 16",
                             .title = "Read manometer",
                             .before = true,
                             .after = true,
                             .mark_before = true};
    view.bench.only_look = true;
    view.bench.in_hand.keys.clear();
    view.record_refusal = "only in the house itself";
    for (ActionView& action : view.selection.actions) action.needs = view.record_refusal;
    return view;
}

void add_replay_screens(std::vector<NamedScreen>& all) {
    all.push_back(job("replay", replayed(sample_job())));
    JobView view = replayed(sample_arrival());
    view.replay->where = "step 1 of 16";
    view.replay->before = view.replay->mark_before = false;
    all.push_back(job("replay-first", view));
    view = replayed(sample_job());
    view.compact_tab = "bench";
    all.push_back(job("replay-bench", view));
    all.push_back(job("replay-keys", replayed(sample_job()), InFront::keys));
}

void add_job_screens(std::vector<NamedScreen>& all) {
    all.push_back(job("job", sample_job()));
    JobView view = sample_job();
    view.sheet = SheetShown::heater;
    all.push_back(job("heater", view));
    view = sample_arrival();
    view.sheet = SheetShown::heater;
    view.site.heater.flame = FlameView{.lit = true, .height = 0.7, .unrest = 0.6, .yellow = true};
    all.push_back(job("heater-closed", view));
    all.push_back(job("arrival", sample_arrival()));
    all.push_back(job("cottage", sample_cottage()));
    view = sample_job();
    view.rail.paused = true;
    all.push_back(job("paused", view));
    view.rail.time_is_up = true;
    view.rail.on_site = "of 90 min";
    all.push_back(job("time-is-up", view));
    all.push_back(job("keys", sample_job(), InFront::keys));
    all.push_back(job("go-to", sample_job(), InFront::go_to));
    all.push_back(job("waits", sample_job(), InFront::waits));
    all.push_back(job("job-card", sample_job(), InFront::job_card));
    all.push_back(job("notice", sample_job(), InFront::notice));
    view = sample_arrival();
    view.compact_tab = "bench";
    all.push_back(job("empty-hands", view));
    view = sample_job();
    view.found.clear();
    all.push_back(job("go-to-nothing", view, InFront::go_to));
    const auto said = view.card.said;
    for (int i = 0; i < 6; ++i)
        view.card.said.insert(view.card.said.end(), said.begin(), said.end());
    all.push_back(job("job-card-long", view, InFront::job_card));
    for (const char* tab : {"bench", "panel", "evidence", "causes", "recorder", "card"}) {
        view = sample_job();
        view.compact_tab = tab;
        all.push_back(job(std::string("tab-") + tab, view));
    }
}

template <class View>
NamedScreen other(std::string name, kit::Frame (*draw)(const Setting&, const View&), View view) {
    return {std::move(name),
            [draw, view = std::move(view)](const Setting& s) { return draw(s, view); }};
}

void add_other_screens(std::vector<NamedScreen>& all) {
    all.push_back(other("choose", choose_screen, sample_choose()));
    all.push_back(other("write-up", write_up_screen, sample_write_up()));
    WriteUpView choosing = sample_write_up();
    choosing.choosing_cause = true;
    choosing.hint_is_warning = false;
    choosing.hand_in_refusal = "no cause chosen";
    all.push_back(other("write-up-cause", write_up_screen, choosing));
    WriteUpView saying = sample_write_up();
    saying.choosing_confidence = true;
    all.push_back(other("write-up-confidence", write_up_screen, saying));
    for (int i = 1; i <= 60; ++i) {  // as many as a real house can have
        const std::string n = std::to_string(i);
        choosing.held.push_back({"further_" + n, "Further cause " + n, Belief::held, {}});
    }
    all.push_back(other("write-up-many-causes", write_up_screen, choosing));
    DebriefView debrief = sample_debrief();
    all.push_back(other("debrief", debrief_screen, debrief));
    for (const char* tab : {"steps", "table"}) {
        debrief.compact_tab = tab;
        all.push_back(other(std::string("debrief-") + tab, debrief_screen, debrief));
    }
    debrief.compact_tab = "steps";
    debrief.causes_shown = false;
    all.push_back(other("debrief-left", debrief_screen, debrief));
    AuthorView author = sample_author();
    all.push_back(other("author", author_screen, author));
    author.shown = "loop";
    all.push_back(other("author-loop", author_screen, author));
    author.shown = "readings";
    author.simulated = 0.4;
    all.push_back(other("author-at-work", author_screen, author));
    author.simulated = -1.0;
    for (const char* tab : {"brief", "house", "check"}) {
        author.tab = tab;
        all.push_back(other(std::string("author-") + tab, author_screen, author));
    }
    SettingsView settings = sample_settings();
    all.push_back(other("settings", settings_screen, settings));
    settings.compact_tab = "keys";
    settings.problem = "W already means: wait again";
    all.push_back(other("settings-keys", settings_screen, settings));
    all.push_back(other("loading", loading_screen, sample_loading()));
    all.push_back(other("error", error_screen, sample_error()));
    ErrorView plain = sample_error();
    plain.line.clear();
    all.push_back(other("error-plain", error_screen, plain));
    all.push_back({"too-small", too_small_screen});
    all.push_back({"question", [](const Setting& s) {
                       static const Question leave{
                           "Leave this house for now?",
                           "The attempt is kept. You can go on with it later.",
                           "Leave",
                           "Stay",
                           {"leave"},
                           true};
                       Setting asked = s;
                       asked.question = &leave;
                       return job_screen(asked, sample_job());
                   }});
}

}  // namespace

const std::vector<NamedScreen>& sample_screens() {
    static const std::vector<NamedScreen> all = [] {
        std::vector<NamedScreen> screens;
        add_job_screens(screens);
        add_replay_screens(screens);
        add_other_screens(screens);
        return screens;
    }();
    return all;
}

}  // namespace emberpath::screens
