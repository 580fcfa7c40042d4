#pragma once
/// What a trainee has observed so far in a visit, as one text: readings, what is on the glasses, and what eyes,
/// ears and nose tell though it has no number. Two houses with the same text must not differ in anything else
/// that is shown.

#include <string>

#include "sim/worksite/attempt.hpp"

namespace emberpath::worksite {

/// Sentences of the senses. A closed list: a line that is not on it has to follow from what is.
inline bool is_sensed(const std::string& line) {
    for (const char* begins :
         {"Water runs at", "The water feels hot", "No water comes", "It lights with a thump",
          "It smells of gas", "No smell of gas", "The tester shows", "The socket is dead",
          "The safety switch opens", "It does not open", "It opens after", "The panel is dark",
          "Your hand tingles", "The readout is dark", "In the drain the detector shows"})
        if (line.starts_with(begins)) return true;
    return false;
}

/// Instruments and lamps as they stand, and the heater as it sounds.
inline std::string seen_and_heard(const Sight& sight) {
    std::string text;
    for (const auto& figure : sight.figures) text += text_of(figure.quantity, figure.value) + "|";
    text += std::to_string(sight.fan_rev_per_s) + "|" + std::to_string(sight.flame_share) + "|";
    text += std::string(sight.spark_heard ? "spark " : "") + (sight.alarm ? "alarm " : "");
    return text + (sight.water_runs ? "water " : "") + std::to_string(sight.display_word) + "\n";
}

/// Readings with their numbers, and sentences of the senses, of one act.
inline std::string observed_in(const LogEntry& entry) {
    std::string text;
    for (const auto& seen : entry.observations)
        text += std::to_string(seen.number) + " " + std::string(info(seen.quantity).word) + " " +
                text_of(seen.quantity, seen.value) + "\n";
    for (const auto& line : entry.shown)
        if (is_sensed(line)) text += line + "\n";
    return text;
}

/// Grows with each act of one visit.
class Observed {
  public:
    void add(const Attempt::Outcome& outcome, const Sight& sight) {
        // A dark panel refuses in words.
        text_ += outcome.entry ? observed_in(*outcome.entry) : outcome.refusal.text + "\n";
        text_ += seen_and_heard(sight);
    }
    [[nodiscard]] const std::string& text() const { return text_; }

  private:
    std::string text_;
};

}  // namespace emberpath::worksite
