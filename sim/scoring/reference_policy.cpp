#include "sim/scoring/reference_policy.hpp"

#include <algorithm>
#include <utility>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {

constexpr double too_little_bits = 0.01;
constexpr int most_readings = 30;

// Readings in modes never share a key with the trainee's: only equal predictions make a repeat.
Reading in_mode(worksite::Quantity quantity, std::size_t mode, double value) {
    Reading reading;
    reading.quantity = quantity;
    reading.condition.epoch = 0xffff0000U + static_cast<std::uint32_t>(mode);
    reading.cycle = -1 - static_cast<int>(mode);
    reading.value = value;
    return reading;
}

// As things stand, or as found, a reading belongs to the demand cycle under way; other modes begin one.
void consider(const Situation& at, const Option& bare, std::span<const double> predicted,
              Option& best) {
    Option option = bare;
    option.minutes += at.set_ups.minutes(option.quantity);
    const double most = at.posterior.most_bits(predicted);
    if (most < too_little_bits || most / option.minutes <= best.rate()) return;
    Reading reading = in_mode(option.quantity, option.mode & 0xffU, 0.0);
    if (option.mode == as_things_stand || option.mode == 0) reading.cycle = at.cycle;
    option.bits = at.posterior.expected_bits(reading, predicted);
    if (option.bits >= too_little_bits && option.rate() > best.rate()) best = option;
}

constexpr double set_aside_minutes = 5.0;  // added to the reference policy's own

}  // namespace

Reading reading_of(const Option& option) {
    return in_mode(option.quantity, option.mode & 0xffU, 0.0);
}

double reference_minutes(const ReferenceRun& run) {
    return std::max(least_reference_minutes, run.minutes + set_aside_minutes);
}

std::size_t SetUps::key(worksite::Quantity quantity) {
    const worksite::Tool tool = worksite::info(quantity).tool;
    const bool by_point = tool == worksite::Tool::manometer || tool == worksite::Tool::multimeter ||
                          tool == worksite::Tool::thermometer || tool == worksite::Tool::senses;
    return by_point ? static_cast<std::size_t>(quantity)
                    : worksite::quantity_count + static_cast<std::size_t>(tool);
}

double SetUps::minutes(worksite::Quantity quantity) const {
    const worksite::QuantityInfo& row = worksite::info(quantity);
    return row.minutes + (done_[key(quantity)] ? 0.0 : row.set_up_minutes);
}

void SetUps::mark(worksite::Quantity quantity) {
    done_[key(quantity)] = true;
}

std::vector<double> signature(const Situation& at, std::size_t mode, worksite::Quantity quantity) {
    const std::span<const double> stored = at.shadows.signatures[mode].of(quantity);
    std::vector<double> values(stored.begin(), stored.end());
    if (at.cured == nullptr) return values;
    const double sound = values[sound_house(at.shadows.hypotheses)];
    for (std::size_t i = 0; i < values.size(); ++i)
        if ((*at.cured)[i]) values[i] = sound;
    return values;
}

Option best_option(const Situation& at) {
    Option best;
    const std::vector<Mode> all = modes(at.job);
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto quantity = static_cast<worksite::Quantity>(q);
        if (!can_be_proposed(quantity, at.job)) continue;
        if (at.passive != nullptr)
            consider(at, {quantity, as_things_stand, 0.0, 0.0}, at.passive->of(quantity), best);
        for (std::size_t m = 0; m < all.size(); ++m) {
            const double minutes = m == at.in_mode ? 0.0 : all[m].minutes;
            consider(at, {quantity, m, 0.0, minutes}, signature(at, m, quantity), best);
        }
    }
    return best;
}

std::string title_of(const Option& option, const worksite::Job& job) {
    std::string title(worksite::info(option.quantity).title);
    const std::vector<Mode> all = modes(job);
    if (option.mode < all.size() && option.mode > 0)
        title += " " + std::string(all[option.mode].title);
    return title;
}

ReferenceRun run_reference(const worksite::Job& job, const Shadows& shadows,
                           const std::vector<Snapshot>& truth) {
    Posterior posterior(shadows.hypotheses);
    posterior.hear(job.customer.complaint, shadows.complaints);
    return run_reference(job, shadows, truth, std::move(posterior), {});
}

ReferenceRun run_reference(const worksite::Job& job, const Shadows& shadows,
                           const std::vector<Snapshot>& truth, Posterior posterior,
                           SetUps set_ups) {
    ReferenceRun run;
    std::size_t mode = 0;
    while (run.readings < most_readings) {
        const std::vector<double> classes = posterior.classes();
        const auto leading = std::max_element(classes.begin(), classes.end());
        run.leading = *leading;
        run.found = static_cast<faults::Remedy>(leading - classes.begin());
        if (run.leading >= need_of_final_diagnosis) break;
        const Situation at{job, shadows, posterior, set_ups, nullptr, nullptr, mode};
        const Option option = best_option(at);
        if (option.bits < too_little_bits) break;
        const double value = truth[option.mode].of(option.quantity)[0];
        posterior.add(in_mode(option.quantity, option.mode, value),
                      signature(at, option.mode, option.quantity));
        set_ups.mark(option.quantity);
        mode = option.mode;
        run.minutes += option.minutes;
        ++run.readings;
        run.options.push_back(option);
    }
    return run;
}

}  // namespace emberpath::scoring
