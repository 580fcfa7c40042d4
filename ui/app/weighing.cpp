#include "ui/app/weighing.hpp"

#include <algorithm>
#include <bit>
#include <cstdint>

#include "sim/scoring/bank.hpp"
#include "sim/scoring/share_out.hpp"

namespace emberpath::app {

namespace {

bool acts_agree(const records::Record& record, const worksite::Job& job,
                const std::string& scenario_hash) {
    records::Record open = record;  // one that is closed is not taken up again
    open.closed = false;
    const auto again = records::resume(open, job, scenario_hash);
    return record.closed && again.attempt && again.attempt->over();
}

bool scores_agree(const records::Record& record, const scoring::Assessment& now) {
    std::vector<records::RecordedScore> scores;
    for (const auto& area : now.areas) scores.push_back({area.word, area.score});
    scores.push_back({"overall", now.overall});
    const auto same = [](const records::RecordedScore& a, const records::RecordedScore& b) {
        return a.area == b.area &&
               std::bit_cast<std::uint64_t>(a.score) == std::bit_cast<std::uint64_t>(b.score);
    };
    return std::equal(scores.begin(), scores.end(), record.scores.begin(), record.scores.end(),
                      same) &&
           now.gates_met == record.gates_met && now.proposal == record.proposal;
}

}  // namespace

scoring::Assessment weigh(const records::Record& record, const worksite::Job& job,
                          const Told& told) {
    constexpr std::size_t pieces = 25;  // few enough that threads lose nothing by meeting
    const worksite::Job house = records::job_of(record, job);
    scoring::Recorder recorder;
    const worksite::Attempt arrived(house, record.header.seed, record.header.mode, &recorder);
    const auto& tape = recorder.tape();
    const std::size_t arrival = tape.arrival_event();
    scoring::Bank bank(house, scoring::usual_threads());
    for (std::size_t piece = 1; piece <= pieces; ++piece) {
        bank.live_until(tape, arrival * piece / pieces);
        told(static_cast<double>(piece) / static_cast<double>(pieces));
    }
    scoring::Terms terms;
    terms.at_arrival = &bank;
    return scoring::assess(house, record.header.seed, record.header.mode,
                           records::timed_acts(record), terms);
}

WeighedAgain weigh_again(const records::Record& record, const worksite::Job& job,
                         const std::string& scenario_hash, const Told& told) {
    if (acts_agree(record, job, scenario_hash)) {
        auto assessment = weigh(record, job, told);
        if (scores_agree(record, assessment)) return {std::move(assessment), {}};
    }
    return {{}, records::verify(record, job, scenario_hash, records::Extent::the_visit).text};
}

}  // namespace emberpath::app
