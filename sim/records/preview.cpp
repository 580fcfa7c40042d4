#include "sim/records/preview.hpp"

#include "sim/records/layout.hpp"
#include "sim/scoring/scoring.hpp"

namespace emberpath::records {

std::string preview_text(const worksite::Job& job) {
    const std::vector<Column> columns = {{1}, {46}, {20}, {22}};
    std::string text = job.title + ": the sound house and this one\n";
    std::string condition;
    for (const auto& line : scoring::preview(job)) {
        if (line.condition != condition) {
            condition = line.condition;
            text += "\n" + condition + "\n";
            text += row(columns, {"", "reading", "sound house", "this house"}, 2);
        }
        text += row(columns, {line.changed ? "*" : "", line.title, line.sound, line.faulty}, 2);
    }
    return text + "\n* changed by more than the instrument can hide\n";
}

}  // namespace emberpath::records
