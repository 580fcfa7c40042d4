// What the trainee leaves behind, found by running the heater on after they have gone.

#include <algorithm>
#include <cmath>

#include "sim/plant/water_network.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/hand_in_water.hpp"
#include "sim/worksite/hazards.hpp"
#include "sim/worksite/outlets.hpp"

namespace emberpath::worksite {

namespace {

constexpr double full_draw_s = 180.0, small_draw_s = 120.0;
constexpr double above_set_k = 3.0;
constexpr std::int64_t scald_ticks = 100;

struct AfterRun {
    double co = 0.0, co2 = 0.0;  // of the flue gas, averaged over twenty seconds of burning
    double worst_co_ratio = 0.0;
    std::int64_t scalding_ticks = 0, hot_ticks = 0;
    double hottest_k = 0.0, hottest_tempered_k = 0.0;  // at a plain tap, behind the tempering valve
    double worst_burn = 0.0, worst_tempered_burn = 0.0;  // that five seconds there take, as a share
    double most_spilled = 0.0;  // share of the products that enters the room
    double flue_k = 0.0;        // hottest flue gas
};

void mean_flue_gas(AfterRun& found, const plant::Observables& p) {
    if (p.flame_lit <= 0.0) return;
    constexpr double share = tick_s / 20.0;
    found.co += share * (p.co_share - found.co);
    found.co2 += share * (p.co2_share - found.co2);
    if (found.co2 > 0.01)
        found.worst_co_ratio = std::max(found.worst_co_ratio, found.co / found.co2);
}

/// As the tempering valve would give it.
double tempered_k(const HeaterView& seen, double inlet_k) {
    const double piped_k = seen.plant.tap_water_k;
    const double cold = plant::tempering_cold_share(seen.parameters, piped_k, inlet_k);
    return piped_k + cold * (inlet_k - piped_k);
}

/// Water counts as hot from `scald_k` on, and as a scald where it is not what was set.
struct HotFrom {
    double scald_k, set_k;
};

void draw(Heater<double>& heater, TickInputs inputs, double seconds, const HotFrom& hot,
          AfterRun& found) {
    HandInWater hand, tempered_hand;
    for (std::int64_t i = 0; i < ticks_in(seconds); ++i) {
        inputs.surroundings.time_s += tick_s;
        const auto into = static_cast<double>(i % 80) * tick_s;  // a gust of two seconds in eight
        inputs.surroundings.gust_shape = into < 2.0 ? 1.0 : 0.0;
        heater.tick(inputs);
        if (i < ticks_in(flame_settles_s)) continue;
        const HeaterView seen = view(heater, 0, inputs);
        const auto& p = seen.plant;
        mean_flue_gas(found, p);
        if (p.flame_lit > 0.0) found.most_spilled = std::max(found.most_spilled, p.spilled_share);
        found.flue_k = std::max(found.flue_k, p.flue_k);
        found.hottest_k = std::max(found.hottest_k, p.tap_water_k);
        const double washed_k = tempered_k(seen, inputs.surroundings.inlet_water_k);
        found.hottest_tempered_k = std::max(found.hottest_tempered_k, washed_k);
        found.worst_burn = std::max(found.worst_burn, hand.hold(p.tap_water_k));
        found.worst_tempered_burn =
            std::max(found.worst_tempered_burn, tempered_hand.hold(washed_k));
        if (p.tap_water_k < hot.scald_k) continue;
        ++found.hot_ticks;
        if (p.tap_water_k > hot.set_k + above_set_k) ++found.scalding_ticks;
    }
}

/// Somebody presses reset, draws fully and then a little; windows as the household has them, every fan on.
AfterRun after_run(const Workplace& w) {
    AfterRun found;
    Heater<double> heater = w.heater;
    TickInputs inputs = w.inputs();
    inputs.panel.switched_on = 1.0;
    inputs.panel.reset_pressed = 1.0;
    inputs.surroundings.test_nipple_leak_m3_per_s = 0.0;
    Services usual = w.services;
    settle_in(usual, w.job.site);
    std::fill(usual.fan_on.begin(), usual.fan_on.end(), std::uint8_t{1});
    usual.raining = w.services.raining;
    surround(inputs.surroundings, w.job.site, usual, w.time_s());
    heater.tick(inputs);
    inputs.panel.reset_pressed = 0.0;
    const auto& taps = w.job.site.taps;
    if (taps.empty()) return found;
    const auto most = std::max_element(taps.begin(), taps.end(), [](const Tap& a, const Tap& b) {
        return a.conductance < b.conductance;
    });
    const auto largest = static_cast<std::size_t>(most - taps.begin());
    const HotFrom hot{w.job.practice.limits.scald_water_k, w.services.lowest_set_k()};
    for (const auto& [opening, seconds] :
         {std::pair{1.0, full_draw_s}, std::pair{0.22, small_draw_s}}) {
        shut_outlets(inputs.surroundings);
        open_outlet(inputs.surroundings, w.job.site, largest, opening);
        draw(heater, inputs, seconds, hot, found);
    }
    return found;
}

std::vector<std::string> open_points(const Workplace& w) {
    constexpr std::array names{"inlet", "manifold", "regulator"};
    std::vector<std::string> open;
    for (std::size_t i = 0; i < names.size(); ++i)
        if (w.fabric.point_open[i]) open.emplace_back(names[i]);
    return open;
}

bool any_unproved(const Workplace& w) {
    return std::any_of(w.fabric.joint_unproved.begin(), w.fabric.joint_unproved.end(),
                       [](bool unproved) { return unproved; });
}

void judge_gas(Workplace& w) {
    for (const auto& name : open_points(w))
        w.breach("gas_left_open", "The " + name + " test point was left open.");
    const bool shut_off = !w.services.gas_at_supply && made_safe(w);
    if (any_weep(w) && !shut_off)
        w.breach("leak_left", a_weep_foamed(w)
                                  ? "A gas joint weeps: fluid had foamed there, and it was left."
                                  : "A gas joint weeps and was not found.");
    else if (any_unproved(w))
        w.breach("no_leak_test", "A gas joint was opened and never proved sound.");
}

double hottest_at(const Tap& tap, const AfterRun& found) {
    return tap.tempered ? found.hottest_tempered_k : found.hottest_k;
}

/// Where people wash and no mixer blends.
bool is_washed_at(const Tap& tap) {
    return tap.washing && !tap.mixes_cold;
}

/// Fixtures people wash at, fed straight from the heater, have a limit by the rules of the place.
void judge_delivery(Workplace& w, const AfterRun& found) {
    constexpr double slack_k = 1.0;
    const double limit_k = w.job.practice.delivery_limit_k();
    for (const auto& tap : w.job.site.taps)
        if (is_washed_at(tap) && hottest_at(tap, found) > limit_k + slack_k)
            w.breach("delivery_limit", "Water of " +
                                           units::format_temperature(hottest_at(tap, found)) +
                                           " can come at the " + tap.name + "; the rules allow " +
                                           units::format_temperature(limit_k) + ".");
}

/// A washing fixture whose water burns a hand in five seconds: a scald, whoever set it so.
const Tap* burns_at(const Workplace& w, const AfterRun& found) {
    const auto& taps = w.job.site.taps;
    const auto tap = std::find_if(taps.begin(), taps.end(), [&](const Tap& one) {
        const double share = one.tempered ? found.worst_tempered_burn : found.worst_burn;
        return is_washed_at(one) && share >= 1.0;
    });
    return tap == taps.end() ? nullptr : &*tap;
}

std::string burn_words(const Tap& tap, const AfterRun& found) {
    return "water of " + units::format_temperature(hottest_at(tap, found)) + " at the " + tap.name +
           ", which burns a hand in five seconds";
}

void judge_heat(Workplace& w, const AfterRun& found) {
    const std::string set = units::format_temperature(w.services.lowest_set_k());
    const bool hotter_than_set = found.scalding_ticks > scald_ticks;
    if (hotter_than_set)
        w.breach("scald_left", "Left delivering " + units::format_temperature(found.hottest_k) +
                                   " with the panel set to " + set + ".");
    else if (const Tap* tap = burns_at(w, found))
        w.breach("scald_left", "Left with " + burn_words(*tap, found) + ".");
    if (!hotter_than_set && found.hot_ticks > scald_ticks)
        w.breach("set_hot", "Left set to " + set + ".");
}

void judge_products(Workplace& w) {
    if (usable(w)) {
        const auto found = after_run(w);
        judge_delivery(w, found);
        if (found.worst_co_ratio > w.job.practice.limits.co_ratio)
            w.breach("left_unsafe", "Left in use with CO/CO2 of " +
                                        units::fixed(found.worst_co_ratio, 4) +
                                        " in the flue gas.");
        if (found.most_spilled > w.job.practice.limits.spillage && w.fabric.cover_on)
            w.breach("spillage_left", "Left in use with " +
                                          units::fixed(100.0 * found.most_spilled, 0) +
                                          " % of the products entering the room, fans on.");
        judge_heat(w, found);
    }
    if (w.deeds.flame_work != never && w.deeds.combustion_test < w.deeds.flame_work &&
        !made_safe(w))
        w.breach("no_combustion_test",
                 "Work on flame or flue was not proved at a small and a full draw.");
}

/// What an appliance in use may let go to earth; behind a safety switch the switch opens first.
void judge_leakage(Workplace& w) {
    const double leakage_a = w.look().plant.electrical.leakage_a;
    const double limit_a = w.job.practice.limits.earth_leakage_a;
    if (!usable(w) || leakage_a <= limit_a) return;
    w.breach("leakage_left", "Left in use with " + milliamperes(leakage_a) +
                                 " going to earth; the rules allow " + milliamperes(limit_a) + ".");
}

void judge_electricity(Workplace& w) {
    judge_left_live(w);
    judge_leakage(w);
    if (w.services.water_union_open) w.breach("services_off", "The water union was left undone.");
}

bool has_sensor_out(const Workplace& w) {
    const auto& out = w.fabric.alterations.sensor_unplugged;
    return std::any_of(out.begin(), out.end(), [](bool one) { return one; });
}

bool tools_away(const Workplace& w) {
    return !w.bench.manometer_at && !w.bench.multimeter_at && !w.bench.probe_in_flue;
}

bool record_written(const Workplace& w) {
    return !w.write_up.cause.empty() && !w.write_up.because.empty() && !w.write_up.done.empty() &&
           !w.write_up.told.empty();
}

bool switchboard_unproved(const Workplace& w) {
    return w.known_breach("beyond_scope") != nullptr && !w.deeds.told_to(electrician);
}

bool safety_switch_is_open(const Workplace& w) {
    return w.look().plant.electrical_latches.safety_switch_tripped > 0.5;
}

void judge_house(Workplace& w) {
    if (!w.fabric.cover_on) w.breach("cover_left_off", "The cover was left off.");
    if (!tools_away(w)) w.breach("tools_left", "Tools were left on the heater.");
    if (has_sensor_out(w)) w.breach("sensor_left_out", "A sensor was left unplugged.");
    if (!usable(w) && !w.fabric.tagged)
        w.breach("services_off", safety_switch_is_open(w)
                                     ? "The safety switch was left open without a tag."
                                     : "Power, gas or water was left off without a tag.");
    if (!usable(w) && w.fabric.tagged && !made_safe(w))
        w.breach(
            "walked_off",
            w.deeds.notice == never
                ? "The heater was taken out of use without a notice in writing."
                : "The customer will not heed the notice, and nobody was told who can see to it.");
}

void judge_people(Workplace& w) {
    if (w.deeds.told == never) w.breach("not_told", "The customer was not told.");
    if (!record_written(w)) w.breach("no_record", "The record is not complete.");
}

/// Somebody who did nothing at all has nothing to prove, and proves nothing.
bool has_worked(const Workplace& w) {
    return w.deeds.any_remedy != never || w.deeds.notice != never;
}

/// Proofs count from the latest remedy that changed the heater; with none, from arrival.
bool since_remedy(const Workplace& w, std::int64_t when) {
    return has_worked(w) && when != never && when >= w.deeds.lasting_remedy;
}

}  // namespace

bool usable(const Workplace& w) {
    return w.powered() && w.services.gas_at_heater && w.services.gas_at_supply &&
           w.services.water_at_heater;
}

std::string milliamperes(double ampere) {
    return units::fixed(ampere * 1000.0, ampere < 10.0e-3 ? 1 : 0) + " mA";
}

bool any_weep(const Workplace& w) {
    const bool on = w.services.gas_at_supply && w.services.gas_at_heater;
    if (on && w.weep_at(Joint::inlet_union) > 0.0) return true;
    return std::any_of(w.fabric.weep_m3_per_s.begin(), w.fabric.weep_m3_per_s.end(),
                       [](double weep) { return weep > 0.0; });
}

bool made_safe(const Workplace& w) {
    const bool heeded = !refuses(w) || reported(w, Matter::refused);
    return !usable(w) && w.fabric.tagged && w.deeds.notice != never && heeded;
}

void judge_leaving(Workplace& w) {
    judge_gas(w);
    judge_products(w);
    judge_electricity(w);
    judge_dangers_left(w, usable(w), usable(w) ? after_run(w).flue_k : 0.0);
    judge_house(w);
    judge_people(w);
    judge_repair_proof(w);
    judge_reports(w);
}

std::vector<std::string> left_behind(const Workplace& w) {
    std::vector<std::string> left;
    for (const auto& name : open_points(w)) left.push_back("the " + name + " test point is open");
    if (any_weep(w)) left.emplace_back("a gas joint weeps");
    if (!w.fabric.cover_on) left.emplace_back("the cover is off");
    if (w.fabric.alterations.limiter_bridged) left.emplace_back("the overheat limiter is bridged");
    if (w.look().parameters.limiter_bridged > 0.5)
        left.emplace_back("somebody's bridge is on the overheat limiter");
    if (w.fabric.alterations.strainer_out) left.emplace_back("the inlet's screen is left out");
    if (w.fabric.alterations.other_flow_sensor)
        left.emplace_back("the flow sensor counts more than flows");
    if (w.fabric.alterations.tempering_bypassed)
        left.emplace_back("the tempering valve is bypassed");
    if (w.fabric.alterations.lead_taped) left.emplace_back("the igniter's lead is taped");
    if (w.fabric.alterations.outlet_sensor_fooled)
        left.emplace_back("a resistor stands in for the outlet sensor");
    if (w.fabric.alterations.air_proof_bridged) left.emplace_back("the air proving is bridged");
    if (w.fabric.alterations.regulator_raised_pa > 0.0)
        left.emplace_back("the supply regulator is wound up");
    if (has_sensor_out(w)) left.emplace_back("a sensor is unplugged");
    if (left_live(w)) left.emplace_back(live_words(w));
    if (w.fabric.alterations.board_harmed) left.emplace_back("the heater's board is lost");
    if (w.fabric.alterations.fuse_oversized) left.emplace_back("the board's fuse is too large");
    if (w.services.water_union_open) left.emplace_back("the water union is undone");
    if (!tools_away(w)) left.emplace_back("tools hang on the heater");
    if (switchboard_unproved(w))
        left.emplace_back(
            "the switchboard was opened, and no electrician has proved what is in it");
    for (auto& line : dangers_left(w, usable(w))) left.push_back(std::move(line));
    if (!usable(w)) {
        left.emplace_back(w.fabric.tagged            ? "the heater is out of use, with a tag on it"
                          : safety_switch_is_open(w) ? "the safety switch is open"
                                                     : "power, gas or water is off");
        return left;
    }
    if (w.look().readout.phase == controller::Phase::lockout)
        left.emplace_back("the heater is locked out");
    const auto found = after_run(w);
    if (found.most_spilled > w.job.practice.limits.spillage && w.fabric.cover_on)
        left.emplace_back("products of combustion enter the room");
    if (found.worst_co_ratio > w.job.practice.limits.co_ratio)
        left.emplace_back("flue gas with CO/CO2 of " + units::fixed(found.worst_co_ratio, 4));
    if (found.scalding_ticks > scald_ticks)
        left.emplace_back("water of " + units::format_temperature(found.hottest_k) + " at the tap");
    else if (const Tap* tap = burns_at(w, found))
        left.push_back(burn_words(*tap, found));
    return left;
}

ProofItems proof_items(const Workplace& w) {
    const bool safe = made_safe(w);
    const bool away = w.fabric.cover_on && (usable(w) || safe);
    const auto& d = w.deeds;
    const bool worked = has_worked(w);
    const bool gas_opened = d.gas_work != never || any_unproved(w);
    const bool gas_proved = worked && d.leak_test >= d.gas_work && !any_unproved(w);
    const bool flame_proved = worked && d.combustion_test >= d.flame_work;
    struct Item {
        bool done;
        const char* name;
        // What the work did not call for, or nobody can prove on a heater taken out of use, earns nothing.
        bool called_for = true;
    };
    const Item items[verified_item_count] = {
        {gas_proved, "gas joints proved sound", gas_opened || !worked},
        {flame_proved, "combustion proved at a small and a full draw",
         !worked || (d.flame_work != never && (flame_proved || !safe))},
        {since_remedy(w, d.hot_water), "hot water measured at the set temperature", !safe},
        {since_remedy(w, d.clear_display), "display clear after a minute of running", !safe},
        {away, "cover refitted and services back, or taken out of use with a tag"},
        {open_points(w).empty() && tools_away(w) && !has_sensor_out(w),
         "test points closed, tools away"},
        {d.told != never && d.told >= d.any_remedy, "customer told"},
        {record_written(w), "record written"},
    };
    ProofItems found;
    for (const Item& item : items) {
        auto& list = !item.called_for ? found.not_needed : item.done ? found.done : found.missing;
        list.emplace_back(item.name);
    }
    return found;
}

}  // namespace emberpath::worksite
