// A fixed order of troubleshooting by symptom: rules of thumb say what to read next, and when to stop.

#include <cmath>

#include "sim/trainees/ways.hpp"

namespace emberpath::trainees {

namespace {

using worksite::Complaint;
using worksite::Quantity;

// Rules of thumb, chosen from what a sound house of this kind shows.
constexpr double weak_share = 0.65;    // of the standing pressure, at full draw
constexpr double little_gas_kg = 4.0;  // left in the cylinder
constexpr double sensor_off_k = 3.0;   // readout against the pipe
constexpr double hot_flue_k = 273.15 + 190.0;
constexpr double weak_flame_a = 3.0e-6;
constexpr double near_set_k = 3.0;
constexpr double lost_behind_k = 6.0;  // tap below the heater's own pipe

class Troubleshooter {
  public:
    explicit Troubleshooter(Hands& hands) : hands_(hands), job_(hands.visit().job()) {}

    void read_on() {
        for (const auto wall :
             {Quantity::wall_screen_1, Quantity::wall_screen_2, Quantity::wall_screen_3})
            if (can_be_taken(wall, job_)) hands_.take(0, wall);
        hands_.take(0, Quantity::readout_event);
        const auto event = hands_.latest_word(Quantity::readout_event);
        if (event == "outlet sensor out of range") return sensor_circuit();
        if (event == "no flame at light-up") return no_flame();
        if (event == "air path restricted") return air_path();
        if (event == "flame lost" || job_.customer.complaint == Complaint::drops_out_now_and_then ||
            job_.customer.complaint == Complaint::goes_cold_after_a_while)
            return drops_out();
        // Hotter than a controller asks: who has the say?
        if (job_.customer.complaint == Complaint::too_hot &&
            can_be_taken(Quantity::setting_priority, job_))
            return (void)read(0, Quantity::setting_priority);
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

    void sensor_circuit() { (void)read(0, Quantity::outlet_ohms); }

    void no_flame() {
        if (cylinder_is_empty()) return;
        const auto flame = see(3, Quantity::flame);
        if (hands_.latest_word(Quantity::spark) == "no spark") return;
        if (flame != "none")
            (void)see(0, Quantity::electrode_tip);
        else
            (void)gas_is_short();
    }

    void air_path() {
        if (see(0, Quantity::flue_terminal) == "clear") (void)see(0, Quantity::exchanger_fins);
    }

    bool cylinder_is_empty() {
        return on_cylinder() && read(0, Quantity::cylinder_mass) < little_gas_kg;
    }

    void drops_out() {
        if (on_cylinder()) {
            (void)see(0, Quantity::cylinder_frost);
            if (cylinder_is_empty()) return;
        }
        if (see(0, Quantity::flue_terminal) != "clear") return;
        const auto flame = see(1, Quantity::flame);
        const double low = read(1, Quantity::readout_flame);
        if (flame == "restless") return;
        const double high = read(2, Quantity::readout_flame);
        if (see(0, Quantity::electrode_tip) != "clean") return;
        if (low < weak_flame_a || high < weak_flame_a) (void)gas_is_short();
    }

    // Standing and working pressure at the heater, then at the regulator.
    bool weak(Quantity quantity) {
        const double standing = read(0, quantity);
        return read(2, quantity) < weak_share * standing;
    }
    bool gas_is_short() {
        if (!weak(Quantity::gas_inlet_pressure)) return false;
        if (!cylinder_is_empty()) (void)weak(Quantity::regulator_pressure);
        return true;
    }

    void delivery() {
        const double tap = read(2, Quantity::tap_temperature);
        const double shown = read(2, Quantity::readout_outlet);
        const double pipe = read(2, Quantity::outlet_pipe_temperature);
        if (std::abs(pipe - shown) > sensor_off_k) {
            (void)read(0, Quantity::outlet_ohms);
            return;
        }
        // What leaves the heater as hot as it should is lost behind it: one outlet, or all of them?
        const bool serves = std::abs(tap - job_.panel.set_point_k) < near_set_k;
        if (serves || tap < pipe - lost_behind_k) return hands_.each_outlet(true);
        if (can_be_taken(Quantity::companion_front, job_) &&
            see(2, Quantity::companion_front) == "waiting")
            return;
        if (gas_is_short()) return;
        if (read(2, Quantity::flue_temperature) > hot_flue_k) {
            (void)see(0, Quantity::exchanger_fins);
            return;
        }
        if (see(0, Quantity::flue_terminal) != "clear") return;
        if (see(1, Quantity::flame) == "restless") return;
        if (tap < job_.panel.set_point_k - near_set_k) (void)see(0, Quantity::exchanger_fins);
    }

    Hands& hands_;
    const worksite::Job& job_;
};

}  // namespace

void read_by_symptom(Hands& hands) {
    Troubleshooter(hands).read_on();
}

}  // namespace emberpath::trainees
