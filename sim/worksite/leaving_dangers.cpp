// What is left behind of the dangers of a house that are not the heater's own fault.

#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/properties/air.hpp"
#include "sim/properties/lpg.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

constexpr double flue_outlet_k = 333.15;  // where the flue blows: chosen
constexpr double reaches_wood = 0.6;      // of the flue's excess temperature, a finger away: chosen
constexpr double acid_tasted = 0.05;

void judge_gas_in_house(Workplace& w) {
    const auto& p = w.precautions;
    if (p.gas_on_arrival && !p.people_out)
        w.breach("people_in_gas", "The people of the house stayed in it while it smelt of gas.");
    const bool sinks = w.job.site.gas == GasKind::propane_cylinder && w.job.site.dangers.low_place;
    if (!sinks) return;
    const double limit = w.job.practice.limits.gas_in_air;
    const bool escaped = p.gas_on_arrival || w.doses.most_gas > limit;
    if (escaped && !p.low_checked)
        w.breach("low_unchecked", "Propane escaped, and nobody held a detector down the drain.");
    if (low_gas_share(w) > limit)
        w.breach("low_gas_left",
                 "Propane lies in the drain: " + burnable_words(low_gas_share(w)) + ".");
}

void judge_cylinder(Workplace& w) {
    if (!w.job.site.dangers.cylinder_close || w.precautions.cylinder_moved) return;
    // Where the rules name nobody who would move it, telling the household alone moves nothing.
    const bool somebody = !whom_to_tell(w, Matter::cylinder_place).empty();
    if (somebody && reported(w, Matter::cylinder_place) && w.deeds.told != never) return;
    w.breach("cylinder_left",
             "The cylinder stays where the flue blows: " + gauge_words(w.job.site.ambient_k) +
                 " above the air's pressure in it now, " + gauge_words(flue_outlet_k) + " at " +
                 units::format_temperature(flue_outlet_k) + ".");
}

/// Timber takes part of what the flue is hotter than the air.
void judge_scorch(Workplace& w, double flue_k) {
    if (!w.job.site.dangers.scorched) return;
    const double air_k = w.job.site.ambient_k;
    const double wood_k = air_k + reaches_wood * std::max(0.0, flue_k - air_k);
    w.breach("scorch_left", "Left in use beside browned timber, which gets to " +
                                units::format_temperature(wood_k) + ".");
}

/// An open flue is proved with the room at its worst, after work on flame or flue.
void judge_draught(Workplace& w) {
    const auto& p = w.precautions;
    const bool worked = w.job.healthy.open_flued > 0.5 && w.deeds.flame_work != never;
    if (!worked || p.draught_tested >= w.deeds.flame_work) return;
    const Observation* smoke = latest_since(w, Quantity::diverter_smoke, w.deeds.flame_work);
    const bool not_drawn = smoke != nullptr && smoke->value > 0.5;
    w.breach("draught_untested",
             not_drawn ? "The smoke of the latest draught test was not drawn in."
             : p.draught_kindly
                 ? "The draught of the open flue was tested kindly: not at the running burner with "
                   "windows shut and every fan on."
                 : "The draught of the open flue was not tested after work on flame or flue.");
}

/// Whoever put it there: found and left is left.
void judge_bridges(Workplace& w) {
    const bool limiter = limiter_is_held_shut(w);
    const bool air = w.fabric.alterations.air_proof_bridged;
    if (!limiter && !air) return;
    w.breach("bridge_left", std::string("Left in use with ") +
                                (limiter ? "the overheat limiter" : "the air proving") +
                                (limiter && air ? " and the air proving bridged." : " bridged."));
}

/// Stored by the trainee, if anything was.
std::optional<double> stored(const Workplace& w, controller::Setting setting) {
    return w.fabric.alterations.stored[static_cast<std::size_t>(setting)];
}

/// Somebody stored another gas than the plate names, or another height than the house's, and left the heater usable.
void judge_stored(Workplace& w) {
    std::string text;
    const auto gas = stored(w, controller::Setting::gas);
    if (gas && (*gas > 0.5) != (w.job.settings.plate_gas > 0.5))
        text = "Left set to another gas than its data plate names.";
    const auto height_m = stored(w, controller::Setting::altitude);
    const double nearest_m = controller::nearest_altitude_step_m(w.job.site.altitude_m);
    if (height_m && std::abs(*height_m - nearest_m) > 0.5 * controller::altitude_step_m)
        text += (text.empty() ? "" : " ") +
                ("Left set to a height of " + units::fixed(*height_m, 0) +
                 " m; the house lies at " + units::fixed(w.job.site.altitude_m, 0) + " m.");
    if (!text.empty()) w.breach("off_plate", text);
}

}  // namespace

std::string gauge_words(double propane_k) {
    const double absolute_pa =
        properties::saturated_lpg(properties::Liquefied::propane, propane_k).pressure_pa;
    return units::fixed((absolute_pa - properties::standard_pressure_pa) / 1000.0, 0) + " kPa";
}

bool limiter_is_held_shut(const Workplace& w) {
    return w.heater.plant.parameters.limiter_bridged > 0.5 || w.fabric.alterations.limiter_bridged;
}

void judge_dangers_left(Workplace& w, bool usable, double flue_k) {
    if (usable) judge_bridges(w);
    if (usable && too_much_pressure(w))
        w.breach("pressure_left",
                 "Left in use behind a gas regulator that " + pressure_words(w) + ".");
    judge_gas_in_house(w);
    judge_cylinder(w);
    if (usable) judge_scorch(w, flue_k);
    if (usable) judge_draught(w);
    if (usable) judge_stored(w);
    if (w.precautions.acid_share > acid_tasted)
        w.breach("acid_to_taps", "Descaling acid was left in the water for whoever draws next.");
}

std::vector<std::string> dangers_left(const Workplace& w, bool usable) {
    std::vector<std::string> left;
    if (w.fabric.alterations.without_safety_switch)
        left.emplace_back("the heater is fed from an outlet without a safety switch");
    if (w.precautions.sheet_disturbed) left.emplace_back("dust that may hold asbestos lies about");
    if (w.precautions.acid_share > acid_tasted)
        left.emplace_back("descaling acid stands in the heater");
    if (low_gas_share(w) > w.job.practice.limits.gas_in_air)
        left.emplace_back("propane lies in the drain");
    if (w.job.site.dangers.cylinder_close && !w.precautions.cylinder_moved)
        left.emplace_back("the cylinder stands where the flue blows");
    const bool own_doing = w.fabric.alterations.regulator_raised_pa > 0.0;  // said by left_behind()
    if (usable && !own_doing && too_much_pressure(w))
        left.emplace_back("gas comes by a regulator that " + pressure_words(w));
    if (w.job.site.dangers.scorched && usable)
        left.emplace_back("something that burns is too close to the flue");
    return left;
}

}  // namespace emberpath::worksite
