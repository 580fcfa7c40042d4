#pragma once
/// What the person at work has taken up, tick by tick: carbon monoxide in the blood, heat in the skin, gas in
/// the air at their hands, and the most current that went through them. Distance to harm, not a switch: docs/safety.md gives the sources.

#include <limits>
#include <string>
#include <vector>

#include "sim/exposure/carbon_monoxide.hpp"
#include "sim/math/hash.hpp"
#include "sim/plant/electrical_network.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::worksite {

/// The way of a current through a body.
enum class ShockPath { none, hand_to_foot, hand_to_hand };

struct Doses {
    double blood_co = exposure::blood_on_arrival;  // share of haemoglobin
    double most_blood_co = exposure::blood_on_arrival;
    double breathed_s = 0.0;      // share of carbon monoxide in the air x seconds
    double most_room_co = 0.0;    // share
    double co_hour_s = 0.0;       // in air above the limit for an hour
    double co_half_s = 0.0;       // in air above the limit for half an hour
    double co_quarter_s = 0.0;    // in air above the limit for a quarter of an hour
    double most_gas = 0.0;        // of the lower flammability limit, where the hands are
    double hand_burn = 0.0;       // share of a burn that blisters
    double most_metal_k = 0.0;    // touched with bare hands
    double most_water_k = 0.0;    // on bare hands
    double most_current_a = 0.0;  // through the body, bare hands
    double current_cut_after_s = std::numeric_limits<double>::infinity();  // by the safety switch
    ShockPath current_path = ShockPath::none;
    double outside_s = 0.0;    // in the open air
    bool co_alarm_on = false;  // worn and switched on
    bool co_alarm_sounding = false;
};

/// Gas gathered in the chamber that lights with a thump [m3]; a clean light-up has a tenth of it: chosen.
inline constexpr double hard_light_up_m3 = 0.35e-3;

/// Gas gathers around the work before it thins out [m3]: chosen so that three litres of methane are its lower
/// flammability limit.
inline constexpr double cloud_m3 = 0.06;
/// Share of gas in air at which a flame can begin to spread; see sim/properties/fuel_gas.
[[nodiscard]] double lower_flammability(GasKind gas);
/// Gas at the work as a share of its lower flammability limit.
[[nodiscard]] double flammable_share(GasKind gas, double escaped_m3);

/// One tick of breathing, light work. In clean air with a blood as on arrival nothing changes.
void breathe(Doses& doses, double co_share, double seconds, const Limits& limits);

/// A touch: the highest current through the body, its way and when the safety switch cut it are kept.
void meet_current(Doses& doses, const plant::Touch& touch, ShockPath path);

/// Which limit over time has been reached, in words: what was breathed as a mean over eight hours, or the time
/// above a higher share of which an hour, half of one or a quarter is allowed. Empty: none.
/// Source   the limits' own; no other exposure that day is assumed
[[nodiscard]] std::string co_limit_reached(const Doses& doses, const Limits& limits);

/// Distance to harm, a line for each kind: "most carbon monoxide in your blood: 1.2 %; headache begins near
/// 10 %". Only what was met, and the blood always.
[[nodiscard]] std::vector<std::string> dose_lines(const Doses& doses, const Limits& limits);

void add_to(math::Hash& hash, const Doses& doses);

}  // namespace emberpath::worksite
