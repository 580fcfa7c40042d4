#include "ui/screens/sheet_pen.hpp"

namespace emberpath::screens {

namespace {

struct Span {
    double from, size;
};

/// Along one direction: how far it is shifted from the middle, and how far it may be.
struct Shift {
    double middle = 0.0, by = 0.0, most = 0.0;
};

Shift shifted(Span area, Span drawing, double scale, double wanted, const double* target,
              bool in_the_middle) {
    const double size = drawing.size * scale;
    Shift s{area.from + (area.size - size) / 2.0 - drawing.from * scale, 0.0,
            std::max(0.0, (size - area.size) / 2.0)};
    s.by = wanted;
    if (target != nullptr) {
        const double at = s.middle + *target * scale, centre = area.from + area.size / 2.0;
        const double room = in_the_middle ? 0.0 : std::max(0.0, area.size / 2.0 - 44.0);
        s.by = std::clamp(s.by, centre - room - at, centre + room - at);
    }
    s.by = std::clamp(s.by, -s.most, s.most);
    return s;
}

}  // namespace

Placed place_drawing(const Placing& p) {
    const Shift x = shifted({p.area.x, p.area.w}, {p.drawing.x, p.drawing.w}, p.scale, p.shift.x,
                            p.target ? &p.target->x : nullptr, p.in_the_middle);
    const Shift y = shifted({p.area.y, p.area.h}, {p.drawing.y, p.drawing.h}, p.scale, p.shift.y,
                            p.target ? &p.target->y : nullptr, p.in_the_middle);
    return {{x.middle + x.by, y.middle + y.by},
            {x.most + x.by, x.most - x.by, y.most + y.by, y.most - y.by, {x.by, y.by}, {}}};
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
