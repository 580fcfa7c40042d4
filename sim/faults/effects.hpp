#pragma once
/// What each cause does to the healthy parameters. Maps chosen so that severity 0 is sound and 1 is the
/// worst that is still that fault; docs/causes.md lists the signatures.

#include "sim/faults/faults.hpp"

namespace emberpath::faults {

/// Apply one cause at a severity (already resolved in time). Severity 0 changes nothing.
void apply(plant::PlantParameters& p, Cause cause, double severity);

}  // namespace emberpath::faults
