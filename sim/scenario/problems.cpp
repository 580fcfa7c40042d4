#include "sim/scenario/problems.hpp"

#include <algorithm>
#include <utility>

namespace emberpath::scenario {

std::size_t Problems::add_source(std::string name, std::string text) {
    if (text.starts_with("\xef\xbb\xbf")) text.erase(0, 3);
    sources_.push_back({std::move(name), std::move(text)});
    return sources_.size() - 1;
}

std::string_view Problems::line(const Position& at) const {
    if (at.source >= sources_.size() || at.line < 1) return {};
    std::string_view rest = sources_[at.source].text;
    for (int line = 1; line < at.line; ++line) {
        const std::size_t end = rest.find('\n');
        if (end == std::string_view::npos) return {};
        rest.remove_prefix(end + 1);
    }
    rest = rest.substr(0, rest.find('\n'));
    if (rest.ends_with('\r')) rest.remove_suffix(1);
    return rest;
}

void Problems::add(const Position& at, Remark remark) {
    const bool known = std::any_of(problems_.begin(), problems_.end(), [&](const Problem& other) {
        return other.at == at && other.remark.found == remark.found;
    });
    if (!known) problems_.push_back({at, std::move(remark)});
}

std::vector<diagnostics::Diagnostic> Problems::sorted() const {
    std::vector<Problem> ordered = problems_;
    std::stable_sort(ordered.begin(), ordered.end(),
                     [](const Problem& a, const Problem& b) { return a.at < b.at; });
    std::vector<diagnostics::Diagnostic> all;
    for (const Problem& problem : ordered) {
        diagnostics::Diagnostic made;
        made.file = name(problem.at.source);
        made.line = problem.at.line;
        made.column = problem.at.column;
        made.found = problem.remark.found;
        made.expected = problem.remark.expected;
        made.suggestion = problem.remark.suggestion;
        made.source_line = line(problem.at);
        all.push_back(std::move(made));
    }
    return all;
}

std::string in_quotes(std::string_view text) {
    constexpr std::size_t longest = 60;
    if (text.size() <= longest) return "\"" + std::string(text) + "\"";
    std::size_t cut = longest;
    while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xc0U) == 0x80U) --cut;
    return "\"" + std::string(text.substr(0, cut)) + "...\"";
}

}  // namespace emberpath::scenario
