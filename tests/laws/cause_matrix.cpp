// Runs a house with a fault through the occasions of a visit and reads everything.
#include "tests/laws/cause_matrix.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "sim/math/functions.hpp"
#include "sim/worksite/electrical_quantities.hpp"
#include "sim/worksite/site_state.hpp"

namespace emberpath::laws {
namespace {

using worksite::Quantity;

constexpr std::array draws_lpm{3.5, 10.0, 16.0, 16.0};  // small, middle, full, long
constexpr double rest_s = 280.0, draw_s = 300.0, long_draw_s = 1800.0, watched_s = 20.0,
                 attempt_s = 2.0;

worksite::ToolSetup every_tool() {
    worksite::ToolSetup tools;
    tools.analyser_sampling = true;
    tools.tap_opening_share = 1.0;
    tools.tap = shower;
    tools.watching = tools.listening = true;
    return tools;
}

/// A house that lives through one occasion, watched by eyes, ears and instruments.
class Visit {
  public:
    Visit(faults::Cause cause, double severity, const Premises& premises)
        : premises_(premises), house_(furnished(premises)) {
        healthy_ = house_.heater.plant.parameters;
        const faults::Fault fault{cause, severity};
        house_.heater.install(0, {faults::with_fault(healthy_, fault, 0.0),
                                  faults::with_fault(house_.heater.settings, fault, 0.0)});
        plant::settle_cold(house_.heater.plant, house_.inputs.surroundings);
        run(2.0);
    }
    void open_taps(double asked_lpm) { draw(house_.inputs, healthy_, premises_, asked_lpm); }
    void main_switch_off() { house_.inputs.surroundings.electrical.main_switch = 0.0; }
    void shut_cold_valve() { house_.inputs.surroundings.water_isolator = 0.0; }
    void run(double seconds) {
        for (long i = std::lround(seconds / signals::tick_s); i > 0; --i) tick();
    }
    void watch(double seconds) {
        watching_ = true;
        run(seconds);
    }
    [[nodiscard]] worksite::HeaterView look() const { return house_.look(); }
    [[nodiscard]] Readings read() const {
        const worksite::HeaterView seen = look();
        worksite::Senses senses = senses_;
        // Instruments that have had time to settle.
        senses.o2 = senses.co2 = senses.co = senses.flue_temperature = worksite::Gauge{};
        senses.o2.follow(seen.plant.o2_share, 0.0);
        senses.co2.follow(seen.plant.co2_share, 0.0);
        senses.co.follow(seen.plant.co_share, 0.0);
        senses.flue_temperature.follow(seen.plant.flue_k, 0.0);
        Readings all{};
        for (std::size_t q = 0; q < all.size(); ++q)
            all[q] = worksite::value_of(static_cast<Quantity>(q), worksite::Hold::now, seen, senses,
                                        house_.inputs, every_tool());
        return all;
    }

  private:
    void tick() {
        auto& at = house_.inputs.surroundings;
        at.time_s = static_cast<double>(ticks_) * signals::tick_s;
        at.gust_shape = gusts_.shape_at(at.time_s);
        house_.heater.tick(house_.inputs);
        ++ticks_;
        if (watching_) senses_.step(look(), every_tool());
    }

