// Plays every simulated trainee over every shipped job and writes one row an attempt; how docs/trainees.md
// got its tables. Usage: trainees_experiment SEEDS CSV [JOB [POLICY]]; with a policy its acts are printed.
// With "each" for JOB the policy plays every job and its rows are written.
// With 0 seeds nobody plays: a row a job tells what complaint and display word say alone.

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>

#include "sim/scenario/scenario.hpp"
#include "sim/trainees/rating.hpp"

namespace {

using namespace emberpath;
namespace fs = std::filesystem;

constexpr std::array changes{scoring::Change{1.0, 1.0}, scoring::Change{3.0, 1.0},
                             scoring::Change{1.0, 2.0}, scoring::Change{1.0, 0.5}};

void write_rows(std::ostream& out, const std::string& job,
                const std::vector<trainees::Scored>& attempts) {
    for (const auto& one : attempts) {
        out << job << ',' << one.seed << ',' << trainees::policy_title(one.policy);
        for (const double area : one.areas) out << ',' << area;
        out << ',' << one.overall << ',' << one.scored << ',' << one.unopposed << ','
            << one.gates_met << ',' << one.fixed << ',' << one.true_class_probability << ','
            << one.leading_probability << ',' << one.leading_is_true << ',' << one.minutes << ','
            << one.acts;
        for (const double other : one.overall_with) out << ',' << other;
        out << ",\"" << one.proposal << "\"\n";
    }
    out.flush();
}

void write_head(std::ostream& out) {
    out << "job,seed,policy,safe_work,evidence,path,remedy,proof,overall,scored,unopposed,gates,"
           "fixed,"
           "true_class,leading,leading_is_true,minutes,acts,again,priors_x3,widths_x2,widths_half,"
           "proposal\n";
}

void write_blind(std::ostream& out, const std::string& name, const worksite::Job& job) {
    const auto rating = trainees::judge(job, {}, trainees::arrive(job, 1));
    out << name << ',' << rating.blind_guess << ',' << rating.true_class_then << std::endl;
}

std::vector<trainees::Scored> played_by(const worksite::Job& job, const std::string& title,
                                        int seeds) {
    std::vector<trainees::Policy> wanted;
    for (const auto policy : trainees::all_policies())
        if (trainees::policy_title(policy) == title) wanted.push_back(policy);
    return trainees::play_all(job, {wanted, seeds, nullptr, changes});
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
    if (count < 3) {
        std::cerr << "usage: trainees_experiment SEEDS CSV [JOB [POLICY]]\n";
        return 2;
    }
    const fs::path jobs = fs::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs";
    const int seeds = std::atoi(words[1]);
    std::ofstream out(words[2]);
    if (seeds == 0)
        out << "job,blind_guess,true_class_then\n";
    else
        write_head(out);
    for (const auto& file : scenario::list_jobs(jobs)) {
        const std::string name = file.stem().string();
        const bool each = count > 4 && std::string(words[3]) == "each";
        if (count > 3 && !each && name != words[3]) continue;
        const auto loaded = scenario::load(file);
        if (seeds == 0)
            write_blind(out, name, loaded.job);
        else if (each)
            write_rows(out, name, played_by(loaded.job, words[4], seeds));
        else if (count > 4)
            show(loaded.job, words[4], static_cast<std::uint64_t>(seeds));
        else
            write_rows(out, name,
                       trainees::play_all(loaded.job,
                                          {trainees::all_policies(), seeds, nullptr, changes}));
        std::cerr << name << "\n";
    }
    return 0;
}
