#include "ui/screens/draw_heater.hpp"

#include <cmath>

#include "ui/screens/draw_flames.hpp"
#include "ui/screens/draw_pipes.hpp"
#include "ui/screens/heater_plan.hpp"
#include "ui/screens/house_plan.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;
using namespace heater_plan;

constexpr Rect window{56.0, 90.0, 78.0, 46.0};  // in the front cover
constexpr Point fan_at{93.0, 182.0};
constexpr double fan_radius = 13.0;

Path joined(std::initializer_list<Path> parts) {
    Path all;
    for (const Path& p : parts) all.insert(all.end(), p.begin(), p.end());
    return all;
}

void draw_case(const SheetPen& pen) {
    pen.box({0.0, 0.0, heater_units.w, heater_units.h}, Token::paper, kit::line_width::heater_case,
            Token::ink, 8.0);
}

void draw_chamber(const SheetPen& pen) {
    const Path outline{{42.0, 31.0},  {54.0, 14.0},   {126.0, 14.0},
                       {138.0, 31.0}, {138.0, 162.0}, {42.0, 162.0}};
    pen.outline(outline, kit::line_width::part, Token::ink);
}

void draw_fins(const SheetPen& pen) {
    for (double x = 52.0; x < 131.0; x += 5.0)
        pen.line({x, 24.0}, {x, 76.0}, {.width = 1.0, .ink = Token::rule});
    for (const double y : {23.0, 77.0})
        pen.line({49.0, y}, {133.0, y}, {.width = 3.0, .ink = Token::ink});
}

/// A pipe on a paper halo, so that it reads in front of what it crosses.
void draw_pipe(const SheetPen& pen, Service service, const Path& path) {
    pen.line(path, {.width = stroke_of(service).width + 5.0, .ink = Token::paper});
    pen.line(path, stroke_of(service));
}

void draw_water(const SheetPen& pen) {
    const Path cold = joined({Path{{cold_x, heater_units.h}, {cold_x, 33.0}, {50.0, 33.0}},
                              kit::arc({50.0, 39.0}, 6.0, 270.0, 180.0)});
    const Path hot = joined(
        {kit::arc({50.0, 39.0}, 6.0, 180.0, 90.0), kit::arc({132.0, 50.5}, 5.5, 270.0, 450.0),
         kit::arc({50.0, 62.0}, 6.0, 270.0, 90.0),
         Path{{149.0, 68.0}, {149.0, 203.0}, {hot_x, 203.0}, {hot_x, heater_units.h}}});
    draw_pipe(pen, Service::hot, hot);
    draw_pipe(pen, Service::cold, cold);
    pen.box({cold_x - 8.0, 177.0, 16.0, 24.0}, Token::paper, kit::line_width::part, Token::ink,
            3.0);
    pen.circle({cold_x, 189.0}, 5.0, 1.6, Token::cold);
    pen.line({cold_x - 5.0, 189.0}, {cold_x + 5.0, 189.0}, {.width = 1.2, .ink = Token::cold});
    pen.line({cold_x, 184.0}, {cold_x, 194.0}, {.width = 1.2, .ink = Token::cold});
}

void draw_burner(const SheetPen& pen) {
    const double last = bar_left + bar_step * (bars - 1);
    draw_pipe(pen, Service::gas,
              Path{{gas_x, heater_units.h}, {gas_x, 154.0}, {last + 3.0, 154.0}});
    for (int i = 0; i < bars; ++i) {
        const double x = bar_left + bar_step * i;
        pen.line({x, 154.0}, {x, 148.0}, {.width = 1.6, .ink = Token::gas});
        pen.box({x - 3.0, bar_top, 6.0, 14.0}, Token::wash, 1.2, Token::ink, 2.0);
    }
}

void draw_gas_valve(const SheetPen& pen) {
    pen.box({gas_x - 12.0, 177.0, 24.0, 28.0}, Token::paper, kit::line_width::part, Token::ink,
            3.0);
    draw_valve(pen, {gas_x, 191.0}, true, Service::gas);
}

void draw_board(const SheetPen& pen) {
    const kit::Stroke wire{.width = 1.0, .ink = Token::power};
    pen.line(Path{{30.0, 52.0}, {36.0, 52.0}, {36.0, 184.0}, {34.0, 184.0}}, wire);
    pen.line(Path{{30.0, 66.0}, {33.0, 66.0}, {33.0, 116.0}, {36.0, 116.0}}, wire);
    pen.box({9.0, 39.0, 21.0, 120.0}, Token::paper, kit::line_width::control, Token::ink);
    for (int i = 0; i < 5; ++i)
        pen.box({12.0, 45.0 + 9.0 * i, 5.0, 4.0}, Token::wash, 0.8, Token::ink);
    pen.box({12.0, 98.0, 14.0, 15.0}, Token::wash, 0.8, Token::ink);
    for (int i = 0; i < 6; ++i) pen.dot({11.5 + 3.2 * i, 138.0}, 1.2, Token::ink);
    pen.box({11.0, 146.0, 17.0, 9.0}, Token::wash, 1.2, Token::power);
}

