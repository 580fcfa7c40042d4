// Proves that the row checker cannot pass by accident: wrong values, unaccounted rows, idle excuses and
// unreadable conditions all fail.

#include "tests/support/reference_rows.hpp"

#include <gtest/gtest-spi.h>
#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

namespace emberpath::reference {
namespace {

const std::vector<Row>& one_row() {
    static const std::vector<Row> rows{{"R1", "density", "t=5 degC, p=0.1 MPa", "10.0", "kg/m3",
                                        "rel 1e-2; abs 2 (other)", "s", "read", ""}};
    return rows;
}

Tally run(double value, std::size_t tolerance = 0) {
    const std::vector<Check> checks{
        {"f", quantity("density"), [value](const Row&) { return value; }, tolerance}};
    return check_rows("", one_row(), checks, {});
}

TEST(ReferenceRows, PassWithinTheToleranceThatIsMeant) {
    const Tally tally = run(10.09);
    EXPECT_EQ(tally.rows, 1U);
    EXPECT_EQ(tally.checked, 1U);
    EXPECT_EQ(tally.failed, 0U);
    EXPECT_EQ(run(11.9, 1).failed, 0U);
}

TEST(ReferenceRows, FailOutsideIt) {
    EXPECT_NONFATAL_FAILURE(run(10.11), "rel 1e-2 exceeded");
    EXPECT_NONFATAL_FAILURE(run(12.1, 1), "abs 2 (other) exceeded");
    EXPECT_NONFATAL_FAILURE(run(std::nan(""), 1), "exceeded");
    EXPECT_NONFATAL_FAILURE(run(10.0, 2), "states no tolerance");
}

TEST(ReferenceRows, FailWhenARowIsNeitherCheckedNorSkipped) {
    EXPECT_NONFATAL_FAILURE(check_rows("", one_row(), {}, {}), "neither checked nor skipped");
}

TEST(ReferenceRows, FailWhenAnExcuseOrACheckHasNoRow) {
    static const std::vector<Skip> needed{{quantity("density"), "needed"}};
    static const std::vector<Skip> idle{{quantity("density"), "needed"}, {quantity("x"), "idle"}};
    static const std::vector<Check> unused{{"g", quantity("x"), [](const Row&) { return 0.0; }}};
    EXPECT_EQ(check_rows("", one_row(), {}, needed).skipped, 1U);
    EXPECT_NONFATAL_FAILURE(check_rows("", one_row(), {}, idle), "no row needs the excuse: idle");
    EXPECT_NONFATAL_FAILURE(check_rows("", one_row(), unused, needed), "no row is computed by: g");
}

TEST(ReferenceRows, FailWhenAKnownMissIsMetOrNotComputed) {
    static const std::vector<Skip> missed{{quantity("density"), "off", true}};
    static const std::vector<Check> off{{"f", quantity("density"), [](const Row&) { return 9.0; }}};
    static const std::vector<Check> met{
        {"f", quantity("density"), [](const Row&) { return 10.0; }}};
    EXPECT_EQ(check_rows("", one_row(), off, missed).known_misses, 1U);
    EXPECT_NONFATAL_FAILURE(check_rows("", one_row(), met, missed), "is no known miss");
    EXPECT_NONFATAL_FAILURE(check_rows("", one_row(), {}, missed), "nothing computes it");
}

TEST(ReferenceRows, FailWhenTheConditionsLackAnInput) {
    static const std::vector<Check> lost{
        {"h", quantity("density"), [](const Row& row) { return after(row, "humidity "); }}};
    EXPECT_NONFATAL_FAILURE(check_rows("", one_row(), lost, {}), "no number after");
}

TEST(ReferenceRows, FindNumbersByTheWordsAroundThem) {
    Row row = one_row().front();
    row.conditions =
        "dt=9 K, t=-5.5 degC, 1e-3 mm, tube D 15/19 mm; oil 0.1 kg/s 100->60 degC (cp 2131)";
    EXPECT_EQ(after(row, "t="), -5.5);  // not the one inside "dt="
    EXPECT_EQ(after(row, "D "), 15.0);
    EXPECT_EQ(after(row, "/"), 19.0);
    EXPECT_EQ(before(row, "->"), 100.0);
    EXPECT_EQ(after(row, "->"), 60.0);
    EXPECT_EQ(after(from(row, "oil"), "(cp "), 2131.0);
    EXPECT_EQ(before(row, " degC,"), -5.5);
    EXPECT_THROW((void)before(row, " furlong"), std::runtime_error);
    EXPECT_THROW((void)after(row, "speed"), std::runtime_error);
}

TEST(ReferenceRows, ReadEveryKindOfTolerance) {
    EXPECT_TRUE(within(2.0, 2.0, "exact"));
    EXPECT_FALSE(within(2.000001, 2.0, "exact"));
    EXPECT_TRUE(within(20.9, 21.118, "rel 1e-3 or abs 0.3"));
    EXPECT_TRUE(within(398.3, 398.0, "rel 1e-3 or abs 0.0"));
    EXPECT_FALSE(within(21.5, 21.118, "rel 1e-3 or abs 0.3"));
    EXPECT_TRUE(within(0.34, 0.5, "factor 1.5 (catalogue scatter)"));
    EXPECT_FALSE(within(0.33, 0.5, "factor 1.5 (catalogue scatter)"));
    EXPECT_TRUE(within(0.95, 1.0, "upper limit"));
    EXPECT_FALSE(within(1.01, 1.0, "upper limit"));
    EXPECT_THROW((void)within(1.0, 1.0, "info"), std::runtime_error);
    EXPECT_THROW((void)within(1.0, 1.0, ""), std::runtime_error);
}

TEST(ReferenceRows, CountRecalledValuesAsPlausibilityChecks) {
    std::vector<Row> recalled = one_row();
    recalled.front().status = "memory";
    const std::vector<Check> checks{{"f", quantity("density"), [](const Row&) { return 10.0; }}};
    EXPECT_EQ(check_rows("", recalled, checks, {}).plausibility, 1U);
}

}  // namespace
}  // namespace emberpath::reference
