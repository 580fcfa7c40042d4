#pragma once
/// What a person did, in plain structs. Positions are logical pixels.

#include <cstddef>
#include <cstdint>
#include <variant>

#include "ui/kit/geometry.hpp"

namespace emberpath::kit {

/// Keys that write nothing, and letters for use with Ctrl. What writes something arrives as Character.
/// In the order of their names in key_map.cpp.
// clang-format off
enum class Key : std::uint8_t {
    none,
    tab, enter, escape, space, backspace, erase, left, right, up, down, home, end, page_up, page_down,
    f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12,
    a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v, w, x, y, z,
    plus, minus, zero,
};
// clang-format on
inline constexpr std::size_t key_count = 56;

struct Modifiers {
    bool shift = false, control = false, alt = false;
    bool operator==(const Modifiers&) const = default;
};

struct KeyPress {
    Key key = Key::none;
    Modifiers modifiers{};
    bool repeated = false;
};
/// A character typed: from U+0020 up, never U+007F.
struct Character {
    char32_t code = 0;
    bool repeated = false;
};
struct PointerMove {
    Point at;
};
struct PointerPress {
    Point at;
    bool secondary = false;
    Modifiers modifiers{};
    bool middle = false;
};
struct PointerRelease {
    Point at;
    bool secondary = false;
    bool middle = false;
};
struct Wheel {
    Point at;
    double steps = 0.0;  // positive: away from the hand
    Modifiers modifiers{};
};
struct Resize {
    Size window;  // in window pixels
};
struct CloseRequest {};
struct WindowFocus {
    bool has = true;
};

using Event = std::variant<KeyPress, Character, PointerMove, PointerPress, PointerRelease, Wheel,
                           Resize, CloseRequest, WindowFocus>;

}  // namespace emberpath::kit
