#include "ui/app/work.hpp"

#include <fstream>
#include <istream>
#include <ostream>

#include "ui/app/jobs.hpp"
#include "ui/app/program_log.hpp"
#include "ui/app/progress.hpp"
#include "ui/app/recorded_visit.hpp"
#include "ui/app/window_run.hpp"
#include "ui/debrief/report.hpp"
#include "ui/terminal/terminal.hpp"

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t usual_seed = 1;
constexpr const char* demo_job = "sorrel";  // what scenarios/demo.acts works on

/// A visit and where its record lies.
struct Started {
    std::unique_ptr<RecordedVisit> visit;
    fs::path record;
};

/// Folders only for names the program chose itself: a typing error must not create folders.
fs::path record_file(const Context& context, const WorkRequest& request, const JobFile& job) {
    if (!request.record.empty()) return request.record;
    return new_record(context.places, job.file.stem().string());
}

Started take_up(Context& context, const WorkRequest& request, const JobFile& job,
                const scenario::Loaded& loaded) {
    const auto record = records::read(request.record);
    if (!record.good())
        throw BadInput(diagnostics::to_text(record.problems, "the attempt cannot be taken up"));
    for (const auto& note : record.notes)
        context.err << request.record.string() << ": " << note << ".\n";
    if (record.header.job != job.name)
        throw BadInput(request.record.string() + ": this record is of job \"" + record.header.job +
                       "\"; choose another file for \"" + job.name + "\".");
    if (request.seed && *request.seed != record.header.seed)
        throw BadInput(request.record.string() + ": this attempt began with seed " +
                       std::to_string(record.header.seed) + "; leave --seed out to go on with it.");
    if (request.assessed && record.header.mode != worksite::Mode::assessed)
        throw BadInput(request.record.string() +
                       ": this attempt began coached; leave --assessed out to go on with it.");
    if (!request.licence.empty() && request.licence != record.header.licence)
        throw BadInput(request.record.string() + ": this attempt began under the licence \"" +
                       record.header.licence + "\"; leave --licence out to go on with it.");
    auto resumed = records::resume(record, loaded.job, loaded.hash);
    if (!resumed.attempt) throw BadInput(request.record.string() + ": " + resumed.problem);
    const auto* unwritten = resumed.unwritten;
    Started started{
        std::make_unique<RecordedVisit>(records::job_of(record, loaded.job),
                                        std::move(resumed.attempt), records::Writer(record)),
        request.record};
    if (unwritten) started.visit->finish_act(*unwritten);
    return started;
}

Started begin(Context& context, const WorkRequest& request, const JobFile& job,
              const scenario::Loaded& loaded) {
    records::Header header;
    header.job = job.name;
    header.scenario_hash = loaded.hash;
    header.seed = request.seed.value_or(usual_seed);
    header.mode = request.assessed ? worksite::Mode::assessed : worksite::Mode::coached;
    header.licence = loaded.job.practice.licence.name;
    auto attempt = std::make_unique<worksite::Attempt>(loaded.job, header.seed, header.mode);
    const fs::path file = record_file(context, request, job);
    return {std::make_unique<RecordedVisit>(loaded.job, std::move(attempt),
                                            records::Writer(file, header)),
            file};
}

std::vector<std::string> script_sentences(const WorkRequest& request, const worksite::Job& job) {
    const auto script =
        worksite::read_script(read_text(request.script), request.script.string(), job);
    if (!script.problems.empty())
        throw BadInput(diagnostics::to_text(script.problems, "nothing was done"));
    std::vector<std::string> sentences;
    for (const auto& line : script.lines) sentences.push_back(line.sentence);
    return sentences;
}

/// Plays a script; says where it stopped when a sentence could not be done.
bool play(Context& context, const WorkRequest& request, const worksite::Job& job,
          RecordedVisit& visit, const std::vector<std::string>& sentences) {
    const auto played = terminal::play(visit, sentences, context.out);
    if (played.ended != terminal::Ended::unreadable) return true;
    const auto script =
        worksite::read_script(read_text(request.script), request.script.string(), job);
    context.err << request.script.string() << ":" << script.lines[played.line].number << ": \""
                << sentences[played.line] << "\": " << played.refusal << "\n";
    return false;
}

