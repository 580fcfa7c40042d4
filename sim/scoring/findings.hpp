#pragma once
/// What an attempt committed itself to: the remedies carried out and the diagnosis written down, each with
/// what the evidence said just before.

#include <optional>
#include <string>
#include <vector>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/judgement.hpp"

namespace emberpath::scoring {

/// A remedy carried out.
struct Made {
    Commitment commitment;
    const Step* step = nullptr;
    faults::Remedy remedy = faults::Remedy::explain_to_customer;
};

struct Findings {
    std::vector<Made> made;
    std::vector<Commitment> commitments;  // of `made`
    Commitment diagnosis;
    std::vector<faults::Remedy> named;  // what the causes written down need; empty: none was
    bool as_list = false;               // they are alternatives that no reading tells apart
    bool fixed = false;
    bool handed_on_safe = false;  // not set right, but taken out of use with a notice or report
    bool separable = true;  // some reading could still have told the named class from the rest
    bool told = false;      // nothing was open beside the true class
    bool covered = true;    // its remedy is no other's work
    /// Set right, or made safe and handed on where no reading could have told more.
    [[nodiscard]] bool rightly_ended() const { return fixed || (handed_on_safe && !separable); }
};
[[nodiscard]] Findings find(const PlayedAttempt& played, const Ledger& ledger,
                            const Outcome& outcome);

/// Is its cure another's work, by its nature or because the licence of the person at work does not cover it?
[[nodiscard]] bool to_be_handed_on(const PlayedAttempt& played, faults::Remedy remedy);
/// Why a heater that was made safe should not have been handed on: what its readings had told, or still could.
[[nodiscard]] std::string_view why_not_hand_on(const Findings& f);
/// Nothing is wrong with the heater; what it needs is a word with the customer.
[[nodiscard]] bool is_to_be_explained(const PlayedAttempt& played);
/// Less grave: a breach that closes the gate outweighs any that does not, else the deduction counts.
[[nodiscard]] bool is_lighter(const worksite::Breach& a, const worksite::Breach& b);

/// The one that harmed somebody so that the job ended there, else the gravest; nullptr: none.
[[nodiscard]] const worksite::Breach* gravest_breach(const PlayedAttempt& played,
                                                     const Outcome& outcome);

/// A reading confirms a class when it could have told it from what else was open by this much (0 to 1).
/// Chosen: a token reading that has nothing to do with the suspicion stays below.
inline constexpr double confirming_bits = 0.2;

/// "At 04:10 (read manometer)".
[[nodiscard]] std::string at(const Outcome& outcome, const Step& step);
[[nodiscard]] std::string figure(double value, int places);
/// "only 13 %", "under 1 %".
[[nodiscard]] std::string so_little(double probability);
/// "15 seconds", "3.5 minutes", "1 minute".
[[nodiscard]] std::string time_in_words(double minutes);

/// One sentence an area, naming what cost most.
struct Reasons {
    std::string safety, evidence, path, remedy, proof;
};
[[nodiscard]] Reasons reasons(const PlayedAttempt& played, const Ledger& ledger, const Findings& f,
                              const Outcome& outcome, const PathCharges& charges);
/// "heat exchanger scaled", "A and B" of two that are there, "A or B" of a list.
[[nodiscard]] std::string named_title(const Findings& f);
/// What an idle wait is charged for.
[[nodiscard]] std::string waited_in_vain(const Step& step);
/// What one reading cost, could have told, and what would have been better; with the act before it.
[[nodiscard]] std::string reading_worth(const PlayedAttempt& played, const Step& step);
[[nodiscard]] std::string test_reason(const PlayedAttempt& played, const Outcome& outcome,
                                      const Step& step);

}  // namespace emberpath::scoring
