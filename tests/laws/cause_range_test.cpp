// Proves where the symptomatic range of each cause begins: at its least severity somebody notices (a lockout or
// relight, water 2 K off the set point, or carbon monoxide over 100 ppm in a steady flue), a little below nobody.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "tests/laws/faulty_house.hpp"

namespace emberpath::laws {
namespace {

using faults::Cause;

/// What a household, or an analyser in a steady flue, would notice of a draw; empty when nothing.
std::string noticed(const faults::CauseInfo& row, double severity, double asked_lpm) {
    FaultyHouse house(row.cause, severity, row.cylinder_only);
    house.open_taps(asked_lpm);
    house.run(row.cylinder_only ? 1800.0 : 600.0);
    if (house.first_event_s()) return std::string(event_name(house.latest_event()));
    const plant::Observables now = house.look().plant;
    if (std::abs(now.outlet_water_k - (50.0 + celsius)) > 2.0) return "water off the set point";
    if (house.look().readout.powered < 0.5) return "display dark";
    if (now.electrical.pipe_v > 25.0) return "taps tingle";
    if (row.cause != Cause::wind_gust && now.co_share > 100.0e-6) return "carbon monoxide";
    return {};
}

std::string noticed_in_any_draw(const faults::CauseInfo& row, double severity) {
    for (const double asked : {3.5, 10.0, 16.0}) {
        std::string what = noticed(row, severity, asked);
        if (!what.empty()) return what;
    }
    return {};
}

class SymptomaticRange : public testing::TestWithParam<faults::CauseInfo> {};

TEST_P(SymptomaticRange, BeginsWhereSomebodyNotices) {
    const faults::CauseInfo& row = GetParam();
    EXPECT_NE(noticed_in_any_draw(row, row.least_severity), "") << row.least_severity;
    if (row.has_sign) {
        EXPECT_NE(noticed_in_any_draw(row, -row.least_severity), "");
    }
}

TEST_P(SymptomaticRange, IsSilentAnEighthBelow) {
    const faults::CauseInfo& row = GetParam();
    if (row.on_off) return;
    EXPECT_EQ(noticed_in_any_draw(row, 0.875 * row.least_severity), "");
}

TEST_P(SymptomaticRange, ShowsAtItsEnd) {
    const faults::CauseInfo& row = GetParam();
    EXPECT_NE(noticed_in_any_draw(row, row.greatest_severity), "");
}

INSTANTIATE_TEST_SUITE_P(Catalogue, SymptomaticRange,
                         testing::ValuesIn(faults::catalogue().begin() + 1,
                                           faults::catalogue().end()),
                         [](const auto& row) { return std::string(row.param.word); });

TEST(SoundHeater, GivesNobodyAnythingToNotice) {
    EXPECT_EQ(noticed_in_any_draw(faults::info(Cause::no_fault), 0.0), "");
}

}  // namespace
}  // namespace emberpath::laws
