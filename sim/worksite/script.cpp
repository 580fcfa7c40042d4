#include <algorithm>

#include "sim/worksite/parse_problem.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::size_t longest_script = 5000;  // lines

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\r';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
    return text;
}

/// A comment begins at the line's first character or after a blank and is no number of a reading: "#4" is.
std::string_view without_comment(std::string_view line) {
    for (std::size_t at = 0; at < line.size(); ++at) {
        if (line[at] != '#') continue;
        const bool number = at + 1 < line.size() && line[at + 1] >= '0' && line[at + 1] <= '9';
        const bool starts = at == 0 || is_blank(line[at - 1]);
        const bool first = trimmed(line.substr(0, at)).empty();
        if (first || (starts && !number)) return line.substr(0, at);
    }
    return line;
}

diagnostics::Diagnostic at(std::string_view file, int line, std::string_view source) {
    diagnostics::Diagnostic problem;
    problem.file = std::string(file);
    problem.line = line;
    problem.source_line = std::string(source.substr(0, 200));
    return problem;
}

bool has_control_character(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) < 0x20U && !is_blank(c)) || c == 0x7F;
    });
}

class ScriptReader {
  public:
    ScriptReader(std::string_view file, const Job& job) : file_(file), job_(job) {}

    void line(int number, std::string_view source) {
        while (!source.empty() && source.back() == '\r') source.remove_suffix(1);
        const auto sentence = trimmed(without_comment(source));
        if (sentence.empty()) return;
        if (has_control_character(source))
            return problem(number, source, 0, "a control character", "plain text, one act a line");
        if (handed_in_at_ > 0)
            return problem(number, source, 0,
                           "an act after \"hand in\" in line " + std::to_string(handed_in_at_),
                           "nothing: the attempt is over");
        const auto reading = read_sentence(sentence, job_);
        if (!reading.understood) return not_understood(number, source, sentence, reading);
        if (reading.act.verb == Verb::hand_in) handed_in_at_ = number;
        script.lines.push_back({number, std::string(sentence)});
    }

    void nothing_to_do() {
        if (!script.lines.empty() || !script.problems.empty()) return;
        script.problems.push_back({std::string(file_),
                                   0,
                                   0,
                                   "no act",
                                   "one act a line, such as \"look at display\"",
                                   {},
                                   {}});
    }

    Script script;

  private:
    void problem(int number, std::string_view source, int column, std::string found,
                 std::string expected) {
        auto p = at(file_, number, source);
        p.column = column;
        p.found = "found " + std::move(found);
        p.expected = std::move(expected);
        script.problems.push_back(std::move(p));
    }

    void not_understood(int number, std::string_view source, std::string_view sentence,
                        const Understanding& reading) {
        auto p = explain(sentence, reading, job_);
        const auto lead = static_cast<int>(sentence.data() - source.data());
        p.file = std::string(file_);
        p.line = number;
        p.column += lead;
        p.found = "found " + p.found;
        p.source_line = std::string(source.substr(0, 200));
        script.problems.push_back(std::move(p));
    }

    std::string_view file_;
    const Job& job_;
    int handed_in_at_ = 0;
};

}  // namespace

Script read_script(std::string_view text, std::string_view file, const Job& job) {
    ScriptReader reader(file, job);
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    int number = 0;
    for (std::size_t at_byte = 0; at_byte < text.size();) {
        const auto end = std::min(text.find('\n', at_byte), text.size());
        if (static_cast<std::size_t>(++number) > longest_script) {
            auto p = at(file, number, {});
            p.found = "found more than " + std::to_string(longest_script) + " lines";
            p.expected = "a script of one visit";
            reader.script.problems.push_back(std::move(p));
            break;
        }
        reader.line(number, text.substr(at_byte, end - at_byte));
        at_byte = end + 1;
    }
    reader.nothing_to_do();
    return std::move(reader.script);
}

}  // namespace emberpath::worksite
