#include "tests/support/reference_rows.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <iostream>
#include <iterator>
#include <optional>
#include <set>
#include <sstream>
#include <stdexcept>
#include <utility>

#include "tests/support/csv.hpp"
#include "tests/support/results.hpp"

namespace emberpath::reference {

namespace {

using validation::Result;
using validation::ResultsFile;

constexpr std::size_t column_count = 9;

std::optional<double> leading_number(std::string_view text) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    if (text.starts_with('+')) text.remove_prefix(1);
    double value = 0.0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
    if (end.ec != std::errc{}) return std::nullopt;
    return value;
}

bool is_word(char c) {
    return (std::isalnum(static_cast<unsigned char>(c)) != 0) || c == '_';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    return text;
}

/// The alternative that a check means, out of "rel 1e-8 (IF97 code); rel 2e-3 (other fit)".
std::string alternative(const Row& row, std::size_t which) {
    std::stringstream all(row.tolerance);
    std::string part;
    for (std::size_t i = 0; std::getline(all, part, ';'); ++i)
        if (i == which) return std::string(trimmed(part));
    throw std::runtime_error("the row states no tolerance number " + std::to_string(which));
}

Result result_of(const Row& row) {
    Result r;
    r.id = row.id;
    r.quantity = row.quantity;
    r.conditions = row.conditions;
    r.unit = row.unit;
    r.expected = row.value;
    r.tolerance = row.tolerance;
    r.kind = row.status == "memory" ? "plausibility" : "check";
    r.source = row.source;
    return r;
}

/// A row computed by one check, without judging the test that runs. `problem` says why it does not pass.
Result outcome_of(const Row& row, const Check& check, std::string& problem) {
    Result result = result_of(row);
    result.checked_by = check.name;
    result.got = "none";
    result.outcome = "fail";
    problem = "exceeded";
    try {
        result.tolerance = alternative(row, check.tolerance);
        const auto expected = leading_number(row.value);
        if (!expected) throw std::runtime_error("the row holds no number");
        const double computed = check.compute(row);
        result.got = validation::number_text(computed);
        if (within(computed, *expected, result.tolerance)) result.outcome = "pass";
    } catch (const std::exception& thrown) {
        problem = thrown.what();
    }
    return result;
}

bool run_check(const Row& row, const Check& check, ResultsFile& results) {
    std::string problem;
    const Result result = outcome_of(row, check, problem);
    results.add(result);
    const bool pass = result.outcome == "pass";
    EXPECT_TRUE(pass) << row.id << " " << row.quantity << " (" << row.conditions << "): got "
                      << result.got << ", expected " << row.value << " " << row.unit << " within "
                      << result.tolerance << " " << problem << "; by " << check.name;
    return pass;
}

/// A known miss is computed like any other row, and has to miss: one that is met no longer needs its excuse.
/// Returns what was got.
std::string confirm_miss(const Row& row, std::span<const Check> checks,
                         std::vector<std::size_t>& run) {
    std::string got;
    for (std::size_t i = 0; i < checks.size(); ++i) {
        if (!checks[i].match(row)) continue;
        ++run[i];
        std::string problem;
        const Result result = outcome_of(row, checks[i], problem);
        EXPECT_NE(result.outcome, "pass")
            << row.id << " is no known miss: " << checks[i].name << " meets it with " << result.got;
        EXPECT_NE(result.got, "none") << row.id << " " << problem;
        got += (got.empty() ? "" : "; ") + result.got;
    }
    EXPECT_FALSE(got.empty()) << row.id << " is called a known miss, and nothing computes it";
    return got;
}

void run_checks(const Row& row, std::span<const Check> checks, std::vector<std::size_t>& run,
                ResultsFile& results, Tally& tally) {
    bool accounted = false, passed = true;
    for (std::size_t i = 0; i < checks.size(); ++i) {
        if (!checks[i].match(row)) continue;
        accounted = true;
        ++run[i];
        passed = run_check(row, checks[i], results) && passed;
    }
    EXPECT_TRUE(accounted) << row.id << " " << row.quantity << " (" << row.conditions
                           << ") is neither checked nor skipped with a reason";
    if (!accounted) {
        Result result = result_of(row);
        result.outcome = "unaccounted";
        results.add(result);
    }
    if (accounted) ++tally.checked;
    if (accounted && row.status == "memory") ++tally.plausibility;
    if (!passed || !accounted) ++tally.failed;
}

void report(std::string_view name, const Tally& tally) {
    std::cout << "[ reference] " << name << ": " << tally.rows << " rows; " << tally.checked
              << " checked (" << tally.plausibility << " of them plausibility), " << tally.skipped
              << " skipped (" << tally.known_misses << " known misses), " << tally.failed
              << " failed\n";
    testing::Test::RecordProperty("rows", std::to_string(tally.rows));
    testing::Test::RecordProperty("checked", std::to_string(tally.checked));
    testing::Test::RecordProperty("skipped", std::to_string(tally.skipped));
}

}  // namespace

