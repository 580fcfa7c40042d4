// What follows where a precaution was left out, tick by tick and act by act.

#include "sim/worksite/dangers.hpp"

#include <algorithm>
#include <cmath>

#include "sim/exposure/contact.hpp"
#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::worksite {

namespace {

using faults::Remedy;

constexpr double low_place_m3 = 0.1;  // of air in the drain: chosen
constexpr double gravity_m_per_s2 = 9.80665;
constexpr double roof_above_air_k = 25.0;  // under a sheet roof by day: chosen
// A crawl there and back; short spells with a break where it is hot are common practice. Times chosen.
constexpr double roof_crawl_s = 240.0, roof_rest_s = 600.0;
constexpr std::int64_t ticks_in_gas = 600;         // a minute is enough to leave
constexpr std::int64_t ticks_of_open_case = 3000;  // until a child comes: chosen
constexpr double union_bore_m2 = 0.6 * 5.0e-5;     // discharge coefficient x bore of 8 mm
constexpr double until_shut_s = 20.0;              // somebody runs to the stop tap
constexpr double drain_bore_m2 = 0.6 * 1.26e-5;    // discharge coefficient x bore of 4 mm: chosen
constexpr double bucket_m3 = 10.0e-3;              // what it holds: chosen
constexpr double held_water_m3 = 1.2e-3;           // in heater and pipes
constexpr double water_kg_per_m3 = 1000.0;
constexpr double acid_m3 =
    3.0e-3;  // of water in which acid is left behind: heater and delivery pipe
constexpr double acid_nobody_tastes = 0.01;
constexpr double trickle_m3_per_s = 1.0e-6;

std::string litres(double m3) {
    return units::fixed(m3 * 1000.0, m3 < 10.0e-3 ? 1 : 0) + " litres";
}

/// Who has led the others out calls from where they wait.
bool telephones_inside(const Workplace& w, const Act& act) {
    return (act.verb == Verb::escalate || act.verb == Verb::hand_on) && !w.precautions.people_out &&
           !w.person.outside;
}

/// Anything that makes a spark or lights a flame.
bool makes_a_spark(const Workplace& w, const Act& act) {
    switch (act.verb) {
        case Verb::power_on:
        case Verb::power_off:
        case Verb::plug_in:
        case Verb::unplug:
        case Verb::turn_on:
        case Verb::turn_off:
        case Verb::board_on:
        case Verb::board_off:
        case Verb::close_safety_switch:
        case Verb::test_safety_switch:
        case Verb::time_safety_switch:
        case Verb::run_fan:
        case Verb::stop_fan:
        case Verb::press_reset:
        case Verb::bypass_safety_switch:  // both move the plug
        case Verb::restore_safety_switch:
            return true;
        case Verb::escalate:
        case Verb::hand_on:
            return telephones_inside(w, act);
        case Verb::open_tap:
            return w.powered() && w.services.gas_at_heater && w.services.gas_at_supply;
        default:
            return false;
    }
}

void stay_in_gas(Workplace& w) {
    const double share = flammable_share(w.job.site.gas, w.escaped_gas_m3);
    if (share <= w.job.practice.limits.gas_in_air || w.precautions.aired || w.person.outside)
        return;
    if (++w.precautions.in_gas_ticks == ticks_in_gas)
        w.breach("stayed_in_gas", "You stayed a minute in air with " + burnable_words(share) +
                                      ", doors and windows shut.");
}

void pass_acid_on(Workplace& w) {
    const auto& taps = w.services.tap_opening;
    if (std::all_of(taps.begin(), taps.end(), [](double one) { return one <= 0.0; })) return;
    const double flow = w.look().plant.hot_water_m3_per_s;
    if (flow < trickle_m3_per_s) return;
    auto& p = w.precautions;
    p.most_acid = std::max(p.most_acid, p.acid_share);
    w.breach("acid_to_taps", "Water with " + units::fixed(100.0 * p.acid_share, 0) +
                                 " % of the descaling acid left in it came out of a tap.");
    p.acid_share *= 1.0 - std::min(1.0, tick_s * flow / acid_m3);
    if (p.acid_share < acid_nobody_tastes) p.acid_share = 0.0;
}

/// A child reaches past the person at work and draws its hand back as everybody does.
void meet_a_child(Workplace& w) {
    const auto& p = w.precautions;
    if (!w.job.site.dangers.children || p.kept_away || p.people_out) return;
    const double metal_k = w.look().plant.hottest_metal_k;
    w.precautions.child_burn += exposure::contact_burn_share(metal_k, exposure::drawn_back_after_s);
    w.say(w.person.outside ? "A child has reached into the open heater."
                           : "A child reaches past you into the open heater.");
    w.breach("bystander", "A child reached into the open heater: metal at " +
                              units::format_temperature(metal_k) + ", " +
                              units::fixed(w.terminals_v(), 0) + " V on the terminals.");
}

void go_up_ladder(Workplace& w) {
    const Dangers& d = w.job.site.dangers;
    if (d.terminal_height_m < w.job.practice.limits.ladder_height_m) return;
    if (!w.precautions.ladder_checked)
        w.breach("ladder_unchecked", "You went up " + units::fixed(d.terminal_height_m, 1) +
                                         " m without a look at ground, wind and ties.");
    const bool slides = d.soft_ground && !w.precautions.ladder_tied;
    if (!slides && !too_windy_for_ladders(w)) return;
    const double speed = std::sqrt(2.0 * gravity_m_per_s2 * d.terminal_height_m);
    w.end_badly("fall",
                std::string(slides ? "The ladder's feet slide" : "A gust takes the ladder") +
                    ": you fall " + units::fixed(d.terminal_height_m, 1) + " m and land at " +
                    units::fixed(speed, 1) + " m/s.");
}

/// Nobody stays in such heat for long: beyond the limit the head swims, at twice of it one faints there.
void stay_in_roof(Workplace& w, const std::string& heat) {
    auto& p = w.precautions;
    const bool rested =
        p.roof_left_tick != never && w.tick() - p.roof_left_tick >= ticks_in(roof_rest_s);
    if (rested) p.roof_s = 0.0;
    p.roof_s += roof_crawl_s;
    p.longest_roof_s = std::max(p.longest_roof_s, p.roof_s);
    w.pass(roof_crawl_s);
    p.roof_left_tick = w.tick();
    if (p.roof_s <= w.job.practice.limits.roof_stay_s || w.over()) return;
    const std::string stayed = units::fixed(p.roof_s / 60.0, 0) +
                               " minutes in the roof space, at " + heat + ", with no break of " +
                               units::fixed(roof_rest_s / 60.0, 0) + " minutes between";
    w.say("Your head swims and your shirt is soaked.");
    w.breach("roof_space", "You were " + stayed + "; " +
                               units::fixed(w.job.practice.limits.roof_stay_s / 60.0, 0) +
                               " are enough.");
    if (p.roof_s <= 2.0 * w.job.practice.limits.roof_stay_s) return;
    w.end_badly(
        "roof_space",
        "After " + stayed + ", you faint. " +
            (p.place_told
                 ? "Somebody who knew where you were comes to look, and you are helped down."
                 : "Nobody knows where you are."));
}

/// The pipe run is seen by crawling along it, there and back.
void go_into_roof(Workplace& w) {
    if (!w.job.site.dangers.pipe_in_roof) return;
    auto& p = w.precautions;
    const double air_k = w.job.site.ambient_k + roof_above_air_k;
    const std::string heat = units::format_temperature(air_k);
    p.hottest_roof_k = std::max(p.hottest_roof_k, air_k);
    w.say("You crawl along the pipe in the roof space, at " + heat + ".");
    const bool live = w.services.main_switch_on;
    if (!p.place_told || live)
        w.breach("roof_space", "You crawled through the roof space at " + heat +
                                   (p.place_told ? "" : ", nobody knowing where you were") +
                                   (live ? ", with cables beside you live." : "."));
    stay_in_roof(w, heat);
}

void disturb_sheet(Workplace& w) {
    if (!w.job.site.dangers.old_sheet) return;
    w.precautions.sheet_disturbed = true;
    w.breach("fibres",
             "Grey sheet that may hold asbestos was broken at its edge; its dust is in "
             "the air and on your clothes.");
}

double jet_m_per_s(const Workplace& w) {
    return std::sqrt(2.0 * w.job.site.mains_water_pa / water_kg_per_m3);
}

/// Over the floor, and over the board where that stands open.
void spill(Workplace& w, bool shut) {
    const double ran_out_m3 = shut ? held_water_m3 : union_bore_m2 * jet_m_per_s(w) * until_shut_s;
    w.precautions.spilt_water_m3 += ran_out_m3;
    w.say("Water runs out, " + litres(ran_out_m3) + " of it.");
    w.breach(shut ? "not_drained" : "water_not_shut",
             litres(ran_out_m3) + " of water ran over the floor" +
                 (w.fabric.cover_on ? "." : " and over the board."));
    if (w.fabric.cover_on) return;
    w.services.damp = 1.0;
    if (!shut)
        lose_board(w, "Water ran over the open board, and it is lost.",
                   "shut the water and drain the heater before its water side is opened");
}

}  // namespace

