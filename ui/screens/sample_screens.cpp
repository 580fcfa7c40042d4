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
    view.site.heater = {.cover_off = false};
    all.push_back(job("heater-closed", view));
    all.push_back(job("arrival", sample_arrival()));
    all.push_back(job("cottage", sample_cottage()));
    view = sample_job();
    view.rail.paused = true;
    all.push_back(job("paused", view));
    all.push_back(job("keys", sample_job(), InFront::keys));
    all.push_back(job("go-to", sample_job(), InFront::go_to));
    all.push_back(job("waits", sample_job(), InFront::waits));
    all.push_back(job("job-card", sample_job(), InFront::job_card));
    for (const char* tab : {"bench", "panel", "evidence", "causes", "recorder", "card"}) {
        view = sample_job();
        view.compact_tab = tab;
        all.push_back(job(std::string("tab-") + tab, view));
    }
}

}  // namespace

const std::vector<NamedScreen>& sample_screens() {
    static const std::vector<NamedScreen> all = [] {
        std::vector<NamedScreen> screens;
        add_job_screens(screens);
        return screens;
    }();
    return all;
}

}  // namespace emberpath::screens
