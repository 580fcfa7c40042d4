#include <nlohmann/json.hpp>

#include "sim/records/debrief.hpp"

namespace emberpath::records {

namespace {

using Json = nlohmann::ordered_json;

Json unsafe_acts(const Debrief& debrief) {
    Json list = Json::array();
    for (const auto& unsafe : debrief.unsafe_acts)
        list.push_back({{"time", unsafe.time},
                        {"act", unsafe.act},
                        {"text", unsafe.text},
                        {"critical", unsafe.critical}});
    return list;
}

Json areas(const Debrief& debrief) {
    Json list = Json::array();
    for (const auto& area : debrief.areas)
        list.push_back({{"area", area.word},
                        {"scored", area.scored},
                        {"score", area.scored ? Json(area.score) : Json(nullptr)},
                        {"low", area.scored ? Json(area.low) : Json(nullptr)},
                        {"high", area.scored ? Json(area.high) : Json(nullptr)},
                        {"reason", area.reason}});
    return list;
}

Json lost(const Debrief& debrief) {
    Json list = Json::array();
    for (const auto& one : debrief.lost)
        list.push_back({{"area", one.area},
                        {"points", one.points},
                        {"time", one.time},
                        {"act", one.act},
                        {"missing", one.missing},
                        {"reason", one.reason}});
    return list;
}

Json inputs(const Debrief& debrief) {
    Json list = Json::array();
    for (const auto& one : debrief.inputs)
        list.push_back({{"reading", one.number},
                        {"title", one.title},
                        {"condition", one.condition},
                        {"yours", one.shown},
                        {"expected", one.under},
                        {"weight", one.weight}});
    return list;
}

Json acts(const Debrief& debrief) {
    Json list = Json::array();
    for (const auto& act : debrief.acts)
        list.push_back({{"time", act.time},
                        {"act", act.sentence},
                        {"showed", act.value},
                        {"ruled_out", act.ruled_out},
                        {"gave_evidence", act.weighed},
                        {"bits", act.bits},
                        {"best_reading_then", act.better}});
    return list;
}

Json stands(const Debrief& debrief) {
    Json list = Json::array();
    for (const auto& stand : debrief.stands)
        list.push_back({{"time", stand.time},
                        {"after", stand.after},
                        {"shares", stand.shares},
                        {"others", stand.others}});
    return {{"causes", debrief.leading}, {"after_each_reading", list}};
}

Json readings(const Debrief& debrief) {
    Json list = Json::array();
    for (const auto& reading : debrief.readings) {
        Json cells = Json::array();
        for (std::size_t i = 0; i < reading.cells.size(); ++i)
            cells.push_back({{"cause", debrief.columns[i]},
                             {"value", reading.cells[i].value},
                             {"ruled_out", reading.cells[i].ruled_out}});
        list.push_back({{"number", reading.number},
                        {"title", reading.title},
                        {"yours", reading.shown},
                        {"same_under_every_cause", reading.same_everywhere},
                        {"under_other_causes", cells}});
    }
    return list;
}

// An area that is not scored has no figure.
Json overall(const Debrief& debrief) {
    return debrief.overall_scored ? Json(debrief.overall) : Json(nullptr);
}

}  // namespace

std::string to_json(const Debrief& debrief) {
    Json proof = Json::object();
    for (const auto& item : debrief.proof) proof[item.name] = item.value;
    const Json whole = {{"debrief", debrief.title},
                        {"call_out", debrief.call_out},
                        {"mode", debrief.mode},
                        {"time_on_site", debrief.time_on_site},
                        {"outcome", debrief.outcome},
                        {"unsafe_acts", unsafe_acts(debrief)},
                        {"distance_to_harm", debrief.doses},
                        {"day_after", debrief.day_after},
                        {"areas", areas(debrief)},
                        {"overall", overall(debrief)},
                        {"gates_met", debrief.gates_met},
                        {"gates", debrief.gates},
                        {"overall_low", debrief.overall_low},
                        {"overall_high", debrief.overall_high},
                        {"proposal", debrief.proposal},
                        {"decision", "by a person"},
                        {"decisions", debrief.decisions},
                        {"lost", lost(debrief)},
                        {"cost_most", debrief.moments},
                        {"still_open", debrief.open},
                        {"reference_path", debrief.reference},
                        {"for_assessor", debrief.for_assessor},
                        {"weighed", inputs(debrief)},
                        {"acts", acts(debrief)},
                        {"causes_stood", stands(debrief)},
                        {"readings", readings(debrief)},
                        {"against_the_cause", debrief.against},
                        {"limits", debrief.limits},
                        {"proof", proof}};
    return whole.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace emberpath::records
