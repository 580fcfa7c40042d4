// Proves where the symptomatic range of each cause begins: at its least severity somebody notices (a lockout or
// relight, water 2 K off the set point or 15 % short, or carbon monoxide over 100 ppm in a steady flue), a little
// below nobody; causes that only an instrument shows at first are proved to be so.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "tests/laws/faulty_house.hpp"

namespace emberpath::laws {
namespace {

using faults::Cause;
using faults::Noticed;

constexpr std::array draws_lpm{3.5, 10.0, 16.0};

/// Water that a sound house gives for such a draw [m3/s].
double sound_flow(double asked_lpm, bool propane) {
    FaultyHouse house(Cause::no_fault, 0.0, propane);
    house.open_taps(asked_lpm);
    house.run(300.0);
    return house.look().plant.hot_water_m3_per_s;
}

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
    if (now.hot_water_m3_per_s < 0.85 * sound_flow(asked_lpm, row.cylinder_only))
        return "little water";
    return {};
}

std::string noticed_in_any_draw(const faults::CauseInfo& row, double severity) {
    for (const double asked : draws_lpm) {
        std::string what = noticed(row, severity, asked);
        if (!what.empty()) return what;
    }
    return {};
}

class SymptomaticRange : public testing::TestWithParam<faults::CauseInfo> {};

TEST_P(SymptomaticRange, BeginsWhereSomebodyNotices) {
    const faults::CauseInfo& row = GetParam();
    if (row.noticed == Noticed::by_measuring_first) return;  // see the next
    EXPECT_NE(noticed_in_any_draw(row, row.least_severity), "") << row.least_severity;
    if (row.has_sign) {
        EXPECT_NE(noticed_in_any_draw(row, -row.least_severity), "");
    }
}

TEST_P(SymptomaticRange, IsSilentBelowOrAtFirst) {
    const faults::CauseInfo& row = GetParam();
    if (row.noticed == Noticed::at_any_severity) {
        for (const double severity : {0.25, 0.5, 0.75, 1.0})
            EXPECT_NE(noticed_in_any_draw(row, severity), "") << severity;
        return;
    }
    if (row.noticed == Noticed::by_measuring_first) {
        EXPECT_EQ(noticed_in_any_draw(row, row.least_severity), "");
        return;
    }
    if (row.on_off) return;
    // An eighth below; where the loss grows steeply, a step outside the grid of severities.
    const double below =
        std::max(0.875 * row.least_severity,
                 row.least_severity - 0.5 * (row.greatest_severity - row.least_severity));
    EXPECT_EQ(noticed_in_any_draw(row, below), "") << below;
}

TEST_P(SymptomaticRange, ShowsAtItsEnd) {
    const faults::CauseInfo& row = GetParam();
    if (row.noticed == Noticed::by_measuring_first) return;  // perhaps never
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
