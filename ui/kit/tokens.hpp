#pragma once
/// Colours and sizes by what they mean. Drawings name a token; only the painter knows the theme, so the
/// same drawing serves day and night.

#include <array>
#include <cstdint>
#include <string_view>

namespace emberpath::kit {

struct Colour {
    std::uint8_t r = 0, g = 0, b = 0, a = 255;
    bool operator==(const Colour&) const = default;
};

enum class Theme { day, night };

enum class Token : std::uint8_t {
    desk,         // behind panels
    paper,        // panels and the sheet
    wash,         // quiet fill
    well,         // text fields
    ink,          // text, drawing, focus, main button
    ink2,         // secondary text
    rule,         // control borders
    hair,         // dividers; carries no meaning
    hatch,        // hatching; carries no meaning
    gas,          // gas line
    cold,         // cold line, flow, flame
    hot,          // hot line, outlet trace
    power,        // mains
    flue,         // flue
    mark,         // the trainee's marks only
    mark_wash,    // newest reading, the true column
    danger,       // hazards, errors, ruled out
    danger_wash,  // hazard cell
    ok,           // proved
    lcd,          // instrument glass
    lcd_ink,      // its segments
    plate,        // the heater's front panel, plates over the sheet
    plate_ink,    // text and keys on it
};
inline constexpr std::size_t token_count = 23;

[[nodiscard]] Colour colour(Theme theme, Token token);
[[nodiscard]] std::string_view name_of(Token token);
[[nodiscard]] constexpr std::string_view name_of(Theme theme) {
    return theme == Theme::day ? "day" : "night";
}

/// Contrast of two opaque colours, 1 to 21 [-].
/// Source: WCAG 2.1, definitions of relative luminance and contrast ratio.
[[nodiscard]] double contrast_ratio(Colour a, Colour b);

/// A pair of tokens that is drawn, and the least contrast it must have.
struct ContrastDemand {
    Token front, behind;
    double least;
};
/// Text 4.5, marks and borders 3; hair and hatch stay under 1.6 and are not listed.
[[nodiscard]] const std::array<ContrastDemand, 45>& contrast_demands();

/// A token, more or less see-through.
struct Ink {
    Token token = Token::ink;
    double alpha = 1.0;
    // NOLINTNEXTLINE(google-explicit-constructor): a token is the usual ink
    constexpr Ink(Token t = Token::ink, double a = 1.0) : token(t), alpha(a) {}
    bool operator==(const Ink&) const = default;
};

/// Type sizes at 100 % [logical px].
namespace type_size {
inline constexpr double label = 12.0, row = 13.0, body = 14.0, heading = 16.0, title = 22.0,
                        score = 44.0, display = 28.0, large_display = 54.0;
}

/// Line widths [logical px].
namespace line_width {
inline constexpr double divider = 1.0, control = 1.2, part = 1.6, water = 2.6, heater_case = 2.4,
                        gas = 3.2, focus = 2.0;
}

namespace space {
inline constexpr double grid = 8.0, panel = 14.0, radius = 4.0, target = 24.0;
}

}  // namespace emberpath::kit
