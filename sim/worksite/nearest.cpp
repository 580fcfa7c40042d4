#include <algorithm>
#include <array>

#include "sim/worksite/parse_problem.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

/// The words from `from` on.
std::string joined(const std::vector<Token>& tokens, std::size_t from) {
    std::string text;
    for (std::size_t i = from; i < tokens.size(); ++i)
        text += (text.empty() ? "" : " ") + tokens[i].word;
    return text;
}

bool same_start(const std::vector<Token>& a, const std::vector<Token>& b, std::size_t count) {
    if (a.size() < count || b.size() < count) return false;
    return std::equal(a.begin(), a.begin() + static_cast<std::ptrdiff_t>(count), b.begin(),
                      [](const Token& x, const Token& y) { return x.word == y.word; });
}

/// Edit distance in which a swap of neighbours is one slip (Damerau 1964, restricted form).
std::size_t distance(const std::string& a, const std::string& b) {
    std::array<std::vector<std::size_t>, 3> rows;
    for (auto& row : rows) row.resize(b.size() + 1);
    auto *before = &rows[0], *last = &rows[1], *row = &rows[2];
    for (std::size_t j = 0; j <= b.size(); ++j) (*last)[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        (*row)[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            auto best = std::min({(*last)[j] + 1, (*row)[j - 1] + 1, (*last)[j - 1] + change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                best = std::min(best, (*before)[j - 2] + 1);
            (*row)[j] = best;
        }
        std::swap(before, last);
        std::swap(last, row);
    }
    return (*last)[b.size()];
}

/// Two words or phrases with a space between where both are there.
std::string joined(const std::string& first, const std::string& second) {
    std::string text = first;
    if (!first.empty() && !second.empty()) text += ' ';
    return text += second;
}

/// Every sentence of this house once; open placeholders, and the second of a pair, by their example.
void add_sentences(std::vector<std::string>& list, std::string_view pattern, const Job& job) {
    std::vector<std::string> texts{std::string()};
    for (const auto& part : parts_of(pattern)) {
        std::vector<std::string> words;
        if (part.kind == Part::Kind::literal) words = {std::string(part.text)};
        // Pairs are as many as terminals squared: the other one by its example, too.
        const bool other = part.text.starts_with("other ");
        if (part.kind == Part::Kind::placeholder && !other) words = words_of(part.text, job);
        if (words.empty() && part.kind == Part::Kind::placeholder)
            words = {std::string(example_of(part.text))};
        // A closed list with nothing in this house: nobody can say that here.
        if (part.kind == Part::Kind::placeholder && words.front().empty()) return;
        if (part.kind == Part::Kind::optional) {
            words = {std::string()};
            for (const auto word : alternatives(part.text)) words.emplace_back(word);
        }
        std::vector<std::string> longer;
        for (const auto& text : texts)
            for (const auto& word : words) longer.push_back(joined(text, word));
        texts = std::move(longer);
    }
    list.insert(list.end(), texts.begin(), texts.end());
}

std::string shortened(std::string_view text) {
    std::string out;
    for (const char c : text) out += static_cast<unsigned char>(c) < 0x20U || c == 0x7F ? '?' : c;
    if (out.size() <= 60) return out;
    std::size_t end = 57;
    while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0U) == 0x80U) --end;
    return out.substr(0, end) + "...";
}

std::string listed(const std::vector<std::string>& words, std::string_view last) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " " + std::string(last) + " " : ", ";
        text += words[i];
    }
    return text;
}

/// The patterns that begin with this word: "attach manometer to {point}".
std::vector<std::string> patterns_with(const std::string& first_word) {
    std::vector<std::string> patterns;
    for (const auto& row : phrase_rows()) {
        const auto words = tokens_of(parts_of(row.phrase.pattern).front().text);
        if (!words.empty() && words.front().word == first_word)
            patterns.push_back("\"" + std::string(row.phrase.pattern) + "\"");
    }
    return patterns;
}

std::string expectation(std::string_view sentence, const Understanding& reading, const Job& job) {
    if (reading.too_long) return "a sentence of at most 400 characters";
    const auto& furthest = reading.furthest;
    if (furthest.placeholder.empty() || furthest.token == 0) {
        const auto tokens = tokens_of(sentence);
        const auto patterns =
            tokens.empty() ? std::vector<std::string>() : patterns_with(tokens.front().word);
        return patterns.empty() ? "one of the acts that help and docs/acts.md list"
                                : listed(patterns, "or");
    }
    std::string text(meaning_of(furthest.placeholder));
    if (const auto words = words_of(furthest.placeholder, job); !words.empty())
        text += " (" + listed(words, "or") + ")";
    auto before = sentence.substr(0, furthest.offset);
    while (!before.empty() && before.back() == ' ') before.remove_suffix(1);
    return text + " after \"" + shortened(before) + "\"";
}

