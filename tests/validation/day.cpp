#include "tests/validation/day.hpp"

#include <algorithm>
#include <map>

#include "sim/plant/algebra.hpp"

namespace emberpath::validation {

namespace {

using laws::celsius;
using laws::House;
using laws::litre_per_minute;

constexpr double litres_per_gallon = 3.785411784;

House house_in(const Setting& setting) {
    House house(false, setting.set_c);
    house.inputs.surroundings.inlet_water_k = setting.inlet_c + celsius;
    house.inputs.surroundings.ambient_k = setting.room_c + celsius;
    plant::settle_cold(house.heater.plant, house.inputs.surroundings);
    return house;
}

/// Heat in copper, water and mixing pocket above the room [J].
double core_heat(const House& house) {
    namespace hc = plant::heat_capacity;
    const plant::State<double>& x = house.heater.plant.state;
    const double room_k = house.inputs.surroundings.ambient_k;
    double heat = hc::pocket_kg * plant::water_j_per_kg_k * (x[plant::mixing_pocket] - room_k);
    for (std::size_t i = 0; i < plant::cell_count; ++i)
        heat += hc::water_cell_j_per_k * (x[plant::water_0 + i] - room_k) +
                hc::metal_cell_j_per_k * (x[plant::metal_0 + i] - room_k);
    return heat;
}

/// The day so far: its clock and its sums.
class Clock {
  public:
    Clock(House& house, Day& day, const Setting& setting)
        : house_(house), day_(day), setting_(setting) {}
    void tick() {
        house_.run(signals::tick_s);
        seconds_ += signals::tick_s;
        const plant::Observables now = house_.look().plant;
        day_.gas_j += now.heat_input_w * signals::tick_s;
        heat_w_ = now.heat_to_water_w;
        outlet_c_ = now.outlet_water_k - celsius;
        flow_m3_per_s_ = now.hot_water_m3_per_s;
    }
    /// Gas can flow for a moment after a tap was closed; later only time passes.
    void wait_until(double seconds) {
        constexpr double gas_is_off_s = 20.0;
        const double still_s = std::min(seconds, closed_at_s_ + gas_is_off_s);
        while (seconds_ < still_s - 0.5 * signals::tick_s) tick();
        house_.run(seconds - seconds_);
        seconds_ = seconds;
    }
    /// A minute after the last draw: the rest of the day burns nothing, since nothing stands by on gas.
    void end() { wait_until(closed_at_s_ + 60.0); }
    /// Opens the taps, taking the draw's sums in until `done` says so.
    template <class Done>
    void draw(double litres_per_min, Done done) {
        cool_down();
        const double before_j = day_.water_j;
        house_.open_taps(litres_per_min);
        ++day_.draws;
        do {
            tick();
            day_.water_j += heat_w_ * signals::tick_s;
            day_.volume_m3 += flow_m3_per_s_ * signals::tick_s;
        } while (!done());
        house_.open_taps(0.0);
        closed_at_s_ = seconds_;
        heat_left_j_ = core_heat(house_);
        day_.steady_gas_j += (day_.water_j - before_j) / steady_at(litres_per_min);
    }
    [[nodiscard]] double seconds() const { return seconds_; }
    [[nodiscard]] double heat_w() const { return heat_w_; }
    [[nodiscard]] double outlet_c() const { return outlet_c_; }
    [[nodiscard]] double flow_m3_per_s() const { return flow_m3_per_s_; }

  private:
    /// A core of one temperature forgets exponentially.
    void cool_down() {
        const double idle_s = seconds_ - closed_at_s_;
        const auto lost = [idle_s](double w_per_k, double j_per_k) {
            return 1.0 - std::exp(-w_per_k / j_per_k * idle_s);
        };
        const double heavier = published_core_j_per_k / core_j_per_k;
        day_.core_loss_j += heat_left_j_ * lost(core_loss_w_per_k, core_j_per_k);
        day_.heavy_loss_j +=
            heat_left_j_ * heavier * lost(published_loss_w_per_k, published_core_j_per_k);
    }
    double steady_at(double litres_per_min) {
        const auto [at, fresh] = steady_.try_emplace(litres_per_min, 0.0);
        if (fresh) at->second = steady_efficiency(litres_per_min, setting_);
        return at->second;
    }
    House& house_;
    Day& day_;
    const Setting& setting_;
    std::map<double, double> steady_;
    double seconds_ = 0.0, closed_at_s_ = 0.0, heat_left_j_ = 0.0;
    double heat_w_ = 0.0, outlet_c_ = 0.0, flow_m3_per_s_ = 0.0;
};

void take(Clock& clock, double m3, double litres_per_min) {
    double taken_m3 = 0.0;
    clock.draw(litres_per_min, [&] {
        taken_m3 += clock.flow_m3_per_s() * signals::tick_s;
        return taken_m3 >= m3;
    });
}

void take(Clock& clock, Day& day, const Tapping& tapping) {
    constexpr double joules_per_kwh = 3.6e6;
    double useful_j = 0.0, hottest_c = 0.0;
    const double opened_s = clock.seconds();
    double wait_s = 0.0;
    clock.draw(tapping.litres_per_min, [&] {
        hottest_c = std::max(hottest_c, clock.outlet_c());
        if (clock.outlet_c() >= tapping.from_c)
            useful_j += clock.heat_w() * signals::tick_s;
        else if (useful_j == 0.0)
            wait_s = clock.seconds() - opened_s;
        return useful_j >= tapping.useful_kwh * joules_per_kwh;
    });
    day.useful_j += useful_j;
    day.longest_wait_s = std::max(day.longest_wait_s, wait_s);
    if (hottest_c < tapping.peak_c - 0.1) ++day.peaks_missed;
}

double starts_s(int hour, int minute) {
    return 3600.0 * hour + 60.0 * minute;
}

}  // namespace

Day live(std::span<const Draw> draws, const Setting& setting) {
    House house = house_in(setting);
    Day day;
    Clock clock(house, day, setting);
    for (const Draw& draw : draws) {
        clock.wait_until(starts_s(draw.hour, draw.minute));
        take(clock, draw.gallons * litres_per_gallon * 1e-3,
             draw.gallons_per_min * litres_per_gallon);
    }
    clock.end();
    return day;
}

Day live(std::span<const Tapping> tappings, const Setting& setting) {
    House house = house_in(setting);
    Day day;
    Clock clock(house, day, setting);
    for (const Tapping& tapping : tappings) {
        clock.wait_until(starts_s(tapping.hour, tapping.minute));
        take(clock, day, tapping);
    }
    clock.end();
    return day;
}

Day repeated(double litres, double litres_per_min, int count, const Setting& setting) {
    House house = house_in(setting);
    Day day;
    Clock clock(house, day, setting);
    for (int i = 0; i < count; ++i) {
        clock.wait_until(3600.0 * i);
        take(clock, litres * 1e-3, litres_per_min);
    }
    clock.end();
    return day;
}

double steady_efficiency(double litres_per_min, const Setting& setting) {
    House house = house_in(setting);
    house.open_taps(litres_per_min);
    house.run(600.0);
    const plant::Observables now = house.look().plant;
    return now.heat_to_water_w / now.heat_input_w;
}

}  // namespace emberpath::validation
