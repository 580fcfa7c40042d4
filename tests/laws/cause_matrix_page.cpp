// Writes docs/cause_matrix.md.
#include <algorithm>

#include "sim/units/units.hpp"
#include "tests/laws/cause_matrix.hpp"

namespace emberpath::laws {
namespace {

using faults::Cause;
using faults::CauseInfo;
using worksite::Quantity;

constexpr std::string_view opening = R"(# Causes and readings

<!-- Made by tests/laws/cause_matrix_test.cpp; EMBERPATH_REGENERATE=1 rewrites it. -->

What each cause does to what can be read, from the simulation: set point 50 °C, inlet 14 °C, draws of 3.5, 10 and
16 L/min for five minutes; cylinders on a morning of 5 °C, their long draw half an hour. Light-up is two seconds
after the first attempt begins, pressures and flame current at their peak; standby follows five minutes of rest; with
the main switch off and with the cold valve shut (a hot tap open) the house is read after twenty seconds. A cause that
needs something more (two cylinders, an open flue, a tempering valve, a night, wall controllers, a high set value) is
read in a house that has it, against a sound house of the same kind. A reading has moved when it is three
instrument scales from the sound house (scale^2 = error of the instrument^2 + what the model may be off by^2; the
table of instruments is in scoring.md). Arrows give the direction, the figure in brackets the distance in scales;
a dot means not moved. Every reading that moves stands once, on the occasion where it moves furthest, and those that
move furthest come first. Severities are the least, the middle and the greatest of the symptomatic range.

)";

constexpr std::string_view pairs_opening = R"(
## Pairs that instruments cannot separate

Two causes with different remedies, each at five severities of its range (one where it is there or not; both signs
where it has one). A cell says at how many pairs of severities no reading on any occasion is three scales apart, in
percent of all; blank: always separable. Each set of instruments holds those to its left. A pair that even
the last column does not separate needs what the tables here do not hold: a trend, a comparison after a remedy, or
the customer.

)";

/// A cause with one sign, in the house that it needs.
struct Column {
    const CauseInfo* row;
    double sign;
    Premises premises;
    [[nodiscard]] std::vector<Findings> shown() const {  // least, middle, greatest
        const auto& all = found(row->cause, sign, premises);
        return all.size() == 1 ? all : std::vector<Findings>{all[0], all[2], all[4]};
    }
};

struct Line {
    std::size_t quantity = 0, occasion = 0;
    double most = 0.0;
};

std::vector<Line> moved(const std::vector<Findings>& shown, const Findings& healthy) {
    std::vector<Line> lines;
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        if (!counts(static_cast<Quantity>(q))) continue;
        Line best{q, 0, 0.0};
        for (std::size_t o = 0; o < occasion_count; ++o)
            for (const Findings& one : shown) {
                if (!healthy.has(o)) continue;
                const double d = apart(static_cast<Quantity>(q), one.on[o][q], healthy.on[o][q]);
                if (d > best.most) best = {q, o, d};
            }
        if (best.most >= separable) lines.push_back(best);
    }
    std::stable_sort(lines.begin(), lines.end(),
                     [](const Line& a, const Line& b) { return a.most > b.most; });
    return lines;
}

std::string cell(const Line& line, const Findings& one, const Findings& healthy) {
    const auto quantity = static_cast<Quantity>(line.quantity);
    const double was = healthy.on[line.occasion][line.quantity];
    const double is = one.on[line.occasion][line.quantity];
    const double distance = apart(quantity, is, was);
    if (distance < separable) return "·";
    std::string text = worksite::text_of(quantity, is);
    if (worksite::info(quantity).categorical) return text;
    return std::string(is > was ? "↑ " : "↓ ") + text + " (" + units::fixed(distance, 0) + ")";
}

std::string table_of(const Column& column) {
    std::string text = "\n### `" + std::string(column.row->word) + "`";
    if (column.row->has_sign) text += column.sign > 0.0 ? ", positive" : ", negative";
    text += "\n\n";
    const Findings& healthy = sound(column.premises);
    const std::vector<Findings> shown = column.shown();
    std::vector<Line> lines = moved(shown, healthy);
    if (lines.empty()) return text + "No reading moves.\n";
    text +=
        shown.size() > 1
            ? "| reading | when | sound | least | middle | greatest |\n|---|---|---|---|---|---|\n"
            : "| reading | when | sound | with the cause |\n|---|---|---|---|\n";
    for (const Line& line : lines) {
        const auto quantity = static_cast<Quantity>(line.quantity);
        text += "| " + std::string(worksite::info(quantity).title) + " | " +
                std::string(title(static_cast<Occasion>(line.occasion))) + " | " +
                worksite::text_of(quantity, healthy.on[line.occasion][line.quantity]) + " |";
        for (const Findings& one : shown) text += " " + cell(line, one, healthy) + " |";
        text += "\n";
    }
    return text;
}

/// Every severity of both signs.
std::vector<const Findings*> all_of(const CauseInfo& row, const Premises& premises) {
    std::vector<const Findings*> all;
    for (const double sign : signs(row))
        for (const Findings& one : found(row.cause, sign, premises)) all.push_back(&one);
    return all;
}

