// Proves what an analyser works out, and the exact balances beside it, against published formulas and values.

#include <gtest/gtest.h>

#include "sim/properties/combustion.hpp"
#include "sim/properties/flue_analysis.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::mentions;
using reference::number_after;
using reference::quantity;
using reference::Row;
using reference::rows;
using reference::Skip;

const SiegertConstants& siegert(const Row& row) {
    const std::string& q = row.quantity;
    if (q.find("natural gas") != std::string::npos) return siegert_natural_gas;
    if (q.find("LPG") != std::string::npos) return siegert_lpg;
    if (q.find("light oil") != std::string::npos) return siegert_light_oil;
    if (q.find("town gas") != std::string::npos) return siegert_town_gas;
    throw std::runtime_error("no such fuel");
}

double siegert_loss(const Row& row) {
    return 100.0 * siegert_flue_loss(siegert(row), after(row, "tA ") - after(row, "tL "),
                                     after(row, "O2 ") / 100.0);
}

Species fuel_of(const Row& row) {
    return row.quantity.find("propane") != std::string::npos ? Species::propane : Species::methane;
}

double dry_oxygen(const Row& row) {
    return mentions(row, "dry O2 ") ? after(row, "dry O2 ") / 100.0 : 0.0;
}

double lambda(const Row& row) {
    return excess_air_ratio_from_oxygen(atoms(fuel_of(row)), dry_oxygen(row));
}

Products products_of(const Row& row) {
    return complete_combustion(atoms(fuel_of(row)), lambda(row));
}

FlueLoss loss(const Row& row) {
    return flue_loss(fuel_of(row), lambda(row), after(row, "fuel and air ") + 273.15,
                     after(row, "flue ") + 273.15);
}

std::vector<Check> balance_checks() {
    return {
        {"excess_air_ratio_from_oxygen", quantity("excess-air ratio"), lambda},
        {"complete_combustion.dry_carbon_dioxide_share", quantity("dry CO2"),
         [](const Row& row) { return 100.0 * products_of(row).dry_carbon_dioxide_share(); }},
        {"flue_loss.net", quantity("sensible flue loss"),
         [](const Row& row) { return 100.0 * loss(row).net_share; }},
        {"flue_loss.gross", quantity("total flue loss"),
         [](const Row& row) { return 100.0 * loss(row).gross_share; }},
        {"dew_point_k", quantity("flue gas dew point"),
         [](const Row& row) {
             return dew_point_k(products_of(row), before(row, " kPa") * 1e3) - 273.15;
         }},
    };
}

std::vector<Check> instrument_checks() {
    return {
        {"SiegertConstants.a1", quantity("Siegert constant A1"),
         [](const Row& row) { return siegert(row).a1; }},
        {"SiegertConstants.a2", quantity("Siegert constant A2"),
         [](const Row& row) { return siegert(row).a2; }},
        {"SiegertConstants.b", quantity("Siegert constant B"),
         [](const Row& row) { return siegert(row).b; }},
        {"siegert_flue_loss", quantity("Siegert flue loss"), siegert_loss},
        {"co2_from_oxygen", quantity("CO2 from O2"),
         [](const Row& row) {
             return 100.0 *
                    co2_from_oxygen(after(row, "CO2max ") / 100.0, after(row, "O2 ") / 100.0);
         }},
        {"instrument_excess_air_ratio", quantity("excess air ratio from O2"),
         [](const Row& row) {
             return instrument_excess_air_ratio(number_after(row.conditions, ", O2 ") / 100.0);
         }},
        {"air_free_co", quantity("air-free CO"),
         [](const Row& row) {
             return air_free_co(after(row, "CO "), after(row, "at O2 ") / 100.0);
         }},
        {"co_to_co2_ratio", quantity("CO/CO2 ratio"),
         [](const Row& row) {
             return co_to_co2_ratio(after(row, "CO ") * 1e-6, after(row, "CO2 ") / 100.0);
         }},
        {"at_reference_oxygen", quantity("conversion of CO"),
         [](const Row& row) {
             return at_reference_oxygen(after(row, "CO "), after(row, "at ") / 100.0,
                                        after(row, "to ") / 100.0);
         }},
    };
}

TEST(FlueAnalysisReference, MatchesEveryPublishedRow) {
    std::vector<Check> checks = balance_checks();
    for (Check& check : instrument_checks()) checks.push_back(std::move(check));
    const std::vector<Skip> skips{
        {quantity("UK action level"),
         "a limit set by an organisation: configuration, not a property"},
    };
    reference::check_file("08_combustion_analysis", checks, skips);
}

}  // namespace
}  // namespace emberpath::properties
