#pragma once
/// One line of a record and the chain that ties it to the line before.

#include <cstdint>
#include <string>
#include <string_view>

namespace emberpath::records {

/// The chain before the first line.
inline constexpr std::string_view first_chain = "0000000000000000";

/// Hash over the chain so far and a JSON object, sixteen hexadecimal digits.
[[nodiscard]] std::string next_chain(std::string_view chain, std::string_view object);

/// Sixteen lower-case hexadecimal digits.
[[nodiscard]] std::string hash_text(std::uint64_t hash);

/// The object with its chain as last member: {"act":1} -> {"act":1,"chain":"..."}.
[[nodiscard]] std::string seal(std::string_view object, std::string_view chain);

/// The reverse. `sealed` is false when the line has no chain at its end.
struct Opened {
    bool sealed = false;
    std::string object;
    std::string chain;
};
[[nodiscard]] Opened open_seal(std::string_view line);

}  // namespace emberpath::records
