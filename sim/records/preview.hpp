#pragma once
/// What a job's fault does to every reading, beside the sound house: for authors and instructors, never
/// for a trainee at work.

#include <string>

#include "sim/worksite/job.hpp"

namespace emberpath::records {

/// A table at 100 columns, one part for each operating condition; changed readings carry a star.
[[nodiscard]] std::string preview_text(const worksite::Job& job);

}  // namespace emberpath::records