std::string burnable_words(double share) {
    return units::per_cent(share) + " of what can burn";
}

bool works_at_terminal(Remedy remedy) {
    return remedy == Remedy::clear_flue_terminal || remedy == Remedy::fit_wind_guard ||
           remedy == Remedy::clear_open_flue;
}

bool opens_water_side(Remedy remedy) {
    switch (remedy) {
        case Remedy::clean_strainer:
        case Remedy::replace_water_valve:
        case Remedy::replace_bypass_valve:
        case Remedy::replace_flow_sensor:
        case Remedy::descale_exchanger:
        case Remedy::replace_leaking_tube:
        case Remedy::fit_pressure_limiter:
        case Remedy::repair_mixer:
        case Remedy::replace_tempering_valve:
            return true;
        default:
            return false;
    }
}

double air_let_in_m3(Remedy remedy) {
    // A screen is as much as a hose holds; a valve or a union that is off leaves the pipe open to the air.
    constexpr double hose_m3 = 0.3e-3, pipe_m3 = 1.5e-3;  // chosen
    if (remedy == Remedy::change_cylinder || remedy == Remedy::clean_gas_screen) return hose_m3;
    const bool pipe = remedy == Remedy::replace_gas_valve || remedy == Remedy::remake_inlet_union;
    return pipe ? pipe_m3 : 0.0;
}

