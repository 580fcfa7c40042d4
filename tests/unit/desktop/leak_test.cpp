// Proves that houses which have shown the same look and sound the same, whatever is wrong with them.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "sim/scenario/scenario.hpp"
#include "tests/unit/desktop/memory_host.hpp"
#include "tests/unit/worksite/observed.hpp"

namespace emberpath::desktop {
namespace {

using faults::Cause;

std::string painting(const kit::Frame& frame) {
    std::string text = frame.tree.as_text();
    for (const auto& layer : frame.layers) text += layer.as_text();
    return text;
}

/// All the trainee has observed: readings, what the senses said, what stands and stood on the glasses. What else
/// an act said is not in it: it has to follow, and stands in the painting.
std::string observed_by(const Person& person) {
    const auto& attempt = person.host.at_work->attempt();
    std::string text;
    for (const auto& entry : attempt.log()) text += worksite::observed_in(entry);
    for (const auto& point : attempt.trail()) {
        for (const auto& figure : point.figures)
            text += worksite::text_of(figure.quantity, figure.value) + "|";
        text += std::to_string(point.display_word) + "\n";
    }
    return text + worksite::seen_and_heard(attempt.sight());
}

struct Pair {
    const char* name;
    Cause one, other;
    const char* tells_apart;  // an act after which they may differ
};
std::ostream& operator<<(std::ostream& out, const Pair& pair) {
    return out << pair.name;
}

class SameSoFar : public testing::TestWithParam<Pair> {};

TEST_P(SameSoFar, GivesTheSameTreePaintingAndSound) {
    Person one(worksite::test_job({worksite::fault(GetParam().one, 0.5)}));
    Person other(worksite::test_job({worksite::fault(GetParam().other, 0.5)}));
    one.enter_house();
    other.enter_house();
    int compared = 0;
    for (const char* words :
         {"ask about when", "look at display", "P1", "put on gloves", "shut gas at heater",
          "open test point inlet", "attach manometer to inlet", "look at room", "wait 10 s"}) {
        one.say(words);
        other.say(words);
        if (observed_by(one) != observed_by(other)) break;
        ++compared;
        ASSERT_EQ(painting(one.program.last_frame()), painting(other.program.last_frame()))
            << "after \"" << words << "\"";
        ASSERT_EQ(one.program.heard(), other.program.heard());
        for (int i = 0; i < 4; ++i) {
            one.program.elapse(0.05);
            other.program.elapse(0.05);
        }
        one.look();
        other.look();
        ASSERT_EQ(painting(one.program.last_frame()), painting(other.program.last_frame()));
    }
    EXPECT_GE(compared, 8) << "the houses were told apart before anything was measured";
}

TEST_P(SameSoFar, DiffersOnceAReadingDoes) {
    Person one(worksite::test_job({worksite::fault(GetParam().one, 1.0)}));
    Person other(worksite::test_job({worksite::fault(GetParam().other, 1.0)}));
    one.enter_house();
    other.enter_house();
    for (const char* words : {"open bath tap fully", "wait 1 min", GetParam().tells_apart}) {
        one.say(words);
        other.say(words);
    }
    ASSERT_NE(observed_by(one), observed_by(other));
    EXPECT_NE(painting(one.program.last_frame()), painting(other.program.last_frame()));
}

INSTANTIATE_TEST_SUITE_P(
    Causes, SameSoFar,
    testing::Values(Pair{"PipeAndRegulator", Cause::gas_pipe_restriction, Cause::regulator_droop,
                         "measure temperature at bath tap"},
                    Pair{"PipeAndSoot", Cause::gas_pipe_restriction, Cause::exchanger_sooted,
                         "measure temperature at bath tap"},
                    Pair{"NothingAndSoot", Cause::no_fault, Cause::exchanger_sooted,
                         "measure temperature at bath tap"}),
    [](const auto& one) { return std::string(one.param.name); });

// --- the shipped jobs ---

const std::filesystem::path root = EMBERPATH_SOURCE_DIR;

std::vector<std::string> sentences(const std::string& job) {
    std::ifstream in(root / "tests/jobs/paths" / (job + ".good.acts"));
    std::vector<std::string> all;
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && line.front() != '#') all.push_back(line);
    return all;
}

/// Works both houses by the same acts while they have shown the same; returns how many acts that were.
int compare_while_alike(const worksite::Job& one_job, const worksite::Job& other_job,
                        const std::vector<std::string>& acts) {
    Person one(one_job), other(other_job);
    one.enter_house();
    other.enter_house();
    int compared = 0;
    for (const std::string& act : acts) {
        if (observed_by(one) != observed_by(other)) break;
        EXPECT_EQ(painting(one.program.last_frame()), painting(other.program.last_frame()))
            << "before \"" << act << "\"";
        EXPECT_EQ(one.program.heard(), other.program.heard());
        ++compared;
        one.paste(act);
        other.paste(act);
    }
    return compared;
}

class ShippedHouse : public testing::TestWithParam<std::string> {};

TEST_P(ShippedHouse, LooksTheSameWhateverIsWrongUntilSomethingElseIsShown) {
    const auto loaded = scenario::load(root / "scenarios/jobs" / (GetParam() + ".toml"));
    ASSERT_TRUE(loaded.good());
    auto acts = sentences(GetParam());
    constexpr std::size_t most_acts =
        16;  // houses that look alike so long have been looked at well
    acts.resize(std::min(acts.size(), most_acts));
    worksite::Job sound = loaded.job, weaker = loaded.job;
    sound.faults.clear();
    for (auto& fault : weaker.faults) fault.severity *= 0.995;
    const int with_sound = compare_while_alike(loaded.job, sound, acts);
    const int with_weaker = compare_while_alike(loaded.job, weaker, acts);
    constexpr int told_apart_at_once = 3;
    EXPECT_GE(std::max(with_sound, with_weaker), told_apart_at_once);
}

std::vector<std::string> job_names() {
    std::vector<std::string> names;
    for (const auto& file : scenario::list_jobs(root / "scenarios/jobs"))
        names.push_back(file.stem().string());
    return names;
}
INSTANTIATE_TEST_SUITE_P(Jobs, ShippedHouse, testing::ValuesIn(job_names()),
                         [](const auto& one) { return one.param; });

}  // namespace
}  // namespace emberpath::desktop
