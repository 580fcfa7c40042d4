#include <fstream>
#include <nlohmann/json.hpp>

#include "sim/records/line.hpp"
#include "sim/records/record.hpp"

namespace emberpath::records {

namespace {

using Json = nlohmann::json;

constexpr std::string_view start_again =
    "a record as the program wrote it; use the untouched file, or do the attempt again";

/// Members of one object, each checked; what is wrong goes into the record's problems.
class Members {
  public:
    Members(const Json& object, int line, Record& record)
        : object_(object), line_(line), record_(record) {}

    bool has(const char* key) const { return member(key) != nullptr; }
    std::string text(const char* key) {
        const Json* found = member(key);
        if (found && found->is_string()) return found->get<std::string>();
        complain(key, found, "text between quotes");
        return {};
    }
    std::int64_t whole(const char* key) {
        const Json* found = member(key);
        if (found && found->is_number_integer() && (*found >= 0)) return found->get<std::int64_t>();
        complain(key, found, "a whole number from 0");
        return 0;
    }
    std::uint64_t seed(const char* key) {
        const Json* found = member(key);
        if (found && found->is_number_unsigned()) return found->get<std::uint64_t>();
        complain(key, found, "a whole number from 0");
        return 0;
    }
    double number(const char* key) {
        const Json* found = member(key);
        if (found && found->is_number()) return found->get<double>();
        complain(key, found, "a number");
        return 0.0;
    }
    bool yes_no(const char* key) {
        const Json* found = member(key);
        if (found && found->is_boolean()) return found->get<bool>();
        complain(key, found, "true or false");
        return false;
    }
    const Json& list(const char* key) {
        static const Json empty = Json::array();
        const Json* found = member(key);
        if (found && found->is_array()) return *found;
        complain(key, found, "a list between [ and ]");
        return empty;
    }
    void problem(std::string found, std::string expected) {
        record_.problems.push_back(
            {record_.file.string(), line_, 0, std::move(found), std::move(expected), {}, {}});
    }

