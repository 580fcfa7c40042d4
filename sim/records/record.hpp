#pragma once
/// The record of an attempt: scenario hash, seed, program version and the acts. Everything else is
/// recomputed from it. JSON lines, one act a line, each line carrying the hash of the one before.

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "sim/diagnostics/diagnostic.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath::records {

struct Header {
    int schema = 1;
    std::string program_version;
    std::string job;             // scenario file, relative to the scenarios folder
    std::string scenario_hash;
    std::uint64_t seed = 0;
    worksite::Mode mode = worksite::Mode::coached;
};

struct RecordedAct {
    std::int64_t tick = 0;
    std::string sentence;
    std::vector<double> values;     // observations, as shown
    std::string state_hash;         // after the act
    bool finished = false;          // the result line is there (an act may be on disk, its result not)
};

struct Record {
    Header header;
    std::vector<RecordedAct> acts;
    bool closed = false;            // handed in
    std::vector<double> scores;     // as proposed at the end, S E P R V T
    std::vector<diagnostics::Diagnostic> problems;
};

/// Appends to a record file; every act is on disk (fsync) before its result is shown.
class Writer {
  public:
    Writer(const std::filesystem::path& file, const Header& header);  // throws std::runtime_error
    ~Writer();
    Writer(Writer&&) noexcept;
    void begin_act(std::int64_t tick, std::string_view sentence);
    void end_act(const worksite::LogEntry& entry, std::uint64_t state_hash);
    void close(const scoring::Assessment& assessment);

  private:
    struct Impl;
    Impl* impl_;
};

[[nodiscard]] Record read(const std::filesystem::path& file);

/// The first difference found, or agreement.
struct Verification {
    bool agrees = false;
    std::string text;    // one sentence: what was compared, or the first act and quantity that differs
};
[[nodiscard]] Verification verify(const Record& record, const worksite::Job& job,
                                  const std::string& scenario_hash);

/// The debrief in plain text: outcome and unsafe acts first, then areas, acts, comparisons.
[[nodiscard]] std::string debrief_text(const Record& record, const worksite::Job& job,
                                       const scoring::Assessment& assessment);
[[nodiscard]] std::string debrief_json(const Record& record, const worksite::Job& job,
                                       const scoring::Assessment& assessment);
[[nodiscard]] std::string debrief_html(const Record& record, const worksite::Job& job,
                                       const scoring::Assessment& assessment);

}  // namespace emberpath::records
