#include "sim/records/line.hpp"

#include "sim/math/hash.hpp"
#include "sim/records/record.hpp"

namespace emberpath::records {

namespace {
constexpr std::string_view key = ",\"chain\":\"";
constexpr std::string_view end = "\"}";
constexpr std::size_t chain_digits = 16;
constexpr std::size_t seal_length = key.size() + chain_digits + end.size();

bool is_continuation(unsigned char byte) {
    return (byte & 0xC0U) == 0x80U;
}

/// Length of the well-formed character at the start, or 0. RFC 3629, section 4: no overlong forms, no
/// surrogates, nothing above U+10FFFF, and here no control characters either.
std::size_t character_length(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i])
                               : static_cast<unsigned char>(0);
    };
    const unsigned char a = byte(0), b = byte(1);
    if (a < 0x80U) return a < 0x20U || a == 0x7FU ? 0 : 1;
    if (!is_continuation(b)) return 0;
    if (a == 0xC2U) return b < 0xA0U ? 0 : 2;
    if (a > 0xC2U && a < 0xE0U) return 2;
    if ((a & 0xF0U) == 0xE0U) {
        const bool bad = (a == 0xE0U && b < 0xA0U) || (a == 0xEDU && b > 0x9FU);
        return !bad && is_continuation(byte(2)) ? 3 : 0;
    }
    const bool four =
        (a == 0xF0U && b > 0x8FU) || (a > 0xF0U && a < 0xF4U) || (a == 0xF4U && b < 0x90U);
    return four && is_continuation(byte(2)) && is_continuation(byte(3)) ? 4 : 0;
}

}  // namespace

bool can_be_kept(std::string_view sentence) {
    if (sentence.empty() || sentence.size() > longest_sentence) return false;
    while (!sentence.empty()) {
        const std::size_t length = character_length(sentence);
        if (length == 0) return false;
        sentence.remove_prefix(length);
    }
    return true;
}

std::string next_chain(std::string_view chain, std::string_view object) {
    math::Hash hash;
    hash.add(chain);
    hash.add(object);
    return hash.text();
}

std::string hash_text(std::uint64_t hash) {
    static constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (int shift = 60; shift >= 0; shift -= 4) text += digits[(hash >> shift) & 0xfU];
    return text;
}

std::string seal(std::string_view object, std::string_view chain) {
    std::string line(object.substr(0, object.size() - 1));
    line += key;
    line += chain;
    line += end;
    return line;
}

Opened open_seal(std::string_view line) {
    if (line.size() <= seal_length || !line.ends_with(end)) return {};
    const std::string_view tail = line.substr(line.size() - seal_length);
    if (!tail.starts_with(key)) return {};
    Opened opened{true, std::string(line.substr(0, line.size() - seal_length)), {}};
    opened.object += '}';
    opened.chain = tail.substr(key.size(), chain_digits);
    return opened;
}

}  // namespace emberpath::records
