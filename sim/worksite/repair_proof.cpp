// What proves a repair beside hot water and a clear display: a reading of its own, taken after it.

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

using faults::Remedy;

constexpr std::array proofs{
    RepairProof{Remedy::replace_limiter, Quantity::limiter_leads, "look at limiter leads"},
    RepairProof{Remedy::restore_limiter, Quantity::limiter_leads, "look at limiter leads"},
    RepairProof{Remedy::drain_air_tube, Quantity::air_tube_pressure, "measure air tube pressure"},
    RepairProof{Remedy::remake_companion_link, Quantity::companion_front,
                "look at companion heater"},
    RepairProof{Remedy::replace_ambient_sensor, Quantity::readout_ambient,
                "read readout ambient temperature"},
    RepairProof{Remedy::fit_pressure_limiter, Quantity::water_pressure, "measure water pressure"},
    RepairProof{Remedy::replace_leaking_tube, Quantity::casing_wet, "look at case floor"},
    RepairProof{Remedy::replace_tempering_valve, Quantity::tap_temperature,
                "measure temperature at a tap that it serves"},
};

constexpr double least_blown_pa =
    20.0;  // in an air tube: with the fan at rest every tube is steady
constexpr double near_air_k = 3.0;

/// Behind the tempering valve: what another tap gives says nothing of it.
const Tap* tempered_tap_of(const Workplace& w, const LogEntry& entry) {
    const auto& taps = w.job.site.taps;
    const auto found = std::find_if(taps.begin(), taps.end(), [&](const Tap& tap) {
        return tap.tempered && entry.words.ends_with(" at " + tap.name);
    });
    return found == taps.end() ? nullptr : &*found;
}

bool tempered_as_due(const Workplace& w, const LogEntry& entry, const Observation& seen) {
    const Tap* tap = tempered_tap_of(w, entry);
    const bool burning = seen.condition.phase == controller::Phase::run;
    return tap != nullptr && burning && is_due(w, *tap, seen.value);
}

bool is_category(const Observation& seen, std::size_t category) {
    return static_cast<std::size_t>(seen.value) == category;
}

bool fan_blows(const Observation& seen) {
    using controller::Phase;
    const Phase phase = seen.condition.phase;
    return phase == Phase::pre_purge || phase == Phase::run || phase == Phase::post_purge;
}

bool blown_and_steady(const LogEntry& entry, const Observation& pressure) {
    return fan_blows(pressure) && pressure.value >= least_blown_pa &&
           std::any_of(entry.observations.begin(), entry.observations.end(), [](const auto& seen) {
               return seen.quantity == Quantity::air_tube_needle &&
                      is_category(seen, needle_steady);
           });
}

/// Does the reading show the repair as it ought to be?
bool shows_it_right(const Workplace& w, const LogEntry& entry, const Observation& seen) {
    switch (seen.quantity) {
        case Quantity::limiter_leads:
            return is_category(seen, 0);  // as made
        case Quantity::casing_wet:
            return is_category(seen, case_dry);
        case Quantity::companion_front:
            return is_category(seen, companion_fires);
        case Quantity::air_tube_pressure:
            return blown_and_steady(entry, seen);
        case Quantity::readout_ambient:
            return std::abs(seen.value - w.job.site.ambient_k) <= near_air_k;
        case Quantity::water_pressure:
            return seen.value < w.heater.plant.parameters.relief_opens_pa;
        default:
            return tempered_as_due(w, entry, seen);
    }
}

enum class Proved { not_looked, not_right, right };

/// A companion waits at a small draw and fires at a large one, and each tap has its own water: one right reading
/// is enough. Of what stays as it is the latest counts.
Proved proved_since(const Workplace& w, const RepairProof& proof, std::int64_t tick) {
    const bool once = proof.reading == Quantity::companion_front ||
                      proof.reading == Quantity::tap_temperature ||
                      proof.reading == Quantity::air_tube_pressure;
    Proved proved = Proved::not_looked;
    for (const LogEntry& entry : w.log) {
        if (proof.reading == Quantity::tap_temperature && tempered_tap_of(w, entry) == nullptr)
            continue;
        for (const Observation& seen : entry.observations) {
            if (seen.quantity != proof.reading || seen.tick < tick) continue;
            if (once && proved == Proved::right) continue;
            proved = shows_it_right(w, entry, seen) ? Proved::right : Proved::not_right;
        }
    }
    return proved;
}

}  // namespace

const RepairProof* own_proof(Remedy remedy) {
    const auto found = std::find_if(proofs.begin(), proofs.end(),
                                    [&](const RepairProof& one) { return one.remedy == remedy; });
    return found == proofs.end() ? nullptr : &*found;
}

const Observation* latest_since(const Workplace& w, Quantity quantity, std::int64_t tick) {
    const Observation* latest = nullptr;
    for (const LogEntry& entry : w.log)
        for (const Observation& seen : entry.observations)
            if (seen.quantity == quantity && seen.tick >= tick) latest = &seen;
    return latest;
}

void judge_repair_proof(Workplace& w) {
    if (made_safe(w)) return;
    std::string text;
    for (const auto& entry : w.log) {
        if (entry.kind != LogEntry::Kind::remedy || entry.remedy < 0) continue;
        const RepairProof* proof = own_proof(static_cast<Remedy>(entry.remedy));
        if (proof == nullptr) continue;
        const Proved proved = proved_since(w, *proof, entry.end_tick);
        if (proved == Proved::right) continue;
        const bool looked = proved == Proved::not_right;
        text += (text.empty() ? "After \"" : "; after \"") + entry.words +
                (looked ? "\" it was not as it should be at \"" : "\" nobody did \"") +
                std::string(proof->sentence) + "\"";
    }
    if (!text.empty()) w.breach("not_proved", text + ".");
}

}  // namespace emberpath::worksite
