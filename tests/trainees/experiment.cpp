// Plays every simulated trainee over every shipped job and writes one row an attempt; how docs/trainees.md
// got its tables. Usage: trainees_experiment SEEDS CSV [JOB [POLICY]] [--seed N] [--severity SHARE] [--plain] [--brief]
// With a policy its acts are printed. With "each" for JOB the policy plays every job and its rows are written.
// With 0 seeds a row a job tells what complaint and display word say alone, and how hard the job is. Seeds begin at N; the
// faults have SHARE of the severity that the job gives them, 1 at most, where they have degrees. Plain: no other scorer weighs the
// attempts. Brief: without the over-tester, who takes half of all time, and those who give in to a temptation.

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <span>
#include <string>

#include "sim/scenario/scenario.hpp"
#include "sim/trainees/rating.hpp"

namespace {

using namespace emberpath;
namespace fs = std::filesystem;

constexpr std::array changes{scoring::Change{1.0, 1.0}, scoring::Change{3.0, 1.0, 1},
                             scoring::Change{3.0, 1.0, 2}, scoring::Change{1.0, 2.0},
                             scoring::Change{1.0, 0.5}};

struct Wanted {
    std::vector<std::string> words;  // seeds, file, job, policy
    std::uint64_t first_seed = 1;
    double severity_share = 1.0;
    bool plain = false, brief = false;
};

Wanted wanted_by(int count, char** words) {
    Wanted wanted;
    for (int i = 1; i < count; ++i) {
        const std::string word = words[i];
        if (word == "--seed" && i + 1 < count)
            wanted.first_seed = std::strtoull(words[++i], nullptr, 10);
        else if (word == "--severity" && i + 1 < count)
            wanted.severity_share = std::atof(words[++i]);
        else if (word == "--plain")
            wanted.plain = true;
        else if (word == "--brief")
            wanted.brief = true;
        else
            wanted.words.push_back(word);
    }
    return wanted;
}

worksite::Job job_of(const fs::path& file, const Wanted& wanted) {
    worksite::Job job = scenario::load(file).job;
    for (auto& fault : job.faults)
        if (!faults::info(fault.cause).on_off)
            fault.severity = std::min(1.0, fault.severity * wanted.severity_share);
    return job;
}

void write_rows(std::ostream& out, const std::string& job, double severity_share,
                const std::vector<trainees::Scored>& attempts) {
    for (const auto& one : attempts) {
        out << job << ',' << one.seed << ',' << severity_share << ','
            << trainees::policy_title(one.policy);
        for (const double area : one.areas) out << ',' << area;
        out << ',' << one.overall << ',' << one.scored << ',' << one.unopposed << ','
            << one.gates_met << ',' << one.fixed << ',' << one.true_class_probability << ','
            << one.leading_probability << ',' << one.leading_is_true << ',' << one.minutes << ','
            << one.acts << ',' << one.reference_minutes;
        for (std::size_t i = 0; i < changes.size(); ++i) {
            out << ',';
            if (i < one.overall_with.size()) out << one.overall_with[i];
        }
        out << ",\"" << one.proposal << "\"\n";
    }
    out.flush();
}

void write_head(std::ostream& out) {
    out << "job,seed,severity_share,policy,safe_work,evidence,path,remedy,proof,overall,scored,"
           "unopposed,gates,"
           "fixed,"
           "true_class,leading,leading_is_true,minutes,acts,reference_minutes,again,priors_x3,"
           "priors_x3_again,"
           "widths_x2,widths_half,"
           "proposal\n";
}

// The guesser plays for the sake of the reference path alone.
void write_blind(std::ostream& out, const std::string& name, const worksite::Job& job) {
    constexpr std::array guesser{trainees::Policy::guesser};
    const auto at_arrival = trainees::arrive(job, 1);
    const auto attempts = trainees::play_all(job, {guesser, 1, at_arrival});
    const auto rating = trainees::judge(job, attempts, at_arrival);
    const auto& seen = rating.on_arrival;
    out << name << ',' << seen.probability << ',' << seen.of_truth << ',' << seen.open_bits << ','
        << rating.difficulty.surprise_bits << ',' << rating.difficulty.reference_minutes << ','
        << word(rating.difficulty) << std::endl;
}

bool left_out_when_brief(trainees::Policy policy) {
    using enum trainees::Policy;
    return policy == over_tester || policy == raises_regulator || policy == warms_cylinder ||
           policy == bridges_limiter;
}

std::vector<trainees::Scored> played_by(const worksite::Job& job, const std::string& title,
                                        int seeds, const Wanted& wanted) {
    std::vector<trainees::Policy> policies;
    for (const auto policy : trainees::all_policies()) {
        if (wanted.brief && left_out_when_brief(policy)) continue;
        if (title.empty() || trainees::policy_title(policy) == title) policies.push_back(policy);
    }
    std::span<const scoring::Change> others = changes;
    if (wanted.plain) others = {};
    return trainees::play_all(job, {policies, seeds, nullptr, others, wanted.first_seed});
}

void show(const worksite::Job& job, const std::string& title, std::uint64_t seed) {
    for (const auto policy : trainees::all_policies()) {
        if (trainees::policy_title(policy) != title) continue;
        const trainees::Told told{
            job.faults.empty() ? faults::Cause::no_fault : job.faults.front().cause, nullptr, {}};
        const auto played = trainees::play(policy, job, seed, told);
        worksite::Attempt attempt(job, seed, worksite::Mode::assessed);
        for (const auto& act : played.acts) {
            std::cout << attempt.seconds_on_site() << "  " << act.sentence << "\n";
            const auto done = attempt.perform(act.sentence);
            if (done.entry == nullptr) continue;
            for (const auto& line : done.entry->shown) std::cout << "        " << line << "\n";
        }
        const auto scored = trainees::score(job, seed, played);
        for (const auto& breach : attempt.breaches()) std::cout << "! " << breach.text << "\n";
        for (const double area : scored.areas) std::cout << area << " ";
        std::cout << scored.overall << " p " << scored.true_class_probability << "\n"
                  << scored.proposal << "\n";
    }
}

}  // namespace

int main(int count, char** words) {
    const Wanted wanted = wanted_by(count, words);
    if (wanted.words.size() < 2) {
        std::cerr << "usage: trainees_experiment SEEDS CSV [JOB [POLICY]] [--seed N] [--severity "
                     "SHARE] [--plain] [--brief]\n";
        return 2;
    }
    const int seeds = std::atoi(wanted.words[0].c_str());
    const std::string only = wanted.words.size() > 2 ? wanted.words[2] : "each";
    const std::string policy = wanted.words.size() > 3 ? wanted.words[3] : "";
    std::ofstream out(wanted.words[1]);
    if (seeds == 0)
        out << "job,blind_guess,true_class_then,open_bits,surprise_bits,reference_minutes,"
               "difficulty\n";
    else
        write_head(out);
    for (const auto& file :
         scenario::list_jobs(fs::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs")) {
        const std::string name = file.stem().string();
        if (only != "each" && name != only) continue;
        const auto job = job_of(file, wanted);
        if (seeds == 0)
            write_blind(out, name, job);
        else if (only != "each" && !policy.empty())
            show(job, policy, wanted.first_seed);
        else
            write_rows(out, name, wanted.severity_share, played_by(job, policy, seeds, wanted));
        std::cerr << name << "\n";
    }
    return 0;
}
