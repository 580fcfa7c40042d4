// Proves that what a debrief says could have been read then is what hands can take then: the site itself trusts no
// resistance under voltage and opens no running heater without a breach.

#include <gtest/gtest.h>

#include <algorithm>

#include "sim/scoring/moments.hpp"
#include "tests/unit/scoring/driven_house.hpp"
#include "tests/unit/scoring/made_up.hpp"

namespace emberpath::scoring {
namespace {

using worksite::Quantity;

/// What a follower is told of is what the site's gate trusts.
bool is_observed(const std::vector<std::string>& acts, Quantity quantity) {
    Recorder recorder;
    worksite::Attempt attempt(plain_job(worksite::GasKind::natural_gas), 3,
                              worksite::Mode::assessed, &recorder);
    for (const std::string& act : acts) EXPECT_NE(attempt.perform(act).entry, nullptr) << act;
    const auto& seen = recorder.tape().observations;
    return std::any_of(seen.begin(), seen.end(),
                       [&](const auto& one) { return one.quantity == quantity; });
}

struct Measured {
    Quantity quantity;
    std::vector<std::string> acts;
};
const std::vector<Measured> resistances{
    {Quantity::outlet_ohms,
     {"unplug outlet sensor", "attach multimeter to outlet sensor", "read multimeter"}},
    {Quantity::valve_coil_ohms, {"measure ohms between valve lead and low-voltage common"}},
    {Quantity::flame_lead_ohms, {"measure ohms between flame input and flame lead"}},
};

TEST(NeedsIsolatedHeater, IsWhatTheSiteTrustsOnADeadHeater) {
    for (const Measured& one : resistances) {
        std::vector<std::string> dead{"switch power off", "unplug heater",  "lock off plug",
                                      "prove tester",     "take cover off", "test for dead"};
        dead.insert(dead.end(), one.acts.begin(), one.acts.end());
        EXPECT_TRUE(is_observed(dead, one.quantity)) << worksite::info(one.quantity).word;
        EXPECT_TRUE(needs_isolated_heater(one.quantity)) << worksite::info(one.quantity).word;
    }
    // The valve has its voltage while the burner runs: the figure jumps about and tells nothing.
    EXPECT_FALSE(is_observed({"take cover off", "open kitchen tap", "wait 30 s",
                              "measure ohms between valve lead and low-voltage common"},
                             Quantity::valve_coil_ohms));
}

TEST(NeedsIsolatedHeater, IsTrueOfEveryResistanceAndOfNothingThatARunningHeaterShows) {
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        const auto word = worksite::info(quantity).word;
        EXPECT_TRUE(!word.ends_with("_ohms") || needs_isolated_heater(quantity)) << word;
    }
    for (const Quantity quantity :
         {Quantity::spark, Quantity::flame, Quantity::manifold_pressure, Quantity::flue_co,
          Quantity::tap_temperature, Quantity::flame_current, Quantity::terminal_volts})
        EXPECT_FALSE(needs_isolated_heater(quantity)) << worksite::info(quantity).word;
}

TEST(StillOpen, ProposesNoResistanceDuringALightUp) {
    MadeUp m;
    // A resistance that tells the dead igniter from all others, predicted in every mode, the light-up's clearest.
    for (std::size_t mode = 0; mode < m.shadows.signatures.size(); ++mode)
        for (std::size_t i = 0; i < lanes; ++i) {
            m.shadows.signatures[mode].set(Quantity::spark, i, 1.0);
            m.shadows.signatures[mode].set(Quantity::outlet_ohms, i,
                                           i == 2 ? (mode == 3 ? 9.0e5 : 1.1e4) : 1.0e4);
        }
    const Ledger nothing_read = m.ledger(faults::Remedy::replace_igniter);
    const auto open = rivals(m.job, m.shadows, nothing_read.at_cure, m.tape);
    const auto igniter = std::find_if(open.begin(), open.end(), [](const Rival& rival) {
        return rival.of == faults::Remedy::replace_igniter;
    });
    ASSERT_NE(igniter, open.end());
    EXPECT_GE(igniter->separation, separable_above);
    EXPECT_EQ(igniter->reading, "resistance of the outlet sensor");
}

}  // namespace
}  // namespace emberpath::scoring
