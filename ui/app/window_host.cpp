#include "ui/app/window_host.hpp"

#include <algorithm>

#include "ui/app/program_log.hpp"
#include "ui/app/safe_file.hpp"
#include "ui/app/tick_count.hpp"
#include "ui/app/weighing.hpp"
#include "ui/app/window_list.hpp"
#include "ui/debrief/report.hpp"
#include "ui/desktop/author_fill.hpp"
#include "ui/desktop/debrief_fill.hpp"

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t usual_seed = 1;
constexpr double tick_s = 0.1;

/// Of the time before the arrival; what is left after it cannot be counted.
Told telling(desktop::Progress& progress) {
    return [&progress](double share) { progress.share = share < 1.0 ? share : -1.0; };
}

/// Runs a piece of work; what goes wrong becomes words, never an exception across threads.
template <class Result, class WorkIt>
Result guarded(const std::string& title, WorkIt work) {
    try {
        return work();
    } catch (const std::exception& problem) {
        Result result;
        result.trouble = trouble_of(title, problem.what());
        return result;
    }
}

/// Nothing is done in a house that is only looked at; its record is somebody else's.
class ReplayedVisit final : public views::Visit {
  public:
    ReplayedVisit(const worksite::Job& job, std::unique_ptr<worksite::Attempt> attempt,
                  std::unique_ptr<worksite::Follower> follower)
        : follower_(std::move(follower)),
          attempt_(std::move(attempt)),
          card_(views::job_card(job, attempt_->mode())),
          suspects_(views::suspects(job)) {}
    views::Done perform(std::string_view) override { return {{}, "This is a replay."}; }
    void run(std::int64_t) override {}
    [[nodiscard]] const worksite::Attempt& attempt() const override { return *attempt_; }
    [[nodiscard]] const views::JobCard& card() const override { return card_; }
    [[nodiscard]] const std::vector<views::Suspect>& suspects() const override { return suspects_; }

  private:
    std::unique_ptr<worksite::Follower> follower_;  // outlives the attempt
    std::unique_ptr<worksite::Attempt> attempt_;
    views::JobCard card_;
    std::vector<views::Suspect> suspects_;
};

/// The first problem of a scenario with its place; the others are counted.
desktop::Trouble trouble_in(const std::vector<diagnostics::Diagnostic>& problems,
                            const kit::Command& again) {
    const auto& first = problems.front();
    desktop::Trouble trouble = trouble_of("This job file cannot be opened", "");
    trouble.place =
        fs::path(first.file).filename().string() + ", line " + std::to_string(first.line);
    trouble.line_number = std::to_string(first.line);
    trouble.line = first.source_line;
    trouble.from = first.column > 0 ? static_cast<std::size_t>(first.column) - 1 : 0;
    trouble.length = 1;
    trouble.right = first.found + ". Expected " + first.expected + ".";
    if (problems.size() > 1)
        trouble.safe = std::to_string(problems.size() - 1) +
                       " more problems; emberpath check lists them all. Nothing was changed.";
    trouble.ways = {{"Look again", again},
                    {"Choose a job instead", {"back"}},
                    {"Copy details", {"copy details"}}};
    return trouble;
}

}  // namespace

desktop::Trouble trouble_of(const std::string& title, const std::string& text) {
    desktop::Trouble trouble;
    trouble.title = title;
    trouble.right = text;
    while (!trouble.right.empty() && trouble.right.back() == '\n') trouble.right.pop_back();
    trouble.ways = {{"Back", {"back"}},
                    {"Copy details", {"copy details"}},
                    {"Close the program", {"close window"}}};
    trouble.safe = "Nothing was changed. Your attempts are safe.";
    return trouble;
}

WindowHost::WindowHost(const Context& context, fs::path author_file)
    : context_(context), author_file_(std::move(author_file)) {
    std::error_code ignored;
    fs::create_directories(context_.places.state, ignored);
    told_.open(told_file(), std::ios::trunc);
}

fs::path WindowHost::told_file() const {
    return context_.places.state / "spoken.txt";
}

void WindowHost::tell(const std::string& sentence) {
    std::error_code ignored;
    if (!fs::exists(told_file(), ignored)) {  // taken away while the program runs: begun anew
        fs::create_directories(context_.places.state, ignored);
        told_ = std::ofstream(told_file(), std::ios::trunc);
    }
    told_ << sentence << "\n" << std::flush;
}

