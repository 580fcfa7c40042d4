#pragma once
/// Seeded generators with our own bits: the standard library's distributions differ between vendors.
/// Source    splitmix64 (Steele, Lea & Flood 2014, OOPSLA) as the one generator; streams by label.

#include <cstdint>
#include <string_view>

namespace emberpath::math {

class Random {
  public:
    explicit Random(std::uint64_t seed) : state_(seed) {}
    /// A stream of its own for each purpose: drawing from one never moves another.
    Random(std::uint64_t seed, std::string_view purpose);

    std::uint64_t next();
    /// Uniform in [0, 1).
    double uniform();
    /// Standard normal (sum of twelve uniforms less six: bounded at six sigma, no libm).
    double normal();

  private:
    std::uint64_t state_;
};

}  // namespace emberpath::math
