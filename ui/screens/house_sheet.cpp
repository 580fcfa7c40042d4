#include "ui/screens/draw_heater.hpp"
#include "ui/screens/draw_house.hpp"
#include "ui/screens/draw_pipes.hpp"
#include "ui/screens/draw_points.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Point;
using kit::Rect;

// Between these the drawing fills its place; below the least one it is moved about instead.
constexpr double least_scale = 0.74, most_scale = 1.6;

double fitting_scale(const Rect& r, const Rect& extent, const JobView& job) {
    const double fit = std::min({(r.w - 12.0) / extent.w, (r.h - 10.0) / extent.h, most_scale});
    return (job.whole ? fit : std::max(fit, least_scale)) * job.camera.zoom;
}

const PlacedFixture* fixture_of(const HousePlan& plan, int index) {
    for (const PlacedFixture& f : plan.fixtures)
        if (f.index == index) return &f;
    return nullptr;
}

/// What is pressed to select a part that has no mark.
Rect part_bounds(const SheetPen& pen, const HousePlan& plan, const PointView& v, Point target) {
    switch (v.spot) {
        case Spot::gas_source:
            return pen.at(Rect{plan.source.x + 2.0, plan.source.y + 14.0, plan.source.w - 4.0,
                               plan.source.h - 16.0});
        case Spot::heater:
            return pen.at(Rect{plan.heater.x + 58.0, plan.heater.y + 84.0, 70.0, 48.0});
        case Spot::power_point:
            return kit::around(target, 26.0, 36.0);
        case Spot::flue_terminal:
            return kit::around(target - Point{4.0, 0.0}, 26.0, 30.0);
        case Spot::appliance:
            if (const PlacedFixture* f = fixture_of(plan, v.fixture))
                return pen.at(Rect{f->r.x + 6.0, f->r.y - 12.0, f->r.w - 12.0, 64.0});
            break;
        default:
            break;
    }
    return kit::around(target, 26.0, 26.0);
}

std::vector<PlacedPoint> place_points(const SheetPen& pen, const HousePlan& plan,
                                      const SiteView& site, LabelPlacer& placer) {
    std::vector<PlacedPoint> placed;
    for (const bool marks : {false, true})  // parts stand where they stand; marks make way
        for (const PointView& v : site.points) {
            const auto it = plan.anchors.find({v.spot, v.fixture});
            if (it == plan.anchors.end() || (v.shape != PointShape::part) != marks) continue;
            const Point target = pen.at(it->second.target);
            if (marks) {
                placed.push_back(place_mark(v, target, pen.at(it->second.mark), placer));
            } else {
                const Rect bounds = part_bounds(pen, plan, v, target);
                placer.occupy(bounds);
                placed.push_back({&v, target, target, bounds, false});
            }
        }
    return placed;
}

/// Words beside a thing: the longest form that finds room, at the first place that is free.
struct Words {
    std::vector<std::string> forms;  // a newline makes two lines
    Rect beside;
};

std::vector<std::string> lines_of(const std::string& text) {
    const auto cut = text.find('\n');
    if (cut == std::string::npos) return {text};
    return {text.substr(0, cut), text.substr(cut + 1)};
}

bool put_form(kit::Stage& stage, const std::string& form, const Rect& b, LabelPlacer& placer) {
    const auto lines = lines_of(form);
    double w = 0.0;
    for (const std::string& l : lines) w = std::max(w, stage.width(l, kit::style::row_quiet));
    constexpr double step = 15.0;
    w += 2.0;
    const double h = step * static_cast<double>(lines.size()) + 1.0;
    const double mid_x = b.centre().x - w / 2.0, mid_y = b.centre().y - h / 2.0;
    const double up = b.y - h - 2.0, down = b.bottom() + 2.0;
    const Rect places[] = {{mid_x, up, w, h},
                           {b.x, up, w, h},
                           {b.right() - w, up, w, h},
                           {b.right() + 5.0, mid_y, w, h},
                           {b.x - w - 5.0, mid_y, w, h},
                           {mid_x, down, w, h},
                           {b.x, down, w, h},
                           {b.right() - w, down, w, h}};
    Rect r = placer.place(places);
    if (r.empty() || !stage.shows_whole(r)) return false;
    r.h = step;
    for (const std::string& l : lines) {
        stage.text(r, l, kit::style::row_quiet);
        r.y += step;
    }
    return true;
}

void put_words(kit::Stage& stage, const Words& words, LabelPlacer& placer) {
    for (const std::string& form : words.forms)
        if (put_form(stage, form, words.beside, placer)) return;
}

/// "Power point", and in two lines where there is less room.
std::vector<std::string> forms_of(const std::string& note) {
    std::string two = note;
    if (const auto space = two.find(' '); space != std::string::npos) two[space] = '\n';
    return {note, two};
}

