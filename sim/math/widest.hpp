#pragma once
/// The instruction set with masks and thirty-two registers (x86-64-v4). Registers of 32 bytes as in Wide: what it
/// gains is choice without detours and room for what is at hand, not width.

#include "sim/math/pack.hpp"

namespace emberpath::math {

struct Widest {};
template <std::size_t N>
struct RegisterOf<N, Widest> : RegisterOf<4, Baseline> {};

}  // namespace emberpath::math