desktop::Listed WindowHost::jobs() {
    try {
        return {job_rows(context_), {}};
    } catch (const std::exception& problem) {
        desktop::Trouble trouble = trouble_of("There are no jobs to choose from", problem.what());
        trouble.ways = {{"Look again", {"look again"}},
                        {"Copy details", {"copy details"}},
                        {"Close the program", {"close window"}}};
        return {{}, std::move(trouble)};
    }
}

desktop::Begun WindowHost::begin(const std::string& job, bool assessed,
                                 desktop::Progress& progress) {
    return guarded<desktop::Begun>("This job cannot be opened", [&] {
        Now now{find_job(context_, job), {}, {}, nullptr};
        now.loaded = scenario::load(now.job.file);
        if (!now.loaded.good()) {
            desktop::Begun refused;
            refused.trouble = trouble_in(now.loaded.problems, {"start now", job});
            return refused;
        }
        records::Header header;
        header.job = now.job.name;
        header.scenario_hash = now.loaded.hash;
        header.seed = usual_seed;
        header.mode = assessed ? worksite::Mode::assessed : worksite::Mode::coached;
        auto count = std::make_unique<TickCount>(progress, now.loaded.job.site.arrival_s);
        auto attempt = std::make_unique<worksite::Attempt>(now.loaded.job, header.seed, header.mode,
                                                           count.get());
        count->reached();
        attempt->keep_trail();
        if (progress.abandoned) return desktop::Begun{};
        now.record = new_record(context_.places, now.job.file.stem().string());
        auto visit =
            std::make_unique<RecordedVisit>(now.loaded.job, std::move(attempt),
                                            records::Writer(now.record, header), std::move(count));
        log_event("window: work " + now.job.name + ", record " + now.record.string());
        now.visit = visit.get();
        now_ = std::move(now);
        desktop::Begun begun;
        begun.visit = std::move(visit);
        return begun;
    });
}

desktop::Begun WindowHost::taken_up(const std::string& job, const fs::path& file) {
    Now now{find_job(context_, job), {}, file, nullptr};
    now.loaded = load_job(now.job);
    const auto record = records::read(file);
    if (!record.good())
        throw BadInput(diagnostics::to_text(record.problems, "the attempt cannot be taken up"));
    auto resumed = records::resume(record, now.loaded.job, now.loaded.hash);
    if (!resumed.attempt) throw BadInput(resumed.problem);
    const auto* unwritten = resumed.unwritten;
    auto visit = std::make_unique<RecordedVisit>(now.loaded.job, std::move(resumed.attempt),
                                                 records::Writer(record));
    if (unwritten) visit->finish_act(*unwritten);
    now.visit = visit.get();
    now_ = std::move(now);
    desktop::Begun begun;
    begun.visit = std::move(visit);
    begun.resumed = true;
    begun.draft = kept_draft();
    // Time that only passed: a record holds acts alone.
    constexpr std::int64_t longest_ticks = 24 * 36000;
    const std::int64_t passed = begun.draft.clock - begun.visit->attempt().tick();
    if (passed > 0 && passed <= longest_ticks) begun.visit->run(passed);
    return begun;
}

desktop::Begun WindowHost::resume(const std::string& job, desktop::Progress&) {
    return guarded<desktop::Begun>("This attempt cannot be taken up again", [&] {
        const auto file = unfinished_record(context_, job);
        if (file.empty()) throw BadInput("There is no unfinished attempt at this job.");
        return taken_up(job, file);
    });
}

desktop::Explained WindowHost::explain(desktop::Progress& progress) {
    return guarded<desktop::Explained>("The attempt cannot be weighed", [&] {
        if (!now_) throw BadInput("There is no attempt.");
        const auto record = records::read(now_->record);
        progress.minutes = now_->loaded.job.site.arrival_s / 60.0;
        const auto assessment = weigh(record, now_->loaded.job, telling(progress));
        if (now_->visit != nullptr) now_->visit->close(assessment);
        now_->visit = nullptr;
        desktop::Explained explained;
        explained.shown = record.header.mode == worksite::Mode::coached;
        explained.view =
            desktop::debrief_view(records::read(now_->record), now_->loaded.job, assessment);
        log_event("window: finished " + now_->record.string());
        return explained;
    });
}

