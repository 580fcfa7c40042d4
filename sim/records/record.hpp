#pragma once
/// The record of an attempt: scenario hash, seed, program version and the acts. Everything else is
/// recomputed from it. JSON lines; each line carries a hash over itself and the line before.
///
/// The chain shows damage and careless edits. It is not a signature: who rewrites a whole record can
/// rewrite its chain, and then has to write one that the simulation agrees with (`verify`).

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "sim/diagnostics/diagnostic.hpp"
#include "sim/records/version.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath::records {

struct Header {
    int schema = record_schema;
    std::string program_version{records::program_version};
    std::string build{build_mark()};  // empty in records that are older than the mark
    std::string job;                  // as the scenarios folder names it, or the path of its file
    std::string scenario_hash;        // over scenario, site and heater files
    std::uint64_t seed = 0;
    worksite::Mode mode = worksite::Mode::coached;
    std::string licence;  // of the person at work; empty: the usual one of the rules
};

/// One value the trainee was shown, bit for bit.
struct RecordedReading {
    int number = 0;        // the balloon; 0 for what is not a numbered reading
    std::string quantity;  // worksite::QuantityInfo::word
    double value = 0.0;    // as shown, SI; category index if categorical
};

struct RecordedAct {
    std::int64_t tick = 0;  // when it began
    std::string sentence;
    bool finished = false;      // the result line is there (an act may be on disk, its result not)
    std::int64_t end_tick = 0;  // when its result was shown
    std::vector<std::string> shown;
    std::vector<RecordedReading> readings;
    std::string state_hash;  // after the act
};

/// Scores as proposed at the end, to be recomputed by verify().
struct RecordedScore {
    std::string area;  // scoring::Area::word, and "overall"
    double score = 0.0;
};

struct Record {
    std::filesystem::path file;
    Header header;
    std::vector<RecordedAct> acts;
    bool closed = false;  // the attempt is over and its scores are written
    std::vector<RecordedScore> scores;
    bool gates_met = false;
    std::string proposal;
    worksite::Attempt::After day_after;  // what the household met once the trainee had left
    std::vector<diagnostics::Diagnostic> problems;  // in file order; any makes the record unusable
    std::vector<std::string> notes;  // harmless: a last line cut short by a power cut
    std::string chain;               // of the last good line
    std::uintmax_t good_bytes = 0;   // length up to and including the last good line
    bool unterminated = false;       // the last good line lacks its line end
    [[nodiscard]] bool good() const { return problems.empty(); }
};

/// Reads a record; reports every problem with its line and what to do. Does not throw for what the file
/// holds. A last line cut short is left out and noted.
[[nodiscard]] Record read(const std::filesystem::path& file);

/// The disk refuses, or the file is somebody else's: the text says what and what to do.
class CannotWrite : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// Appends to a record file; every act is on disk (fsync) before its result is shown. Holds a lock, so
/// that two programs cannot write one record. Throws CannotWrite.
class Writer {
  public:
    /// Starts a new record; refuses a file that exists.
    Writer(const std::filesystem::path& file, const Header& header);
    /// Goes on with an unfinished one, after cutting off a torn last line.
    explicit Writer(const Record& unfinished);
    ~Writer();
    Writer(Writer&&) noexcept;
    Writer& operator=(Writer&&) noexcept;

    void begin_act(std::int64_t tick, std::string_view sentence);
    void end_act(const worksite::LogEntry& entry, std::uint64_t state_hash);
    void close(const scoring::Assessment& assessment, const worksite::Attempt::After& day_after);

  private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

/// Can a sentence be kept as it is? Well-formed UTF-8 (RFC 3629) without control characters, at most
/// longest_sentence bytes.
inline constexpr std::size_t longest_sentence = 1000;
[[nodiscard]] bool can_be_kept(std::string_view sentence);

/// The acts with their ticks, as scoring::assess wants them.
[[nodiscard]] std::vector<scoring::TimedAct> timed_acts(const Record& record);

/// The job with the licence the record was made under; the usual one where the rules do not know it.
[[nodiscard]] worksite::Job job_of(const Record& record, worksite::Job job);

/// Replays the record on the true heater and every shadow.
[[nodiscard]] scoring::Assessment assess(const Record& record, const worksite::Job& job);

/// An interrupted attempt brought back by doing its acts again, with the trail of what its glasses showed.
struct Resumed {
    std::unique_ptr<worksite::Attempt> attempt;     // nullptr when it cannot be brought back
    const worksite::LogEntry* unwritten = nullptr;  // last act, when its result line is missing
    std::string problem;                            // why not, and what to do
};
[[nodiscard]] Resumed resume(const Record& record, const worksite::Job& job,
                             const std::string& scenario_hash);

/// Why this program cannot replay a record at all, and what to do; empty when it can.
[[nodiscard]] std::string cannot_be_replayed(const Record& record, const worksite::Job& job,
                                             const std::string& scenario_hash);

/// A finished attempt tried again from a moment on: a new record, coached, that begins with the acts before it.
struct Forked {
    std::size_t acts = 0;  // done again and written
    std::string problem;   // why there is no new record; empty when all is well
};
/// `on_site_ticks` from arrival to the moment; what began then or later is left out. Writes `file`, which must
/// not exist; resume() then takes it up. Throws CannotWrite.
[[nodiscard]] Forked fork(const Record& record, const worksite::Job& job,
                          const std::string& scenario_hash, std::int64_t on_site_ticks,
                          const std::filesystem::path& file);

/// The first difference found, or agreement.
struct Verification {
    bool agrees = false;
    bool comparable =
        true;          // false: nothing is said about the record, this program cannot judge it
    std::string text;  // what was compared, or the first act and quantity that differs
    std::optional<scoring::Assessment> assessment;  // of a closed record that agrees
};
/// The day after takes longer to simulate than everything else: who only wants an attempt explained may take
/// it from the record.
enum class Extent { the_visit, the_visit_and_the_day_after };
/// Simulates everything again and compares bit for bit: scenario hash, program version, every value
/// shown, the state after each act, the scores and the proposal, and what was left for the day after.
[[nodiscard]] Verification verify(const Record& record, const worksite::Job& job,
                                  const std::string& scenario_hash,
                                  Extent extent = Extent::the_visit_and_the_day_after);

}  // namespace emberpath::records
