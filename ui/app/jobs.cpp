#include "ui/app/jobs.hpp"

#include <algorithm>
#include <fstream>
#include <sstream>

#include "sim/diagnostics/diagnostic.hpp"

namespace emberpath::app {

namespace fs = std::filesystem;

std::vector<JobFile> shipped_jobs(const Context& context) {
    if (context.places.scenarios.empty())
        throw BadInput(
            "The scenarios were not found beside the program. Set EMBERPATH_SCENARIOS to the "
            "folder that holds jobs/.");
    std::vector<JobFile> jobs;
    for (const auto& file : scenario::list_jobs(context.places.scenarios / "jobs"))
        jobs.push_back({file.stem().string(), file});
    if (jobs.empty())
        throw BadInput((context.places.scenarios / "jobs").string() +
                       ": holds no job files (NAME.toml).");
    return jobs;
}

std::vector<ListedJob> listed_jobs(const Context& context) {
    std::vector<ListedJob> jobs;
    for (const auto& job : shipped_jobs(context)) {
        const auto loaded = scenario::load(job.file);
        if (loaded.good())
            jobs.push_back({job.name, loaded.job.title + ". " + loaded.job.call_out, true});
        else
            jobs.push_back(
                {job.name, "cannot be loaded: see emberpath check " + job.file.string(), false});
    }
    const auto before = [](const ListedJob& a, const ListedJob& b) {
        const auto number_a = a.line.substr(0, a.line.find(':'));
        const auto number_b = b.line.substr(0, b.line.find(':'));
        return std::pair(number_a.size(), number_a) < std::pair(number_b.size(), number_b);
    };
    std::stable_sort(jobs.begin(), jobs.end(), before);
    return jobs;
}

JobFile find_job(const Context& context, const std::string& word) {
    if (word.ends_with(".toml")) {
        if (!fs::is_regular_file(word)) throw BadInput(word + ": there is no such file.");
        return {word, word};
    }
    std::vector<std::string> words;
    for (auto& job : shipped_jobs(context)) {
        if (job.name == word) return job;
        words.push_back(job.name);
    }
    const auto nearest = diagnostics::nearest_word(word, words);
    throw BadInput("There is no job \"" + word + "\"." +
                   (nearest.empty() ? std::string() : " Did you mean \"" + nearest + "\"?") +
                   " \"emberpath list\" names them all.");
}

scenario::Loaded load_job(const JobFile& job) {
    auto loaded = scenario::load(job.file);
    if (!loaded.good()) throw BadInput(diagnostics::to_text(loaded.problems, "nothing was loaded"));
    return loaded;
}

std::string read_text(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in || fs::is_directory(file)) throw BadInput(file.string() + ": the file cannot be read.");
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

void write_text(const fs::path& file, const std::string& text) {
    std::ofstream out(file, std::ios::binary | std::ios::trunc);
    out << text;
    out.close();
    if (!out) throw BadInput(file.string() + ": the file cannot be written.");
}

}  // namespace emberpath::app
