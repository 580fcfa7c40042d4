#include "sim/worksite/trace.hpp"

#include <array>

#include "sim/faults/faults.hpp"
#include "sim/worksite/heater.hpp"
#include "sim/worksite/outlets.hpp"
#include "sim/worksite/site_state.hpp"

namespace emberpath::worksite {

namespace {

constexpr double zero_celsius_k = 273.15;
constexpr std::uint64_t gust_seed = 1;

/// What the series shows, in which unit, to how many decimals.
struct Series {
    std::string_view title;
    int decimals;
    double (*value)(const HeaterView& view);
};

// clang-format off
constexpr std::array series{
    Series{"hot water [L/min]", 2, [](const HeaterView& v) { return 60000.0 * v.plant.hot_water_m3_per_s; }},
    Series{"inlet water [degC]", 2, [](const HeaterView& v) { return v.plant.inlet_water_k - zero_celsius_k; }},
    Series{"exchanger outlet [degC]", 2, [](const HeaterView& v) { return v.plant.exchanger_outlet_k - zero_celsius_k; }},
    Series{"outlet water [degC]", 2, [](const HeaterView& v) { return v.plant.outlet_water_k - zero_celsius_k; }},
    Series{"tap water [degC]", 2, [](const HeaterView& v) { return v.plant.tap_water_k - zero_celsius_k; }},
    Series{"gas at inlet [kPa]", 3, [](const HeaterView& v) { return 1.0e-3 * v.plant.gas_inlet_pa; }},
    Series{"gas at manifold [kPa]", 3, [](const HeaterView& v) { return 1.0e-3 * v.plant.manifold_pa; }},
    Series{"gross heat input [kW]", 2, [](const HeaterView& v) { return 1.0e-3 * v.plant.heat_input_w; }},
    Series{"heat to water [kW]", 2, [](const HeaterView& v) { return 1.0e-3 * v.plant.heat_to_water_w; }},
    Series{"fan [rev/min]", 0, [](const HeaterView& v) { return 60.0 * v.plant.fan_rev_per_s; }},
    Series{"excess air ratio [-]", 3, [](const HeaterView& v) { return v.plant.excess_air_ratio; }},
    Series{"dry flue O2 [%]", 2, [](const HeaterView& v) { return 100.0 * v.plant.o2_share; }},
    Series{"dry flue CO [ppm]", 0, [](const HeaterView& v) { return 1.0e6 * v.plant.co_share; }},
    Series{"flue [degC]", 1, [](const HeaterView& v) { return v.plant.flue_k - zero_celsius_k; }},
    Series{"flame current [uA]", 2, [](const HeaterView& v) { return 1.0e6 * v.plant.ionisation_a; }},
    Series{"banks open [-]", 0, [](const HeaterView& v) { return v.readout.banks_open; }},
    Series{"set point [degC]", 2, [](const HeaterView& v) { return v.readout.set_point_k - zero_celsius_k; }},
    Series{"feed-forward [kW]", 2, [](const HeaterView& v) { return 1.0e-3 * v.readout.feed_forward_w; }},
    Series{"proportional part [K]", 2, [](const HeaterView& v) { return v.readout.proportional_k; }},
    Series{"integral [K]", 2, [](const HeaterView& v) { return v.readout.loop_correction_k; }},
    Series{"firing rate asked for [kW]", 2, [](const HeaterView& v) { return 1.0e-3 * v.readout.heat_demand_w; }},
    Series{"manifold asked for [kPa]", 3, [](const HeaterView& v) { return 1.0e-3 * v.readout.manifold_command_pa; }},
    Series{"fan target [rev/min]", 0, [](const HeaterView& v) { return 60.0 * v.readout.fan_target_rev_per_s; }},
    Series{"fan drive [-]", 3, [](const HeaterView& v) { return v.readout.fan_duty; }},
    Series{"air trim [-]", 3, [](const HeaterView& v) { return v.readout.air_trim; }},
    Series{"water valve [-]", 3, [](const HeaterView& v) { return v.readout.water_valve_position; }},
    Series{"bypass [-]", 3, [](const HeaterView& v) { return v.readout.bypass; }},
    Series{"phase [-]", 0, [](const HeaterView& v) { return static_cast<double>(v.readout.phase); }},
};
// clang-format on

TickInputs inputs_at_rest(const Job& job) {
    TickInputs inputs;
    inputs.panel = job.panel;
    plant::Surroundings& around = inputs.surroundings;
    around.mains_water_pa = job.site.mains_water_pa;
    around.inlet_water_k = job.site.inlet_water_k;
    around.ambient_k = job.site.ambient_k;
    around.cylinder_ambient_k = job.site.ambient_k;
    around.steady_wind_pa = job.site.wind_pa;
    Services services;
    settle_in(services, job.site);
    surround(around, job.site, services, job.site.arrival_s);
    return inputs;
}

double opening_at(const std::vector<TapStep>& taps, double time_s) {
    double opening = 0.0;
    for (const auto& step : taps)
        if (step.at_s <= time_s) opening = step.opening;
    return opening;
}

/// The heater with its house around it, one tick after the other.
class Run {
  public:
    Run(const Job& job, const TraceSettings& settings)
        : job_(job),
          settings_(settings),
          inputs_(inputs_at_rest(job)),
          gusts_(gust_seed, job.site.gust_period_s) {
        set_parameters(0.0);
        plant::settle_cold(heater_.plant, inputs_.surroundings);
    }

    void tick(std::int64_t number) {
        const double time_s = static_cast<double>(number) * tick_s;
        const double site_s = job_.site.arrival_s + time_s;
        inputs_.surroundings.time_s = site_s;
        inputs_.surroundings.gust_shape = gusts_.shape_at(site_s);
        inputs_.surroundings.electrical.pump_running = pump_runs_at(site_s);
        opening_ = opening_at(settings_.taps, time_s);
        shut_outlets(inputs_.surroundings);
        if (!job_.site.taps.empty()) open_outlet(inputs_.surroundings, job_.site, 0, opening_);
        if (!settings_.sound && faults::changes_after(job_.faults, site_s - tick_s))
            set_parameters(time_s);
        heater_.tick(inputs_);
    }

    [[nodiscard]] std::vector<double> row(std::int64_t number) const {
        const HeaterView now = view(heater_, 0, inputs_);
        std::vector<double> values = {static_cast<double>(number) * tick_s, opening_};
        for (const auto& one : series) values.push_back(one.value(now));
        return values;
    }

  private:
    void set_parameters(double time_s) {
        const std::span<const faults::Fault> none;
        heater_.install(0, installation_of(job_, settings_.sound ? none : std::span(job_.faults),
                                           job_.site.arrival_s + time_s));
    }

    const Job& job_;
    const TraceSettings& settings_;
    TickInputs inputs_;
    Gusts gusts_;
    Heater<double> heater_;
    double opening_ = 0.0;
};

}  // namespace

TraceTable trace(const Job& job, const TraceSettings& settings) {
    TraceTable table;
    table.columns = {"time [s]", "tap opening [-]"};
    table.decimals = {1, 2};
    for (const auto& one : series) {
        table.columns.emplace_back(one.title);
        table.decimals.push_back(one.decimals);
    }
    Run run(job, settings);
    const std::int64_t every = ticks_in(settings.every_s), end = ticks_in(settings.end_s);
    for (std::int64_t number = 0; number <= end; ++number) {
        run.tick(number);
        if (number % every == 0) table.rows.push_back(run.row(number));
    }
    return table;
}

}  // namespace emberpath::worksite