std::vector<Row> read_rows(std::string_view name) {
    const std::string path =
        std::string(EMBERPATH_SOURCE_DIR) + "/tests/reference/" + std::string(name) + ".csv";
    std::ifstream in(path);
    std::string line;
    if (!std::getline(in, line)) throw std::runtime_error("cannot read " + path);
    std::vector<Row> rows;
    std::set<std::string> seen;
    while (std::getline(in, line)) {
        auto f = csv::split(line);
        if (f.size() != column_count)
            throw std::runtime_error(std::string(path).append(": not nine fields: ").append(line));
        if (!seen.insert(f[0]).second) throw std::runtime_error(path + ": twice the row " + f[0]);
        rows.push_back({f[0], f[1], f[2], f[3], f[4], f[5], f[6], f[7], f[8]});
    }
    return rows;
}

double number_after(std::string_view text, std::string_view key) {
    for (std::size_t at = text.find(key); at != std::string_view::npos;
         at = text.find(key, at + 1)) {
        if (at > 0 && is_word(text[at - 1]) && is_word(key.front())) continue;
        if (const auto value = leading_number(text.substr(at + key.size()))) return *value;
    }
    throw std::runtime_error("no number after \"" + std::string(key) + "\"");
}

double after(const Row& row, std::string_view key) {
    return number_after(row.conditions, key);
}

double before(const Row& row, std::string_view text) {
    const std::string_view all = row.conditions;
    for (std::size_t at = all.find(text); at != std::string_view::npos;
         at = all.find(text, at + 1)) {
        std::size_t start = at;
        while (start > 0 && all[start - 1] == ' ') --start;
        const std::size_t end = start;
        while (start > 0 && (std::isdigit(static_cast<unsigned char>(all[start - 1])) != 0 ||
                             all[start - 1] == '.'))
            --start;
        if (start > 0 && start < end && all[start - 1] == '-') --start;
        if (const auto value = leading_number(all.substr(start, end - start))) return *value;
    }
    throw std::runtime_error("no number before \"" + std::string(text) + "\"");
}

bool mentions(const Row& row, std::string_view text) {
    return row.conditions.find(text) != std::string::npos;
}

Row from(const Row& row, std::string_view text) {
    const std::size_t at = row.conditions.find(text);
    if (at == std::string::npos) throw std::runtime_error("no \"" + std::string(text) + "\"");
    Row out = row;
    out.conditions = row.conditions.substr(at);
    return out;
}

Match quantity(std::string text) {
    return [text = std::move(text)](const Row& row) { return row.quantity.starts_with(text); };
}

Match quantity(std::string text, std::string part) {
    return [text = std::move(text), part = std::move(part)](const Row& row) {
        return row.quantity.starts_with(text) && row.quantity.find(part) != std::string::npos;
    };
}

Match rows(std::string ids) {
    return [ids = std::move(ids)](const Row& row) {
        std::istringstream words(ids);
        return std::find(std::istream_iterator<std::string>(words), {}, row.id) !=
               std::istream_iterator<std::string>();
    };
}

bool within(double got, double expected, std::string_view tolerance) {
    constexpr double exact =
        1e-9;  // relative: the same number, whatever the units it passed through
    const std::size_t either = tolerance.find(" or ");
    if (either != std::string_view::npos)
        return within(got, expected, tolerance.substr(0, either)) ||
               within(got, expected, tolerance.substr(either + 4));
    if (!std::isfinite(got)) return false;
    const double away = std::abs(got - expected);
    if (tolerance.starts_with("exact")) return away <= exact * std::abs(expected);
    if (tolerance.starts_with("rel "))
        return away <= number_after(tolerance, "rel ") * std::abs(expected);
    if (tolerance.starts_with("abs ")) return away <= number_after(tolerance, "abs ");
    if (tolerance.starts_with("factor ")) {
        const double factor = number_after(tolerance, "factor ");
        return got >= expected / factor && got <= expected * factor;
    }
    if (tolerance.starts_with("upper limit")) return got <= expected;
    throw std::runtime_error("no tolerance: \"" + std::string(tolerance) + "\"");
}

Tally check_file(std::string_view name, std::span<const Check> checks,
                 std::span<const Skip> skips) {
    return check_rows(name, read_rows(name), checks, skips);
}

Tally check_rows(std::string_view name, std::span<const Row> all_rows,
                 std::span<const Check> checks, std::span<const Skip> skips) {
    ResultsFile results(name);
    Tally tally;
    std::vector<std::size_t> used(skips.size(), 0), run(checks.size(), 0);
    for (const Row& row : all_rows) {
        ++tally.rows;
        const auto skip =
            std::find_if(skips.begin(), skips.end(), [&](const Skip& s) { return s.match(row); });
        if (skip != skips.end()) {
            ++used[static_cast<std::size_t>(skip - skips.begin())];
            ++tally.skipped;
            if (skip->known_miss) ++tally.known_misses;
            Result result = result_of(row);
            result.outcome = skip->known_miss ? "known miss" : "skipped";
            result.checked_by = skip->reason;
            if (skip->known_miss) result.got = confirm_miss(row, checks, run);
            results.add(result);
            continue;
        }
        run_checks(row, checks, run, results, tally);
    }
    for (std::size_t i = 0; i < skips.size(); ++i)
        EXPECT_GT(used[i], 0U) << "no row needs the excuse: " << skips[i].reason;
    for (std::size_t i = 0; i < checks.size(); ++i)
        EXPECT_GT(run[i], 0U) << "no row is computed by: " << checks[i].name;
    if (!name.empty()) report(name, tally);
    return tally;
}

}  // namespace emberpath::reference
