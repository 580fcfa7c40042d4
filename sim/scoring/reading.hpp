#pragma once
/// What weighing needs of an observation.

#include <cstdint>

#include "sim/worksite/observation.hpp"

namespace emberpath::scoring {

struct Reading {
    worksite::Quantity quantity = worksite::Quantity::display_word;
    worksite::Hold hold = worksite::Hold::now;
    worksite::Condition condition;
    double value = 0.0;
    std::int64_t tick = 0;
    int cycle = 0;              // demand cycle in which it was taken
    double beyond_class = 0.0;  // how far a worn instrument was off [SI]: nobody could know
};

}  // namespace emberpath::scoring
