#include "sim/trainees/on_arrival.hpp"

#include "sim/scoring/information.hpp"
#include "sim/scoring/warrant.hpp"
#include "sim/trainees/belief.hpp"

namespace emberpath::trainees {

OnArrival on_arrival(const worksite::Job& job, std::uint64_t seed, const Arrived& arrived) {
    Visit visit(job, seed, arrived);
    visit.act("look at display");
    const Belief belief(visit);
    const scoring::Class truth = scoring::class_or_first_of(job.faults);
    OnArrival seen;
    seen.leading = scoring::likeliest(belief.classes());
    seen.probability = belief.leading_probability();
    seen.need = scoring::need(belief.leading());
    seen.open_bits = scoring::entropy_bits(belief.classes());
    seen.of_truth = belief.classes()[truth.index()];
    seen.leads_to_truth = scoring::covers(truth, seen.leading);
    seen.tells_all = seen.leads_to_truth && (seen.leading == truth || !truth.is_pair());
    return seen;
}

}  // namespace emberpath::trainees
