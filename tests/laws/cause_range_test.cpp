// Proves where the symptomatic range of each cause begins: at its least severity somebody notices (a lockout or
// relight, water 2 K off the set point or 15 % short, or carbon monoxide over 100 ppm in a steady flue), a little
// below nobody; causes that only an instrument shows at first are proved to be so.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <tuple>
#include <vector>

#include "tests/laws/faulty_house.hpp"

namespace emberpath::laws {
namespace {

using faults::Cause;
using faults::Noticed;

constexpr std::array draws_lpm{3.5, 10.0, 16.0};
constexpr double hard_light_up_m3 = 0.35e-3;

/// What people get at the outlet they use.
struct Served {
    double flow_m3_per_s, tap_k;
};
Served served(const plant::Observables& now) {
    return {now.tap_m3_per_s[shower], now.tap_k[shower]};
}

/// Water that a sound house of this kind gives for such a draw; worked out once for each.
const Served& of_sound_house(const Premises& premises, double asked_lpm) {
    static std::vector<std::tuple<Premises, double, Served>> known;
    for (const auto& [where, asked, water] : known)
        if (where == premises && asked == asked_lpm) return water;
    FaultyHouse house(Cause::no_fault, 0.0, premises);
    house.open_taps(asked_lpm);
    house.run(600.0);
    known.emplace_back(premises, asked_lpm, served(house.look().plant));
    return std::get<2>(known.back());
}

/// What people smell, hear and feel beside the water.
std::string noticed_around(const FaultyHouse& house, const faults::CauseInfo& row) {
    const plant::Observables now = house.look().plant;
    if (house.look().readout.powered < 0.5) return "display dark";
    if (now.electrical.pipe_v > 25.0) return "taps tingle";
    if (row.cause != Cause::wind_gust && now.co_share > 100.0e-6) return "carbon monoxide";
    if (now.rough_light_up_m3 > hard_light_up_m3) return "a thump at light-up";
    if (now.room_co2_share > 0.005) return "stuffy air";
    return {};
}

/// What a household, or an analyser in a steady flue, would notice of a draw; empty when nothing.
std::string noticed(const faults::CauseInfo& row, double severity, double asked_lpm) {
    const Premises premises = premises_of(row);
    FaultyHouse house(row.cause, severity, premises);
    house.open_taps(asked_lpm);
    house.run(row.cylinder_only ? 1800.0 : 600.0);
    if (house.first_event_s()) return std::string(event_name(house.latest_event()));
    const Served now = served(house.look().plant);
    const Served& sound = of_sound_house(premises, asked_lpm);
    if (std::abs(now.tap_k - sound.tap_k) > 2.0) return "water not as it was";
    if (now.flow_m3_per_s < 0.85 * sound.flow_m3_per_s) return "little water";
    return noticed_around(house, row);
}

std::string noticed_in_any_draw(const faults::CauseInfo& row, double severity) {
    for (const double asked : draws_lpm) {
        std::string what = noticed(row, severity, asked);
        if (!what.empty()) return what;
    }
    return {};
}

class SymptomaticRange : public testing::TestWithParam<faults::CauseInfo> {};
class NoticedRange : public testing::TestWithParam<faults::CauseInfo> {};

std::vector<faults::CauseInfo> causes_that(bool (*belong)(const faults::CauseInfo&)) {
    std::vector<faults::CauseInfo> list;
    for (const faults::CauseInfo& row : faults::catalogue())
        if (row.cause != Cause::no_fault && belong(row)) list.push_back(row);
    return list;
}
/// Causes that people notice by themselves.
bool is_noticed(const faults::CauseInfo& row) {
    return row.noticed != Noticed::by_measuring_first;
}
/// Causes with a range that somebody or nobody notices; one that is there or not has none.
bool has_a_silent_part(const faults::CauseInfo& row) {
    return !is_noticed(row) || row.noticed == Noticed::at_any_severity || !row.on_off;
}
std::string word_of(const testing::TestParamInfo<faults::CauseInfo>& row) {
    return std::string(row.param.word);
}

TEST_P(NoticedRange, BeginsWhereSomebodyNotices) {
    const faults::CauseInfo& row = GetParam();
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
    // An eighth below; where the loss grows steeply, a step outside the grid of severities.
    const double below =
        std::max(0.875 * row.least_severity,
                 row.least_severity - 0.5 * (row.greatest_severity - row.least_severity));
    EXPECT_EQ(noticed_in_any_draw(row, below), "") << below;
}

TEST_P(NoticedRange, ShowsAtItsEnd) {
    const faults::CauseInfo& row = GetParam();
    EXPECT_NE(noticed_in_any_draw(row, row.greatest_severity), "");
}

INSTANTIATE_TEST_SUITE_P(Catalogue, SymptomaticRange,
                         testing::ValuesIn(causes_that(has_a_silent_part)), word_of);
INSTANTIATE_TEST_SUITE_P(Catalogue, NoticedRange, testing::ValuesIn(causes_that(is_noticed)),
                         word_of);

TEST(SoundHeater, GivesNobodyAnythingToNotice) {
    EXPECT_EQ(noticed_in_any_draw(faults::info(Cause::no_fault), 0.0), "");
}

}  // namespace
}  // namespace emberpath::laws
