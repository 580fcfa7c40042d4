#include "sim/scoring/reference_policy.hpp"

#include <algorithm>
#include <atomic>
#include <deque>
#include <mutex>
#include <utility>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/share_out.hpp"
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
Reading reading_at(const Situation& at, const Option& option) {
    Reading reading = in_mode(option.quantity, option.mode & 0xffU, 0.0);
    if (option.mode == as_things_stand || option.mode == 0) reading.cycle = at.cycle;
    return reading;
}

/// An option whose information is known only by a bound yet.
struct Candidate {
    Option option;
    std::span<const double> predicted;
    std::span<const Expectation> known;  // or empty
    double most_rate = 0.0;              // no more bits a minute than this
};

/// Every reading that the job offers, those that could be the best first. What they predict is kept here.
class Candidates {
  public:
    explicit Candidates(const Situation& at)
        : at_(at), open_bits_(at.posterior.class_entropy_bits()) {
        const std::vector<Mode> all = modes(at.job);
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const auto quantity = static_cast<worksite::Quantity>(q);
            if (!can_be_proposed(quantity, at.job)) continue;
            if (at.passive != nullptr)
                consider({quantity, as_things_stand, 0.0, 0.0}, at.passive->of(quantity), {});
            for (std::size_t m = 0; m < all.size(); ++m) {
                if (!can_be_taken_in(all[m], quantity)) continue;
                const double minutes = m == at.in_mode ? 0.0 : all[m].minutes;
                consider({quantity, m, 0.0, minutes}, predicted_in(m, quantity),
                         expected_in(m, quantity));
            }
        }
        look_closer();
        std::stable_sort(all_.begin(), all_.end(), [](const Candidate& a, const Candidate& b) {
            return a.most_rate > b.most_rate;
        });
    }
    [[nodiscard]] std::span<const Candidate> all() const { return all_; }

  private:
    [[nodiscard]] std::span<const double> predicted_in(std::size_t mode,
                                                       worksite::Quantity quantity) {
        if (at_.foreseen != nullptr) return at_.foreseen->predicted(mode, quantity);
        if (at_.stands_as == nullptr) return at_.shadows.signatures[mode].of(quantity);
        return kept_.emplace_back(signature(at_, mode, quantity));
    }

    [[nodiscard]] std::span<const Expectation> expected_in(std::size_t mode,
                                                           worksite::Quantity quantity) const {
        if (at_.foreseen == nullptr) return {};
        return at_.foreseen->expected(mode, quantity);
    }

    void consider(Option option, std::span<const double> predicted,
                  std::span<const Expectation> known) {
        option.minutes += at_.set_ups.minutes(option.quantity);
        const double most = std::min(open_bits_, at_.posterior.most_bits(predicted));
        if (most >= too_little_bits)
            all_.push_back({option, predicted, known, most / option.minutes});
    }

    void look_closer() {
        share_out(all_.size(), at_.threads, [&](std::size_t i) {
            Candidate& one = all_[i];
            const double most = at_.posterior.closer_most_bits(reading_at(at_, one.option),
                                                               one.predicted, one.known);
            one.most_rate =
                most < too_little_bits ? 0.0 : std::min(one.most_rate, most / one.option.minutes);
        });
        std::erase_if(all_, [](const Candidate& one) { return one.most_rate <= 0.0; });
    }

    const Situation& at_;
    double open_bits_;
    std::deque<std::vector<double>> kept_;  // a deque: what was handed out stays where it is
    std::vector<Candidate> all_;
};

bool comes_before(const Option& a, const Option& b) {
    const auto place = [](const Option& one) {
        return one.mode == as_things_stand ? 0 : one.mode + 1;
    };
    return a.quantity != b.quantity ? a.quantity < b.quantity : place(a) < place(b);
}

/// The best option so far; whoever weighs one says so here.
class Best {
  public:
    [[nodiscard]] bool can_be_beaten_by(double most_rate) const { return most_rate >= rate_; }
    void offer(const Option& option) {
        const std::lock_guard lock(mutex_);
        const double rate = option.rate();
        if (option.bits < too_little_bits || rate < rate_) return;
        if (rate == rate_ && !comes_before(option, best_)) return;
        best_ = option;
        rate_ = rate;
    }
    [[nodiscard]] const Option& option() const { return best_; }

