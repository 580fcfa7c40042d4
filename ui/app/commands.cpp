#include "ui/app/commands.hpp"

#include <cstdio>
#include <ostream>

#include "sim/records/preview.hpp"
#include "sim/records/record.hpp"
#include "sim/units/counted.hpp"
#include "ui/app/jobs.hpp"
#include "ui/app/places.hpp"
#include "ui/app/progress.hpp"
#include "ui/app/work.hpp"
#include "ui/debrief/page.hpp"
#include "ui/debrief/report.hpp"
#include "ui/views/catalogue.hpp"
#include "ui/views/trace_table.hpp"

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

/// A record that can be worked with, and its job.
struct Opened {
    records::Record record;
    scenario::Loaded loaded;
};

Opened open_record(Context& context, const fs::path& file) {
    if (!fs::is_regular_file(file)) throw BadInput(file.string() + ": there is no such record.");
    Opened opened{records::read(file), {}};
    for (const auto& note : opened.record.notes)
        context.err << file.string() << ": " << note << ".\n";
    if (opened.record.good()) opened.loaded = load_job(find_job(context, opened.record.header.job));
    return opened;
}

/// "03:45" or "75:10" as ticks.
std::int64_t ticks_on_site(const std::string& text) {
    int minutes = 0, seconds = 0, read = 0;
    const bool whole = std::sscanf(text.c_str(), "%4d:%2d%n", &minutes, &seconds, &read) == 2 &&
                       static_cast<std::size_t>(read) == text.size();
    if (!whole || minutes < 0 || seconds < 0 || seconds > 59)
        throw BadInput("--at: found \"" + text +
                       "\", expected minutes and seconds on site as the debrief prints them, such "
                       "as 03:45.");
    return std::int64_t{10} * (60 * minutes + seconds);
}

std::string damage(const records::Record& record) {
    return diagnostics::to_text(record.problems, "the record cannot be used");
}

std::vector<records::Decision> decisions_about(const records::Record& record) {
    auto decisions = records::read_decisions(record);
    if (!decisions.good())
        throw BadInput(diagnostics::to_text(decisions.problems, "the decisions cannot be used"));
    return std::move(decisions.all);
}

}  // namespace

Status explain(Context& context, const DebriefRequest& request) {
    const Opened opened = open_record(context, request.record);
    const auto& record = opened.record;
    if (!record.good()) throw BadInput(damage(record));
    if (!record.closed)
        throw BadInput(request.record.string() +
                       ": this attempt is not finished. Go on with it: " + "emberpath work " +
                       record.header.job + " --record " + request.record.string());
    auto verified = with_progress(context, "Weighing the evidence", [&] {
        return records::verify(record, opened.loaded.job, opened.loaded.hash,
                               records::Extent::the_visit);
    });
    if (!verified.comparable) throw BadInput(request.record.string() + ": " + verified.text);
    if (!verified.agrees) {
        context.err << request.record.string() << ": " << verified.text << "\n";
        return Status::not_so;
    }
    const auto report = debrief::make_report(
        record, opened.loaded.job, std::move(verified.assessment).value(),
        request.assessor ? records::Reader::assessor : records::Reader::trainee,
        decisions_about(record));
    if (!request.html.empty()) write_text(request.html, report.html);
    if (!request.json.empty()) write_text(request.json, report.json);
    context.out << report.text;
    return Status::done;
}

Status fork(Context& context, const ForkRequest& request) {
    const std::int64_t ticks = ticks_on_site(request.at);
    const Opened opened = open_record(context, request.record);
    if (!opened.record.good()) throw BadInput(damage(opened.record));
    const fs::path to =
        request.to.empty()
            ? new_record(context.places, fs::path(opened.record.header.job).stem().string())
            : request.to;
    const auto forked =
        records::fork(opened.record, opened.loaded.job, opened.loaded.hash, ticks, to);
    if (!forked.problem.empty()) throw BadInput(request.record.string() + ": " + forked.problem);
    context.err << "Back at " << request.at << ", with what was done before it ("
                << units::counted(static_cast<long long>(forked.acts), "act")
                << "). Record: " << to.string() << "\n";
    WorkRequest going_on;
    going_on.job = opened.record.header.job;
    going_on.licence = opened.record.header.licence;
    going_on.record = to;
    going_on.script = request.script;
    return work(context, going_on);
}

