#include <string>

#include "ui/kit/layout.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

constexpr double margin = 16.0;
constexpr kit::TextStyle zone_style{kit::Face::regular, kit::type_size::label, Token::ink2};

void zone_numbers(kit::Stage& stage, const Rect& outer, const Rect& inner, std::size_t n) {
    kit::Painter& p = stage.paint();
    const auto cells = kit::columns(Rect{outer.x, outer.y, outer.w, margin}, n);
    for (std::size_t i = 0; i < n; ++i)
        for (const double y : {outer.y, inner.bottom()}) {
            const Rect cell{cells[i].x, y, cells[i].w, margin};
            stage.text(cell, std::to_string(i + 1), zone_style, kit::Align::centre);
            if (i > 0)
                kit::line(p, {cell.x, cell.y}, {cell.x, cell.bottom()},
                          {.width = 1.0, .ink = Token::rule});
        }
}

void zone_letters(kit::Stage& stage, const Rect& outer, const Rect& inner, std::size_t n) {
    kit::Painter& p = stage.paint();
    const auto cells = kit::rows(Rect{outer.x, outer.y, margin, outer.h}, n);
    for (std::size_t i = 0; i < n; ++i)
        for (const double x : {outer.x, inner.right()}) {
            const Rect cell{x, cells[i].y, margin, cells[i].h};
            stage.text(cell, std::string(1, static_cast<char>('A' + i)), zone_style,
                       kit::Align::centre);
            if (i > 0)
                kit::line(p, {cell.x, cell.y}, {cell.right(), cell.y},
                          {.width = 1.0, .ink = Token::rule});
        }
}

}  // namespace

Rect draw_sheet_frame(kit::Stage& stage, const Rect& r, bool paused) {
    const Rect inner = kit::inset(r, margin);
    kit::panel(stage, r);
    zone_numbers(stage, r, inner, r.w > 1100.0 ? 8 : 6);
    zone_letters(stage, r, inner, r.h > 600.0 ? 5 : 4);
    kit::Stroke border{.width = 2.0, .ink = Token::ink, .closed = true};
    if (paused) border.dash = {14.0, 8.0};
    stage.paint().stroke(kit::rectangle(inner), border);
    return kit::inset(inner, 1.0);
}

const PointView* point_to_show(const kit::Stage& stage, const JobView& job) {
    const std::string& focus = stage.state().focus;
    const PointView *found = nullptr, *focused = nullptr;
    for (const PointView& v : job.site.points) {
        if (v.tag == job.selected) found = &v;
        if (focus == "sheet." + v.tag) focused = &v;
    }
    const bool selected = focused == nullptr || (job.selected_first && found != nullptr);
    return selected ? found : focused;
}

Placed place_sheet(const kit::Stage& stage, Placing placing, const JobView& job,
                   const std::function<std::optional<kit::Point>(const PointView&)>& spot) {
    const Camera& camera = job.camera;
    const PointView* shown = point_to_show(stage, job);
    const std::string id = shown == nullptr ? "" : "sheet." + shown->tag;
    // Between a press and its release nothing moves away under the pointer.
    const bool held = stage.state().pressed.starts_with("sheet.");
    placing.shift = {camera.x, camera.y};
    placing.in_the_middle = !camera.placed;
    if (shown != nullptr && !held && (!camera.placed || camera.shows != id))
        placing.target = spot(*shown);
    Placed placed = place_drawing(placing);
    placed.roam.shows = held ? camera.shows : id;
    return placed;
}

void draw_paused_plate(kit::Stage& stage, const Rect& sheet, const JobView& job) {
    stage.use(kit::Layer::moving);  // over the drawing, under what stands in front
    const double w = std::min(sheet.w - 60.0, 560.0);
    const Rect r{sheet.centre().x - w / 2.0, sheet.y + 1.0, w, 30.0};
    kit::Painter& p = stage.paint();
    p.box(r, Token::plate);
    kit::frame(p, r, 1.0, Token::ink);
    for (const double x : {r.x + 14.0, r.x + 22.0})
        p.box({x, r.y + 8.0, 4.0, 14.0}, Token::plate_ink);
    kit::Slicer left(kit::inset(r, 12.0, 0.0));
    left.left(28.0);
    const bool up = job.rail.time_is_up;
    const std::string caps = stage.keys().caps(up ? "write-up" : "pause");
    if (!caps.empty()) {
        const double cap_w = kit::key_cap_width(stage, caps);
        kit::key_cap(stage, {left.right(cap_w, 10.0).x, r.centre().y}, caps);
    }
    const std::string when = (up ? "Time is up at " : "Paused at ") + job.rail.clock,
                      words = up ? "Write up what you found, and hand in."
                                 : "Look, think and write; nothing moves.";
    const kit::TextStyle bold{kit::Face::bold, kit::type_size::body, Token::plate_ink};
    stage.text(left.left(stage.width(when, bold), 12.0), when, bold);
    stage.text_shortened(left.rest(), words,
                         {kit::Face::regular, kit::type_size::row, Token::plate_ink});
    stage.add({.id = "sheet.paused",
               .role = kit::Role::status,
               .name = when,
               .value = words,
               .bounds = r});
    stage.use(kit::Layer::still);
}

}  // namespace emberpath::screens
