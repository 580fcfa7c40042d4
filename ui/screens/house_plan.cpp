#include "ui/screens/house_plan.hpp"

#include "ui/screens/heater_plan.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;

// Heights of the drawing, from the top.
constexpr double roof_y = 18.0, floor_y = 310.0, slab = 8.0;
constexpr double hot_y = 330.0, gas_y = 343.0, cold_y = 357.0, bottom_y = 366.0;
constexpr double counter_y = 234.0;

// Places from the left.
constexpr double outside_w = 210.0, heater_room_w = 322.0;
constexpr double heater_x = 296.0, heater_y = 68.0;

bool is_tap(FixtureKind kind) {
    return kind != FixtureKind::cooktop && kind != FixtureKind::oven &&
           kind != FixtureKind::room_heater;
}

double width_of(FixtureKind kind) {
    switch (kind) {
        case FixtureKind::cooktop:
            return 76.0;
        case FixtureKind::oven:
            return 64.0;
        case FixtureKind::room_heater:
            return 70.0;
        case FixtureKind::sink:
            return 66.0;
        case FixtureKind::basin:
            return 62.0;
        case FixtureKind::laundry_tub:
            return 66.0;
        case FixtureKind::shower:
            return 116.0;
        case FixtureKind::bath:
            return 116.0;
    }
    return 66.0;
}

double top_of(FixtureKind kind) {
    return kind == FixtureKind::shower ? 100.0 : counter_y;
}

/// Where pipes come up at a fixture: cold, hot, gas.
struct Risers {
    double cold = 0.0, hot = 0.0, gas = 0.0;
};
Risers risers_of(const Rect& r, FixtureKind kind) {
    switch (kind) {
        case FixtureKind::shower:
            return {r.x + 74.0, r.x + 92.0, 0.0};
        case FixtureKind::bath:
            return {r.x + 82.0, r.x + 100.0, 0.0};
        case FixtureKind::cooktop:
        case FixtureKind::oven:
        case FixtureKind::room_heater:
            return {0.0, 0.0, r.centre().x};
        default:
            return {r.centre().x - 9.0, r.centre().x + 9.0, 0.0};
    }
}

/// How far up a riser goes: to the mixer of a shower, to the tap elsewhere.
double riser_top(FixtureKind kind) {
    switch (kind) {
        case FixtureKind::shower:
            return 198.0;
        case FixtureKind::bath:
            return counter_y + 4.0;
        case FixtureKind::cooktop:
            return counter_y + 3.0;
        case FixtureKind::oven:
            return counter_y + 44.0;
        case FixtureKind::room_heater:
            return counter_y + 34.0;
        default:
            return counter_y + 12.0;
    }
}

class Planner {
  public:
    explicit Planner(const SiteView& site) : site_(site) {}

    HousePlan make() {
        place_rooms();
        place_source();
        run_flue();
        run_gas();
        run_cold();
        run_hot();
        run_power();
        anchor_heater();
        anchor_rest();
        return std::move(plan_);
    }

  private:
    void place_rooms() {
        double x = outside_w + wall;
        plan_.rooms.push_back(
            {site_.heater_room, {x, roof_y + 8.0, heater_room_w, floor_y - roof_y - 8.0}});
        x += heater_room_w;
        int index = 0;
        for (const RoomView& room : site_.rooms) {
            x += 5.0;
            const double begin = x;
            x += 8.0;
            for (const FixtureView& f : room.fixtures) {
                const Rect r{x, top_of(f.kind), width_of(f.kind), floor_y - top_of(f.kind)};
                plan_.fixtures.push_back({f, r, index++});
                x += r.w + 4.0;
            }
            x = std::max(x + 4.0, begin + 90.0);
            plan_.rooms.push_back(
                {room.name, {begin, roof_y + 8.0, x - begin, floor_y - roof_y - 8.0}});
        }
        plan_.house = {outside_w, roof_y, x + wall - outside_w, floor_y + slab - roof_y};
        plan_.extent = {24.0, 12.0, plan_.house.right() + 12.0 - 24.0, bottom_y - 12.0};
        plan_.ground_y = floor_y;
        plan_.heater = {heater_x, heater_y, heater_units.w, heater_units.h};
    }

    void place_source() {
        plan_.source = site_.gas == GasSource::meter ? Rect{80.0, 206.0, 78.0, 76.0}
                                                     : Rect{84.0, 196.0, 56.0, 114.0};
    }

