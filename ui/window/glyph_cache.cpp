#include "ui/window/glyph_cache.hpp"

#include <cmath>
#include <stdexcept>
#include <vector>

namespace emberpath::window {

namespace {

constexpr unsigned patch_px = 4, gap_px = 1;

std::vector<sf::Uint8> white_with(const std::vector<std::uint8_t>& coverage) {
    std::vector<sf::Uint8> pixels;
    pixels.reserve(coverage.size() * 4);
    for (const std::uint8_t c : coverage) pixels.insert(pixels.end(), {255, 255, 255, c});
    return pixels;
}

}  // namespace

GlyphCache::GlyphCache(const kit::Typeface& typeface) : typeface_(typeface) {
    if (!texture_.create(side_px, side_px))
        throw std::runtime_error("no texture of 2048 by 2048 pixels");
    texture_.setSmooth(false);
    clear();
}

void GlyphCache::clear() {
    glyphs_.clear();
    const std::vector<std::uint8_t> nothing(static_cast<std::size_t>(side_px) * side_px, 0);
    texture_.update(white_with(nothing).data());
    const std::vector<std::uint8_t> all(patch_px * patch_px, 255);
    texture_.update(white_with(all).data(), patch_px, patch_px, 0, 0);
    shelf_ = {patch_px + gap_px, 0, patch_px};
}

bool GlyphCache::make_room(unsigned width, unsigned height) {
    if (shelf_.x + width + gap_px > side_px) shelf_ = {0, shelf_.y + shelf_.height + gap_px, 0};
    shelf_.height = std::max(shelf_.height, height);
    return width <= side_px && shelf_.y + shelf_.height <= side_px;
}

std::optional<CachedGlyph> GlyphCache::glyph(kit::Face face, char32_t character, double em_px,
                                             int quarter) {
    const Key key{face, character, std::lround(em_px * 64.0), quarter};
    if (const auto found = glyphs_.find(key); found != glyphs_.end()) return found->second;
    const kit::GlyphPicture picture = typeface_.picture(face, character, em_px, quarter);
    const auto width = static_cast<unsigned>(picture.width),
               height = static_cast<unsigned>(picture.height);
    CachedGlyph glyph;
    glyph.left = static_cast<float>(picture.left);
    glyph.up = static_cast<float>(picture.top);
    if (width > 0 && height > 0) {
        if (!make_room(width, height)) return std::nullopt;
        texture_.update(white_with(picture.coverage).data(), width, height, shelf_.x, shelf_.y);
        glyph.corner = {static_cast<float>(shelf_.x), static_cast<float>(shelf_.y)};
        glyph.size = {static_cast<float>(width), static_cast<float>(height)};
        shelf_.x += width + gap_px;
    }
    return glyphs_.emplace(key, glyph).first->second;
}

}  // namespace emberpath::window
