#include "sim/math/random.hpp"

#include "sim/math/hash.hpp"

namespace emberpath::math {

Random::Random(std::uint64_t seed, std::string_view purpose) : state_(seed) {
    Hash hash;
    hash.add(seed);
    hash.add(purpose);
    state_ = hash.value();
}

std::uint64_t Random::next() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31);
}

double Random::uniform() {
    return static_cast<double>(next() >> 11) * 0x1.0p-53;
}

double Random::normal() {
    double sum = -6.0;
    for (int i = 0; i < 12; ++i) sum += uniform();
    return sum;
}

}  // namespace emberpath::math
