// Times the window on a job in its middle: lists of what to paint, a frame in which little moves, a whole
// repaint, and the answer to a key. Needs a display; LIBGL_ALWAYS_SOFTWARE=1 makes it the slowest machine.

#include <benchmark/benchmark.h>

#include <SFML/Graphics/RenderTexture.hpp>
#include <SFML/Window/Context.hpp>
#include <cstdio>

#include "tests/screens/player.hpp"
#include "ui/window/display.hpp"
#include "ui/window/presenter.hpp"

namespace {

using namespace emberpath;

constexpr kit::Size sizes[] = {{1280.0, 800.0}, {1920.0, 1080.0}};
constexpr double one_frame_s = 0.05;

/// The demo job after two thirds of its path: a manometer is connected, hot water runs.
Player& at_work() {
    static Player player(EMBERPATH_SOURCE_DIR);
    static const bool played = [] {
        player.enter("sorrel");
        const auto script = script_of(EMBERPATH_SOURCE_DIR, "sorrel.good");
        for (std::size_t i = 0; i < script.size() * 2 / 3; ++i) player.say(script[i]);
        return true;
    }();
    (void)played;
    return player;
}

/// Waits until what was asked of the graphics driver is done.
void finish_painting() {
    using Finish = void (*)();
    static const auto finish = reinterpret_cast<Finish>(sf::Context::getFunction("glFinish"));
    if (finish != nullptr) finish();
}

struct Canvas {
    explicit Canvas(kit::Size size) : presenter(Player::typeface()) {
        (void)target.create(static_cast<unsigned>(size.w), static_cast<unsigned>(size.h));
    }
    void show(const kit::Frame& frame, kit::Theme theme) {
        presenter.present(target, frame, {theme, 1.0});
        target.display();
        finish_painting();
    }
    sf::RenderTexture target;
    window::Presenter presenter;
};

kit::Size size_of(const benchmark::State& state) {
    return sizes[static_cast<std::size_t>(state.range(0))];
}

/// One picture's worth of simulated time, then the screen as a list of what to paint.
void build_lists(benchmark::State& state) {
    Player& player = at_work();
    for (auto _ : state) {
        player.program().elapse(one_frame_s);
        benchmark::DoNotOptimize(player.frame(size_of(state)));
    }
}

/// The same, painted: what stands still is kept from the picture before.
void layered_frame(benchmark::State& state) {
    Player& player = at_work();
    Canvas canvas(size_of(state));
    canvas.show(player.frame(size_of(state)), kit::Theme::day);
    std::int64_t repaints = 0;
    for (auto _ : state) {
        player.program().elapse(one_frame_s);
        canvas.show(player.frame(size_of(state)), kit::Theme::day);
        repaints += canvas.presenter.repainted() ? 1 : 0;
    }
    state.counters["repaints"] =
        static_cast<double>(repaints) / static_cast<double>(state.iterations());
}

/// Everything painted anew, as after a change of the theme.
void whole_frame(benchmark::State& state) {
    Player& player = at_work();
    Canvas canvas(size_of(state));
    const kit::Frame frame = player.frame(size_of(state));
    bool night = false;
    for (auto _ : state) {
        night = !night;
        canvas.show(frame, night ? kit::Theme::night : kit::Theme::day);
    }
    state.counters["vertices"] = static_cast<double>(canvas.presenter.vertices());
    state.counters["draws"] = static_cast<double>(canvas.presenter.draws());
}

/// From a key to the picture that shows what it did.
void answer_to_a_key(benchmark::State& state) {
    Player& player = at_work();
    Canvas canvas(size_of(state));
    for (auto _ : state) {
        player.program().event(kit::KeyPress{kit::Key::tab, {}, false});
        canvas.show(player.frame(size_of(state)), kit::Theme::day);
    }
}

// Wall time: a software driver paints on threads of its own.
BENCHMARK(build_lists)->DenseRange(0, 1)->Unit(benchmark::kMillisecond);
BENCHMARK(layered_frame)->DenseRange(0, 1)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(whole_frame)->DenseRange(0, 1)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(answer_to_a_key)->DenseRange(0, 1)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace

int main(int argc, char** argv) {
    if (const std::string why = emberpath::window::why_no_display(); !why.empty()) {
        std::fprintf(stderr, "%s\n", why.c_str());
        return 2;
    }
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