Status finish(Context& context, const WorkRequest& request, const Started& started,
              const worksite::Job& job) {
    if (!started.visit->attempt().over()) {
        context.err << "To go on with it: emberpath work " << request.job << " --record "
                    << started.record.string() << "\n";
        return Status::done;
    }
    const auto record = records::read(started.record);
    const auto assessment = with_progress(context, "Weighing the evidence",
                                          [&] { return records::assess(record, job); });
    started.visit->close(assessment);
    log_event("finished " + started.record.string());
    if (started.visit->attempt().mode() == worksite::Mode::coached)
        context.out << "\n" << debrief::text_of(records::read(started.record), job, assessment);
    else
        context.out << "\nHanded in. The debrief is for you and your assessor.\n";
    context.err << "Debrief again: emberpath debrief " << started.record.string() << "\n";
    return Status::done;
}

/// The job under the licence that was asked for.
scenario::Loaded load_under_licence(const JobFile& job, const std::string& licence) {
    auto loaded = load_job(job);
    if (worksite::take_licence(loaded.job.practice, licence)) return loaded;
    const auto names = worksite::licence_names(loaded.job.practice);
    std::string known;
    for (const auto& name : names) known += (known.empty() ? "" : ", ") + name;
    throw BadInput("--licence: found \"" + licence + "\", expected one of: " +
                   (known.empty() ? "none, the rules of this job have no licences" : known) + ".");
}

}  // namespace

Status work(Context& context, const WorkRequest& request) {
    const JobFile job = find_job(context, request.job);
    const auto loaded = load_under_licence(job, request.licence);
    std::vector<std::string> sentences;
    if (!request.script.empty()) sentences = script_sentences(request, loaded.job);
    const bool known = !request.record.empty() && fs::exists(request.record);
    const Started started =
        known ? take_up(context, request, job, loaded) : begin(context, request, job, loaded);
    log_event("work " + job.name + ", record " + started.record.string());
    if (request.script.empty())
        terminal::converse(*started.visit, context.in, context.out, context.in_is_terminal);
    else if (!play(context, request, loaded.job, *started.visit, sentences)) {
        // A script that goes on after an injury is wrong, but the attempt it ended is kept whole.
        if (started.visit->attempt().over()) (void)finish(context, request, started, loaded.job);
        return Status::bad_input;
    }
    return finish(context, request, started, loaded.job);
}

namespace {

/// The demo: a shipped attempt on a shipped job, for those who have neither display nor terminal.
Status play_demo(Context& context) {
    WorkRequest request;
    request.job = demo_job;
    request.script = context.places.scenarios / "demo.acts";
    const fs::path folder = context.places.state / "records";
    fs::create_directories(folder);
    request.record = folder / "demo.jsonl";
    fs::remove(request.record);
    context.err << "There is no terminal here: playing the demo attempt. Do a job yourself with "
                   "emberpath work JOB.\n";
    return work(context, request);
}

}  // namespace

Status choose_and_work(Context& context) {
    const std::string why = context.may_open_window ? why_no_window() : "";
    if (context.may_open_window && why.empty()) return run_window(context, {});
    if (!why.empty())
        context.err << why << (context.in_is_terminal ? " You work at the terminal.\n\n" : "\n");
    if (!context.in_is_terminal) return play_demo(context);
    std::vector<std::string> words, lines;
    for (const auto& job : listed_jobs(context)) {
        if (!job.good) continue;
        words.push_back(job.name);
        lines.push_back(job.line);
    }
    const int chosen = terminal::choose(words, lines, context.in, context.out);
    if (chosen < 0) return Status::done;
    WorkRequest request;
    request.job = words[static_cast<std::size_t>(chosen)];
    context.out << "\n";
    return work(context, request);
}

}  // namespace emberpath::app
