#include "ui/kit/stage.hpp"

namespace emberpath::kit {

Stage::Stage(const TextMetrics& metrics, const State& state, const KeyMap& keys, Size size)
    : metrics_(metrics), state_(state), keys_(keys) {
    frame_.size = size;
    frame_.tree.open({.id = "window",
                      .role = Role::window,
                      .name = "Emberpath",
                      .bounds = whole(),
                      .visible = whole()});
}

Stage::Scope Stage::inside(Node node) {
    node.visible = clipped(node.bounds);
    frame_.tree.open(std::move(node));
    return Scope(*this);
}

Stage::Scope Stage::region(std::string_view id, std::string_view name, const Rect& bounds) {
    return inside(
        {.id = std::string(id), .role = Role::region, .name = std::string(name), .bounds = bounds});
}

void Stage::add(Node node) {
    node.visible = clipped(node.bounds);
    frame_.tree.open(std::move(node));
    frame_.tree.close();
}

void Stage::use(Layer layer) {
    if (layer == layer_) return;
    for (std::size_t i = 0; i < clips_.size(); ++i) paint().pop_clip();
    layer_ = layer;
    for (const Rect& r : clips_) paint().push_clip(r);
}

void Stage::clip(const Rect& r) {
    clips_.push_back(clipped(r));
    paint().push_clip(r);
}

void Stage::unclip() {
    clips_.pop_back();
    paint().pop_clip();
}

Rect Stage::clipped(const Rect& r) const {
    return intersection(r, clips_.empty() ? whole() : clips_.back());
}

bool Stage::shows_whole(const Rect& r) const {
    return outset(clips_.empty() ? whole() : clips_.back(), 0.5).contains(r);
}

double Stage::draw_line(const Rect& box, std::string_view utf8, const TextStyle& style, double x) {
    const double cap = metrics_.cap_height_em(style.face) * style.size;
    const double baseline = box.centre().y + cap / 2.0;
    const double w = width(utf8, style);
    if (utf8.empty()) return 0.0;
    paint().text({x, baseline}, utf8, style);
    const Rect ink{x, baseline - cap, w, cap};
    frame_.texts.push_back({std::string(utf8), box, ink, clipped(ink), layer_, false, style.face});
    return w;
}

double Stage::text(const Rect& box, std::string_view text, const TextStyle& style, Align align) {
    const std::string utf8 = written(text, style);
    const double spare = align == Align::start ? 0.0 : box.w - width(utf8, style);
    return draw_line(box, utf8, style, box.x + (align == Align::centre ? spare / 2.0 : spare));
}

double Stage::text_shortened(const Rect& box, std::string_view text, const TextStyle& style) {
    const std::string utf8 = written(text, style);
    const std::string shown = shortened(metrics_, style, utf8, box.w);
    const double w = draw_line(box, shown, style, box.x);
    if (w > 0.0) frame_.texts.back().shortened = shown != utf8;
    return w;
}

double Stage::paragraph_height(double w, std::string_view utf8, const TextStyle& style) const {
    return static_cast<double>(wrapped(metrics_, style, written(utf8, style), w).size()) *
           line_height(style.size);
}

double Stage::paragraph(const Rect& box, std::string_view utf8, const TextStyle& style) {
    const double step = line_height(style.size);
    double y = box.y;
    for (const std::string& line : wrapped(metrics_, style, written(utf8, style), box.w)) {
        draw_line({box.x, y, box.w, step}, line, style, box.x);
        y += step;
    }
    return y - box.y;
}

void Stage::draw_focus() {
    const Node* node = frame_.tree.get(state_.focus);
    if (node == nullptr || !state_.focus_shown || node->visible.empty()) return;
    layer_ = Layer::over;
    constexpr double gap = 2.0, width = line_width::focus;
    const Rect around_gap = outset(node->visible, gap / 2.0);
    const Rect around_ring = outset(node->visible, gap + width / 2.0);
    outline(paint(), rounded_rectangle(around_gap, space::radius + 1.0), gap, Token::paper);
    outline(paint(), rounded_rectangle(around_ring, space::radius + 2.0), width, Token::ink);
}

Frame Stage::finish() {
    draw_focus();
    frame_.tree.close();
    return std::move(frame_);
}

}  // namespace emberpath::kit