    void run_flue() {
        const Rect& h = plan_.heater;
        plan_.flue = {{h.x + 90.0, h.y - 2.0}, {h.x + 90.0, 53.0}, {outside_w - 22.0, 53.0}};
    }

    void pipe(Service service, Path path, bool moving, bool letters, double own_main = -1.0) {
        plan_.pipes.push_back(
            {service, std::move(path), moving, letters, own_main >= 0.0, std::max(0.0, own_main)});
    }

    /// The end of a main that turns up: a bridge over what it crosses, with the corner in one piece.
    void last_riser(Service service, double main_y, double x, double top, bool moving) {
        pipe(service, {{x - 8.0, main_y}, {x, main_y}, {x, top}}, moving, true, 8.0);
    }

    void branch(Service service, double main_y, double x, double top, bool moving) {
        pipe(service, {{x, main_y}, {x, top}}, moving, true, 0.0);
        plan_.junctions.push_back({x, main_y});
        plan_.junction_pipes.push_back(plan_.pipes.size() - 1);
    }

    /// From the source to the last appliance, with a riser to each.
    void run_gas() {
        const Rect& s = plan_.source;
        const double heater_riser = plan_.heater.x + heater_plan::gas_x;
        std::vector<std::pair<double, const PlacedFixture*>> others;
        for (const PlacedFixture& f : plan_.fixtures)
            if (!is_tap(f.view.kind)) others.emplace_back(risers_of(f.r, f.view.kind).gas, &f);
        const double end = others.empty() ? heater_riser : others.back().first;
        const double down_x = site_.gas == GasSource::meter ? s.right() + 14.0 : s.right() + 32.0;
        const double out_y = site_.gas == GasSource::meter ? s.y + 36.0 : s.y - 12.0;
        if (site_.gas == GasSource::meter) {
            const double in_x = s.x - 18.0;
            pipe(Service::gas, {{in_x, bottom_y + 6.0}, {in_x, out_y}, {s.x, out_y}}, false, true);
            plan_.valves.push_back({{in_x, floor_y - 17.0}, true, Service::gas});
        }
        const Point from =
            site_.gas == GasSource::meter ? Point{s.right(), out_y} : Point{s.centre().x, out_y};
        const bool any = site_.flow.gas_moving;
        pipe(Service::gas, {from, {down_x, out_y}, {down_x, gas_y}, {end, gas_y}}, any, true);
        last_riser(
            Service::gas, gas_y, end,
            others.empty() ? plan_.heater.bottom() : riser_top(others.back().second->view.kind),
            any);
        if (end > heater_riser)
            branch(Service::gas, gas_y, heater_riser, plan_.heater.bottom(), any);
        for (const auto& [x, fixture] : others) {
            if (x != end) branch(Service::gas, gas_y, x, riser_top(fixture->view.kind), any);
            plan_.valves.push_back({{x, floor_y - 22.0}, true, Service::gas});
        }
        plan_.valves.push_back({{heater_riser, plan_.heater.bottom() + 11.0}, true, Service::gas});
        anchor(Spot::source_valve, site_.gas == GasSource::meter
                                       ? Point{s.x - 18.0, floor_y - 17.0}
                                       : Point{s.centre().x + 20.0, out_y});
        if (site_.gas == GasSource::cylinder)
            plan_.valves.push_back({{s.centre().x + 20.0, out_y}, false, Service::gas});
    }

    void run_cold() {
        const double heater_riser = plan_.heater.x + heater_plan::cold_x;
        double end = heater_riser;
        const PlacedFixture* last = nullptr;
        for (const PlacedFixture& f : plan_.fixtures)
            if (is_tap(f.view.kind)) {
                end = risers_of(f.r, f.view.kind).cold;
                last = &f;
            }
        const bool moving = site_.flow.cold_moving;
        pipe(Service::cold, {{30.0, cold_y}, {end, cold_y}}, moving, true);
        last_riser(Service::cold, cold_y, end,
                   last == nullptr ? plan_.heater.bottom() : riser_top(last->view.kind), moving);
        if (last != nullptr)
            branch(Service::cold, cold_y, heater_riser, plan_.heater.bottom(), moving);
        for (const PlacedFixture& f : plan_.fixtures)
            if (is_tap(f.view.kind) && &f != last)
                branch(Service::cold, cold_y, risers_of(f.r, f.view.kind).cold,
                       riser_top(f.view.kind), moving && f.view.opening > 0.0);
        plan_.valves.push_back({{124.0, cold_y}, false, Service::cold});
        plan_.valves.push_back({{heater_riser, plan_.heater.bottom() + 11.0}, true, Service::cold});
    }

