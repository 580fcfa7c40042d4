// Proves that the time help lists for an act is the time the house's clock runs on for it, done and not only asked for.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <memory>
#include <set>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/acts.hpp"
#include "sim/worksite/attempt.hpp"
#include "tests/unit/worksite/house.hpp"
#include "ui/views/views.hpp"

namespace emberpath {
namespace {

constexpr double tick_s = 0.1;
using Script = std::vector<std::string>;
using worksite::operator+;

/// What stands in the way of one act lets another be done.
const std::vector<Script> states{
    {},
    {"put on gloves", "put on glasses", "switch power off", "unplug heater", "lock off plug",
     "take cover off", "prove tester", "test for dead", "prove tester"},
    {"take cover off", "open service readout"},
    {"shut gas at heater", "open test point inlet", "attach manometer to inlet",
     "open gas at heater", "wait 10 s", "shut gas at heater"},
    {"switch on analyser", "wait 60 s", "put probe in flue", "open kitchen tap"},
    {"unplug outlet sensor", "shut water at heater", "switch main switch off"},
};

/// Times taken, by the pattern that help lists.
class Stopwatch {
  public:
    explicit Stopwatch(worksite::Job job) : job_(std::move(job)) {}

    void go_round() {
        const Script all = worksite::all_sentences(job_);
        for (const Script& state : states) {
            begin(state);
            for (const std::string& sentence : all) {
                if (timed_.contains(sentence)) continue;
                if (attempt_->over()) begin(state);
                take(sentence);
            }
        }
    }
    [[nodiscard]] const std::map<std::string, std::map<std::string, double>>& times() const {
        return times_;
    }

  private:
    void begin(const Script& state) {
        attempt_ = std::make_unique<worksite::Attempt>(job_, 1, worksite::Mode::assessed);
        for (const auto& sentence : state) attempt_->perform(sentence);
    }
    void take(const std::string& sentence) {
        const auto before = attempt_->tick();
        const auto outcome = attempt_->perform(sentence);
        if (outcome.entry == nullptr) return;
        const bool cut_short = attempt_->over() && sentence != "hand in";
        if (cut_short) return;
        timed_.insert(sentence);
        const auto act = std::get<worksite::Act>(worksite::parse_act(sentence, job_));
        times_[std::string(worksite::row_of(act).phrase.pattern)][sentence] =
            static_cast<double>(attempt_->tick() - before) * tick_s;
    }

    worksite::Job job_;
    std::unique_ptr<worksite::Attempt> attempt_;
    std::set<std::string> timed_;
    std::map<std::string, std::map<std::string, double>> times_;
};

bool takes_what_is_said(const std::string& pattern) {
    return pattern.find("{duration}") != std::string::npos || pattern.find("until") == 5;
}

/// Fixed, or said to vary; and what is said to vary does.
void expect_listed(const std::string& pattern, const std::map<std::string, double>& taken) {
    const auto rows = views::phrases(pattern.substr(0, pattern.find(' ')));
    const auto row = std::find_if(rows.begin(), rows.end(),
                                  [&](const auto& one) { return one.pattern == pattern; });
    ASSERT_NE(row, rows.end()) << pattern;
    std::set<std::string> different;
    for (const auto& [sentence, seconds] : taken) {
        different.insert(views::cost_text(seconds));
        if (row->cost == "varies") continue;
        EXPECT_EQ(views::cost_text(seconds), row->cost) << sentence << " took " << seconds << " s";
    }
    if (row->cost == "varies" && !takes_what_is_said(pattern)) {
        EXPECT_GT(different.size(), 1U) << pattern;
    }
}

void expect_house_as_listed(worksite::Job job, std::size_t least_patterns) {
    Stopwatch watch(std::move(job));
    watch.go_round();
    EXPECT_GE(watch.times().size(), least_patterns) << "of " << worksite::phrases().size();
    for (const auto& [pattern, taken] : watch.times()) expect_listed(pattern, taken);
}

TEST(ListedTime, IsWhatEachActTakesInTheDemoHouse) {
    const auto file = std::filesystem::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs/sorrel.toml";
    expect_house_as_listed(scenario::load(file).job, 150);
}

TEST(ListedTime, IsWhatEachActTakesInAHouseOnACylinder) {
    worksite::Job job = worksite::cylinder_job();
    job.site.windows = {{"laundry window", 0.0, false}};
    job.site.fans = {{"rangehood", 0.02, false}};
    job.site.wall_controllers = {"bathroom controller"};
    expect_house_as_listed(job, 150);
}

/// What the clock ran on for the last of these acts, and what was said of it before.
void expect_foretold(worksite::Job job, const Script& script) {
    worksite::Attempt attempt(std::move(job), 1, worksite::Mode::assessed);
    for (std::size_t i = 0; i < script.size(); ++i) {
        const double foretold_s = attempt.seconds_for(script[i]);
        const auto before = attempt.tick();
        ASSERT_NE(attempt.perform(script[i]).entry, nullptr) << script[i];
        const double taken_s = static_cast<double>(attempt.tick() - before) * tick_s;
        EXPECT_NEAR(taken_s, foretold_s, 0.5 * tick_s) << script[i];
    }
}

TEST(ListedTime, HoldsForPowerThatComesBackToUntestedWiring) {
    const Script untested{"put on gloves",         "put on glasses", "switch power off",
                          "unplug heater",         "lock off plug",  "take cover off",
                          "prove tester",          "test for dead",  "prove tester",
                          "dry and reseal wiring", "unlock plug"};
    expect_foretold(worksite::test_job(),
                    untested + Script{"plug in heater", "switch power on", "switch power on"});
    expect_foretold(worksite::test_job(), untested + Script{"switch power on", "plug in heater"});
}

TEST(ListedTime, HoldsForAPipeRunInARoofSpace) {
    worksite::Job job = worksite::test_job();
    expect_foretold(job, {"look at gas pipe run"});
    job.site.dangers.pipe_in_roof = true;
    expect_foretold(job, {"say where you go", "look at gas pipe run", "look at heater"});
    EXPECT_DOUBLE_EQ(
        worksite::Attempt(job, 1, worksite::Mode::assessed).seconds_for("look at gas pipe run"),
        300.0)
        << "as help lists it";
}

}  // namespace
}  // namespace emberpath
