#pragma once
/// The job at the terminal: acts as plain sentences in, plain lines out. Complete without a screen, a
/// mouse or colours; also the scripting format.

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

#include "ui/views/visit.hpp"

namespace emberpath::terminal {

enum class Ended {
    over,       // handed in, or the job ended badly
    left,       // quit: the attempt can be taken up again
    no_input,   // the input ended
    unreadable  // scripts only: a sentence could not be done
};

/// Talks until the job is over, the trainee quits or the input ends. `prompts` is false when nobody types:
/// then each act is printed before its result.
Ended converse(views::Visit& visit, std::istream& in, std::ostream& out, bool prompts);

/// Plays script sentences one after the other; stops at the first that cannot be done.
struct Played {
    Ended ended = Ended::no_input;
    std::size_t line = 0;  // index of the sentence that could not be done
    std::string refusal;
};
Played play(views::Visit& visit, const std::vector<std::string>& sentences, std::ostream& out);

/// The first screen: job card, what to do first, how to get help.
[[nodiscard]] std::string opening_text(const views::Visit& visit);
/// Answer to a word that is not an act (help, readings, log, causes, time); empty when it is an act.
[[nodiscard]] std::string answer(const views::Visit& visit, std::string_view line);

/// Lets the user pick one of several lines by number or word; -1 when they leave.
int choose(const std::vector<std::string>& words, const std::vector<std::string>& titles,
           std::istream& in, std::ostream& out);

}  // namespace emberpath::terminal
