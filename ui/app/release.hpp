#pragma once
/// `emberpath rate JOB --release`: is the job fit to be scored by?

#include <iosfwd>
#include <string>

#include "sim/trainees/release.hpp"
#include "ui/app/context.hpp"

namespace emberpath::app {

/// The figures, each with what is wanted of it; the verdict in words; then the table that takes it into the job
/// file. `today` is year first, "2026-11-25"; `fingerprint` is of the files the job came from.
void write_release(std::ostream& out, const worksite::Job& job, const trainees::Release& release,
                   const std::string& today, const std::string& fingerprint);

}  // namespace emberpath::app
