#pragma once
/// Figures as glasses, lists and the recorder show them.

#include <string>

#include "sim/worksite/observation.hpp"

namespace emberpath::desktop {

struct Figure {
    std::string digits;   // "1.84"; a word for what is not a number: "over range"
    std::string unit;     // "kPa"
    double number = 0.0;  // in that unit; 0 for a word
};
/// In trade units; gas pressures in mbar if wished.
[[nodiscard]] Figure figure_of(worksite::Quantity quantity, double value, bool kilopascal);
[[nodiscard]] std::string text_of(const Figure& figure);
/// A line that was shown, with its gas pressures in mbar if wished: "1.84 kPa" becomes "18.4 mbar".
[[nodiscard]] std::string in_wished_unit(std::string text, bool kilopascal);

}  // namespace emberpath::desktop
