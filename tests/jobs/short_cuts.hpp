#pragma once
/// The short cuts of the shipped jobs: what is done instead of the repair, why it seems to work, which rules it
/// breaks and what comes of it.

#include <cstdint>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "sim/worksite/observation.hpp"

namespace emberpath {

using Script = std::vector<std::string>;

struct ShortCut {
    const char* name;
    const char* job;
    /// Takes the reading that shows what is wrong; empty where nothing does at first.
    Script at_first;
    Script taken;  // takes the same reading, which now looks well
    worksite::Quantity reading;
    double well_from, well_to;  // SI
    Script bites;  // words of the day after, of doses, breaches and what is left behind
    /// Every rule that is broken by the short cut and by leaving after it, and no other.
    Script breaks;
    std::uint64_t seed = 1;  // decides which joints weep
    bool told = true;        // the customer hears what was done
    /// What is done next because it looks well, where the harm lies in that and ends the visit.
    Script then = {};
    /// Where hot water bites: the least share of a burn that five seconds in it take in the day after, and more than
    /// they take in the house as found or left well.
    double burns = 0.0;
    /// Why the bites come to the house as it was found too; empty where they are of the short cut's own making.
    const char* as_found = "";
};
inline void PrintTo(const ShortCut& one, std::ostream* out) {
    *out << one.name;
}

inline Script operator+(Script one, const Script& other) {
    one.insert(one.end(), other.begin(), other.end());
    return one;
}

namespace short_cut {
inline const Script isolate{"switch power off", "unplug heater", "lock off plug", "put on gloves",
                            "take cover off",   "prove tester",  "test for dead", "prove tester"};
inline const Script restore{"refit cover", "unlock plug", "plug in heater", "switch power on",
                            "wait 10 s"};
inline const Script restart{"press list", "press list", "press list",
                            "press take", "press take", "wait 90 s"};
inline const Script to_the_settings{"unlock plug", "plug in heater", "switch power on", "wait 10 s",
                                    "open service readout"};
inline constexpr double celsius = 273.15;
inline constexpr double hot = celsius + 48.0, hotter = celsius + 60.0;
inline const char* const takes = "a hand held in it for five seconds takes";  // its share of a burn
inline constexpr auto warm = worksite::Quantity::tap_temperature;
inline constexpr double litres_a_minute(double litres) {
    return litres / 60.0e3;
}
inline Script draw(const std::string& tap) {
    return {"open " + tap, "wait 2 min", "measure temperature at " + tap};
}
inline ShortCut followed_by(ShortCut one, Script then) {
    one.then = std::move(then);
    return one;
}
inline ShortCut that_burns(ShortCut one, double share) {
    one.burns = share;
    return one;
}
inline ShortCut that_bites_as_found(ShortCut one, const char* why) {
    one.as_found = why;
    return one;
}
/// What came is tried again, and for a while it goes.
inline ShortCut reset_alone(const char* name, const char* job, const Script& at_first,
                            const std::string& closed, const Script& then) {
    return that_bites_as_found({name,
                                job,
                                at_first,
                                Script{"close " + closed, "press reset"} + then,
                                warm,
                                hot,
                                hotter,
                                {"The heater locked out"},
                                {}},
                               "a reset alters nothing: what locked it out does so again");
}
}  // namespace short_cut

/// Each branch of the work (tests/support/branches.hpp) has two jobs or more with one that closes a gate.
[[nodiscard]] std::vector<ShortCut> short_cuts_of_gas_and_flue();
[[nodiscard]] std::vector<ShortCut> short_cuts_of_flame_and_sensors();
[[nodiscard]] std::vector<ShortCut> short_cuts_of_water_and_control();

}  // namespace emberpath
