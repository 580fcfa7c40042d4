#pragma once
/// Paints a drawing onto a target as batches of triangles: one batch for each clip, as a rule.

#include <SFML/Graphics/RenderTarget.hpp>
#include <vector>

#include "ui/kit/mesh.hpp"
#include "ui/kit/painter.hpp"
#include "ui/window/glyph_cache.hpp"

namespace emberpath::window {

class GlPainter final : public kit::Painter {
  public:
    /// `scale`: window pixels to a logical pixel. Call flush() when done.
    GlPainter(sf::RenderTarget& target, GlyphCache& glyphs, kit::Theme theme, double scale);

    void fill(std::span<const kit::Point> outline, kit::Ink ink) override;
    void stroke(std::span<const kit::Point> path, const kit::Stroke& how) override;
    void box(const kit::Rect& r, kit::Ink ink) override;
    void disc(kit::Point centre, double radius, kit::Ink ink) override;
    void text(kit::Point baseline, std::string_view utf8, const kit::TextStyle& style) override;
    void push_clip(const kit::Rect& r) override;
    void pop_clip() override;

    void flush();
    [[nodiscard]] std::size_t draws() const { return draws_; }
    [[nodiscard]] std::size_t vertices() const { return vertices_; }

  private:
    [[nodiscard]] kit::Path scaled(std::span<const kit::Point> path) const;
    [[nodiscard]] sf::Color colour_of(kit::Ink ink) const;
    void add(const kit::Mesh& mesh, kit::Ink ink);
    void add_quad(sf::Vector2f at, sf::Vector2f size, const CachedGlyph& glyph, sf::Color colour);
    CachedGlyph fetch(kit::Face face, char32_t character, double em_px, int quarter);

    sf::RenderTarget& target_;
    GlyphCache& glyphs_;
    kit::Theme theme_;
    double scale_;
    std::vector<sf::Vertex> batch_;
    std::vector<sf::IntRect> clips_;
    std::size_t draws_ = 0, vertices_ = 0;
};

}  // namespace emberpath::window
