#include "sim/worksite/workplace.hpp"

#include <algorithm>

#include "sim/plant/limits.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/outlets.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::int64_t settled_ticks = 200;
constexpr double spilt_share = 0.10;  // of the products, with the cover off: chosen

std::string_view phase_words(controller::Phase phase) {
    using controller::Phase;
    switch (phase) {
        case Phase::pre_purge:
            return "fan purging";
        case Phase::light_up:
        case Phase::prove:
            return "lighting up";
        case Phase::run:
            return "burner running";
        case Phase::post_purge:
            return "fan running on";
        case Phase::lockout:
            return "locked out";
        case Phase::restart:
            return "fan purging for a restart";
        default:
            return "heater at rest";
    }
}

}  // namespace

Workplace::Workplace(Job job_given, Seeds seeds_given, Mode mode_given, Follower* follower_given)
    : job(std::move(job_given)),
      seeds(seeds_given),
      mode(mode_given),
      dealt_with(job.faults.size(), 0),
      follower_(follower_given),
      gusts_(seeds.house, job.site.gust_period_s),
      events_(job.site.events),
      repeat_(seeds.instruments, "repeat error") {
    services.tap_opening.assign(job.site.taps.size(), 0.0);
    services.appliance_on.assign(job.site.appliances.size(), 0);
    services.set_point_k = job.panel.set_point_k;
    services.heater_on = job.panel.switched_on > 0.5;
    services.wind_pa = job.site.wind_pa;
    settle_in(services, job.site);
    services.wall = job.panel.wall;
    std::stable_sort(
        events_.begin(), events_.end(),
        [](const HouseholdEvent& a, const HouseholdEvent& b) { return a.at_s < b.at_s; });
    math::Random offset(seeds.instruments, "manometer zero");
    const double size = 30.0 + 60.0 * offset.uniform();
    bench.manometer_offset_pa = offset.uniform() < 0.5 ? -size : size;
    heater.settings = job.settings;
    refresh_parameters();
    build_inputs();
    plant::settle_cold(heater.plant, inputs_.surroundings);
    settle_history();
}

void Workplace::settle_history() {
    const auto arrival = ticks_in(job.site.arrival_s);
    while (tick_ < arrival && beyond_model.empty()) {
        step();
        bool drawing = false;
        for (const double opening : services.tap_opening) drawing = drawing || opening > 0.0;
        household.follow(drawing, drawing ? drawn_water_k(look().plant, inputs_.surroundings) : 0.0,
                         services.set_point_k);
    }
    arrived_ = true;
    if (follower_) follower_->arrived();
    meet_house(*this);
    smell_noticed_ = precautions.gas_on_arrival;
}

void Workplace::step() {
    household_events();
    refresh_parameters();
    build_inputs();
    services.reset_pressed = services.restart_asked = false;
    if (follower_) follower_->tick(inputs_);
    const bool lit_before = heater.plant.flame.lit[0] > 0.5;
    heater.tick(inputs_);
    if (fabric.alterations.limiter_bridged) heater.plant.flame.limiter_tripped = 0.0;
    lit_just_now_ = !lit_before && heater.plant.flame.lit[0] > 0.5;
    light_ups_ += lit_just_now_ ? 1 : 0;
    ++tick_;
    watch_limits();
    watch_phase();
    if (!arrived_) return;
    if (precautions.air_in_pipe_m3 > 0.0) lose_air();
    if (services.cylinder_warmed_k > 0.0) cool_cylinder(services);
    if (fabric.alterations.strainer_out) let_grit_in(*this);
    if (needs_a_look()) {
        const HeaterView view = look();
        senses.step(view, setup);
        escape_gas(view);
        notice_light_up(view);
    }
    if (powered()) charged_tick_ = tick_;
    judge_room_air();
    follow_dangers(*this);
    take_breath();
    if (keeps_trail) leave_trail();
}

