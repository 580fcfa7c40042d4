// What several finished attempts say together. One says little: these figures are for whoever looks at many, and
// none of them is a score.
#include <array>
#include <cmath>
#include <ostream>

#include "sim/records/record.hpp"
#include "sim/scoring/skill.hpp"
#include "sim/units/counted.hpp"
#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "ui/app/commands.hpp"
#include "ui/app/jobs.hpp"
#include "ui/app/progress.hpp"
#include "ui/debrief/page.hpp"

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t area_count = 5;
constexpr double done_rightly = 80.0;  // points of an area: the skill was shown
constexpr double known_at_first = 0.5;
const std::vector<debrief::Column> columns = {{22},      {9, true}, {9, true}, {5, true}, {6, true},
                                              {5, true}, {7, true}, {5, true}, {9}};

/// What is carried from one attempt to the next.
struct Series {
    double told = 0.0, expected = 0.0, variance = 0.0;  // bits about the true cause
    std::array<double, area_count> known{};
    std::array<int, area_count> asked{};
    std::vector<std::string> words;  // of the areas
};

scoring::Assessment assessed(Context& context, const fs::path& file) {
    if (!fs::is_regular_file(file)) throw BadInput(file.string() + ": there is no such record.");
    const auto record = records::read(file);
    if (!record.good())
        throw BadInput(diagnostics::to_text(record.problems, "the record cannot be used"));
    if (!record.closed) throw BadInput(file.string() + ": this attempt is not finished.");
    const auto loaded = load_job(find_job(context, record.header.job));
    auto verified = with_progress(context, "Weighing the evidence", [&] {
        return records::verify(record, loaded.job, loaded.hash, records::Extent::the_visit);
    });
    if (!verified.agrees) throw BadInput(file.string() + ": " + verified.text);
    return std::move(verified.assessment).value();
}

void take_in(Series& series, const scoring::Assessment& attempt) {
    series.told += attempt.luck.told_bits;
    series.expected += attempt.luck.expected_bits;
    series.variance += attempt.luck.variance;
    series.words.clear();
    for (std::size_t a = 0; a < area_count; ++a) {
        const auto& area = attempt.areas.at(a);
        series.words.push_back(area.word);
        if (!area.scored) continue;
        if (series.asked.at(a)++ == 0) series.known.at(a) = known_at_first;
        series.known.at(a) =
            scoring::known_after(series.known.at(a), area.score >= done_rightly, {});
    }
}

void write_attempt(std::ostream& out, const fs::path& file, const scoring::Assessment& attempt) {
    std::vector<std::string> cells = {file.filename().string()};
    for (const auto& area : attempt.areas)
        cells.push_back(area.scored ? units::fixed(area.score, 0) : "-");
    cells.push_back(attempt.overall_scored ? units::fixed(attempt.overall, 0) : "-");
    cells.push_back(units::fixed(attempt.luck.index, 1));
    cells.emplace_back(attempt.gates_met ? "met" : "not met");
    out << debrief::row(columns, cells);
}

std::string luck_in_words(const Series& series) {
    if (series.variance <= 0.0) return "No reading told anything: nothing is said about luck.";
    return "Luck over all of them: " + units::fixed(series.told, 1) +
           " bits told about the true causes where " + units::fixed(series.expected, 1) +
           " could be expected; index " +
           units::fixed((series.told - series.expected) / std::sqrt(series.variance), 1) +
           ". Honest work lies about 0; well above 2 after several attempts may mean that answers "
           "were known beforehand. It is never a penalty.";
}

std::string skill_in_words(const Series& series) {
    std::string words =
        "Likely known by now, if each attempt asks each area once and 80 points show it (knowledge "
        "tracing with invented rates: half known at first, .4 learn from one attempt to the next, "
        ".2 slip, .2 guess): ";
    for (std::size_t a = 0; a < area_count; ++a)
        words += (a == 0 ? "" : ", ") + series.words.at(a) + " " +
                 (series.asked.at(a) == 0 ? "not scored" : units::per_cent(series.known.at(a)));
    return words + ".";
}

}  // namespace

Status series(Context& context, const std::vector<std::string>& files) {
    Series all;
    context.out << debrief::row(columns, {"record", "safe work", "evidence", "path", "remedy",
                                          "proof", "overall", "luck", "gates"});
    for (const auto& file : files) {
        const auto attempt = assessed(context, file);
        take_in(all, attempt);
        write_attempt(context.out, file, attempt);
    }
    context.out << "\n"
                << debrief::paragraph(luck_in_words(all), debrief::page_width)
                << debrief::paragraph(skill_in_words(all), debrief::page_width)
                << "One attempt is feedback, not a grade; in trials of the method about twelve "
                   "were needed for a\nreliable mean.\n";
    return Status::done;
}

}  // namespace emberpath::app
