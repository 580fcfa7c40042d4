/// Makes docs/validation.md from what the tests wrote while they ran (tests/support/results.hpp).
///
///     validation_report          compares the committed report with the results of this build
///     validation_report --write  writes it (so does EMBERPATH_REGENERATE=1)
///
/// Exit status: 0 the report is right or written, 1 it differs, 2 results are missing, 77 only those of the
/// independent calculation are missing and nobody insists on them (EMBERPATH_EVERY_TEST unset).

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "tests/support/csv.hpp"
#include "tests/support/results.hpp"
#include "tests/validation/chapters.hpp"

namespace emberpath::validation {
namespace {

namespace fs = std::filesystem;

const fs::path report_path = fs::path(EMBERPATH_SOURCE_DIR) / "docs" / "validation.md";
constexpr int skipped_status = 77;

std::optional<std::vector<Result>> read_results(std::string_view subject) {
    const fs::path folder = fs::path(EMBERPATH_BINARY_DIR) / "validation_results";
    std::ifstream in(folder / (std::string(subject) + ".csv"));
    std::string line;
    if (!std::getline(in, line) || line + '\n' != columns) return std::nullopt;
    std::vector<Result> out;
    while (std::getline(in, line)) {
        const std::vector<std::string> f = csv::split(line);
        if (f.size() != 11) return std::nullopt;
        out.push_back({f[0], f[1], f[2], f[3], f[4], f[5], f[6], f[7], f[8], f[9], f[10]});
    }
    return out;
}

/// Text for a cell of a table.
std::string cell(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '|') out += '\\';
        out += c == '\n' ? ' ' : c;
    }
    return out;
}

bool is_excused(const Result& r) {
    return r.outcome == "skipped" || r.outcome == "known miss";
}

/// A computed number with the digits that its tolerance can tell apart.
std::string digits_that_matter(const Result& r) {
    const bool fine = r.tolerance.starts_with("rel 1e-8") || r.tolerance.starts_with("rel 1e-7") ||
                      r.tolerance.starts_with("exact");
    constexpr std::size_t short_enough = 8;
    std::istringstream in(r.got);
    double value = 0.0;
    if (fine || r.got.size() <= short_enough || !(in >> value) ||
        in.peek() != std::char_traits<char>::eof())
        return r.got;
    return number_text(value, 6);
}

struct Counts {
    std::size_t checks = 0, passed = 0, plausibility = 0, excused = 0, known_misses = 0;
    void add(const Result& r) {
        if (is_excused(r)) {
            ++excused;
            if (r.outcome == "known miss") ++known_misses;
            return;
        }
        ++checks;
        if (r.outcome == "pass") ++passed;
        if (r.kind == "plausibility") ++plausibility;
    }
    void add(const Counts& other) {
        checks += other.checks;
        passed += other.passed;
        plausibility += other.plausibility;
        excused += other.excused;
        known_misses += other.known_misses;
    }
};

Counts counts_of(const std::vector<Result>& results) {
    Counts counts;
    for (const Result& r : results) counts.add(r);
    return counts;
}

/// Sources by their first appearance.
class Sources {
  public:
    std::size_t number(const std::string& source) {
        const auto [at, fresh] = numbers_.try_emplace(source, names_.size() + 1);
        if (fresh) names_.push_back(source);
        return at->second;
    }
    void print(std::ostream& out) const {
        if (names_.empty()) return;
        out << "\nSources\n\n";
        for (std::size_t i = 0; i < names_.size(); ++i) out << i + 1 << ". " << names_[i] << '\n';
    }

  private:
    std::map<std::string, std::size_t> numbers_;
    std::vector<std::string> names_;
};

void print_checks(std::ostream& out, const std::vector<Result>& results, Sources& sources) {
    out << "\n| what | at | unit | expected | got | tolerance | result | checked by | source |\n"
           "|---|---|---|---|---|---|---|---|---|\n";
    for (const Result& r : results) {
        if (is_excused(r)) continue;
        const std::string outcome =
            r.kind == "plausibility" ? r.outcome + " (recalled value)" : r.outcome;
        for (const std::string& text : {r.quantity, r.conditions, r.unit, r.expected,
                                        digits_that_matter(r), r.tolerance, outcome, r.checked_by})
            out << "| " << cell(text) << ' ';
        out << "| " << sources.number(r.source) << " |\n";
    }
}

