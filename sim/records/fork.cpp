#include <optional>
#include <utility>

#include "sim/records/record.hpp"

namespace emberpath::records {

Forked fork(const Record& record, const worksite::Job& job, const std::string& scenario_hash,
            std::int64_t on_site_ticks, const std::filesystem::path& file) {
    Forked out;
    if (auto why = cannot_be_replayed(record, job, scenario_hash); !why.empty())
        return {0, std::move(why)};
    if (!record.closed)
        return {0,
                "The attempt is not finished. Nothing can be tried again while it goes on; hand in "
                "first."};
    const worksite::Job its_job = job_of(record, job);
    worksite::Attempt attempt(its_job, record.header.seed, worksite::Mode::coached);
    const std::int64_t from = attempt.tick() + on_site_ticks;
    if (record.acts.empty() || from > record.acts.back().tick)
        return {0, "The attempt was over before that time."};
    Header header = record.header;
    header.build = std::string(build_mark());
    header.mode = worksite::Mode::coached;
    std::optional<Writer> writer(std::in_place, file, header);
    for (const RecordedAct& act : record.acts) {
        if (act.tick >= from) break;
        attempt.run(act.tick - attempt.tick());
        if (auto refusal = attempt.check(act.sentence); !refusal.text.empty()) {
            writer.reset();
            std::filesystem::remove(file);
            return {0, "\"" + act.sentence + "\" cannot be done again: " + refusal.text};
        }
        writer->begin_act(attempt.tick(), act.sentence);
        const worksite::LogEntry& entry = *attempt.perform(act.sentence).entry;
        writer->end_act(entry, attempt.state_hash());
        ++out.acts;
    }
    return out;
}

}  // namespace emberpath::records
