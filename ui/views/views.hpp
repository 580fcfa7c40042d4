#pragma once
/// What the trainee may know during an attempt, in trade units and plain words. Made from the job card and
/// from what was shown; the hidden cause never enters. Every front end prints these and nothing else.

#include <string>
#include <string_view>
#include <vector>

#include "sim/worksite/attempt.hpp"

namespace emberpath::views {

/// What a {word} in a sentence can stand for in this house.
struct Choice {
    std::string placeholder;         // "point"
    std::string meaning;             // "a gas test point"
    std::vector<std::string> words;  // "inlet", "manifold"; one example where any text will do
    bool open = false;               // the words are examples
};

struct JobCard {
    std::string title;         // "Job 1: 8 Tanager Court"
    std::string call_out;      // what the office wrote down
    std::string gas;           // "natural gas"
    std::string mode;          // "coached" or "assessed"
    std::string time_allowed;  // "90 min"; empty: as long as it takes
    std::vector<std::string> taps, appliances;
    std::vector<Choice> choices;
};
[[nodiscard]] JobCard job_card(const worksite::Job& job, worksite::Mode mode);

/// A numbered reading: the balloon.
struct ReadingRow {
    int number = 0;
    std::string time, title, value, condition;
};
[[nodiscard]] std::vector<ReadingRow> readings(const worksite::Attempt& attempt);

/// One line of the log: when, what was done, what was shown.
struct LogRow {
    std::string time, words;
    std::vector<std::string> shown;
};
[[nodiscard]] std::vector<LogRow> log(const worksite::Attempt& attempt);

/// A sentence of the trainee's language with what it does and what it costs.
struct PhraseRow {
    std::string pattern, help, cost;
    std::string takes =
        {};  // price of its part and kind of work: "part worth 25 min of work; electrical work"
};
/// How takes_text() begins where a part is used up.
inline constexpr std::string_view price_begins = "part worth ";
/// Price of the part an act uses up, and the kind of work a licence has to cover; empty where neither counts.
[[nodiscard]] std::string takes_text(const worksite::Phrase& phrase);

/// Those that hold `word` in pattern, help or kind of work; all of them for an empty word.
[[nodiscard]] std::vector<PhraseRow> phrases(std::string_view word);

/// The words that begin sentences, for a first overview.
[[nodiscard]] std::vector<std::string> first_words();

/// Minutes and seconds since arrival: "04:10".
[[nodiscard]] std::string clock_text(double seconds_on_site);
[[nodiscard]] std::string clock_text(const worksite::Attempt& attempt);

/// Simulated time an act takes: "20 s", "3 min", "varies" for a wait.
[[nodiscard]] std::string cost_text(double seconds);

}  // namespace emberpath::views
