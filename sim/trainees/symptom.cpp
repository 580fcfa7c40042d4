// A fixed order of troubleshooting by symptom, with rules of thumb in place of shadows.

#include <cmath>

#include "sim/trainees/ways.hpp"

namespace emberpath::trainees {

namespace {

using faults::Cause;
using worksite::Complaint;
using worksite::Quantity;

// Rules of thumb, chosen from what a sound house of this kind shows.
constexpr double open_circuit_ohm = 1.0e6, short_circuit_ohm = 10.0;
constexpr double weak_share = 0.65;    // of the standing pressure, at full draw
constexpr double little_gas_kg = 4.0;  // left in the cylinder
constexpr double sensor_off_k = 3.0;   // readout against the pipe
constexpr double hot_flue_k = 273.15 + 190.0;
constexpr double weak_flame_a = 3.0e-6;
constexpr double near_set_k = 3.0;

class Troubleshooter {
  public:
    explicit Troubleshooter(Hands& hands) : hands_(hands), job_(hands.visit().job()) {}

    Cause find() {
        hands_.take(0, Quantity::readout_event);
        const auto event = hands_.latest_word(Quantity::readout_event);
        if (event == "outlet sensor out of range") return sensor_circuit();
        if (event == "no flame at light-up") return no_flame();
        if (event == "air path restricted") return air_path();
        if (event == "flame lost" || job_.customer.complaint == Complaint::drops_out_now_and_then ||
            job_.customer.complaint == Complaint::goes_cold_after_a_while)
            return drops_out();
        return delivery();
    }

  private:
    double read(std::size_t mode, Quantity quantity) {
        hands_.take(mode, quantity);
        const auto* seen = hands_.latest(quantity);
        return seen == nullptr ? 0.0 : seen->value;
    }
    std::string see(std::size_t mode, Quantity quantity) {
        hands_.take(mode, quantity);
        return hands_.latest_word(quantity);
    }
    bool on_cylinder() const { return job_.site.gas == worksite::GasKind::propane_cylinder; }

    Cause sensor_circuit() {
        const double ohms = read(0, Quantity::outlet_ohms);
        const bool broken = ohms > open_circuit_ohm || ohms < short_circuit_ohm;
        return broken ? Cause::outlet_sensor_open : Cause::outlet_sensor_drift;
    }

    Cause no_flame() {
        if (cylinder_is_empty()) return Cause::cylinder_low;
        const auto flame = see(3, Quantity::flame);
        const auto spark = hands_.latest_word(Quantity::spark);
        if (spark == "no spark") return Cause::igniter_failed;
        if (flame != "none") {
            (void)see(0, Quantity::electrode_tip);
            return Cause::electrode_fouled;
        }
        return gas_supply();
    }

    Cause air_path() {
        if (see(0, Quantity::flue_terminal) != "clear") return Cause::flue_blocked;
        (void)see(0, Quantity::exchanger_fins);
        return Cause::exchanger_sooted;
    }

    bool cylinder_is_empty() {
        return on_cylinder() && read(0, Quantity::cylinder_mass) < little_gas_kg;
    }

    Cause drops_out() {
        if (on_cylinder()) {
            (void)see(0, Quantity::cylinder_frost);
            if (cylinder_is_empty()) return Cause::cylinder_low;
        }
        if (see(0, Quantity::flue_terminal) != "clear") return Cause::flue_blocked;
        const auto flame = see(1, Quantity::flame);
        const double low = read(1, Quantity::readout_flame);
        if (flame == "restless") return Cause::wind_gust;
        const double high = read(2, Quantity::readout_flame);
        if (low < weak_flame_a || high < weak_flame_a) {
            if (see(0, Quantity::electrode_tip) != "clean") return Cause::electrode_fouled;
            return gas_supply();
        }
        return see(0, Quantity::electrode_tip) != "clean" ? Cause::electrode_fouled
                                                          : Cause::wind_gust;
    }

    // Standing and working pressure at the heater, then at the regulator.
    bool weak(Quantity quantity) {
        const double standing = read(0, quantity);
        return read(2, quantity) < weak_share * standing;
    }
    Cause gas_supply() {
        if (!weak(Quantity::gas_inlet_pressure)) return Cause::no_fault;
        if (cylinder_is_empty()) return Cause::cylinder_low;
        return weak(Quantity::regulator_pressure) ? Cause::regulator_droop
                                                  : Cause::gas_pipe_restriction;
    }

    Cause delivery() {
        const double tap = read(2, Quantity::tap_temperature);
        const double shown = read(2, Quantity::readout_outlet);
        const double pipe = read(2, Quantity::outlet_pipe_temperature);
        if (std::abs(pipe - shown) > sensor_off_k) {
            (void)read(0, Quantity::outlet_ohms);
            return Cause::outlet_sensor_drift;
        }
        const Cause supply = gas_supply();
        if (supply != Cause::no_fault) return supply;
        const double flue = read(2, Quantity::flue_temperature);
        if (flue > hot_flue_k) {
            (void)see(0, Quantity::exchanger_fins);
            return Cause::exchanger_sooted;
        }
        if (see(0, Quantity::flue_terminal) != "clear") return Cause::flue_blocked;
        if (see(1, Quantity::flame) == "restless") return Cause::wind_gust;
        if (tap < job_.panel.set_point_k - near_set_k &&
            see(0, Quantity::exchanger_fins) != "clean")
            return Cause::exchanger_sooted;
        return Cause::no_fault;
    }

    Hands& hands_;
    const worksite::Job& job_;
};

}  // namespace

Decision find_by_symptom(Hands& hands) {
    hands.arrive();
    const auto cause = Troubleshooter(hands).find();
    return {cause, hands.visit().acts().size()};
}

}  // namespace emberpath::trainees
