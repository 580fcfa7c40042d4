// Site skills: remedies, proof and handover.

#include <algorithm>
#include <cmath>

#include "sim/trainees/hands.hpp"
#include "sim/worksite/acts.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::trainees {

namespace {

using faults::Remedy;
using worksite::Quantity;

constexpr double near_set_k = 2.5;
constexpr double hottest_set_k = 273.15 + 54.0;  // above it, somebody could be scalded
constexpr std::size_t most_reasons = 6;

constexpr int most_listed = 5;  // words behind the list key

}  // namespace

void Hands::remedy(Remedy remedy) {
    const std::string sentence = worksite::sentence_of(remedy, visit_.job().site.gas);
    running_proved_ = proved_ = false;
    close_taps();
    mode_ = 0;
    look_around();
    if (leaves_terminal_alone(remedy)) return;
    if (remedy == Remedy::set_manifold_pressure) return set_manifold(sentence);
    const faults::RemedyInfo& info = faults::info(remedy);
    if (info.reach == faults::Reach::inside) {
        open_up();
    } else {
        if (cover_off_) close_up();
        if (info.reach == faults::Reach::outside && info.touches_flame) isolate();
    }
    if (remedy == Remedy::correct_settings) wake_readout();  // they are stored at the panel
    if (info.needs_glasses && !glasses_) say("put on glasses");
    if (info.joint != faults::GasJoint::none) {
        if (care_.leak_test && care_.leak_test_before) say("leak test with fluid");
        shut_gas();
    }
    const bool bridge = care_.isolate && worksite::parted_by(remedy) != worksite::Parted::nothing;
    if (bridge) say("fit bridging conductor");
    const bool water = care_.isolate && worksite::opens_water_side(remedy);
    if (water) {
        say("shut water at heater");
        say("drain heater");
    }
    say(sentence);
    // The water of the largest tap is measured when it is seen whether the heater serves (works()).
    const bool at_a_tap_later = remedy == Remedy::replace_tempering_valve;
    const auto* proof = care_.prove_work && !at_a_tap_later ? worksite::own_proof(remedy) : nullptr;
    const bool at_panel = proof != nullptr && remedy == Remedy::replace_ambient_sensor;
    if (proof != nullptr && !at_panel) say(std::string(proof->sentence));
    if (bridge) say("take bridging conductor off");
    open_gas();
    if (care_.isolate && worksite::air_let_in_m3(remedy) > 0.0) say("purge gas pipe");
    if (water) say("open water at heater");
    if (water && remedy == Remedy::descale_exchanger) say("flush heater");
    if (care_.prove_dead && remedy == Remedy::dry_and_reseal) test_wiring();
    close_up();
    if (at_panel) {
        wake_readout();
        say(std::string(proof->sentence));
    }
}

/// By the manometer, with the burner running and the cover off; then closed as it was opened.
void Hands::set_manifold(const std::string& sentence) {
    manometer_away();
    open_up();
    if (care_.leak_test) say("leak test with fluid");
    shut_gas();
    say("open test point manifold");
    say("zero manometer");
    say("attach manometer to manifold");
    open_gas();
    power_back();
    say("wait 10 s");
    open_ = {largest_tap().name};
    say("open " + open_.front());
    say("wait 30 s");
    say(sentence);
    open_up();
    manometer_away();
    close_up();
}

/// Insulation with the plug out, the earth path with the plug in and the switch off.
void Hands::test_wiring() {
    say("test insulation between heater active and casing");
    if (locked_) say("unlock plug");
    if (unplugged_) say("plug in heater");
    say("measure ohms between casing and earth bar");
}

// Hot at the set point and burning at a full draw of the largest tap, else at half of it: there is a limit
// to what any heater can do.
bool Hands::works() {
    if (out_of_use_) return false;
    close_up();
    if (latest(Quantity::switchboard) != nullptr && latest_word(Quantity::switchboard) != "all on")
        say("close safety switch");
    open_gas();
    close_taps();
    mode_ = 0;
    if (shows(reset(), "wants a restart")) restart();
    const std::string tap = largest_tap().name;
    open_ = {tap};
    bool hot = false;
    for (const char* opening : {"", " halfway", " a little"}) {
        say("open " + tap + opening);
        say("wait 75 s");
        say("look at display");
        if (visit_.job().settings.companion > 0.5) say("look at companion heater");
        at_a_tap("temperature");
        const auto* seen = latest(Quantity::tap_temperature);
        hot = seen != nullptr && std::abs(seen->value - set_point_k_) <= near_set_k;
        hot_at_full_ = hot && *opening == '\0';
        if (hot) break;
    }
    running_proved_ = true;
    return hot && latest_word(Quantity::display_word) == "HEAT";
}

// The heater proves fan, air and a dark burner for a minute before it serves again.
void Hands::restart() {
    for (int i = 0; i < most_listed; ++i)
        if (shows(say("press list"), "WAKE")) break;
    say("press take");
    say("press take");
    say("wait 70 s");
}

