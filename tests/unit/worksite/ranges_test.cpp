// Proves that a figure beyond the range of its instrument is shown as that and not as a number, and that what lies
// beyond it is not kept either.

#include <gtest/gtest.h>

#include <ostream>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using Script = std::vector<std::string>;
using Q = Quantity;
constexpr double litre_per_min = 1.0 / 60000.0;

struct End {
    const char* name;
    Quantity quantity;
    double within, beyond;  // SI
    const char* shown_within;
};
void PrintTo(const End& end, std::ostream* out) {
    *out << end.name;
}

class EachRange : public testing::TestWithParam<End> {};

TEST_P(EachRange, EndsWithWordsInPlaceOfANumber) {
    const End& end = GetParam();
    EXPECT_EQ(text_of(end.quantity, end.within), end.shown_within);
    EXPECT_FALSE(over_range(end.quantity, end.within));
    EXPECT_EQ(text_of(end.quantity, end.beyond), "over range");
    EXPECT_TRUE(over_range(end.quantity, end.beyond));
}

INSTANTIATE_TEST_SUITE_P(
    Instruments, EachRange,
    testing::Values(
        End{"Manometer", Q::gas_inlet_pressure, 9.99e3, 10.0e3, "9.99 kPa"},
        End{"ManometerInATube", Q::air_tube_pressure, 9.0e3, 11.0e3, "9000 Pa"},
        End{"Volts", Q::volts_between, 599.0, 600.0, "599.0 V"},
        End{"Ohms", Q::ohms_between, 8.0e6, 1.0e7, "8.0 Mohm"},
        End{"Insulation", Q::insulation_ohms, 1.0e8, 2.0e8, "100.0 Mohm"},
        End{"Amperes", Q::meter_current, 0.399, 0.41, "399.0 mA"},
        End{"ClampAroundOne", Q::clamp_current, 99.0, 101.0, "99.00 A"},
        End{"ClampAroundBoth", Q::leakage_current, 0.03, 101.0, "30.0 mA"},
        End{"RisingTestCurrent", Q::safety_switch_current, 0.03, 0.1, "30.0 mA"},
        End{"BreakTime", Q::break_time, 0.3, 0.51, "300 ms"},
        End{"CarbonMonoxide", Q::flue_co, 9.0e-3, 1.0e-2, "9000 ppm"},
        End{"FlueGas", Q::flue_temperature, 872.15, 873.15, "599 °C"},
        End{"WaterAtATap", Q::tap_temperature, 373.15, 473.15, "100.0 °C"},
        End{"Pipe", Q::outlet_pipe_temperature, 472.15, 480.0, "199.0 °C"},
        End{"Cup", Q::tap_flow, 29.0 * litre_per_min, 30.0 * litre_per_min, "29.0 L/min"},
        End{"Scale", Q::cylinder_mass, 149.0, 150.0, "149.0 kg"},
        End{"GasDetector", Q::gas_in_air, 0.99, 1.0, "99 % of the lower flammability limit"},
        End{"WaterGauge", Q::water_pressure, 1.5e6, 1.6e6, "1500 kPa"}),
    [](const auto& end) { return std::string(end.param.name); });

/// Nothing of what the readout shows has a range that ends at a house.
TEST(Readout, HasNoRangeToLeave) {
    EXPECT_FALSE(over_range(Q::readout_fan, 1.0e6));
    EXPECT_FALSE(over_range(Q::flame, 4.0));
}

const Observation& last_reading(const Attempt& attempt, Quantity quantity) {
    static const Observation none;
    for (const auto& seen : attempt.log().back().observations)
        if (seen.quantity == quantity) return seen;
    ADD_FAILURE() << "nothing read";
    return none;
}

/// A wide bath tap in front of a heater that is switched off: the cup runs over before anybody can time it.
TEST(FlowCup, IsFullAtATapThatGivesMoreThanItCanTime) {
    Job job = test_job();
    job.site.mains_water_pa = 900.0e3;
    job.site.taps.at(2) = test_tap("bath tap", 90.0);
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"turn off heater", "open bath tap", "measure flow at bath tap"}), "");
    EXPECT_NE(all_shown(attempt).find("flow at the tap  over range"), std::string::npos)
        << all_shown(attempt);
    EXPECT_DOUBLE_EQ(last_reading(attempt, Q::tap_flow).value, 30.0 * litre_per_min);
}

/// Its current rises to the end of its range and nothing opens.
TEST(SafetySwitchTester, IsOverRangeWhereNoSafetySwitchOpens) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(
        play(attempt, {"use outlet without safety switch", "unplug heater", "test safety switch"}),
        "");
    EXPECT_NE(all_shown(attempt).find("over range"), std::string::npos) << all_shown(attempt);
    EXPECT_DOUBLE_EQ(last_reading(attempt, Q::safety_switch_current).value, 0.1);
}

}  // namespace
}  // namespace emberpath::worksite
