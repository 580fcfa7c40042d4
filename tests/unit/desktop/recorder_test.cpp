// Proves that the recorder draws what was seen and no more: no line over a gap, no value that is not there now.
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"
#include "ui/desktop/job_fill.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::desktop {
namespace {

using worksite::Quantity;

/// A readout that was open from the 60th second to the 120th and from the 180th to the 240th.
struct Seen {
    views::JobCard card;
    std::vector<views::Suspect> suspects;
    std::vector<worksite::LogEntry> log;
    worksite::Sight sight;
    std::deque<worksite::TrailPoint> trail;
    Preferences preferences;
    std::vector<Thing> things;
    std::vector<Offer> offers;
    std::int64_t tick = 2400;

    Seen() {
        for (std::int64_t t = 600; t <= 2400; t += 10) {
            worksite::TrailPoint point{t, 0, 323.15, {}};
            if (t <= 1200 || t >= 1800) point.figures = {{Quantity::readout_outlet, 310.0}};
            trail.push_back(point);
        }
        sight.figures = {{Quantity::readout_outlet, 310.0}};
    }
    void close_readout(double for_s) {
        sight.figures.clear();
        const auto end = tick + static_cast<std::int64_t>(for_s * 10.0);
        for (; tick < end; tick += 10) trail.push_back({tick + 10, 0, 323.15, {}});
    }
    [[nodiscard]] screens::RecorderView recorder() const {
        return recorder_of(
            {card, suspects, log, sight, trail, tick, 0.0, preferences, things, offers}, {});
    }
};

std::size_t gaps_in(const screens::TraceView& trace) {
    return static_cast<std::size_t>(std::count_if(trace.points.begin(), trace.points.end(),
                                                  [](const auto& p) { return p.after_gap; }));
}

/// Strokes of the moving layer that go over the place where the readout was shut, and words of values.
struct Painted {
    std::size_t strokes = 0;
    std::vector<std::string> words;
};
Painted painted(const screens::RecorderView& recorder, bool folded) {
    static const kit::KeyMap keys(screens::key_table());
    kit::Stage stage(typeface(), {}, keys, {1280.0, 800.0});
    if (folded)
        screens::draw_folded_recorder(stage, {0.0, 0.0, 1280.0, 60.0}, recorder);
    else
        screens::draw_recorder(stage, {0.0, 0.0, 1280.0, 300.0}, recorder);
    const kit::Frame frame = stage.finish();
    Painted all;
    const std::string text = frame.layers[static_cast<std::size_t>(kit::Layer::moving)].as_text();
    for (auto at = text.find("stroke"); at != std::string::npos; at = text.find("stroke", at + 1))
        ++all.strokes;
    for (const auto& t : frame.texts) all.words.push_back(t.text);
    return all;
}

bool says(const Painted& painted, std::string_view words) {
    return std::find(painted.words.begin(), painted.words.end(), words) != painted.words.end();
}

TEST(Recorder, LiftsThePenWhereNothingWasSeen) {
    const auto lane = Seen().recorder().lanes.front();
    ASSERT_EQ(lane.traces.size(), 2U);
    for (const auto& trace : lane.traces) EXPECT_EQ(gaps_in(trace), 1U);
    EXPECT_EQ(lane.traces.back().label, "36.9 out");
    EXPECT_EQ(lane.traces.front().label, "50 set");
}

TEST(Recorder, DrawsTwoLinesForTwoTimesAndNoneBetween) {
    const auto with_gap = Seen().recorder();
    auto without = with_gap;
    for (auto& trace : without.lanes.front().traces)
        for (auto& point : trace.points) point.after_gap = false;
    EXPECT_EQ(painted(with_gap, false).strokes, painted(without, false).strokes + 2);
    EXPECT_EQ(painted(with_gap, true).strokes, painted(without, true).strokes + 1);
}

TEST(Recorder, StopsGivingAValueWhenTheDisplayIsShut) {
    Seen seen;
    EXPECT_TRUE(says(painted(seen.recorder(), false), "36.9 out"));
    EXPECT_TRUE(says(painted(seen.recorder(), true), "36.9 out"));
    seen.close_readout(1.0);
    for (const bool folded : {false, true}) {
        EXPECT_FALSE(says(painted(seen.recorder(), folded), "36.9 out"));
        EXPECT_FALSE(says(painted(seen.recorder(), folded), "50 set"));
    }
    EXPECT_TRUE(says(painted(seen.recorder(), true), "not seen now"));
    EXPECT_EQ(seen.recorder().lanes.front().traces.size(), 2U) << "what was seen stays";
}

TEST(Recorder, SaysInWordsThatALaneIsNotSeenNow) {
    Person person;
    person.enter_house();
    person.say("open service readout");
    person.say("wait 10 s");
    EXPECT_NE(person.node("recorder.Temperature")->value.find(" out"), std::string::npos);
    for (const char* act : {"ask customer for consent", "switch power off", "wait 10 s"})
        person.say(act);
    EXPECT_EQ(person.node("recorder.Temperature")->value, "not seen now");
    EXPECT_EQ(person.node("recorder.Gas")->value, "not connected");
}

}  // namespace
}  // namespace emberpath::desktop