double low_gas_share(const Workplace& w) {
    return w.precautions.low_gas_m3 / low_place_m3 / lower_flammability(w.job.site.gas);
}

bool too_windy_for_ladders(const Workplace& w) {
    return std::abs(w.services.wind_pa) > w.job.practice.limits.ladder_wind_pa;
}

void meet_house(Workplace& w) {
    constexpr double renewed_in_s = 180.0, hour_s = 3600.0, weep_at_pa = 2000.0;
    const double leak = w.job.site.dangers.leak_m3_per_s;
    if (leak <= 0.0) return;
    constexpr auto at = static_cast<std::size_t>(Joint::regulator);
    w.fabric.weep_m3_per_s[at] = leak;
    const double pressure_pa = std::max(0.0, w.look().plant.regulator_outlet_pa);
    const double rate = leak * std::sqrt(pressure_pa / weep_at_pa);
    w.escaped_gas_m3 = rate * renewed_in_s;
    w.precautions.gas_on_arrival = true;
    const bool sinks = w.job.site.gas == GasKind::propane_cylinder && w.job.site.dangers.low_place;
    if (sinks) w.precautions.low_gas_m3 = sinking_share * rate * hour_s;
}

void follow_dangers(Workplace& w) {
    if (w.escaped_gas_m3 > 0.0) stay_in_gas(w);
    if (w.precautions.acid_share > 0.0) pass_acid_on(w);
    auto& open_ticks = w.precautions.open_case_ticks;
    open_ticks = w.fabric.cover_on ? 0 : open_ticks + 1;
    if (open_ticks == ticks_of_open_case) meet_a_child(w);
}

void settle_low_gas(Workplace& w, double escaping_m3_per_s) {
    if (w.job.site.gas != GasKind::propane_cylinder || !w.job.site.dangers.low_place) return;
    const double renewed_in_s = w.precautions.aired ? 300.0 : 3600.0;
    auto& low = w.precautions.low_gas_m3;
    low += tick_s * (sinking_share * escaping_m3_per_s - low / renewed_in_s);
    if (escaping_m3_per_s <= 0.0 && low < 1.0e-7) low = 0.0;
}

void judge_spark(Workplace& w, const Act& act) {
    if (!w.smells_gas() || !makes_a_spark(w, act)) return;
    const double share = flammable_share(w.job.site.gas, w.escaped_gas_m3);
    const std::string where = burnable_words(share);
    const bool telephone = telephones_inside(w, act);
    w.breach("spark_in_gas",
             std::string(telephone ? "A telephone was used" : "A switch or a flame was worked") +
                 " in air that smelt of gas: " + where + ".");
    if (share >= 1.0)
        w.end_badly("flash", std::string(telephone ? "The telephone" : "The switch") +
                                 " sparks in " + where + ", and it flashes.");
}

double seconds_here(const Workplace& w, const Act& act) {
    const bool along_it =
        act.verb == Verb::look && act.object == static_cast<std::size_t>(Thing::gas_pipe_run);
    const bool crawls = along_it && w.job.site.dangers.pipe_in_roof;
    return seconds_of(act) + (crawls ? roof_crawl_s : 0.0);
}

