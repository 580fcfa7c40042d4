#include "ui/terminal/terminal.hpp"

#include <algorithm>
#include <istream>
#include <ostream>

#include "sim/diagnostics/diagnostic.hpp"
#include "ui/debrief/page.hpp"
#include "ui/terminal/words.hpp"

namespace emberpath::terminal {

namespace {

using debrief::page_width;
using debrief::paragraph;

constexpr std::size_t longest_echo = 200;

/// Outer blanks off, control characters out: what was typed, as a sentence.
std::string tidy(const std::string& line) {
    std::string text;
    for (const char c : line) text += static_cast<unsigned char>(c) < 0x20U || c == 0x7F ? ' ' : c;
    const auto first = text.find_first_not_of(' ');
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

void print_result(const views::Done& done, std::ostream& out) {
    if (!done.refusal.empty()) out << paragraph(done.refusal, page_width, 2, "? ");
    for (const auto& line : done.shown) out << paragraph(line, page_width, 2);
    out.flush();
}

}  // namespace

Ended converse(views::Visit& visit, std::istream& in, std::ostream& out, bool prompts) {
    out << opening_text(visit);
    while (!visit.attempt().over()) {
        if (prompts) out << "\n" << views::clock_text(visit.attempt()) << " > " << std::flush;
        std::string line;
        if (!std::getline(in, line)) {
            out << "\nKept.\n";
            return Ended::no_input;
        }
        line = tidy(line);
        if (line.empty() || line.front() == '#') continue;
        if (!prompts) out << "\n> " << line.substr(0, longest_echo) << "\n";
        if (line == "quit" || line == "exit") {
            out << "Kept.\n";
            return Ended::left;
        }
        if (const auto said = answer(visit, line); !said.empty())
            out << said << std::flush;
        else
            print_result(visit.perform(line), out);
    }
    return Ended::over;
}

Played play(views::Visit& visit, const std::vector<std::string>& sentences, std::ostream& out) {
    for (std::size_t i = 0; i < sentences.size(); ++i) {
        if (visit.attempt().over())
            return {Ended::unreadable, i, "the attempt is over; nothing can be done after it"};
        out << views::clock_text(visit.attempt()) << " > " << sentences[i] << "\n";
        const auto done = visit.perform(sentences[i]);
        if (!done.refusal.empty()) return {Ended::unreadable, i, done.refusal};
        print_result(done, out);
    }
    return {visit.attempt().over() ? Ended::over : Ended::no_input, sentences.size(), {}};
}

int choose(const std::vector<std::string>& words, const std::vector<std::string>& titles,
           std::istream& in, std::ostream& out) {
    for (std::size_t i = 0; i < words.size(); ++i)
        out << debrief::row({{3, true}, {14}, {75}}, {std::to_string(i + 1), words[i], titles[i]},
                            2);
    for (std::string line;;) {
        out << "\nWhich job? A number or a word; empty to leave: " << std::flush;
        if (!std::getline(in, line)) return -1;
        line = tidy(line);
        if (line.empty() || line == "quit") return -1;
        for (std::size_t i = 0; i < words.size(); ++i)
            if (line == words[i] || line == std::to_string(i + 1)) return static_cast<int>(i);
        const auto nearest = diagnostics::nearest_word(line, words);
        out << "There is no job \"" << line.substr(0, longest_echo) << "\" in the list."
            << (nearest.empty() ? "" : " Did you mean \"" + nearest + "\"?") << "\n";
    }
}

}  // namespace emberpath::terminal