void Workplace::leave_trail() {
    constexpr std::int64_t every_ticks = 10;
    if (tick_ % every_ticks != 0 || person.outside) return;
    const double word = value_of(Quantity::display_word, Hold::now, look(), senses, inputs_, setup);
    trail.push_back(
        {tick_, static_cast<std::size_t>(word), services.set_point_k, figures_of(*this)});
    if (trail.size() > longest_trail) trail.pop_front();
}

/// Most ticks nobody measures and nothing escapes; then the instruments need not be computed.
bool Workplace::needs_a_look() {
    const bool resting = at_rest(setup);
    const bool went_to_rest = resting && !tools_resting_;
    tools_resting_ = resting;
    const auto any = [](const auto& list) {
        return std::any_of(list.begin(), list.end(), [](auto one) { return one != 0; });
    };
    return !resting || went_to_rest || !fabric.cover_on || fabric.wide_open_joint ||
           any(fabric.point_open) || any(fabric.weep_m3_per_s) ||
           weep_at(Joint::inlet_union) > 0.0 || escaped_gas_m3 > 0.0 ||
           precautions.low_gas_m3 > 0.0 || inputs_.surroundings.test_nipple_leak_m3_per_s > 0.0 ||
           lit_just_now_;
}

void Workplace::pass(double seconds) {
    const auto end = tick_ + ticks_in(seconds);
    while (tick_ < end && !over()) step();
}

void Workplace::household_events() {
    while (next_event_ < events_.size() && events_[next_event_].at_s <= time_s())
        apply(events_[next_event_++]);
}

void Workplace::apply(const HouseholdEvent& event) {
    using Kind = HouseholdEvent::Kind;
    switch (event.kind) {
        case Kind::tap:
            if (event.index >= services.tap_opening.size()) return;
            services.tap_opening[event.index] = std::clamp(event.value, 0.0, 1.0);
            if (arrived_)
                notice("Somebody " + std::string(event.value > 0.0 ? "opens" : "closes") + " the " +
                       job.site.taps[event.index].name + ".");
            break;
        case Kind::appliance:
            if (event.index >= services.appliance_on.size()) return;
            services.appliance_on[event.index] = event.value > 0.5 ? 1 : 0;
            if (arrived_)
                notice("Somebody turns the " + job.site.appliances[event.index].name +
                       (event.value > 0.5 ? " on." : " off."));
            break;
        case Kind::cold_draw:
            services.cold_draw_m3_per_s = std::max(0.0, event.value);
            break;
        case Kind::set_point:
            services.set_point_k = event.value;
            break;
        case Kind::wind:
            services.wind_pa = event.value;
            break;
        case Kind::reset:
            services.reset_pressed = true;
            break;
        case Kind::window:
        case Kind::fan:
        case Kind::rain:
            around_the_heater(event);
            break;
    }
    changed();
}

void Workplace::around_the_heater(const HouseholdEvent& event) {
    using Kind = HouseholdEvent::Kind;
    const bool on = event.value > 0.5;
    if (event.kind == Kind::rain) {
        services.raining = on;
        if (arrived_) say(on ? "It begins to rain." : "The rain stops.");
        return;
    }
    const bool window = event.kind == Kind::window;
    auto& list = window ? services.window_open : services.fan_on;
    if (event.index >= list.size()) return;
    list[event.index] = on ? 1 : 0;
    if (!arrived_) return;
    const auto& site = job.site;
    notice(window ? "Somebody " + std::string(on ? "opens" : "shuts") + " the " +
                        site.windows[event.index].name + "."
                  : "Somebody turns the " + site.fans[event.index].name + (on ? " on." : " off."));
}

std::vector<faults::Fault> Workplace::faults_left() const {
    std::vector<faults::Fault> left;
    for (std::size_t i = 0; i < job.faults.size(); ++i)
        if (dealt_with[i] == 0 || !works_at_once(faults::info(job.faults[i].cause).remedy))
            left.push_back(job.faults[i]);
    return left;
}

faults::Moment Workplace::moment() const {
    faults::Moment now(time_s());
    now.night = inputs_.surroundings.night;
    now.rain = inputs_.surroundings.rain;
    now.case_k = heater.plant.state[plant::casing_air];
    now.light_ups = light_ups_;
    return now;
}

