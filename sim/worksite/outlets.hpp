#pragma once
/// The taps of a house as the plant's list of open outlets, and what comes out of them.

#include "sim/plant/plant.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::worksite {

/// Less than this is no water: what a shut valve still lets through in the model [m3/s].
inline constexpr double nothing_runs_m3_per_s = 1.0e-7;

/// Shuts every outlet of the list.
void shut_outlets(plant::Surroundings& at);
/// Adds one tap of the site, opened by a share (0 to 1; 0 adds nothing). A site has at most
/// plant::tap_count of them; the loader sees to it.
void open_outlet(plant::Surroundings& at, const Site& site, std::size_t tap, double share);
/// Every tap of the site opened by the same share, and no others.
void open_all_outlets(plant::Surroundings& at, const Site& site, double share);

/// Is a hot outlet open, listed or not?
[[nodiscard]] bool hot_water_is_drawn(const plant::Surroundings& at);
/// What people feel at the open outlets together, mixed by flow [K]; the pipe's end while nothing runs.
[[nodiscard]] double drawn_water_k(const plant::Observables& seen, const plant::Surroundings& at);
/// Does water come at this tap?
[[nodiscard]] bool water_comes(const plant::Observables& seen, std::size_t tap);

}  // namespace emberpath::worksite