desktop::Explained WindowHost::reopen(const std::string& job, desktop::Progress& progress) {
    return guarded<desktop::Explained>("This debrief cannot be opened", [&] {
        Now now{find_job(context_, job), {}, finished_record(context_, job), nullptr};
        if (now.record.empty()) throw BadInput("There is no finished attempt at this job.");
        now.loaded = load_job(now.job);
        const auto record = records::read(now.record);
        if (!record.good())
            throw BadInput(diagnostics::to_text(record.problems, "the debrief cannot be opened"));
        now.loaded.job = records::job_of(record, now.loaded.job);
        progress.minutes = now.loaded.job.site.arrival_s / 60.0;
        const auto again = weigh_again(record, now.loaded.job, now.loaded.hash, telling(progress));
        if (!again.assessment) throw BadInput(again.differs);
        desktop::Explained explained;
        explained.view = desktop::debrief_view(record, now.loaded.job, *again.assessment);
        if (!progress.abandoned) now_ = std::move(now);
        return explained;
    });
}

desktop::Begun WindowHost::replay(std::size_t acts, desktop::Progress& progress) {
    return guarded<desktop::Begun>("This step cannot be replayed", [&] {
        if (!now_) throw BadInput("There is no attempt.");
        const auto record = records::read(now_->record);
        const double until_s =
            acts == 0 || record.acts.empty()
                ? now_->loaded.job.site.arrival_s
                : tick_s * static_cast<double>(
                               record.acts[std::min(acts, record.acts.size()) - 1].end_tick);
        auto count = std::make_unique<TickCount>(progress, until_s);
        auto attempt = std::make_unique<worksite::Attempt>(now_->loaded.job, record.header.seed,
                                                           record.header.mode, count.get());
        attempt->keep_trail();
        for (std::size_t i = 0; i < acts && i < record.acts.size(); ++i) {
            attempt->run(std::max<std::int64_t>(0, record.acts[i].tick - attempt->tick()));
            attempt->perform(record.acts[i].sentence);
        }
        count->reached();
        desktop::Begun begun;
        begun.visit =
            std::make_unique<ReplayedVisit>(now_->loaded.job, std::move(attempt), std::move(count));
        return begun;
    });
}

desktop::Previewed WindowHost::preview(desktop::Progress&) {
    return guarded<desktop::Previewed>("This job cannot be previewed", [&] {
        desktop::Previewed previewed;
        const JobFile job = find_job(context_, author_file_.string());
        previewed_stamp_ = stamp_of_job(job.file);
        previewed_.reset();
        const auto loaded = scenario::load(job.file);
        if (!loaded.good()) {
            previewed.trouble = trouble_in(loaded.problems, {"look again"});
            return previewed;
        }
        previewed_ = loaded.job;
        previewed.view = desktop::author_view(loaded, job.file.filename().string());
        previewed.job = author_file_.string();
        return previewed;
    });
}

desktop::Solution WindowHost::solve(desktop::Progress& progress) {
    if (!previewed_) return {};
    return desktop::solve(*previewed_, progress.share, progress.abandoned);
}

bool WindowHost::job_file_changed() {
    if (author_file_.empty()) return false;
    try {
        return stamp_of_job(find_job(context_, author_file_.string()).file) != previewed_stamp_;
    } catch (const BadInput&) {  // being saved just now, perhaps
        return false;
    }
}

fs::path WindowHost::draft_file() const {
    return now_ ? fs::path(now_->record.string() + ".draft") : fs::path();
}

std::string WindowHost::keep_draft(const desktop::Draft& draft) {
    if (!now_ || now_->visit == nullptr) return "";
    desktop::Draft kept = draft;
    kept.clock = now_->visit->attempt().tick();
    return write_safely(draft_file(), desktop::to_text(kept));
}

desktop::Draft WindowHost::kept_draft() const {
    std::ifstream in(draft_file(), std::ios::binary);
    if (!in) return {};
    return desktop::draft_from(
        std::string(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()));
}

void WindowHost::leave(views::Visit&) {
    (void)keep_draft(kept_draft());  // with the clock as it stands
    if (now_) now_->visit = nullptr;
}

std::string WindowHost::save_report() {
    if (!now_) return "There is no attempt.";
    const fs::path file = fs::path(now_->record).replace_extension(".html");
    try {
        const auto record = records::read(now_->record);
        write_text(file, debrief::make_report(record, now_->loaded.job).html);
    } catch (const std::exception& problem) {
        return problem.what();
    }
    return "Saved as " + file.string() + ".";
}

fs::path WindowHost::settings_file() const {
    return context_.places.settings / "settings.txt";
}

std::string WindowHost::keep(const desktop::Preferences& preferences) {
    return write_safely(settings_file(), desktop::to_text(preferences));
}

desktop::Preferences WindowHost::preferences() const {
    std::ifstream in(settings_file(), std::ios::binary);
    if (!in) return {};
    return desktop::preferences_from(
        std::string(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()));
}

}  // namespace emberpath::app
