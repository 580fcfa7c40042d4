#include "sim/plant/water_network.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

namespace {

using Q = Quantity;

constexpr double drips_m3_per_s = 1.0e-8;                     // a drop in five seconds
constexpr double wet_kg = 0.02;                               // on the floor of the case
constexpr double hangs_share = 0.02, blown_out_share = 0.15;  // of the products: chosen

std::size_t changeover_look(double reserve_share) {
    if (reserve_share < 0.05) return change_first;
    return reserve_share > 0.95 ? change_reserve : change_both;
}

std::size_t smoke_look(const plant::Observables& seen) {
    if (seen.air_m3_per_s <= 1.0e-4 || seen.spilled_share < hangs_share) return smoke_drawn_in;
    return seen.spilled_share < blown_out_share ? smoke_hangs : smoke_blown_out;
}

/// Nobody draws water and the street is at its quietest.
double night_pressure_pa(const HeaterView& heater, const TickInputs& inputs) {
    plant::Surroundings night = inputs.surroundings;
    night.night = 1.0;
    return plant::mains_pressure(heater.parameters, night);
}

}  // namespace

std::optional<double> house_value(Quantity quantity, const HeaterView& heater,
                                  const TickInputs& inputs) {
    const plant::Observables& seen = heater.plant;
    switch (quantity) {
        case Q::room_co:
            return seen.room_co_share;
        case Q::case_co:
            return seen.casing_co_share;
        case Q::intake_o2:
            return seen.intake_o2_share;
        case Q::water_pressure:
            return seen.cold_water_pa;
        case Q::night_water_pressure:
            return night_pressure_pa(heater, inputs);
        case Q::reserve_mass:
            return seen.reserve_kg;
        case Q::changeover_indicator:
            return static_cast<double>(changeover_look(seen.reserve_in_use));
        case Q::relief_drain:
            return seen.relief_weep_m3_per_s > drips_m3_per_s ? relief_drips : relief_dry;
        case Q::casing_wet:
            return seen.casing_water_kg > wet_kg ? case_wet : case_dry;
        case Q::diverter_smoke:
            return static_cast<double>(smoke_look(seen));
        default:
            return std::nullopt;
    }
}

}  // namespace emberpath::worksite
