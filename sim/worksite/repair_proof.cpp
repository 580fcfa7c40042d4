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
};

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
        if (proof == nullptr || latest_since(w, proof->reading, entry.end_tick) != nullptr)
            continue;
        text += (text.empty() ? "After \"" : "; after \"") + entry.words + "\" nobody did \"" +
                std::string(proof->sentence) + "\"";
    }
    if (!text.empty()) w.breach("not_proved", text + ".");
}

}  // namespace emberpath::worksite
