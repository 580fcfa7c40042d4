// Proves that the same inputs give the same bits: one heater and every lane of a pack, baseline and wide
// instructions, four builds by two compilers, today and when the expected hashes were stored.

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <set>
#include <string>

#include "sim/math/widest.hpp"
#include "sim/worksite/heater_lanes.hpp"
#include "tests/laws/story.hpp"

namespace emberpath::laws {
namespace {

using BaselinePack = math::Pack<8, math::Baseline>;
using WidePack = math::Pack<8, math::Wide>;

/// Changed only together with the physics, the controller or the stories, and never by a compiler.
constexpr std::uint64_t expected[3] = {0x1ca2e72ed1cdd475, 0x0f0d35cc28230981, 0x79e08dc398685b85};

std::uint64_t stored(Story story) {
    return expected[static_cast<std::size_t>(story)];
}

class Determinism : public testing::TestWithParam<Story> {};

TEST_P(Determinism, EveryLaneOfAPackHasTheBitsOfItsHeaterAlone) {
    const Hashes alone = scalar_story(GetParam());
    const Hashes packed = pack_story<BaselinePack>(GetParam());
    for (std::size_t lane = 0; lane < story_lanes; ++lane)
        EXPECT_EQ(alone[lane], packed[lane]) << "lane " << lane;
}

TEST_P(Determinism, WidestInstructionsGiveTheBitsOfBaselineOnes) {
    if (!worksite::widest_is_supported()) GTEST_SKIP() << "this processor has no such instructions";
    const Hashes baseline = pack_story<BaselinePack>(GetParam());
    const Hashes widest = pack_story<math::Pack<8, math::Widest>>(GetParam());
    for (std::size_t lane = 0; lane < story_lanes; ++lane)
        EXPECT_EQ(baseline[lane], widest[lane]) << "lane " << lane;
}

TEST_P(Determinism, WideInstructionsGiveTheBitsOfBaselineOnes) {
    if (!worksite::wide_is_supported()) GTEST_SKIP() << "this processor has no wide instructions";
    const Hashes baseline = pack_story<BaselinePack>(GetParam());
    const Hashes wide = pack_story<WidePack>(GetParam());
    for (std::size_t lane = 0; lane < story_lanes; ++lane)
        EXPECT_EQ(baseline[lane], wide[lane]) << "lane " << lane;
}

TEST_P(Determinism, StoredHashIsMetAgain) {
    EXPECT_EQ(combined(pack_story<BaselinePack>(GetParam())), stored(GetParam()))
        << "if physics, controller or story were changed on purpose, store the new value";
}

TEST_P(Determinism, StoryIsWorthHashing) {
    // A hash of heaters that all stand still would prove nothing.
    const Hashes hashes = pack_story<BaselinePack>(GetParam());
    EXPECT_EQ(std::set<std::uint64_t>(hashes.begin(), hashes.end()).size(), story_lanes);
    worksite::Heater<double> heater;
    heater.install(0, {lanes_of(GetParam())[0], settings_of_lanes(GetParam())[0]});
    plant::settle_cold(heater.plant, inputs_of(GetParam(), 0).surroundings);
    std::set<double> phases, banks;
    for (int tick = 0; tick < ticks_of(GetParam()); ++tick) {
        heater.tick(inputs_of(GetParam(), tick));
        const controller::Readout now = controller::readout(heater.controller, 0);
        phases.insert(static_cast<double>(now.phase));
        if (now.phase == controller::Phase::run) banks.insert(now.banks_open);
    }
    EXPECT_EQ(phases.size(), 6U) << "all phases but lockout and restart";
    EXPECT_EQ(banks.size(), 3U);
}

std::string house_of(const testing::TestParamInfo<Story>& info) {
    constexpr std::array words{"NaturalGas", "Propane", "ATallHouse"};
    return words.at(static_cast<std::size_t>(info.param));
}
INSTANTIATE_TEST_SUITE_P(On, Determinism, testing::ValuesIn(stories), house_of);

/// What a script of this folder prints, and its exit status.
struct Printed {
    std::string text;
    int status;
};
constexpr int nothing_to_test = 77;

Printed run_script(const std::string& script_and_arguments) {
    const std::string command =
        EMBERPATH_SOURCE_DIR "/tests/laws/" + script_and_arguments + " 2>&1";
    FILE* pipe = popen(command.c_str(), "r");
    Printed out{"", -1};
    if (pipe == nullptr) return out;
    char buffer[256];
    while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) out.text += buffer;
    out.status = WEXITSTATUS(pclose(pipe));
    return out;
}

std::string expected_print() {
    std::string text;
    for (const Story story : stories) {
        char line[120];
        const auto value = static_cast<unsigned long long>(stored(story));
        std::snprintf(line, sizeof line, "%s\none by one %016llx\nas a pack  %016llx\n",
                      title(story), value, value);
        text += line;
    }
    return text;
}

class EveryCompiler : public testing::TestWithParam<const char*> {};

TEST_P(EveryCompiler, GivesTheStoredHash) {
    const Printed printed = run_script(std::string("hash_with ") + GetParam());
    if (printed.status == nothing_to_test) GTEST_SKIP() << "not installed: " << GetParam();
    ASSERT_EQ(printed.status, 0) << printed.text;
    EXPECT_EQ(printed.text, expected_print());
}

INSTANTIATE_TEST_SUITE_P(At, EveryCompiler,
                         testing::Values("g++ -O0", "g++ -O3", "clang++ -O0", "clang++ -O3"),
                         [](const auto& flags) {
                             std::string name = flags.param;
                             std::erase_if(name, [](char c) { return c == ' ' || c == '-'; });
                             while (name.find('+') != std::string::npos)
                                 name.replace(name.find('+'), 1, "x");
                             return name;
                         });

// An old processor must never meet an instruction it lacks: a function that both kinds of code define under one
// name could be taken from the wide side for the whole program.
TEST(WideInstructions, OfferNoFunctionToTheRestOfTheProgram) {
#if defined(__SANITIZE_ADDRESS__)
    GTEST_SKIP() << "sanitizers add functions of their own";
#endif
    const Printed printed = run_script("wide_code_is_alone " EMBERPATH_BINARY_DIR);
    if (printed.status == nothing_to_test) GTEST_SKIP() << "no nm, or no libraries to look at";
    ASSERT_EQ(printed.status, 0) << printed.text;
    EXPECT_EQ(printed.text, "");
}

}  // namespace
}  // namespace emberpath::laws
