// Proves, story by story, that what happens to a running heater moves its readings the right way, that the
// outlet strays no further than it may, and that exactly the right protections respond.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>

#include "tests/support/results.hpp"
#include "tests/validation/transient_stories.hpp"

namespace emberpath::validation {
namespace {

using controller::Event;
using laws::House;

using Readings = std::array<double, reading_count>;

/// All readings, in trade units, averaged over some seconds while what happens goes on.
constexpr double averaged_s = 8.0;  // one gust

struct Lived {
    Readings before{}, after{};
    double most_k = -1e9, least_k = 1e9;
    std::set<Event> events;
    bool locked_out = false;
};

void add_share(Readings& readings, const House& house, double share) {
    const worksite::HeaterView view = house.look();
    for (std::size_t i = 0; i < reading_count; ++i) {
        const auto reading = static_cast<Reading>(i);
        const ReadingInfo& trade = info(reading);
        readings[i] += share * (trade.per_unit * value_of(reading, view) - trade.offset);
    }
}

void note(Lived& lived, const House& house) {
    const worksite::HeaterView view = house.look();
    const double off_k = view.plant.outlet_water_k - view.readout.set_point_k;
    lived.most_k = std::max(lived.most_k, off_k);
    lived.least_k = std::min(lived.least_k, off_k);
    for (const Event event : {view.readout.event, view.readout.latest_event})
        if (event != Event::none) lived.events.insert(event);
    if (view.readout.phase == controller::Phase::lockout) lived.locked_out = true;
}

constexpr double tick_share = signals::tick_s / averaged_s;

Lived live_through(const Story& story) {
    House house(story.propane, story.set_c);
    house.run(2.0);
    house.open_taps(story.asked_lpm);
    house.run(300.0);
    Lived lived;
    const long averaged = std::lround(averaged_s / signals::tick_s);
    for (long i = 0; i < averaged; ++i) {
        house.run(signals::tick_s);
        add_share(lived.before, house, tick_share);
    }
    if (story.happens) story.happens(house);
    const long ticks = std::lround(story.watched_s / signals::tick_s);
    for (long i = 0; i < ticks; ++i) {
        if (story.each_tick) story.each_tick(house, static_cast<double>(i) * signals::tick_s);
        house.run(signals::tick_s);
        note(lived, house);
        if (i >= ticks - averaged) add_share(lived.after, house, tick_share);
    }
    return lived;
}

std::string_view word_of(Moves moves) {
    return moves == Moves::rises ? "rises" : moves == Moves::falls ? "falls" : "stays";
}

Moves moved(double change, double unchanged) {
    if (change > unchanged) return Moves::rises;
    return change < -unchanged ? Moves::falls : Moves::stays;
}

Result line(const Story& story, std::string_view quantity) {
    Result r;
    r.quantity = quantity;
    r.conditions = story.name;
    r.kind = "check";
    r.checked_by = "TransientStories";
    r.source = "physics of the heater, common practice";
    return r;
}

void judge(Result r, bool pass, ResultsFile& file) {
    r.outcome = pass ? "pass" : "fail";
    file.add(r);
    EXPECT_TRUE(pass) << r.conditions << ": " << r.quantity << " expected " << r.expected
                      << ", got " << r.got << " " << r.unit;
}

void judge_movements(const Story& story, const Lived& lived, ResultsFile& file) {
    EXPECT_GE(story.expected.size(), 5U) << story.name;
    for (const Expected& expected : story.expected) {
        const ReadingInfo& reading = info(expected.reading);
        const auto i = static_cast<std::size_t>(expected.reading);
        const double change = lived.after[i] - lived.before[i];
        Result r = line(story, reading.name);
        r.unit = reading.unit;
        r.expected = word_of(expected.moves);
        r.got = change_text(change, reading.decimals) + " from " +
                fixed_text(lived.before[i], reading.decimals);
        r.tolerance = "still within " + number_text(reading.unchanged, 3);
        judge(r, moved(change, reading.unchanged) == expected.moves, file);
    }
}

void judge_straying(const Story& story, const Lived& lived, ResultsFile& file) {
    const auto between = [&](std::string_view what, double low, double high, double got) {
        if (low <= -200.0 && high >= 200.0) return;
        Result r = line(story, what);
        r.unit = "K";
        r.expected = fixed_text(low, 1) + " to " + fixed_text(high, 1);
        r.got = fixed_text(got, 1);
        r.tolerance = "band";
        judge(r, got >= low && got <= high, file);
    };
    const Straying& s = story.straying;
    between("outlet above set point, at most", s.most_low, s.most_high, lived.most_k);
    between("outlet above set point, at least", s.least_low, s.least_high, lived.least_k);
}

std::string names_of(const std::set<Event>& events, bool locked_out) {
    std::string text;
    for (const Event event : events) {
        if (!text.empty()) text += ", ";
        text += controller::event_name(event);
    }
    return (text.empty() ? "none" : text) + (locked_out ? "; locked out" : "; not locked out");
}

void judge_responses(const Story& story, const Lived& lived, ResultsFile& file) {
    const std::set<Event> expected(story.responses.begin(), story.responses.end());
    Result r = line(story, "protections that respond");
    r.expected = names_of(expected, story.locks_out);
    r.got = names_of(lived.events, lived.locked_out);
    r.tolerance = "exact set";
    judge(r, expected == lived.events && story.locks_out == lived.locked_out, file);
}

TEST(TransientStories, MoveReadingsAndProtectionsAsTheTableSays) {
    ResultsFile file("transients");
    std::size_t count = 0;
    for (const auto& stories : {use_stories(), fault_stories(), wear_stories(), silent_stories()})
        for (const Story& story : stories) {
            const Lived lived = live_through(story);
            judge_movements(story, lived, file);
            judge_straying(story, lived, file);
            judge_responses(story, lived, file);
            ++count;
        }
    EXPECT_GE(count, 50U);
}

}  // namespace
}  // namespace emberpath::validation
