// Times the fixed-step RK4 of the product against SUNDIALS CVODE on the same right-hand side, in the closed loop:
// sensors, controller and flame every 100 ms, the states in between by one solver or the other.
//
// Each run reports its largest outlet error against RK4 with 32 steps a tick, so that only runs of like accuracy
// are compared. CVODE is started anew every tick, because commands and flame flags jump there.

#include <benchmark/benchmark.h>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <stdexcept>
#include <vector>

#include "sim/plant/step.hpp"
#include "tests/laws/house.hpp"

namespace {

using namespace emberpath;
using laws::House;

constexpr int ticks = 600;  // a minute with four tap events

void act(House& house, int tick) {
    constexpr double asked_lpm[] = {10.0, 6.0, 16.0, 8.0};
    if (tick % 150 == 5) house.open_taps(asked_lpm[tick / 150]);
}

/// What a tick does before the states move.
void before_states(House& house) {
    auto& heater = house.heater;
    const auto& at = house.inputs.surroundings;
    const auto sensors = plant::sense(heater.plant, at);
    const auto commands =
        controller::control(heater.controller, sensors, house.inputs.panel, heater.settings);
    plant::hold_commands(heater.plant, at, commands);
    plant::flame_logic(heater.plant, at);
}

/// Outlet temperature at every tick, with `move` stepping the states.
template <class Move>
std::vector<double> run(Move move) {
    House house;
    std::vector<double> outlet;
    outlet.reserve(ticks);
    for (int tick = 0; tick < ticks; ++tick) {
        act(house, tick);
        before_states(house);
        move(house);
        outlet.push_back(house.heater.plant.state[plant::mixing_pocket]);
    }
    return outlet;
}

const std::vector<double>& fine_outlet() {
    static const std::vector<double> outlet =
        run([](House& h) { plant::step_states(h.heater.plant, h.inputs.surroundings, 32); });
    return outlet;
}

double error_mk(const std::vector<double>& outlet) {
    double largest = 0.0;
    for (std::size_t i = 0; i < outlet.size(); ++i)
        largest = std::max(largest, std::abs(outlet[i] - fine_outlet()[i]));
    return 1e3 * largest;
}

void report(benchmark::State& state, const std::vector<double>& outlet) {
    state.counters["error_mK"] = error_mk(outlet);
    using benchmark::Counter;
    state.counters["s_per_tick"] =
        Counter(static_cast<double>(ticks), Counter::kIsIterationInvariantRate | Counter::kInvert);
}

void rk4(benchmark::State& state) {
    const int steps = static_cast<int>(state.range(0));
    std::vector<double> outlet;
    for (auto _ : state)
        outlet = run([steps](House& h) {
            plant::step_states(h.heater.plant, h.inputs.surroundings, steps);
        });
    report(state, outlet);
}
BENCHMARK(rk4)->Arg(1)->Arg(2)->Arg(4)->ArgName("steps")->Unit(benchmark::kMillisecond);

/// Typical size of each state, for absolute tolerances.
double size_of(std::size_t i) {
    using namespace plant;
    if (i == fan_speed) return 80.0;
    if (i == valve_pressure) return 1000.0;
    if (i == water_valve || i == bypass_valve || (i >= flame_0 && i < flame_0 + bank_count))
        return 1.0;
    if (i == flow_reading) return 2e-4;
    if (i == ionisation) return 1e-5;
    if (i == unburnt_gas) return 1e-4;
    if (i == cylinder_liquid_kg) return 30.0;
    return 50.0;  // temperatures, by their rise
}

int right_hand_side(realtype, N_Vector x, N_Vector d, void* data) {
    const House& house = *static_cast<const House*>(data);
    plant::State<double> state;
    std::memcpy(state.data(), N_VGetArrayPointer(x), sizeof state);
    const auto slope = plant::derivative(house.heater.plant, state, house.inputs.surroundings);
    std::memcpy(N_VGetArrayPointer(d), slope.data(), sizeof slope);
    return 0;
}

void expect(bool fine, const char* what) {
    if (!fine) throw std::runtime_error(what);
}

/// CVODE on one house, restarted every tick.
class Cvode {
  public:
    Cvode(House& house, int method, double tolerance) : house_(house) {
        expect(SUNContext_Create(nullptr, &context_) == 0, "context");
        x_ = N_VNew_Serial(plant::state_count, context_);
        sizes_ = N_VNew_Serial(plant::state_count, context_);
        for (std::size_t i = 0; i < plant::state_count; ++i)
            N_VGetArrayPointer(sizes_)[i] = tolerance * size_of(i);
        memory_ = CVodeCreate(method, context_);
        expect(CVodeInit(memory_, right_hand_side, 0.0, x_) == CV_SUCCESS, "init");
        expect(CVodeSVtolerances(memory_, 0.0, sizes_) == CV_SUCCESS, "tolerances");
        expect(CVodeSetUserData(memory_, &house_) == CV_SUCCESS, "data");
        if (method == CV_ADAMS) {
            fixed_point_ = SUNNonlinSol_FixedPoint(x_, 0, context_);
            expect(CVodeSetNonlinearSolver(memory_, fixed_point_) == CV_SUCCESS, "solver");
        } else {
            matrix_ = SUNDenseMatrix(plant::state_count, plant::state_count, context_);
            dense_ = SUNLinSol_Dense(x_, matrix_, context_);
            expect(CVodeSetLinearSolver(memory_, dense_, matrix_) == CV_SUCCESS, "solver");
        }
    }
    Cvode(const Cvode&) = delete;
    Cvode& operator=(const Cvode&) = delete;
    ~Cvode() {
        CVodeFree(&memory_);
        if (fixed_point_ != nullptr) SUNNonlinSolFree(fixed_point_);
        if (dense_ != nullptr) SUNLinSolFree(dense_);
        if (matrix_ != nullptr) SUNMatDestroy(matrix_);
        N_VDestroy(x_);
        N_VDestroy(sizes_);
        SUNContext_Free(&context_);
    }
    void move() {
        auto& state = house_.heater.plant.state;
        std::memcpy(N_VGetArrayPointer(x_), state.data(), sizeof state);
        expect(CVodeReInit(memory_, 0.0, x_) == CV_SUCCESS, "restart");
        expect(CVodeSetStopTime(memory_, signals::tick_s) == CV_SUCCESS, "stop time");
        realtype reached = 0.0;
        expect(CVode(memory_, signals::tick_s, x_, &reached, CV_NORMAL) >= 0, "integration");
        std::memcpy(state.data(), N_VGetArrayPointer(x_), sizeof state);
    }

  private:
    House& house_;
    SUNContext context_ = nullptr;
    N_Vector x_ = nullptr, sizes_ = nullptr;
    void* memory_ = nullptr;
    SUNNonlinearSolver fixed_point_ = nullptr;
    SUNMatrix matrix_ = nullptr;
    SUNLinearSolver dense_ = nullptr;
};

void cvode(benchmark::State& state, int method) {
    double tolerance = 1.0;
    for (int i = 0; i < state.range(0); ++i) tolerance *= 0.1;
    std::vector<double> outlet;
    for (auto _ : state) {
        House house;
        Cvode solver(house, method, tolerance);
        outlet.clear();
        for (int tick = 0; tick < ticks; ++tick) {
            act(house, tick);
            before_states(house);
            solver.move();
            outlet.push_back(house.heater.plant.state[plant::mixing_pocket]);
        }
    }
    report(state, outlet);
}
BENCHMARK_CAPTURE(cvode, adams, CV_ADAMS)
    ->DenseRange(2, 6)
    ->ArgName("digits")
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(cvode, bdf, CV_BDF)
    ->DenseRange(2, 6)
    ->ArgName("digits")
    ->Unit(benchmark::kMillisecond);

}  // namespace
