// Proves properties that hold for any signals at all: commands stay in range, gas opens only after a purge and
// never in lockout, the spark never outlasts a light-up; and that a lane of a pack has the bits of one alone.

#include <gtest/gtest.h>

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

#include "sim/controller/sequence.hpp"
#include "sim/math/pack.hpp"
#include "sim/math/random.hpp"
#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

using Sensors = signals::SensorSignals<double>;

/// Signals that wander: mostly plausible, sometimes absurd.
class Wanderer {
  public:
    explicit Wanderer(std::uint64_t seed) : random_(seed, "signals") {}

    /// A minute of proof is hardly ever passed in a world this absurd: while it lasts the signals keep quiet.
    void keep_quiet(bool quiet) { quiet_ = quiet; }

    Sensors next(const signals::ActuatorCommands<double>& answered) {
        if (quiet_) fan_share_ = 1.0;
        if (chance(0.01)) flow_lpm_ = chance(0.4) ? 0.0 : 25.0 * random_.uniform();
        if (chance(0.01)) flame_fails_ = chance(0.3);
        if (chance(0.005)) fan_share_ = chance(0.7) ? 1.0 : 1.4 * random_.uniform();
        fan_ += (120.0 * answered.fan_duty * fan_share_ - fan_) / 7.0;
        const bool gas = answered.main_solenoid > 0.5;
        const bool flame = (gas && !flame_fails_) || chance(0.002);
        const double n = fan_ / 80.0;
        Sensors s;
        s.flow_m3_per_s = flow_lpm_ * litre_per_minute;
        s.inlet_ohm = ohm(15.0e3);
        s.outlet_ohm = ohm(4.1e3);
        s.exchanger_ohm = ohm(4.0e3);
        s.ambient_ohm = ohm(15.0e3);
        s.fan_rev_per_s = fan_;
        s.fan_current_a = 0.08 + 0.5 * n * n * (0.35 + (quiet_ ? 0.65 : 0.8 * random_.uniform()));
        s.ionisation_current_a = flame ? 10.0e-6 * random_.uniform() : 0.2e-6 * random_.uniform();
        s.limiter_closed = chance(0.0005) ? 0.0 : 1.0;
        s.supply_v = chance(0.0005) ? 100.0 : 230.0;
        s.water_valve_position = random_.uniform();
        s.air_tube_pa =
            signals::air_tube_full_pa * n * n * (quiet_ ? 1.0 : 1.3 * random_.uniform());
        for (double& volts : s.link_wall_v) volts = chance(0.001) ? 24.0 * random_.uniform() : 22.0;
        return s;
    }
    Panel panel() {
        Panel p;
        p.set_point_k = 300.0 + 50.0 * random_.uniform();
        p.switched_on = chance(0.002) ? 0.0 : 1.0;
        p.reset_pressed = chance(0.01) ? 1.0 : 0.0;
        p.powered = chance(0.002) ? 0.0 : 1.0;
        p.restart_asked = chance(0.002) ? 1.0 : 0.0;
        for (auto& wall : p.wall) {
            wall.fitted = 1.0;
            wall.shows_service = chance(0.3) ? 1.0 : 0.0;
            wall.set_point_k = 308.0 + 25.0 * random_.uniform();
            wall.switched_on = chance(0.005) ? 0.0 : 1.0;
        }
        return p;
    }
    Settings settings() {
        Settings s;
        s.wall_controllers = std::floor(4.0 * random_.uniform());
        s.first_priority = std::floor(4.0 * random_.uniform());
        s.gas = chance(0.3) ? 1.0 : 0.0;
        set_altitude(s, chance(0.5) ? 0.0 : 3000.0 * random_.uniform());
        s.accepts_service = chance(0.5) ? 1.0 : 0.0;
        s.frost_protection = chance(0.5) ? 1.0 : 0.0;
        s.maximum_set_k = chance(0.5) ? 348.15 : 333.15;
        s.air_by_tube = chance(0.3) ? 1.0 : 0.0;
        s.companion = chance(0.3) ? 1.0 : 0.0;
        return s;
    }

