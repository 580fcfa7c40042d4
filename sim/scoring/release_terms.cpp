#include "sim/scoring/release_terms.hpp"

#include "sim/units/counted.hpp"

namespace emberpath::scoring {

std::string why_not_fit(const worksite::ReleaseCheck& check) {
    if (check.checked_on.empty()) return "";
    if (check.outdated)
        return "its files have changed since the release check of " + check.checked_on +
               ", which speaks of another job.";
    if (!enough_houses(check.shown, check.houses))
        return "the release check of " + check.checked_on +
               " found that its cause shows itself in only " + std::to_string(check.shown) +
               " of " + units::counted(check.houses, "other house") + ".";
    if (check.refused.empty()) return "";
    return "the release check of " + check.checked_on + " refused it: " + check.refused;
}

}  // namespace emberpath::scoring
