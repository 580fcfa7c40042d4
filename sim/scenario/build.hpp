#pragma once
/// From what the files say to what the simulation needs, with every check of one key against another.

#include "sim/scenario/problems.hpp"
#include "sim/scenario/values.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::scenario {

/// Taps, appliances, services and weather. Events are left to make_events.
///
/// A tap's conductance follows from its flow through the sound heater with the water valve wide open:
/// Equation  1 / G^2 = p / Q^2 - R, R the losses of street, heater and delivery pipe, p = 400 kPa
[[nodiscard]] worksite::Site make_site(const Values& site, Problems& problems);

/// The household's events in order of time, closing events of `lasts` included.
[[nodiscard]] std::vector<worksite::HouseholdEvent> make_events(const Values& site,
                                                                Problems& problems);

/// The parts of a job that depend on the heater.
struct HeaterParts {
    plant::PlantParameters parameters;
    controller::Settings settings;
};

/// Heater of its gas. The injectors follow from rated heat input and burner pressure:
/// Equation  area ~ heat input / sqrt(pressure), from the generic heater of that gas
[[nodiscard]] HeaterParts make_heater(const Values& heater, Problems& problems);

/// Wall controllers of the site on a heater that takes them; the settings listen to all that are fitted.
void fit_wall_controllers(const Values& site, const Values& heater, worksite::Job& job,
                          Problems& problems);

/// The services of the site in the plant parameters: pressures, gas pipe, cylinder.
/// Equation  pipe resistance = drop / q^2, q = full heat input / gross calorific value
void apply_site(const Values& site, HeaterParts& heater, Problems& problems);

/// Limits, licences and the usual licence. `site` says who lives there.
[[nodiscard]] worksite::Practice make_practice(const Values& site, const Values& rules,
                                               Problems& problems);

/// A number that has to be a whole one; anything else is reported, with what was `expected`.
[[nodiscard]] int whole_number(const Item& item, const std::string& key,
                               const std::string& expected, Problems& problems);

/// A date of the calendar; anything else is reported. Empty where the key is not there or not good.
[[nodiscard]] std::string date_of(const Values& values, const char* key, Problems& problems);

/// Date of the visit and instruments that are not as they should be.
[[nodiscard]] worksite::Kit make_kit(const Values& job, Problems& problems);

/// What the release check found; nothing where it never ran.
[[nodiscard]] worksite::ReleaseCheck make_release_check(const Values& job, Problems& problems);

/// What else is dangerous at the house.
[[nodiscard]] worksite::Dangers make_dangers(const Values& site, Problems& problems);

[[nodiscard]] worksite::Customer make_customer(const Values& customer);

/// Faults with severity in range, right gas, begun before arrival, each once.
[[nodiscard]] std::vector<faults::Fault> make_faults(const Values& job, const Values* site,
                                                     Problems& problems);

/// Accepted but without effect is an error: a cause that cannot act at the site, a time course that never
/// reaches the range of the cause. After everything else of the job has been made.
void check_faults_act(const Values& all, const worksite::Job& job, Problems& problems);

/// The set point of the job and of every event must be one the heater offers.
void check_set_points(const Values& job, const Values& site, const controller::Settings& settings,
                      Problems& problems);

/// The heater must be made for the gas of the house; reported where the job chose the heater.
void check_gas(const Values& site, const Values& heater, const Position& chosen,
               Problems& problems);

[[nodiscard]] bool burns_propane(const Values& site_or_heater);

}  // namespace emberpath::scenario
