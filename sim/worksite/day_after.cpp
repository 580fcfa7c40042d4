#include "sim/worksite/day_after.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/exposure/shock.hpp"
#include "sim/units/counted.hpp"
#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/electrical_quantities.hpp"
#include "sim/worksite/hand_in_water.hpp"
#include "sim/worksite/outlets.hpp"

namespace emberpath::worksite {

namespace {

constexpr double day_s = 86400.0;
constexpr std::array rounds_s{3600.0, 18000.0, 36000.0, 50400.0,
                              75600.0};  // after the trainee left
constexpr double told_from = 0.05;       // of a burn
constexpr double noticed_k = 0.5;        // on a display
constexpr double near_set_k = 5.0, cold_k = 308.15;
constexpr std::int64_t warm_up_ticks = 200, looks_every_ticks = 100;
constexpr std::int64_t patience_ticks = 600;  // a minute before somebody presses reset
constexpr int patience = 10;                  // times a day
constexpr double too_little_share = 0.45;     // of what the open tap gives alone: chosen

/// Follows the household through its day.
class Watch {
  public:
    Watch(Workplace& house, bool stays_off) : house_(house), stays_off_(stays_off) {}

    void tick() {
        const bool drawing = any_open();
        if (drawing && !drawing_) begin_draw();
        house_.step();
        if (drawing) follow_draw();
        if (!drawing && drawing_) end_draw();
        drawing_ = drawing;
        follow_lockout();
        follow_heater();
        day_.most_room_co = std::max(day_.most_room_co, house_.room_co());
        day_.gas_m3 += tick_s * house_.inputs().surroundings.test_nipple_leak_m3_per_s;
    }
    [[nodiscard]] DayAfter day() const { return day_; }

  private:
    [[nodiscard]] bool any_open() const {
        const auto& open = house_.services.tap_opening;
        return std::any_of(open.begin(), open.end(), [](double one) { return one > 0.0; });
    }

    /// Whoever finds it lower than they had it sets it back, unless they were told why.
    void set_back() {
        auto& s = house_.services;
        const bool told = house_.deeds.told != never;
        const auto raise = [&](double& set_k, double usual_k) {
            if (told || set_k > usual_k - noticed_k) return;
            set_k = usual_k;
            day_.set_back = true;
            house_.changed();
        };
        raise(s.set_point_k, house_.job.panel.set_point_k);
        for (std::size_t i = 0; i < s.wall.size(); ++i)
            if (s.wall[i].fitted > 0.5)
                raise(s.wall[i].set_point_k, house_.job.panel.wall[i].set_point_k);
    }

    /// Nobody leaves off what nothing says must stay off. A locked plug stops them all the same.
    void begin_draw() {
        ++day_.draws;
        ticks_ = hot_ = cold_ = 0;
        drawn_m3_ = expected_m3_ = 0.0;
        hand_ = {};
        set_back();
        auto& s = house_.services;
        const bool off = !s.live() || !s.main_switch_on || !s.breaker_on || !s.gas_at_heater ||
                         !s.gas_at_supply || !s.water_at_heater || !s.heater_on;
        if (!off || stays_off_) return;
        day_.turned_on_again = true;
        s.plugged_in = s.plugged_in || !s.plug_locked;
        s.main_switch_on = s.main_switch_on || !s.board_locked;
        s.breaker_on = s.breaker_on || !s.board_locked;
        s.point_switch_on = s.gas_at_heater = s.gas_at_supply = s.water_at_heater = true;
        s.heater_on = s.reset_pressed = true;
        house_.changed();
    }

    void follow_draw() {
        const double water_k = drawn_water_k(house_.look().plant, house_.inputs().surroundings);
        follow_hand(water_k);
        if (ticks_ % looks_every_ticks == 0) feel_current();
        drawn_m3_ += tick_s * house_.look().plant.hot_water_m3_per_s;
        expected_m3_ += tick_s * taps_alone_m3_per_s();
        if (++ticks_ <= warm_up_ticks) return;
        if (water_k >= house_.services.lowest_set_k() - near_set_k) ++hot_;
        if (water_k < cold_k) ++cold_;
    }

