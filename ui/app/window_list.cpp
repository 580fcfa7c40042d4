#include "ui/app/window_list.hpp"

#include <algorithm>
#include <optional>

#include "sim/records/debrief.hpp"
#include "ui/app/jobs.hpp"
#include "ui/views/views.hpp"

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

/// The records of a job, the newest first.
std::vector<fs::path> records_of(const Context& context, const std::string& job) {
    std::vector<fs::path> found;
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator(context.places.state / "records", ignored)) {
        const std::string name = entry.path().filename().string();
        const std::string stem = entry.path().stem().string();
        const bool ours = entry.path().extension() == ".jsonl" && name.starts_with(job + "-") &&
                          stem.find_first_not_of("0123456789", job.size() + 1) == std::string::npos;
        if (ours) found.push_back(entry.path());
    }
    const auto order = [](const fs::path& file) {
        return std::pair(file.filename().string().size(), file.filename().string());
    };
    std::sort(found.begin(), found.end(),
              [&](const fs::path& a, const fs::path& b) { return order(b) < order(a); });
    return found;
}

struct Kept {
    fs::path file;
    records::Record record;
};

/// The record of a job with the highest number; one in which nothing was done yet hides none that is older.
std::optional<Kept> latest_record(const Context& context, const std::string& job) {
    for (const fs::path& file : records_of(context, job)) {
        Kept kept{file, records::read(file)};
        if (!kept.record.good() || !kept.record.acts.empty()) return kept;
    }
    return std::nullopt;
}

void tell_last(screens::JobRow& row, const Context& context, const scenario::Loaded& loaded) {
    row.last = "not tried";
    const auto latest = latest_record(context, row.id);
    if (!latest) return;
    const records::Record& record = latest->record;
    if (!record.good()) {
        row.last = "record damaged";
        return;
    }
    if (record.closed && record.header.mode == worksite::Mode::assessed) {
        row.last = "handed in";  // what came of it is for the trainee and the assessor together
        return;
    }
    if (record.closed) {
        row.can_debrief = true;
        for (const auto& score : record.scores)
            if (score.area == "overall") row.last = records::score_text(score.score) + " of 100";
        row.last += record.gates_met ? ", gates met" : ", gates not met";
        return;
    }
    row.can_resume = true;
    constexpr double tick_s = 0.1;
    const auto& last = record.acts.back();  // begun and never ended: the end was not written
    const double seconds = static_cast<double>(std::max(last.tick, last.end_tick)) * tick_s -
                           loaded.job.site.arrival_s;
    row.last = "left after " + views::clock_text(std::max(0.0, seconds));
}

/// A job whose file cannot be opened keeps its place in the list, with what is wrong.
screens::JobRow broken_row(const JobFile& job,
                           const std::vector<diagnostics::Diagnostic>& problems) {
    screens::JobRow row;
    row.id = job.name;
    row.title = job.name;
    row.address = job.file.filename().string();
    row.broken = true;
    row.last = "cannot be opened";
    if (!problems.empty()) {
        const auto& first = problems.front();
        row.call_out = "Line " + std::to_string(first.line) + ": " + first.found + "; expected " +
                       first.expected + ".";
    }
    return row;
}

}  // namespace

std::vector<screens::JobRow> job_rows(const Context& context) {
    std::vector<screens::JobRow> rows;
    for (const auto& listed : listed_jobs(context)) {
        const JobFile file = find_job(context, listed.name);
        const auto loaded = scenario::load(file.file);
        if (!loaded.good()) {
            rows.push_back(broken_row(file, loaded.problems));
            continue;
        }
        const auto card = views::job_card(loaded.job, worksite::Mode::coached);
        screens::JobRow row;
        row.id = listed.name;
        const auto colon = card.title.find(": ");
        row.title = card.title.substr(0, colon);
        if (colon != std::string::npos) row.address = card.title.substr(colon + 2);
        row.gas = card.gas;
        row.call_out = card.call_out;
        tell_last(row, context, loaded);
        rows.push_back(std::move(row));
    }
    return rows;
}

fs::path unfinished_record(const Context& context, const std::string& job) {
    const auto latest = latest_record(context, job);
    return !latest || latest->record.closed ? fs::path() : latest->file;
}

fs::path finished_record(const Context& context, const std::string& job) {
    const auto latest = latest_record(context, job);
    const bool ours =
        latest && latest->record.closed && latest->record.header.mode == worksite::Mode::coached;
    return ours ? latest->file : fs::path();
}

}  // namespace emberpath::app
