#include "sim/scoring/bands.hpp"

#include <algorithm>
#include <array>

#include "sim/math/functions.hpp"
#include "sim/math/random.hpp"
#include "sim/scoring/likelihood.hpp"
#include "sim/scoring/share_out.hpp"

namespace emberpath::scoring {

namespace {

double between(math::Random& random, double low, double high) {  // evenly on the logarithm
    return low * math::exp(random.uniform() * math::log(high / low));
}

/// Each cause by a factor of its own.
template <typename Draw>
void reweigh_priors(std::vector<Hypothesis>& all, const Draw& draw) {
    const std::vector<std::size_t> family = representatives(all);
    std::vector<double> factor(all.size());
    double total = 0.0;
    for (double& one : factor) one = draw();
    for (std::size_t i = 0; i < all.size(); ++i) total += all[i].prior *= factor[family[i]];
    for (Hypothesis& h : all) h.prior /= total;
}

/// Each quantity of each shadow off by its own share of the spread between houses.
class OtherHouses {
  public:
    OtherHouses(std::size_t lanes, math::Random& random)
        : factors_(worksite::quantity_count, std::vector<double>(lanes, 1.0)) {
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const double share = draw_spread_share(static_cast<worksite::Quantity>(q));
            for (double& factor : factors_[q]) factor += share * random.normal();
        }
    }
    [[nodiscard]] double factor(worksite::Quantity quantity, std::size_t lane) const {
        return factors_[static_cast<std::size_t>(quantity)][lane];
    }
    void move(Snapshot& snapshot) const {
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const auto quantity = static_cast<worksite::Quantity>(q);
            for (std::size_t i = 0; i < factors_[q].size(); ++i)
                snapshot.set(quantity, i, snapshot.of(quantity)[i] * factors_[q][i]);
        }
    }

  private:
    std::vector<std::vector<double>> factors_;  // [quantity][lane]
};

void move_houses(Shadows& shadows, const Tape& tape, math::Random& random) {
    const OtherHouses houses(shadows.hypotheses.size(), random);
    for (std::size_t o = 0; o < shadows.observed.size(); ++o)
        for (std::size_t i = 0; i < shadows.observed[o].size(); ++i)
            shadows.observed[o][i] *= houses.factor(tape.observations[o].quantity, i);
    for (Snapshot& snapshot : shadows.passive) houses.move(snapshot);
    for (Snapshot& snapshot : shadows.signatures) houses.move(snapshot);
}

Assessment weighed_again(const PlayedAttempt& played, const OtherBank& bank,
                         const std::vector<Snapshot>& truth, Outcome outcome, Until until) {
    const Evidence evidence(bank.shadows, played.tape, played.job.customer.complaint,
                            bank.width_factor);
    const ReferenceRun reference =
        run_reference({played.job, bank.shadows, truth, played.threads}, evidence.posterior(), {});
    outcome.reference_minutes = reference_minutes(reference) + outcome.second_part_minutes;
    Assessment out;
    judge(played, keep_ledger(played, evidence, until), outcome, out);
    return out;
}

}  // namespace

OtherBank other_bank(const Shadows& shadows, const Tape& tape, int number) {
    math::Random random(static_cast<std::uint64_t>(number) + 1, "other bank");
    OtherBank other{shadows, between(random, narrowest_width, widest_width)};
    reweigh_priors(other.shadows.hypotheses,
                   [&] { return between(random, 1.0 / prior_factor, prior_factor); });
    move_houses(other.shadows, tape, random);
    return other;
}

double overall_with(const Change& change, const PlayedAttempt& played, const Shadows& shadows,
                    const std::vector<Snapshot>& truth, const Outcome& outcome, Until until) {
    math::Random random(change.draw, "other priors");
    OtherBank bank{shadows, change.widths};
    reweigh_priors(bank.shadows.hypotheses,
                   [&] { return random.uniform() < 0.5 ? 1.0 / change.priors : change.priors; });
    return weighed_again(played, bank, truth, outcome, until).overall;
}

void set_bands(const PlayedAttempt& played, const Shadows& shadows,
               const std::vector<Snapshot>& truth, const Outcome& outcome, int threads,
               Assessment& out) {
    std::array<Assessment, band_banks> others;
    PlayedAttempt by_one_thread = played;  // the banks are what is shared out
    by_one_thread.threads = 1;
    const auto weigh = [&](const PlayedAttempt& by, std::size_t i) {
        others.at(i) = weighed_again(by, other_bank(shadows, played.tape, static_cast<int>(i)),
                                     truth, outcome, Until::the_end);
    };
    // What would leave threads idle in the last round is shared out within.
    const auto workers = static_cast<std::size_t>(std::max(threads, 1));
    const std::size_t whole =
        workers < others.size() ? others.size() - others.size() % workers : others.size();
    share_out(whole, threads, [&](std::size_t i) { weigh(by_one_thread, i); });
    for (std::size_t i = whole; i < others.size(); ++i) weigh(played, i);
    for (std::size_t a = 0; a < out.areas.size(); ++a) {
        out.areas[a].low = out.areas[a].high = out.areas[a].score;
        for (const Assessment& other : others) {
            out.areas[a].low = std::min(out.areas[a].low, other.areas[a].score);
            out.areas[a].high = std::max(out.areas[a].high, other.areas[a].score);
        }
    }
    out.overall_low = out.overall_high = out.overall;
    for (const Assessment& other : others) {
        out.overall_low = std::min(out.overall_low, other.overall);
        out.overall_high = std::max(out.overall_high, other.overall);
    }
}

}  // namespace emberpath::scoring
