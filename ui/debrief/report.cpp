#include "ui/debrief/report.hpp"

#include <utility>

namespace emberpath::debrief {

Report make_report(const records::Record& record, const worksite::Job& job) {
    return make_report(record, job, records::assess(record, job));
}

Report make_report(const records::Record& record, const worksite::Job& job,
                   scoring::Assessment assessment, records::Reader reader,
                   const std::vector<records::Decision>& decisions) {
    Report report;
    report.assessment = std::move(assessment);
    const auto facts = records::make_debrief(record, job, report.assessment, reader, decisions);
    report.text = records::to_text(facts);
    report.json = records::to_json(facts);
    report.html = records::to_html(facts);
    return report;
}

std::string text_of(const records::Record& record, const worksite::Job& job,
                    const scoring::Assessment& assessment) {
    return records::to_text(records::make_debrief(record, job, assessment));
}

}  // namespace emberpath::debrief
