#include "ui/kit/tokens.hpp"

#include <algorithm>
#include <cmath>

namespace emberpath::kit {

namespace {

struct Row {
    Token token;
    std::string_view name;
    std::uint32_t day, night;
};

// clang-format off
constexpr std::array<Row, token_count> table{{
    {Token::desk,        "desk",        0xDFDCD2, 0x121A20},
    {Token::paper,       "paper",       0xF7F5EF, 0x1A242C},
    {Token::wash,        "wash",        0xECE9E0, 0x22303A},
    {Token::well,        "well",        0xFFFEFB, 0x141D24},
    {Token::ink,         "ink",         0x1D2B36, 0xEAE7DE},
    {Token::ink2,        "ink2",        0x465664, 0xA9B6BF},
    {Token::rule,        "rule",        0x6C7982, 0x74838F},
    {Token::hair,        "hair",        0xC9C8BF, 0x35434D},
    {Token::hatch,       "hatch",       0xD8D5CA, 0x2A3740},
    {Token::gas,         "gas",         0x7D5A00, 0xE0B64A},
    {Token::cold,        "cold",        0x0A5F96, 0x6FB7E9},
    {Token::hot,         "hot",         0xA83A12, 0xF0916B},
    {Token::power,       "power",       0x6D3A86, 0xC9A0DF},
    {Token::flue,        "flue",        0x52606B, 0xAEBAC4},
    {Token::mark,        "mark",        0x00635A, 0x5FD0BE},
    {Token::mark_wash,   "mark_wash",   0xD3E8E2, 0x1F4A47},
    {Token::danger,      "danger",      0x9E1238, 0xFF8FA3},
    {Token::danger_wash, "danger_wash", 0xF3DDDF, 0x4A2530},
    {Token::ok,          "ok",          0x1E6B3A, 0x86D19C},
    {Token::lcd,         "lcd",         0xD5DBC9, 0x2B3630},
    {Token::lcd_ink,     "lcd_ink",     0x1B2420, 0xDCEBD2},
    {Token::plate,       "plate",       0x1D2B36, 0x22303A},
    {Token::plate_ink,   "plate_ink",   0xF7F5EF, 0xEAE7DE},
}};

constexpr std::array<ContrastDemand, 45> demands{{
    {Token::ink, Token::paper, 4.5},   {Token::ink, Token::wash, 4.5},    {Token::ink, Token::well, 4.5},
    {Token::ink, Token::desk, 4.5},    {Token::ink, Token::mark_wash, 4.5},
    {Token::ink2, Token::paper, 4.5},  {Token::ink2, Token::wash, 4.5},   {Token::ink2, Token::well, 4.5},
    {Token::ink2, Token::desk, 4.5},   {Token::ink2, Token::mark_wash, 4.5},
    {Token::rule, Token::paper, 3.0},  {Token::rule, Token::wash, 3.0},   {Token::rule, Token::well, 3.0},
    {Token::rule, Token::desk, 3.0},
    {Token::gas, Token::paper, 4.5},   {Token::gas, Token::wash, 4.5},
    {Token::cold, Token::paper, 4.5},  {Token::cold, Token::wash, 4.5},
    {Token::hot, Token::paper, 4.5},   {Token::hot, Token::wash, 4.5},
    {Token::power, Token::paper, 4.5}, {Token::power, Token::wash, 4.5},
    {Token::flue, Token::paper, 4.5},  {Token::flue, Token::wash, 4.5},
    {Token::mark, Token::paper, 4.5},  {Token::mark, Token::wash, 4.5},   {Token::mark, Token::well, 4.5},
    {Token::mark, Token::mark_wash, 3.0},
    {Token::paper, Token::mark, 4.5},  {Token::paper, Token::ink, 4.5},
    {Token::danger, Token::paper, 4.5},{Token::danger, Token::wash, 4.5}, {Token::danger, Token::well, 4.5},
    {Token::danger, Token::danger_wash, 4.5},
    {Token::danger, Token::desk, 4.5},
    {Token::paper, Token::danger, 4.5},
    {Token::ok, Token::paper, 4.5},    {Token::ok, Token::wash, 4.5},
    {Token::lcd_ink, Token::lcd, 4.5},
    {Token::plate_ink, Token::plate, 4.5},
    {Token::ink, Token::danger_wash, 4.5},
    {Token::ink2, Token::danger_wash, 4.5},
    {Token::cold, Token::mark_wash, 3.0},
    {Token::mark, Token::desk, 4.5},
    {Token::flue, Token::desk, 4.5},
}};
// clang-format on

constexpr bool in_enum_order() {
    for (std::size_t i = 0; i < token_count; ++i)
        if (table[i].token != static_cast<Token>(i)) return false;
    return true;
}
static_assert(in_enum_order(), "the table follows the order of Token");

double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Colour c) {
    return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

}  // namespace

Colour colour(Theme theme, Token token) {
    const Row& row = table[static_cast<std::size_t>(token)];
    const std::uint32_t rgb = theme == Theme::day ? row.day : row.night;
    const auto channel = [&](unsigned shift) {
        return static_cast<std::uint8_t>((rgb >> shift) & 0xFFU);
    };
    return {channel(16U), channel(8U), channel(0U), 255};
}

std::string_view name_of(Token token) {
    return table[static_cast<std::size_t>(token)].name;
}

double contrast_ratio(Colour a, Colour b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

const std::array<ContrastDemand, 45>& contrast_demands() {
    return demands;
}

}  // namespace emberpath::kit