    void run_hot() {
        const double out = plan_.heater.x + heater_plan::hot_x;
        const PlacedFixture* last = nullptr;
        for (const PlacedFixture& f : plan_.fixtures)
            if (is_tap(f.view.kind)) last = &f;
        if (last == nullptr) return;
        const double end = risers_of(last->r, last->view.kind).hot;
        const bool moving = site_.flow.hot_moving;
        pipe(Service::hot, {{out, plan_.heater.bottom()}, {out, hot_y}, {end, hot_y}}, moving,
             true);
        last_riser(Service::hot, hot_y, end, riser_top(last->view.kind), moving);
        for (const PlacedFixture& f : plan_.fixtures)
            if (is_tap(f.view.kind) && &f != last)
                branch(Service::hot, hot_y, risers_of(f.r, f.view.kind).hot, riser_top(f.view.kind),
                       moving && f.view.opening > 0.0);
    }

    void run_power() {
        const double x = outside_w + 27.0;
        const Rect& h = plan_.heater;
        pipe(Service::power,
             {{x, roof_y + 8.0},
              {x, h.y + heater_plan::terminal_y},
              {h.x, h.y + heater_plan::terminal_y}},
             false, false);
    }

    void anchor(Spot spot, Point target) { plan_.anchors[{spot, -1}] = {target, target}; }
    void anchor(Spot spot, Point target, Point mark) { plan_.anchors[{spot, -1}] = {target, mark}; }

    void anchor_heater() {
        const Point corner{plan_.heater.x, plan_.heater.y};
        for (const auto& a : heater_plan::house_marks)
            anchor(a.spot, corner + a.target, corner + a.mark);
        anchor(Spot::heater, corner + Point{90.0, 100.0});
        anchor(Spot::heater_gas_valve, corner + Point{heater_plan::gas_x, 235.0});
        anchor(Spot::heater_water_valve, corner + Point{heater_plan::cold_x, 235.0});
    }

    void anchor_rest() {
        const Rect& s = plan_.source;
        const bool meter = site_.gas == GasSource::meter;
        const Point outlet =
            meter ? Point{s.right() + 14.0, s.y + 52.0} : Point{s.right() + 32.0, s.y + 20.0};
        anchor(Spot::gas_regulator, outlet, outlet + Point{meter ? 20.0 : 22.0, 0.0});
        anchor(Spot::gas_source, s.centre());
        anchor(Spot::water_main, {124.0, cold_y});
        anchor(Spot::power_point, {outside_w + 27.0, 166.0});
        const double end = plan_.flue.back().x;
        anchor(Spot::flue_terminal, {end - 4.0, 53.0});
        anchor(Spot::flue_sample, {end + 11.0, 53.0}, {end + 1.0, 84.0});
        const Rect& room = plan_.rooms.front().r;
        anchor(Spot::room_air, {room.right() - 20.0, 100.0}, {room.right() - 20.0, 100.0});
        for (const PlacedFixture& f : plan_.fixtures) anchor_fixture(f);
    }

    void anchor_fixture(const PlacedFixture& f) {
        const Rect& r = f.r;
        Anchor a{r.centre(), r.centre()};
        switch (f.view.kind) {
            case FixtureKind::shower:
                a = {{r.x + 48.0, 110.0}, {r.x + 18.0, 118.0}};
                break;
            case FixtureKind::bath:
                a = {{r.x + 62.0, counter_y - 8.0}, {r.x + 36.0, counter_y - 32.0}};
                break;
            case FixtureKind::sink:
            case FixtureKind::basin:
            case FixtureKind::laundry_tub:
                a = {{r.centre().x - 12.0, counter_y - 19.0},
                     {r.centre().x - 16.0, counter_y - 44.0}};
                break;
            default:
                break;
        }
        plan_.anchors[{is_tap(f.view.kind) ? Spot::tap : Spot::appliance, f.index}] = a;
    }

    const SiteView& site_;
    HousePlan plan_;
};

}  // namespace

HousePlan plan_of(const SiteView& site) {
    return Planner(site).make();
}

}  // namespace emberpath::screens
