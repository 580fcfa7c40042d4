#pragma once
/// The catalogue of causes as plain words, for those who print it: the trainee's list of suspects and the
/// manual. It says what can be wrong with a house of this kind, never what is.

#include <optional>
#include <string>
#include <vector>

#include "sim/worksite/job.hpp"

namespace emberpath::worksite {

struct CauseLine {
    std::string word;    // as scenario files spell it
    std::string title;   // as people read it
    std::string effect;  // what it does to the plant
    std::string remedy;  // what sets it right
    std::string remedy_word;
    bool cylinder_only = false;
    bool mains_only = false;
    std::string needs;  // "a tempering valve"; empty: nothing in particular
};

/// In catalogue order; with a site, only those that can act there.
[[nodiscard]] std::vector<CauseLine> cause_list(
    const std::optional<faults::SiteTraits>& site = std::nullopt);

struct WriteUp;
/// Words of the causes that were written down, the first one first; empty: none was.
[[nodiscard]] std::vector<std::string> causes_in(const WriteUp& written);
/// Their titles: "A and B" of causes that were both there, "A or B" of those that no reading tells apart.
[[nodiscard]] std::string titles_of_causes_in(const WriteUp& written);

}  // namespace emberpath::worksite
