#pragma once
/// FNV-1a, 64 bit: fingerprints of states, files and records. Not a cryptographic hash.

#include <bit>
#include <cstdint>
#include <string>
#include <string_view>

namespace emberpath::math {

class Hash {
  public:
    void add(std::string_view bytes) {
        for (const char c : bytes) step(static_cast<unsigned char>(c));
    }
    void add(std::uint64_t word) {
        for (int shift = 0; shift < 64; shift += 8) step((word >> shift) & 0xffU);
    }
    void add(double x) { add(std::bit_cast<std::uint64_t>(x)); }
    [[nodiscard]] std::uint64_t value() const { return value_; }
    /// Sixteen lower-case hexadecimal digits.
    [[nodiscard]] std::string text() const {
        static constexpr char digits[] = "0123456789abcdef";
        std::string out(16, '0');
        for (int i = 0; i < 16; ++i)
            out[static_cast<std::size_t>(i)] = digits[(value_ >> (60 - 4 * i)) & 0xfU];
        return out;
    }

  private:
    void step(std::uint64_t byte) { value_ = (value_ ^ byte) * 0x100000001b3U; }
    std::uint64_t value_ = 0xcbf29ce484222325U;
};

}  // namespace emberpath::math
