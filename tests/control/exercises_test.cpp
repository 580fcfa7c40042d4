// Proves where the temperature loop stands: the process it faces, its margins against published tuning rules,
// its step responses and its behaviour at the smallest draws; and that docs/control_exercises.md says so.

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "tests/control/courses.hpp"
#include "tests/control/identify.hpp"

namespace emberpath::control {
namespace {

constexpr double flows_lpm[] = {3.5, 6.0, 8.0, 10.0, 13.0};
constexpr double set_c = 50.0;

std::string fixed(double value, int places) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.*f", places, value);
    return buffer;
}

std::string row(std::initializer_list<std::string> cells) {
    std::string line = "|";
    for (const auto& cell : cells) line += " " + cell + " |";
    return line + "\n";
}

std::string signed_text(double value) {
    return (value >= 0.0 ? "+" : "") + fixed(value, 1);
}

std::string process_table() {
    std::string text = row({"flow L/min", "gain k", "time constant tau s", "dead time theta s"}) +
                       "|---|---|---|---|\n";
    for (const double flow : flows_lpm) {
        const Process p = identify(set_c, flow, 1.0);
        text += row({fixed(flow, 1), fixed(p.gain, 2), fixed(p.tau_s, 1), fixed(p.theta_s, 1)});
    }
    return text;
}

std::string tuning_row(const std::string& flow, const std::string& name, const Process& p,
                       const Tuning& c) {
    const Margins m = margins(p, c);
    return row({flow, name, fixed(c.gain, 2), fixed(c.integral_s, 1), fixed(m.gain_margin, 1),
                fixed(m.phase_margin_deg, 0), fixed(m.peak_sensitivity, 2)});
}

std::string tuning_table() {
    std::string text = row({"flow L/min", "tuning", "Kc", "tauI s", "gain margin",
                            "phase margin deg", "peak sensitivity"}) +
                       "|---|---|---|---|---|---|---|\n";
    for (const double flow : {3.5, 10.0, 13.0}) {
        const Process p = identify(set_c, flow, 1.0);
        const std::string f = fixed(flow, 1);
        text += tuning_row(f, "the heater's", p, applied(flow));
        text += tuning_row(f, "SIMC, tauc = theta", p, simc(p, p.theta_s));
        text += tuning_row(f, "SIMC, tauc = 3 theta", p, simc(p, 3.0 * p.theta_s));
        text += tuning_row(f, "Ziegler-Nichols", p, ziegler_nichols(p));
    }
    return text;
}

std::string course_row(const std::string& what, const Course& c) {
    return row({what, signed_text(c.most_k), signed_text(c.least_k), fixed(c.within_1k_s, 1),
                fixed(c.absolute_error_k_s, 0), std::to_string(c.bank_changes)});
}

std::string course_head(const std::string& what) {
    return row({what, "most K", "least K", "last beyond 1 K, s", "absolute error K s",
                "bank changes"}) +
           "|---|---|---|---|---|---|\n";
}

std::string flow_table() {
    std::string text = course_head("flow L/min at 50 °C");
    const double steps[][2] = {{10, 6}, {6, 10}, {16, 10}, {10, 3.5}, {3.5, 10}};
    for (const auto& step : steps)
        text += course_row(fixed(step[0], 1) + " to " + fixed(step[1], 1),
                           flow_step(set_c, step[0], step[1]));
    return text;
}

std::string set_point_table() {
    std::string text = course_head("set point °C");
    text += course_row("45 to 50 at 10 L/min", set_point_step(10.0, 45.0, 50.0));
    text += course_row("50 to 45 at 10 L/min", set_point_step(10.0, 50.0, 45.0));
    text += course_row("40 to 50 at 6 L/min", set_point_step(6.0, 40.0, 50.0));
    text += course_row("50 to 40 at 6 L/min", set_point_step(6.0, 50.0, 40.0));
    return text;
}

std::string small_draw_table() {
    std::string text = course_head("set 38 °C");
    for (const double inlet : {14.0, 25.0})
        for (const double flow : {2.6, 3.0, 3.5})
            text += course_row("inlet " + fixed(inlet, 0) + " °C, " + fixed(flow, 1) + " L/min",
                               small_draw(38.0, inlet, flow));
    return text;
}

/// A thermostatic mixer that swings: the hot flow goes between two values every ten seconds.
struct Swing {
    int light_ups = 0;
    double least_k = 1e9, most_k = -1e9;
};
Swing swinging_mixer(double low_lpm, double high_lpm) {
    laws::House house(false, 45.0);
    house.run(2.0);
    Swing swing;
    auto before = house.look().readout.phase;
    for (int half = 0; half < 60; ++half) {
        house.open_taps(half % 2 == 0 ? high_lpm : low_lpm);
        for (int i = 0; i < 100; ++i) {
            house.run(signals::tick_s);
            const auto now = house.look();
            const bool lights = now.readout.phase == controller::Phase::light_up &&
                                before != controller::Phase::light_up;
            if (lights && half >= 10) ++swing.light_ups;
            before = now.readout.phase;
            if (half < 10) continue;
            swing.least_k = std::min(swing.least_k, now.plant.tap_water_k - laws::celsius);
            swing.most_k = std::max(swing.most_k, now.plant.tap_water_k - laws::celsius);
        }
    }
    return swing;
}

std::string swing_table() {
    std::string text = row({"hot flow swings between, L/min", "light-ups in 500 s",
                            "coldest at the tap °C", "hottest at the tap °C"}) +
                       "|---|---|---|---|\n";
    const double pairs[][2] = {{1.6, 2.8}, {2.2, 2.8}, {2.8, 4.0}};
    for (const auto& pair : pairs) {
        const Swing s = swinging_mixer(pair[0], pair[1]);
        text += row({fixed(pair[0], 1) + " and " + fixed(pair[1], 1), std::to_string(s.light_ups),
                     fixed(s.least_k, 1), fixed(s.most_k, 1)});
    }
    return text;
}

std::string page() {
    std::ifstream file(std::string(EMBERPATH_SOURCE_DIR) + "/tests/control/exercises.md.in");
    std::ostringstream text;
    text << file.rdbuf();
    std::string page = text.str();
    const std::pair<std::string, std::string (*)()> tables[] = {
        {"@process@\n", process_table},
        {"@tuning@\n", tuning_table},
        {"@flow@\n", flow_table},
        {"@set_point@\n", set_point_table},
        {"@small_draw@\n", small_draw_table},
        {"@swing@\n", swing_table}};
    for (const auto& [mark, table] : tables) {
        const auto at = page.find(mark);
        EXPECT_NE(at, std::string::npos) << mark;
        if (at != std::string::npos) page.replace(at, mark.size(), table());
    }
    return page;
}

TEST(ControlExercises, PageHoldsTheFiguresOfThisProgram) {
    const std::string path = std::string(EMBERPATH_SOURCE_DIR) + "/docs/control_exercises.md";
    const std::string made = page();
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) std::ofstream(path) << made;
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    EXPECT_EQ(text.str(), made);
}

