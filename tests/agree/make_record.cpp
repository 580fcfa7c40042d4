// Plays a script of acts on a job and writes the record, without user interface: what tests/compilers_agree builds
// with other compilers. With "weigh" the record is closed: every score, the proposal and the day after.
// Usage: make_record JOB.toml SCRIPT.acts RECORD [weigh]

#include <cstdio>
#include <fstream>
#include <sstream>
#include <string>

#include "sim/records/record.hpp"
#include "sim/scenario/scenario.hpp"

namespace {

using namespace emberpath;

constexpr std::uint64_t seed = 3;

std::string text_of(const std::string& file) {
    const std::ifstream in(file);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

int complain(const std::string& what) {
    std::fprintf(stderr, "%s\n", what.c_str());
    return 2;
}

/// Plays the lines; returns what could not be done, or nothing.
std::string play(worksite::Attempt& attempt, const worksite::Script& script,
                 records::Writer& writer) {
    for (const auto& line : script.lines) {
        writer.begin_act(attempt.tick(), line.sentence);
        const auto outcome = attempt.perform(line.sentence);
        if (outcome.entry == nullptr)
            return "line " + std::to_string(line.number) + ": " + outcome.refusal.text;
        writer.end_act(*outcome.entry, attempt.state_hash());
    }
    return attempt.over() ? "" : "the script does not hand in";
}

int run(const std::string& job_file, const std::string& script_file, const std::string& record_file,
        bool weigh) {
    const auto loaded = scenario::load(job_file);
    if (!loaded.good()) return complain(diagnostics::to_text(loaded.problems, "no record"));
    const auto script = worksite::read_script(text_of(script_file), script_file, loaded.job);
    if (!script.problems.empty())
        return complain(diagnostics::to_text(script.problems, "no record"));
    records::Header header;
    header.job = loaded.job.name;
    header.scenario_hash = loaded.hash;
    header.seed = seed;
    header.mode = worksite::Mode::assessed;
    records::Writer writer(record_file, header);
    worksite::Attempt attempt(loaded.job, seed, header.mode);
    const std::string trouble = play(attempt, script, writer);
    if (!trouble.empty()) return complain(script_file + ": " + trouble);
    if (weigh)
        writer.close(records::assess(records::read(record_file), loaded.job), attempt.day_after());
    return 0;
}

}  // namespace

int main(int count, char** words) {
    if (count < 4) return complain("usage: make_record JOB.toml SCRIPT.acts RECORD [weigh]");
    return run(words[1], words[2], words[3], count > 4 && std::string(words[4]) == "weigh");
}
