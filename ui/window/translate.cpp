#include "ui/window/translate.hpp"

namespace emberpath::window {

namespace {

struct Pair {
    sf::Keyboard::Key theirs;
    kit::Key ours;
};
// clang-format off
constexpr std::array pairs{
    Pair{sf::Keyboard::Tab, kit::Key::tab}, Pair{sf::Keyboard::Enter, kit::Key::enter},
    Pair{sf::Keyboard::Escape, kit::Key::escape}, Pair{sf::Keyboard::Space, kit::Key::space},
    Pair{sf::Keyboard::Backspace, kit::Key::backspace}, Pair{sf::Keyboard::Delete, kit::Key::erase},
    Pair{sf::Keyboard::Left, kit::Key::left}, Pair{sf::Keyboard::Right, kit::Key::right},
    Pair{sf::Keyboard::Up, kit::Key::up}, Pair{sf::Keyboard::Down, kit::Key::down},
    Pair{sf::Keyboard::Home, kit::Key::home}, Pair{sf::Keyboard::End, kit::Key::end},
    Pair{sf::Keyboard::PageUp, kit::Key::page_up}, Pair{sf::Keyboard::PageDown, kit::Key::page_down},
    Pair{sf::Keyboard::Add, kit::Key::plus}, Pair{sf::Keyboard::Equal, kit::Key::plus},
    Pair{sf::Keyboard::Subtract, kit::Key::minus}, Pair{sf::Keyboard::Hyphen, kit::Key::minus},
    Pair{sf::Keyboard::Num0, kit::Key::zero}, Pair{sf::Keyboard::Numpad0, kit::Key::zero},
};
// clang-format on

kit::Key key_of(sf::Keyboard::Key code) {
    const auto shifted = [&](sf::Keyboard::Key first, kit::Key ours) {
        return static_cast<kit::Key>(static_cast<int>(ours) + (code - first));
    };
    if (code >= sf::Keyboard::A && code <= sf::Keyboard::Z)
        return shifted(sf::Keyboard::A, kit::Key::a);
    if (code >= sf::Keyboard::F1 && code <= sf::Keyboard::F12)
        return shifted(sf::Keyboard::F1, kit::Key::f1);
    for (const Pair& pair : pairs)
        if (pair.theirs == code) return pair.ours;
    return kit::Key::none;
}

kit::Point place(int x, int y, double scale) {
    return {x / scale, y / scale};
}

std::optional<kit::Event> button(const sf::Event& event, double scale, bool shift) {
    const auto& b = event.mouseButton;
    const bool secondary = b.button == sf::Mouse::Right, middle = b.button == sf::Mouse::Middle;
    if (b.button != sf::Mouse::Left && !secondary && !middle) return std::nullopt;
    const kit::Point at = place(b.x, b.y, scale);
    if (event.type == sf::Event::MouseButtonReleased)
        return kit::PointerRelease{at, secondary, middle};
    return kit::PointerPress{at, secondary, {.shift = shift}, middle};
}

}  // namespace

std::optional<kit::Event> Translator::key(const sf::Event::KeyEvent& pressed) {
    repeating_ = false;
    with_control_ = pressed.control && !pressed.alt;  // both together write text on some keyboards
    unknown_ = pressed.code < 0;
    if (pressed.code < 0) return std::nullopt;  // a character may still follow
    bool& down = down_[static_cast<std::size_t>(pressed.code)];
    repeating_ = down;
    down = true;
    const kit::Key ours = key_of(pressed.code);
    if (ours == kit::Key::none) return std::nullopt;
    return kit::KeyPress{
        ours, {.shift = pressed.shift, .control = pressed.control, .alt = pressed.alt}, repeating_};
}

/// With Ctrl a character is no text, or Ctrl and minus would be both; where the window system knows no name
/// for the key, as for a "+" that stands by itself, its character tells which one it was.
std::optional<kit::Event> Translator::character(std::uint32_t code) {
    if (code < 0x20 || code == 0x7F) return std::nullopt;
    if (!with_control_) return kit::Character{static_cast<char32_t>(code), repeating_};
    if (!unknown_) return std::nullopt;
    const kit::Key named = code == '+'   ? kit::Key::plus
                           : code == '-' ? kit::Key::minus
                           : code == '0' ? kit::Key::zero
                                         : kit::Key::none;
    if (named == kit::Key::none) return std::nullopt;
    return kit::KeyPress{named, {.control = true}, repeating_};
}

std::optional<kit::Event> Translator::translate(const sf::Event& event, double scale) {
    switch (event.type) {
        case sf::Event::Closed:
            return kit::CloseRequest{};
        case sf::Event::Resized:
            return kit::Resize{
                {static_cast<double>(event.size.width), static_cast<double>(event.size.height)}};
        case sf::Event::LostFocus:
            down_.fill(false);
            return kit::WindowFocus{false};
        case sf::Event::GainedFocus:
            return kit::WindowFocus{true};
        case sf::Event::KeyPressed:
            return key(event.key);
        case sf::Event::KeyReleased:
            if (event.key.code >= 0) down_[static_cast<std::size_t>(event.key.code)] = false;
            return std::nullopt;
        case sf::Event::TextEntered:
            return character(event.text.unicode);
        case sf::Event::MouseMoved:
            return kit::PointerMove{place(event.mouseMove.x, event.mouseMove.y, scale)};
        case sf::Event::MouseButtonPressed:
        case sf::Event::MouseButtonReleased:
            return button(event, scale, down_[sf::Keyboard::LShift] || down_[sf::Keyboard::RShift]);
        case sf::Event::MouseWheelScrolled:
            return kit::Wheel{place(event.mouseWheelScroll.x, event.mouseWheelScroll.y, scale),
                              static_cast<double>(event.mouseWheelScroll.delta)};
        default:
            return std::nullopt;
    }
}

}  // namespace emberpath::window
