// Prints the table of sim/scoring/severities.cpp: where on its range the shadows of each graded cause stand.
//
// In a fine grid the combined widths from step to step are summed along the range; the shadows stand so that each
// two of them hold the same sum, at most two widths where nine shadows can do it. A share of the sum is dealt out
// evenly, the more the less changes at all, so that no part of a range is left without a shadow. Causes that have
// a grid of their own (few shadows, a cylinder, settings) are not asked.

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>
#include <string>

#include "sim/scoring/severities.hpp"
#include "tests/severities/fine_severities.hpp"

namespace emberpath::scoring {
namespace {

constexpr int fine = 96;
constexpr int fewest = 5;
constexpr double least_even_share = 0.15;

std::vector<double> placed(const std::vector<double>& steps, double low, double high) {
    const double sum = std::accumulate(steps.begin(), steps.end(), 0.0);
    const int count =
        std::clamp(static_cast<int>(sum / most_widths_apart) + 2, fewest, most_severities);
    std::vector<double> at{low};
    const double even_share =
        std::max(least_even_share, 1.0 - sum / (most_widths_apart * (count - 1)));
    double passed = 0.0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const double even = 1.0 / static_cast<double>(steps.size());
        passed += sum > 0.0 ? (1.0 - even_share) * steps[i] / sum + even_share * even : even;
        const double next = static_cast<double>(at.size()) / (count - 1);
        if (static_cast<int>(at.size()) < count - 1 && passed >= next - 1e-12)
            at.push_back(low + (high - low) * static_cast<double>(i + 1) /
                                   static_cast<double>(steps.size()));
    }
    at.push_back(high);
    return at;
}

void print_row(const Graded& one, const std::vector<double>& steps) {
    const faults::CauseInfo& info = faults::info(one.first);
    std::string row =
        "    Row{Cause::" + std::string(info.word) + (one.second ? ", true" : ", false");
    const std::vector<double> at = placed(steps, info.least_severity, info.greatest_severity);
    row += ", " + std::to_string(at.size()) + ", {";
    for (std::size_t i = 0; i < at.size(); ++i) {
        char figure[32];
        std::snprintf(figure, sizeof figure, "%.4g", std::round(at[i] * 1e4) / 1e4);
        row += (i > 0 ? ", " : "") + std::string(figure);
    }
    std::puts((row + "}},").c_str());
}

}  // namespace
}  // namespace emberpath::scoring

int main() {
    using namespace emberpath::scoring;
    const FineSteps all = fine_steps(fine);
    for (const auto& [one, steps] : all)
        if (is_placed(one.first)) print_row(one, steps);
}