void judge_places(Workplace& w, const Act& act) {
    const bool looks = act.verb == Verb::look;
    const auto thing = static_cast<Thing>(act.object);
    const bool remedies =
        act.verb == Verb::remedy && works_at_terminal(static_cast<Remedy>(act.remedy));
    if ((looks && thing == Thing::flue_terminal) || remedies) go_up_ladder(w);
    if (w.over()) return;
    if (remedies) disturb_sheet(w);
    if (looks && thing == Thing::gas_pipe_run) go_into_roof(w);
}

void open_water_side(Workplace& w, Remedy remedy) {
    if (!opens_water_side(remedy)) return;
    const bool shut = !w.services.water_at_heater;
    if (!shut || !w.precautions.drained) spill(w, shut);
}

void run_out_until_shut(Workplace& w) {
    spill(w, false);  // within the time of the act
    w.services.water_at_heater = false;
    w.say("You have shut the water at the heater.");
    w.changed();
}

void drain_under_pressure(Workplace& w, double seconds) {
    const double ran_m3 = drain_bore_m2 * jet_m_per_s(w) * seconds;
    w.precautions.drained = false;
    w.say("It runs on with the water open and does not drain: " + litres(ran_m3) + " in " +
          units::fixed(seconds / 60.0, 0) + " minutes.");
    const double over_m3 = ran_m3 - bucket_m3;
    if (over_m3 <= 0.0) return;
    w.precautions.spilt_water_m3 += over_m3;
    w.breach("water_not_shut", "The heater was drained with the water open; " + litres(over_m3) +
                                   " of water ran past the bucket and over the floor.");
}

void let_grit_in(Workplace& w) {
    constexpr double clogs_after_m3 = 0.3;  // of the water that blocked the screen: chosen
    constexpr double step = 0.02;
    const auto dirt = std::find_if(w.job.faults.begin(), w.job.faults.end(), [](const auto& one) {
        return one.cause == faults::Cause::strainer_blocked;
    });
    const auto& open = w.services.tap_opening;
    const bool runs = std::any_of(open.begin(), open.end(), [](double one) { return one > 0.0; });
    if (dirt == w.job.faults.end() || !runs) return;
    auto& through = w.precautions.unscreened_m3;
    through += tick_s * w.look().plant.hot_water_m3_per_s;
    const double grit = std::min(1.0, dirt->severity * through / clogs_after_m3);
    if (grit < w.fabric.alterations.grit + step) return;
    auto next = w.fabric.alterations;
    next.grit = grit;
    w.set_alterations(next);
}

void lose_board(Workplace& w, const std::string& how, std::string_view better) {
    auto next = w.fabric.alterations;
    next.board_harmed = true;
    w.set_alterations(next);
    w.breach("board_harmed", how, better);
}

void after_work(Workplace& w, Remedy remedy) {
    auto& p = w.precautions;
    p.air_in_pipe_m3 += air_let_in_m3(remedy);
    if (remedy == Remedy::descale_exchanger) p.acid_share = 1.0;
    if (remedy == Remedy::dry_and_reseal) p.wiring_work = w.tick();
}

void judge_untested_joint(Workplace& w) {
    if (w.precautions.tested_first) return;
    w.breach("no_leak_test_before",
             w.precautions.gas_on_arrival
                 ? "A gas joint was worked on before any leak test; one leaked already, and now it "
                   "is laid to you."
                 : "A gas joint was worked on before any leak test: what leaked before you came, "
                   "nobody can tell.");
}

std::vector<std::string> danger_lines(const Workplace& w) {
    const auto& p = w.precautions;
    std::vector<std::string> lines;
    if (p.spilt_water_m3 > 0.0)
        lines.push_back("Water over the floor: " + litres(p.spilt_water_m3) + ".");
    if (p.most_acid > 0.0)
        lines.push_back("Most descaling acid in the water of a tap: " +
                        units::per_cent(p.most_acid) + " of what was put in.");
    if (p.child_burn > 0.0005)
        lines.push_back("Heat in the skin of a child's hand: " + units::per_cent(p.child_burn) +
                        " of a burn.");
    if (p.hottest_roof_k > 0.0)
        lines.push_back(
            "Hottest air you worked in: " + units::format_temperature(p.hottest_roof_k) +
            ", in the roof space, for " + units::fixed(p.longest_roof_s / 60.0, 0) +
            " minutes with no break of " + units::fixed(roof_rest_s / 60.0, 0) + " between; " +
            units::fixed(w.job.practice.limits.roof_stay_s / 60.0, 0) + " are enough.");
    if (p.low_gas_m3 > 1.0e-5)
        lines.push_back("Gas lying in the drain: " + burnable_words(low_gas_share(w)) + ".");
    return lines;
}

}  // namespace emberpath::worksite
