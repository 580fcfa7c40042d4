// Proves that limits and licences come from a dated file, that the shipped values are the published ones and
// name their source, and that mistakes in such a file are reported like any other.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "sim/units/units.hpp"
#include "tests/support/reference_rows.hpp"
#include "tests/unit/scenario/written.hpp"

namespace emberpath::scenario {
namespace {

namespace fs = std::filesystem;
using worksite::Limits;

const fs::path rules_folder = fs::path(EMBERPATH_SOURCE_DIR) / "scenarios/rules";

std::string text_of(const fs::path& file) {
    const std::ifstream in(file);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

/// The sound job in a house under these rules.
Loaded under(const std::string& rules) {
    const Folder folder;
    folder.write("rules.toml", rules);
    return load(folder.write("job.toml", with(sound_job, "arrival = \"10 min\"",
                                              "arrival = \"10 min\"\nrules = \"rules.toml\"")));
}

const std::string general = text_of(rules_folder / "general.toml");

TEST(Rules, WithoutAFileAreThoseOfTheGeneralOne) {
    const Loaded loaded = under(general);
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_EQ(loaded.job.practice.limits, Limits{});
    EXPECT_EQ(loaded.job.practice.name, "General practice");
    EXPECT_TRUE(worksite::days_of(loaded.job.practice.date)) << loaded.job.practice.date;
    EXPECT_FALSE(loaded.job.practice.holds_in.empty());
}

TEST(Rules, OfEveryShippedHouseAreTheGeneralOnes) {
    for (const auto& file : list_jobs(fs::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs")) {
        const Loaded loaded = load(file);
        EXPECT_FALSE(loaded.job.practice.licences.empty()) << file;
        EXPECT_EQ(loaded.job.practice.limits, Limits{}) << file;
        for (const auto& info : faults::remedies)
            EXPECT_TRUE(loaded.job.practice.licence.covers(info.remedy)) << file << info.word;
    }
}

/// What help says of the kind of work is what the shipped licences go by.
TEST(Rules, CoverWholeKindsOfWork) {
    worksite::Practice practice = under(general).job.practice;
    const auto covered = [&](const char* licence, faults::Skill skill) {
        EXPECT_TRUE(worksite::take_licence(practice, licence)) << licence;
        std::set<bool> found;
        for (const auto& info : faults::remedies)
            if (info.skill == skill) found.insert(practice.licence.covers(info.remedy));
        EXPECT_EQ(found.size(), 1U) << licence << ": some of it and some not";
        return found == std::set{true};
    };
    using enum faults::Skill;
    EXPECT_TRUE(covered("gasfitter", gas));
    EXPECT_TRUE(covered("gasfitter", water));
    EXPECT_FALSE(covered("gasfitter", electrical));
    EXPECT_TRUE(covered("plumber", water));
    EXPECT_FALSE(covered("plumber", gas));
    EXPECT_FALSE(covered("plumber", electrical));
    for (const char* anybody : {"gasfitter", "plumber", "apprentice"})
        EXPECT_TRUE(covered(anybody, words)) << anybody;
    for (const auto& info : faults::remedies)
        EXPECT_EQ(info.skill == words, info.reach == faults::Reach::words) << info.word;
}

/// Key of the rules file, row of the published values, and the value in the row's unit.
struct Published {
    std::string row, key;
    double value;
    bool operator==(const Published&) const = default;
};
std::vector<Published> published() {
    const Limits l;
    return {{"S034", "bathroom_water", l.bathroom_water_k - 273.15},
            {"S035", "care_water", l.care_water_k - 273.15},
            {"S038", "co_eight_hours", l.co_eight_hours * 1e6},
            {"S042", "co_ceiling", l.co_ceiling * 1e6},
            {"S100", "rcd_trips_at", l.rcd_trips_at_a * 1e3},
            {"S103", "rcd_within_at_two", l.rcd_within_at_two_s * 1e3},
            {"S102", "rcd_within_at_five", l.rcd_within_at_five_s * 1e3},
            {"S118", "earth_continuity", l.earth_continuity_ohm},
            {"S119", "earth_leakage", l.earth_leakage_a * 1e3}};
}

TEST(Rules, AgreeWithThePublishedValuesAndCarryTheirSource) {
    const auto rows = reference::read_rows("11_human_safety");
    const std::string sources = general.substr(general.find("[sources]"));
    for (const auto& [id, key, value] : published()) {
        const auto row = std::find_if(rows.begin(), rows.end(),
                                      [&, name = id](const auto& one) { return one.id == name; });
        ASSERT_NE(row, rows.end()) << id;
        EXPECT_NEAR(value, std::stod(row->value), 1e-9) << id << " " << row->quantity;
        const auto at = sources.find("\n" + key + " = \"");
        ASSERT_NE(at, std::string::npos) << key;
        std::string source = sources.substr(at + 1, sources.find('\n', at + 1) - at - 1);
        std::erase(source, '\\');
        EXPECT_NE(source.find(row->source), std::string::npos) << source << "\n" << row->source;
        EXPECT_EQ(source.find("from memory") != std::string::npos, row->status == "memory") << key;
    }
}

TEST(Rules, OfAnotherPlaceMoveTheLimits) {
    const Loaded loaded =
        under(with(general, "co_eight_hours = \"30 ppm\"", "co_eight_hours = \"20 ppm\""));
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_DOUBLE_EQ(loaded.job.practice.limits.co_eight_hours, 20.0e-6);
}

TEST(Rules, MayBuildOnAFileAndChangeOneList) {
    const Folder folder;
    folder.write("general.toml", general);
    folder.write("strict.toml",
                 "builds_on = \"general.toml\"\nname = \"Strict practice\"\n"
                 "[[licence]]\nname = \"fitter\"\nleaves_out = [\"gas_joints\"]\n");
    const Loaded loaded =
        load(folder.write("job.toml", with(sound_job, "arrival = \"10 min\"",
                                           "arrival = \"10 min\"\nrules = \"strict.toml\"")));
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_EQ(loaded.job.practice.name, "Strict practice");
    EXPECT_EQ(worksite::licence_names(loaded.job.practice), std::vector<std::string>{"fitter"});
    EXPECT_FALSE(loaded.job.practice.licence.covers(worksite::Work::gas_joints));
    EXPECT_TRUE(loaded.job.practice.licence.covers(worksite::Work::live_tests));
}

TEST(Rules, AreAskedForTheSourceOfEveryLimit) {
    const auto at = general.find("co_ratio = \"UK");
    ASSERT_NE(at, std::string::npos);
    std::string without = general;
    without.erase(at, without.find('\n', at) - at);
    EXPECT_NE(problems_of(under(without)).find("co_ratio: missing from [sources] of the rules"),
              std::string::npos);
}

/// Keys that came later than the files that are silent about them.
const std::pair<const char*, double Limits::*> later_keys[] = {
    {"scald_water", &Limits::scald_water_k},
    {"spillage", &Limits::spillage},
    {"bare_hand_metal", &Limits::bare_hand_metal_k},
    {"dangerous_voltage", &Limits::dangerous_v},
    {"dangerous_pipe_voltage", &Limits::dangerous_pipe_v},
    {"blood_headache", &Limits::blood_headache},
    {"blood_unfit", &Limits::blood_unfit},
    {"stored_charge", &Limits::stored_charge_v},
    {"leak_test_from", &Limits::leak_test_from_pa},
    {"leak_test_drop", &Limits::leak_test_drop_pa},
    {"roof_stay", &Limits::roof_stay_s},
    {"ladder_height", &Limits::ladder_height_m},
    {"ladder_wind", &Limits::ladder_wind_pa}};

/// Without the first line from `from` on that holds the key.
std::string without_line(std::string text, std::size_t from, const std::string& key) {
    const auto at = text.find("\n" + key + " = ", from) + 1;
    EXPECT_NE(at, 0U) << key;
    return text.erase(at, text.find('\n', at) + 1 - at);
}

TEST(Rules, ThatAreSilentAboutAHarmKeepTheLimitOfTheProgram) {
    std::string silent = general;
    for (const auto& [key, member] : later_keys) {
        silent = without_line(silent, 0, key);                         // of the limits
        silent = without_line(silent, silent.find("[sources]"), key);  // and its source
    }
    const Loaded loaded = under(silent);
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_EQ(loaded.job.practice.limits, Limits{});
}

TEST(Rules, ThatMoveALimitOfHarmMoveThatOneAlone) {
    for (const auto& [key, member] : later_keys) {
        const std::string line = std::string(key) + " = \"";
        const auto at = general.find(line) + line.size();
        std::string moved = general;
        const std::string name = key;
        const std::string to = name == "blood_unfit"      ? "21"
                               : name == "leak_test_from" ? "1.5"
                               : name == "ladder_height"  ? "3"
                                                          : "15";
        moved.replace(at, moved.find(' ', at) - at, to);
        if (std::string(key) == "scald_water" || std::string(key) == "bare_hand_metal")
            moved.replace(at, 2, "51");
        const Loaded loaded = under(moved);
        ASSERT_EQ(problems_of(loaded), "") << key;
        Limits limits = loaded.job.practice.limits;
        EXPECT_NE(limits.*member, Limits{}.*member) << key;
        limits.*member = Limits{}.*member;
        EXPECT_EQ(limits, Limits{}) << key;
    }
}

TEST(Rules, AreAskedForTheSourceOfALimitTheyNeedNotState) {
    for (const auto& [key, member] : later_keys)
        EXPECT_NE(problems_of(under(without_line(general, general.find("[sources]"), key)))
                      .find(std::string(key) + ": found without its source"),
                  std::string::npos)
            << key;
}

TEST(Rules, RefuseADateThatIsNoneAndAHeadacheBeyondBeingUnfit) {
    const std::string dated =
        problems_of(under(with(general, "date = \"2026-11-28\"", "date = \"late in November\"")));
    EXPECT_NE(dated.find("date: found \"late in November\", no date"), std::string::npos) << dated;
    const std::string blood =
        problems_of(under(with(general, "blood_headache = \"10 %\"", "blood_headache = \"20 %\"")));
    EXPECT_NE(blood.find("blood_unfit: found \"20 %\", not above blood_headache"),
              std::string::npos)
        << blood;
}

TEST(Rules, NameAMisspeltRemedyAndItsNeighbour) {
    const std::string text =
        problems_of(under(with(general, "\"replace_igniter\"", "\"replace_ignitor\"")));
    EXPECT_NE(text.find("found \"replace_ignitor\", not a remedy or kind of work"),
              std::string::npos)
        << text;
    EXPECT_NE(text.find("did you mean \"replace_igniter\"?"), std::string::npos) << text;
}

TEST(Rules, RefuseTwoLicencesOfOneNameAndBothKindsOfList) {
    const std::string twice =
        problems_of(under(with(general, "name = \"plumber\"", "name = \"gasfitter\"")));
    EXPECT_NE(twice.find("found \"gasfitter\" a second time"), std::string::npos) << twice;
    const std::string both = problems_of(
        under(with(general, "covers_only = [", "leaves_out = [\"gas_joints\"]\ncovers_only = [")));
    EXPECT_NE(both.find("covers_only: found beside leaves_out"), std::string::npos) << both;
}

TEST(Rules, PutTheirFileIntoTheFingerprint) {
    EXPECT_NE(under(general).hash, under(general + "# a word more\n").hash);
}

}  // namespace
}  // namespace emberpath::scenario
