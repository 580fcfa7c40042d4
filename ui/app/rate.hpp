#pragma once
/// `emberpath rate JOB`: what the job rewards, by simulated trainees; with --release, whether it is fit to be
/// scored by.

#include <optional>
#include <string>

#include "ui/app/context.hpp"

namespace emberpath::app {

struct RateRequest {
    std::string job;
    bool release = false;      // the release check in place of the trainees
    std::optional<int> seeds;  // attempts of each trainee, 1 to 100; usually 2
    std::optional<int> runs;   // houses of the release check, 1 to 1000; usually 50
};
/// Status::not_so when the job is refused for release.
[[nodiscard]] Status rate(Context& context, const RateRequest& request);

}  // namespace emberpath::app
