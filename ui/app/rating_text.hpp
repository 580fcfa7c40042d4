#pragma once
/// `emberpath rate JOB`: what a job rewards, in words.

#include <iosfwd>

#include "sim/trainees/rating.hpp"

namespace emberpath::app {

/// A row for each simulated trainee, difficulty with its reasons, the shortest safe path, what can be guessed and what
/// can be found out, and the verdict.
void write_rating(std::ostream& out, const worksite::Job& job, const trainees::Rating& rating);

}  // namespace emberpath::app