/// 1-based, in characters.
int column_of(std::string_view sentence, std::size_t offset) {
    int column = 1;
    for (std::size_t i = 0; i < std::min(offset, sentence.size()); ++i)
        if ((static_cast<unsigned char>(sentence[i]) & 0xC0U) != 0x80U) ++column;
    return column;
}

}  // namespace

std::vector<std::string> all_sentences(const Job& job) {
    std::vector<std::string> all;
    for (const auto& row : phrase_rows()) add_sentences(all, row.phrase.pattern, job);
    return all;
}

std::vector<std::string> nearest_sentences(std::string_view said, const Job& job,
                                           std::size_t count) {
    const auto tokens = tokens_of(said.substr(0, 120));
    if (tokens.empty()) return {};
    const auto all = all_sentences(job);
    struct Candidate {
        std::size_t slips;
        const std::string* text;
        bool close;
    };
    // What was understood so far stays; only the rest may be mended.
    const auto reading = read_sentence(said.substr(0, 120), job);
    const auto kept = reading.furthest.placeholder.empty() ? 0 : reading.furthest.token;
    const bool open = kept > 0 && words_of(reading.furthest.placeholder, job).empty();
    std::vector<Candidate> near;
    for (const auto& text : all) {
        const auto words = tokens_of(text);
        if (!same_start(words, tokens, kept)) continue;
        const auto rest = joined(tokens, kept);
        const auto slips = distance(rest, joined(words, kept));
        const bool first = words.front().word == tokens.front().word;
        const auto share = kept > 0 ? 50U : first ? 45U : 30U;
        const bool close = slips <= std::max<std::size_t>(2, rest.size() * share / 100);
        if (open || close) near.push_back({slips, &text, close});
    }
    std::stable_sort(near.begin(), near.end(),
                     [](const Candidate& a, const Candidate& b) { return a.slips < b.slips; });
    std::vector<std::string> best;  // an example of an open placeholder counts once, however far
    for (std::size_t i = 0; i < near.size() && best.size() < count; ++i)
        if (i == 0 || near[i].close) best.push_back(*near[i].text);
    return best;
}

/// What people say of several acts at once: to isolate, or to make safe. Empty: it is nothing of the kind.
std::string several_acts(std::string_view sentence) {
    std::string said;
    for (const auto& token : tokens_of(sentence)) said += (said.empty() ? "" : " ") + token.word;
    if (said != "isolate" && !said.starts_with("isolate ") && !said.starts_with("make safe") &&
        !(said.starts_with("make ") && said.ends_with(" safe")))
        return {};
    return "No single act does it: see help shut, help lock, help prove.";
}

diagnostics::Diagnostic explain(std::string_view sentence, const Understanding& reading,
                                const Job& job) {
    diagnostics::Diagnostic problem;
    problem.found = "\"" + shortened(sentence) + "\"";
    problem.expected = expectation(sentence, reading, job);
    const bool partly = !reading.furthest.placeholder.empty() && reading.furthest.token > 0;
    problem.column = partly ? column_of(sentence, reading.furthest.offset) : 1;
    if (const auto near = nearest_sentences(sentence, job, 1); !near.empty())
        problem.suggestion = near.front();
    return problem;
}

std::variant<Act, ActRefusal> parse_act(std::string_view sentence, const Job& job) {
    const auto reading = read_sentence(sentence, job);
    if (reading.understood) return reading.act;
    if (tokens_of(sentence).empty())
        return ActRefusal{"Say what you do; help lists the sentences."};
    if (auto several = several_acts(sentence); !several.empty()) return ActRefusal{several};
    const auto problem = explain(sentence, reading, job);
    const auto near = nearest_sentences(sentence, job, 3);
    std::string text = problem.found + " is no act I can read; expected " + problem.expected + ".";
    if (!near.empty()) {
        std::vector<std::string> quoted;
        quoted.reserve(near.size());
        for (const auto& one : near) quoted.push_back("\"" + one + "\"");
        text += " Did you mean " + listed(quoted, "or") + "?";
    }
    return ActRefusal{text};
}

}  // namespace emberpath::worksite
