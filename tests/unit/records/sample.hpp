#pragma once
/// A small attempt made by hand, for tests that need no simulation.

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "sim/records/debrief.hpp"

namespace emberpath::records::sample {

/// A folder of its own for one test, removed at the end.
class Folder {
  public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "emberpath-XXXXXX").string();
        path_ = ::mkdtemp(name.data());
    }
    ~Folder() { std::filesystem::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] std::filesystem::path file(const std::string& name) const { return path_ / name; }

  private:
    std::filesystem::path path_;
};

inline std::string contents(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

inline void write(const std::filesystem::path& file, const std::string& text) {
    std::ofstream(file, std::ios::binary | std::ios::trunc) << text;
}

inline Header header() {
    Header made;
    made.job = "tanager";
    made.scenario_hash = "00112233445566ff";
    made.seed = 18446744073709551615U;
    made.mode = worksite::Mode::assessed;
    return made;
}

inline worksite::LogEntry entry(std::int64_t end_tick, int number, double value) {
    worksite::LogEntry made;
    made.end_tick = end_tick;
    made.shown = {"a line with \"quotes\", µ and ° in it"};
    worksite::Observation seen;
    seen.number = number;
    seen.quantity = worksite::Quantity::gas_inlet_pressure;
    seen.value = value;
    made.observations = {seen};
    return made;
}

inline scoring::Assessment assessment() {
    scoring::Assessment made;
    made.areas = {{"safe work", 100.0, "Nothing was put at risk.", 100.0, 100.0, true, {}},
                  {"evidence", 93.25, "The readings left one cause.", 91.5, 95.0, true, {}},
                  {"path", 1.0 / 3.0, "The second reading told nothing new.", 0.25, 0.5, true, {}},
                  {"remedy", 0.0, {}, 0.0, 0.0, false, "nothing was changed"},
                  {"proof", 87.5, "No flow test after the cure.", 87.5, 87.5, true, {}}};
    made.overall = 90.125;
    made.gates_met = true;
    made.proposal = "The evidence supports the write-up.";
    made.true_cause = "Gas pipe too small";
    made.true_class_probability = 0.9712;
    made.fixed = true;
    return made;
}

/// Two acts, closed.
inline std::filesystem::path closed_record(const Folder& folder) {
    const auto file = folder.file("sample.jsonl");
    Writer writer(file, header());
    writer.begin_act(6000, "read the manometer");
    writer.end_act(entry(6200, 1, 1234.5678901234567), 0x0123456789abcdefU);
    writer.begin_act(6300, "hand in");
    writer.end_act(entry(6310, 0, -0.0), 7);
    writer.close(assessment(),
                 {{"Hot water was drawn 5 times: 5 hot enough."}, "0123456789abcdef"});
    return file;
}

/// A debrief with something in every part, and hard cases: markup, many causes, long words.
inline Debrief full_debrief() {
    Debrief made;
    made.title = "Job 1: 8 Tanager Court";
    made.call_out = "Shower goes cold <sometimes> & \"always\" at night.";
    made.mode = "coached";
    made.time_on_site = "31:00";
    made.outcome = {"Put right, and the readings show why.", "What it was: gas pipe too small."};
    made.unsafe_acts = {{"12:30", "open the cover", "The cover came off with 230 V inside.", true},
                        {"14:00", "wait 5 min", "Nobody was told.", false}};
    made.areas = {{"safe work", 45.2, true, "The cover came off live."},
                  {"evidence", 98.7, true, "One cause is left."},
                  {"path", 96.0, true, "No detour."},
                  {"remedy", 0.0, false, "not scored: nothing was changed"},
                  {"proof", 45.0, true, "No leak test."}};
    made.overall = 64.52;
    made.gates = "Safety gates not met: one act broke a rule that no other merit can offset.";
    made.proposal = "A person decides. Suggested: not yet, because a gate was broken.";
    Debrief::Act act{"04:10",
                     "read the manometer",
                     "#1 0.62 kPa",
                     "larger pipe, igniter",
                     1.2249,
                     true,
                     "flame at the burner window just after a tap is opened"};
    made.lost = {{"safe work", "12:30", "open the cover", "", "The cover came off live.", 54.8},
                 {"proof", "-", "", "gas joints proved sound", "Not done: the leak test.", 55.0},
                 {"evidence", "05:00", "wait 5 min", "", "Told nothing.", 0.4},
                 {"evidence", "04:10", "read the manometer", "", "Told little.", 0.3}};
    made.decisions = {"Verdict: not yet competent, decided by a person (assessor)."};
    made.against = {"#1 by itself speaks against the cause of this house."};
    made.inputs = {{"#1",
                    "gas pressure at the heater inlet",
                    "run, settled",
                    "0.62 kPa",
                    "0.85",
                    {"0.70 kPa, ± 0.08 kPa (regulator, 75 % before; 1.00)",
                     "2.37 kPa, ± 0.07 kPa (no supply fault, 4 % before; 0.00)"}}};
    made.acts = {act, {"05:00", "wait 5 min", "", "", 0.0, false}};
    made.leading = {"gas pipe carries too little", "gas regulator", "igniter failed"};
    made.stands = {{"-", "on arrival", {0.12, 0.3, 0.31}, 0.27},
                   {"04:10", "#1 gas pressure at the heater inlet", {0.75, 0.22, 0.004}, 0.026}};
    for (int i = 0; i < 9; ++i) made.columns.push_back("remedy number " + std::to_string(i));
    Debrief::Reading reading{1, "gas pressure at the heater inlet", "0.62 kPa", {}, false};
    for (int i = 0; i < 9; ++i)
        reading.cells.push_back({std::to_string(i) + ".50 kPa", i % 2 == 0});
    made.readings = {
        reading, {2, "outlet", "14.0 °C", std::vector<Debrief::Cell>(9, {"14.0 °C", false}), true}};
    made.limits = {"Simulated evidence supports, and does not replace, workplace evidence."};
    made.proof = {{"program version", "0.1.0"}, {"seed", "1"}};
    return made;
}

}  // namespace emberpath::records::sample
