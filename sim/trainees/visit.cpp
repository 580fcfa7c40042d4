#include "sim/trainees/visit.hpp"

#include <utility>

namespace emberpath::trainees {

worksite::Job as_seen(worksite::Job job) {
    job.faults.clear();
    job.intended = faults::Remedy::explain_to_customer;
    return job;
}

Visit::Visit(const worksite::Job& job, std::uint64_t seed)
    : seen_(as_seen(job)), attempt_(job, seed, worksite::Mode::assessed, &recorder_) {}

const worksite::LogEntry* Visit::act(std::string_view sentence) {
    if (over()) return nullptr;
    if (!attempt_.check(sentence).text.empty()) return nullptr;
    acts_.push_back({attempt_.tick(), std::string(sentence)});
    recorder_.mark();
    return attempt_.perform(sentence).entry;
}

}  // namespace emberpath::trainees