    void follow_hand(double water_k) {
        const double sum = hand_.hold(water_k);
        const Tap* tap = open_tap();
        if (tap == nullptr) return;
        if (sum > day_.worst_burn) {
            day_.worst_burn = sum;
            day_.hottest_k = water_k;
            day_.hottest_at = tap->name;
        }
        if (!tap->washing || sum <= day_.worst_wash_burn) return;
        day_.worst_wash_burn = sum;
        day_.hottest_wash_k = water_k;
        day_.hottest_wash_at = tap->name;
    }

    /// Whoever draws touches the tap, and now and then the heater: as the trainee's own hand would.
    void feel_current() {
        using plant::Terminal;
        const auto view = house_.look();
        const auto& mains = view.plant.electrical;
        const double tap_a = hand_to_floor_a(mains.pipe_v);
        const Tap* tap = open_tap();
        if (tap != nullptr && tap_a > day_.tap_current_a) {
            day_.tap_current_a = tap_a;
            day_.live_tap = tap->name;
        }
        if (hand_to_floor_a(mains.casing_v) < exposure::felt_a) return;
        const auto wiring =
            plant::wiring_of(view.parameters, view.plant, house_.inputs().surroundings);
        const double path_ohm = exposure::body_impedance_ohm(mains.casing_v, 0.5) + floor_path_ohm;
        const auto touched = plant::touch(wiring, Terminal::casing, Terminal::true_earth, path_ohm);
        day_.casing_current_a = std::max(day_.casing_current_a, touched.current_a);
    }

    /// What the open taps would give with the mains at their mouth.
    [[nodiscard]] double taps_alone_m3_per_s() const {
        const auto& open = house_.services.tap_opening;
        double conductance = 0.0;
        for (std::size_t i = 0; i < open.size(); ++i)
            conductance += open[i] * house_.job.site.taps[i].conductance;
        return conductance * std::sqrt(house_.job.site.mains_water_pa);
    }

    [[nodiscard]] const Tap* open_tap() const {
        const auto& open = house_.services.tap_opening;
        for (std::size_t i = 0; i < open.size(); ++i)
            if (open[i] > 0.0) return &house_.job.site.taps[i];
        return nullptr;
    }

    void end_draw() {
        const auto judged = ticks_ - warm_up_ticks;
        if (judged <= 0) return;
        if (drawn_m3_ < too_little_share * expected_m3_) ++day_.little;
        if (cold_ * 2 > judged)
            ++day_.cold;
        else
            ++(hot_ * 2 > judged ? day_.hot : day_.cool);
    }

    /// What nobody of the household measures, and what would have stopped the heater.
    void follow_heater() {
        if (house_.tick() % looks_every_ticks == 0) look_at_services();
        const auto& plant = house_.heater.plant;
        if (limiter_is_held_shut(house_))
            day_.limiter_k = std::max(day_.limiter_k, plant.state[plant::limiter_element]);
        const bool lit = plant.flame.lit[0] > 0.5;
        if (lit) follow_flame(!lit_);
        lit_ = lit;
    }

    void follow_flame(bool just_lit) {
        const auto seen = house_.look().plant;
        if (just_lit && seen.rough_light_up_m3 >= hard_light_up_m3) ++day_.thumps;
        lit_ticks_ = just_lit ? 0 : lit_ticks_ + 1;
        if (just_lit) co_ = co2_ = 0.0;
        if (lit_ticks_ < ticks_in(flame_settles_s)) return;
        day_.most_spilled = std::max(day_.most_spilled, seen.spilled_share);
        constexpr double share = tick_s / 20.0;
        co_ += share * (seen.co_share - co_);
        co2_ += share * (seen.co2_share - co2_);
        if (co2_ > 0.01) day_.flue_co_ratio = std::max(day_.flue_co_ratio, co_ / co2_);
    }

    void look_at_services() {
        const auto seen = house_.look().plant;
        day_.most_gas_pa = std::max(day_.most_gas_pa, seen.regulator_outlet_pa);
        if (seen.electrical_latches.safety_switch_tripped > 0.5) day_.safety_switch_opened = true;
        if (house_.powered())
            day_.most_leakage_a = std::max(day_.most_leakage_a, seen.electrical.leakage_a);
    }

