#include "sim/trainees/house_run.hpp"

#include <algorithm>

#include "sim/scoring/evidence.hpp"
#include "sim/trainees/other_house.hpp"
#include "sim/trainees/thorough.hpp"
#include "sim/worksite/complaint.hpp"

namespace emberpath::trainees {

namespace {

// No house's instruments are those of the house in which the script was made.
constexpr std::uint64_t first_instrument_seed = 1000;

/// Where the observations of an act begin and end on a tape.
std::pair<std::size_t, std::size_t> of_act(const scoring::Tape& tape, std::size_t mark) {
    const std::size_t last =
        mark + 1 < tape.marks ? tape.marked[mark + 1] : tape.observations.size();
    return {tape.marked[mark], last};
}

bool same_reading(const worksite::Observation& a, const worksite::Observation& b) {
    return a.quantity == b.quantity && a.hold == b.hold && a.tick == b.tick;
}

// As an attempt is played again: what is refused costs no time, and the next act waits for its own.
void play_script(const Script& script, worksite::Attempt& attempt, scoring::Recorder& recorder) {
    for (const scoring::TimedAct& act : script.acts) {
        if (act.tick > attempt.tick()) attempt.run(act.tick - attempt.tick());
        if (attempt.over()) return;
        recorder.mark();
        (void)attempt.perform(act.sentence);
    }
}

void weigh(const Script& script, const scoring::Shadows& shadows, const scoring::Tape& played,
           scoring::Posterior& posterior, HouseSeen& seen) {
    const std::vector<std::ptrdiff_t> found = matched(script.tape, played);
    for (std::size_t o = 0; o < found.size(); ++o) {
        if (found[o] < 0) {
            seen.left_out += scoring::is_evidence(script.tape.observations[o]) ? 1 : 0;
            continue;
        }
        const auto own = static_cast<std::size_t>(found[o]);
        if (!scoring::is_evidence(played.observations[own])) continue;
        posterior.add(scoring::as_reading(played.observations[own], played.cycles[own]),
                      shadows.observed[o]);
    }
}

void believe(const std::vector<double>& classes, scoring::Class truth, HouseSeen& seen) {
    seen.leading = scoring::likeliest(classes);
    seen.of_leading = classes[seen.leading.index()];
    seen.leads = scoring::covers(truth, seen.leading);
    for (std::size_t c = 0; c < classes.size(); ++c)
        if (scoring::covers(truth, scoring::Class::at(c))) seen.of_truth += classes[c];
}

}  // namespace

std::size_t Script::readings() const {
    return static_cast<std::size_t>(
        std::count_if(tape.observations.begin(), tape.observations.end(), scoring::is_evidence));
}

std::vector<std::ptrdiff_t> matched(const scoring::Tape& script, const scoring::Tape& played) {
    std::vector<std::ptrdiff_t> found(script.observations.size(), -1);
    for (std::size_t mark = 0; mark < std::min(script.marks, played.marks); ++mark) {
        const auto [first, last] = of_act(script, mark);
        auto [own, own_last] = of_act(played, mark);
        for (std::size_t o = first; o < last && own < own_last; ++o) {
            std::size_t same = own;
            while (same < own_last &&
                   !same_reading(script.observations[o], played.observations[same]))
                ++same;
            if (same == own_last) continue;
            found[o] = static_cast<std::ptrdiff_t>(same);
            own = same + 1;
        }
    }
    return found;
}

Script script_of(const worksite::Job& job, const Arrived& arrived) {
    Visit visit(job, script_seed, arrived);
    Hands hands(visit, {});
    read_all_reasonable(hands);
    return {visit.acts(), visit.tape(), visit.minutes(),
            worksite::simulated_complaint(job, script_seed)};
}

std::optional<HouseSeen> go_through(const Script& script, const scoring::Shadows& shadows,
                                    const worksite::Job& job, std::uint64_t number) {
    scoring::Recorder recorder;
    worksite::Attempt attempt(other_house(job, number),
                              {script_seed, first_instrument_seed + number},
                              worksite::Mode::assessed, &recorder);
    if (attempt.truth().noticed != script.met) return std::nullopt;
    play_script(script, attempt, recorder);
    HouseSeen seen;
    seen.number = number;
    seen.ended_early = attempt.over();
    scoring::Posterior posterior(shadows.hypotheses);
    posterior.hear(job.customer.complaint, shadows.complaints);
    weigh(script, shadows, recorder.tape(), posterior, seen);
    believe(posterior.classes(), scoring::class_or_first_of(job.faults), seen);
    return seen;
}

}  // namespace emberpath::trainees
