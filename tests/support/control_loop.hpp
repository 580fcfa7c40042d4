#pragma once
/// Textbook control of a first-order process with dead time, for tests: tuning rules, frequency response,
/// time response, identification. Independent of the simulation; it measures the simulation's loop.

#include <complex>
#include <vector>

namespace emberpath::control {

/// k exp(-theta s) / (tau s + 1); integrating: k exp(-theta s) / s, tau unused. Times in s.
struct Process {
    double gain = 1.0;
    double tau_s = 1.0;
    double theta_s = 0.0;
    bool integrating = false;
};

/// C(s) = gain (1 + 1 / (integral_s s)).
struct Tuning {
    double gain = 1.0;
    double integral_s = 1.0;
};

/// Kc = tau / (k (tauc + theta)), tauI = min(tau, 4 (tauc + theta)); integrating: Kc = 1 / (k (tauc + theta)),
/// tauI = 4 (tauc + theta). Skogestad 2003, J. Process Control 13:291.
[[nodiscard]] Tuning simc(const Process& process, double tauc_s);

/// Where the process under pure gain begins to swing: gain and period.
struct Ultimate {
    double gain, period_s;
};
[[nodiscard]] Ultimate ultimate(const Process& process);
/// Kc = 0.45 Ku, tauI = Pu / 1.2. Ziegler and Nichols 1942.
[[nodiscard]] Tuning ziegler_nichols(const Process& process);

struct Margins {
    double gain_margin;  // [-]
    double phase_margin_deg;
    double peak_sensitivity;  // max |1 / (1 + L)|
    double gain_crossover;    // [rad/s]
    double phase_crossover;   // [rad/s]
    double delay_margin_s;    // further dead time until it swings
};
[[nodiscard]] Margins margins(const Process& process, const Tuning& tuning);

/// Response of the loop to a unit step, in steps of `every_s` from 0.
struct Response {
    double every_s;
    std::vector<double> output, error;
    [[nodiscard]] double at(double time_s) const;
    [[nodiscard]] double overshoot() const;  // share of the step
    [[nodiscard]] double integrated_error_s() const;
    [[nodiscard]] double integrated_absolute_error_s() const;
};
enum class Step { set_point, load };
[[nodiscard]] Response closed_loop(const Process& process, const Tuning& tuning, Step step,
                                   double end_s);
/// Output of the process alone at a time after an input step, by stepping it.
[[nodiscard]] double open_loop(const Process& process, double input_step, double time_s);

/// Two-point method: from the times at which a step response has gone 28.3 % and 63.2 % of its way.
/// tau = 1.5 (t63 - t28), theta = t63 - tau. Smith, as in Seborg, Edgar, Mellichamp (from memory).
[[nodiscard]] Process two_point(double gain, double t28_s, double t63_s);

}  // namespace emberpath::control