TEST(ProcessOfTheLoop, HasAGainNearOneBecauseFeedForwardKnowsTheHeater) {
    for (const double flow : flows_lpm) {
        const Process p = identify(set_c, flow, 1.0);
        EXPECT_NEAR(p.gain, 1.0, 0.1) << flow;
    }
}

TEST(ProcessOfTheLoop, IsSlowerAtSmallerFlow) {
    Process before{0.0, 1e9, 1e9};
    for (const double flow : flows_lpm) {
        const Process p = identify(set_c, flow, 1.0);
        EXPECT_LT(p.tau_s, before.tau_s) << flow;
        EXPECT_LT(p.theta_s, before.theta_s) << flow;
        before = p;
    }
}

TEST(ProcessOfTheLoop, DoesNotDependOnTheSizeOrSignOfASmallStep) {
    const Process up = identify(set_c, 10.0, 1.0), down = identify(set_c, 10.0, -2.0);
    EXPECT_NEAR(down.gain, up.gain, 0.05);
    EXPECT_NEAR(down.tau_s, up.tau_s, 0.4);
    EXPECT_NEAR(down.theta_s, up.theta_s, 0.4);
}

TEST(Tuning, IsCalmerThanTheTightestThatThePublishedRulesAllow) {
    for (const double flow : flows_lpm) {
        const Process p = identify(set_c, flow, 1.0);
        const Tuning ours = applied(flow);
        EXPECT_LT(ours.gain, simc(p, p.theta_s).gain) << flow;
        EXPECT_LT(ours.gain, ziegler_nichols(p).gain) << flow;
        const double tauc_s = p.tau_s / (p.gain * ours.gain) - p.theta_s;
        EXPECT_GT(tauc_s, p.theta_s) << flow;
        EXPECT_LT(tauc_s, 5.0 * p.theta_s) << flow << ": not sluggish either";
    }
}

TEST(Tuning, KeepsTheMarginsThatThePublishedRulesKeep) {
    for (const double flow : flows_lpm) {
        const Margins m = margins(identify(set_c, flow, 1.0), applied(flow));
        EXPECT_GE(m.gain_margin, 3.14) << flow;
        EXPECT_GE(m.phase_margin_deg, 61.4) << flow;
        EXPECT_LE(m.peak_sensitivity, 1.59) << flow;
    }
}

TEST(Tuning, IntegratesAboutAsFastAsTheProcessMoves) {
    for (const double flow : flows_lpm) {
        const Process p = identify(set_c, flow, 1.0);
        EXPECT_NEAR(applied(flow).integral_s / p.tau_s, 1.3, 0.25) << flow;
    }
}

TEST(SmallDraw, HoldsTheSetPointWhereTheLeastFireAllows) {
    const Course cold = small_draw(38.0, 14.0, 2.6);
    EXPECT_LT(cold.most_k - cold.least_k, 0.2);
    EXPECT_EQ(cold.bank_changes, 0);
    const Course warm = small_draw(38.0, 25.0, 2.6);
    EXPECT_GT(warm.least_k, 1.5) << "the least fire is too much for warm inlet water";
}

TEST(SwingingMixer, MakesTheBurnerGoOutAndLightAgainOnlyBelowTheStopFlow) {
    EXPECT_GT(swinging_mixer(1.6, 2.8).light_ups, 10);
    EXPECT_EQ(swinging_mixer(2.2, 2.8).light_ups, 0);
    EXPECT_EQ(swinging_mixer(2.8, 4.0).light_ups, 0);
}

}  // namespace
}  // namespace emberpath::control
