// Proves: an open flue that shares its room with an extraction fan is also tried against it, and no other flue;
// its smoke is foreseen there for every cause.

#include <gtest/gtest.h>

#include <algorithm>

#include "sim/plant/parameters.hpp"
#include "sim/scoring/bank.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using worksite::GasKind;
using worksite::Quantity;

worksite::Job open_flued_job(double fan_m3_per_s) {
    worksite::Job job = plain_job(GasKind::natural_gas);
    job.healthy = plant::with_flue(job.healthy, plant::FlueKind::open_flued);
    job.site.windows = {{"kitchen window", 0.3, true}};
    job.site.fans = {{"range hood", fan_m3_per_s, false}};
    return job;
}

bool has_worst_draught(const worksite::Job& job) {
    const auto all = modes(job);
    return std::any_of(all.begin(), all.end(), [](const Mode& one) { return one.worst_draught; });
}

TEST(Modes, TryAnOpenFlueAgainstTheFanOfItsRoomAndNoOtherFlue) {
    EXPECT_TRUE(has_worst_draught(open_flued_job(0.05)));
    EXPECT_TRUE(can_be_proposed(Quantity::diverter_smoke, open_flued_job(0.05)));
    EXPECT_FALSE(has_worst_draught(plain_job(GasKind::natural_gas)));
    EXPECT_FALSE(can_be_proposed(Quantity::diverter_smoke, plain_job(GasKind::natural_gas)));
    worksite::Job without_fan = open_flued_job(0.05);
    without_fan.site.fans.clear();
    EXPECT_FALSE(has_worst_draught(without_fan));
}

TEST(Modes, TheWorstDraughtHasEveryFanOnAndEveryWindowShut) {
    const worksite::Job job = open_flued_job(0.05);
    const auto all = modes(job);
    worksite::TickInputs found;
    found.surroundings.room_opening = 0.3;
    for (const Mode& mode : all) {
        const auto in = mode_inputs(job, mode, found, 0).surroundings;
        EXPECT_DOUBLE_EQ(in.room_opening, mode.worst_draught ? 0.0 : 0.3) << mode.title;
        EXPECT_DOUBLE_EQ(in.extraction_m3_per_s, mode.worst_draught ? 0.05 : 0.0) << mode.title;
    }
}

TEST(Modes, ARoomTooTightSpillsAgainstTheFanWhereASoundOneDraws) {
    DrivenHouse house(open_flued_job(0.05), 3);
    house.live_until_arrival();
    Bank bank(house.job(), 2);
    bank.live_until(house.tape(), house.tape().events.size());
    const Shadows& s = bank.shadows();
    constexpr std::size_t full_draw = 2;
    const auto freely = s.signatures[full_draw].of(Quantity::diverter_smoke);
    const auto against = s.signatures.back().of(Quantity::diverter_smoke);
    const std::size_t sound = sound_house(s.hypotheses);
    EXPECT_EQ(against[sound], freely[sound]);
    std::size_t spill = 0;
    for (std::size_t i = 0; i < s.hypotheses.size(); ++i)
        if (s.hypotheses[i].fault.cause == faults::Cause::room_too_tight &&
            against[i] != against[sound] && freely[i] == freely[sound])
            ++spill;
    EXPECT_GE(spill, 3U) << "of seven severities";
}

}  // namespace
}  // namespace emberpath::scoring
