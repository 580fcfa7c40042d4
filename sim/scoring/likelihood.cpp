#include "sim/scoring/likelihood.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/math/functions.hpp"

namespace emberpath::scoring {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double nu = 5.0;
constexpr double root_of_nu = 2.2360679774997896964;
// Gamma(3) / (sqrt(5 pi) Gamma(5/2)) = 8 / (3 pi sqrt(5))
constexpr double density_at_centre = 0.37960668982249439;

// 1, 1/3, ... 1/21: divided once, at compile time.
constexpr std::array<double, 11> odd_reciprocals = [] {
    std::array<double, 11> all{};
    for (std::size_t k = 0; k < all.size(); ++k) all[k] = 1.0 / static_cast<double>(2 * k + 1);
    return all;
}();

double instrument_error(const worksite::QuantityInfo& row, double predicted) {
    const double error = row.error_absolute + row.error_relative * std::abs(predicted);
    const double rounding = row.resolution / 3.4641016151377544;  // uniform within one step
    return std::sqrt(error * error + rounding * rounding);
}

}  // namespace

double student_t_density(double t) {
    const double base = 1.0 + t * t / nu;
    return density_at_centre / (base * base * base);
}

namespace {

// Loops of a fixed length over plain values, one operation at a time: the compiler lays them side by side.
template <std::size_t N>
std::array<double, N> arctangents(const std::array<double, N>& x) {
    std::array<double, N> y = x;
    for (int i = 0; i < 3; ++i)  // |y| <= tan(pi/16) = 0.2
        for (std::size_t j = 0; j < N; ++j) y[j] = y[j] / (1.0 + std::sqrt(1.0 + y[j] * y[j]));
    std::array<double, N> sum{};
    for (std::size_t k = odd_reciprocals.size(); k-- > 0;)
        for (std::size_t j = 0; j < N; ++j) sum[j] = odd_reciprocals[k] - y[j] * y[j] * sum[j];
    for (std::size_t j = 0; j < N; ++j) sum[j] = 8.0 * y[j] * sum[j];
    return sum;
}

// Closed form for nu = 5 (Abramowitz & Stegun 1964, 26.7.3).
template <std::size_t N>
void cumulatives(std::array<double, N>& t) {
    std::array<double, N> sine, cosine, ratio;
    for (std::size_t j = 0; j < N; ++j) {
        const double root = std::sqrt(nu + t[j] * t[j]);
        sine[j] = t[j] / root;
        cosine[j] = root_of_nu / root;
        ratio[j] = t[j] / root_of_nu;
    }
    const std::array<double, N> angle = arctangents(ratio);
    for (std::size_t j = 0; j < N; ++j) {
        const double c = cosine[j];
        t[j] = 0.5 + (angle[j] + sine[j] * (c + 2.0 / 3.0 * c * c * c)) / pi;
    }
    for (std::size_t j = 0; j < N; ++j) t[j] = std::clamp(t[j], 0.0, 1.0);
}

}  // namespace

double arctangent(double x) {
    return arctangents(std::array{x})[0];
}

double student_t_cumulative(double t) {
    std::array one{t};
    cumulatives(one);
    return one[0];
}

void student_t_cumulative(std::array<double, side_by_side>& t) {
    cumulatives(t);
}

double categorical_likelihood(std::size_t seen, std::size_t own, std::size_t category_count,
                              Eye eye) {
    if (category_count < 2) return 1.0;
    const double hit = own == 0 ? 1.0 - eye.imagined : eye.found;
    return seen == own ? hit : (1.0 - hit) / static_cast<double>(category_count - 1);
}

Eye eye_for(worksite::Quantity quantity) {
    using Q = worksite::Quantity;
    switch (quantity) {
        case Q::flame:
        case Q::fan_sound:
        case Q::cylinder_frost:
            return {0.90, 0.10};
        case Q::flue_terminal:
        case Q::exchanger_fins:
        case Q::electrode_tip:
            return {0.95, 0.05};
        case Q::union_bubbles:
        case Q::limiter_leads:
            return {0.95, 0.0001};
        default:
            return {};
    }
}

double on_scale(worksite::Quantity quantity, double value) {
    const worksite::QuantityInfo& row = worksite::info(quantity);
    if (!row.logarithmic) return value;
    return math::log(std::max(value, 0.5 * row.error_absolute));
}

double Width::scale(std::size_t reads) const {
    const double variance = instrument * instrument;
    const double repeated =
        repeat_share * variance / static_cast<double>(std::max<std::size_t>(reads, 1));
    return std::sqrt((1.0 - repeat_share) * variance + repeated + spread * spread + floor * floor);
}

bool is_temperature(worksite::Quantity quantity) {
    using Q = worksite::Quantity;
    switch (quantity) {
        case Q::tap_temperature:
        case Q::outlet_pipe_temperature:
        case Q::inlet_pipe_temperature:
        case Q::exchanger_pipe_temperature:
        case Q::companion_pipe_temperature:
        case Q::flue_temperature:
        case Q::readout_inlet:
        case Q::readout_outlet:
        case Q::readout_exchanger:
        case Q::readout_ambient:
        case Q::setting_highest:
            return true;
        default:
            return false;
    }
}

double draw_spread_share(worksite::Quantity quantity) {
    constexpr double of_other_houses = 0.01;
    return worksite::info(quantity).categorical || is_temperature(quantity) ? 0.0 : of_other_houses;
}

Width width_of(worksite::Quantity quantity, double predicted, double beyond_class) {
    const worksite::QuantityInfo& row = worksite::info(quantity);
    double error = instrument_error(row, predicted) + beyond_class;
    if (row.logarithmic) error /= std::max(std::abs(predicted), row.error_absolute);
    return {error, 0.0, row.model_floor};
}

}  // namespace emberpath::scoring
