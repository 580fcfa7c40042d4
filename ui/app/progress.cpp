#include "ui/app/progress.hpp"

#include <ostream>
#include <string>

namespace emberpath::app {

void draw_progress(std::ostream& err, std::string_view what, std::chrono::milliseconds running) {
    constexpr std::size_t width = 20, block = 5;
    const auto step = static_cast<std::size_t>(running.count() / 100) % (2 * (width - block));
    const auto at = step < width - block ? step : 2 * (width - block) - step;
    std::string bar(width, '.');
    bar.replace(at, block, block, '#');
    err << "\r" << what << " [" << bar << "] " << running.count() / 1000 << " s " << std::flush;
}

void wipe_progress(std::ostream& err) {
    err << "\r\033[K" << std::flush;
}

}  // namespace emberpath::app
