// What proves a repair beside hot water and a clear display: a reading of its own, taken after it.

#include <algorithm>
#include <array>

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

/// Behind the tempering valve: what another tap gives says nothing of it.
bool is_at_tempered_tap(const Workplace& w, const LogEntry& entry) {
    const auto& taps = w.job.site.taps;
    return std::any_of(taps.begin(), taps.end(), [&](const Tap& tap) {
        return tap.tempered && entry.words.ends_with(" at " + tap.name);
    });
}

bool proved_since(const Workplace& w, const RepairProof& proof, std::int64_t tick) {
    if (proof.remedy != Remedy::replace_tempering_valve)
        return latest_since(w, proof.reading, tick) != nullptr;
    return std::any_of(w.log.begin(), w.log.end(), [&](const LogEntry& entry) {
        const auto& seen = entry.observations;
        return is_at_tempered_tap(w, entry) &&
               std::any_of(seen.begin(), seen.end(), [&](const Observation& one) {
                   return one.quantity == proof.reading && one.tick >= tick;
               });
    });
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
        if (proof == nullptr || proved_since(w, *proof, entry.end_tick)) continue;
        text += (text.empty() ? "After \"" : "; after \"") + entry.words + "\" nobody did \"" +
                std::string(proof->sentence) + "\"";
    }
    if (!text.empty()) w.breach("not_proved", text + ".");
}

}  // namespace emberpath::worksite
