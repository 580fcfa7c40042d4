#include "sim/scenario/scenario.hpp"

#include <algorithm>
#include <system_error>

#include "sim/scenario/build.hpp"
#include "sim/scenario/files.hpp"
#include "sim/worksite/complaint.hpp"

namespace emberpath::scenario {

namespace {

namespace fs = std::filesystem;

/// One table of the job that may build on files, complete; nothing when that is not possible.
std::optional<Values> complete(const Values& job, const char* name, const fs::path& path,
                               Files& files) {
    const auto table = job.tables.find(name);
    if (table == job.tables.end()) return std::nullopt;
    return files.with_bases(table->second, path);
}

/// The rules of the site, from the file that says them; nothing when there are none or they are spoilt.
std::optional<Values> rules_of(Values& site, const Problems& problems, Files& files) {
    const auto rules = site.tables.find("rules");
    if (rules == site.tables.end()) return std::nullopt;
    std::optional<Values> whole =
        files.with_bases(rules->second, fs::path(problems.name(rules->second.at.source)));
    if (whole) rules->second = *whole;
    rules->second.whole = whole.has_value();
    return whole;
}

/// The completed table takes the place of the written one. What cannot be completed is known to be wrong
/// already, and nobody asks what it might lack.
void put_completed(Values& all, const char* name, const std::optional<Values>& table) {
    if (!all.tables.contains(name)) return;
    if (table) all.tables.insert_or_assign(name, *table);
    all.tables.at(name).whole = table.has_value();
}

void make_job(const FileValues& file, Files& files, Problems& problems, worksite::Job& job) {
    Values all = file.values;
    std::optional<Values> site = complete(all, "site", file.path, files);
    const std::optional<Values> heater = complete(all, "heater", file.path, files);
    std::optional<Values> rules;
    if (site) rules = rules_of(*site, problems, files);
    put_completed(all, "site", site);
    put_completed(all, "heater", heater);
    require_all(all, problems);

    job.title = all.text("title");
    job.call_out = all.text("call_out");
    if (all.good("time_allowed") != nullptr) job.time_allowed_s = all.number("time_allowed");
    job.panel.set_point_k = all.number("set_point");
    job.kit = make_kit(all, problems);
    job.release = make_release_check(all, problems);
    job.faults = make_faults(all, site ? &*site : nullptr, problems);
    if (!job.faults.empty()) job.intended = faults::info(job.faults.front().cause).remedy;
    if (all.tables.contains("customer")) job.customer = make_customer(all.tables.at("customer"));
    HeaterParts parts;
    if (heater) parts = make_heater(*heater, problems);
    if (site) {
        job.site = make_site(*site, problems);
        job.site.events = make_events(*site, problems);
        job.site.dangers = make_dangers(*site, problems);
        if (rules) job.practice = make_practice(*site, *rules, problems);
        apply_site(*site, parts, problems);
    }
    if (site && heater) {
        check_gas(*site, *heater, file.values.tables.at("heater").at, problems);
        check_set_points(all, *site,
                         faults::with_faults(parts.settings, job.faults, job.site.arrival_s),
                         problems);
    }
    job.healthy = parts.parameters;
    job.settings = parts.settings;
    if (site && heater) {
        fit_wall_controllers(*site, *heater, job, problems);
        check_faults_act(all, job, problems);
    }
}

}  // namespace

Loaded load(const fs::path& file) {
    Loaded loaded;
    Problems problems;
    Files files(problems);
    loaded.job.name = file.stem().string();
    if (const std::optional<FileValues> read = files.read_first(file, Section::job))
        make_job(*read, files, problems, loaded.job);
    loaded.hash = files.hash();
    worksite::ReleaseCheck& check = loaded.job.release;
    check.outdated = !check.checked_on.empty() && check.of != loaded.hash;
    loaded.problems = problems.sorted();
    return loaded;
}

std::vector<std::string> doubts_about(const worksite::Job& job) {
    std::vector<std::string> doubts = worksite::doubts_about(job);
    if (job.release.outdated)
        doubts.push_back("the files have changed since the release check of " +
                         job.release.checked_on +
                         ": evidence, path and remedy are not scored until `emberpath rate " +
                         job.name + " --release` has checked them anew");
    return doubts;
}

std::vector<fs::path> list_jobs(const fs::path& folder) {
    std::vector<fs::path> all;
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
        if (at->path().extension() == ".toml" && !at->is_directory(error))
            all.push_back(at->path());
    std::sort(all.begin(), all.end());
    return all;
}

}  // namespace emberpath::scenario
