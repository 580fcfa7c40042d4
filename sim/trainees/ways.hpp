#pragma once
/// How each policy works, on a pair of hands. Each returns what it did; play() wraps them.

#include "sim/math/random.hpp"
#include "sim/trainees/belief.hpp"
#include "sim/trainees/hands.hpp"
#include "sim/trainees/trainees.hpp"

namespace emberpath::trainees {

/// The causes that will be written down, and how many acts had been done when it was settled.
struct Decision {
    faults::Cause cause = faults::Cause::no_fault;
    std::size_t after = 0;
    Arrived lived = nullptr;     // the shadows they thought with; nullptr: they had none
    Arrived lived_on = nullptr;  // the same after what was done then
    std::optional<faults::Cause> also = std::nullopt;  // there beside it
    std::vector<faults::Cause> possible{};             // listed without being told apart
};

/// Readings by information per minute until one class is likely enough; the likeliest cause.
[[nodiscard]] Decision find_by_information(Hands& hands);
/// The same once more after a remedy that did not do, with the shadows that were thought with before. Reads on only
/// when another cause leads now.
[[nodiscard]] Decision look_again(Hands& hands, const Decision& before);
[[nodiscard]] Decision find_by_checklist(Hands& hands);
/// Every row of its list that the house offers, whatever is found.
void read_whole_checklist(Hands& hands);
[[nodiscard]] Decision find_by_everything(Hands& hands);
/// The readings that the latest event and the complaint call for by rules of thumb.
void read_by_symptom(Hands& hands);
/// These readings; then by information from what they have shown.
[[nodiscard]] Decision find_by_symptom(Hands& hands);
[[nodiscard]] Decision find_at_random(Hands& hands, math::Random& random);
[[nodiscard]] Decision guess(Hands& hands);
/// The same after one cheap reading, whatever it shows; never one that would show the guess.
[[nodiscard]] Decision guess_after_token(Hands& hands, math::Random& random);
/// Readings that show a cause to whoever knows it already.
[[nodiscard]] Decision show(Hands& hands, faults::Cause cause);
/// Looks at the display, takes the heater out of use, and lists every cause that the house could have.
[[nodiscard]] Decision hand_all_on(Hands& hands);
/// Presses reset, looks whether hot water comes, and explains that nothing is wrong.
[[nodiscard]] Decision reset_and_leave(Hands& hands);
/// Swaps parts until it works; the last one is named.
[[nodiscard]] Decision swap_parts(Hands& hands, math::Random& random);

}  // namespace emberpath::trainees
