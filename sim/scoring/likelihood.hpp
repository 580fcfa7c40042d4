#pragma once
/// How well a shadow predicted what was read.
///
/// Source    Student-t with few degrees of freedom as the robust alternative to the normal:
///           Lange, Little & Taylor (1989), J. Am. Stat. Assoc. 84, 881-896. nu = 5 is chosen.
/// Checked   tests/unit/scoring/likelihood_test.cpp

#include <array>
#include <cstddef>

#include "sim/worksite/observation.hpp"

namespace emberpath::scoring {

inline constexpr double outlier_share = 0.01;  // mistakes, misreadings, wrong terminals
inline constexpr double tempering = 0.85;      // exponent on each group of readings
inline constexpr double repeat_share =
    0.36;  // of an instrument's variance: what re-reading averages

/// Density of Student-t with 5 degrees of freedom at standardised distance t [-]; divide by the scale.
[[nodiscard]] double student_t_density(double t);
/// Its distribution function, 0 to 1.
[[nodiscard]] double student_t_cumulative(double t);
/// The same of many at once, in place: their arithmetic runs side by side, each has the bits it has alone.
inline constexpr std::size_t side_by_side = 8;
void student_t_cumulative(std::array<double, side_by_side>& t);
/// atan without libm: three half-angle steps, then the series. Error below 1e-14.
[[nodiscard]] double arctangent(double x);

/// How well eyes and ears tell the categories of a quantity. Its first category is that of a sound heater, or
/// nothing to see.
struct Eye {
    double found =
        0.97;  // the share of looks that name what is there, where it is not the first category
    double imagined =
        0.03;  // the share of looks that name something else where the first category is there
};
/// Chosen. Most looks err as often one way as the other. A thing of its own, such as a wire across two terminals or
/// bubbles that grow in leak fluid, can be overlooked, but is not seen where it is not: common practice takes
/// growing bubbles as proof of a leak, and none as proof only of what was wetted and watched.
[[nodiscard]] Eye eye_for(worksite::Quantity quantity);
/// Probability of reading category `seen` when the shadow shows `own`: what is not named rightly is shared by the
/// other categories.
[[nodiscard]] double categorical_likelihood(std::size_t seen, std::size_t own,
                                            std::size_t category_count, Eye eye);

/// The scale on which a quantity is compared: its logarithm for ohms and CO, else itself.
[[nodiscard]] double on_scale(worksite::Quantity quantity, double value);

/// Width of what a shadow expects, on that scale: scale^2 = instrument^2 + spread^2 + floor^2, where of
/// the instrument's variance only the repeatable part falls with the number of re-reads.
struct Width {
    double instrument = 0.0;
    double spread = 0.0;  // within one regime: parameters and the gap between severities
    double floor = 0.0;   // what the model itself may be off by
    [[nodiscard]] double scale(std::size_t reads) const;
};
/// Is it a temperature? Its unit has no true zero that a share could be taken of: spreads of temperatures are
/// differences, and their floor says how large.
[[nodiscard]] bool is_temperature(worksite::Quantity quantity);
/// What other draws of the house's parameters would add, as a share of the predicted value: 1 % for
/// pressures, flows, currents and rates, nothing for temperatures (their floor covers it). Chosen: the
/// first form runs one draw, the nominal one.
[[nodiscard]] double draw_spread_share(worksite::Quantity quantity);
/// Instrument and floor parts at a predicted value (SI), spread 0. `beyond_class`: how far a worn instrument
/// was off [SI], added to the error of its class.
[[nodiscard]] Width width_of(worksite::Quantity quantity, double predicted,
                             double beyond_class = 0.0);

}  // namespace emberpath::scoring
