#pragma once
/// The instruction set with masks and thirty-two registers of 64 bytes (x86-64-v4): a pack of eight is one register,
/// and choice takes no detours. Comparisons yield mask registers there, so that g++ 12 need not take a vector of 64
/// bytes apart, as it does for Wide.

#include "sim/math/pack.hpp"

namespace emberpath::math {

struct Widest {};
template <std::size_t N>
struct RegisterOf<N, Widest> : RegisterOf<8, Baseline> {};

}  // namespace emberpath::math
