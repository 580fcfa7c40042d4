// Proves that the water side which is opened under the mains runs out until it is shut, and that what runs out is
// counted.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

const Acts bridged{"fit bridging conductor"};
const Acts shut{"shut water at heater"};
const Acts undo{"undo water union"};

Attempt after(const Acts& acts) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    EXPECT_EQ(play(attempt, acts), "");
    return attempt;
}

TEST(WaterUnion, UndoneUnderTheMainsRunsUntilItIsShut) {
    const Attempt run_out = after(bridged + undo);
    EXPECT_TRUE(broke(run_out, "water_not_shut"));
    EXPECT_FALSE(broke(run_out, "board_harmed"));
    EXPECT_THAT(run_out.log().back().shown, ElementsAre(HasSubstr("Water runs out, 17 litres"),
                                                        HasSubstr("You have shut the water")));
    EXPECT_THAT(run_out.check("undo water union").text, HasSubstr("undone already"));
    EXPECT_FALSE(broke(after(bridged + shut + undo), "water_not_shut"));
}

TEST(WaterUnion, UndoneUnderTheMainsOverAnOpenBoardLosesTheBoard) {
    const Acts cover_off{"unplug heater", "take cover off"};
    EXPECT_TRUE(broke(after(cover_off + bridged + undo), "board_harmed"));
    EXPECT_FALSE(broke(after(cover_off + bridged + shut + undo), "board_harmed"));
}

TEST(WaterUnion, LeftUndoneRunsWhenTheWaterIsOpened) {
    const Acts open{"open water at heater"};
    EXPECT_TRUE(broke(after(bridged + shut + undo + open), "water_not_shut"));
    EXPECT_FALSE(
        broke(after(bridged + shut + undo + Acts{"make water union"} + open), "water_not_shut"));
}

TEST(Drain, RunsOnWithTheWaterOpenAndTheHeaterIsNotDrained) {
    const Acts drain{"drain heater"}, screen{"clean inlet strainer"};
    const Attempt ran_on = after(drain);
    EXPECT_THAT(ran_on.log().back().shown,
                ElementsAre(HasSubstr("does not drain: 26 litres in 2 minutes")));
    EXPECT_TRUE(broke(ran_on, "water_not_shut"));
    EXPECT_THAT(ran_on.truth().doses,
                testing::Contains(HasSubstr("Water over the floor: 16 litres")));
    EXPECT_TRUE(broke(after(drain + shut + screen), "not_drained"));
    const Attempt drained = after(shut + drain + screen);
    EXPECT_FALSE(broke(drained, "water_not_shut"));
    EXPECT_FALSE(broke(drained, "not_drained"));
}

}  // namespace
}  // namespace emberpath::worksite
