#include "sim/scoring/hypotheses.hpp"

namespace emberpath::scoring {

namespace {

constexpr int cylinder_severity_count = 13;
constexpr double cylinder_step = 0.7;

// Where the whole range shows in readings hardly farther apart than they are blurred, fewer shadows stand
// for it: neighbours stay within two widths of each other (tests/unit/scoring/severities_test.cpp).
int count_of(faults::Cause cause) {
    switch (cause) {
        case faults::Cause::electrode_fouled:
        case faults::Cause::moisture_in_heater:
        case faults::Cause::igniter_lead_cracked:
        case faults::Cause::pinhole_inside:
        case faults::Cause::gas_union_weeps:
            return 3;
        case faults::Cause::ambient_sensor_drift:
        case faults::Cause::supply_sags:
        case faults::Cause::exchanger_scaled:
            return 4;
        default:
            return severity_count;
    }
}

// Evenly over the symptomatic range. A cylinder's time until it fails goes with what is left in it, so
// there the remaining share falls by a constant factor, down to empty.
std::vector<double> severities_of(const faults::CauseInfo& cause) {
    if (cause.on_off || cause.cause == faults::Cause::no_fault) return {cause.greatest_severity};
    std::vector<double> grid;
    if (cause.cause == faults::Cause::cylinder_low) {
        double left = 1.0 - cause.least_severity;
        for (int i = 0; i + 1 < cylinder_severity_count; ++i, left *= cylinder_step)
            grid.push_back(1.0 - left);
        grid.push_back(cause.greatest_severity);
        return grid;
    }
    const double range = cause.greatest_severity - cause.least_severity;
    const int count = count_of(cause.cause);
    for (int i = 0; i < count; ++i) grid.push_back(cause.least_severity + range * i / (count - 1));
    return grid;
}

void append(std::vector<Hypothesis>& all, const faults::CauseInfo& cause, double sign,
            double prior) {
    const std::vector<double> grid = severities_of(cause);
    for (std::size_t i = 0; i < grid.size(); ++i) {
        Hypothesis h;
        h.fault.cause = cause.cause;
        h.fault.severity = sign * grid[i];
        h.remedy = cause.remedy;
        h.prior = prior;
        const int here = static_cast<int>(all.size());
        h.lower = i > 0 ? here - 1 : -1;
        h.upper = i + 1 < grid.size() ? here + 1 : -1;
        all.push_back(h);
    }
}

}  // namespace

std::vector<Hypothesis> hypotheses(const faults::SiteTraits& site) {
    std::vector<Hypothesis> all;
    double total = 0.0;
    for (const faults::CauseInfo& cause : faults::catalogue()) {
        if (!faults::can_act(cause, site)) continue;
        const std::size_t lanes = severities_of(cause).size() * (cause.has_sign ? 2 : 1);
        const double prior = cause.frequency / static_cast<double>(lanes);
        append(all, cause, 1.0, prior);
        if (cause.has_sign) append(all, cause, -1.0, prior);
        total += cause.frequency;
    }
    for (Hypothesis& h : all) h.prior /= total;
    return all;
}

std::size_t sound_house(const std::vector<Hypothesis>& all) {
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].fault.cause == faults::Cause::no_fault) return i;
    return 0;
}

}  // namespace emberpath::scoring
