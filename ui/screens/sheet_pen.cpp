#include "ui/screens/sheet_pen.hpp"

namespace emberpath::screens {

namespace {

struct Span {
    double from, size;
};

/// Along one direction: centred if it fits, else shifted to show the target and no more emptiness than needed.
double shifted(Span area, Span drawing, double scale, const double* target, double nudge) {
    const double size = drawing.size * scale;
    const double centred = area.from + (area.size - size) / 2.0 - drawing.from * scale + nudge;
    if (size <= area.size || target == nullptr) return centred;
    const double wanted = area.from + area.size / 2.0 - *target * scale;
    const double most = area.from - drawing.from * scale;
    return std::clamp(wanted, most + area.size - size, most);
}

}  // namespace

kit::Point origin_for(const Placing& p) {
    const double* x = p.target ? &p.target->x : nullptr;
    const double* y = p.target ? &p.target->y : nullptr;
    return {shifted({p.area.x, p.area.w}, {p.drawing.x, p.drawing.w}, p.scale, x, p.nudge.x),
            shifted({p.area.y, p.area.h}, {p.drawing.y, p.drawing.h}, p.scale, y, p.nudge.y)};
}

void draw_hatch(kit::Painter& painter, const kit::Rect& r, double step, kit::Ink ink) {
    // Along lines x + y = c, so that neighbouring boxes share one pattern.
    const double first = std::ceil((r.left() + r.top()) / step) * step;
    for (double c = first; c < r.right() + r.bottom(); c += step) {
        const double x0 = std::max(r.left(), c - r.bottom()), x1 = std::min(r.right(), c - r.top());
        if (x1 - x0 > 0.5)
            kit::line(painter, {x0, c - x0}, {x1, c - x1}, {.width = 1.0, .ink = ink});
    }
}

bool LabelPlacer::is_free(const kit::Rect& r) const {
    if (!within_.contains(r)) return false;
    for (const kit::Rect& t : taken_)
        if (!kit::intersection(t, r).empty()) return false;
    return true;
}

kit::Rect LabelPlacer::place(std::span<const kit::Rect> places) {
    for (const kit::Rect& r : places)
        if (is_free(r)) {
            occupy(r);
            return r;
        }
    return {};
}

}  // namespace emberpath::screens