/// Maps the healthy parameters again, whole, whenever a severity moves: clearing is exact.
void Workplace::refresh_parameters() {
    const bool changing = faults::changes_after(job.faults, time_s());
    const bool due = tick_ == 0 || changing || was_changing_ || severities_.empty();
    was_changing_ = changing;
    if (!due) return;
    const auto left = faults_left();
    std::vector<double> now;
    now.reserve(left.size());
    for (const auto& fault : left) now.push_back(faults::severity_at(fault, moment()));
    if (tick_ > 0 && now == severities_) return;
    severities_ = std::move(now);
    heater.install(0, installation_of(job, left, moment(), fabric.alterations));
}

void Workplace::build_inputs() {
    auto& s = inputs_.surroundings;
    s.time_s = time_s();
    s.mains_water_pa = job.site.mains_water_pa;
    s.inlet_water_k = job.site.inlet_water_k;
    s.ambient_k = job.site.ambient_k;
    s.cylinder_ambient_k = job.site.ambient_k + services.cylinder_warmed_k;
    s.water_isolator = services.water_at_heater ? 1.0 : 0.0;
    shut_outlets(s);
    for (std::size_t i = 0; i < services.tap_opening.size(); ++i)
        open_outlet(s, job.site, i, services.tap_opening[i]);
    s.cold_draw_m3_per_s = services.cold_draw_m3_per_s;
    s.gas_isolator = services.gas_at_heater && !air_holds_gas_back() ? 1.0 : 0.0;
    s.gas_meter_valve = services.gas_at_supply ? 1.0 : 0.0;
    s.other_gas_m3_per_s = 0.0;
    for (std::size_t i = 0; i < services.appliance_on.size(); ++i)
        if (services.appliance_on[i] != 0)
            s.other_gas_m3_per_s += job.site.appliances[i].gas_m3_per_s;
    s.steady_wind_pa = services.wind_pa;
    s.gust_shape = gusts_.shape_at(time_s());
    s.power_on = services.live() ? 1.0 : 0.0;
    s.cover_spill = fabric.cover_on ? 0.0 : spilt_share;
    surround(s, job.site, services, time_s());
    inputs_.panel = job.panel;
    inputs_.panel.set_point_k = services.set_point_k;
    inputs_.panel.switched_on = services.heater_on ? 1.0 : 0.0;
    inputs_.panel.reset_pressed = services.reset_pressed ? 1.0 : 0.0;
    inputs_.panel.restart_asked = services.restart_asked ? 1.0 : 0.0;
    inputs_.panel.wall = services.wall;
    inputs_.panel.powered = s.power_on;
}

/// Air in the pipe comes first whenever the heater calls for gas.
bool Workplace::air_holds_gas_back() const {
    using controller::Phase;
    if (precautions.air_in_pipe_m3 <= 0.0) return false;
    return phase_ == Phase::light_up || phase_ == Phase::prove || phase_ == Phase::run;
}

/// It goes out through the burner, or by way of another appliance that is on.
void Workplace::lose_air() {
    constexpr double light_up_m3_per_s = 3.0e-4;
    double flow = inputs_.surroundings.other_gas_m3_per_s;
    if (air_holds_gas_back()) {
        flow += light_up_m3_per_s;
        breach("not_purged", "The heater was lit with air in its gas pipe.");
    }
    if (!services.gas_at_supply) return;
    precautions.air_in_pipe_m3 = std::max(0.0, precautions.air_in_pipe_m3 - tick_s * flow);
}

/// Past the model's limits nothing that follows would be true: the attempt stops where it is.
void Workplace::watch_limits() {
    const auto beyond = plant::beyond_limits(heater.plant, inputs_.surroundings);
    if (!beyond) return;
    const auto number = [](double value) { return units::fixed(value, value < 10.0 ? 4 : 0); };
    beyond_model =
        "the simulation left the range in which it is valid: " + std::string(beyond->name) +
        " at " + number(beyond->value) + " " + std::string(beyond->unit) + ", valid from " +
        number(beyond->low) + " to " + number(beyond->high) + ".";
    say("The attempt stops here: " + beyond_model + " It is not usable as evidence.");
}

