#include "ui/window/presenter.hpp"

#include <SFML/Graphics/Sprite.hpp>
#include <cmath>
#include <stdexcept>

namespace emberpath::window {

namespace {

const kit::Recording& layer_of(const kit::Frame& frame, kit::Layer layer) {
    return frame.layers[static_cast<std::size_t>(layer)];
}

sf::Color desk(kit::Theme theme) {
    const kit::Colour c = kit::colour(theme, kit::Token::desk);
    return {c.r, c.g, c.b};
}

}  // namespace

void Presenter::repaint_still(sf::Vector2u size, const kit::Frame& frame, const Look& look) {
    const kit::Recording& wanted = layer_of(frame, kit::Layer::still);
    const bool same_size = ready_ && still_.getSize() == size;
    if (same_size && look == look_ && wanted == painted_) return;
    if (!same_size && !still_.create(size.x, size.y))
        throw std::runtime_error("no off-screen picture of that size");
    still_.resetGLStates();  // the context it was made in may be gone with its window or picture
    still_.clear(desk(look.theme));
    GlPainter painter(still_, glyphs_, look.theme, look.scale);
    wanted.play(painter);
    painter.flush();
    still_.display();
    vertices_ += painter.vertices();
    draws_ += painter.draws();
    painted_ = wanted;
    look_ = look;
    ready_ = repainted_ = true;
}

void Presenter::present(sf::RenderTarget& target, const kit::Frame& frame, const Look& look) {
    repainted_ = false;
    vertices_ = draws_ = 0;
    const sf::Vector2u size = target.getSize();
    repaint_still(size, frame, look);
    target.setView(sf::View(sf::FloatRect(sf::Vector2f(), sf::Vector2f(size))));
    target.draw(sf::Sprite(still_.getTexture()), sf::RenderStates(sf::BlendNone));
    GlPainter painter(target, glyphs_, look.theme, look.scale);
    layer_of(frame, kit::Layer::moving).play(painter);
    layer_of(frame, kit::Layer::over).play(painter);
    painter.flush();
    vertices_ += painter.vertices();
    draws_ += painter.draws();
}

sf::Image picture_of(Presenter& presenter, const kit::Frame& frame, const Look& look) {
    sf::RenderTexture target;
    const auto px = [&](double v) { return static_cast<unsigned>(std::lround(v * look.scale)); };
    if (!target.create(px(frame.size.w), px(frame.size.h)))
        throw std::runtime_error("no off-screen picture of that size");
    target.clear(desk(look.theme));
    presenter.present(target, frame, look);
    target.display();
    return target.getTexture().copyToImage();
}

}  // namespace emberpath::window