void print_excused(std::ostream& out, const std::vector<Result>& results, Sources& sources) {
    if (std::none_of(results.begin(), results.end(), is_excused)) return;
    out << "\nNot checked\n\n| what | at | value | unit | tolerance | why not | source |\n"
           "|---|---|---|---|---|---|---|\n";
    for (const Result& r : results) {
        if (!is_excused(r)) continue;
        const std::string why =
            r.outcome == "known miss" ? "Known miss: " + r.checked_by : r.checked_by;
        for (const std::string& text :
             {r.quantity, r.conditions, r.expected, r.unit, r.tolerance, why})
            out << "| " << cell(text) << ' ';
        out << "| " << sources.number(r.source) << " |\n";
    }
}

void print_chapter(std::ostream& out, const Chapter& chapter, const std::vector<Result>& results) {
    const Counts counts = counts_of(results);
    Sources sources;
    out << "\n## " << chapter.title << '\n';
    if (!chapter.introduction.empty()) out << '\n' << chapter.introduction << '\n';
    out << '\n' << counts.passed << " of " << counts.checks << " checks pass";
    if (counts.plausibility > 0)
        out << ", " << counts.plausibility << " of them against a recalled value";
    if (counts.excused > 0)
        out << "; " << counts.excused << " not checked, " << counts.known_misses
            << " of these known misses";
    out << ".\n";
    print_checks(out, results, sources);
    print_excused(out, results, sources);
    sources.print(out);
}

constexpr std::string_view preface =
    "# Validation report\n\n"
    "Written by the tests; do not edit (`EMBERPATH_REGENERATE=1 ctest -R ValidationReport` in a "
    "build\n"
    "folder writes it anew). Each line is one comparison: what was expected and from which source, "
    "what\n"
    "the program got, and the tolerance. A tolerance comes with the reference value and is never "
    "widened\n"
    "to pass; where the program cannot meet it, the row is listed under \"Not checked\" as a known "
    "miss.\n"
    "*Recalled value* marks a reference that was cited from general knowledge and not read again: "
    "such a\n"
    "row shows that a result is plausible, no more. Nothing here was measured on an appliance, and "
    "the\n"
    "heater is invented: agreement with published equations and values shows that the model "
    "computes what\n"
    "it says, not that it equals any real heater.\n";

using Found = std::vector<std::pair<Chapter, std::vector<Result>>>;

/// What misses, in one place: a reader should not have to look for it.
void print_known_misses(std::ostream& out, const Found& found) {
    out << "\n## Known misses\n\nComputed like every other row, and outside the tolerance; a miss "
           "that is met fails "
           "its test until it\nis taken off this list.\n\n"
           "| subject | row | what | at | expected | got | why |\n|---|---|---|---|---|---|---|\n";
    for (const auto& [chapter, results] : found)
        for (const Result& r : results)
            if (r.outcome == "known miss")
                out << "| " << chapter.title << " | " << r.id << " | " << cell(r.quantity) << " | "
                    << cell(r.conditions) << " | " << cell(r.expected + " " + r.unit) << ", "
                    << cell(r.tolerance) << " | " << cell(r.got) << " | " << cell(r.checked_by)
                    << " |\n";
}

/// The rows that no check uses, by their reason. Which ones they are in words stands in their chapter.
void print_left_out(std::ostream& out, const Found& found) {
    out << "\n## Rows left out, and why\n\nEvery other row of the reference files is checked; one "
           "that is neither checked nor listed here fails\nits test, and so does a reason that no "
           "row needs.\n\n| subject | rows | why |\n|---|---|---|\n";
    for (const auto& [chapter, results] : found) {
        std::vector<std::pair<std::string, std::string>> reasons;  // reason, rows; as they come
        for (const Result& r : results) {
            if (r.outcome != "skipped") continue;
            const auto at = std::find_if(reasons.begin(), reasons.end(), [&r](const auto& one) {
                return one.first == r.checked_by;
            });
            if (at == reasons.end())
                reasons.emplace_back(r.checked_by, r.id);
            else
                at->second += " " + r.id;
        }
        for (const auto& [reason, ids] : reasons)
            out << "| " << chapter.title << " | " << ids << " | " << cell(reason) << " |\n";
    }
}

