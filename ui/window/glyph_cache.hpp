#pragma once
/// All letters of all faces and sizes in one texture, with a white patch for shapes: one texture, few draws.

#include <SFML/Graphics/Texture.hpp>
#include <map>
#include <optional>
#include <tuple>

#include "ui/kit/typeface.hpp"

namespace emberpath::window {

struct CachedGlyph {
    sf::Vector2f corner;           // in the texture [px]
    sf::Vector2f size;             // [px]; 0 for a space
    float left = 0.0F, up = 0.0F;  // from the pen to the picture's left and top [px]
};

class GlyphCache {
  public:
    explicit GlyphCache(const kit::Typeface& typeface);

    /// Nothing when the texture is full: then draw what waits, clear(), and ask again.
    [[nodiscard]] std::optional<CachedGlyph> glyph(kit::Face face, char32_t character, double em_px,
                                                   int quarter);
    void clear();

    [[nodiscard]] const kit::Typeface& typeface() const { return typeface_; }
    [[nodiscard]] const sf::Texture& texture() const { return texture_; }
    /// Somewhere all white, for shapes.
    [[nodiscard]] sf::Vector2f white() const { return {2.0F, 2.0F}; }
    [[nodiscard]] std::size_t count() const { return glyphs_.size(); }

    static constexpr unsigned side_px = 2048;

  private:
    using Key = std::tuple<kit::Face, char32_t, long, int>;
    struct Shelf {
        unsigned x = 0, y = 0, height = 0;
    };
    [[nodiscard]] bool make_room(unsigned width, unsigned height);

    const kit::Typeface& typeface_;
    sf::Texture texture_;
    std::map<Key, CachedGlyph> glyphs_;
    Shelf shelf_;
};

}  // namespace emberpath::window
