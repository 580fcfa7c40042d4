#pragma once
/// Puts frames on a target, repainting the still layer only when it changed.

#include <SFML/Graphics/Image.hpp>
#include <SFML/Graphics/RenderTexture.hpp>

#include "ui/kit/stage.hpp"
#include "ui/window/gl_painter.hpp"

namespace emberpath::window {

struct Look {
    kit::Theme theme = kit::Theme::day;
    double scale = 1.0;
    bool operator==(const Look&) const = default;
};

class Presenter {
  public:
    explicit Presenter(const kit::Typeface& typeface) : glyphs_(typeface) {}

    /// Paints all layers onto the target.
    void present(sf::RenderTarget& target, const kit::Frame& frame, const Look& look);
    /// True when the still layer was repainted by the last present().
    [[nodiscard]] bool repainted() const { return repainted_; }
    [[nodiscard]] std::size_t vertices() const { return vertices_; }
    [[nodiscard]] std::size_t draws() const { return draws_; }

  private:
    void repaint_still(sf::Vector2u size, const kit::Frame& frame, const Look& look);

    GlyphCache glyphs_;
    sf::RenderTexture still_;
    kit::Recording painted_;
    Look look_{};
    bool ready_ = false, repainted_ = false;
    std::size_t vertices_ = 0, draws_ = 0;
};

/// A frame as a picture, for golden images and documentation. Needs a display.
[[nodiscard]] sf::Image picture_of(Presenter& presenter, const kit::Frame& frame, const Look& look);

}  // namespace emberpath::window
