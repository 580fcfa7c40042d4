#include "ui/desktop/search.hpp"

#include <algorithm>

#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

using screens::FoundView;

std::string lower(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

std::vector<std::string> words_of(const std::string& text) {
    std::vector<std::string> words(1);
    for (const char c : text)
        if (c == ' ')
            words.emplace_back();
        else
            words.back() += c;
    std::erase(words, "");
    return words;
}

FoundView row_of(const Thing& thing) {
    const auto& p = thing.point;
    const bool part = p.shape == screens::PointShape::part;
    return {part ? "" : p.tag,
            part && p.tag != p.name ? p.tag + ": " + p.name : p.name,
            p.tag,
            "select",
            p.tag,
            ""};
}

FoundView row_of(const Offer& offer, const Searched& in) {
    return {"",
            kit::capitalised(offer.sentence) + (offer.open ? " …" : ""),
            std::string(suggested_act) + offer.sentence,
            offer.open ? "say" : "act",
            offer.sentence,
            offer.open ? "" : in.cost_of(offer.sentence)};
}

bool holds(const std::string& sentence, const std::vector<std::string>& words) {
    return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
        return sentence.find(word) != std::string::npos;
    });
}

void add_things(std::vector<FoundView>& rows, const std::string& said,
                const std::vector<Thing>& things) {
    const auto exact = [&](const Thing& thing) { return lower(thing.point.tag) == said; };
    for (const Thing& thing : things)
        if (exact(thing)) rows.push_back(row_of(thing));
    for (const Thing& thing : things) {
        const bool begins = lower(thing.point.tag).starts_with(said);
        if (!exact(thing) && (begins || lower(thing.point.name).find(said) != std::string::npos))
            rows.push_back(row_of(thing));
    }
}

void add_acts(std::vector<FoundView>& rows, const std::string& said, const Searched& in) {
    const auto words = words_of(said);
    if (words.empty()) return;
    std::size_t listed = 0;
    for (const Offer& offer : in.offers) {
        if (offer.sentence == said && !offer.open) continue;  // it is there already
        if (listed < most_acts_found && holds(lower(offer.sentence), words)) {
            rows.push_back(row_of(offer, in));
            ++listed;
        }
    }
}

}  // namespace

std::vector<FoundView> found_for(const std::string& typed, const Searched& in) {
    const std::string said = lower(typed);
    std::vector<FoundView> rows;
    add_things(rows, said, in.things);
    const bool named = !rows.empty() && lower(rows.front().argument) == said;
    if (!named && said.find(' ') != std::string::npos && in.can_be_done(typed))
        rows.insert(rows.begin(), {"", "Do it: " + typed, "act", "act", typed, in.cost_of(typed)});
    for (const std::string& sentence : in.ready)
        if (said.size() > 3 && lower(sentence).starts_with(said) && lower(sentence) != said)
            rows.push_back({"", kit::capitalised(sentence), std::string(suggested_act) + sentence,
                            "act", sentence, in.cost_of(sentence)});
    add_acts(rows, said, in);
    return rows;
}

}  // namespace emberpath::desktop
