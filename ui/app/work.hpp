#pragma once
/// A job at the terminal, from arrival to debrief.

#include <cstdint>
#include <optional>
#include <string>

#include "ui/app/context.hpp"

namespace emberpath::app {

struct WorkRequest {
    std::string job;
    bool assessed = false;
    std::string licence;           // of the rules; empty: the usual one
    std::filesystem::path script;  // empty: somebody types
    std::filesystem::path record;  // empty: the next free name in the state folder
    std::optional<std::uint64_t> seed;
};

[[nodiscard]] Status work(Context& context, const WorkRequest& request);
/// `emberpath` alone: choose a job; with nobody at a terminal, play the demo attempt.
[[nodiscard]] Status choose_and_work(Context& context);

}  // namespace emberpath::app