void draw_electrodes(const SheetPen& pen) {
    const kit::Stroke rod{.width = 1.6, .ink = Token::ink};
    pen.line(Path{{42.0, 117.0}, {50.0, 118.0}, {55.0, 127.0}}, rod);
    pen.line(Path{{138.0, 119.0}, {129.0, 120.0}, {124.0, 127.0}}, rod);
    pen.box({35.0, 113.0, 7.0, 7.0}, Token::paper, 1.2, Token::ink);
    pen.box({138.0, 115.0, 7.0, 7.0}, Token::paper, 1.2, Token::ink);
}

void draw_fan_housing(const SheetPen& pen) {
    for (const double x : {87.0, 99.0})
        pen.line({x, 162.0}, {x, fan_at.y - 8.0},
                 {.width = kit::line_width::part, .ink = Token::ink});
    kit::shape(pen.stage().paint(), kit::circle(pen.at(fan_at), fan_radius * pen.scale()),
               Token::paper, {.width = kit::line_width::part, .ink = Token::ink});
}

void draw_fan_blades(const SheetPen& pen, const HeaterView& heater, const HeaterMotion& motion) {
    const double slowed = std::min(heater.fan_turns_per_s, 1.2);  // faster would flicker
    const double turn = motion.still ? 0.0 : std::fmod(motion.seconds * slowed, 1.0) * 360.0;
    const double r = fan_radius * pen.scale();
    const Point c = pen.at(fan_at);
    for (int blade = 0; blade < 3; ++blade) {
        const double from = turn + 120.0 * blade;
        const Point tip = kit::arc(c, r * 0.86, from + 20.0, from + 60.0).front();
        const Path leaf =
            joined({Path{c},
                    kit::bezier(c, kit::arc(c, r * 0.62, from - 40.0, from).front(),
                                kit::arc(c, r * 0.95, from - 20.0, from).front(), tip),
                    kit::bezier(tip, kit::arc(c, r * 0.62, from + 40.0, from + 60.0).front(),
                                kit::arc(c, r * 0.3, from + 30.0, from + 60.0).front(), c)});
        kit::outline(pen.stage().paint(), leaf, 1.2, Token::ink);
    }
    pen.dot(fan_at, 2.0, Token::ink);
}

void draw_open(const SheetPen& pen, const HeaterView& heater, const HeaterMotion& motion) {
    draw_case(pen);
    draw_chamber(pen);
    draw_fins(pen);
    draw_fan_housing(pen);
    if (heater.board_shown) draw_board(pen);
    draw_water(pen);
    draw_burner(pen);
    draw_gas_valve(pen);
    draw_electrodes(pen);
    pen.stage().use(kit::Layer::moving);
    draw_fan_blades(pen, heater, motion);
    if (heater.flame) draw_flames(pen, *heater.flame, {motion.seconds, motion.still});
    pen.stage().use(kit::Layer::still);
}

/// The front cover hides all but the burner window and the display.
void draw_closed(const SheetPen& pen, const HeaterView& heater, const HeaterMotion& motion) {
    draw_case(pen);
    pen.box({7.0, 7.0, heater_units.w - 14.0, heater_units.h - 14.0}, Token::paper, 1.0,
            Token::rule, 5.0);
    for (const Point screw :
         {Point{14.0, 14.0}, Point{176.0, 14.0}, Point{14.0, 210.0}, Point{176.0, 210.0}})
        pen.circle(screw, 2.5, 1.0, Token::rule);
    pen.box(window, Token::wash, kit::line_width::part, Token::ink, 4.0);
    pen.box({68.0, 152.0, 54.0, 18.0}, Token::plate, 1.0, Token::ink, 2.0);
    pen.box({73.0, 156.0, 30.0, 10.0}, Token::lcd, 0.8, Token::ink);
    if (!heater.flame) return;
    kit::Stage& stage = pen.stage();
    stage.use(kit::Layer::moving);
    stage.clip(kit::inset(pen.at(window), 1.5));
    draw_flames(pen, *heater.flame, {motion.seconds, motion.still});
    stage.unclip();
    stage.use(kit::Layer::still);
}

}  // namespace

void draw_heater(const SheetPen& pen, const HeaterView& heater, const HeaterMotion& motion) {
    if (heater.cover_off)
        draw_open(pen, heater, motion);
    else
        draw_closed(pen, heater, motion);
}

}  // namespace emberpath::screens
