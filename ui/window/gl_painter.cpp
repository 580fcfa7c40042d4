#include "ui/window/gl_painter.hpp"

#include <cmath>

namespace emberpath::window {

namespace {

sf::Vector2f to_sf(kit::Point p) {
    return {static_cast<float>(p.x), static_cast<float>(p.y)};
}

sf::IntRect shared(const sf::IntRect& a, const sf::IntRect& b) {
    sf::IntRect both;
    return a.intersects(b, both) ? both : sf::IntRect(a.left, a.top, 0, 0);
}

}  // namespace

GlPainter::GlPainter(sf::RenderTarget& target, GlyphCache& glyphs, kit::Theme theme, double scale)
    : target_(target), glyphs_(glyphs), theme_(theme), scale_(scale) {
    const auto size = target.getSize();
    clips_.emplace_back(0, 0, static_cast<int>(size.x), static_cast<int>(size.y));
}

kit::Path GlPainter::scaled(std::span<const kit::Point> path) const {
    kit::Path out;
    out.reserve(path.size());
    for (const kit::Point p : path) out.push_back(p * scale_);
    return out;
}

sf::Color GlPainter::colour_of(kit::Ink ink) const {
    const kit::Colour c = kit::colour(theme_, ink.token);
    return {c.r, c.g, c.b, static_cast<sf::Uint8>(std::lround(ink.alpha * 255.0))};
}

void GlPainter::add(const kit::Mesh& mesh, kit::Ink ink) {
    const sf::Color full = colour_of(ink);
    const sf::Vector2f white = glyphs_.white();
    for (const kit::MeshVertex& v : mesh) {
        sf::Color c = full;
        c.a = static_cast<sf::Uint8>(std::lround(full.a * std::clamp(v.coverage, 0.0, 1.0)));
        batch_.emplace_back(to_sf(v.at), c, white);
    }
}

void GlPainter::fill(std::span<const kit::Point> outline, kit::Ink ink) {
    kit::Mesh mesh;
    kit::add_fill(mesh, kit::snapped(scaled(outline), 0.0, true));
    add(mesh, ink);
}

void GlPainter::stroke(std::span<const kit::Point> path, const kit::Stroke& how) {
    const double width = how.width * scale_;
    kit::Path line = kit::snapped(scaled(path), width, how.closed);
    kit::Mesh mesh;
    if (how.dash.empty()) {
        kit::add_stroke(mesh, line, width, how.closed);
        if (how.cap == kit::Cap::round && !how.closed && !line.empty())
            for (const kit::Point end : {line.front(), line.back()})
                kit::add_disc(mesh, end, width / 2.0);
    } else {
        if (how.closed && !line.empty()) line.push_back(line.front());
        std::vector<double> pattern = how.dash;
        for (double& d : pattern) d *= scale_;
        for (const kit::Path& dash : kit::dashes(line, pattern, how.phase * scale_))
            kit::add_stroke(mesh, dash, width, false);
    }
    add(mesh, how.ink);
}

void GlPainter::box(const kit::Rect& r, kit::Ink ink) {
    const double left = std::round(r.left() * scale_), top = std::round(r.top() * scale_);
    const double right = std::max(left, std::round(r.right() * scale_));
    const double bottom = std::max(top, std::round(r.bottom() * scale_));
    const kit::Path corners = kit::rectangle({left, top, right - left, bottom - top});
    const sf::Color colour = colour_of(ink);
    for (const std::size_t i : {0U, 1U, 2U, 0U, 2U, 3U})
        batch_.emplace_back(to_sf(corners[i]), colour, glyphs_.white());
}

void GlPainter::disc(kit::Point centre, double radius, kit::Ink ink) {
    kit::Mesh mesh;
    kit::add_disc(mesh, centre * scale_, radius * scale_);
    add(mesh, ink);
}

CachedGlyph GlPainter::fetch(kit::Face face, char32_t character, double em_px, int quarter) {
    if (const auto glyph = glyphs_.glyph(face, character, em_px, quarter)) return *glyph;
    flush();  // what waits still uses the old places
    glyphs_.clear();
    return glyphs_.glyph(face, character, em_px, quarter).value_or(CachedGlyph{});
}

void GlPainter::add_quad(sf::Vector2f at, sf::Vector2f size, const CachedGlyph& glyph,
                         sf::Color colour) {
    const auto corner = [&](float across, float down) {
        batch_.emplace_back(sf::Vector2f(at.x + size.x * across, at.y + size.y * down), colour,
                            sf::Vector2f(glyph.corner.x + glyph.size.x * across,
                                         glyph.corner.y + glyph.size.y * down));
    };
    for (const auto& [across, down] : {std::pair{0.0F, 0.0F},
                                       {1.0F, 0.0F},
                                       {1.0F, 1.0F},
                                       {0.0F, 0.0F},
                                       {1.0F, 1.0F},
                                       {0.0F, 1.0F}})
        corner(across, down);
}

void GlPainter::text(kit::Point baseline, std::string_view utf8, const kit::TextStyle& style) {
    const double em = style.size * scale_;
    const auto y = static_cast<float>(std::round(baseline.y * scale_));
    const sf::Color colour = colour_of(style.ink);
    double pen = baseline.x * scale_;
    for (const char32_t c : kit::decode(utf8)) {
        const auto quarters = static_cast<long>(std::floor(pen * 4.0 + 0.5));
        const long whole = quarters >= 0 ? quarters / 4 : -((3 - quarters) / 4);
        const CachedGlyph glyph = fetch(style.face, c, em, static_cast<int>(quarters - whole * 4));
        if (glyph.size.x > 0.0F)
            add_quad({static_cast<float>(whole) + glyph.left, y - glyph.up}, glyph.size, glyph,
                     colour);
        pen += glyphs_.typeface().advance_em(style.face, c) * em;
    }
}

void GlPainter::push_clip(const kit::Rect& r) {
    flush();
    const auto px = [&](double v) { return static_cast<int>(std::lround(v * scale_)); };
    const sf::IntRect clip(px(r.x), px(r.y), px(r.right()) - px(r.x), px(r.bottom()) - px(r.y));
    clips_.push_back(shared(clips_.back(), clip));
}

void GlPainter::pop_clip() {
    flush();
    clips_.pop_back();
}

void GlPainter::flush() {
    const sf::IntRect& clip = clips_.back();
    if (!batch_.empty() && clip.width > 0 && clip.height > 0) {
        const auto size = sf::Vector2f(target_.getSize());
        const sf::FloatRect area(clip);
        sf::View view(area);
        view.setViewport(
            {area.left / size.x, area.top / size.y, area.width / size.x, area.height / size.y});
        target_.setView(view);
        target_.draw(batch_.data(), batch_.size(), sf::Triangles, &glyphs_.texture());
        ++draws_;
        vertices_ += batch_.size();
    }
    batch_.clear();
}

}  // namespace emberpath::window
