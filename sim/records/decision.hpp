#pragma once
/// What a person decided about a finished attempt: the program proposes, a person decides. Kept beside the record,
/// which stays as it was: RECORD.decisions, JSON lines whose chain goes on from the last line of the record.
///
/// Checked   tests/unit/records/decision_test.cpp

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "sim/records/record.hpp"

namespace emberpath::records {

struct Decision {
    std::string about;   // "verdict", "overall" or an area's word
    std::string now;     // "competent" or "not yet competent"; points from 0 to 100
    std::string role;    // of who decided: "assessor", "lead assessor". No name is asked for
    std::string reason;  // in words; never empty
    std::string was;     // what the program had proposed; taken from the record
    std::string chain;   // of its line
};

struct Decisions {
    std::vector<Decision> all;  // in the order they were made: the last one holds
    std::vector<diagnostics::Diagnostic> problems;  // any makes them unusable
    [[nodiscard]] bool good() const { return problems.empty(); }
};

[[nodiscard]] std::filesystem::path decisions_file(const std::filesystem::path& record);

/// None where there is no such file. A decision made about another record, or changed since, is a problem.
[[nodiscard]] Decisions read_decisions(const Record& record);

/// Appends a decision about a good and closed record; `was` and `chain` are filled in. Returns why it was refused
/// and what is expected; empty when it is kept. Throws CannotWrite.
[[nodiscard]] std::string decide(const Record& record, Decision decision);

/// "Verdict: competent, decided by the lead assessor. Reason: ... The program had proposed: ..."
[[nodiscard]] std::string in_words(const Decision& decision);

}  // namespace emberpath::records
