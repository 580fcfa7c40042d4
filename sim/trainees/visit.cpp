#include "sim/trainees/visit.hpp"

#include <utility>

namespace emberpath::trainees {

worksite::Job as_seen(worksite::Job job) {
    job.faults.clear();
    job.intended = faults::Remedy::explain_to_customer;
    return job;
}

namespace {

Arrived lived_to_arrival(const worksite::Job& seen, const scoring::Tape& tape, int threads) {
    auto bank = std::make_shared<scoring::Bank>(seen, threads);
    bank->live_until(tape, tape.arrival_event());
    return bank;
}

}  // namespace

Arrived arrive(const worksite::Job& job, std::uint64_t seed, int threads) {
    scoring::Recorder recorder;
    const worksite::Attempt history(job, seed, worksite::Mode::assessed, &recorder);
    return lived_to_arrival(as_seen(job), recorder.tape(), threads);
}

Visit::Visit(const worksite::Job& job, std::uint64_t seed, Arrived arrived)
    : seen_(as_seen(job)),
      attempt_(job, seed, worksite::Mode::assessed, &recorder_),
      arrived_(std::move(arrived)) {}

const scoring::Bank& Visit::at_arrival() const {
    if (arrived_ == nullptr) arrived_ = lived_to_arrival(seen_, tape(), 1);
    return *arrived_;
}

const worksite::LogEntry* Visit::act(std::string_view sentence) {
    if (over()) return nullptr;
    if (!attempt_.check(sentence).text.empty()) return nullptr;
    acts_.push_back({attempt_.tick(), std::string(sentence)});
    recorder_.mark();
    return attempt_.perform(sentence).entry;
}

}  // namespace emberpath::trainees
