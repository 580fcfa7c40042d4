#pragma once
/// The rules of the place: limits with their date, and what each licence covers. Data of a job, read by
/// sim/scenario from scenarios/rules/*.toml; what is not written there is as here, and a test compares the
/// shipped general file with these values. Sources stand beside each value in those files.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "sim/faults/faults.hpp"

namespace emberpath::worksite {

/// Everything the simulator compares somebody's exposure or an installation with. SI; shares of volume.
struct Limits {
    double co_eight_hours = 30.0e-6;    // mean of air breathed over eight hours
    double co_hour = 60.0e-6;           // above it no more than an hour of the eight
    double co_half_hour = 100.0e-6;     // above it no more than half an hour of the eight
    double co_quarter_hour = 200.0e-6;  // above it no more than a quarter of an hour of the eight
    double co_ceiling = 400.0e-6;       // never above
    double co_ratio = 0.004;           // CO/CO2 of flue gas: above it the appliance may not be used
    double gas_in_air = 0.10;          // of the lower flammability limit: leave and air above it
    double bathroom_water_k = 323.15;  // delivered at fixtures for washing
    double care_water_k = 318.15;      // the same in homes for old or sick people and for children
    double earth_continuity_ohm = 1.0;   // of an appliance's protective earth
    double insulation_ohm = 1.0e6;       // between live parts and earth, at least
    double earth_leakage_a = 5.0e-3;     // of an appliance in use
    double rcd_trips_at_a = 30.0e-3;     // rated residual current
    double rcd_within_s = 0.3;           // break time at that current
    double rcd_within_at_two_s = 0.15;   // at twice that current
    double rcd_within_at_five_s = 0.04;  // at five times that current
    double scald_water_k = 328.15;       // at a tap, for ten seconds: a scald left behind
    double spillage = 0.05;              // of the products of combustion, into the room
    double bare_hand_metal_k = 333.15;   // hotter metal is not for bare hands
    double dangerous_v = 50.0;           // a voltage above it is one to be kept from
    double dangerous_pipe_v = 25.0;      // the same of pipes, which people hold wet
    double blood_headache = 0.10;   // share of haemoglobin that carbon monoxide holds: a headache
    double blood_unfit = 0.20;      // strong headache and dizziness: nobody works on
    double stored_charge_v = 60.0;  // direct, left in a capacitor: hands wait above it
    double leak_test_from_pa = 1000.0;  // gas held in a pipe that is proved tight, at least
    double leak_test_drop_pa = 50.0;    // what it may lose in two minutes
    double roof_stay_s = 600.0;    // in a roof space without a break; at twice of it one faints
    double ladder_height_m = 2.0;  // from here on a ladder is checked and tied
    double ladder_wind_pa = 30.0;  // stagnation pressure above which nobody goes up
    bool operator==(const Limits&) const = default;
};

/// Kinds of work beside the remedies of the catalogue that a licence may cover.
enum class Work { behind_cover, gas_joints, live_tests };
inline constexpr std::size_t work_count = 3;
[[nodiscard]] std::string_view work_word(Work work);  // as rules files spell it
/// As people read it.
[[nodiscard]] constexpr std::string_view work_title(Work work) {
    switch (work) {
        case Work::behind_cover:
            return "work behind the heater's cover";
        case Work::gas_joints:
            return "opening and making gas joints";
        case Work::live_tests:
            return "measuring on live parts";
    }
    return {};
}

/// What can stay behind so that somebody has to be told of it, beside the customer.
enum class Matter {
    live_supply,     // pipes at a voltage: the neutral of the street
    live_wiring,     // casing or neutral at a voltage: the wiring of the house
    gas_escapes,     // a joint weeps
    over_pressure,   // a regulator gives more than it is set for
    cylinder_place,  // a cylinder stands where it gets hot
    old_sheet,       // that may hold asbestos, broken or in the way
    hot_delivery,    // hotter than the limit at a fixture for washing, though a valve tempers it
    board_lost,      // the heater's board
    refused,         // what is unsafe, and the customer will have it neither shut nor mended
    out_of_use,      // a heater that was made safe and stays off
    rented,          // anything of these, where the customer does not own the heater
};
inline constexpr std::size_t matter_count = 11;
[[nodiscard]] std::string_view matter_word(Matter matter);   // as rules files spell it
[[nodiscard]] std::string_view matter_title(Matter matter);  // as people read it
/// Bodies by index of {body}, a bit each; any one of them is enough, none: nobody has to be told.
using Bodies = std::uint32_t;
[[nodiscard]] constexpr Bodies body_bit(std::size_t body) {
    return Bodies{1} << body;
}
/// As the shipped general file has it: a test compares.
[[nodiscard]] std::array<Bodies, matter_count> usual_bodies();

/// What one kind of person may do. Explaining, quoting and handing on are open to everybody.
struct Licence {
    std::string name;         // "gasfitter"
    bool supervised = false;  // only once a licensed colleague has been asked
    std::vector<std::uint8_t> remedies = std::vector<std::uint8_t>(faults::remedy_count, 1);
    std::vector<std::uint8_t> works = std::vector<std::uint8_t>(work_count, 1);
    [[nodiscard]] bool covers(faults::Remedy remedy) const;
    [[nodiscard]] bool covers(Work work) const;
};

/// Fixtures that people wash at have a lower limit where old, sick or very young people live.
enum class Dwellers { home, care };

struct Practice {
    std::string name = "general practice";
    std::string date;  // of the values
    std::string holds_in;
    Limits limits;
    std::vector<Licence> licences;
    Licence licence;  // of the person at work; the default covers everything
    Dwellers dwellers = Dwellers::home;
    std::array<Bodies, matter_count> tell = usual_bodies();
    [[nodiscard]] double delivery_limit_k() const {
        return dwellers == Dwellers::care ? limits.care_water_k : limits.bathroom_water_k;
    }
};

/// The names of all licences, in the order of the file.
[[nodiscard]] std::vector<std::string> licence_names(const Practice& practice);
/// Takes up the licence of that name. False, and nothing changed, when there is none; an empty name keeps
/// the one the rules begin with.
[[nodiscard]] bool take_licence(Practice& practice, std::string_view name);

}  // namespace emberpath::worksite