Status decide(Context& context, const DecideRequest& request) {
    if (request.verdict.empty() == request.area.empty() ||
        request.area.empty() != request.score.empty())
        throw BadInput("decide: expected --verdict, or --area and --score.");
    const bool verdict = !request.verdict.empty();
    const Opened opened = open_record(context, request.record);
    records::Decision decision;
    decision.about = verdict ? "verdict" : request.area;
    decision.now = request.verdict == "not-yet" ? "not yet competent"
                   : verdict                    ? request.verdict
                                                : request.score;
    decision.role = request.role;
    decision.reason = request.reason;
    if (const auto refused = records::decide(opened.record, decision); !refused.empty())
        throw BadInput(request.record.string() + ": " + refused);
    context.out << debrief::paragraph(records::in_words(decisions_about(opened.record).back()),
                                      debrief::page_width)
                << "Kept in " << records::decisions_file(request.record).string()
                << "; the record stays as it was.\n";
    return Status::done;
}

Status verify(Context& context, const fs::path& file) {
    const Opened opened = open_record(context, file);
    if (!opened.record.good()) {
        context.out << damage(opened.record);
        return Status::not_so;
    }
    const auto verified = with_progress(context, "Simulating it again", [&] {
        return records::verify(opened.record, opened.loaded.job, opened.loaded.hash);
    });
    if (!verified.comparable) throw BadInput(file.string() + ": " + verified.text);
    context.out << file.string() << ": " << verified.text << "\n";
    if (const auto decided = decisions_about(opened.record); !decided.empty())
        context.out << records::decisions_file(file).string() << ": "
                    << units::counted(static_cast<long long>(decided.size()), "decision")
                    << " beside it, the chain unbroken.\n";
    return verified.agrees ? Status::done : Status::not_so;
}

Status check(Context& context, const std::vector<std::string>& files) {
    std::vector<diagnostics::Diagnostic> problems;
    bool doubted = false;
    for (const auto& file : files) {
        if (!fs::is_regular_file(file)) throw BadInput(file + ": there is no such file.");
        const auto loaded = scenario::load(file);
        problems.insert(problems.end(), loaded.problems.begin(), loaded.problems.end());
        if (!loaded.good()) continue;
        const auto doubts = scenario::doubts_about(loaded.job);
        for (const auto& doubt : doubts) context.out << file << ": " << doubt << ".\n";
        if (doubts.empty()) context.out << file << ": good, " << loaded.job.title << "\n";
        doubted = doubted || !doubts.empty();
    }
    context.out << diagnostics::to_text(problems, "nothing was loaded");
    return problems.empty() && !doubted ? Status::done : Status::not_so;
}

Status preview(Context& context, const std::string& word) {
    const auto loaded = load_job(find_job(context, word));
    context.out << with_progress(context, "Running both houses",
                                 [&] { return records::preview_text(loaded.job); });
    return Status::done;
}

Status trace(Context& context, const TraceRequest& request) {
    const auto loaded = load_job(find_job(context, request.job));
    const auto table =
        views::trace_table(loaded.job, {request.taps, request.every_s, request.sound});
    if (!table.problem.empty()) throw BadInput(table.problem);
    write_text(request.csv, table.csv);
    context.err << table.rows << " rows in " << request.csv.string() << "\n";
    return Status::done;
}

Status list(Context& context) {
    for (const auto& job : listed_jobs(context))
        context.out << debrief::row({{14}, {84}}, {job.name, job.line});
    return Status::done;
}

Status causes(Context& context) {
    for (const auto& cause : views::catalogue()) {
        context.out << cause.word << "\n"
                    << debrief::paragraph(cause.title + " (" + cause.where + ")",
                                          debrief::page_width, 2)
                    << debrief::paragraph(cause.effect, debrief::page_width, 2)
                    << debrief::paragraph("Set right by: " + cause.remedy, debrief::page_width, 2);
    }
    return Status::done;
}

}  // namespace emberpath::app