  private:
    const Json* member(const char* key) const {
        const auto it = object_.is_object() ? object_.find(key) : object_.end();
        return it == object_.end() ? nullptr : &*it;
    }
    void complain(const char* key, const Json* found, std::string_view expected) {
        const std::string what =
            found ? "found " +
                        found->dump(-1, ' ', true, Json::error_handler_t::replace).substr(0, 40)
                  : std::string("is missing");
        problem(std::string(key) + ": " + what, std::string(expected));
    }
    const Json& object_;
    int line_;
    Record& record_;
};

void read_header(Members& in, Record& record) {
    Header& header = record.header;
    if (in.text("record") != "emberpath")
        in.problem("record: not an Emberpath record", "a file made by emberpath work");
    header.schema = static_cast<int>(in.whole("schema"));
    if (header.schema != record_schema)
        in.problem("schema: found " + std::to_string(header.schema) + ", this program reads " +
                       std::to_string(record_schema),
                   "the program version that wrote this record");
    header.program_version = in.text("program");
    header.build = in.has("build") ? in.text("build") : std::string();
    header.job = in.text("job");
    header.scenario_hash = in.text("scenario_hash");
    header.seed = in.seed("seed");
    const std::string mode = in.text("mode");
    if (mode != "coached" && mode != "assessed")
        in.problem("mode: found \"" + mode + "\"", "\"coached\" or \"assessed\"");
    if (in.has("licence")) header.licence = in.text("licence");
    header.mode = mode == "assessed" ? worksite::Mode::assessed : worksite::Mode::coached;
}

void read_act(Members& in, Record& record) {
    if (!record.acts.empty() && !record.acts.back().finished)
        in.problem("act: the one before has no result", std::string(start_again));
    const auto number = in.whole("act");
    if (number != static_cast<std::int64_t>(record.acts.size()) + 1)
        in.problem("act: found number " + std::to_string(number) + ", expected " +
                       std::to_string(record.acts.size() + 1),
                   std::string(start_again));
    RecordedAct act;
    act.tick = in.whole("tick");
    act.sentence = in.text("sentence");
    if (!record.acts.empty() && act.tick < record.acts.back().end_tick)
        in.problem("tick: this act begins before the one above it ended", std::string(start_again));
    record.acts.push_back(std::move(act));
}

void read_readings(Members& in, int line, Record& record, RecordedAct& act) {
    for (const auto& item : in.list("readings")) {
        Members reading(item, line, record);
        act.readings.push_back({static_cast<int>(reading.whole("number")), reading.text("quantity"),
                                reading.number("value")});
    }
}

void read_result(Members& in, int line, Record& record) {
    const auto number = in.whole("result");
    if (record.acts.empty() || record.acts.back().finished ||
        number != static_cast<std::int64_t>(record.acts.size())) {
        in.problem("result: there is no act " + std::to_string(number) + " waiting for one",
                   std::string(start_again));
        return;
    }
    RecordedAct& act = record.acts.back();
    act.finished = true;
    act.end_tick = in.whole("tick");
    act.state_hash = in.text("state");
    for (const auto& shown : in.list("shown")) {
        if (shown.is_string())
            act.shown.push_back(shown.get<std::string>());
        else
            in.problem("shown: an entry is not text", "text between quotes");
    }
    read_readings(in, line, record, act);
}

void read_closing(Members& in, int line, Record& record) {
    record.closed = true;
    record.gates_met = in.yes_no("gates_met");
    record.proposal = in.text("proposal");
    record.day_after.state = in.text("day_after_state");
    for (const auto& item : in.list("day_after")) {
        if (item.is_string())
            record.day_after.lines.push_back(item.get<std::string>());
        else
            in.problem("day_after: an entry is not text", "text between quotes");
    }
    for (const auto& item : in.list("scores")) {
        Members score(item, line, record);
        record.scores.push_back({score.text("area"), score.number("score")});
    }
}

void read_object(const Json& object, int line, Record& record) {
    Members in(object, line, record);
    if (line == 1)
        read_header(in, record);
    else if (record.closed)
        in.problem("the record goes on after it was closed", std::string(start_again));
    else if (object.contains("act"))
        read_act(in, record);
    else if (object.contains("result"))
        read_result(in, line, record);
    else if (object.contains("closed"))
        read_closing(in, line, record);
    else
        in.problem("neither an act, a result nor the closing line", std::string(start_again));
}

/// A line cut short is the last one, without its line end, and cannot be opened.
bool is_torn(const std::string& text, bool last_and_unterminated) {
    return last_and_unterminated && (!open_seal(text).sealed || !Json::accept(text));
}

void read_line(const std::string& text, int line, Record& record) {
    const auto add = [&](std::string found) {
        record.problems.push_back({record.file.string(),
                                   line,
                                   0,
                                   std::move(found),
                                   std::string(start_again),
                                   text.substr(0, 80),
                                   {}});
    };
    const Json object = Json::parse(text, nullptr, false);
    if (!object.is_object()) return add("not a JSON object");
    const Opened opened = open_seal(text);
    if (!opened.sealed) return add("chain: is missing at the end of the line");
    const std::string expected = next_chain(record.chain, opened.object);
    if (opened.chain != expected)
        add("chain: found " + opened.chain + ", expected " + expected +
            ": this line or the one before it is not as it was written");
    record.chain = opened.chain;  // so that one change is reported once
    read_object(object, line, record);
}

}  // namespace

Record read(const std::filesystem::path& file) {
    Record record;
    record.file = file;
    record.chain = first_chain;
    std::ifstream in(file, std::ios::binary);
    if (!in || std::filesystem::is_directory(file)) {
        record.problems.push_back({file.string(),
                                   0,
                                   0,
                                   "the file cannot be read",
                                   "a record made by emberpath work",
                                   {},
                                   {}});
        return record;
    }
    int line = 0;
    for (std::string text; std::getline(in, text);) {
        ++line;
        const bool unterminated = in.eof();
        if (line > 1 && is_torn(text, unterminated)) {
            record.notes.push_back("line " + std::to_string(line) +
                                   " was cut short, as by a power cut; it is left out");
            break;
        }
        read_line(text, line, record);
        record.good_bytes += text.size() + (unterminated ? 0 : 1);
        record.unterminated = unterminated;
    }
    if (line == 0)
        record.problems.push_back(
            {file.string(), 0, 0, "the file is empty", "a record made by emberpath work", {}, {}});
    return record;
}

}  // namespace emberpath::records