/// In a small drawing only what is to be found first: what each tap does, and where the gas comes from.
void draw_words(const SheetPen& pen, const HousePlan& plan, std::span<const PlacedPoint> points,
                LabelPlacer& placer) {
    kit::Stage& stage = pen.stage();
    const bool roomy = pen.scale() > 1.15, small = pen.scale() < least_scale_for_words;
    for (const PlacedPoint& p : points) {
        const PointView& v = *p.view;
        if (v.spot == Spot::tap || v.spot == Spot::appliance) {
            const PlacedFixture* f = fixture_of(plan, v.fixture);
            if (f == nullptr || f->view.state.empty()) continue;
            const std::string name = kit::capitalised(f->view.name), state = f->view.state;
            std::vector<std::string> forms{name + " " + state, name + "\n" + state};
            if (name.find(' ') != std::string::npos)
                forms.push_back(forms_of(name + " " + state).back());
            forms.push_back(state);
            put_words(stage, {forms, p.bounds}, placer);
        } else if (!v.note.empty() && (roomy || v.shape == PointShape::part)) {
            const bool source = v.spot == Spot::gas_source;
            if (small && !source) continue;
            put_words(stage, {forms_of(v.note), source ? pen.at(plan.source) : p.bounds}, placer);
        }
    }
}

void keep_walls_free(const SheetPen& pen, const HousePlan& plan, LabelPlacer& placer) {
    for (std::size_t i = 1; i < plan.rooms.size(); ++i) {
        const Rect& r = plan.rooms[i].r;
        placer.occupy(pen.at(Rect{r.x - 5.0, r.y, 5.0, r.h}));
    }
    const Rect& h = plan.house;
    placer.occupy(pen.at(Rect{h.x, h.y, wall, h.h}));
    placer.occupy(pen.at(Rect{h.right() - wall, h.y, wall, h.h}));
    placer.occupy(pen.at(Rect{h.x, h.y, h.w, 8.0}));
    placer.occupy(pen.at(Rect{h.x, h.bottom() - 8.0, h.w, 8.0}));
    const double flue_left = plan.flue.back().x - 16.0;
    placer.occupy(pen.at(Rect{flue_left, 40.0, plan.flue.front().x - flue_left + 10.0, 26.0}));
    placer.occupy(pen.at(Rect{h.x + 15.0, 70.0, 24.0, 40.0}));
}

/// What words and balloons must not cover.
void keep_drawn_things_free(const SheetPen& pen, const HousePlan& plan, LabelPlacer& placer) {
    placer.occupy(pen.at(plan.heater));
    placer.occupy(pen.at(plan.source));
    for (const PlacedFixture& f : plan.fixtures) {
        const Rect& r = f.r;
        if (f.view.kind == FixtureKind::shower) {
            placer.occupy(pen.at(Rect{r.x + 40.0, 86.0, 62.0, 120.0}));
            placer.occupy(pen.at(Rect{r.x + 40.0, 206.0, 36.0, 104.0}));
        } else {
            placer.occupy(pen.at(Rect{r.x, r.y - 2.0, r.w, 56.0}));
            const bool has_tap = f.view.kind != FixtureKind::room_heater &&
                                 f.view.kind != FixtureKind::cooktop &&
                                 f.view.kind != FixtureKind::oven;
            if (has_tap) placer.occupy(pen.at(Rect{r.centre().x - 16.0, r.y - 24.0, 32.0, 24.0}));
        }
    }
    for (const PipeRun& pipe : plan.pipes)
        for (std::size_t i = 1; i < pipe.path.size(); ++i) {
            const Rect leg = kit::bounds_of(std::span(pipe.path).subspan(i - 1, 2));
            placer.occupy(kit::outset(pen.at(leg), 2.0));
        }
    keep_walls_free(pen, plan, placer);
}

}  // namespace

Rect draw_house_sheet(kit::Stage& stage, const Rect& r, const JobView& job, std::string_view tag) {
    const HousePlan plan = plan_of(job.site);
    const double scale = fitting_scale(r, plan.extent, job);
    const Placed placed = place_sheet(stage, {r, plan.extent, scale}, job,
                                      [&](const PointView& v) -> std::optional<Point> {
                                          const auto it = plan.anchors.find({v.spot, v.fixture});
                                          if (it == plan.anchors.end()) return std::nullopt;
                                          return it->second.mark;
                                      });
    const SheetPen pen(stage, placed.origin, scale);
    const bool still = job.reduce_motion || job.rail.paused;
    stage.clip(r);
    LabelPlacer placer(kit::united(r, pen.at(plan.extent)));
    std::vector<PlacedPoint> points = place_points(pen, plan, job.site, placer);
    in_reading_order(points);
    for (const PlacedPoint& p : points)
        if (!tag.empty() && p.view->tag == tag) {
            placer.occupy(leader_to(p.bounds, r));
            placer.occupy(kit::outset(p.bounds, 2.0 * cloud_width));
        }
    draw_building(pen, plan, job.site, placer);
    draw_pipes(pen, plan, {job.site.seconds, still}, placer);
    draw_flue(pen, plan);
    draw_supplies(pen, plan, job.site);
    for (const PlacedFixture& f : plan.fixtures) draw_fixture(pen, f, {job.site.seconds, still});
    draw_heater(pen.moved({plan.heater.x, plan.heater.y}), job.site.heater,
                {job.site.seconds, still});
    keep_drawn_things_free(pen, plan, placer);
    {
        const auto group = stage.inside({.id = "sheet.points",
                                         .role = kit::Role::group,
                                         .name = "House, points and parts",
                                         .bounds = r,
                                         .moves = kit::Moves::nearest,
                                         .roam = placed.roam});
        draw_points(stage, points, job.selected, placer);
    }
    draw_words(pen, plan, points, placer);
    stage.unclip();
    for (const PlacedPoint& p : points)
        if (p.view->tag == tag) return p.bounds;
    return {};
}

}  // namespace emberpath::screens
