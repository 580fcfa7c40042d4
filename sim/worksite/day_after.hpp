#pragma once
/// The day after: what the household meets once the trainee has left, simulated tick by tick on the state that
/// was left behind. The same record gives the same day, bit for bit.

#include <cstdint>
#include <string>
#include <vector>

#include "sim/worksite/job.hpp"

namespace emberpath::worksite {

class Workplace;

struct DayAfter {
    int draws = 0, hot = 0, cool = 0,
        cold = 0;    // of hot taps; judged after the first twenty seconds
    int little = 0;  // draws that gave less than 0.45 of what the open taps give alone
    int lockouts = 0, resets = 0;
    bool turned_on_again = false;          // by the household
    bool tagged = false, noticed = false;  // what said that it must stay off
    bool flash = false;                    // gas that escaped met a flame
    double most_room_co = 0.0;             // share
    double most_blood_co = 0.0;            // share, of somebody who stays in the room
    double gas_m3 = 0.0;                   // escaped
    double worst_burn =
        0.0;                 // share of a burn that blisters, in a hand held there for five seconds
    double hottest_k = 0.0;  // water where that was
    std::string hottest_at;  // tap
    double worst_wash_burn = 0.0;  // the same at a tap where people wash
    double hottest_wash_k = 0.0;
    std::string hottest_wash_at;
    bool set_back = false;      // by the household: nobody had told them why it was set lower
    double most_spilled = 0.0;  // share of the products that entered the room
    bool case_open = false;     // the cover was left off
    int thumps = 0;             // gathered gas that lit late
    double most_gas_pa = 0.0,
           governed_pa = 0.0;     // behind the regulator; as it would be at rest when sound
    double limiter_k = 0.0;       // hottest, where a limiter sits that could not open
    double most_leakage_a = 0.0;  // to earth, while the board had its supply
    bool safety_switch_opened = false;
    double tap_current_a = 0.0,
           casing_current_a = 0.0;  // most through a bare hand there, to the floor, at a draw
    std::string live_tap;           // where that was
    double flue_co_ratio = 0.0;     // worst CO/CO2 of what was burnt, meaned over twenty seconds
    std::string state;              // hash of everything, a day later
};

inline constexpr double hand_held_s = 5.0;  // a child that does not draw back at once: chosen

/// What the household does in a day: what it did before the visit, five times over; settings stay as left.
/// A household whose history holds no draw opens its first tap for three minutes each time.
[[nodiscard]] std::vector<HouseholdEvent> household_day(const Site& site, double from_s);

[[nodiscard]] DayAfter day_after(const Workplace& left);

/// In sentences, for the debrief and the record; the last one is the state.
[[nodiscard]] std::vector<std::string> lines_of(const DayAfter& day, const Limits& limits);

}  // namespace emberpath::worksite