  private:
    math::Random random_;
    double flow_lpm_ = 0.0, fan_ = 0.0, fan_share_ = 1.0;
    bool flame_fails_ = false, quiet_ = false;

    bool chance(double p) { return random_.uniform() < (quiet_ ? 0.01 * p : p); }
    double ohm(double about) {
        if (chance(0.0005)) return chance(0.5) ? 0.0 : 1.0e9;
        return about * (0.3 + 1.7 * random_.uniform());
    }
};

void expect_in_range(const signals::ActuatorCommands<double>& c, const Settings& settings) {
    const auto share = [](double x) { return x >= 0.0 && x <= 1.0; };
    const auto flag = [](double x) { return x == 0.0 || x == 1.0; };
    EXPECT_TRUE(share(c.fan_duty) && share(c.water_valve) && share(c.bypass));
    EXPECT_TRUE(flag(c.spark) && flag(c.main_solenoid) && flag(c.trace_heating));
    EXPECT_TRUE(flag(c.companion_call));
    for (const double bank : c.bank_solenoid) EXPECT_TRUE(flag(bank));
    EXPECT_GE(c.manifold_pressure_pa, 0.0);
    EXPECT_LE(c.manifold_pressure_pa, ratings(settings).full_manifold_pa * (1.0 + 1e-12));
}

/// Follows one run and fails at the first breach.
class Watch {
  public:
    void look(const signals::ActuatorCommands<double>& c, Phase phase, const Panel& panel,
              double fan_rev_per_s) {
        const bool gas =
            c.main_solenoid > 0.5 || c.bank_solenoid[1] > 0.5 || c.bank_solenoid[2] > 0.5;
        if (gas && !gas_before_) {
            EXPECT_GE(purged_s_, sequence::least_purge_s - 1e-9) << "gas without a purge";
        }
        if (phase == Phase::lockout || phase == Phase::pre_purge || phase == Phase::restart ||
            panel.powered < 0.5) {
            EXPECT_FALSE(gas);
        }
        spark_s_ = c.spark > 0.5 ? spark_s_ + signals::tick_s : 0.0;
        EXPECT_LE(spark_s_, tolerated_s(Event::no_flame_at_light_up) + 1e-9);
        if (c.spark > 0.5) {
            EXPECT_TRUE(gas);
        }
        purged_s_ =
            phase == Phase::pre_purge ? purged_s_ + signals::tick_s : (gas ? purged_s_ : 0.0);
        if (gas) purged_s_ = 0.0;
        gas_before_ = gas;
        opened_ += gas ? 1 : 0;
        locked_ += phase == Phase::lockout ? 1 : 0;
        EXPECT_FALSE(std::isnan(fan_rev_per_s));
    }
    [[nodiscard]] int opened() const { return opened_; }
    [[nodiscard]] int locked() const { return locked_; }

  private:
    double purged_s_ = 0.0, spark_s_ = 0.0;
    bool gas_before_ = false;
    int opened_ = 0, locked_ = 0;
};

TEST(AnySignals, NeverOpenGasWithoutPurgeOrInLockoutNorSparkTooLong) {
    constexpr int seeds = 4, ticks = 25000;
    int opened = 0, locked = 0;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        Wanderer world(seed);
        ControllerState<double> state;
        const Settings settings = seed == 1 ? Settings{} : world.settings();
        signals::ActuatorCommands<double> commands;
        Watch watch;
        for (int i = 0; i < ticks && !testing::Test::HasFailure(); ++i) {
            const Panel panel = world.panel();
            world.keep_quiet(readout(state, 0).phase == Phase::restart);
            const Sensors sensors = world.next(commands);
            commands = control(state, sensors, panel, settings);
            expect_in_range(commands, settings);
            watch.look(commands, readout(state, 0).phase, panel, state.fan_target_rev_per_s);
        }
        opened += watch.opened();
        locked += watch.locked();
    }
    EXPECT_GT(opened, 10000) << "the story must be worth watching";
    EXPECT_GT(locked, 1000);
}

