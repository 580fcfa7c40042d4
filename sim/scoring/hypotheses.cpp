#include "sim/scoring/hypotheses.hpp"

namespace emberpath::scoring {

namespace {

void append(std::vector<Hypothesis>& all, const faults::CauseInfo& cause, double sign, int count,
            double prior) {
    for (int i = 0; i < count; ++i) {
        const double share = count > 1 ? static_cast<double>(i) / (count - 1) : 1.0;
        Hypothesis h;
        h.fault.cause = cause.cause;
        h.fault.severity = sign * (cause.least_severity +
                                   share * (cause.greatest_severity - cause.least_severity));
        h.remedy = cause.remedy;
        h.prior = prior;
        const int here = static_cast<int>(all.size());
        h.lower = i > 0 ? here - 1 : -1;
        h.upper = i + 1 < count ? here + 1 : -1;
        all.push_back(h);
    }
}

}  // namespace

bool applies(const faults::CauseInfo& cause, worksite::GasKind gas) {
    const bool cylinder = gas == worksite::GasKind::propane_cylinder;
    return cylinder ? !cause.mains_only : !cause.cylinder_only;
}

std::vector<Hypothesis> hypotheses(worksite::GasKind gas) {
    std::vector<Hypothesis> all;
    double total = 0.0;
    for (const faults::CauseInfo& cause : faults::catalogue()) {
        if (!applies(cause, gas)) continue;
        const int count =
            cause.on_off || cause.cause == faults::Cause::no_fault ? 1 : severity_count;
        const int lanes = cause.has_sign ? 2 * count : count;
        const double prior = cause.frequency / lanes;
        append(all, cause, 1.0, count, prior);
        if (cause.has_sign) append(all, cause, -1.0, count, prior);
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
