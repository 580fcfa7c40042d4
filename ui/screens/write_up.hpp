#pragma once
/// The write-up: what was wrong, why one can know, what was done, how it was proved, what was said.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

struct CitableReading {
    ReadingView reading{};
    bool cited = false;
};

/// How the next chosen cause will stand in the record.
enum class CauseAs { the_cause, as_well, or_this };

struct WriteUpView {
    RailView rail{};
    std::string cause{};  // titles, joined by "and" (both were there) or "or"; empty: none chosen
    std::vector<std::string> written{};  // words of these causes
    std::string confidence{};            // "80 %", as stated; empty: nothing was said
    std::vector<CauseView> held{};       // those still held or doubtful, for the choice
    std::string because{}, done{}, proved{}, told{};  // as kept; an editor in the state goes before
    std::vector<CitableReading> readings{};
    std::vector<std::string> fillable{};  // ids of fields that can begin with what the record says
    std::string hint{};             // one sentence above the hand-in button; empty: nothing to say
    bool hint_is_warning = false;   // coached mode judges, assessed mode only states
    std::string hand_in_refusal{};  // what is missing; empty: can be handed in
    std::string status{};           // "Because: 41 words, 4 readings cited."
    bool choosing_cause = false;
    bool choosing_confidence = false;
    CauseAs choosing_as = CauseAs::the_cause;
};

/// Ids of its fields, for who reads the editors.
namespace write_up_field {
inline constexpr const char *because = "form.because", *done = "form.done", *proved = "form.proved",
                            *told = "form.told";
}

[[nodiscard]] kit::Frame write_up_screen(const Setting& setting, const WriteUpView& view);

}  // namespace emberpath::screens
