#include "ui/screens/draw_pipes.hpp"

#include <cmath>
#include <optional>

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

constexpr double halo = 4.0;          // paper beside a bridging pipe [px]
constexpr double per_letter = 150.0;  // length of pipe for one letter [px]
constexpr double head = 9.0;          // length of an arrow head [px]
constexpr double clear_of_letter = 15.0;

std::string_view letter_of(Service service) {
    switch (service) {
        case Service::gas:
            return "G";
        case Service::cold:
            return "C";
        case Service::hot:
            return "H";
        default:
            return "";
    }
}

/// The path without its first `skip` units.
Path without_start(const Path& path, double skip) {
    Path rest{kit::station_at(path, skip).at};
    double run = 0.0;
    for (std::size_t i = 1; i < path.size(); ++i) {
        run += kit::distance(path[i - 1], path[i]);
        if (run > skip) rest.push_back(path[i]);
    }
    return rest;
}

void draw_line(const SheetPen& pen, const PipeRun& pipe) {
    if (pipe.rises) {
        kit::Stroke wide{.width = stroke_of(pipe.service).width + 2.0 * halo, .ink = Token::paper};
        pen.line(without_start(pipe.path, pipe.own_main + halo / pen.scale() + 1.0), wide);
    }
    pen.line(pipe.path, stroke_of(pipe.service));
}

/// Points where letters and heads would be unclear: corners, junctions, valves, crossings [units].
std::vector<Point> busy_points(const HousePlan& plan) {
    std::vector<Point> busy = plan.junctions;
    for (const Valve& v : plan.valves) busy.push_back(v.at);
    for (const PipeRun& p : plan.pipes) {
        busy.insert(busy.end(), p.path.begin(), p.path.end());
        for (const PipeRun& q : plan.pipes)
            for (std::size_t i = 1; i < p.path.size(); ++i)
                for (std::size_t j = 1; j < q.path.size(); ++j) {
                    const Rect a = kit::bounds_of(std::span(p.path).subspan(i - 1, 2));
                    const Rect b = kit::bounds_of(std::span(q.path).subspan(j - 1, 2));
                    const bool crossing = a.w == 0.0 && b.h == 0.0 && a.x > b.x &&
                                          a.x < b.right() && b.y > a.y && b.y < a.bottom();
                    if (crossing) busy.push_back({a.x, b.y});
                }
    }
    return busy;
}

class Lettering {
  public:
    Lettering(const SheetPen& pen, const HousePlan& plan, LabelPlacer& placer)
        : pen_(pen), busy_(busy_points(plan)), placer_(placer) {}

    /// Letters along each straight leg; where arrow heads may stand is kept for later.
    void letter(const PipeRun& pipe) {
        for (std::size_t i = 1; i < pipe.path.size(); ++i) {
            const Point a = pen_.at(pipe.path[i - 1]), b = pen_.at(pipe.path[i]);
            const double leg = kit::distance(a, b);
            if (leg < 34.0) continue;
            const int n = std::max(1, static_cast<int>(leg / per_letter + 0.4));
            for (int k = 0; k < n; ++k) {
                const double share = (k + start_of(pipe.service)) / n;
                if (pipe.letters) put_letter(pipe.service, a, b, share * leg);
                if (leg > 70.0) put_head(pipe, a, b, std::fmod(share + 0.5 / n, 1.0) * leg);
            }
        }
    }

    [[nodiscard]] const std::vector<std::pair<kit::Station, Service>>& heads() const {
        return heads_;
    }
    [[nodiscard]] const std::vector<Rect>& letters() const { return letters_; }

  private:
    static double start_of(Service service) {
        return service == Service::gas ? 0.36 : service == Service::cold ? 0.5 : 0.62;
    }
    [[nodiscard]] bool clear(Point p, double distance) const {
        for (const Point b : busy_)
            if (kit::distance(pen_.at(b), p) < distance) return false;
        return true;
    }
    /// The station nearest to `along` that is clear and free; nothing when there is none near.
    [[nodiscard]] std::optional<kit::Station> find(Point a, Point b, double along,
                                                   double room) const {
        const Path leg{a, b};
        const double all = kit::distance(a, b);
        for (int step = 0; step < 24; ++step)
            for (const double way : {1.0, -1.0}) {
                const double s = along + way * step * 4.0;
                if (s < room * 0.6 || s > all - room * 0.6) continue;
                const kit::Station station = kit::station_at(leg, s);
                if (clear(station.at, room) && placer_.is_free(kit::around(station.at, 12.0, 12.0)))
                    return station;
            }
        return std::nullopt;
    }
    void put_letter(Service service, Point a, Point b, double along) {
        const auto station = find(a, b, along, clear_of_letter);
        if (!station) return;
        const Rect r = kit::around(station->at, 13.0, 13.0);
        placer_.occupy(r);
        letters_.push_back(r);
        pen_.stage().paint().box(r, Token::paper);
        pen_.stage().text(r, letter_of(service),
                          {kit::Face::bold, kit::type_size::label, ink_of(service)},
                          kit::Align::centre);
    }
    void put_head(const PipeRun& pipe, Point a, Point b, double along) {
        const auto station = find(a, b, along, head + 2.0);
        if (station && !pipe.moving) heads_.emplace_back(*station, pipe.service);
    }