void Workplace::watch_phase() {
    const auto phase = controller::readout(heater.controller, 0).phase;
    if (arrived_ && phase == controller::Phase::run) ++deeds.running_ticks;
    if (phase == phase_) return;
    phase_ = phase;
    changed_tick_ = tick_;
    if (arrived_ && phase == controller::Phase::run && !fabric.cover_on && !bench.multimeter_at &&
        bench.manometer_at != static_cast<std::size_t>(Point::manifold))
        breach("cover_off_running", "The heater fired with its cover off and nothing to measure.");
}

void Workplace::changed() {
    ++epoch_;
    changed_tick_ = tick_;
}

Condition Workplace::condition() const {
    return {phase_, epoch_, tick_ - changed_tick_ >= settled_ticks};
}

std::string Workplace::condition_words() const {
    std::string words(powered() ? phase_words(phase_) : "power off");
    for (std::size_t i = 0; i < services.tap_opening.size(); ++i) {
        const double opening = services.tap_opening[i];
        if (opening <= 0.0) continue;
        words += ", " + job.site.taps[i].name + " open";
        words += opening > 0.9 ? " fully" : opening > 0.4 ? " halfway" : " a little";
    }
    return words;
}

HeaterView Workplace::look() const {
    return view(heater, 0, inputs_);
}

HeaterView Workplace::look_plugged() const {
    Heater<double> copy = heater;
    Alterations plugged = fabric.alterations;
    plugged.sensor_unplugged = {};
    copy.install(0, installation_of(job, faults_left(), moment(), plugged));
    return view(copy, 0, inputs_);
}

bool Workplace::powered() const {
    return services.live() && controller::readout(heater.controller, 0).powered > 0.5;
}

bool Workplace::burner_runs() const {
    return look().plant.flame_lit > 0.0;
}

Workplace Workplace::left_alone(std::vector<HouseholdEvent> plan) const {
    Workplace house = *this;
    house.follower_ = nullptr;
    house.events_ = std::move(plan);
    house.next_event_ = 0;
    house.person = {};
    house.doses = {};
    house.write_up.handed_in = false;
    house.keeps_trail = false;
    std::fill(house.services.tap_opening.begin(), house.services.tap_opening.end(), 0.0);
    const bool rains = house.services.raining;
    settle_in(house.services, house.job.site);
    house.services.raining = rains;
    return house;
}

std::uint64_t Workplace::hash() const {
    math::Hash hash;
    hash.add(heater.hash(0));
    hash.add(static_cast<std::uint64_t>(tick_));
    hash.add(static_cast<std::uint64_t>(epoch_));
    add_to(hash, services);
    add_to(hash, fabric);
    add_to(hash, bench);
    add_to(hash, person);
    add_to(hash, deeds);
    add_to(hash, precautions);
    for (const auto done : dealt_with) hash.add(static_cast<std::uint64_t>(done));
    for (const auto& one : breaches) hash.add(std::string_view(one.rule));
    hash.add(escaped_gas_m3);
    add_to(hash, doses);
    hash.add(held_line_pa);
    hash.add(static_cast<std::uint64_t>(charged_tick_));
    hash.add(std::string_view(job.practice.licence.name));
    for (const auto one : {static_cast<std::uint64_t>(readings_), static_cast<std::uint64_t>(mode)})
        hash.add(one);
    for (const auto* text : {&write_up.cause, &write_up.done, &write_up.told})
        hash.add(std::string_view(*text));
    for (const auto* list : {&write_up.also, &write_up.possible})
        for (const auto& word : *list) hash.add(std::string_view(word));
    if (write_up.confidence.has_value()) hash.add(*write_up.confidence);
    for (const int number : write_up.because) hash.add(static_cast<std::uint64_t>(number));
    hash.add(static_cast<std::uint64_t>(write_up.handed_in));
    if (!beyond_model.empty()) hash.add(std::string_view(beyond_model));
    return hash.value();
}

}  // namespace emberpath::worksite
