#include "ui/terminal/words.hpp"

#include "ui/debrief/page.hpp"
#include "ui/terminal/terminal.hpp"
#include "ui/views/services.hpp"

namespace emberpath::terminal {

namespace {

using debrief::page_width;
using debrief::paragraph;
using debrief::row;

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (const auto& word : words) text += (text.empty() ? "" : ", ") + word;
    return text;
}

std::string table_of(const std::vector<views::PhraseRow>& phrases) {
    std::string text;
    for (const auto& phrase : phrases)
        text += row(
            {{40}, {48}, {7, true}},
            {phrase.pattern, phrase.help + (phrase.takes.empty() ? "" : " (" + phrase.takes + ")"),
             phrase.cost},
            1);
    return text;
}

/// What the {words} in these sentences can stand for here.
std::string choices_for(const std::vector<views::PhraseRow>& phrases, const views::JobCard& card) {
    std::string text;
    for (const auto& choice : card.choices) {
        const std::string name = "{" + choice.placeholder + "}";
        for (const auto& phrase : phrases) {
            if (phrase.pattern.find(name) == std::string::npos || choice.words.empty()) continue;
            text += paragraph(
                (choice.open ? choice.meaning + ": " : std::string()) + listed(choice.words),
                page_width, 1, name + "  ");
            break;
        }
    }
    return text;
}

constexpr std::string_view at_any_time =
    "  help WORD        the sentences about a word: what they do, the price of a part, the kind of "
    "work a\n"
    "                   licence has to cover, and the time they take; help all\n"
    "  help price       every part with its price; help licence: all work that a licence has to "
    "cover\n"
    "  readings         what you have recorded\n"
    "  services         gas, water, power, cover and air as you last found or left them\n"
    "  log              what you have done and what it showed\n"
    "  causes           what can be wrong with a heater in such a house\n"
    "  time             minutes since you arrived\n"
    "  quit             stop here; the attempt is kept and can be taken up again\n";

/// All sentences in two columns, each with its time but without explanations: what fits a screen.
std::string overview() {
    auto all = views::phrases({});
    const std::size_t half = (all.size() + 1) / 2;
    all.resize(2 * half);  // an empty last one where their number is odd
    std::string text;
    for (std::size_t i = 0; i < half; ++i)
        text += row({{39}, {7, true}, {39}, {7, true}},
                    {all[i].pattern, all[i].cost, all[i + half].pattern, all[i + half].cost}, 1);
    return text;
}

bool has_price(const views::PhraseRow& phrase) {
    return phrase.takes.starts_with(views::price_begins);
}

bool needs_licence(const views::PhraseRow& phrase) {
    return !phrase.takes.empty() &&
           (!has_price(phrase) || phrase.takes.find("; ") != std::string::npos);
}

/// All parts with their prices, or all work by its kind; empty for any other word.
std::string topic_text(std::string_view word) {
    const bool price = word == "price" || word == "prices" || word == "cost" || word == "costs";
    if (!price && word != "licence" && word != "licences" && word != "license") return {};
    auto all = views::phrases({});
    std::erase_if(all, [price](const views::PhraseRow& phrase) {
        return price ? !has_price(phrase) : !needs_licence(phrase);
    });
    return paragraph(price ? "What uses up a part, and the part's price in minutes of work, which "
                             "come on top of the time on site:"
                           : "Work that a licence has to cover, and its kind. What yours leaves "
                             "out is handed on:",
                     page_width) +
           table_of(all);
}

}  // namespace

std::string help_text(const views::JobCard& card, std::string_view word) {
    if (auto about = topic_text(word); !about.empty()) return about;
    if (word.empty())
        return "Sentences you can say, and the time they take:\n" + overview() +
               "\nAt any time, and taking none of it:\n" + std::string(at_any_time);
    if (word == "all") return table_of(views::phrases({}));
    const auto found = views::phrases(word);
    if (!found.empty()) return table_of(found) + choices_for(found, card);
    return paragraph("Nothing about \"" + std::string(word) +
                         "\". Sentences begin with: " + listed(views::first_words()) + ".",
                     page_width, 1);
}

std::string readings_text(const views::Visit& visit) {
    std::string text;
    for (const auto& reading : views::readings(visit.attempt()))
        text += row({{4, true}, {5}, {34}, {16}, {31}},
                    {"#" + std::to_string(reading.number), reading.time, reading.title,
                     reading.value, reading.condition},
                    2);
    return text.empty() ? "  No reading yet. The first one you take becomes #1.\n" : text;
}

std::string log_text(const views::Visit& visit) {
    std::string text;
    for (const auto& entry : views::log(visit.attempt())) {
        text += paragraph(entry.words, page_width, 2, entry.time + "  ");
        for (const auto& line : entry.shown) text += paragraph(line, page_width, 9);
    }
    return text.empty() ? "  Nothing done yet.\n" : text;
}

std::string services_text(const views::Visit& visit) {
    std::string text;
    for (const auto& service : views::services(visit.attempt()))
        text += row({{9}, {44}, {5}}, {service.service, service.state, service.time}, 2);
    return text;
}

std::string suspects_text(const views::Visit& visit) {
    std::string text;
    for (const auto& suspect : visit.suspects())
        text += row({{22}, {70}}, {suspect.word, suspect.title}, 2);
    return text;
}

std::string answer(const views::Visit& visit, std::string_view line) {
    if (line == "help" || line == "?") return help_text(visit.card(), {});
    if (line.starts_with("help ")) return help_text(visit.card(), line.substr(5));
    if (line == "readings") return readings_text(visit);
    if (line == "services") return services_text(visit);
    if (line == "log") return log_text(visit);
    if (line == "causes") return suspects_text(visit);
    if (line == "time") {
        const auto& allowed = visit.card().time_allowed;
        return "  " + views::clock_text(visit.attempt()) + " since you arrived" +
               (allowed.empty() ? "" : ", of " + allowed) + ".\n";
    }
    return {};
}

std::string opening_text(const views::Visit& visit) {
    const auto& card = visit.card();
    std::string text = card.title + "   (" + card.mode + ")\n";
    text += paragraph(card.call_out, page_width, 2);
    text += paragraph("Gas: " + card.gas + ".", page_width, 2);
    if (!card.taps.empty()) text += paragraph("Taps: " + listed(card.taps) + ".", page_width, 2);
    if (!card.appliances.empty())
        text += paragraph("Other gas appliances: " + listed(card.appliances) + ".", page_width, 2);
    if (!card.time_allowed.empty())
        text += paragraph("Time allowed on site: " + card.time_allowed +
                              "; after that only the write-up is left.",
                          page_width, 2);
    if (const auto acts = visit.attempt().log().size(); acts > 0)
        return text + "\nYou take the attempt up again at " + views::clock_text(visit.attempt()) +
               ", after " + std::to_string(acts) + (acts == 1 ? " act" : " acts") +
               ". \"log\" shows what was done.\n";
    for (const auto& line : visit.attempt().sight().noticed) text += paragraph(line, page_width, 2);
    return text +
           "\nYou have just arrived. First ask the customer what happens, then look before you "
           "touch.\nSay what you do in plain sentences; each takes time on site. \"help\" lists "
           "them, \"quit\" stops\nand keeps the attempt.\n";
}

}  // namespace emberpath::terminal