/// Every signal of a pack from eight single ones.
template <class Pack>
signals::SensorSignals<Pack> packed(const std::array<Sensors, 8>& one) {
    signals::SensorSignals<Pack> all;
    for (std::size_t i = 0; i < 8; ++i) {
        math::set_lane(all.flow_m3_per_s, i, one[i].flow_m3_per_s);
        math::set_lane(all.inlet_ohm, i, one[i].inlet_ohm);
        math::set_lane(all.outlet_ohm, i, one[i].outlet_ohm);
        math::set_lane(all.exchanger_ohm, i, one[i].exchanger_ohm);
        math::set_lane(all.ambient_ohm, i, one[i].ambient_ohm);
        math::set_lane(all.fan_rev_per_s, i, one[i].fan_rev_per_s);
        math::set_lane(all.fan_current_a, i, one[i].fan_current_a);
        math::set_lane(all.ionisation_current_a, i, one[i].ionisation_current_a);
        math::set_lane(all.limiter_closed, i, one[i].limiter_closed);
        math::set_lane(all.supply_v, i, one[i].supply_v);
        math::set_lane(all.air_tube_pa, i, one[i].air_tube_pa);
        math::set_lane(all.link_unit_v, i, one[i].link_unit_v);
        for (std::size_t wall = 0; wall < most_wall_controllers; ++wall)
            math::set_lane(all.link_wall_v[wall], i, one[i].link_wall_v[wall]);
        math::set_lane(all.water_valve_position, i, one[i].water_valve_position);
    }
    return all;
}

bool same_bits(double a, double b) {
    return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

TEST(Lanes, HaveTheBitsOfAControllerAlone) {
    using Pack = math::Pack<8>;
    std::array<ControllerState<double>, 8> alone{};
    std::array<signals::ActuatorCommands<double>, 8> answers{};
    ControllerState<Pack> together;
    std::vector<Wanderer> worlds;
    for (std::uint64_t i = 0; i < 8; ++i) worlds.emplace_back(100 + i);
    Wanderer hand(99);
    std::array<Settings, 8> settings;
    SettingsOf<Pack> all_settings;
    for (std::size_t i = 0; i < 8; ++i) {
        if (i > 0) settings[i] = hand.settings();
        set_settings(all_settings, i, settings[i]);
        EXPECT_EQ(settings_of(all_settings, i), settings[i]);
    }
    for (int tick = 0; tick < 6000; ++tick) {
        const Panel panel = hand.panel();
        std::array<Sensors, 8> sensors;
        for (std::size_t i = 0; i < 8; ++i) sensors[i] = worlds[i].next(answers[i]);
        const auto all = control(together, packed<Pack>(sensors), panel, all_settings);
        for (std::size_t i = 0; i < 8; ++i) {
            answers[i] = control(alone[i], sensors[i], panel, settings[i]);
            ASSERT_TRUE(same_bits(math::lane(all.fan_duty, i), answers[i].fan_duty)) << tick;
            ASSERT_TRUE(same_bits(math::lane(all.manifold_pressure_pa, i),
                                  answers[i].manifold_pressure_pa));
            ASSERT_TRUE(same_bits(math::lane(all.water_valve, i), answers[i].water_valve));
            ASSERT_TRUE(same_bits(math::lane(all.bypass, i), answers[i].bypass));
            const Readout a = readout(together, i), b = readout(alone[i], 0);
            ASSERT_EQ(a.phase, b.phase);
            ASSERT_EQ(a.event, b.event);
            ASSERT_TRUE(same_bits(a.loop_correction_k, b.loop_correction_k));
            ASSERT_TRUE(same_bits(a.air_trim, b.air_trim));
            ASSERT_TRUE(same_bits(a.inlet_k, b.inlet_k));
            ASSERT_TRUE(same_bits(a.set_point_k, b.set_point_k));
            ASSERT_TRUE(same_bits(a.link_wall_v[2], b.link_wall_v[2]));
            ASSERT_EQ(a.restart_needed, b.restart_needed);
            for (std::size_t line = 0; line < history_lines; ++line) {
                ASSERT_EQ(a.history[line].event, b.history[line].event);
                ASSERT_EQ(a.history[line].count, b.history[line].count);
                ASSERT_TRUE(same_bits(a.history[line].age_s, b.history[line].age_s));
            }
        }
    }
}

}  // namespace
}  // namespace emberpath::controller
