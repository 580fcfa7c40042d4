#pragma once
/// "95 %": a share in per cents, whole ones unless more are asked for, as sentences and tables want it.
/// Checked   tests/unit/units/counted_test.cpp

#include <string>

#include "sim/units/units.hpp"

namespace emberpath::units {

[[nodiscard]] inline std::string per_cent(double share, int decimals = 0) {
    return fixed(100.0 * share, decimals) + " %";
}

}  // namespace emberpath::units