    const SheetPen& pen_;
    std::vector<Point> busy_;
    LabelPlacer& placer_;
    std::vector<std::pair<kit::Station, Service>> heads_;
    std::vector<Rect> letters_;
};

/// Heads that travel with the flow; none over a letter.
void draw_moving_heads(const SheetPen& pen, const PipeRun& pipe, const PipeMotion& motion,
                       const std::vector<Rect>& letters) {
    constexpr double spacing = 72.0, px_per_s = 24.0;
    const Path path = pen.at(pipe.path);
    const double all = kit::length_of(path);
    const double phase =
        motion.still ? spacing / 2.0 : std::fmod(motion.seconds * px_per_s, spacing);
    for (double s = phase; s < all - head; s += spacing) {
        if (s < head) continue;
        const kit::Station station = kit::station_at(path, s);
        bool free = true;
        for (const Rect& r : letters) free = free && !kit::outset(r, 5.0).contains(station.at);
        if (free) draw_arrow_head(pen.stage().paint(), station, ink_of(pipe.service));
    }
}

}  // namespace

Token ink_of(Service service) {
    switch (service) {
        case Service::gas:
            return Token::gas;
        case Service::cold:
            return Token::cold;
        case Service::hot:
            return Token::hot;
        case Service::power:
            return Token::power;
        case Service::flue:
            return Token::flue;
    }
    return Token::ink;
}

kit::Stroke stroke_of(Service service) {
    kit::Stroke how{.width = kit::line_width::water, .ink = ink_of(service)};
    if (service == Service::gas) how.width = kit::line_width::gas;
    if (service == Service::hot) how.dash = {13.0, 3.5, 3.0, 3.5};
    if (service == Service::power) {
        how.width = kit::line_width::part;
        how.dash = {6.0, 4.0};
    }
    return how;
}

void draw_valve(const SheetPen& pen, Point at, bool upright, Service service) {
    const Point c = pen.at(at);
    constexpr double along = 8.0, across = 6.0;
    const Path body = upright ? Path{{c.x - across, c.y - along},
                                     {c.x + across, c.y - along},
                                     {c.x - across, c.y + along},
                                     {c.x + across, c.y + along}}
                              : Path{{c.x - along, c.y - across},
                                     {c.x - along, c.y + across},
                                     {c.x + along, c.y - across},
                                     {c.x + along, c.y + across}};
    const Path first{body[0], body[1], c}, second{c, body[3], body[2]};
    const kit::Stroke edge{.width = 1.6, .ink = ink_of(service)};
    kit::Painter& p = pen.stage().paint();
    p.box(upright ? kit::around(c, 6.0, 2.0 * along) : kit::around(c, 2.0 * along, 6.0),
          Token::paper);
    kit::shape(p, first, Token::paper, edge);
    kit::shape(p, second, Token::paper, edge);
    const Point spindle = upright ? Point{c.x + 8.0, c.y} : Point{c.x, c.y - 8.0};
    const Point bar = upright ? Point{0.0, 5.0} : Point{5.0, 0.0};
    kit::line(p, c, spindle, edge);
    kit::line(p, spindle - bar, spindle + bar, {.width = 2.0, .ink = ink_of(service)});
}

void draw_arrow_head(kit::Painter& painter, const kit::Station& station, kit::Ink ink) {
    const Point d = station.direction, across{-d.y, d.x};
    const Point tip = station.at + d * (head / 2.0), base = station.at - d * (head / 2.0);
    const Point triangle[] = {tip, base + across * 3.8, base - across * 3.8};
    painter.fill(triangle, ink);
}

void draw_pipes(const SheetPen& pen, const HousePlan& plan, const PipeMotion& motion,
                LabelPlacer& placer) {
    kit::Stage& stage = pen.stage();
    for (const bool bridging : {false, true})
        for (const PipeRun& pipe : plan.pipes)
            if (pipe.rises == bridging) draw_line(pen, pipe);
    for (std::size_t i = 0; i < plan.junctions.size(); ++i)
        pen.dot(plan.junctions[i], 4.0, ink_of(plan.pipes[plan.junction_pipes[i]].service));
    for (const Valve& v : plan.valves) {
        draw_valve(pen, v.at, v.upright, v.service);
        placer.occupy(kit::around(pen.at(v.at), 24.0, 22.0));
    }
    Lettering lettering(pen, plan, placer);
    for (const PipeRun& pipe : plan.pipes) lettering.letter(pipe);
    for (const auto& [station, service] : lettering.heads())
        draw_arrow_head(stage.paint(), station, ink_of(service));
    stage.use(kit::Layer::moving);
    for (const PipeRun& pipe : plan.pipes)
        if (pipe.moving) draw_moving_heads(pen, pipe, motion, lettering.letters());
    stage.use(kit::Layer::still);
}

}  // namespace emberpath::screens