    void follow_lockout() {
        // Without power it shows nothing, and there is nothing to reset.
        const bool locked =
            house_.powered() && house_.condition().phase == controller::Phase::lockout;
        if (locked && !locked_) {
            ++day_.lockouts;
            locked_tick_ = house_.tick();
        }
        locked_ = locked;
        if (!locked || !drawing_ || house_.fabric.tagged || day_.resets >= patience) return;
        if (house_.tick() - locked_tick_ < patience_ticks) return;
        ++day_.resets;
        locked_ = false;  // should it stay locked out, that is a new one
        house_.services.reset_pressed = true;
    }

    Workplace& house_;
    bool stays_off_;
    DayAfter day_;
    bool drawing_ = false, locked_ = false, lit_ = false;
    double co_ = 0.0, co2_ = 0.0;
    std::int64_t lit_ticks_ = 0;
    std::int64_t ticks_ = 0, hot_ = 0, cold_ = 0, locked_tick_ = 0;
    double drawn_m3_ = 0.0, expected_m3_ = 0.0;
    HandInWater hand_;
};

std::string water_line(const DayAfter& day) {
    std::string line = "Hot water was drawn " + units::counted(day.draws, "time");
    if (day.hot == day.draws && day.draws > 1)
        line += ", each time hot enough";
    else
        line += ": " + std::to_string(day.hot) + " hot enough";
    if (day.cool > 0) line += ", " + std::to_string(day.cool) + " not hot enough";
    if (day.cold > 0) line += ", " + std::to_string(day.cold) + " cold";
    if (day.little > 0)
        line += "; " + units::counted(day.little, "time") + " too little water came";
    return line + ".";
}

/// An open burner takes gas with the square root of its pressure.
std::string pressure_line(const DayAfter& day) {
    const double more = std::sqrt(day.most_gas_pa / day.governed_pa) - 1.0;
    return "Gas stood at up to " + units::format_pressure(day.most_gas_pa) +
           " behind the regulator, where a sound one locks up at " +
           units::format_pressure(day.governed_pa) + ": an open burner takes " +
           units::per_cent(more) + " more at the first pressure than at the second.";
}

std::string burn_line(double water_k, const std::string& tap, double share) {
    return "Water of " + units::format_temperature(water_k) + " at the " + tap +
           ": a hand held in it for five seconds takes " + units::fixed(100.0 * share, 0) +
           " % of a burn.";
}

std::string current_line(const std::string& where, double current_a) {
    return "A hand on the " + where + ": " + milliamperes(current_a) + " from hand to foot; from " +
           units::fixed(1000.0 * exposure::holds_a, 0) + " mA a hand cannot let go.";
}

std::string leakage_line(const DayAfter& day, const Limits& limits) {
    return "Up to " + milliamperes(day.most_leakage_a) + " leaked to earth, and " +
           (day.safety_switch_opened ? "the" : "no") + " safety switch opened; the rules allow " +
           milliamperes(limits.earth_leakage_a) + ".";
}

void add_heater_lines(const DayAfter& day, const Limits& limits, std::vector<std::string>& lines) {
    constexpr double too_much_pa = 100.0;
    if (day.governed_pa > 0.0 && day.most_gas_pa > day.governed_pa + too_much_pa)
        lines.push_back(pressure_line(day));
    if (day.limiter_k > plant::limiter_opens_k)
        lines.push_back("The exchanger got to " + units::format_temperature(day.limiter_k) +
                        " where the overheat limiter sits, which opens at " +
                        units::format_temperature(plant::limiter_opens_k) +
                        "; it was bridged and stopped nothing.");
    if (day.most_leakage_a > limits.earth_leakage_a) lines.push_back(leakage_line(day, limits));
    if (day.most_spilled > limits.spillage)
        lines.push_back((day.case_open ? "The cover was off: up to " : "Up to ") +
                        units::fixed(100.0 * day.most_spilled, 0) +
                        " % of the products of combustion entered the room.");
    if (day.flue_co_ratio > limits.co_ratio)
        lines.push_back("The flue gas had a CO/CO2 of up to " + units::fixed(day.flue_co_ratio, 4) +
                        "; above " + units::fixed(limits.co_ratio, 4) +
                        " an appliance may not be used.");
    if (day.thumps > 0)
        lines.push_back("Gathered gas lit with a thump " + units::counted(day.thumps, "time") +
                        ".");
}

/// A tag without a notice says nothing of why; a notice without a tag lies in a drawer.
std::string despite_words(const DayAfter& day) {
    if (day.tagged && day.noticed) return ", whatever tag and notice say";
    if (day.tagged) return ", tag or no tag: no notice in writing said why it must stay off";
    if (day.noticed) return ", notice or no notice: no tag hung where they did it";
    return ": nothing said that it must stay off";
}

}  // namespace

std::vector<HouseholdEvent> household_day(const Site& site, double from_s) {
    using Kind = HouseholdEvent::Kind;
    std::vector<HouseholdEvent> round;
    for (const auto& event : site.events)
        if (event.at_s < site.arrival_s && event.kind != Kind::reset &&
            event.kind != Kind::set_point)
            round.push_back(event);
    const bool draws = std::any_of(round.begin(), round.end(), [](const HouseholdEvent& event) {
        return event.kind == Kind::tap && event.value > 0.0;
    });
    if (!draws && !site.taps.empty()) {
        round.push_back({0.0, Kind::tap, 0, 1.0});
        round.push_back({180.0, Kind::tap, 0, 0.0});
    }
    std::vector<HouseholdEvent> day;
    for (const double begin : rounds_s)
        for (HouseholdEvent event : round) {
            event.at_s += from_s + begin;
            day.push_back(event);
        }
    std::stable_sort(day.begin(), day.end(),
                     [](const auto& a, const auto& b) { return a.at_s < b.at_s; });
    return day;
}

DayAfter day_after(const Workplace& left) {
    Workplace house = left.left_alone(household_day(left.job.site, left.time_s()));
    Watch watch(house, made_safe(left));
    const auto end = house.tick() + ticks_in(day_s);
    while (house.tick() < end && !house.over()) watch.tick();
    DayAfter day = watch.day();
    day.governed_pa = left.job.healthy.gas_lock_up_pa;
    day.tagged = left.fabric.tagged;
    day.case_open = !left.fabric.cover_on;
    day.noticed = left.deeds.notice != never;
    day.flash = house.known_breach("flash") != nullptr;
    day.most_blood_co = house.doses.most_blood_co;
    math::Hash hash;
    hash.add(house.hash());
    day.state = hash.text();
    return day;
}

std::vector<std::string> lines_of(const DayAfter& day, const Limits& limits) {
    std::vector<std::string> lines;
    if (day.turned_on_again)
        lines.push_back("They turned it on again themselves" + despite_words(day) + ".");
    if (day.set_back)
        lines.emplace_back(
            "They found it set lower than they had it and set it back: nobody had "
            "told them why.");
    lines.push_back(water_line(day));
    if (day.lockouts > 0)
        lines.push_back("The heater locked out " + units::counted(day.lockouts, "time") +
                        "; they pressed reset " + units::counted(day.resets, "time") + ".");
    if (day.gas_m3 > 1.0e-5)
        lines.push_back("Gas escaped: " + units::fixed(day.gas_m3 * 1000.0, 1) + " litres.");
    if (day.flash) lines.emplace_back("It met a flame and flashed.");
    if (day.most_room_co > 0.5e-6)
        lines.push_back("Carbon monoxide in the room: " + units::format_ppm(day.most_room_co) +
                        " at most; in the blood of somebody who stays there " +
                        units::per_cent(day.most_blood_co, 1) + ".");
    if (day.worst_burn > told_from)
        lines.push_back(burn_line(day.hottest_k, day.hottest_at, day.worst_burn));
    if (day.worst_wash_burn > told_from && day.hottest_wash_at != day.hottest_at)
        lines.push_back(burn_line(day.hottest_wash_k, day.hottest_wash_at, day.worst_wash_burn));
    if (day.tap_current_a >= exposure::felt_a)
        lines.push_back(current_line(day.live_tap, day.tap_current_a));
    if (day.casing_current_a >= exposure::felt_a)
        lines.push_back(current_line("heater's casing", day.casing_current_a));
    add_heater_lines(day, limits, lines);
    return lines;
}

}  // namespace emberpath::worksite
