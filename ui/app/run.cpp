#include "ui/app/run.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <functional>

#include "sim/diagnostics/diagnostic.hpp"
#include "sim/records/record.hpp"
#include "ui/app/commands.hpp"
#include "ui/app/program_log.hpp"
#include "ui/app/rate.hpp"
#include "ui/app/window_run.hpp"
#include "ui/app/work.hpp"

namespace emberpath::app {

namespace {

/// All that arguments can set, and the command they ask for.
struct Request {
    WorkRequest work;
    DebriefRequest debrief;
    ForkRequest fork;
    DecideRequest decide;
    TraceRequest trace;
    RateRequest rate;
    std::string job, record, log;
    std::vector<std::string> files;
    std::function<Status(Context&)> command = choose_and_work;
};

CLI::App* add(CLI::App& app, Request& request, const char* name, const char* does,
              std::function<Status(Context&)> command) {
    CLI::App* sub = app.add_subcommand(name, does);
    sub->callback([&request, command = std::move(command)] { request.command = command; });
    return sub;
}

void add_work(CLI::App& app, Request& request) {
    auto* sub = add(app, request, "work", "Do a job at the terminal",
                    [&](Context& context) { return work(context, request.work); });
    sub->add_option("JOB", request.work.job, "a word from `emberpath list`, or a .toml file")
        ->required();
    sub->add_flag("--assessed", request.work.assessed, "no judging remarks before the end");
    sub->add_option("--licence", request.work.licence,
                    "what you may do: a licence of the rules that hold there");
    sub->add_option("--script", request.work.script, "a text file of acts, one a line, # comments");
    sub->add_option("--record", request.work.record,
                    "where to keep the record; an unfinished one is taken up again");
    sub->add_option("--seed", request.work.seed, "moves instrument errors and gusts (usually 1)");
}

void add_record_commands(CLI::App& app, Request& request) {
    auto* explaining = add(app, request, "debrief", "Explain a finished attempt",
                           [&](Context& context) { return explain(context, request.debrief); });
    explaining->add_option("RECORD", request.debrief.record)->required();
    explaining->add_option("--html", request.debrief.html, "also write a page to print");
    explaining->add_flag("--assessor", request.debrief.assessor,
                         "with what each weighing rested on, luck, misfit, release check and "
                         "scores without each area");
    explaining->add_option("--json", request.debrief.json, "also write it for other programs");
    auto* forking =
        add(app, request, "fork", "Try a finished attempt again from a moment on, coached",
            [&](Context& context) { return fork(context, request.fork); });
    forking->add_option("RECORD", request.fork.record)->required();
    forking->add_option("--at", request.fork.at, "time on site to go back to, such as 03:45")
        ->required();
    forking->add_option("--record", request.fork.to,
                        "where to keep the new record (usually the next free name)");
    forking->add_option("--script", request.fork.script, "a text file of acts to go on with");
    add(app, request, "verify", "Simulate a record again and compare bit for bit",
        [&](Context& context) { return verify(context, request.record); })
        ->add_option("RECORD", request.record)
        ->required();
}

void add_assessor_commands(CLI::App& app, Request& request) {
    auto* deciding =
        add(app, request, "decide", "Keep a person's decision about a finished attempt beside it",
            [&](Context& context) { return decide(context, request.decide); });
    deciding->add_option("RECORD", request.decide.record)->required();
    deciding->add_option("--verdict", request.decide.verdict, "competent or not-yet");
    deciding->add_option("--area", request.decide.area, "overall, or an area such as \"path\"");
    deciding->add_option("--score", request.decide.score, "its points instead, 0 to 100");
    deciding->add_option("--role", request.decide.role, "of who decides, such as assessor")
        ->required();
    deciding->add_option("--reason", request.decide.reason, "why; it is never left out")
        ->required();
    add(app, request, "series", "What several finished attempts say together, for an assessor",
        [&](Context& context) { return series(context, request.files); })
        ->add_option("RECORD", request.files)
        ->required();
}

void add_author_commands(CLI::App& app, Request& request) {
    add(app, request, "check", "Check scenario files and report every problem",
        [&](Context& context) { return check(context, request.files); })
        ->add_option("FILE", request.files)
        ->required();
    add(app, request, "preview", "What a job's fault does to every reading (gives the job away)",
        [&](Context& context) { return preview(context, request.job); })
        ->add_option("JOB", request.job)
        ->required();
    add(app, request, "author", "Preview a job in the window as its author (gives the job away)",
        [&](Context& context) { return author(context, request.job); })
        ->add_option("JOB", request.job)
        ->required();
    auto* tracing = add(app, request, "trace", "Run the heater alone and write its time series",
                        [&](Context& context) { return trace(context, request.trace); });
    tracing->add_option("JOB", request.trace.job)->required();
    tracing
        ->add_option("--taps", request.trace.taps,
                     "seconds and opening of the first tap, such as \"0 0.5; 60 1; 180 0\"")
        ->required();
    tracing->add_option("--csv", request.trace.csv, "the file to write")->required();
    tracing->add_option("--every", request.trace.every_s, "seconds between rows (usually 1)");
    tracing->add_flag("--sound", request.trace.sound, "the house without its fault");
    auto* rating =
        add(app, request, "rate", "Let simulated trainees play a job: does a bad habit pay?",
            [&](Context& context) { return rate(context, request.rate); });
    rating->add_option("JOB", request.rate.job)->required();
    rating->add_option("--seeds", request.rate.seeds, "attempts of each trainee (usually 2)");
    rating->add_flag("--release", request.rate.release,
                     "is the cause seen in other houses? Instead of the trainees");
    rating->add_option("--runs", request.rate.runs, "houses of --release (usually 50)");
    add(app, request, "list", "The jobs", list);
    add(app, request, "causes", "The catalogue of causes", causes);
}

Status carry_out(Request& request, Context& context) {
    if (!request.log.empty()) open_log(request.log);
    return request.command(context);
}

/// A first word that is no command, with the nearest one; empty when all is well.
std::string unknown_command(const CLI::App& app, const std::vector<std::string>& arguments) {
    if (arguments.empty() || arguments.front().starts_with('-')) return {};
    std::vector<std::string> words;
    for (const auto* command : app.get_subcommands({})) words.push_back(command->get_name());
    if (std::find(words.begin(), words.end(), arguments.front()) != words.end()) return {};
    const auto nearest = diagnostics::nearest_word(arguments.front(), words);
    return "There is no command \"" + arguments.front() + "\"." +
           (nearest.empty() ? "" : " Did you mean \"" + nearest + "\"?") +
           " \"emberpath --help\" lists them.";
}

/// CLI11 throws for --help as well as for a typing error.
int answer_arguments(CLI::App& app, const CLI::ParseError& raised, Context& context) {
    const int code = app.exit(raised, context.out, context.err);
    return static_cast<int>(code == 0 ? Status::done : Status::bad_input);
}

int refuse(Context& context, std::string_view why) {
    context.err << why << (why.ends_with('\n') ? "" : "\n");
    return static_cast<int>(Status::bad_input);
}

}  // namespace

int run(const std::vector<std::string>& arguments, Context& context) {
    Request request;
    CLI::App app(
        "Emberpath: find the fault of a simulated gas water heater, safely.\n"
        "Without a command: choose a job.",
        "emberpath");
    app.set_version_flag("--version", std::string(records::program_version));
    app.add_option("--log", request.log, "write the program's own log to this file");
    app.require_subcommand(0, 1);
    app.fallthrough();
    add_work(app, request);
    add_record_commands(app, request);
    add_assessor_commands(app, request);
    add_author_commands(app, request);
    if (const auto unknown = unknown_command(app, arguments); !unknown.empty())
        return refuse(context, unknown);
    try {
        app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
        return static_cast<int>(carry_out(request, context));
    } catch (const CLI::ParseError& raised) {
        return answer_arguments(app, raised, context);
    } catch (const BadInput& problem) {
        return refuse(context, problem.what());
    } catch (const records::CannotWrite& problem) {
        return refuse(context, problem.what());
    } catch (const std::filesystem::filesystem_error& problem) {
        return refuse(context, problem.what());
    } catch (const std::exception& problem) {
        log_fault(problem.what());
        context.err << "A fault of the program: " << problem.what() << "\n";
        return static_cast<int>(Status::fault);
    }
}

}  // namespace emberpath::app
