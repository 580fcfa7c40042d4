// Proves that the terminal tells nothing about the hidden cause: in a shipped house two causes that have given the
// same observations so far have printed the same bytes, act by act, whatever was asked of the terminal beside.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "sim/scenario/scenario.hpp"
#include "tests/unit/ui/house_visit.hpp"
#include "tests/unit/worksite/observed.hpp"
#include "ui/terminal/terminal.hpp"

namespace emberpath::terminal {
namespace {

const std::filesystem::path root = EMBERPATH_SOURCE_DIR;

/// The sound visit of the job, without its end.
std::vector<std::string> acts_of(const std::string& job) {
    std::ifstream in(root / "tests/jobs/paths" / (job + ".good.acts"));
    std::vector<std::string> all;
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && line.front() != '#' && line != "hand in") all.push_back(line);
    return all;
}

std::vector<std::string> job_names() {
    std::vector<std::string> names;
    for (const auto& file : scenario::list_jobs(root / "scenarios/jobs"))
        names.push_back(file.stem().string());
    return names;
}

/// Every seventh cause that can act in this house, as strong as it gets, after the one that is there and none at all:
/// all of them in all houses would take minutes, these take less than one. The next house begins one cause later,
/// so that they do not all leave out the same ones.
std::vector<std::vector<faults::Fault>> causes_in(const worksite::Job& job, std::ptrdiff_t house) {
    constexpr std::ptrdiff_t step = 7;
    std::vector<std::vector<faults::Fault>> all{job.faults, {}};
    std::ptrdiff_t count = house;
    for (const auto& cause : faults::catalogue())
        if (faults::can_act(cause, worksite::traits_of(job)) && ++count % step == 0)
            all.push_back({{cause.cause, cause.greatest_severity, 0.0, 0.0, 0.0, 0.0}});
    return all;
}

/// All that the terminal prints until this act is done.
std::string printed_by(HouseVisit& visit, const std::string& act) {
    std::ostringstream out;
    (void)play(visit, {act}, out);
    if (visit.last.entry == nullptr) out << visit.last.refusal.text << "\n";
    for (const char* word : {"readings", "services", "time"}) out << answer(visit, word);
    return out.str();
}

class ShippedHouse : public testing::TestWithParam<std::string> {};

TEST_P(ShippedHouse, PrintsTheSameBytesForTheSameObservationsSoFarUnderPairsOfOneCauseInSeven) {
    const auto loaded = scenario::load(root / "scenarios/jobs" / (GetParam() + ".toml"));
    ASSERT_TRUE(loaded.good());
    const auto acts = acts_of(GetParam());
    std::vector<std::map<std::string, std::string>> printed_after(acts.size());
    std::size_t pairs = 0;
    const auto names = job_names();
    const auto house = std::find(names.begin(), names.end(), GetParam()) - names.begin();
    for (const auto& causes : causes_in(loaded.job, house)) {
        worksite::Job job = loaded.job;
        job.faults = causes;
        HouseVisit visit(job);
        worksite::Observed observed;
        std::string printed = opening_text(visit) + answer(visit, "causes") +
                              answer(visit, "help all") + answer(visit, "help tap");
        for (std::size_t i = 0; i < acts.size() && !visit.attempt().over(); ++i) {
            printed += printed_by(visit, acts[i]);
            observed.add(visit.last, visit.attempt().sight());
            const auto [first, fresh] = printed_after[i].emplace(observed.text(), printed);
            ASSERT_EQ(first->second, printed)
                << (causes.empty() ? "nothing wrong" : faults::info(causes.front().cause).word)
                << ", after " << acts[i];
            if (!fresh) ++pairs;
        }
    }
    RecordProperty("pairs", std::to_string(pairs));
    EXPECT_GE(pairs, 20U) << "acts after which two causes could not be told apart";
}

INSTANTIATE_TEST_SUITE_P(EachJob, ShippedHouse, testing::ValuesIn(job_names()),
                         [](const auto& one) { return one.param; });

}  // namespace
}  // namespace emberpath::terminal
