#pragma once
/// The debrief of a finished attempt, worked out once and ready to print in three forms.

#include <string>

#include "sim/records/debrief.hpp"

namespace emberpath::debrief {

struct Report {
    scoring::Assessment assessment;
    std::string text;  // plain, 100 columns
    std::string json;
    std::string html;  // a page of its own
};

/// Replays the record on the true heater and on every shadow: a second or so of work.
[[nodiscard]] Report make_report(const records::Record& record, const worksite::Job& job);
/// The same from an assessment already made.
[[nodiscard]] Report make_report(const records::Record& record, const worksite::Job& job,
                                 scoring::Assessment assessment,
                                 records::Reader reader = records::Reader::trainee,
                                 const std::vector<records::Decision>& decisions = {});

/// The plain text alone, from an assessment already made.
[[nodiscard]] std::string text_of(const records::Record& record, const worksite::Job& job,
                                  const scoring::Assessment& assessment);

}  // namespace emberpath::debrief
