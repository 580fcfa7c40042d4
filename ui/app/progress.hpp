#pragma once
/// Long work with a sign of life on stderr. Nothing is shown for the first second, nor when stderr is no
/// terminal.

#include <chrono>
#include <future>
#include <string_view>

#include "ui/app/context.hpp"

namespace emberpath::app {

/// One picture of the bar: how long it has run, and a block that moves, as the end is not known.
void draw_progress(std::ostream& err, std::string_view what, std::chrono::milliseconds running);
void wipe_progress(std::ostream& err);

/// Runs `work` on another thread and returns what it returns; exceptions come through.
template <class Work>
auto with_progress(const Context& context, std::string_view what, Work work) {
    using namespace std::chrono_literals;
    auto result = std::async(std::launch::async, std::move(work));
    if (!context.err_is_terminal) return result.get();
    auto running = 1000ms;
    if (result.wait_for(running) == std::future_status::ready) return result.get();
    do {
        draw_progress(context.err, what, running);
        running += 100ms;
    } while (result.wait_for(100ms) != std::future_status::ready);
    wipe_progress(context.err);
    return result.get();
}

}  // namespace emberpath::app
