#include "ui/desktop/draft.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "sim/records/record.hpp"

namespace emberpath::desktop {

namespace {

struct Field {
    std::string_view name;
    std::string Draft::*text;
};
constexpr std::array fields{Field{"because", &Draft::because}, Field{"done", &Draft::done},
                            Field{"proved", &Draft::proved}, Field{"told", &Draft::told}};

constexpr std::string_view clock_begins = "clock = ";

/// One line: new lines and the sign that marks them are spelt out.
std::string escaped(std::string_view text) {
    std::string line;
    for (const char c : text) {
        if (c == '\n')
            line += "\\n";
        else if (c == '\\')
            line += "\\\\";
        else
            line += c;
    }
    return line;
}

std::string unescaped(std::string_view line) {
    std::string text;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const bool mark = line[i] == '\\' && i + 1 < line.size();
        text += !mark ? line[i] : line[++i] == 'n' ? '\n' : line[i];
    }
    return text;
}

std::string one_line(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    const auto last = text.find_last_not_of(' ');
    text.resize(last == std::string::npos ? 0 : last + 1);
    return text;
}

/// Everything about the work in one sentence: what was done, how it was proved, and why.
std::string done_words(const Draft& draft) {
    std::string text = one_line(draft.done);
    const auto add = [&](std::string_view title, const std::string& words) {
        if (words.empty()) return;
        text += (text.empty() ? "" : " ") + std::string(title) + words;
    };
    add("Proved by: ", one_line(draft.proved));
    add("Because: ", one_line(draft.because));
    return text;
}

}  // namespace

std::string to_text(const Draft& draft) {
    std::string text;
    for (const Field& field : fields)
        text += std::string(field.name) + " = " + escaped(draft.*field.text) + "\n";
    return text + std::string(clock_begins) + std::to_string(draft.clock) + "\n";
}

Draft draft_from(std::string_view text) {
    Draft draft;
    while (!text.empty()) {
        const auto end = text.find('\n');
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        for (const Field& field : fields) {
            const std::string begin = std::string(field.name) + " = ";
            if (line.starts_with(begin)) draft.*field.text = unescaped(line.substr(begin.size()));
        }
        if (line.starts_with(clock_begins))
            (void)std::from_chars(line.data() + clock_begins.size(), line.data() + line.size(),
                                  draft.clock);
    }
    return draft;
}

std::vector<int> cited_in(std::string_view text) {
    std::vector<int> numbers;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '#') continue;
        int number = 0;
        while (i + 1 < text.size() && text[i + 1] >= '0' && text[i + 1] <= '9' && number < 1000)
            number = number * 10 + (text[++i] - '0');
        if (number > 0 && std::find(numbers.begin(), numbers.end(), number) == numbers.end())
            numbers.push_back(number);
    }
    return numbers;
}

int words_in(std::string_view text) {
    int words = 0;
    bool inside = false;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\n';
        if (!blank && !inside) ++words;
        inside = !blank;
    }
    return words;
}

std::vector<std::string> sentences_for(const Draft& draft) {
    std::vector<std::string> sentences;
    std::string because;
    for (const int number : cited_in(draft.because + " " + draft.proved))
        because += " #" + std::to_string(number);
    if (!because.empty()) sentences.push_back("write because" + because);
    if (const auto done = done_words(draft); !done.empty())
        sentences.push_back("write done " + done);
    if (const auto told = one_line(draft.told); !told.empty())
        sentences.push_back("write told " + told);
    sentences.emplace_back("hand in");
    return sentences;
}

std::string problem_of(const Draft& draft) {
    for (const std::string& sentence : sentences_for(draft)) {
        if (sentence.size() > records::longest_sentence)
            return "the text is " + std::to_string(sentence.size() - records::longest_sentence) +
                   " characters too long";
        if (!records::can_be_kept(sentence)) return "the text has characters that cannot be kept";
    }
    return {};
}

}  // namespace emberpath::desktop