    Premises premises_;
    House house_;
    plant::PlantParameters healthy_;
    worksite::Gusts gusts_{1, 8.0};
    worksite::Senses senses_{};
    long ticks_ = 0;
    bool watching_ = false;
};

void keep_peaks(Readings& peaks, const Readings& now) {
    for (const Quantity q :
         {Quantity::gas_inlet_pressure, Quantity::regulator_pressure, Quantity::manifold_pressure,
          Quantity::flame_current, Quantity::readout_flame}) {
        const auto i = static_cast<std::size_t>(q);
        peaks[i] = std::max(peaks[i], now[i]);
    }
}

/// From the first light-up attempt of a full draw; of a heater that never tries, after ten seconds.
Readings light_up(Visit visit) {
    visit.open_taps(draws_lpm[2]);
    for (int i = 0; i < 100 && visit.look().readout.phase != controller::Phase::light_up; ++i)
        visit.run(signals::tick_s);
    Readings peaks = visit.read();
    for (double t = 0.0; t < attempt_s; t += 0.2) {
        visit.watch(0.2);
        keep_peaks(peaks, visit.read());
    }
    Readings all = visit.read();
    keep_peaks(all, peaks);
    return all;
}

Readings draw(Visit visit, double asked_lpm, double seconds) {
    visit.open_taps(asked_lpm);
    visit.run(seconds - watched_s);
    visit.watch(watched_s);
    return visit.read();
}

double on_scale(const worksite::QuantityInfo& row, double value) {
    return row.logarithmic ? math::log(std::max(value, 0.5 * row.error_absolute)) : value;
}

double scale(const worksite::QuantityInfo& row, double value) {
    double error = row.error_absolute + row.error_relative * std::abs(value);
    if (row.logarithmic) error /= std::max(std::abs(value), row.error_absolute);
    return std::sqrt(error * error + row.model_floor * row.model_floor);
}

}  // namespace

std::string_view title(Occasion occasion) {
    constexpr std::array<std::string_view, occasion_count> titles{
        "standby",   "light-up",  "small draw",      "middle draw",
        "full draw", "long draw", "main switch off", "cold valve shut"};
    return titles[static_cast<std::size_t>(occasion)];
}

Findings find(faults::Cause cause, double severity, const Premises& premises) {
    const Visit begun(cause, severity, premises);
    Findings found;
    found.cylinder = premises.cylinder;
    Visit standby = begun;
    standby.run(rest_s);
    standby.watch(watched_s);
    found.on[0] = standby.read();
    found.on[1] = light_up(begun);
    for (std::size_t i = 0; i < 3; ++i) found.on[2 + i] = draw(begun, draws_lpm[i], draw_s);
    if (premises.cylinder) found.on[5] = draw(begun, draws_lpm[3], long_draw_s);
    Visit without_mains = begun;
    without_mains.main_switch_off();
    without_mains.watch(watched_s);
    found.on[6] = without_mains.read();
    Visit without_cold = begun;
    without_cold.shut_cold_valve();
    without_cold.open_taps(draws_lpm[1]);
    without_cold.watch(watched_s);
    found.on[7] = without_cold.read();
    return found;
}

bool counts(Quantity quantity) {
    return quantity != Quantity::complaint_heard && quantity != Quantity::readout_phase &&
           quantity != Quantity::volts_between && quantity != Quantity::ohms_between &&
           quantity != Quantity::clamp_current;
}

double apart(Quantity quantity, double a, double b) {
    const worksite::QuantityInfo& row = worksite::info(quantity);
    if (row.categorical) return a == b ? 0.0 : other_word;
    const double wide = std::max(scale(row, a), scale(row, b));
    return std::abs(on_scale(row, a) - on_scale(row, b)) / wide;
}

std::size_t first_set_with(Quantity quantity) {
    if (quantity == Quantity::display_word) return 0;
    if (quantity == Quantity::terminal_volts || worksite::is_electrical(quantity)) return 4;
    switch (worksite::info(quantity).tool) {
        case worksite::Tool::readout:
            return 0;
        case worksite::Tool::manometer:
            return 1;
        case worksite::Tool::thermometer:
        case worksite::Tool::flow_cup:
        case worksite::Tool::multimeter:
        case worksite::Tool::scale:
            return 2;
        case worksite::Tool::analyser:
            return 3;
        case worksite::Tool::senses:
            return 5;
        default:
            return 4;
    }
}

double apart(const Findings& a, const Findings& b, std::size_t instrument_set) {
    double most = 0.0;
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        if (!counts(quantity) || first_set_with(quantity) > instrument_set) continue;
        for (std::size_t o = 0; o < occasion_count; ++o)
            if (a.has(o)) most = std::max(most, apart(quantity, a.on[o][q], b.on[o][q]));
    }
    return most;
}

std::vector<double> severities(const faults::CauseInfo& row, double sign) {
    constexpr int count = 5;
    if (row.on_off || row.least_severity == row.greatest_severity) return {row.greatest_severity};
    std::vector<double> all;
    const double range = row.greatest_severity - row.least_severity;
    for (int i = 0; i < count; ++i)
        all.push_back(sign * (row.least_severity + range * i / (count - 1)));
    return all;
}

const std::vector<Findings>& found(faults::Cause cause, double sign, const Premises& premises) {
    using Key = std::tuple<faults::Cause, double, bool, faults::Needs>;
    static std::map<Key, std::vector<Findings>> kept;
    auto& list = kept[{cause, sign, premises.cylinder, premises.needs}];
    if (list.empty())
        for (const double severity : severities(faults::info(cause), sign))
            list.push_back(find(cause, severity, premises));
    return list;
}

const Findings& sound(const Premises& premises) {
    return found(faults::Cause::no_fault, 1.0, premises).front();
}

std::vector<double> signs(const faults::CauseInfo& row) {
    return row.has_sign ? std::vector<double>{1.0, -1.0} : std::vector<double>{1.0};
}

}  // namespace emberpath::laws
