#pragma once
/// The safety rules as data: what can go wrong, what it does, whether it closes the gate, what it costs.
/// docs/safety.md is made from this table. A breach is recorded once per rule; one that ends the job closes the
/// gate, critical or not.

#include <span>
#include <string>
#include <string_view>

#include "sim/faults/faults.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

struct Breach;

struct Rule {
    std::string_view word;         // as records spell it
    std::string_view hazard;       // whom or what it endangers
    std::string_view precaution;   // what was to be done
    std::string_view consequence;  // what the simulation makes of it
    bool critical;                 // closes the gate whatever else was done
    double deduction;              // of the area "safe work"
};
[[nodiscard]] std::span<const Rule> rules();
/// The rule must exist: words are checked by a test over all uses.
[[nodiscard]] const Rule& rule(std::string_view word);
/// What would have kept the rule that was broken.
[[nodiscard]] std::string better_than(const Breach& breach);

/// Does the remedy undo a part of the water side? Then the water is to be shut and drained first.
[[nodiscard]] bool works_at_terminal(
    faults::Remedy remedy);  // of the flue: a ladder's work where it is high
[[nodiscard]] bool opens_water_side(faults::Remedy remedy);
/// Does it let air into the gas pipe? Then the pipe is to be purged after it. Volume [m3]; 0: no.
[[nodiscard]] double air_let_in_m3(faults::Remedy remedy);

/// Metal pipes that a piece of work takes apart: a bridging conductor goes across first.
enum class Parted { nothing, gas, water };
[[nodiscard]] Parted parted_by(faults::Remedy remedy);

/// What proves this repair beside hot water and a clear display: a reading of its own, as it is said.
struct RepairProof {
    faults::Remedy remedy;
    Quantity reading;
    std::string_view sentence;
};
[[nodiscard]] const RepairProof* own_proof(faults::Remedy remedy);  // nullptr: none

/// docs/safety.md and docs/acts.md as they must stand; a test compares.
[[nodiscard]] std::string safety_page();
[[nodiscard]] std::string acts_page();

}  // namespace emberpath::worksite
