// Proves the Student-t likelihood, its widths and the posterior of one working-pressure reading.

#include "sim/scoring/likelihood.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "sim/math/functions.hpp"
#include "sim/scoring/information.hpp"
#include "sim/scoring/posterior.hpp"

namespace emberpath::scoring {
namespace {

// A working pressure of 0.62 kPa read at full draw; five causes with what their shadows show [kPa].
struct Row {
    double prior, shadow, spread, scale, likelihood, posterior, with_mistakes;
};
const std::vector<Row> rows{
    {0.40, 2.37, 0.04, 0.0739, 0.0, 0.0000, 0.0092},      // no supply fault
    {0.20, 0.70, 0.05, 0.0798, 2.74598, 0.7547, 0.7095},  // regulator
    {0.15, 0.77, 0.06, 0.0864, 1.06678, 0.2199, 0.2391},  // pipe
    {0.15, 0.95, 0.08, 0.1013, 0.12311, 0.0254, 0.0398},  // cylinder
    {0.10, 2.84, 0.04, 0.0739, 0.0, 0.0000, 0.0023}};     // igniter: static pressure

double scale_of(const Row& row) {
    return Width{0.01 + 0.01 * 0.62, row.spread, 0.06}.scale(1);
}
double likelihood_of(const Row& row) {
    return student_t_density((0.62 - row.shadow) / scale_of(row)) / scale_of(row);
}

TEST(WorkingPressure, LikelihoodsFollowTheStudentDensity) {
    for (const Row& row : rows) {
        EXPECT_NEAR(scale_of(row), row.scale, 5e-5);
        // "About nothing" for the two that are far away: less than half of the last place beside theirs.
        EXPECT_NEAR(likelihood_of(row), row.likelihood, row.likelihood > 0.0 ? 5e-6 : 5e-5);
    }
}

TEST(WorkingPressure, PlainBayesLeavesRegulatorPipeAndCylinder) {
    std::vector<double> p;
    double total = 0.0;
    for (const Row& row : rows) {
        p.push_back(row.prior * likelihood_of(row));
        total += p.back();
    }
    for (std::size_t i = 0; i < rows.size(); ++i)
        EXPECT_NEAR(p[i] / total, rows[i].posterior, 5e-5);
    for (double& x : p) x /= total;
    EXPECT_NEAR(entropy_bits(p), 0.9215, 5e-5);
}

TEST(WorkingPressure, MistakesAndTemperingLeaveRoomForDoubt) {
    std::vector<double> prior, likelihood;
    for (const Row& row : rows) {
        prior.push_back(row.prior);
        likelihood.push_back(likelihood_of(row));
    }
    EXPECT_NEAR(entropy_bits(prior), 2.1464, 5e-5);
    std::vector<double> logs = log_weights(likelihood, prior);
    for (std::size_t i = 0; i < logs.size(); ++i) logs[i] += math::log(prior[i]);
    const std::vector<double> p = normalised(logs);
    for (std::size_t i = 0; i < rows.size(); ++i) EXPECT_NEAR(p[i], rows[i].with_mistakes, 5e-5);
    EXPECT_NEAR(entropy_bits(p), 1.1126, 5e-5);
}

TEST(StudentT, DensityAgreesWithTheGammaFunction) {
    const double c = std::tgamma(3.0) / (std::sqrt(5.0 * M_PI) * std::tgamma(2.5));
    for (const double t : {0.0, 0.3, 1.0, 4.0, 40.0})
        EXPECT_NEAR(student_t_density(t), c * std::pow(1.0 + t * t / 5.0, -3.0), 1e-15);
}

TEST(StudentT, CumulativeAgreesWithTables) {
    // Two-sided 95 % and 99 % points for five degrees of freedom.
    EXPECT_NEAR(student_t_cumulative(2.570582), 0.975, 1e-7);
    EXPECT_NEAR(student_t_cumulative(4.032143), 0.995, 1e-7);
    EXPECT_DOUBLE_EQ(student_t_cumulative(0.0), 0.5);
    EXPECT_NEAR(student_t_cumulative(-2.570582), 0.025, 1e-7);
}

TEST(Arctangent, AgreesWithTheLibrary) {
    for (double x = -50.0; x <= 50.0; x += 0.37) EXPECT_NEAR(arctangent(x), std::atan(x), 1e-13);
}

TEST(Width, OnlyTheRepeatablePartFallsWithReReading) {
    const Width width{0.02, 0.03, 0.06};
    const double systematic = (1.0 - repeat_share) * 0.02 * 0.02 + 0.03 * 0.03 + 0.06 * 0.06;
    EXPECT_LT(width.scale(10), width.scale(1));
    EXPECT_GT(width.scale(1000000), std::sqrt(systematic) * (1.0 - 1e-12));
}

TEST(Category, AllOutcomesTogetherAreCertain) {
    for (const std::size_t own : {0U, 3U}) {
        double sum = 0.0;
        for (std::size_t k = 0; k < 14; ++k)
            sum += categorical_likelihood(k, own, 14, {0.95, 0.001});
        EXPECT_NEAR(sum, 1.0, 1e-12);
    }
}

TEST(Category, AThingOfItsOwnIsOverlookedMoreOftenThanImagined) {
    using worksite::Quantity;
    for (const auto quantity : {Quantity::union_bubbles, Quantity::limiter_leads}) {
        const Eye eye = eye_for(quantity);
        const double seen_for = categorical_likelihood(1, 1, 2, eye);
        const double seen_against = categorical_likelihood(1, 0, 2, eye);
        EXPECT_GT(seen_for / seen_against, 5000.0) << "bubbles, or the wire, settle it";
        const double none_for = categorical_likelihood(0, 1, 2, eye);
        const double none_against = categorical_likelihood(0, 0, 2, eye);
        EXPECT_LT(none_against / none_for, 25.0) << "seeing none does not rule it out";
    }
    const Eye usual = eye_for(Quantity::display_word);
    EXPECT_DOUBLE_EQ(usual.found, 1.0 - usual.imagined);
}

TEST(Scale, OhmsAndCarbonMonoxideAreComparedByTheirLogarithm) {
    using worksite::Quantity;
    EXPECT_NEAR(on_scale(Quantity::outlet_ohms, 2000.0) - on_scale(Quantity::outlet_ohms, 1000.0),
                std::log(2.0), 1e-14);
    EXPECT_TRUE(std::isfinite(on_scale(Quantity::flue_co, 0.0)));
    EXPECT_DOUBLE_EQ(on_scale(Quantity::tap_temperature, 320.0), 320.0);
}

TEST(Spread, OfTemperaturesIsADifferenceAndNoShareOfTheirKelvin) {
    int temperatures = 0;
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto quantity = static_cast<worksite::Quantity>(q);
        const bool in_degrees = worksite::text_of(quantity, 293.15).find("°C") != std::string::npos;
        EXPECT_EQ(is_temperature(quantity), in_degrees) << worksite::info(quantity).word;
        if (!in_degrees) continue;
        ++temperatures;
        EXPECT_EQ(draw_spread_share(quantity), 0.0) << worksite::info(quantity).word;
        EXPECT_LE(worksite::info(quantity).model_floor, 4.0) << worksite::info(quantity).word;
    }
    EXPECT_EQ(temperatures, 11);
    EXPECT_DOUBLE_EQ(draw_spread_share(worksite::Quantity::gas_inlet_pressure), 0.01);
}

}  // namespace
}  // namespace emberpath::scoring
