#include "ui/screens/sample_screens.hpp"

namespace emberpath::screens {

namespace {

NamedScreen job(std::string name, JobView view, InFront front = InFront::nothing) {
    return {std::move(name), [view = std::move(view), front](const Setting& s) {
                return job_screen(s, view, front);
            }};
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
    DebriefView debrief = sample_debrief();
    all.push_back(other("debrief", debrief_screen, debrief));
    for (const char* tab : {"steps", "table"}) {
        debrief.compact_tab = tab;
        all.push_back(other(std::string("debrief-") + tab, debrief_screen, debrief));
    }
    AuthorView author = sample_author();
    all.push_back(other("author", author_screen, author));
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
}

}  // namespace

const std::vector<NamedScreen>& sample_screens() {
    static const std::vector<NamedScreen> all = [] {
        std::vector<NamedScreen> screens;
        add_job_screens(screens);
        add_other_screens(screens);
        return screens;
    }();
    return all;
}

}  // namespace emberpath::screens
