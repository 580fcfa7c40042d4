#include "ui/screens/draw_flames.hpp"

#include <cmath>

#include "ui/screens/heater_plan.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Token;
using namespace heater_plan;

/// A pointed leaf standing on its base, leaning a little.
Path leaf(Point base, double half_width, double height, double lean) {
    const Point left{base.x - half_width, base.y}, right{base.x + half_width, base.y};
    const Point tip{base.x + lean, base.y - height};
    Path path = kit::bezier(left, {left.x - half_width * 0.4, base.y - height * 0.35},
                            {tip.x - half_width * 0.3, tip.y + height * 0.4}, tip);
    const Path back = kit::bezier(tip, {tip.x + half_width * 0.3, tip.y + height * 0.4},
                                  {right.x + half_width * 0.4, base.y - height * 0.35}, right);
    path.insert(path.end(), back.begin() + 1, back.end());
    return path;
}

/// Neighbouring flames never move in step, and each moves the same way at the same time of the simulation.
double wobble(int bar, double seconds) {
    return 0.6 * std::sin(seconds * 7.3 + bar * 2.1) + 0.4 * std::sin(seconds * 11.9 + bar * 4.7);
}

void draw_one(const SheetPen& pen, const FlameView& flame, const FlameMotion& motion, int bar) {
    const double sway = wobble(bar, motion.still ? 0.0 : motion.seconds);
    const double calm = 0.10 + 0.35 * flame.unrest;
    const double height = flame_max * (0.25 + 0.62 * flame.height) * (1.0 + calm * sway);
    const Point base{bar_left + bar_step * bar, bar_top};
    const double lean = sway * (0.4 + 2.0 * flame.unrest);
    const double lift = flame.unrest > 0.5 ? 2.0 + sway : 0.0;
    const Point foot{base.x, base.y - lift};
    const Path outer = leaf(foot, 3.6, height, lean);
    pen.fill(outer, {Token::cold, 0.22});
    pen.outline(outer, 1.0, Token::cold);
    pen.fill(leaf(foot, 2.2, height * 0.48, lean * 0.4), {Token::cold, 0.6});
    if (flame.yellow)
        pen.fill(
            leaf({foot.x + lean * 0.55, foot.y - height * 0.5}, 2.4, height * 0.62, lean * 0.6),
            Token::gas);
}

void draw_spark(const SheetPen& pen) {
    const Path bolt{{55.0, 127.0}, {57.5, 125.0}, {56.5, 129.0}, {60.0, 127.0}, {59.0, 133.0}};
    pen.line(bolt, {.width = 1.6, .ink = Token::ink});
    for (const Point ray : {Point{52.0, 121.0}, Point{61.0, 120.0}, Point{63.0, 127.0}})
        pen.line(kit::between({57.0, 126.0}, ray, 0.5), ray, {.width = 1.0, .ink = Token::ink});
}

}  // namespace

void draw_flames(const SheetPen& pen, const FlameView& flame, const FlameMotion& motion) {
    if (flame.lit)
        for (int bar = 0; bar < bars; ++bar) draw_one(pen, flame, motion, bar);
    if (flame.spark) draw_spark(pen);
}

}  // namespace emberpath::screens
