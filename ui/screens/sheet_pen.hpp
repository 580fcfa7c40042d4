#pragma once
/// Drawing in units of a plan: a scale and a shift onto the screen. Lines and letters keep their size.

#include <optional>
#include <string_view>

#include "ui/kit/stage.hpp"
#include "ui/kit/widgets.hpp"

namespace emberpath::screens {

class SheetPen {
  public:
    /// Unit (0,0) comes to `origin`; `scale` logical pixels to a unit.
    SheetPen(kit::Stage& stage, kit::Point origin, double scale)
        : stage_(stage), origin_(origin), scale_(scale) {}

    [[nodiscard]] kit::Stage& stage() const { return stage_; }
    [[nodiscard]] double scale() const { return scale_; }
    [[nodiscard]] kit::Point at(kit::Point unit) const { return origin_ + unit * scale_; }
    [[nodiscard]] kit::Rect at(const kit::Rect& r) const {
        const kit::Point corner = at(kit::Point{r.x, r.y});
        return {corner.x, corner.y, r.w * scale_, r.h * scale_};
    }
    [[nodiscard]] kit::Path at(std::span<const kit::Point> path) const {
        kit::Path out;
        for (const kit::Point p : path) out.push_back(at(p));
        return out;
    }
    /// A pen whose unit (0,0) is this pen's `unit`, with units `k` times as long.
    [[nodiscard]] SheetPen moved(kit::Point unit, double k = 1.0) const {
        return {stage_, at(unit), scale_ * k};
    }

    void line(std::span<const kit::Point> path, const kit::Stroke& how) const {
        stage_.paint().stroke(at(path), how);
    }
    void line(kit::Point a, kit::Point b, const kit::Stroke& how) const {
        kit::line(stage_.paint(), at(a), at(b), how);
    }
    void outline(std::span<const kit::Point> path, double width, kit::Ink ink) const {
        kit::outline(stage_.paint(), at(path), width, ink);
    }
    void shape(std::span<const kit::Point> path, kit::Ink fill, double width, kit::Ink edge) const {
        kit::shape(stage_.paint(), at(path), fill, {.width = width, .ink = edge});
    }
    void box(const kit::Rect& r, kit::Ink fill, double width, kit::Ink edge,
             double radius = 0.0) const {
        const kit::Rect placed = at(r);
        kit::shape(stage_.paint(), kit::rounded_rectangle(placed, radius), fill,
                   {.width = width, .ink = edge});
    }
    void fill(std::span<const kit::Point> path, kit::Ink ink) const {
        stage_.paint().fill(at(path), ink);
    }
    void dot(kit::Point p, double radius_px, kit::Ink ink) const {
        stage_.paint().disc(at(p), radius_px, ink);
    }
    void circle(kit::Point p, double radius, double width, kit::Ink ink) const {
        kit::ring(stage_.paint(), at(p), radius * scale_, width, ink);
    }

  private:
    kit::Stage& stage_;
    kit::Point origin_;
    double scale_;
};

/// Where a drawing larger than its place is shifted to; centred while it fits.
struct Placing {
    kit::Rect area;     // on the screen
    kit::Rect drawing;  // its extent, in units
    double scale = 1.0;
    kit::Point shift{};                  // the person's own, from the middle [logical px]
    std::optional<kit::Point> target{};  // in units: what must be seen
    bool in_the_middle = false;  // the target comes there; else it is only drawn in from an edge
};
struct Placed {
    kit::Point origin;  // for a pen
    kit::Roam roam;     // how far it could still be shifted
};
[[nodiscard]] Placed place_drawing(const Placing& placing);

/// Sloping lines inside a box [logical px]: cut material in a section drawing.
void draw_hatch(kit::Painter& painter, const kit::Rect& r, double step, kit::Ink ink);

/// Finds room for words beside things: the first place that covers nothing placed before.
class LabelPlacer {
  public:
    explicit LabelPlacer(const kit::Rect& within) : within_(within) {}
    void occupy(const kit::Rect& r) { taken_.push_back(r); }
    [[nodiscard]] bool is_free(const kit::Rect& r) const;
    /// The first free one of some places, now taken; of size 0 when none is free.
    kit::Rect place(std::span<const kit::Rect> places);

  private:
    kit::Rect within_;
    std::vector<kit::Rect> taken_;
};

}  // namespace emberpath::screens
