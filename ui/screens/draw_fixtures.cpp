#include <array>
#include <cmath>

#include "ui/screens/draw_house.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

const kit::Stroke thin{.width = 1.2, .ink = Token::ink};
const kit::Stroke part{.width = kit::line_width::part, .ink = Token::ink};

/// A bent spout that rises from `foot`.
void spout(const SheetPen& pen, Point foot, double rise, double reach) {
    Path path{{foot.x, foot.y},
              {foot.x, foot.y - rise},
              {foot.x - reach, foot.y - rise},
              {foot.x - reach, foot.y - rise + 6.0}};
    pen.line(kit::with_rounded_corners(path, 5.0), {.width = 2.2, .ink = Token::ink});
}

/// Water that falls from a tap: dashes that move down, red for hot and blue for cold, and told in words too.
void stream(const SheetPen& pen, Point from, double to_y, const FixtureView& f,
            const Spray& spray) {
    if (f.opening <= 0.0) return;
    kit::Stage& stage = pen.stage();
    stage.use(kit::Layer::moving);
    const double phase = spray.still ? 0.0 : std::fmod(-spray.seconds * 40.0, 9.0) + 9.0;
    const kit::Stroke how{.width = 1.2 + 1.4 * f.opening,
                          .ink = f.hot ? Token::hot : Token::cold,
                          .dash = {5.0, 4.0},
                          .phase = phase};
    pen.line(from, {from.x, to_y}, how);
    stage.use(kit::Layer::still);
}

/// A cone of thin streams, each a little out of step with the next.
void spray_from(const SheetPen& pen, Point head, double to_y, const FixtureView& f,
                const Spray& spray) {
    if (f.opening <= 0.0) return;
    kit::Stage& stage = pen.stage();
    stage.use(kit::Layer::moving);
    const double phase = spray.still ? 0.0 : std::fmod(-spray.seconds * 40.0, 11.0) + 11.0;
    for (int i = 0; i < 6; ++i) {
        const double side = (i - 2.5) / 2.5;
        const kit::Stroke how{.width = 1.1,
                              .ink = f.hot ? Token::hot : Token::cold,
                              .dash = {5.0, 6.0},
                              .phase = std::fmod(phase + i * 4.3, 11.0)};
        pen.line({head.x + side * 7.0, head.y}, {head.x - 3.0 + side * 14.0, to_y}, how);
    }
    stage.use(kit::Layer::still);
}

void counter(const SheetPen& pen, const Rect& r) {
    pen.line({r.x, r.y}, {r.right(), r.y}, {.width = 2.0, .ink = Token::ink});
    for (const double x : {r.x + 2.0, r.right() - 2.0})
        pen.line({x, r.y}, {x, r.bottom()}, {.width = 1.0, .ink = Token::rule});
}

void draw_sink(const SheetPen& pen, const PlacedFixture& f, const Spray& spray) {
    const Rect& r = f.r;
    counter(pen, r);
    const double c = r.centre().x;
    const Path bowl{
        {c - 24.0, r.y}, {c - 21.0, r.y + 14.0}, {c + 21.0, r.y + 14.0}, {c + 24.0, r.y}};
    pen.line(bowl, part);
    spout(pen, {c + 2.0, r.y}, 21.0, 14.0);
    stream(pen, {c - 12.0, r.y - 14.0}, r.y + 11.0, f.view, spray);
}

void draw_basin(const SheetPen& pen, const PlacedFixture& f, const Spray& spray) {
    const Rect& r = f.r;
    const double c = r.centre().x;
    const Path bowl{
        {c - 26.0, r.y}, {c + 26.0, r.y}, {c + 16.0, r.y + 17.0}, {c - 16.0, r.y + 17.0}};
    pen.shape(bowl, Token::paper, kit::line_width::part, Token::ink);
    for (const double x : {c - 5.0, c + 5.0})
        pen.line({x, r.y + 17.0}, {x, r.bottom()}, {.width = 1.0, .ink = Token::rule});
    spout(pen, {c + 2.0, r.y}, 21.0, 14.0);
    stream(pen, {c - 12.0, r.y - 14.0}, r.y + 4.0, f.view, spray);
}

void draw_tub(const SheetPen& pen, const PlacedFixture& f, const Spray& spray) {
    const Rect& r = f.r;
    const double c = r.centre().x;
    const Path tub{
        {c - 27.0, r.y}, {c - 24.0, r.y + 32.0}, {c + 24.0, r.y + 32.0}, {c + 27.0, r.y}};
    pen.line(tub, part);
    for (const double x : {c - 18.0, c + 18.0}) pen.line({x, r.y + 32.0}, {x, r.bottom()}, thin);
    spout(pen, {c + 2.0, r.y}, 21.0, 14.0);
    stream(pen, {c - 12.0, r.y - 14.0}, r.y + 29.0, f.view, spray);
}

