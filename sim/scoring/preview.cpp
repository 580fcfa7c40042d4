#include <cmath>

#include "sim/scoring/likelihood.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/scoring/shadow_bank.hpp"

namespace emberpath::scoring {

namespace {

// A change counts when an instrument would show it: three times its own error, or another word.
bool differs(worksite::Quantity quantity, double sound, double faulty) {
    if (worksite::info(quantity).categorical) return sound != faulty;
    const double moved = std::abs(on_scale(quantity, faulty) - on_scale(quantity, sound));
    return moved > 3.0 * width_of(quantity, sound).instrument;
}

}  // namespace

std::vector<PreviewRow> preview(const worksite::Job& job) {
    Recorder recorder;
    { const worksite::Attempt history(job, 1, worksite::Mode::coached, &recorder); }
    const std::vector<Snapshot> sound = signatures_of(job, recorder.tape(), {});
    const std::vector<Snapshot> faulty = true_signatures(job, recorder.tape());
    const std::vector<Mode> all = modes(job);
    std::vector<PreviewRow> rows;
    for (std::size_t m = 0; m < all.size(); ++m)
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const auto quantity = static_cast<worksite::Quantity>(q);
            if (!can_be_proposed(quantity, job)) continue;
            const double before = sound[m].of(quantity)[0];
            const double now = faulty[m].of(quantity)[0];
            rows.push_back({std::string(all[m].title), std::string(worksite::info(quantity).title),
                            worksite::text_of(quantity, before), worksite::text_of(quantity, now),
                            differs(quantity, before, now)});
        }
    return rows;
}

}  // namespace emberpath::scoring
