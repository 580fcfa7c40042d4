// Proves what a day of draws costs: standard draw patterns and a load profile, against the steady efficiency and a
// one-node estimate; and that short draws cost efficiency, as published.

#include <gtest/gtest.h>

#include <string>

#include "tests/support/results.hpp"
#include "tests/validation/day.hpp"

namespace emberpath::validation {
namespace {

constexpr const char* federal = "10 CFR 430 Subpart B Appendix E (pattern recalled)";
constexpr const char* european =
    "Commission Regulation (EU) 814/2013, Annex III, profile M (recalled)";
constexpr const char* burch =
    "Burch, Thornton, Hoeschele, Springer, Rudd 2008, Preliminary Modeling, Testing and Analysis "
    "of a Gas "
    "Tankless Water Heater (abstract)";

std::string percent(double share) {
    return fixed_text(100.0 * share, 1);
}

struct Figure {
    std::string_view quantity, unit;
    std::string expected, got;
    std::string_view tolerance;
};

struct Judge {
    ResultsFile file;
    std::string conditions, source;

    void line(const Figure& figure, bool pass) {
        Result r;
        r.quantity = figure.quantity;
        r.conditions = conditions;
        r.unit = figure.unit;
        r.expected = figure.expected;
        r.got = figure.got;
        r.tolerance = figure.tolerance;
        r.outcome = pass ? "pass" : "fail";
        r.kind = "check";
        r.checked_by = "DayDraws";
        r.source = source;
        file.add(r);
        EXPECT_TRUE(pass) << conditions << ": " << figure.quantity << " expected "
                          << figure.expected << ", got " << figure.got << " " << figure.unit;
    }
};

void judge_day(Judge& judge, const Day& day) {
    const double below = 100.0 * (day.estimate() - day.efficiency());
    judge.line({"daily efficiency, gross", "%", "below steady: " + percent(day.steady()),
                percent(day.efficiency()), "lower"},
               day.efficiency() < day.steady());
    judge.line({"daily efficiency, gross", "%", "one-node estimate: " + percent(day.estimate()),
                percent(day.efficiency()), "0 to 2 points below"},
               below >= 0.0 && below <= 2.0);
}

void judge_pattern(Judge& judge, const char* name, std::span<const Draw> draws, double gallons) {
    judge.conditions = name;
    judge.source = federal;
    const Day day = live(draws, simulated_use);
    const double wanted = gallons * 3.785411784;
    const double got = day.volume_m3 * 1e3;
    // A draw ends with the tick in which it is full.
    judge.line({"water drawn", "L", number_text(wanted, 4), number_text(got, 4), "0 to 0.3 % more"},
               got >= wanted && got <= 1.003 * wanted);
    judge_day(judge, day);
}

void judge_profile(Judge& judge) {
    judge.conditions = "load profile M, 23 draws, set 55 degC, water 10, room 20";
    judge.source = european;
    const Day day = live(profile_m, load_profile);
    const double useful_kwh = day.useful_j / 3.6e6;
    judge.line({"useful energy", "kWh", "5.845", number_text(useful_kwh, 4), "0 to 1 % more"},
               useful_kwh >= 5.845 && useful_kwh <= 1.01 * 5.845);
    judge.line({"draws that miss their peak temperature", "", "0", std::to_string(day.peaks_missed),
                "exact"},
               day.peaks_missed == 0);
    judge_day(judge, day);
    const double useful = 5.845 * 3.6e6 / day.gas_j;
    judge.line({"useful energy over gas, gross", "%",
                "below daily efficiency: " + percent(day.efficiency()), percent(useful), "lower"},
               useful < day.efficiency());
}

TEST(DayDraws, CostMoreThanEndlessOnesAndNoMoreThanTheCoreExplains) {
    Judge judge{ResultsFile("day_draws"), "", ""};
    judge_pattern(judge, "very small use, 10 gal in 9 draws", very_small_use, 10.0);
    judge_pattern(judge, "low use, 38 gal in 11 draws", low_use, 38.0);
    judge_pattern(judge, "medium use, 55 gal in 12 draws", medium_use, 55.0);
    judge_pattern(judge, "high use, 84 gal in 14 draws", high_use, 84.0);
    judge_pattern(judge, "six draws of 10.7 gal, an hour apart (before 2014)", six_large_draws,
                  64.2);
    judge_profile(judge);
}

/// By how much the efficiency of a day falls short of endless draws at the same flows.
double shortfall(const Day& day) {
    return 1.0 - day.efficiency() / day.steady();
}

void judge_sizes(Judge& judge) {
    judge.source = burch;
    const double endless = steady_efficiency(6.0, load_profile);
    double smaller = 0.0;
    for (const double litres : {2.0, 4.0, 8.0, 16.0, 40.0}) {
        judge.conditions =
            "six draws of " + number_text(litres, 2) + " L at 6 L/min, an hour apart";
        const double now = repeated(litres, 6.0, 6, load_profile).efficiency();
        judge.line({"efficiency, gross", "%", percent(smaller) + " to " + percent(endless),
                    percent(now), "between the next smaller draw's and endless ones'"},
                   now > smaller && now < endless);
        smaller = now;
    }
}

void judge_published(Judge& judge, const Day& realistic, const Day& large) {
    judge.conditions = "load profile M against 40 L draws, each against endless draws at its flows";
    const double lower = shortfall(realistic) - shortfall(large);
    judge.line({"efficiency lower by", "%", "above 0", percent(lower), "direction"}, lower > 0.0);
    const double scaled = 0.08 * core_j_per_k / published_core_j_per_k;
    judge.line({"efficiency lower by", "%",
                percent(scaled) + " (8 in proportion to the core's heat capacity)", percent(lower),
                "factor 1.5"},
               lower > scaled / 1.5 && lower < scaled * 1.5);
    const double heavy =
        large.heavy_estimate() / large.steady() - realistic.heavy_estimate() / realistic.steady();
    judge.conditions = "the same, one-node estimate with the published core (8.36 kJ/K, 3.6 W/K)";
    judge.line({"efficiency lower by", "%", "8", percent(heavy), "factor 1.5"},
               heavy > 0.08 / 1.5 && heavy < 0.08 * 1.5);
}

/// The published size itself, which this heater's light core does not reach.
void note_the_miss(Judge& judge, const Day& realistic, const Day& large) {
    const double lower = shortfall(realistic) - shortfall(large);
    EXPECT_LT(lower, 0.04) << "nearer to the published 8 %: is it still a known miss?";
    EXPECT_GT(lower, 0.03);
    Result r;
    r.got = percent(lower);
    r.quantity = "efficiency lower by";
    r.conditions = "realistic draws against 40 L draws";
    r.unit = "%";
    r.expected = "8";
    r.tolerance = "about";
    r.outcome = "known miss";
    r.kind = "check";
    r.checked_by = "this heater loses " + percent(lower) +
                   ": its core (3.2 kg copper, 0.55 L water, 0.07 L pocket) holds " +
                   number_text(core_j_per_k * 1e-3, 3) +
                   " kJ/K, a measured one 8.36 (Master's thesis, University of Colorado, 2010, "
                   "abstract); the published draws were not to be had, profile M stands in";
    r.source = burch;
    judge.file.add(r);
}

TEST(DayDraws, ShortOnesCostEfficiencyAsPublished) {
    Judge judge{ResultsFile("short_draws"), "", burch};
    judge_sizes(judge);
    const Day realistic = live(profile_m, load_profile);
    const Day large = repeated(40.0, 6.0, 6, load_profile);
    judge_published(judge, realistic, large);
    note_the_miss(judge, realistic, large);
}

}  // namespace
}  // namespace emberpath::validation
