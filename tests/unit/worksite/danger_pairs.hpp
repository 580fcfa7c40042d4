#pragma once
/// The dangers of the trade, numbered, and for each one or more visits that are made twice: once with the
/// precaution, once without it.

#include <ostream>

#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {

/// A danger of the trade as docs/dangers.md lists it.
struct HazardRow {
    const char* number;  // "H01"
    const char* hazard;
    const char* precaution;
    const char* follows;  // in the simulation, where it was left out
};
[[nodiscard]] std::vector<HazardRow> hazard_rows();

/// One visit, made twice.
struct Danger {
    const char* row;        // the number of its danger
    const char* endangers;  // as a test name
    const char* rule;       // broken where the precaution is skipped, and only there
    Job job;
    Acts taken, skipped;
    const char* recorded;    // what the record holds only where the precaution was skipped
    bool day_after = false;  // the record includes what the household met in the day after
    std::uint64_t seed = 7;  // decides which joints weep
    [[nodiscard]] std::string name() const { return std::string(row) + endangers; }
};
inline void PrintTo(const Danger& danger, std::ostream* out) {
    *out << danger.name();
}

[[nodiscard]] std::vector<Danger> dangers_of_current();    // H01 to H08
[[nodiscard]] std::vector<Danger> dangers_of_gas();        // H09 to H18
[[nodiscard]] std::vector<Danger> dangers_of_fumes();      // H19 to H26
[[nodiscard]] std::vector<Danger> dangers_of_the_place();  // H27 to H35
[[nodiscard]] std::vector<Danger> every_danger();

}  // namespace emberpath::worksite
