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

    std::array<bool, sf::Keyboard::KeyCount> down_{};
    bool repeating_ = false;  // the characters that follow come from a held key
};

}  // namespace emberpath::window
