#include "sim/records/line.hpp"

#include "sim/math/hash.hpp"

namespace emberpath::records {

namespace {
constexpr std::string_view key = ",\"chain\":\"";
constexpr std::string_view end = "\"}";
constexpr std::size_t chain_digits = 16;
constexpr std::size_t seal_length = key.size() + chain_digits + end.size();
}  // namespace

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
