#pragma once
/// Events of the window system as plain structs.

#include <SFML/Window/Event.hpp>
#include <array>
#include <optional>

#include "ui/kit/events.hpp"

namespace emberpath::window {

class Translator {
  public:
    /// Nothing for events that mean nothing here. Positions are divided by `scale`.
    [[nodiscard]] std::optional<kit::Event> translate(const sf::Event& event, double scale);

  private:
    [[nodiscard]] std::optional<kit::Event> key(const sf::Event::KeyEvent& pressed);
    [[nodiscard]] std::optional<kit::Event> character(std::uint32_t code);

    std::array<bool, sf::Keyboard::KeyCount> down_{};
    bool repeating_ = false;  // the characters that follow come from a held key
    bool with_control_ = false, unknown_ = false;  // of that key: its character is no text then
};

}  // namespace emberpath::window
