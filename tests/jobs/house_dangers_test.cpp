// Proves: what a shipped house holds beside its heater's fault asks for a precaution; the good path takes it, and the
// same path without it breaks the rules of that danger and no other.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;

const fs::path root = EMBERPATH_SOURCE_DIR;

struct Precaution {
    const char* name;
    const char* job;
    std::vector<std::string> left_out;  // sentences
    std::vector<std::string> put_in;    // before the first that is left out
    std::set<std::string> broken;       // rules
};
void PrintTo(const Precaution& one, std::ostream* out) {
    *out << one.name;
}

std::set<std::string> broken_in(const std::string& job_name, const Precaution* without) {
    const auto loaded = scenario::load(root / "scenarios/jobs" / (job_name + ".toml"));
    EXPECT_TRUE(loaded.good());
    std::ifstream in(root / "tests/jobs/paths" / (job_name + ".good.acts"));
    std::ostringstream text;
    text << in.rdbuf();
    const auto script = worksite::read_script(text.str(), job_name, loaded.job);
    EXPECT_TRUE(script.problems.empty());
    worksite::Attempt attempt(loaded.job, 1, worksite::Mode::assessed);
    std::size_t left_out = 0;
    for (const auto& line : script.lines) {
        if (without != nullptr && std::find(without->left_out.begin(), without->left_out.end(),
                                            line.sentence) != without->left_out.end()) {
            if (left_out++ == 0)
                for (const auto& sentence : without->put_in) attempt.perform(sentence);
            continue;
        }
        if (attempt.over()) break;
        EXPECT_NE(attempt.perform(line.sentence).entry, nullptr) << line.sentence;
    }
    if (without != nullptr) {
        EXPECT_GE(left_out, without->left_out.size()) << "it was not there";
    }
    std::set<std::string> rules;
    for (const auto& breach : attempt.breaches()) rules.insert(breach.rule);
    return rules;
}

const std::vector<Precaution>& precautions() {
    static const std::vector<Precaution> all{
        {"H10SmellOfGasPeopleStay", "kestrel", {"move people out"}, {}, {"people_in_gas"}},
        {"H10SmellOfGasSwitchWorked",
         "kestrel",
         {"move people out"},
         {"turn off heater", "move people out"},
         {"spark_in_gas"}},
        {"H14PropaneLiesLow", "kestrel", {"check low places"}, {}, {"low_unchecked"}},
        {"H15CylinderBadlyPlaced",
         "quarry",
         {"move cylinder"},
         {"remake joint cylinder"},  // as often made as on the good path: which joint weeps is drawn
         {"cylinder_left", "not_reported"}},
        {"H24ScorchMarks",
         "mallow",
         {"shut gas at heater", "turn off heater", "issue unsafe notice", "tag heater"},
         {},
         {"scorch_left", "spillage_left"}},
        {"H29Ladder", "linnet", {"tie ladder"}, {}, {"fall"}},
        {"H29LadderUnlooked", "linnet", {"check ladder"}, {}, {"ladder_unchecked"}},
        {"H30OldSheet",
         "larch",
         {"look at flue terminal"},
         {"put on glasses", "clear flue terminal"},
         {"fibres", "not_reported"}},
        {"H31RoofSpace", "clover", {"say where you go"}, {}, {"roof_space"}},
        {"H32Children", "bramble", {"keep people away"}, {}, {"bystander"}},
    };
    return all;
}

class HouseDanger : public testing::TestWithParam<Precaution> {};

TEST_P(HouseDanger, IsMetOnTheGoodPathAndBreaksItsRuleWithoutThePrecaution) {
    EXPECT_EQ(broken_in(GetParam().job, nullptr), std::set<std::string>{});
    EXPECT_EQ(broken_in(GetParam().job, &GetParam()), GetParam().broken);
}

INSTANTIATE_TEST_SUITE_P(Each, HouseDanger, testing::ValuesIn(precautions()),
                         [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace emberpath
