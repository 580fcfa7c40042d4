#pragma once
/// A job as the simulation knows it: the site, the heater, the hidden faults, the history before arrival.
/// The scenario loader makes it from TOML; the trainee's side never sees Job::faults.

#include <array>
#include <map>
#include <string>
#include <vector>

#include "sim/controller/controller.hpp"
#include "sim/faults/faults.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/worksite/dangers.hpp"
#include "sim/worksite/kit.hpp"
#include "sim/worksite/practice.hpp"

namespace emberpath::worksite {

enum class GasKind { natural_gas, propane_cylinder };

struct Tap {
    std::string name;          // "kitchen tap": how acts call it
    double conductance = 0.0;  // fully open [m3/s per sqrt(Pa)]
    bool mixes_cold = false;   // a mixer that the household sets to blend
    bool washing = false;      // people wash at it: the delivery limit of the rules holds
    double height_m = 0.0;     // above the heater, 0 to 12
    bool tempered = false;     // behind the tempering valve
};

struct Appliance {              // another gas appliance
    std::string name;           // "cooktop"
    double gas_m3_per_s = 0.0;  // at nominal pressure
};

struct Window {         // or a door, between the heater's room and outdoors
    std::string name;   // "laundry window"
    double gain = 0.0;  // when open [m3/s per sqrt(Pa)]
    bool open = false;  // as the household leaves it
};

struct ExtractionFan {  // draws air out of the heater's room
    std::string name;   // "rangehood"
    double flow_m3_per_s = 0.0;
    bool on = false;  // as the household leaves it
};

/// Household events before arrival and while the trainee works ("neighbour showers at 10 min").
struct HouseholdEvent {
    enum class Kind { tap, appliance, cold_draw, set_point, wind, reset, window, fan, rain };
    double at_s = 0.0;  // site time; 0 is the start of the simulated history
    Kind kind = Kind::tap;
    std::size_t index = 0;  // which tap, appliance, window or fan
    double value = 0.0;     // opening 0..1, on 0/1, m3/s, K, Pa
};

/// What the household noticed during the history; computed from physics, then compared with what the
/// scenario says (a complaint must never contradict the plant).
enum class Complaint {
    none,
    no_hot_water,
    not_hot_enough,
    too_hot,
    goes_cold_after_a_while,
    drops_out_now_and_then
};
inline constexpr std::size_t complaint_count = 6;

struct Site {
    std::string name;  // "8 Tanager Court": invented
    GasKind gas = GasKind::natural_gas;
    double mains_water_pa = 400.0e3;
    double inlet_water_k = 287.15;
    double ambient_k = 288.15;
    double outdoor_k = 288.15;
    double altitude_m = 0.0;  // of the house; the heater's setting is the nearest step
    double wind_pa = 0.0;
    double visit_s = 36000.0;    // time of day at the arrival, since midnight
    bool rain = false;           // as the history begins
    double damp = 0.5;           // of the air at the heater while it is dry, 0 to 1
    double gust_period_s = 8.0;  // common gust pattern: seeded jitter around this period
    std::vector<Tap> taps;
    std::vector<Appliance> appliances;
    std::vector<Window> windows;
    std::vector<ExtractionFan> fans;
    std::vector<std::string>
        wall_controllers;  // "bathroom controller"; the panel holds their state
    std::vector<HouseholdEvent> events;
    double arrival_s = 0.0;  // length of the simulated history
    Dangers dangers;         // beside the heater's own fault
};

/// May services be shut off? Given: nobody needs to ask. A danger that is known needs no consent.
enum class Consent { given, when_asked, after_reasons, never };

struct Customer {
    Consent agrees = Consent::given;
    bool tenant = false;                         // the heater belongs to somebody else
    std::string words;                           // the complaint, as spoken
    Complaint complaint = Complaint::none;       // the kind it is
    std::map<std::string, std::string> answers;  // topic -> what they say when asked
};

/// What the release check found when this cause was put into other houses: written into the job by its author.
struct ReleaseCheck {
    std::string checked_on;  // "2026-11-29"; empty: never checked
    int houses = 0;          // other houses it was tried in
    int shown = 0;           // those in which the cause showed itself
    std::string refused;     // any other reason against scoring by it; empty: none
    std::string of{};        // fingerprint of the files that were checked
    bool outdated = false;   // they are others now
};

struct Job {
    std::string name;             // file stem: "tanager"
    std::string title;            // "Job 1: 8 Tanager Court"
    std::string call_out;         // one line on the job card
    double time_allowed_s = 0.0;  // on site, when assessed; 0: as long as it takes
    Site site;
    Customer customer;
    Kit kit;                         // instruments that are not as they should be
    Practice practice;               // limits of the place, licence of the person at work
    plant::PlantParameters healthy;  // the sound house
    controller::Settings settings;
    controller::Panel panel;  // set point as the household left it
    std::vector<faults::Fault> faults;
    faults::Remedy intended = faults::Remedy::explain_to_customer;  // class of the first fault
    ReleaseCheck release;
};

/// What the house has that some causes need: decides which can act there and which shadows it gets.
[[nodiscard]] faults::SiteTraits traits_of(const Job& job);

}  // namespace emberpath::worksite
