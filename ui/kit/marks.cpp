#include <array>
#include <string>

#include "ui/kit/widgets.hpp"

namespace emberpath::kit {

namespace {

Stroke solid(double width, Ink ink) {
    return {.width = width, .ink = ink};
}

void tick(Painter& p, Point c, double r, Ink ink) {
    const Point path[] = {{c.x - r * 0.5, c.y + r * 0.02},
                          {c.x - r * 0.12, c.y + r * 0.38},
                          {c.x + r * 0.5, c.y - r * 0.38}};
    p.stroke(path, solid(std::max(1.6, r * 0.24), ink));
}

void cross(Painter& p, Point c, double r, Ink ink) {
    line(p, {c.x - r, c.y - r}, {c.x + r, c.y + r}, solid(1.8, ink));
    line(p, {c.x + r, c.y - r}, {c.x - r, c.y + r}, solid(1.8, ink));
}

void hazard(Painter& p, Point c, double r) {
    const Point triangle[] = {
        {c.x, c.y - r * 1.1}, {c.x + r * 1.18, c.y + r}, {c.x - r * 1.18, c.y + r}};
    p.fill(triangle, Token::danger);
    p.box({c.x - r * 0.14, c.y - r * 0.42, r * 0.28, r * 0.78}, Token::paper);
    p.box({c.x - r * 0.14, c.y + r * 0.52, r * 0.28, r * 0.26}, Token::paper);
}

void half_disc(Painter& p, Point c, double r, Ink ink) {
    p.fill(arc(c, r, 90.0, 270.0), ink);
}

/// Words for the accessible name belong to the row; these are only pictures.
void balloon_number(Stage& stage, Point c, int number, double radius, Ink ink) {
    const double size = number > 99 ? radius * 0.95 : radius * 1.2;
    const TextStyle style{Face::bold, std::max(size, 10.0), ink};
    const std::string digits = std::to_string(number);
    const double w = stage.width(digits, style);
    const double cap = stage.metrics().cap_height_em(style.face) * style.size;
    stage.paint().text({c.x - w / 2.0, c.y + cap / 2.0}, digits, style);
}

}  // namespace

void draw_mark(Painter& p, Point c, Mark mark, double r) {
    switch (mark) {
        case Mark::on:
            ring(p, c, r - 0.8, line_width::part, Token::ink);
            line(p, {c.x, c.y - r * 0.45}, {c.x, c.y + r * 0.45},
                 solid(line_width::part, Token::ink));
            return;
        case Mark::off:
            ring(p, c, r - 0.8, line_width::part, Token::ink);
            line(p, {c.x - r * 0.45, c.y}, {c.x + r * 0.45, c.y},
                 solid(line_width::part, Token::ink));
            return;
        case Mark::proved:
            ring(p, c, r - 0.8, line_width::part, Token::ok);
            tick(p, c, r * 0.85, Token::ok);
            return;
        case Mark::unknown: {
            const double step = 2.0 * 3.141592653589793 * (r - 0.8) / 16.0;
            p.stroke(circle(c, r - 0.8),
                     {.width = 1.4, .ink = Token::ink2, .dash = {step, step}, .closed = true});
            return;
        }
        case Mark::hazard:
            hazard(p, c, r);
            return;
        case Mark::held:
            ring(p, c, r - 0.8, line_width::part, Token::ink);
            p.disc(c, r * 0.58, Token::ink);
            return;
        case Mark::doubtful:
            ring(p, c, r - 0.8, line_width::part, Token::ink);
            half_disc(p, c, r * 0.58, Token::ink);
            return;
        case Mark::struck:
            ring(p, c, r - 0.8, 1.3, Token::ink2);
            line(p, {c.x - r * 0.5, c.y + r * 0.5}, {c.x + r * 0.5, c.y - r * 0.5},
                 solid(1.3, Token::ink2));
            return;
        case Mark::tick:
            tick(p, c, r, Token::ok);
            return;
        case Mark::cross:
            cross(p, c, r * 0.5, Token::danger);
            return;
    }
}

void balloon(Stage& stage, Point c, int number, Balloon look, double radius) {
    Painter& p = stage.paint();
    switch (look) {
        case Balloon::filled:
            p.disc(c, radius, Token::mark);
            balloon_number(stage, c, number, radius, Token::paper);
            return;
        case Balloon::open:
            p.disc(c, radius, Token::paper);
            ring(p, c, radius - 0.8, 1.5, Token::mark);
            balloon_number(stage, c, number, radius, Token::mark);
            return;
        case Balloon::expected: {
            const double step = 2.0 * 3.141592653589793 * (radius - 1.0) / 40.0;
            p.stroke(circle(c, radius - 1.0), {.width = 2.0,
                                               .ink = Token::mark,
                                               .dash = {step * 1.2, step * 0.8},
                                               .closed = true});
            balloon_number(stage, c, number, radius * 0.75, Token::mark);
            return;
        }
    }
}

double balloons_before(Stage& stage, Point right, std::span<const int> numbers, Balloon look) {
    double x = right.x;
    for (std::size_t i = numbers.size(); i-- > 0;) {
        balloon(stage, {x - 10.0, right.y}, numbers[i], look, 9.5);
        x -= 23.0;
    }
    return x;
}

}  // namespace emberpath::kit
