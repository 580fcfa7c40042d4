#include "sim/records/decision.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>

#include "sim/records/line.hpp"
#include "sim/records/synced_file.hpp"
#include "sim/units/units.hpp"

namespace emberpath::records {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view verdict = "verdict";
constexpr std::string_view as_written =
    "the decisions as the program wrote them; move this file away and decide anew";

bool is_blank(std::string_view text) {
    return text.find_first_not_of(' ') == std::string_view::npos;
}

std::string points_text(double points) {
    return units::fixed(points, 1);
}

/// Points from 0 to 100, as a number and nothing after it.
bool is_points(std::string_view text) {
    double value = 0.0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    return read.ec == std::errc() && read.ptr == text.data() + text.size() && value >= 0.0 &&
           value <= 100.0;
}

const RecordedScore* score_of(const Record& record, std::string_view about) {
    const auto found = std::find_if(record.scores.begin(), record.scores.end(),
                                    [&](const RecordedScore& one) { return one.area == about; });
    return found == record.scores.end() ? nullptr : &*found;
}

std::string words_of(const Record& record) {
    std::string words = "verdict";
    for (const auto& score : record.scores) words += ", " + score.area;
    return words;
}

std::string refusal(const Record& record, const Decision& decision) {
    if (!record.good() || !record.closed)
        return "Only a finished attempt with an undamaged record can be decided about.";
    if (is_blank(decision.reason) || !can_be_kept(decision.reason))
        return "A decision needs a reason in words: at most " + std::to_string(longest_sentence) +
               " bytes on one line.";
    if (is_blank(decision.role) || !can_be_kept(decision.role))
        return "A decision needs the role of who made it, such as \"assessor\".";
    if (decision.about == verdict)
        return decision.now == "competent" || decision.now == "not yet competent"
                   ? ""
                   : "verdict: found \"" + decision.now +
                         "\", expected competent or not yet competent.";
    if (score_of(record, decision.about) == nullptr)
        return "found \"" + decision.about + "\", expected one of: " + words_of(record) + ".";
    return is_points(decision.now) ? ""
                                   : decision.about + ": found \"" + decision.now +
                                         "\", expected points from 0 to 100.";
}

std::string text_of(const Decision& decision, std::size_t number) {
    const Json object = {{"decision", number},    {"about", decision.about},
                         {"now", decision.now},   {"was", decision.was},
                         {"role", decision.role}, {"reason", decision.reason}};
    return object.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string member(const Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

/// What is wrong with a line, or nothing.
std::string read_line(const std::string& text, const std::string& chain, Decision& decision) {
    const Json object = Json::parse(text, nullptr, false);
    const Opened opened = open_seal(text);
    if (!object.is_object() || !opened.sealed) return "not a decision with a chain at its end";
    if (opened.chain != next_chain(chain, opened.object))
        return "chain: found " + opened.chain + ", expected " + next_chain(chain, opened.object) +
               ": changed since, or made about another record";
    decision = {member(object, "about"),  member(object, "now"), member(object, "role"),
                member(object, "reason"), member(object, "was"), opened.chain};
    return is_blank(decision.reason) ? "reason: is missing" : "";
}

}  // namespace

std::filesystem::path decisions_file(const std::filesystem::path& record) {
    std::filesystem::path file = record;
    file += ".decisions";
    return file;
}

Decisions read_decisions(const Record& record) {
    Decisions decisions;
    const std::filesystem::path file = decisions_file(record.file);
    std::ifstream in(file, std::ios::binary);
    std::string chain = record.chain;
    int line = 0;
    for (std::string text; std::getline(in, text);) {
        ++line;
        Decision decision;
        const std::string problem = read_line(text, chain, decision);
        if (!problem.empty()) {
            decisions.problems.push_back(
                {file.string(), line, 0, problem, std::string(as_written), text.substr(0, 80), {}});
            return decisions;
        }
        chain = decision.chain;
        decisions.all.push_back(std::move(decision));
    }
    return decisions;
}

std::string decide(const Record& record, Decision decision) {
    if (std::string why = refusal(record, decision); !why.empty()) return why;
    const Decisions before = read_decisions(record);
    if (!before.good()) return diagnostics::to_text(before.problems, "nothing was decided");
    const RecordedScore* score = score_of(record, decision.about);
    decision.was = score != nullptr ? points_text(score->score) : record.proposal;
    const std::string chain = before.all.empty() ? record.chain : before.all.back().chain;
    const std::string text = text_of(decision, before.all.size() + 1);
    SyncedFile file(decisions_file(record.file),
                    before.all.empty() ? SyncedFile::Open::new_file : SyncedFile::Open::existing);
    file.append(seal(text, next_chain(chain, text)) + "\n");
    return {};
}

std::string in_words(const Decision& decision) {
    std::string about = decision.about;
    if (!about.empty() && about.front() >= 'a' && about.front() <= 'z')
        about.front() = static_cast<char>(about.front() - 'a' + 'A');
    const std::string was = decision.about == verdict
                                ? "The program had proposed: \"" + decision.was + "\""
                                : "The program had proposed " + decision.was + ".";
    return about + ": " + decision.now + ", decided by a person (" + decision.role +
           "). Reason: " + decision.reason + " [" + decision.chain + "] " + was;
}

}  // namespace emberpath::records
