#include "sim/worksite/doses.hpp"

#include <algorithm>
#include <cmath>

#include "sim/exposure/shock.hpp"
#include "sim/properties/fuel_gas.hpp"
#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"

namespace emberpath::worksite {

namespace {

std::string current_line(const Doses& doses) {
    const auto in_ma = [](double current_a, int decimals) {
        return units::fixed(1000.0 * current_a, decimals) + " mA";
    };
    const bool held = doses.most_current_a >= exposure::holds_a;
    const std::string ended = !held ? ""
                              : std::isfinite(doses.current_cut_after_s)
                                  ? ", cut off by the safety switch after " +
                                        units::fixed(1000.0 * doses.current_cut_after_s, 0) + " ms"
                                  : ", with nothing that cuts it off";
    return "Most current through your body: " + in_ma(doses.most_current_a, 1) +
           (doses.current_path == ShockPath::hand_to_foot ? ", hand to foot" : ", hand to hand") +
           ended + "; from " + in_ma(exposure::holds_a, 0) + " a hand cannot let go, from " +
           in_ma(exposure::stops_a, 0) + " the heart may stop.";
}

}  // namespace

double lower_flammability(GasKind gas) {
    const auto species =
        gas == GasKind::natural_gas ? properties::Species::methane : properties::Species::propane;
    const auto limits = properties::flammability(species);
    return limits ? limits->lower_share : 1.0;
}

double flammable_share(GasKind gas, double escaped_m3) {
    return escaped_m3 / cloud_m3 / lower_flammability(gas);
}

void breathe(Doses& doses, double co_share, double seconds, const Limits& limits) {
    doses.breathed_s += co_share * seconds;
    if (co_share > limits.co_hour) doses.co_hour_s += seconds;
    if (co_share > limits.co_half_hour) doses.co_half_s += seconds;
    if (co_share > limits.co_quarter_hour) doses.co_quarter_s += seconds;
    doses.most_room_co = std::max(doses.most_room_co, co_share);
    if (co_share <= 0.0 && doses.blood_co <= exposure::blood_on_arrival) return;
    doses.blood_co = exposure::carboxyhaemoglobin_after(doses.blood_co, co_share, seconds,
                                                        exposure::light_work());
    doses.most_blood_co = std::max(doses.most_blood_co, doses.blood_co);
}

void meet_current(Doses& doses, const plant::Touch& touch, ShockPath path) {
    if (touch.current_a <= doses.most_current_a) return;
    doses.most_current_a = touch.current_a;
    doses.current_cut_after_s = touch.cut_after_s;
    doses.current_path = path;
}

std::string co_limit_reached(const Doses& doses, const Limits& limits) {
    constexpr double eight_hours_s = 8.0 * 3600.0, hour_s = 3600.0;
    const auto above = [](double share, std::string_view time) {
        return "more than " + units::format_ppm(share) + " of carbon monoxide for " +
               std::string(time);
    };
    if (doses.co_quarter_s > 0.25 * hour_s)
        return above(limits.co_quarter_hour, "a quarter of an hour");
    if (doses.co_half_s > 0.5 * hour_s) return above(limits.co_half_hour, "half an hour");
    if (doses.co_hour_s > hour_s) return above(limits.co_hour, "an hour");
    if (doses.breathed_s <= limits.co_eight_hours * eight_hours_s) return {};
    return "as much carbon monoxide as a mean of " + units::format_ppm(limits.co_eight_hours) +
           " over eight hours allows";
}

std::vector<std::string> dose_lines(const Doses& doses, const Limits& limits) {
    std::vector<std::string> lines{
        "Most carbon monoxide in your blood: " + units::per_cent(doses.most_blood_co, 1) +
        "; headache begins near " + units::per_cent(limits.blood_headache) + "."};
    if (doses.most_room_co > 0.5e-6)
        lines.push_back("Most carbon monoxide in the air you breathed: " +
                        units::format_ppm(doses.most_room_co) + "; the limit is " +
                        units::format_ppm(limits.co_eight_hours) + " as a mean over eight hours (" +
                        units::format_ppm(doses.breathed_s / (8.0 * 3600.0)) + " so far), " +
                        units::format_ppm(limits.co_ceiling) + " at no time.");
    if (doses.outside_s > 0.0)
        lines.push_back("Time in the open air, away from gas and fumes: " +
                        units::fixed(doses.outside_s / 60.0, 1) +
                        " min; carbon monoxide in your blood at the end: " +
                        units::per_cent(doses.blood_co, 1) + ".");
    if (doses.most_gas > 0.0005)
        lines.push_back("Most gas in the air at your hands: " + units::per_cent(doses.most_gas, 1) +
                        " of its lower flammability limit; it can flash at 100 %, one leaves at " +
                        units::per_cent(limits.gas_in_air) + ".");
    if (doses.hand_burn > 0.0005)
        lines.push_back("Heat in the skin of your hands: " + units::per_cent(doses.hand_burn) +
                        " of a burn; hottest metal " +
                        (doses.most_metal_k > 0.0 ? units::format_temperature(doses.most_metal_k)
                                                  : std::string("none")) +
                        ", hottest water " +
                        (doses.most_water_k > 0.0 ? units::format_temperature(doses.most_water_k)
                                                  : std::string("none")) +
                        ".");
    if (doses.most_current_a >= exposure::felt_a) lines.push_back(current_line(doses));
    return lines;
}

void add_to(math::Hash& hash, const Doses& d) {
    for (const double value :
         {d.blood_co, d.most_blood_co, d.breathed_s, d.most_room_co, d.co_hour_s, d.co_half_s,
          d.co_quarter_s, d.most_gas, d.hand_burn, d.most_metal_k, d.most_water_k,
          d.co_alarm_on ? 1.0 : 0.0, d.co_alarm_sounding ? 1.0 : 0.0, d.most_current_a,
          static_cast<double>(d.current_path)})
        hash.add(value);
    if (d.outside_s > 0.0) hash.add(d.outside_s);
    if (std::isfinite(d.current_cut_after_s)) hash.add(d.current_cut_after_s);
}

}  // namespace emberpath::worksite