/// Percent of pairs of severities that each set leaves unseparated; empty when the first one separates all.
std::vector<double> left_over(const std::vector<const Findings*>& a,
                              const std::vector<const Findings*>& b) {
    std::vector<double> left(instrument_sets.size(), 0.0);
    for (const Findings* x : a)
        for (const Findings* y : b)
            for (std::size_t set = 0; set < left.size(); ++set) {
                if (apart(*x, *y, set) >= separable) break;
                left[set] += 100.0 / static_cast<double>(a.size() * b.size());
            }
    if (left.front() == 0.0) left.clear();
    return left;
}

std::string pair_row(const CauseInfo& a, const CauseInfo& b, const std::vector<double>& left) {
    std::string text = "| " + std::string(a.word) + ", " + std::string(b.word) + " |";
    for (const double percent : left)
        text += percent > 0.0 ? " " + units::fixed(std::max(percent, 1.0), 0) + " |" : " |";
    return text + "\n";
}

/// What a house with something more is compared with beside its own causes: nothing wrong, and whatever a
/// visitor would think of first there.
struct Rivals {
    faults::Needs needs;
    std::vector<Cause> causes;
};
std::vector<Rivals> all_rivals() {
    using C = Cause;
    using N = faults::Needs;
    return {{N::cylinder_pair, {C::gas_valve_stuck_high, C::valve_coil_open, C::regulator_creeps}},
            {N::open_flue, {C::flue_blocked, C::exchanger_sooted, C::intake_felted, C::fan_worn}},
            {N::listed_outlets, {C::strainer_blocked, C::water_valve_stuck_shut}},
            {N::tempering_valve, {C::outlet_sensor_drift, C::mixer_cross_flow}},
            {N::night, {C::pinhole_inside}},
            {N::wall_controller, {C::outlet_sensor_drift}},
            {N::two_wall_controllers, {C::outlet_sensor_drift}},
            {N::air_tube, {C::flue_blocked, C::intake_felted, C::fan_worn, C::tachometer_low}},
            {N::companion, {C::gas_pipe_restriction, C::water_valve_stuck_shut}},
            {N::high_set_value, {C::outlet_sensor_drift, C::gas_valve_stuck_high}}};
}

bool own(const CauseInfo& row, const Premises& where) {
    if (where.needs != faults::Needs::nothing) return row.needs == where.needs;
    return row.needs == faults::Needs::nothing && row.cylinder_only == where.cylinder;
}

/// Causes read in a house of this kind, its own first.
std::vector<const CauseInfo*> read_in(const Premises& where) {
    std::vector<const CauseInfo*> list;
    for (const CauseInfo& row : faults::catalogue())
        if (own(row, where)) list.push_back(&row);
    if (where.needs == faults::Needs::nothing && where.cylinder)
        for (const CauseInfo& row : faults::catalogue())
            if (row.needs == faults::Needs::nothing && !row.cylinder_only && !row.mains_only)
                list.push_back(&row);
    for (const Rivals& rivals : all_rivals())
        if (rivals.needs == where.needs)
            for (const Cause cause : rivals.causes) list.push_back(&faults::info(cause));
    if (where.needs != faults::Needs::nothing) list.push_back(&faults::info(Cause::no_fault));
    return list;
}

std::string pairs_of(const Premises& where) {
    std::string text;
    const auto list = read_in(where);
    for (std::size_t i = 0; i < list.size(); ++i)
        for (std::size_t j = i + 1; j < list.size(); ++j) {
            if (list[i]->remedy == list[j]->remedy) continue;
            if (!own(*list[i], where) && !own(*list[j], where)) continue;  // said before
            const auto left = left_over(all_of(*list[i], where), all_of(*list[j], where));
            if (!left.empty()) text += pair_row(*list[i], *list[j], left);
        }
    return text;
}

std::string pairs_table(std::string_view heading, const std::string& rows) {
    std::string text = "\n### " + std::string(heading) + "\n\n";
    if (rows.empty()) return text + "None.\n";
    text += "| pair |";
    for (const auto set : instrument_sets) text += " " + std::string(set) + " |";
    text += "\n|---|";
    for (std::size_t i = 0; i < instrument_sets.size(); ++i) text += "---|";
    return text + "\n" + rows;
}

}  // namespace

std::string cause_matrix_page() {
    std::string text(opening);
    text += "## What each cause moves\n";
    for (const CauseInfo& row : faults::catalogue()) {
        if (row.cause == Cause::no_fault) continue;
        for (const double sign : signs(row)) text += table_of({&row, sign, premises_of(row)});
    }
    std::string special;
    for (const Rivals& rivals : all_rivals())
        special += pairs_of({rivals.needs == faults::Needs::cylinder_pair, rivals.needs});
    return text + std::string(pairs_opening) + pairs_table("Natural gas", pairs_of({})) +
           pairs_table("Cylinder, pairs with a cause of its own", pairs_of({true})) +
           pairs_table("Houses with something more, against their nearest rivals", special);
}

}  // namespace emberpath::laws
