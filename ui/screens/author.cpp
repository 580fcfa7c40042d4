#include "ui/screens/author.hpp"

#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/author_parts.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/overlays.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Point;
using kit::Rect;
using kit::Token;

/// A cloud around a place: drawings mark so what was changed.
void draw_cloud(kit::Painter& p, const Rect& r) {
    const double step = 13.0;
    const auto bumps = [&](Point from, Point to, double turn) {
        const int n = std::max(1, static_cast<int>(kit::distance(from, to) / step));
        for (int i = 0; i < n; ++i) {
            const Point c = kit::between(from, to, (i + 0.5) / n);
            p.stroke(kit::arc(c, kit::distance(from, to) / n / 2.0, turn, turn + 180.0),
                     {.width = 1.8, .ink = Token::danger});
        }
    };
    bumps({r.x, r.y}, {r.right(), r.y}, 180.0);
    bumps({r.right(), r.y}, {r.right(), r.bottom()}, 270.0);
    bumps({r.right(), r.bottom()}, {r.x, r.bottom()}, 0.0);
    bumps({r.x, r.bottom()}, {r.x, r.y}, 90.0);
}

void mark_fault(kit::Stage& stage, const Rect& area, const AuthorView& view, const Rect& where) {
    if (where.empty()) return;
    const Rect cloud = kit::outset(where, cloud_width);
    draw_cloud(stage.paint(), cloud);
    // The words stand above the house, where nothing is drawn, and a line leads to the cloud.
    const Rect words{area.x + 14.0, area.y + 10.0,
                     stage.width(view.fault_words, kit::style::row_bold) + 26.0, 20.0};
    const double x =
        std::clamp(leader_to(where, area).centre().x, area.x + 22.0, area.right() - 14.0);
    const double turn = words.bottom() + 8.0;
    const Point way[] = {
        {words.x + 8.0, words.bottom()}, {words.x + 8.0, turn}, {x, turn}, {x, cloud.y - 6.0}};
    stage.paint().stroke(way, {.width = 1.2, .ink = Token::danger});
    const Point triangle[] = {{words.x + 8.0, words.y + 3.0},
                              {words.x + 16.0, words.y + 17.0},
                              {words.x, words.y + 17.0}};
    kit::outline(stage.paint(), triangle, 1.6, Token::danger);
    stage.text({words.x + 24.0, words.y, words.w, words.h}, view.fault_words,
               kit::with_ink(kit::style::row_bold, Token::danger));
    stage.add({.id = "drawing.fault",
               .role = kit::Role::label,
               .name = view.fault_words,
               .bounds = where});
}

void draw_drawing(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const auto region = stage.region("drawing", "Drawing", r);
    kit::Slicer inside(draw_sheet_frame(stage, r, false));
    const Rect area = inside.rest();
    JobView house = view.house;
    house.whole = true;
    // Below the words that name the fault.
    const Rect below{area.x, area.y + 30.0, area.w, area.h - 30.0};
    const Rect where = draw_house_sheet(stage, below, house, view.fault_tag);
    stage.use(kit::Layer::over);
    stage.clip(area);
    mark_fault(stage, area, view, where);
    stage.unclip();
    stage.use(kit::Layer::still);
}

void draw_head(kit::Stage& stage, const Rect& r, const AuthorView& view, bool with_tabs) {
    const auto region = stage.region("head", "Job and parts", r);
    stage.paint().box(r, Token::paper);
    stage.paint().box({r.x, r.bottom() - 2.0, r.w, 2.0}, Token::ink);
    kit::Slicer left(kit::inset(r, 14.0, 0.0));
    const double mid = r.centre().y;
    const kit::ButtonSpec play{.id = "head.play",
                               .name = r.w < 1000.0 ? "Play" : "Play as trainee",
                               .command = {"play"},
                               .caps = stage.keys().caps("play"),
                               .shortcut = "play",
                               .primary = true};
    const Rect place = left.right(kit::button_width(stage, play), 10.0);
    const Rect title = left.left(with_tabs ? std::min(160.0, r.w * 0.2) : left.rest().w, 8.0);
    stage.text_shortened({title.x, mid - 20.0, title.w, 20.0}, view.title, kit::style::heading);
    stage.text_shortened({title.x, mid, title.w, 18.0}, view.file, kit::style::row_quiet);
    stage.add({.id = "head.title",
               .role = kit::Role::heading,
               .name = view.title,
               .value = view.file,
               .bounds = title});
    if (with_tabs) {
        const auto tab = [&](const char* id, const char* words) {
            return kit::Choice{
                std::string("head.tab.") + id, words, {"tab", id}, view.tab == id, "", ""};
        };
        const std::array choices{tab("brief", "Brief"), tab("house", "House"),
                                 tab("fault", "Readings"), tab("check", "Check")};
        kit::tabs(stage, {left.rest().x, r.y + 4.0, left.rest().w, r.h - 6.0}, "head.tabs",
                  "Parts of the job", choices);
    }
    kit::button(stage, {place.x, mid - 14.0, place.w, 28.0}, play);
}

}  // namespace

kit::Frame author_screen(const Setting& setting, const AuthorView& view) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    stage.place("authoring");
    stage.paint().box(stage.whole(), Token::desk);
    kit::Slicer left(stage.whole());
    const bool compact = setting.size.w < 1200.0 || setting.size.h < 640.0;
    draw_head(stage, left.top(54.0), view, compact);
    const Rect status = left.bottom(30.0);
    kit::Slicer body(
        {left.rest().x + 8.0, left.rest().y + 8.0, left.rest().w - 16.0, left.rest().h - 8.0});
    if (compact) {  // one thing at a time; the tabs choose
        if (view.tab == "check")
            draw_checks(stage, body.rest(), view);
        else if (view.tab == "fault")
            draw_preview(stage, body.rest(), view);
        else if (view.tab == "house")
            draw_drawing(stage, body.rest(), view);
        else
            draw_facts(stage, body.rest(), view);
    } else {
        draw_facts(stage, body.left(230.0, 8.0), view);
        const Rect checks = body.right(286.0, 8.0);
        draw_drawing(stage, body.top(body.rest().h * 0.58, 8.0), view);
        draw_preview(stage, body.rest(), view);
        draw_checks(stage, checks, view);
    }
    static const std::array hints{KeyHint{"next region", "next region"}, KeyHint{"play", "play"},
                                  KeyHint{"help", "all keys"}};
    draw_status(stage, status, "", view.status, hints);
    return finished(stage, setting, "authoring");
}

}  // namespace emberpath::screens