// "Bubbles at the inlet test point.": shut, undo, seal, and test again.
void Hands::remake(const worksite::LogEntry& bubbles) {
    const auto& lines = bubbles.shown;
    std::vector<std::string> weeping;
    for (const char* joint :
         {"inlet test", "manifold", "regulator", "cylinder", "burner", "inlet union"})
        for (const auto& line : lines)
            if (line.find(std::string("Bubbles at the ") + joint) != std::string::npos)
                weeping.emplace_back(joint == std::string_view("inlet test") ? "inlet" : joint);
    close_taps();
    say("shut gas at " + supply());
    bool air_got_in = false;
    for (const auto& joint : weeping) {
        air_got_in = air_got_in || joint == "cylinder" || joint == "inlet union";
        if (joint == "burner" || joint == "manifold") open_up();
        const bool bridge = care_.isolate && joint == "inlet union";
        if (bridge) say("fit bridging conductor");
        say("remake joint " + joint);
        if (bridge) say("take bridging conductor off");
    }
    open_gas();
    if (air_got_in && care_.isolate) say("purge gas pipe");
    close_up();
}

// With the burner running every joint stands under pressure.
void Hands::prove_joints() {
    for (int i = 0; i < most_joint_repairs; ++i) {
        const auto* entry = say("leak test with fluid");
        if (!shows(entry, "Bubbles")) {
            if (i > 0)
                works();  // what was proved before the joints were undone is to be proved again
            return;
        }
        remake(*entry);
        reset();
        open_ = {largest_tap().name};
        say("open " + open_.front());
        say("wait 60 s");
    }
}

void Hands::prove_combustion() {
    if (analyser_tick_ < 0) say("switch on analyser");
    if (visit_.tick() - analyser_tick_ < 600) say("wait 60 s");
    if (!probe_in_) say("put probe in flue");
    const auto* entry = say("combustion test");
    bool bad = false;
    if (entry != nullptr) {
        const auto& seen = entry->observations;
        for (std::size_t i = 0; i + 1 < seen.size(); ++i)
            bad =
                bad || (seen[i].quantity == Quantity::flue_co2 &&
                        seen[i + 1].value > visit_.job().practice.limits.co_ratio * seen[i].value);
    }
    say("take probe out");
    burns_badly_ = bad;
}

/// Who will not sign will not heed it, and who rents the heater does not own it.
void Hands::give_notice() {
    const bool refused = shows(say("issue unsafe notice"), "will not sign");
    if (!care_.tell) return;
    if (refused) say("escalate to technical regulator");
    if (visit_.job().customer.tenant) say("escalate to owner");
    if (old_sheet_) say("escalate to asbestos assessor");
}

void Hands::make_safe() {
    say("shut gas at " + supply());
    say("tag heater");
    give_notice();
}

void Hands::take_out_of_use() {
    manometer_away();
    move_cylinder();
    if (joints_touched_ && care_.leak_test) prove_joints();
    close_taps();
    if (cover_off_) say("refit cover");
    isolate();
    if (!gas_shut_) say("shut gas at heater");
    say("tag heater");
    give_notice();
    out_of_use_ = true;
}

void Hands::write(const Story& story) {
    const auto* info = &faults::info(story.cause);
    say("write cause " + std::string(info->word));
    if (story.also) say("write also cause " + std::string(faults::info(*story.also).word));
    for (const faults::Cause one : story.possible)
        say("write possible cause " + std::string(faults::info(one).word));
    std::string numbers;
    std::size_t count = 0;
    const auto& log = visit_.log();
    for (auto entry = log.begin(); entry != log.end() && count < most_reasons; ++entry)
        for (const auto& seen : entry->observations)
            if (seen.number > 0 && count++ < most_reasons)
                numbers += " #" + std::to_string(seen.number);
    if (!numbers.empty()) say("write because" + numbers);
    say("write done " + story.done);
    say("write told " + story.told);
}

void Hands::hand_over(const Story& story) {
    if (!out_of_use_ && !proved_) prove_and_put_back();
    if (burns_badly_ || (scorched_ && !out_of_use_)) make_safe();
    if (probe_in_) say("take probe out");
    if (care_.tell) say("tell customer what was found and what was done");
    write(story);
    say("hand in");
}

bool Hands::prove() {
    if (out_of_use_) return true;
    prove_and_put_back();
    return !burns_badly_;
}

void Hands::prove_and_put_back() {
    proved_ = true;
    manometer_away();
    close_up();
    open_gas();
    move_cylinder();
    if (probe_in_) say("take probe out");
    mode_ = 0;
    if (care_.prove_work && set_point_k_ > hottest_set_k) {
        say("set temperature to 50 °C");
        set_point_k_ = 273.15 + 50.0;
        running_proved_ = false;  // not as it is left
    }
    if (care_.prove_work && (!running_proved_ || open_.empty())) {
        works();
        // What will not burn until somebody else has done his part stays off, with a tag that says so.
        if (care_.isolate && latest_word(Quantity::display_word) != "HEAT")
            return take_out_of_use();
    }
    if (care_.leak_test && (joints_touched_ || care_.prove_work)) prove_joints();
    close_taps();
    if (!care_.prove_work) return;
    prove_combustion();
    test_draught();
    burns_badly_ = burns_badly_ || latest_word(Quantity::diverter_smoke) == "blown out";
}

}  // namespace emberpath::trainees
