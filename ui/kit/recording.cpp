#include "ui/kit/recording.hpp"

#include <cmath>
#include <cstdio>

namespace emberpath::kit {

namespace {

/// To a tenth, without "-0".
std::string number(double value) {
    const double tenths = std::round(value * 10.0);
    char buffer[40];
    std::snprintf(buffer, sizeof buffer, "%g", tenths == 0.0 ? 0.0 : tenths / 10.0);
    return buffer;
}

std::string words(Point p) {
    return number(p.x) + "," + number(p.y);
}

std::string words(const Rect& r) {
    return words(Point{r.x, r.y}) + " " + number(r.w) + "x" + number(r.h);
}

std::string words(Ink ink) {
    std::string text(name_of(ink.token));
    if (ink.alpha < 1.0) text += "/" + number(ink.alpha * 100.0);
    return text;
}

std::string words(const Path& path) {
    std::string text;
    for (const Point p : path) text += " " + words(p);
    return text;
}

struct Writer {
    std::string& out;
    void operator()(const FillCommand& c) const {
        out += "fill " + words(c.ink) + words(c.outline) + "\n";
    }
    void operator()(const StrokeCommand& c) const {
        out += "stroke " + words(c.how.ink) + " " + number(c.how.width);
        if (c.how.closed) out += " closed";
        if (c.how.cap == Cap::round) out += " round";
        for (std::size_t i = 0; i < c.how.dash.size(); ++i)
            out += (i == 0 ? " dash " : ":") + number(c.how.dash[i]);
        if (c.how.phase != 0.0) out += " from " + number(c.how.phase);
        out += words(c.path) + "\n";
    }
    void operator()(const BoxCommand& c) const {
        out += "box " + words(c.ink) + " " + words(c.r) + "\n";
    }
    void operator()(const DiscCommand& c) const {
        out += "disc " + words(c.ink) + " " + words(c.centre) + " " + number(c.radius) + "\n";
    }
    void operator()(const TextCommand& c) const {
        out += "text " + words(c.style.ink) + " " + std::string(name_of(c.style.face)) + " " +
               number(c.style.size) + " " + words(c.baseline) + " \"" + c.text + "\"\n";
    }
    void operator()(const ClipCommand& c) const { out += "clip " + words(c.r) + "\n"; }
    void operator()(const UnclipCommand&) const { out += "unclip\n"; }
};

struct Player {
    Painter& painter;
    void operator()(const FillCommand& c) const { painter.fill(c.outline, c.ink); }
    void operator()(const StrokeCommand& c) const { painter.stroke(c.path, c.how); }
    void operator()(const BoxCommand& c) const { painter.box(c.r, c.ink); }
    void operator()(const DiscCommand& c) const { painter.disc(c.centre, c.radius, c.ink); }
    void operator()(const TextCommand& c) const { painter.text(c.baseline, c.text, c.style); }
    void operator()(const ClipCommand& c) const { painter.push_clip(c.r); }
    void operator()(const UnclipCommand&) const { painter.pop_clip(); }
};

}  // namespace

void Recording::fill(std::span<const Point> outline, Ink ink) {
    commands_.emplace_back(FillCommand{Path(outline.begin(), outline.end()), ink});
}
void Recording::stroke(std::span<const Point> path, const Stroke& how) {
    commands_.emplace_back(StrokeCommand{Path(path.begin(), path.end()), how});
}
void Recording::box(const Rect& r, Ink ink) {
    commands_.emplace_back(BoxCommand{r, ink});
}
void Recording::disc(Point centre, double radius, Ink ink) {
    commands_.emplace_back(DiscCommand{centre, radius, ink});
}
void Recording::text(Point baseline, std::string_view utf8, const TextStyle& style) {
    commands_.emplace_back(TextCommand{baseline, std::string(utf8), style});
}
void Recording::push_clip(const Rect& r) {
    commands_.emplace_back(ClipCommand{r});
}
void Recording::pop_clip() {
    commands_.emplace_back(UnclipCommand{});
}

void Recording::play(Painter& painter) const {
    for (const auto& command : commands_) std::visit(Player{painter}, command);
}

std::string Recording::as_text() const {
    std::string out;
    for (const auto& command : commands_) std::visit(Writer{out}, command);
    return out;
}

}  // namespace emberpath::kit
