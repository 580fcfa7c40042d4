// Writes docs/cause_matrix.md.
#include <algorithm>
#include <map>

#include "sim/units/units.hpp"
#include "tests/laws/cause_matrix.hpp"

namespace emberpath::laws {
namespace {

using faults::Cause;
using faults::CauseInfo;
using worksite::Quantity;

constexpr std::size_t most_rows = 8;
constexpr int pair_severities = 5;

constexpr std::string_view opening = R"(# Causes and readings

<!-- Made by tests/laws/cause_matrix_test.cpp; EMBERPATH_REGENERATE=1 rewrites it. -->

What each cause does to what can be read, from the simulation: set point 50 °C, inlet 14 °C, draws of 3.5, 10 and
16 L/min for five minutes; cylinders on a morning of 5 °C, their long draw half an hour. Light-up is two seconds
after the first attempt begins, pressures and flame current at their peak. A reading has moved when it is three
instrument scales from the sound house (scale^2 = error of the instrument^2 + what the model may be off by^2; the
table of instruments is in scoring.md). Arrows give the direction, the figure in brackets the distance in scales;
a dot means not moved. At most eight readings of each cause, the ones that moved furthest, on the occasion where
they did. Severities are the least, the middle and the greatest of the symptomatic range.

)";

constexpr std::string_view pairs_opening = R"(
## Pairs that instruments cannot separate

Two causes with different remedies, each at five severities of its range (one where it is there or not; both signs
where it has one). A cell says at how many pairs of severities no reading on any occasion is three scales apart, in
percent of all; blank: always separable. Each set of instruments holds those to its left. A pair that even
the last column does not separate needs what the tables here do not hold: a trend, a comparison after a remedy, or
the customer.

)";

/// A cause with one sign, read at three severities.
struct Column {
    const CauseInfo* row;
    double sign;
    std::vector<Findings> found;
};

struct Line {
    std::size_t quantity = 0, occasion = 0;
    double most = 0.0;
};

std::vector<Line> moved(const Column& column, const Findings& sound) {
    std::vector<Line> lines;
    const std::size_t occasions = sound.cylinder ? occasion_count : occasion_count - 1;
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        if (!counts(static_cast<Quantity>(q))) continue;
        Line best{q, 0, 0.0};
        for (std::size_t o = 0; o < occasions; ++o)
            for (const Findings& found : column.found) {
                const double d = apart(static_cast<Quantity>(q), found.on[o][q], sound.on[o][q]);
                if (d > best.most) best = {q, o, d};
            }
        if (best.most >= separable) lines.push_back(best);
    }
    std::stable_sort(lines.begin(), lines.end(),
                     [](const Line& a, const Line& b) { return a.most > b.most; });
    return lines;
}

std::string cell(const Line& line, const Findings& found, const Findings& sound) {
    const auto quantity = static_cast<Quantity>(line.quantity);
    const double was = sound.on[line.occasion][line.quantity];
    const double is = found.on[line.occasion][line.quantity];
    const double distance = apart(quantity, is, was);
    if (distance < separable) return "·";
    const std::string text = worksite::text_of(quantity, is);
    if (worksite::info(quantity).categorical) return text;
    return std::string(is > was ? "↑ " : "↓ ") + text + " (" + units::fixed(distance, 0) + ")";
}

std::string table_of(const Column& column, const Findings& sound) {
    std::string text = "\n### `" + std::string(column.row->word) + "`";
    if (column.row->has_sign) text += column.sign > 0.0 ? ", positive" : ", negative";
    text += "\n\n";
    std::vector<Line> lines = moved(column, sound);
    if (lines.empty()) return text + "No reading moves.\n";
    const bool graded = column.found.size() > 1;
    text +=
        graded
            ? "| reading | when | sound | least | middle | greatest |\n|---|---|---|---|---|---|\n"
            : "| reading | when | sound | with the cause |\n|---|---|---|---|\n";
    const std::size_t more = lines.size() > most_rows ? lines.size() - most_rows : 0;
    lines.resize(lines.size() - more);
    for (const Line& line : lines) {
        const auto quantity = static_cast<Quantity>(line.quantity);
        text += "| " + std::string(worksite::info(quantity).title) + " | " +
                std::string(title(static_cast<Occasion>(line.occasion))) + " | " +
                worksite::text_of(quantity, sound.on[line.occasion][line.quantity]) + " |";
        for (const Findings& found : column.found) text += " " + cell(line, found, sound) + " |";
        text += "\n";
    }
    if (more > 0) text += "\nand " + std::to_string(more) + " more.\n";
    return text;
}

std::vector<Findings> found_at(const CauseInfo& row, int count, bool cylinder) {
    std::vector<Findings> all;
    for (const double sign : signs(row))
        for (const double severity : severities(row, count, sign))
            all.push_back(find(row.cause, severity, cylinder));
    return all;
}

/// Percent of pairs of severities that each set leaves unseparated; empty when the first one separates all.
std::vector<double> left_over(const std::vector<Findings>& a, const std::vector<Findings>& b) {
    std::vector<double> left(instrument_sets.size(), 0.0);
    for (const Findings& x : a)
        for (const Findings& y : b)
            for (std::size_t set = 0; set < left.size(); ++set) {
                if (apart(x, y, set) >= separable) break;
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

std::string pairs_of(bool cylinder) {
    std::map<Cause, std::vector<Findings>> found;
    for (const CauseInfo& row : faults::catalogue())
        if (cylinder ? !row.mains_only : !row.cylinder_only)
            found[row.cause] = found_at(row, pair_severities, cylinder);
    std::string text = "| pair |";
    for (const auto set : instrument_sets) text += " " + std::string(set) + " |";
    text += "\n|---|";
    for (std::size_t i = 0; i < instrument_sets.size(); ++i) text += "---|";
    text += "\n";
    for (const auto& [a, at_a] : found)
        for (const auto& [b, at_b] : found) {
            const CauseInfo &x = faults::info(a), &y = faults::info(b);
            if (a >= b || x.remedy == y.remedy) continue;
            if (cylinder && !x.cylinder_only && !y.cylinder_only) continue;  // said before
            const auto left = left_over(at_a, at_b);
            if (!left.empty()) text += pair_row(x, y, left);
        }
    return text;
}

}  // namespace

std::string cause_matrix_page() {
    std::string text(opening);
    const Findings sound[2] = {find(Cause::no_fault, 0.0, false), find(Cause::no_fault, 0.0, true)};
    text += "## What each cause moves\n";
    for (const CauseInfo& row : faults::catalogue()) {
        if (row.cause == Cause::no_fault) continue;
        for (const double sign : signs(row)) {
            Column column{&row, sign, {}};
            for (const double severity : severities(row, 3, sign))
                column.found.push_back(find(row.cause, severity, row.cylinder_only));
            text += table_of(column, sound[row.cylinder_only ? 1 : 0]);
        }
    }
    text += std::string(pairs_opening) + "### Natural gas\n\n" + pairs_of(false) +
            "\n### Cylinder, pairs with a cause of its own\n\n" + pairs_of(true);
    return text;
}

}  // namespace emberpath::laws
