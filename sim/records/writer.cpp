#include <nlohmann/json.hpp>

#include "sim/records/line.hpp"
#include "sim/records/record.hpp"
#include "sim/records/synced_file.hpp"

namespace emberpath::records {

namespace {

using Json = nlohmann::ordered_json;

/// Shortest text that reads back to the same bits; bytes that are no UTF-8 are replaced.
std::string text_of(const Json& object) {
    return object.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Json header_object(const Header& header) {
    return {{"record", "emberpath"},
            {"schema", header.schema},
            {"program", header.program_version},
            {"build", header.build},
            {"job", header.job},
            {"scenario_hash", header.scenario_hash},
            {"seed", header.seed},
            {"mode", header.mode == worksite::Mode::assessed ? "assessed" : "coached"},
            {"licence", header.licence}};
}

Json readings_of(const worksite::LogEntry& entry) {
    Json readings = Json::array();
    for (const auto& seen : entry.observations)
        readings.push_back({{"number", seen.number},
                            {"quantity", worksite::info(seen.quantity).word},
                            {"value", seen.value}});
    return readings;
}

}  // namespace

struct Writer::Impl {
    SyncedFile file;
    std::string chain{first_chain};
    std::size_t acts = 0;

    void write(const Json& object) {
        const std::string text = text_of(object);
        chain = next_chain(chain, text);
        file.append(seal(text, chain) + "\n");
    }
};

Writer::Writer(const std::filesystem::path& file, const Header& header)
    : impl_(new Impl{{file, SyncedFile::Open::new_file}}) {
    impl_->write(header_object(header));
}

Writer::Writer(const Record& unfinished)
    : impl_(new Impl{{unfinished.file, SyncedFile::Open::existing}}) {
    impl_->file.cut_to(unfinished.good_bytes);
    if (unfinished.unterminated) impl_->file.append("\n");
    impl_->chain = unfinished.chain;
    impl_->acts = unfinished.acts.size();
    if (!unfinished.acts.empty() && !unfinished.acts.back().finished) --impl_->acts;
}

Writer::~Writer() = default;
Writer::Writer(Writer&&) noexcept = default;
Writer& Writer::operator=(Writer&&) noexcept = default;

void Writer::begin_act(std::int64_t tick, std::string_view sentence) {
    impl_->write({{"act", impl_->acts + 1}, {"tick", tick}, {"sentence", sentence}});
}

void Writer::end_act(const worksite::LogEntry& entry, std::uint64_t state_hash) {
    impl_->acts += 1;
    impl_->write({{"result", impl_->acts},
                  {"tick", entry.end_tick},
                  {"shown", entry.shown},
                  {"readings", readings_of(entry)},
                  {"state", hash_text(state_hash)}});
}

void Writer::close(const scoring::Assessment& assessment,
                   const worksite::Attempt::After& day_after) {
    Json scores = Json::array();
    for (const auto& area : assessment.areas)
        scores.push_back({{"area", area.word}, {"score", area.score}});
    scores.push_back({{"area", "overall"}, {"score", assessment.overall}});
    impl_->write({{"closed", true},
                  {"scores", scores},
                  {"gates_met", assessment.gates_met},
                  {"proposal", assessment.proposal},
                  {"day_after", day_after.lines},
                  {"day_after_state", day_after.state}});
}

}  // namespace emberpath::records