std::string report(const Found& found) {
    std::ostringstream out;
    out << preface
        << "\n| subject | checks | pass | against recalled values | not checked | of these known "
           "misses |\n|---|---|---|---|---|---|\n";
    Counts all;
    const auto line = [&out](std::string_view title, const Counts& c) {
        out << "| " << title << " | " << c.checks << " | " << c.passed << " | " << c.plausibility
            << " | " << c.excused << " | " << c.known_misses << " |\n";
    };
    for (const auto& [chapter, results] : found) {
        const Counts counts = counts_of(results);
        line(chapter.title, counts);
        all.add(counts);
    }
    line("**all**", all);
    print_known_misses(out, found);
    print_left_out(out, found);
    for (const auto& [chapter, results] : found) print_chapter(out, chapter, results);
    return out.str();
}

/// A reference file without a chapter would be left out unseen.
bool every_reference_file_has_a_chapter() {
    bool complete = true;
    for (const auto& entry :
         fs::directory_iterator(fs::path(EMBERPATH_SOURCE_DIR) / "tests" / "reference")) {
        if (entry.path().extension() != ".csv") continue;
        const std::string stem = entry.path().stem().string();
        if (std::any_of(chapters.begin(), chapters.end(),
                        [&stem](const Chapter& c) { return c.subject == stem; }))
            continue;
        std::cerr << "tests/validation/chapters.hpp has no chapter for " << stem << ".csv\n";
        complete = false;
    }
    return complete;
}

bool exists_in_source(std::string_view subject) {
    return fs::exists(fs::path(EMBERPATH_SOURCE_DIR) / "tests" / "reference" /
                      (std::string(subject) + ".csv"));
}

int status_when_missing(const std::vector<std::string_view>& missing) {
    for (const std::string_view subject : missing)
        std::cerr << "no results for " << subject << ": run the tests that write them\n";
    const bool only_independent = missing.size() == 1 && missing[0] == independent_subject;
    return only_independent && std::getenv("EMBERPATH_EVERY_TEST") == nullptr ? skipped_status : 2;
}

void show_first_difference(const std::string& was, const std::string& is) {
    std::istringstream old_text(was), new_text(is);
    std::string a, b;
    for (int number = 1;; ++number) {
        const bool more_old = static_cast<bool>(std::getline(old_text, a));
        const bool more_new = static_cast<bool>(std::getline(new_text, b));
        if (more_old && more_new && a == b) continue;
        std::cerr << "docs/validation.md, line " << number << "\n  says  " << (more_old ? a : "")
                  << "\n  tests " << (more_new ? b : "") << '\n';
        return;
    }
}

int compare_or_write(const std::string& now, bool write) {
    if (write) {
        std::ofstream(report_path) << now;
        return 0;
    }
    std::ifstream in(report_path);
    const std::string was{std::istreambuf_iterator<char>(in), {}};
    if (was == now) return 0;
    show_first_difference(was, now);
    std::cerr << "The report does not say what the tests found; EMBERPATH_REGENERATE=1 writes it "
                 "anew. Look at the difference before you commit it.\n";
    return 1;
}

int run(bool write) {
    if (!every_reference_file_has_a_chapter()) return 2;
    Found found;
    std::vector<std::string_view> missing;
    for (const Chapter& chapter : chapters) {
        const bool topic = chapter.subject.front() >= '0' && chapter.subject.front() <= '9';
        if (topic && !exists_in_source(chapter.subject)) continue;
        if (auto results = read_results(chapter.subject))
            found.emplace_back(chapter, std::move(*results));
        else
            missing.push_back(chapter.subject);
    }
    if (!missing.empty()) return status_when_missing(missing);
    return compare_or_write(report(found), write);
}

}  // namespace
}  // namespace emberpath::validation

int main(int argc, char** argv) {
    const bool write = std::getenv("EMBERPATH_REGENERATE") != nullptr ||
                       (argc > 1 && std::string_view(argv[1]) == "--write");
    return emberpath::validation::run(write);
}
