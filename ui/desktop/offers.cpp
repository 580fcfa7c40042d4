// Which sentences can be said in a house, and at which thing each belongs.

#include <algorithm>

#include "sim/worksite/vocabulary.hpp"
#include "ui/desktop/things.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

using worksite::Part;

/// A sentence on its way: what is said so far, and the closed word in it.
struct Draft {
    std::string words;
    std::string placeholder, word;
    bool open = false;
};

void append(Draft& draft, std::string_view word) {
    if (draft.open) return;  // nothing is said after a word of the trainee's own
    if (!draft.words.empty()) draft.words += " ";
    draft.words += word;
}

std::vector<Draft> with_choice(const std::vector<Draft>& drafts, const std::string& placeholder,
                               const std::vector<std::string>& words) {
    std::vector<Draft> longer;
    for (const Draft& draft : drafts)
        for (const std::string& word : words) {
            Draft next = draft;
            append(next, word);
            next.placeholder = placeholder;
            next.word = word;
            longer.push_back(std::move(next));
        }
    return longer;
}

std::vector<Draft> with_option(const std::vector<Draft>& drafts, std::string_view options) {
    std::vector<Draft> longer;
    for (const Draft& draft : drafts) {
        longer.push_back(draft);
        for (const auto option : worksite::alternatives(options)) {
            Draft next = draft;
            append(next, option);
            longer.push_back(std::move(next));
        }
    }
    return longer;
}

std::vector<Draft> sentences_of(std::string_view pattern, const views::JobCard& card) {
    std::vector<Draft> drafts(1);
    for (const Part& part : worksite::parts_of(pattern)) {
        if (part.kind == Part::Kind::literal) {
            for (Draft& draft : drafts) append(draft, part.text);
        } else if (part.kind == Part::Kind::optional) {
            drafts = with_option(drafts, part.text);
        } else {
            const auto choice = std::find_if(
                card.choices.begin(), card.choices.end(),
                [&](const views::Choice& one) { return one.placeholder == part.text; });
            // A second thing is named by the trainee, or every pair would be an act of its own.
            const bool second = !drafts.front().placeholder.empty();
            if (choice == card.choices.end() || choice->open || choice->words.empty() || second)
                for (Draft& draft : drafts) draft.open = true;
            else
                drafts = with_choice(drafts, choice->placeholder, choice->words);
        }
    }
    return drafts;
}

/// Acts that have a place of their own on screen: the wait key, the list of causes, the write-up.
bool placed_elsewhere(std::string_view pattern) {
    for (const std::string_view begin :
         {"wait", "suspect", "doubt", "strike out", "write ", "hand in"})
        if (pattern.starts_with(begin)) return true;
    return false;
}

bool claims(const Thing& thing, const Draft& draft) {
    return std::any_of(thing.claims.begin(), thing.claims.end(), [&](const std::string& claim) {
        return claim == draft.placeholder + ":" + draft.word || claim == draft.placeholder + ":*";
    });
}

/// Things whose alias stands in the sentence: those with the longest one.
std::vector<std::size_t> by_alias(const std::vector<Thing>& things, std::string_view sentence) {
    std::vector<std::size_t> found;
    std::size_t longest = 0;
    for (std::size_t i = 0; i < things.size(); ++i)
        for (const std::string& alias : things[i].aliases) {
            if (alias.empty() || sentence.find(alias) == std::string_view::npos) continue;
            if (alias.size() < longest) continue;
            if (alias.size() > longest) found.clear();
            longest = alias.size();
            if (found.empty() || found.back() != i) found.push_back(i);
        }
    return found;
}

std::vector<std::size_t> homes_of(const Draft& draft, const std::vector<Thing>& things) {
    std::vector<std::size_t> found;
    if (!draft.placeholder.empty() && draft.placeholder != "body")
        for (std::size_t i = 0; i < things.size(); ++i)
            if (claims(things[i], draft)) found.push_back(i);
    if (found.empty()) found = by_alias(things, draft.words);
    if (found.empty())
        found.push_back(find_thing(things, draft.placeholder == "body" ? "customer" : "heater"));
    return found;
}

void cut_last_word(std::string& text, std::string_view word) {
    if (text.ends_with(word)) text.resize(text.size() - word.size());
}

}  // namespace

std::vector<Offer> offers_of(const views::JobCard& card, const std::vector<Thing>& things) {
    std::vector<Offer> offers;
    for (const auto& phrase : views::phrases({})) {
        if (placed_elsewhere(phrase.pattern)) continue;
        for (const Draft& draft : sentences_of(phrase.pattern, card))
            offers.push_back(
                {draft.words, draft.open, phrase.pattern, homes_of(draft, things), draft.word});
    }
    return offers;
}

std::string short_name(const Offer& offer, const Thing& thing) {
    std::string text = offer.sentence;
    for (const std::string& claim : thing.claims) {
        const std::string word = claim.substr(claim.find(':') + 1);
        const auto at = word != offer.word ? std::string::npos : text.find(" " + word);
        if (at == std::string::npos) continue;
        text.erase(at, word.size() + 1);
        if (at == text.size())
            for (const std::string_view last : {" at", " to", " of", " about", " for"})
                cut_last_word(text, last);
        break;
    }
    if (text.starts_with("read readout ")) text.erase(5, 8);
    if (text.starts_with("ask about ")) text.replace(3, 7, ": ");
    return kit::capitalised(text) + (offer.open ? " …" : "");
}

}  // namespace emberpath::desktop
