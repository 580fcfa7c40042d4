// Proves that every sound is said in words: its beginning and its end, the pitch of the fan, the strength of
// the burner, the spark and the alarm; once each, and no sooner than it keeps still.

#include "ui/desktop/noticed.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace emberpath::desktop {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr std::int64_t second = 10;  // ticks

/// Somebody who listens every tick.
struct Listener {
    worksite::Sight sight;
    Watcher watcher{sight};
    std::int64_t tick = 0;

    std::vector<std::string> listen(std::int64_t ticks) {
        std::vector<std::string> said;
        for (std::int64_t i = 0; i < ticks; ++i)
            for (auto& one : watcher.changes(sight, ++tick)) said.push_back(std::move(one));
        return said;
    }
    std::vector<std::string> after_a_wait(std::int64_t ticks) {
        return watcher.changes(sight, tick += ticks);
    }
    void running() {
        sight.fan_rev_per_s = 60.0;
        sight.flame_share = 0.5;
        (void)listen(3 * second);
    }
};

TEST(Noticed, SaysThatTheFanStartsAndStops) {
    Listener here;
    here.sight.fan_rev_per_s = 60.0;
    EXPECT_THAT(here.listen(5 * second), ElementsAre("The fan starts."));
    here.sight.fan_rev_per_s = 0.0;
    EXPECT_THAT(here.listen(5 * second), ElementsAre("The fan stops."));
}

TEST(Noticed, SaysOnceThatTheFanRunsUpAndDown) {
    Listener here;
    here.running();
    std::vector<std::string> said;
    for (int i = 0; i < 20; ++i) {
        here.sight.fan_rev_per_s += 1.0;
        for (auto& one : here.listen(1)) said.push_back(std::move(one));
    }
    EXPECT_THAT(said, IsEmpty()) << "it still changes";
    EXPECT_THAT(here.listen(3 * second), ElementsAre("The fan goes up to a higher pitch."));
    here.sight.fan_rev_per_s = 50.0;
    EXPECT_THAT(here.listen(3 * second), ElementsAre("The fan comes down to a lower pitch."));
}

TEST(Noticed, LeavesOutWhatNoEarNotices) {
    Listener here;
    here.running();
    here.sight.fan_rev_per_s = 64.0;
    here.sight.flame_share = 0.55;
    EXPECT_THAT(here.listen(5 * second), IsEmpty());
    here.sight.fan_rev_per_s = 68.0;
    EXPECT_THAT(here.listen(5 * second), IsEmpty());
    here.sight.fan_rev_per_s = 72.0;
    EXPECT_THAT(here.listen(5 * second), ElementsAre("The fan goes up to a higher pitch."))
        << "small steps add up";
}

TEST(Noticed, SaysThatTheBurnerRoarsLouderAndLess) {
    Listener here;
    here.sight.flame_share = 0.5;
    EXPECT_THAT(here.listen(5 * second), ElementsAre("The burner lights."));
    here.sight.flame_share = 1.0;
    EXPECT_THAT(here.listen(5 * second), ElementsAre("The burner roars louder."));
    here.sight.flame_share = 0.3;
    EXPECT_THAT(here.listen(5 * second), ElementsAre("The burner roars less."));
    here.sight.flame_share = 0.0;
    EXPECT_THAT(here.listen(5 * second), ElementsAre("The burner goes out."));
}

TEST(Noticed, HearsAfterAWaitWhatBecameOfTheFan) {
    Listener here;
    here.running();
    here.sight.fan_rev_per_s = 30.0;
    EXPECT_THAT(here.after_a_wait(30 * second),
                ElementsAre("The fan comes down to a lower pitch."));
}

TEST(Noticed, SaysSparksAlarmDisplayAndWordsInTheRoom) {
    Listener here;
    here.sight.spark_heard = true;
    EXPECT_THAT(here.listen(second), ElementsAre("It sparks."));
    here.sight.alarm = true;
    EXPECT_THAT(here.listen(second), ElementsAre("Your alarm sounds: carbon monoxide."));
    here.sight.display_word = 1;
    EXPECT_THAT(here.listen(second), ElementsAre(testing::StartsWith("The display shows ")));
    here.sight.noticed = {"It smells of gas."};
    EXPECT_THAT(here.listen(second), ElementsAre("It smells of gas."));
}

/// The house is seen as it was left; what began meanwhile is seen on coming back, and not heard beginning.
TEST(Noticed, SaysOfTheHeaterNothingToSomebodyOutside) {
    Listener here;
    here.running();
    const worksite::Sight left = here.sight;
    here.sight.outside = true;
    EXPECT_THAT(here.listen(5 * second), IsEmpty());
    here.sight = left;
    here.sight.flame_share = here.sight.fan_rev_per_s = 0.0;
    EXPECT_THAT(here.listen(5 * second), IsEmpty());
    here.sight.flame_share = 0.5;
    EXPECT_THAT(here.listen(second), ElementsAre("The burner lights."));
}

}  // namespace
}  // namespace emberpath::desktop
