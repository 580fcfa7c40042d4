// Proves that what the controller cannot see stays silent: with a worn fan, a gas valve held open or propane in
// the gas the display goes on as in a sound house, no event is recorded, and only an analyser shows the danger.

#include <gtest/gtest.h>

#include <ostream>

#include "tests/laws/cause_matrix.hpp"
#include "tests/laws/faulty_house.hpp"

namespace emberpath::laws {
namespace {

using faults::Cause;
using worksite::Quantity;

struct SilentDanger {
    const char* name;
    Cause cause;
    double severity;
};
std::ostream& operator<<(std::ostream& out, const SilentDanger& danger) {
    return out << danger.name;
}

class Danger : public testing::TestWithParam<SilentDanger> {};

TEST_P(Danger, StaysOffTheDisplayAndIsFoundByAnAnalyser) {
    const SilentDanger& danger = GetParam();
    FaultyHouse house(danger.cause, danger.severity), sound(Cause::no_fault, 0.0);
    const controller::Panel panel;
    house.open_taps(16.0);
    sound.open_taps(16.0);
    house.run(60.0);
    sound.run(60.0);
    for (int minute = 1; minute <= 10; ++minute) {
        house.run(60.0);
        sound.run(60.0);
        EXPECT_EQ(controller::display_word(house.look().readout, panel),
                  controller::display_word(sound.look().readout, panel))
            << minute;
        EXPECT_EQ(house.latest_event(), controller::Event::none) << minute;
    }
    const double co = house.look().plant.co_share, sound_co = sound.look().plant.co_share;
    EXPECT_GT(co, 400.0e-6);
    EXPECT_LT(sound_co, 30.0e-6);
    EXPECT_GT(apart(Quantity::flue_co, co, sound_co), separable);
    EXPECT_GT(apart(Quantity::flue_o2, house.look().plant.o2_share, sound.look().plant.o2_share),
              separable);
    EXPECT_NEAR(house.look().readout.outlet_k, 50.0 + celsius, 2.0);
}

INSTANTIATE_TEST_SUITE_P(
    Silent, Danger,
    testing::Values(SilentDanger{"WornFan", Cause::fan_worn, 1.0},
                    SilentDanger{"GasValveHeldOpen", Cause::gas_valve_stuck_high, 1.0},
                    SilentDanger{"PropaneInNaturalGas", Cause::propane_in_gas, 0.5}),
    [](const auto& row) { return row.param.name; });

/// A worn fan is the quietest: even the readout of the controller's own measurements looks right.
TEST(WornFan, LooksRightOnTheControllersOwnSpeedAndCurrent) {
    const Findings sound = find(Cause::no_fault, 0.0, Premises{});
    const Findings worn = find(Cause::fan_worn, 0.6, Premises{});
    const auto full = static_cast<std::size_t>(Occasion::full_draw);
    for (const Quantity q : {Quantity::readout_fan, Quantity::readout_air_trim,
                             Quantity::readout_outlet, Quantity::display_word}) {
        const auto i = static_cast<std::size_t>(q);
        EXPECT_LT(apart(q, worn.on[full][i], sound.on[full][i]), separable)
            << worksite::info(q).title;
    }
}

}  // namespace
}  // namespace emberpath::laws
