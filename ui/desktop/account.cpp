#include "ui/desktop/account.hpp"

#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

using Kind = worksite::LogEntry::Kind;

constexpr std::string_view tell = "tell customer ", cause = "write cause ",
                           also = "write also cause ", possible = "write possible cause ";

std::string sentence(std::string words) {
    return words.empty() ? words : kit::capitalised(words) + ".";
}

void join(std::string& text, std::string_view mark, const std::string& words) {
    if (!text.empty()) text += mark;
    text += words;
}

std::string remedies_in(const Log& log) {
    std::string words;
    for (const auto& entry : log)
        if (entry.kind == Kind::remedy) join(words, ", ", entry.words);
    return words;
}

/// Index behind the last remedy; 0 when there was none.
std::size_t after_remedy(const Log& log) {
    std::size_t begin = 0;
    for (std::size_t i = 0; i < log.size(); ++i)
        if (log[i].kind == Kind::remedy) begin = i + 1;
    return begin;
}

}  // namespace

std::string done_in(const Log& log) {
    return sentence(remedies_in(log));
}

std::string proved_in(const Log& log) {
    const std::size_t begin = after_remedy(log);
    if (begin == 0) return {};
    std::string proofs, readings;
    for (std::size_t i = begin; i < log.size(); ++i) {
        if (log[i].kind == Kind::proof) join(proofs, ", ", log[i].words);
        for (const auto& seen : log[i].observations)
            if (seen.number > 0) readings += " #" + std::to_string(seen.number);
    }
    if (!readings.empty()) join(proofs, "; ", "readings after it" + readings);
    return sentence(proofs);
}

std::string told_in(const Log& log) {
    std::string words;
    for (const auto& entry : log)
        if (entry.words.starts_with(tell)) words = entry.words.substr(tell.size());
    return sentence(words);
}

std::string account_of(const Log& log, const std::vector<views::Suspect>& suspects) {
    std::string found;
    for (const auto& entry : log)
        for (const auto& suspect : suspects) {
            if (!entry.words.ends_with(suspect.word)) continue;
            if (entry.words == std::string(cause) + suspect.word) found = suspect.title;
            if (entry.words == std::string(also) + suspect.word)
                join(found, " and ", suspect.title);
            if (entry.words == std::string(possible) + suspect.word)
                join(found, " or ", suspect.title);
        }
    std::string words = found.empty() ? "" : "what was found: " + found;
    if (const std::string done = remedies_in(log); !done.empty())
        join(words, "; ", "what was done: " + done);
    return words;
}

}  // namespace emberpath::desktop