  private:
    std::mutex mutex_;
    Option best_;
    std::atomic<double> rate_ = 0.0;
};

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
    if (at.stands_as == nullptr) return values;
    for (std::size_t i = 0; i < values.size(); ++i) values[i] = stored[(*at.stands_as)[i]];
    return values;
}

Foreseen::Foreseen(const worksite::Job& job, const Shadows& shadows, const Posterior& posterior,
                   const std::vector<std::size_t>* stands_as)
    : all_(modes(job).size() * worksite::quantity_count) {
    const SetUps unused;
    const Situation at{job, shadows, posterior, unused, nullptr, stands_as};
    for (std::size_t i = 0; i < all_.size(); ++i) {
        const std::size_t mode = i / worksite::quantity_count;
        const auto quantity = static_cast<worksite::Quantity>(i % worksite::quantity_count);
        if (!can_be_proposed(quantity, job)) continue;
        all_[i].predicted = signature(at, mode, quantity);
        if (!worksite::info(quantity).categorical)
            all_[i].expected =
                posterior.expectations(in_mode(quantity, mode, 0.0), all_[i].predicted);
    }
}

// Options that cannot be the best by their bound are passed over. The largest rate and its tie rule do not
// depend on the order in which options are weighed, nor on which of the passed over were weighed after all.
Option best_option(const Situation& at) {
    const Candidates candidates(at);
    Best best;
    share_out(candidates.all().size(), at.threads, [&](std::size_t i) {
        const Candidate& one = candidates.all()[i];
        if (!best.can_be_beaten_by(one.most_rate)) return;
        Option option = one.option;
        option.bits = at.posterior.expected_bits(reading_at(at, option), one.predicted);
        best.offer(option);
    });
    return best.option();
}

std::string title_of(const Option& option, const worksite::Job& job) {
    std::string title(worksite::info(option.quantity).title);
    // Among other titles in a sentence its own comma would end it.
    if (const auto comma = title.find(", on the"); comma != std::string::npos)
        title.erase(comma, 1);
    const std::vector<Mode> all = modes(job);
    if (option.mode < all.size() && option.mode > 0)
        title += " " + std::string(all[option.mode].title);
    const bool at_the_tap = option.quantity == worksite::Quantity::tap_temperature ||
                            option.quantity == worksite::Quantity::tap_flow;
    if (const auto tap = title.rfind(" a tap is"); at_the_tap && tap != std::string::npos)
        title.replace(tap, 6, " it");
    return title;
}

ReferenceRun run_reference(const Hindsight& hindsight) {
    Posterior posterior(hindsight.shadows.hypotheses);
    posterior.hear(hindsight.job.customer.complaint, hindsight.shadows.complaints);
    return run_reference(hindsight, std::move(posterior), {});
}

ReferenceRun run_reference(const Hindsight& hindsight, Posterior posterior, SetUps set_ups,
                           int cycle) {
    ReferenceRun run;
    const Foreseen foreseen(hindsight.job, hindsight.shadows, posterior);
    std::size_t mode = 0;
    while (run.readings < most_readings) {
        const std::vector<double> classes = posterior.classes();
        run.found = likeliest(classes);
        run.leading = classes[run.found.index()];
        if (run.leading >= need_of_final_diagnosis) break;
        const Situation at{hindsight.job,     hindsight.shadows, posterior, set_ups,
                           nullptr,           nullptr,           mode,      cycle,
                           hindsight.threads, &foreseen};
        const Option option = best_option(at);
        if (option.bits < too_little_bits) break;
        const double value = hindsight.truth[option.mode].of(option.quantity)[0];
        Reading reading = reading_at(at, option);
        reading.value = value;
        posterior.add(reading, signature(at, option.mode, option.quantity));
        set_ups.mark(option.quantity);
        mode = option.mode;
        run.minutes += option.minutes;
        ++run.readings;
        run.options.push_back(option);
    }
    return run;
}

}  // namespace emberpath::scoring
