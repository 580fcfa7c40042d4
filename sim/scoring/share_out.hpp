#pragma once
/// Work shared out among threads.

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace emberpath::scoring {

/// As many as the machine has, at most eight.
[[nodiscard]] inline int usual_threads() {
    return static_cast<int>(std::clamp(std::thread::hardware_concurrency(), 1U, 8U));
}

/// Calls work(i) for every i below `pieces`, on at most `threads` threads. Pieces must not share anything
/// that they change: then which thread takes which piece changes nothing.
template <class Work>
void share_out(std::size_t pieces, int threads, const Work& work) {
    std::atomic<std::size_t> next{0};
    const auto take = [&] {
        for (std::size_t i = next++; i < pieces; i = next++) work(i);
    };
    std::vector<std::thread> helpers;
    const auto most = std::min(static_cast<std::size_t>(std::max(threads, 1)), pieces);
    for (std::size_t i = 1; i < most; ++i) helpers.emplace_back(take);
    take();
    for (std::thread& helper : helpers) helper.join();
}

}  // namespace emberpath::scoring
