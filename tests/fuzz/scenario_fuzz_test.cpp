// Proves that no scenario file, however damaged, makes the loader fall over: every outcome is a job or a
// problem with a position.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "sim/math/random.hpp"
#include "sim/scenario/scenario.hpp"

namespace emberpath::scenario {
namespace {

namespace fs = std::filesystem;

const fs::path scenarios = fs::path(EMBERPATH_SOURCE_DIR) / "scenarios";

std::string bytes_of(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

class Mutator {
  public:
    explicit Mutator(std::uint64_t seed) : random_(seed, "scenario fuzz") {}

    std::string mutate(std::string text) {
        const std::size_t times = 1 + below(4);
        for (std::size_t time = 0; time < times && !text.empty(); ++time) once(text);
        return text;
    }

  private:
    std::size_t below(std::size_t limit) {
        return static_cast<std::size_t>(random_.uniform() * static_cast<double>(limit));
    }

    std::string_view token() {
        static constexpr std::string_view tokens[] = {"nan",
                                                      "inf",
                                                      "-1",
                                                      "1e400",
                                                      "99999999999999999999",
                                                      "\"",
                                                      "\"\"\"",
                                                      "[[",
                                                      "]]",
                                                      "{",
                                                      "}",
                                                      "=",
                                                      ".",
                                                      "#",
                                                      "\n",
                                                      "\r\n",
                                                      "\0x\x01",
                                                      "°",
                                                      "\xc2",
                                                      "true",
                                                      "1979-05-27T07:32:00Z",
                                                      "[",
                                                      "[]",
                                                      "{}",
                                                      "'",
                                                      "\\u00",
                                                      "\"-5 °C\"",
                                                      "\"1e9 kPa\"",
                                                      "builds_on = \"tanager.toml\"\n",
                                                      "[[fault]]\n",
                                                      "[site]\n",
                                                      "\"/dev/zero\""};
        return tokens[below(std::size(tokens))];
    }

    std::string random_line(const std::string& text) {
        const std::size_t from = text.rfind('\n', below(text.size()));
        const std::size_t begin = from == std::string::npos ? 0 : from + 1;
        const std::size_t end = text.find('\n', begin);
        return text.substr(begin, end == std::string::npos ? end : end + 1 - begin);
    }

    void once(std::string& text) {
        const std::size_t at = below(text.size());
        switch (below(7)) {
            case 0:
                text[at] = static_cast<char>(below(256));
                break;
            case 1:
                text.erase(at, 1 + below(30));
                break;
            case 2:
                text.insert(at, token());
                break;
            case 3:  // a value replaced
                if (const std::size_t equals = text.find("= ", at); equals != std::string::npos) {
                    const std::size_t end = text.find('\n', equals);
                    text.replace(equals + 2, end - equals - 2, token());
                }
                break;
            case 4:
                text.insert(at, random_line(text));
                break;
            case 5: {  // a line taken away
                const std::string line = random_line(text);
                text.erase(text.find(line), line.size());
                break;
            }
            default:
                text.resize(at);
        }
    }

    math::Random random_;
};

void expect_outcome(const fs::path& file, const std::string& text) {
    const Loaded loaded = load(file);
    for (const diagnostics::Diagnostic& problem : loaded.problems) {
        EXPECT_FALSE(problem.file.empty()) << text;
        EXPECT_FALSE(problem.found.empty()) << text;
        EXPECT_FALSE(problem.expected.empty()) << text;
        EXPECT_GE(problem.line, 0) << text;
    }
    if (!loaded.good()) {
        EXPECT_FALSE(diagnostics::to_text(loaded.problems, "nothing was loaded.").empty());
        return;
    }
    EXPECT_FALSE(loaded.job.site.taps.empty()) << text;
    EXPECT_FALSE(loaded.job.faults.empty()) << text;
    EXPECT_GT(loaded.job.site.arrival_s, 0.0) << text;
}

class ScenarioFuzz : public testing::Test {
  protected:
    void SetUp() override {
        folder_ = fs::path(EMBERPATH_BINARY_DIR) / "fuzz" /
                  testing::UnitTest::GetInstance()->current_test_info()->name();
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        fs::copy(scenarios, folder_, fs::copy_options::recursive);
    }
    void TearDown() override { fs::remove_all(folder_); }

    /// Damages one file again and again and loads `job`, which uses it.
    void damage(const fs::path& victim, const fs::path& job, std::uint64_t seed, int times) {
        const std::string sound = bytes_of(victim);
        Mutator mutator(seed);
        for (int time = 0; time < times; ++time) {
            const std::string text = mutator.mutate(sound);
            std::ofstream(victim, std::ios::binary) << text;
            expect_outcome(job, text);
            if (HasFailure()) return;
        }
        std::ofstream(victim, std::ios::binary) << sound;
    }
    fs::path folder_;
};

TEST_F(ScenarioFuzz, DamagedJobsAreRefusedOrLoaded) {
    std::uint64_t seed = 1;
    for (const fs::path& job : list_jobs(folder_ / "jobs")) damage(job, job, seed++, 500);
}

TEST_F(ScenarioFuzz, DamagedSitesAndHeatersAreRefusedOrLoaded) {
    const fs::path job = folder_ / "jobs/quarry.toml";
    damage(folder_ / "sites/quarry-cottage.toml", job, 101, 1500);
    damage(folder_ / "heaters/generic-lpg.toml", job, 102, 500);
    damage(folder_ / "heaters/generic-ng.toml", job, 103, 500);
}

TEST_F(ScenarioFuzz, RandomBytesAreRefused) {
    math::Random random(7, "random bytes");
    const fs::path file = folder_ / "jobs/noise.toml";
    for (int time = 0; time < 500; ++time) {
        std::string text(static_cast<std::size_t>(random.uniform() * 400.0), '\0');
        for (char& c : text) c = static_cast<char>(random.next() & 0xffU);
        std::ofstream(file, std::ios::binary) << text;
        EXPECT_FALSE(load(file).good());
        expect_outcome(file, text);
    }
}

}  // namespace
}  // namespace emberpath::scenario
