// Proves that a job can bring instruments that are not as they should be and what its release check found, and that a
// house can have dangers of its own,
// that without a word all is well, and that mistakes there are reported like any other.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/scenario/written.hpp"

namespace emberpath::scenario {
namespace {

using worksite::Battery;
using worksite::Instrument;

Loaded load_with(const std::string& tools, const std::string& dangers = {}) {
    const Folder folder;
    return load(folder.write("job.toml", with(with(sound_job, "[site]", tools + "\n[site]"),
                                              "[[site.tap]]", dangers + "\n[[site.tap]]")));
}

TEST(Kit, IsSoundWhereTheJobSaysNothing) {
    const Loaded loaded = load_with({});
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_TRUE(loaded.job.kit.visited_on.empty());
    for (const auto& piece : loaded.job.kit.pieces) EXPECT_EQ(piece, worksite::Piece{});
}

TEST(Kit, TakesDatesBatteriesAndWearFromTheJob) {
    const Loaded loaded = load_with(R"(
[[tool]]
name = "thermometer"
calibrated_on = "2025-03-02"
off_by = "2.5 K"

[[tool]]
name = "analyser"
battery = "low"
off_by = "-1.2 %"

[[tool]]
name = "manometer"
reads = "92 %"
)");
    ASSERT_EQ(problems_of(loaded), "");
    const auto& kit = loaded.job.kit;
    EXPECT_EQ(kit.of(Instrument::thermometer).calibrated_on, "2025-03-02");
    EXPECT_DOUBLE_EQ(kit.of(Instrument::thermometer).off_by, 2.5);
    EXPECT_EQ(kit.of(Instrument::analyser).battery, Battery::low);
    EXPECT_DOUBLE_EQ(kit.of(Instrument::analyser).off_by, -0.012);
    EXPECT_DOUBLE_EQ(kit.of(Instrument::manometer).reads, 0.92);
    EXPECT_EQ(kit.of(Instrument::scale), worksite::Piece{});
}

struct Mistake {
    const char* table;
    const char* keys;
    const char* found;
};
class MistakenTable : public testing::TestWithParam<Mistake> {};

TEST_P(MistakenTable, IsReported) {
    const Mistake& one = GetParam();
    const auto text = problems_of(load_with(std::string(one.table) + "\n" + one.keys));
    EXPECT_NE(text.find(one.found), std::string::npos) << text;
}

INSTANTIATE_TEST_SUITE_P(
    Kit, MistakenTable,
    testing::Values(
        Mistake{"[[tool]]", "name = \"thermometer\"\ncalibrated_on = \"last spring\"", "no date"},
        Mistake{"[[tool]]", "name = \"thermometer\"\noff_by = \"2.5 kPa\"", "off_by: found"},
        Mistake{"[[tool]]", "name = \"flow cup\"\noff_by = \"0.1 L/min\"",
                "an instrument that has none"},
        Mistake{"[[tool]]", "name = \"flow cup\"\nbattery = \"flat\"",
                "battery: found one of an instrument"},
        Mistake{"[[tool]]", "name = \"scale\"\n[[tool]]\nname = \"scale\"", "a second time"},
        Mistake{"[[tool]]", "battery = \"low\"", "name: missing from a [[tool]]"},
        Mistake{"[[tool]]", "name = \"spirit level\"", "not a word this key knows"}),
    [](const auto& i) { return "Number" + std::to_string(i.index); });

TEST(ReleaseCheck, IsNoneWhereTheJobSaysNothing) {
    EXPECT_TRUE(load_with({}).job.release.checked_on.empty());
}

TEST(ReleaseCheck, ComesFromTheJob) {
    const Loaded loaded = load_with(R"([release]
checked_on = "2026-11-28"
of = "0123456789abcdef"
houses = 50
shown = 33
refused = "the reference path takes 70 minutes, and 10 to 60 are wanted."
)");
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_EQ(loaded.job.release.checked_on, "2026-11-28");
    EXPECT_EQ(loaded.job.release.of, "0123456789abcdef");
    EXPECT_EQ(loaded.job.release.houses, 50);
    EXPECT_EQ(loaded.job.release.shown, 33);
    EXPECT_EQ(loaded.job.release.refused,
              "the reference path takes 70 minutes, and 10 to 60 are wanted.");
}

INSTANTIATE_TEST_SUITE_P(
    ReleaseCheck, MistakenTable,
    testing::Values(
        Mistake{"[release]",
                "checked_on = \"lately\"\nof = \"0123456789abcdef\"\nhouses = 50\nshown = 49",
                "no date"},
        Mistake{"[release]",
                "checked_on = \"2026-11-28\"\nof = \"0123456789abcdef\"\nhouses = 50\nshown = 51",
                "51 of 50 houses"},
        Mistake{"[release]",
                "checked_on = \"2026-11-28\"\nof = \"0123456789abcdef\"\nhouses = 29.5\nshown = 29",
                "not a whole number"},
        Mistake{"[release]", "checked_on = \"2026-11-28\"\nof = \"0123456789abcdef\"\nhouses = 50",
                "shown: missing from [release]"},
        Mistake{"[release]", "checked_on = \"2026-11-28\"\nhouses = 50\nshown = 50",
                "of: missing from [release]"},
        Mistake{"[release]",
                "checked_on = \"2026-11-28\"\nof = \"0123456789abcdef\"\nhouses = "
                "19\nshown = 19",
                "19"}),
    [](const auto& i) { return "Number" + std::to_string(i.index); });

std::string release_table(const std::string& of, const std::string& day) {
    return "[release]\nchecked_on = \"" + day + "\"\nof = \"" + of +
           "\"\nhouses = 50\nshown = 50\n";
}

TEST(ReleaseCheck, ChangesNoFingerprintAndIsOutdatedOnlyWhereTheRestHasChanged) {
    const std::string of = load_with({}).hash;
    const Loaded checked = load_with(release_table(of, "2026-11-28"));
    ASSERT_EQ(problems_of(checked), "");
    EXPECT_EQ(checked.hash, of);
    EXPECT_EQ(load_with(release_table(of, "2026-11-29")).hash, of);
    EXPECT_FALSE(checked.job.release.outdated);
    const auto outdated = testing::Contains(testing::HasSubstr("--release"));
    EXPECT_THAT(doubts_about(checked.job), testing::Not(outdated));

    const std::string leak = "[site.dangers]\ngas_leak = \"0.3 L/min\"\n";
    const Loaded changed = load_with(release_table(of, "2026-11-28"), leak);
    ASSERT_EQ(problems_of(changed), "");
    EXPECT_NE(changed.hash, of);
    EXPECT_TRUE(changed.job.release.outdated);
    EXPECT_THAT(doubts_about(changed.job), outdated);
}

TEST(Dangers, AreNoneWhereTheHouseSaysNothing) {
    const auto& dangers = load_with({}).job.site.dangers;
    EXPECT_DOUBLE_EQ(dangers.leak_m3_per_s, 0.0);
    EXPECT_DOUBLE_EQ(dangers.terminal_height_m, 0.0);
    EXPECT_FALSE(dangers.low_place || dangers.cylinder_close || dangers.scorched ||
                 dangers.soft_ground || dangers.old_sheet || dangers.pipe_in_roof ||
                 dangers.children);
}

TEST(Dangers, ComeFromTheHouse) {
    const Loaded loaded = load_with({}, R"([site.dangers]
gas_leak = "0.3 L/min"
terminal_height = "4 m"
soft_ground = true
old_sheet = true
children = true
)");
    ASSERT_EQ(problems_of(loaded), "");
    const auto& dangers = loaded.job.site.dangers;
    EXPECT_DOUBLE_EQ(dangers.leak_m3_per_s, 0.3 / 60000.0);
    EXPECT_DOUBLE_EQ(dangers.terminal_height_m, 4.0);
    EXPECT_TRUE(dangers.soft_ground && dangers.old_sheet && dangers.children);
    EXPECT_FALSE(dangers.scorched);
}

TEST(Dangers, OfACylinderNeedACylinder) {
    const auto text = problems_of(load_with({}, "[site.dangers]\ncylinder_close = true\n"));
    EXPECT_NE(text.find("found a cylinder at a house on natural gas"), std::string::npos) << text;
}

}  // namespace
}  // namespace emberpath::scenario
