#include "ui/app/weighing.hpp"

#include "sim/scoring/bank.hpp"
#include "sim/scoring/share_out.hpp"

namespace emberpath::app {

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

}  // namespace emberpath::app
