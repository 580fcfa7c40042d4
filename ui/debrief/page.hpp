#pragma once
/// Plain text in columns, for front ends that print.

#include "sim/records/layout.hpp"

namespace emberpath::debrief {

using records::Column;
using records::paragraph;
using records::row;
using records::width_of;
using records::wrap;

/// Columns of a printed page and of a wide terminal.
inline constexpr std::size_t page_width = 100;

}  // namespace emberpath::debrief
