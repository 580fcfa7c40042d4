#include "ui/views/trace_table.hpp"

#include <charconv>

#include "sim/units/units.hpp"
#include "sim/worksite/trace.hpp"

namespace emberpath::views {

namespace {

constexpr double tail_s = 120.0;  // how long the series goes on after the last step
constexpr double longest_s = 86400.0;

/// Reads one number and the blanks before it; false when there is none.
bool take_number(std::string_view& text, double& value) {
    const auto first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) return false;
    text.remove_prefix(first);
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc()) return false;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    return true;
}

std::string step_problem(std::string_view step, const char* what) {
    return "--taps: in \"" + std::string(step) + "\": " + what +
           "; expected seconds and an opening from 0 to 1, such as \"0 0.5; 60 1; 180 0\".";
}

/// One "60 1"; returns what is wrong with it.
std::string read_step(std::string_view text, std::vector<worksite::TapStep>& steps) {
    std::string_view rest = text;
    worksite::TapStep step;
    if (!take_number(rest, step.at_s) || !take_number(rest, step.opening))
        return step_problem(text, "there are not two numbers");
    if (rest.find_first_not_of(' ') != std::string_view::npos)
        return step_problem(text, "there is more than two numbers");
    if (!(step.opening >= 0.0 && step.opening <= 1.0))
        return step_problem(text, "the opening is not from 0 to 1");
    if (!(step.at_s >= 0.0 && step.at_s <= longest_s - tail_s))
        return step_problem(text, "the time is not within a day");
    if (!steps.empty() && step.at_s <= steps.back().at_s)
        return step_problem(text, "the time is not later than the one before");
    steps.push_back(step);
    return {};
}

std::string read_steps(std::string_view text, std::vector<worksite::TapStep>& steps) {
    while (!text.empty()) {
        const auto end = text.find(';');
        const auto step = text.substr(0, end);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        if (step.find_first_not_of(' ') == std::string_view::npos) continue;
        if (auto problem = read_step(step, steps); !problem.empty()) return problem;
    }
    return steps.empty() ? step_problem("", "there is no step") : std::string();
}

std::string csv_of(const worksite::TraceTable& table) {
    std::string csv;
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        csv += (i > 0 ? "," : "") + table.columns[i];
    csv += "\r\n";
    for (const auto& row : table.rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            csv += (i > 0 ? "," : "") + units::fixed(row[i], table.decimals[i]);
        csv += "\r\n";
    }
    return csv;
}

}  // namespace

TraceTable trace_table(const worksite::Job& job, const TraceOrder& order) {
    TraceTable made;
    worksite::TraceSettings settings;
    made.problem = read_steps(order.taps, settings.taps);
    if (!made.problem.empty()) return made;
    if (!(order.every_s >= 0.1 && order.every_s <= 3600.0)) {
        made.problem = "--every: expected seconds from 0.1 to 3600.";
        return made;
    }
    settings.end_s = settings.taps.back().at_s + tail_s;
    settings.every_s = order.every_s;
    settings.sound = order.sound;
    const auto table = worksite::trace(job, settings);
    made.rows = table.rows.size();
    made.csv = csv_of(table);
    return made;
}

}  // namespace emberpath::views
