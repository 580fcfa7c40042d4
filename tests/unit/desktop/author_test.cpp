// Proves that an author sees whether a job can be solved, and that a saved file is looked at by itself.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"
#include "ui/desktop/author_loop.hpp"
#include "ui/desktop/author_quirks.hpp"
#include "ui/desktop/author_solve.hpp"

namespace emberpath::desktop {
namespace {

using faults::Cause;
using testing::HasSubstr;

Solution solution_of(Cause cause, double severity) {
    std::atomic<double> share{0.0};
    const std::atomic<bool> abandoned{false};
    return solve(worksite::test_job({worksite::fault(cause, severity)}), share, abandoned);
}

TEST(Solution, HasAPathAndTellsTheCauseFromItsLikest) {
    const Solution solution = solution_of(Cause::outlet_sensor_open, 1.0);
    ASSERT_TRUE(solution.complete);
    EXPECT_FALSE(solution.safe_path.empty());
    ASSERT_EQ(solution.causes.size(), rivals_shown + 1);
    EXPECT_EQ(solution.causes.front(), "This job");
    for (std::size_t i = 0; i < solution.pairs.size(); ++i) EXPECT_EQ(solution.pairs[i].size(), i);
    for (const auto& check : solution.checks) EXPECT_TRUE(check.good) << check.title;
}

TEST(Solution, SaysThatASoundHouseCannotBeToldFromATraceOfAFault) {
    const Solution solution = solution_of(Cause::exchanger_sooted, 0.001);
    bool good = true;
    for (const auto& check : solution.checks) good = good && check.good;
    EXPECT_FALSE(good);
}

TEST(Solution, IsStoppedWhenNobodyWantsItAnyMore) {
    std::atomic<double> share{0.0};
    const std::atomic<bool> abandoned{true};
    EXPECT_FALSE(solve(worksite::test_job(), share, abandoned).complete);
}

TEST(Author, SeesTheSolutionWhenItIsWorkedOut) {
    Person person(worksite::test_job(), {1280.0, 800.0}, true);
    person.host.solution.safe_path = {"Manifold pressure"};
    person.host.solution.complete = true;
    person.wait_for(Place::author);
    person.until([&] { return person.node("checks.path.1") != nullptr; });
    ASSERT_NE(person.node("checks.path.1"), nullptr);
    EXPECT_EQ(person.node("checks.path.1")->value, "Manifold pressure");
}

// --- the control loop ---

const screens::TraceView& own(const screens::LoopView& loop, std::size_t lane) {
    return loop.traces.lanes.at(lane).traces.back();
}

TEST(ControlLoop, HasEveryLaneOfTheJobScreensRecorder) {
    Person person;
    person.enter_house();
    const auto loop = loop_of(worksite::test_job());
    std::string names;
    for (const auto& lane : loop.traces.lanes) names += lane.name + "\n";
    int lanes = 0;
    for (const auto& node : person.program.last_frame().tree.nodes())
        if (node.id.starts_with("recorder.") && node.id != "recorder.heading") {
            EXPECT_THAT(names, HasSubstr(node.name));
            ++lanes;
        }
    EXPECT_EQ(lanes, 5);
    EXPECT_TRUE(loop.traces.lanes.front().traces.front().set_point);
}

TEST(ControlLoop, ShowsTheFaultBesideTheSoundHouse) {
    const auto loop =
        loop_of(worksite::test_job({worksite::fault(Cause::gas_pipe_restriction, 0.9)}));
    constexpr std::size_t inlet = 2;
    ASSERT_EQ(loop.traces.lanes[inlet].name, "Gas at inlet");
    EXPECT_LT(own(loop, inlet).points.back().value, loop.sound[inlet][0].points.back().value);
    ASSERT_EQ(loop.sound.size(), loop.traces.lanes.size());
    for (std::size_t i = 0; i < loop.sound.size(); ++i)
        EXPECT_EQ(own(loop, i).points.size(), loop.sound[i][0].points.size());
}

TEST(ControlLoop, OfASoundHouseLightsUpAndLiesOnItself) {
    const auto loop = loop_of(worksite::test_job());
    for (std::size_t i = 0; i < loop.sound.size(); ++i)
        for (std::size_t k = 0; k < own(loop, i).points.size(); ++k)
            ASSERT_EQ(own(loop, i).points[k].value, loop.sound[i][0].points[k].value);
    const auto& firing = own(loop, loop.traces.lanes.size() - 1).points;
    EXPECT_EQ(firing.front().value, 0.0) << "at rest";
    EXPECT_GT(firing[firing.size() / 2 - 5].value, 0.0) << "a little open";
    EXPECT_GT(firing.back().value, firing[firing.size() / 2 - 5].value) << "fully open";
}

TEST(ControlLoop, IsTheSameEveryTime) {
    const auto job = worksite::test_job({worksite::fault(Cause::outlet_sensor_open, 1.0)});
    const auto first = loop_of(job), second = loop_of(job);
    for (std::size_t i = 0; i < first.traces.lanes.size(); ++i)
        for (std::size_t k = 0; k < own(first, i).points.size(); ++k)
            ASSERT_EQ(own(first, i).points[k].value, own(second, i).points[k].value);
}

TEST(Author, GoesFromTheReadingsToTheControlLoopAndBack) {
    Person person(worksite::test_job(), {1280.0, 800.0}, true);
    person.wait_for(Place::author);
    person.host.loop = loop_of(worksite::test_job());
    person.press(kit::Key::f9);  // with the loop now
    person.until([&] { return person.node("preview.switch") != nullptr; });
    ASSERT_NE(person.node("preview.switch"), nullptr);
    EXPECT_EQ(person.node("preview.switch")->name, "Control loop");
    EXPECT_EQ(person.node("loop.Fan"), nullptr);
    person.click("preview.switch");
    ASSERT_NE(person.node("loop.Fan"), nullptr);
    EXPECT_THAT(person.node("loop.Fan")->value, HasSubstr("rpm"));
    person.press(kit::Key::f9);
    person.until([&] { return person.host.previews == 3 && !person.program.moves(); });
    EXPECT_NE(person.node("loop.Fan"), nullptr) << "a file that is looked at again changes no view";
    person.click("preview.switch");
    EXPECT_EQ(person.node("loop.Fan"), nullptr);
}

// --- what stands out ---

worksite::Job usual_job() {
    auto job = worksite::test_job();
    job.site.mains_water_pa = 400.0e3;
    job.site.appliances.resize(1);
    job.site.windows.clear();
    job.site.fans.clear();
    job.site.wall_controllers.clear();
    job.site.events.clear();
    return job;
}

TEST(Quirks, OfAHouseWhereAllIsAsUsualAreNone) {
    EXPECT_THAT(quirks_of(usual_job()), testing::IsEmpty());
}

TEST(Quirks, ComeFromTheHouseItsHouseholdAndTheKit) {
    auto job = usual_job();
    job.site.mains_water_pa = 250.0e3;
    job.site.windows.push_back({"laundry window", 0.0, true});
    job.site.events.push_back({10.0, worksite::HouseholdEvent::Kind::reset, 0, 1.0});
    auto& cup = job.kit.of(worksite::Instrument::flow_cup);
    cup.reads = 0.96;
    job.kit.of(worksite::Instrument::multimeter).battery = worksite::Battery::low;
    EXPECT_THAT(quirks_of(job),
                testing::ElementsAre("Multimeter: battery low", HasSubstr("reads 4 % low"),
                                     "Water main 250 kPa, weak", "Laundry window stands open",
                                     "Somebody has pressed reset before"));
}

TEST(Quirks, DoNotTellTheFault) {
    auto job = usual_job();
    job.faults = {worksite::fault(Cause::gas_pipe_restriction, 0.9)};
    EXPECT_THAT(quirks_of(job), testing::IsEmpty());
}

TEST(Author, SeesHowFarTheOtherCausesAreSimulatedUntilTheyAre) {
    Person person(worksite::test_job(), {1280.0, 800.0}, true);
    person.host.hold_solving = true;
    person.wait_for(Place::author);
    ASSERT_NE(person.node("checks.progress"), nullptr);
    EXPECT_EQ(person.node("checks.progress")->value, "0 %");
    person.host.share_solved = 0.4;
    person.until([&] { return person.node("checks.progress")->value != "0 %"; });
    EXPECT_EQ(person.node("checks.progress")->value, "40 %");
    EXPECT_FALSE(person.program.moves()) << "nothing is painted while it stays there";
    person.host.hold_solving = false;
    person.until([&] { return person.node("checks.progress") == nullptr; });
    EXPECT_EQ(person.node("checks.progress"), nullptr);
}

TEST(Author, SeesASavedFileWithoutAsking) {
    Person person(worksite::test_job(), {1280.0, 800.0}, true);
    person.wait_for(Place::author);
    EXPECT_EQ(person.host.previews, 1);
    person.program.elapse(1.0);
    EXPECT_EQ(person.host.previews, 1) << "nothing was saved";
    person.host.file_changed = true;
    person.until([&] { return person.host.previews == 2; }, 0.6);
    EXPECT_EQ(person.host.previews, 2);
    EXPECT_THAT(person.host.told, testing::Contains(HasSubstr("The file was changed")));
}

TEST(Author, ComesBackToThePreviewFromPlayingAndFromTheList) {
    Person person(worksite::test_job(), {1280.0, 800.0}, true);
    person.wait_for(Place::author);
    person.press(kit::Key::f5);
    person.wait_for(Place::job);
    person.leave_house();
    EXPECT_EQ(person.program.place(), Place::author);
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("kept"));
    person.press(kit::Key::escape);
    ASSERT_EQ(person.program.place(), Place::choose);
    ASSERT_NE(person.node("head.preview"), nullptr);
    person.press(kit::Key::f9);
    person.wait_for(Place::author);
    EXPECT_EQ(person.host.previews, 1) << "it is still the same file";
}

TEST(Author, GoesToTheListFromAFileThatCannotBeOpenedAndSeesNoStalePreview) {
    Person person(worksite::test_job(), {1280.0, 800.0}, true);
    person.wait_for(Place::author);
    person.host.preview_refusal = "This job file cannot be opened";
    person.press(kit::Key::f9);
    person.wait_for(Place::error);
    person.press(kit::Key::escape);
    ASSERT_EQ(person.program.place(), Place::choose);
    person.press(kit::Key::f9);
    person.wait_for(Place::error);
    EXPECT_EQ(person.host.previews, 3) << "the file is looked at again";
}

TEST(List, HasNoWayToAPreviewForATrainee) {
    Person person;
    EXPECT_EQ(person.node("head.preview"), nullptr);
}

}  // namespace
}  // namespace emberpath::desktop
