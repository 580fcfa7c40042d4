#pragma once
/// `emberpath rate JOB`: what the job rewards, by simulated trainees.

#include <string>

#include "ui/app/context.hpp"

namespace emberpath::app {

struct RateRequest {
    std::string job;
    int seeds = 2;  // attempts of each trainee; 1 to 100
};
/// Status::not_so when the job is refused for release.
[[nodiscard]] Status rate(Context& context, const RateRequest& request);

}  // namespace emberpath::app
