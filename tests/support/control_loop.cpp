#include "tests/support/control_loop.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <numbers>

namespace emberpath::control {
namespace {

constexpr double pi = std::numbers::pi;

/// Phase [rad], unwrapped: every term is continuous in the frequency.
double phase(const Process& p, const Tuning& c, double w) {
    const double process = p.integrating ? -0.5 * pi : -std::atan(w * p.tau_s);
    return process - w * p.theta_s - 0.5 * pi + std::atan(w * c.integral_s);
}

double magnitude(const Process& p, const Tuning& c, double w) {
    const double process = p.integrating ? p.gain / w : p.gain / std::hypot(1.0, w * p.tau_s);
    return process * c.gain * std::hypot(1.0, 1.0 / (w * c.integral_s));
}

double sensitivity(const Process& p, const Tuning& c, double w) {
    return 1.0 / std::abs(1.0 + std::polar(magnitude(p, c, w), phase(p, c, w)));
}

/// The frequency at which `above` turns from true to false, once it has been true.
template <class Condition>
double crossing(double from, double to, const Condition& above) {
    double low = from, high = from;
    bool was_above = false;
    while (high < to) {
        const bool now = above(high);
        if (was_above && !now) break;
        was_above = now;
        low = high;
        high *= 1.01;
    }
    for (int i = 0; i < 80; ++i) {
        const double middle = 0.5 * (low + high);
        (above(middle) ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

double largest_sensitivity(const Process& p, const Tuning& c, double around) {
    double best = 0.0, at = around;
    for (int i = -2000; i <= 2000; ++i) {
        const double w = around * std::pow(10.0, i / 1000.0);
        const double s = sensitivity(p, c, w);
        if (s > best) best = s, at = w;
    }
    for (int i = -1000; i <= 1000; ++i)
        best = std::max(best, sensitivity(p, c, at * (1.0 + 3.0e-6 * i)));
    return best;
}

/// The process in exact steps of `dt`, its dead time a queue of whole steps.
class Stepped {
  public:
    Stepped(const Process& p, double dt)
        : p_(p),
          dt_(dt),
          keep_(std::exp(-dt / p.tau_s)),
          queue_(static_cast<std::size_t>(std::lround(p.theta_s / dt)), 0.0) {}
    double step(double input) {
        queue_.push_back(input);
        const double delayed = queue_.front();
        queue_.pop_front();
        if (p_.integrating)
            output_ += p_.gain * delayed * dt_;
        else
            output_ = keep_ * output_ + (1.0 - keep_) * p_.gain * delayed;
        return output_;
    }

  private:
    Process p_;
    double dt_, keep_, output_ = 0.0;
    std::deque<double> queue_;
};

}  // namespace

Tuning simc(const Process& p, double tauc_s) {
    const double sum = tauc_s + p.theta_s;
    if (p.integrating) return {1.0 / (p.gain * sum), 4.0 * sum};
    return {p.tau_s / (p.gain * sum), std::min(p.tau_s, 4.0 * sum)};
}

Ultimate ultimate(const Process& p) {
    double low = 1e-9, high = pi / p.theta_s;
    for (int i = 0; i < 200; ++i) {
        const double w = 0.5 * (low + high);
        (std::atan(w * p.tau_s) + w * p.theta_s < pi ? low : high) = w;
    }
    return {std::hypot(1.0, low * p.tau_s) / p.gain, 2.0 * pi / low};
}

Tuning ziegler_nichols(const Process& p) {
    const Ultimate u = ultimate(p);
    return {0.45 * u.gain, u.period_s / 1.2};
}

Margins margins(const Process& p, const Tuning& c) {
    const double slow = 1e-4 / (p.tau_s + p.theta_s), fast = 1e3 / p.theta_s;
    Margins m{};
    m.phase_crossover = crossing(slow, fast, [&](double w) { return phase(p, c, w) > -pi; });
    m.gain_crossover = crossing(slow, fast, [&](double w) { return magnitude(p, c, w) > 1.0; });
    m.gain_margin = 1.0 / magnitude(p, c, m.phase_crossover);
    const double left = pi + phase(p, c, m.gain_crossover);
    m.phase_margin_deg = left * 180.0 / pi;
    m.delay_margin_s = left / m.gain_crossover;
    m.peak_sensitivity = largest_sensitivity(p, c, m.phase_crossover);
    return m;
}

Response closed_loop(const Process& p, const Tuning& c, Step step, double end_s) {
    const double dt = p.theta_s / 400.0;
    Stepped process(p, dt);
    Response r{dt, {}, {}};
    double integral = 0.0, output = 0.0;
    const auto steps = std::lround(end_s / dt);
    for (long i = 0; i <= steps; ++i) {
        r.output.push_back(output);
        const double error = (step == Step::set_point ? 1.0 : 0.0) - output;
        r.error.push_back(error);
        integral += error * dt;
        const double input = c.gain * (error + integral / c.integral_s);
        output = process.step(input + (step == Step::load ? 1.0 : 0.0));
    }
    return r;
}

double open_loop(const Process& p, double input_step, double time_s) {
    const double dt = p.theta_s / 400.0;
    Stepped process(p, dt);
    double output = 0.0;
    const auto steps = std::lround(time_s / dt);
    for (long i = 0; i < steps; ++i) output = process.step(input_step);
    return output;
}

Process two_point(double gain, double t28_s, double t63_s) {
    const double tau = 1.5 * (t63_s - t28_s);
    return {gain, tau, t63_s - tau};
}

double Response::at(double time_s) const {
    return output.at(static_cast<std::size_t>(std::lround(time_s / every_s)));
}

double Response::overshoot() const {
    return *std::max_element(output.begin(), output.end()) - 1.0;
}

double Response::integrated_error_s() const {
    double sum = 0.0;
    for (const double e : error) sum += e * every_s;
    return sum;
}

double Response::integrated_absolute_error_s() const {
    double sum = 0.0;
    for (const double e : error) sum += std::abs(e) * every_s;
    return sum;
}

}  // namespace emberpath::control
