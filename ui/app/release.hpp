#pragma once
/// `emberpath rate JOB --release`: is the job fit to be scored by?

#include <iosfwd>

#include "sim/trainees/release.hpp"
#include "ui/app/context.hpp"

namespace emberpath::app {

/// The figures, each with what is wanted of it; then the verdict in words.
void write_release(std::ostream& out, const worksite::Job& job, const trainees::Release& release);

}  // namespace emberpath::app