void draw_shower(const SheetPen& pen, const PlacedFixture& f, const Spray& spray) {
    const Rect& r = f.r;
    const double mixer_x = r.x + 83.0, mixer_y = 192.0, head_x = r.x + 56.0, head_y = 103.0;
    const Path hose{
        {mixer_x, mixer_y}, {mixer_x, 98.0}, {mixer_x - 14.0, 92.0}, {head_x + 4.0, head_y - 5.0}};
    pen.line(kit::with_rounded_corners(hose, 12.0), {.width = 1.8, .ink = Token::ink});
    const Path head{{head_x - 10.0, head_y + 2.0},
                    {head_x - 4.0, head_y - 6.0},
                    {head_x + 6.0, head_y - 6.0},
                    {head_x + 10.0, head_y + 2.0}};
    pen.shape(head, Token::paper, kit::line_width::part, Token::ink);
    pen.box({mixer_x - 15.0, mixer_y - 6.0, 30.0, 11.0}, Token::paper, kit::line_width::part,
            Token::ink, 4.0);
    const Path tray{{r.x + 6.0, r.bottom()},
                    {r.x + 12.0, r.bottom() - 8.0},
                    {r.right() - 10.0, r.bottom() - 8.0},
                    {r.right() - 4.0, r.bottom()}};
    pen.line(tray, part);
    spray_from(pen, {head_x, head_y + 6.0}, r.bottom() - 14.0, f.view, spray);
}

void draw_bath(const SheetPen& pen, const PlacedFixture& f, const Spray& spray) {
    const Rect& r = f.r;
    const Path tub{{r.x + 2.0, r.y + 22.0},
                   {r.x + 12.0, r.bottom() - 10.0},
                   {r.x + 62.0, r.bottom() - 10.0},
                   {r.x + 70.0, r.y + 22.0}};
    pen.shape(kit::with_rounded_corners(tub, 10.0), Token::paper, kit::line_width::part,
              Token::ink);
    pen.line({r.x - 1.0, r.y + 22.0}, {r.x + 74.0, r.y + 22.0}, {.width = 2.4, .ink = Token::ink});
    for (const double x : {r.x + 20.0, r.x + 54.0})
        pen.line({x, r.bottom() - 10.0}, {x, r.bottom()}, thin);
    pen.line({r.x + 78.0, r.y + 2.0}, {r.x + 104.0, r.y + 2.0}, {.width = 4.0, .ink = Token::ink});
    Path arm{{r.x + 88.0, r.y + 2.0},
             {r.x + 88.0, r.y - 16.0},
             {r.x + 62.0, r.y - 16.0},
             {r.x + 62.0, r.y - 4.0}};
    pen.line(kit::with_rounded_corners(arm, 5.0), {.width = 2.4, .ink = Token::ink});
    stream(pen, {r.x + 62.0, r.y - 2.0}, r.bottom() - 14.0, f.view, spray);
}

void rings_of_flame(const SheetPen& pen, const Rect& r, bool on) {
    if (!on) return;
    for (const double x : {r.x + 20.0, r.right() - 20.0})
        for (const double dx : {-8.0, 0.0, 8.0})
            pen.fill(
                Path{{x + dx - 2.5, r.y - 3.0}, {x + dx, r.y - 9.0}, {x + dx + 2.5, r.y - 3.0}},
                Token::cold);
}

void draw_cooktop(const SheetPen& pen, const PlacedFixture& f, const Spray&) {
    const Rect& r = f.r;
    counter(pen, r);
    pen.box({r.x + 6.0, r.y - 3.0, r.w - 12.0, 5.0}, Token::wash, 1.2, Token::ink, 1.0);
    rings_of_flame(pen, {r.x, r.y - 1.0, r.w, 1.0}, f.view.opening > 0.0);
}

void draw_oven(const SheetPen& pen, const PlacedFixture& f, const Spray&) {
    const Rect& r = f.r;
    counter(pen, r);
    pen.box({r.x + 8.0, r.y + 18.0, r.w - 16.0, 38.0}, Token::paper, kit::line_width::part,
            Token::ink, 3.0);
    pen.line({r.x + 14.0, r.y + 25.0}, {r.right() - 14.0, r.y + 25.0},
             {.width = 2.0, .ink = Token::ink});
    if (f.view.opening > 0.0)
        pen.line({r.x + 16.0, r.y + 50.0}, {r.right() - 16.0, r.y + 50.0},
                 {.width = 2.4, .ink = Token::cold, .dash = {3.0, 2.0}});
}

void draw_room_heater(const SheetPen& pen, const PlacedFixture& f, const Spray&) {
    const Rect& r = f.r;
    pen.box({r.x + 6.0, r.y + 24.0, r.w - 12.0, 46.0}, Token::paper, kit::line_width::part,
            Token::ink, 3.0);
    for (int i = 0; i < 5; ++i) {
        const double x = r.x + 15.0 + 10.0 * i;
        pen.line({x, r.y + 31.0}, {x, r.y + 62.0},
                 {.width = 1.6, .ink = f.view.opening > 0.0 ? Token::hot : Token::rule});
    }
}

}  // namespace

void draw_fixture(const SheetPen& pen, const PlacedFixture& fixture, const Spray& spray) {
    using Draw = void (*)(const SheetPen&, const PlacedFixture&, const Spray&);
    static constexpr std::array<Draw, 8> by_kind{draw_sink, draw_basin,      draw_shower,
                                                 draw_bath, draw_tub,        draw_cooktop,
                                                 draw_oven, draw_room_heater};
    by_kind[static_cast<std::size_t>(fixture.view.kind)](pen, fixture, spray);
}

}  // namespace emberpath::screens
