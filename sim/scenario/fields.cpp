#include "sim/scenario/fields.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace emberpath::scenario {

namespace {

using enum Section;
using enum Kind;
using enum units::Dimension;

// clang-format off
constexpr std::array table_of_fields{
    Field{.section = job, .name = "title", .kind = line, .fallback = required,
          .example = "Job 9: 1 Sample Street", .help = "Name of the job as the list of jobs shows it; it must not give the cause away."},
    Field{.section = job, .name = "call_out", .kind = line, .fallback = required,
          .example = "No hot water since this morning", .help = "One line on the job card."},
    Field{.section = job, .name = "set_point", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 30, .greatest = 75,
          .fallback = "50 °C", .example = "50 °C", .help = "Water temperature the household has set; within the heater's own range."},
    Field{.section = job, .name = "site", .kind = table, .holds = site, .fallback = required,
          .help = "The house: a file name, or a table that may build on a file."},
    Field{.section = job, .name = "heater", .kind = table, .holds = heater, .fallback = required,
          .help = "The appliance: a file name, or a table that may build on a file."},
    Field{.section = job, .name = "customer", .kind = table, .holds = customer, .fallback = required,
          .help = "The person at the door."},
    Field{.section = job, .name = "fault", .kind = list, .holds = fault, .fallback = required,
          .help = "What is wrong; the first one decides which remedy is intended."},

    Field{.section = customer, .name = "words", .kind = line, .fallback = required,
          .example = "It goes cold on me.", .help = "The complaint as it is spoken."},
    Field{.section = customer, .name = "complaint", .kind = word,
          .words = "no hot water|not hot enough|too hot|goes cold after a while|drops out now and then|something else",
          .fallback = required, .example = "no hot water", .help = "What kind of complaint that is; the simulated history must show it. `something else`: the water itself is hot enough."},
    Field{.section = customer, .name = "agrees", .kind = word, .words = "given|when asked|after reasons|never",
          .fallback = "when asked", .example = "after reasons", .help = "To services being shut off. `given`: nobody needs to ask; `after reasons`: once they were told why; `never`: a notice alone will not keep the heater off."},
    Field{.section = customer, .name = "answers", .kind = table, .holds = answers,
          .help = "What the customer says when asked about a topic."},

    Field{.section = answers, .name = "when", .kind = line, .example = "Since last winter.", .help = "When it began and when it happens."},
    Field{.section = answers, .name = "where", .kind = line, .example = "At every tap.", .help = "Which outlets show it."},
    Field{.section = answers, .name = "changes", .kind = line, .example = "Nothing new.", .help = "What was altered at the house lately."},
    Field{.section = answers, .name = "other appliances", .kind = line, .example = "The stove is fine.", .help = "How the other gas appliances do."},
    Field{.section = answers, .name = "smell", .kind = line, .example = "No smell of gas.", .help = "Smells, stains and noises."},
    Field{.section = answers, .name = "weather", .kind = line, .example = "No matter what weather.", .help = "Whether weather plays a part."},
    Field{.section = answers, .name = "history", .kind = line, .example = "Nobody has worked on it.", .help = "Earlier visits and repairs."},
    Field{.section = answers, .name = "safety", .kind = line, .example = "There is an alarm in the hall.", .help = "People, animals and alarms in the house."},

    Field{.section = fault, .name = "cause", .kind = Kind::cause, .fallback = required,
          .example = "flue_blocked", .help = "A word of the catalogue of causes below."},
    Field{.section = fault, .name = "severity", .kind = number, .least = -1.5, .greatest = 1.5,
          .example = "0.8", .help = "0 is none, 1 the full amount; within the cause's range; left out where a cause is either there or not."},
    Field{.section = fault, .name = "onset", .kind = quantity, .dimension = units::Dimension::time, .unit = "min", .least = 0, .greatest = 60,
          .fallback = "0 min", .example = "4 min", .help = "When it begins, counted from the start of the simulated history; not after the arrival."},
    Field{.section = fault, .name = "ramp", .kind = quantity, .dimension = units::Dimension::time, .unit = "min", .least = 0, .greatest = 240,
          .fallback = "0 min", .example = "5 min", .help = "Time from onset to full severity; 0 is a step."},
    Field{.section = fault, .name = "period", .kind = quantity, .dimension = units::Dimension::time, .unit = "min", .least = 0.1, .greatest = 60,
          .example = "6 min", .help = "Intermittent fault: it comes back every so often. Needs `present`."},
    Field{.section = fault, .name = "present", .kind = quantity, .dimension = units::Dimension::time, .unit = "min", .least = 0.05, .greatest = 60,
          .example = "2 min", .help = "Intermittent fault: for how much of each period it is there. Needs `period`."},

    Field{.section = site, .name = "builds_on", .kind = file, .example = "../sites/my-house.toml",
          .help = "A file whose keys hold where this one is silent; a list given here replaces the whole list."},
    Field{.section = site, .name = "name", .kind = line, .fallback = required,
          .example = "1 Sample Street", .help = "Address of the house; invented."},
    Field{.section = site, .name = "gas", .kind = word, .words = "natural gas|propane cylinder",
          .fallback = required, .example = "natural gas", .help = "What the house burns; the heater must be made for it."},
    Field{.section = site, .name = "arrival", .kind = quantity, .dimension = units::Dimension::time, .unit = "min", .least = 1, .greatest = 60,
          .fallback = required, .example = "12 min", .help = "Length of the simulated history before the trainee arrives."},
    Field{.section = site, .name = "mains_water_pressure", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 100, .greatest = 1000,
          .fallback = "400 kPa", .example = "400 kPa", .help = "Static pressure in the street."},
    Field{.section = site, .name = "inlet_water", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 1, .greatest = 35,
          .fallback = "14 °C", .example = "14 °C", .help = "Temperature of the cold water."},
    Field{.section = site, .name = "ambient", .kind = quantity, .dimension = temperature, .unit = "°C", .least = -15, .greatest = 45,
          .fallback = "15 °C", .example = "15 °C", .help = "Air at the heater and around the cylinder."},
    Field{.section = site, .name = "outdoor", .kind = quantity, .dimension = temperature, .unit = "°C", .least = -15, .greatest = 45,
          .example = "8 °C", .help = "Air outdoors, where the heater hangs indoors. Left out: as `ambient`."},
    Field{.section = site, .name = "flue", .kind = word, .words = "outdoor|room sealed|open flued", .fallback = "outdoor",
          .example = "open flued", .help = "How products leave: at the heater outdoors, through a balanced terminal, or up an open flue that draws its air from the room."},
    Field{.section = site, .name = "flue_height", .kind = quantity, .dimension = length, .unit = "m", .least = 1, .greatest = 10,
          .example = "3 m", .help = "Height of an open flue; open flued only. Left out: 3 m."},
    Field{.section = site, .name = "room_volume", .kind = quantity, .dimension = volume, .unit = "m3", .least = 3, .greatest = 500,
          .example = "30 m3", .help = "Space around the heater, or around its terminal. Left out: 30 m3."},
    Field{.section = site, .name = "room_ventilation", .kind = quantity, .dimension = volume_flow, .unit = "m3/h", .least = 0, .greatest = 2000,
          .example = "15 m3/h", .help = "Air that this space exchanges with all windows shut. Left out: half its volume an hour."},
    Field{.section = site, .name = "tempering", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 30, .greatest = 60,
          .example = "50 °C", .help = "What the tempering valve is set to, at taps that are `tempered`. Left out: 50 °C."},
    Field{.section = site, .name = "night_rise", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 0, .greatest = 600,
          .example = "250 kPa", .help = "Rise of the street pressure at night, when little water is drawn. Left out: none."},
    Field{.section = site, .name = "pressure_limit", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 200, .greatest = 1000,
          .example = "500 kPa", .help = "Pressure limiting valve at the meter. Left out: there is none."},
    Field{.section = site, .name = "visit", .kind = quantity, .dimension = units::Dimension::time, .unit = "h", .least = 0, .greatest = 24,
          .fallback = "10 h", .example = "10 h", .help = "Time of day at the arrival, since midnight. The night lasts from half past eleven to five, with an hour and a half to begin and to end."},
    Field{.section = site, .name = "rain", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: it rains when the history begins; the air at the heater is then nearly saturated."},
    Field{.section = site, .name = "damp", .kind = quantity, .dimension = share, .unit = "%", .least = 0, .greatest = 100,
          .fallback = "50 %", .example = "50 %", .help = "Dampness of the air at the heater while it does not rain."},
    Field{.section = site, .name = "cylinders", .kind = word, .words = "one|pair", .fallback = "one",
          .example = "pair", .help = "pair: two cylinders of 45 kg behind an automatic changeover with a lever; cylinder sites only."},
    Field{.section = site, .name = "reserve_contents", .kind = quantity, .dimension = mass, .unit = "kg", .least = 0.1, .greatest = 45,
          .example = "45 kg", .help = "Propane in the second cylinder of a pair when the history begins. Left out: 45 kg."},
    Field{.section = site, .name = "second_supply", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: a battery inverter feeds the heater's circuit as well; it has a switch of its own at the switchboard."},
    Field{.section = site, .name = "wind", .kind = quantity, .dimension = pressure, .unit = "Pa", .least = -30, .greatest = 60,
          .fallback = "0 Pa", .example = "5 Pa", .help = "Steady wind pressure on the flue terminal; positive pushes against the flow."},
    Field{.section = site, .name = "gust_period", .kind = quantity, .dimension = units::Dimension::time, .unit = "s", .least = 3, .greatest = 60,
          .fallback = "8 s", .example = "8 s", .help = "Mean time from gust to gust, where gusts reach the flue."},
    Field{.section = site, .name = "lock_up_pressure", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 0.5, .greatest = 7,
          .example = "2.35 kPa", .help = "Gas pressure with no flow. Left out: 2.35 kPa natural gas, 3.40 kPa propane."},
    Field{.section = site, .name = "no_load_pressure", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 0.5, .greatest = 7,
          .example = "2.05 kPa", .help = "Regulator outlet, its straight line drawn back to no flow; not above lock-up. Left out: 2.05 kPa natural gas, 3.00 kPa propane."},
    Field{.section = site, .name = "pipe_drop", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 0.005, .greatest = 0.3,
          .example = "0.12 kPa", .help = "Pressure the sound gas pipe loses from regulator to heater at the heater's full heat input. Left out: 0.12 kPa natural gas, 0.11 kPa propane."},
    Field{.section = site, .name = "upstream_pressure", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 4, .greatest = 500,
          .example = "7.5 kPa", .help = "Gas mains before the regulator; natural gas only. Left out: 7.5 kPa."},
    Field{.section = site, .name = "cylinder_size", .kind = quantity, .dimension = mass, .unit = "kg", .least = 4, .greatest = 250,
          .example = "45 kg", .help = "Propane when full; cylinder sites only. Left out: 45 kg."},
    Field{.section = site, .name = "cylinder_contents", .kind = quantity, .dimension = mass, .unit = "kg", .least = 0.1, .greatest = 250,
          .example = "30 kg", .help = "Propane when the history begins; cylinder sites only, not above the size. Left out: 30 kg."},
    Field{.section = site, .name = "rules", .kind = table, .holds = rules,
          .help = "Limits and licences that hold there: a file name, or a table that may build on a file. Left out: the values of general.toml, and a licence that covers everything."},
    Field{.section = site, .name = "dwellers", .kind = word, .words = "home|care", .fallback = "home",
          .example = "care", .help = "care: old, sick or very young people live there."},
    Field{.section = site, .name = "tap", .kind = list, .holds = tap, .fallback = required,
          .help = "Hot water outlets; at least one."},
    Field{.section = site, .name = "appliance", .kind = list, .holds = appliance,
          .help = "Other gas appliances of the house."},
    Field{.section = site, .name = "wall_controller", .kind = list, .holds = wall_controller,
          .help = "Wall temperature controllers on the heater's link cable; at most three, and what the heater accepts."},
    Field{.section = site, .name = "window", .kind = list, .holds = window,
          .help = "Windows and doors between the heater's room and outdoors."},
    Field{.section = site, .name = "fan", .kind = list, .holds = fan,
          .help = "Extraction fans that draw air out of the heater's room."},
    Field{.section = site, .name = "event", .kind = list, .holds = event,
          .help = "What the household does, before the arrival and after."},

    Field{.section = tap, .name = "name", .kind = name, .fallback = required,
          .example = "kitchen tap", .help = "How acts call it."},
    Field{.section = tap, .name = "flow", .kind = quantity, .dimension = volume_flow, .unit = "L/min", .least = 1, .greatest = 25,
          .fallback = required, .example = "9 L/min", .help = "Flow with this tap alone fully open, at its height, 400 kPa in the street and the heater not throttling."},
    Field{.section = tap, .name = "mixes_cold", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: a mixer, set by the household to blend."},
    Field{.section = tap, .name = "washing", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: people wash at it, so that the delivery limit holds; not behind a mixer that blends."},
    Field{.section = tap, .name = "height", .kind = quantity, .dimension = length, .unit = "m", .least = 0, .greatest = 12,
          .example = "3 m", .help = "Above the heater: a floor is about 3 m. Left out: 0 m."},
    Field{.section = tap, .name = "tempered", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: behind the house's tempering valve."},

    Field{.section = appliance, .name = "name", .kind = name, .fallback = required,
          .example = "cooktop", .help = "How acts call it."},
    Field{.section = appliance, .name = "heat_input", .kind = quantity, .dimension = power, .unit = "MJ/h", .least = 0.5, .greatest = 250,
          .fallback = required, .example = "30 MJ/h", .help = "Gross heat input as its data plate gives it."},

    Field{.section = wall_controller, .name = "name", .kind = name, .fallback = required,
          .example = "bathroom controller", .help = "How acts call it."},
    Field{.section = wall_controller, .name = "kind", .kind = word, .words = "simple|service",
          .fallback = required, .example = "simple", .help = "`simple` sets the temperature and switches; `service` shows the service readout too."},
    Field{.section = wall_controller, .name = "set_point", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 30, .greatest = 75,
          .fallback = required, .example = "42 °C", .help = "What the household has set there; the lowest of those that are heard and on counts."},
    Field{.section = wall_controller, .name = "on", .kind = flag, .example = "false", .help = "Its own switch. Left out: true."},

    Field{.section = window, .name = "name", .kind = name, .fallback = required,
          .example = "laundry window", .help = "How acts call it."},
    Field{.section = window, .name = "area", .kind = quantity, .dimension = area, .unit = "m2", .least = 0.005, .greatest = 4,
          .fallback = required, .example = "0.4 m2", .help = "Free area when it is open."},
    Field{.section = window, .name = "open", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: the household keeps it open."},

    Field{.section = fan, .name = "name", .kind = name, .fallback = required,
          .example = "rangehood", .help = "How acts call it."},
    Field{.section = fan, .name = "flow", .kind = quantity, .dimension = volume_flow, .unit = "m3/h", .least = 5, .greatest = 1500,
          .fallback = required, .example = "300 m3/h", .help = "Air it draws out of the room."},
    Field{.section = fan, .name = "on", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: the household lets it run."},

    Field{.section = event, .name = "at", .kind = quantity, .dimension = units::Dimension::time, .unit = "min", .least = 0, .greatest = 240,
          .fallback = required, .example = "2 min", .help = "Time since the start of the history."},
    Field{.section = event, .name = "tap", .kind = name, .example = "kitchen tap", .help = "Somebody turns this tap ..."},
    Field{.section = event, .name = "opening", .kind = quantity, .dimension = share, .unit = "%", .least = 0, .greatest = 100,
          .example = "60 %", .help = "... to this opening. Left out: 100 %."},
    Field{.section = event, .name = "appliance", .kind = name, .example = "cooktop", .help = "Somebody turns this appliance ..."},
    Field{.section = event, .name = "on", .kind = flag, .example = "false", .help = "... on or off, open or shut. Left out: true."},
    Field{.section = event, .name = "cold_draw", .kind = quantity, .dimension = volume_flow, .unit = "L/min", .least = 0, .greatest = 30,
          .example = "8 L/min", .help = "Cold water is drawn elsewhere in the house at this rate."},
    Field{.section = event, .name = "set_point", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 30, .greatest = 75,
          .example = "55 °C", .help = "Somebody changes the set temperature."},
    Field{.section = event, .name = "wind", .kind = quantity, .dimension = pressure, .unit = "Pa", .least = -30, .greatest = 60,
          .example = "15 Pa", .help = "The steady wind changes to this."},
    Field{.section = event, .name = "reset", .kind = flag, .example = "true", .help = "true: somebody presses reset."},
    Field{.section = event, .name = "window", .kind = name, .example = "laundry window", .help = "Somebody opens this window or door ..."},
    Field{.section = event, .name = "fan", .kind = name, .example = "rangehood", .help = "Somebody turns this fan ..."},
    Field{.section = event, .name = "rain", .kind = flag, .example = "true", .help = "It begins to rain; false: it stops."},
    Field{.section = event, .name = "lasts", .kind = quantity, .dimension = units::Dimension::time, .unit = "min", .least = 0.05, .greatest = 240,
          .example = "6 min", .help = "After this time the tap, appliance, window, fan, cold draw, wind or rain goes back to what it was at rest. Left out: it stays."},

    Field{.section = heater, .name = "builds_on", .kind = file, .example = "../heaters/generic-ng.toml",
          .help = "A file whose keys hold where this one is silent."},
    Field{.section = heater, .name = "gas", .kind = word, .words = "natural gas|propane",
          .fallback = required, .example = "natural gas", .help = "The gas it is made for."},
    Field{.section = heater, .name = "heat_input", .kind = quantity, .dimension = power, .unit = "MJ/h", .least = 60, .greatest = 200,
          .fallback = "149.4 MJ/h", .example = "149.4 MJ/h", .help = "Gross heat input at the full burner pressure; with that pressure it fixes the injectors."},
    Field{.section = heater, .name = "burner_pressure", .kind = quantity, .dimension = pressure, .unit = "kPa", .least = 0.4, .greatest = 2.8,
          .example = "0.95 kPa", .help = "Manifold pressure at full heat input. Left out: 0.95 kPa natural gas, 2.00 kPa propane."},
    Field{.section = heater, .name = "bank_shares", .kind = shares, .dimension = share, .unit = "%", .least = 10, .greatest = 80,
          .example = "25 %", .help = "Share of each of the three burner banks; together 100 %. Left out: 25, 30 and 45 %."},
    Field{.section = heater, .name = "fan_speed", .kind = quantity, .dimension = rotation, .unit = "rev/min", .least = 3000, .greatest = 6500,
          .fallback = "4800 rev/min", .example = "4800 rev/min", .help = "Fan speed the control asks for at full heat input."},
    Field{.section = heater, .name = "set_point_least", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 30, .greatest = 45,
          .fallback = "37 °C", .example = "37 °C", .help = "Lowest temperature that can be set."},
    Field{.section = heater, .name = "set_point_greatest", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 45, .greatest = 75,
          .fallback = "60 °C", .example = "60 °C", .help = "Highest temperature that can be set."},
    Field{.section = heater, .name = "wall_controllers", .kind = number, .least = 0, .greatest = 3,
          .example = "2", .help = "How many wall controllers it takes on its link cable. Left out: 3."},
    Field{.section = heater, .name = "wall_controller_kinds", .kind = word, .words = "simple|service|both",
          .fallback = "both", .example = "simple", .help = "Which kinds it answers; another kind stays without an answer."},

    Field{.section = rules, .name = "builds_on", .kind = file, .example = "../rules/general.toml",
          .help = "A file whose keys hold where this one is silent."},
    Field{.section = rules, .name = "name", .kind = line, .fallback = required,
          .example = "General practice", .help = "What these rules are called."},
    Field{.section = rules, .name = "date", .kind = line, .fallback = required,
          .example = "November 2026", .help = "When the values were last looked at."},
    Field{.section = rules, .name = "holds_in", .kind = line, .fallback = required,
          .example = "an invented town", .help = "Where they hold, and where not."},
    Field{.section = rules, .name = "limits", .kind = table, .holds = limits, .fallback = required,
          .help = "The limits the simulator compares with."},
    Field{.section = rules, .name = "sources", .kind = table, .holds = sources, .fallback = required,
          .help = "Where each limit comes from; a value from memory says so."},
    Field{.section = rules, .name = "licence", .kind = list, .holds = licence, .fallback = required,
          .help = "Licences, the usual one first."},

    Field{.section = limits, .name = "co_eight_hours", .kind = quantity, .dimension = share, .unit = "ppm", .least = 1, .greatest = 100,
          .fallback = required, .example = "30 ppm", .help = "Carbon monoxide in the air of a workplace, mean over eight hours."},
    Field{.section = limits, .name = "co_ceiling", .kind = quantity, .dimension = share, .unit = "ppm", .least = 50, .greatest = 1000,
          .fallback = required, .example = "400 ppm", .help = "Carbon monoxide that is never to be exceeded."},
    Field{.section = limits, .name = "co_ratio", .kind = quantity, .dimension = share, .unit = "%", .least = 0.05, .greatest = 5,
          .fallback = required, .example = "0.4 %", .help = "CO/CO2 of flue gas above which an appliance may not be used."},
    Field{.section = limits, .name = "gas_in_air", .kind = quantity, .dimension = share, .unit = "%", .least = 1, .greatest = 100,
          .fallback = required, .example = "10 %", .help = "Share of the lower flammability limit above which one leaves and airs."},
    Field{.section = limits, .name = "bathroom_water", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 38, .greatest = 65,
          .fallback = required, .example = "50 °C", .help = "Delivered at fixtures for washing."},
    Field{.section = limits, .name = "care_water", .kind = quantity, .dimension = temperature, .unit = "°C", .least = 38, .greatest = 65,
          .fallback = required, .example = "45 °C", .help = "The same where old, sick or very young people live."},
    Field{.section = limits, .name = "earth_continuity", .kind = quantity, .dimension = resistance, .unit = "Ω", .least = 0.05, .greatest = 10,
          .fallback = required, .example = "1 Ω", .help = "Protective earth of an appliance, at most."},
    Field{.section = limits, .name = "insulation", .kind = quantity, .dimension = resistance, .unit = "MΩ", .least = 0.05, .greatest = 100,
          .fallback = required, .example = "1 MΩ", .help = "Between live parts and earth, at least."},
    Field{.section = limits, .name = "earth_leakage", .kind = quantity, .dimension = current, .unit = "mA", .least = 0.1, .greatest = 30,
          .fallback = required, .example = "5 mA", .help = "Leakage current of an appliance in use, at most."},
    Field{.section = limits, .name = "rcd_trips_at", .kind = quantity, .dimension = current, .unit = "mA", .least = 5, .greatest = 300,
          .fallback = required, .example = "30 mA", .help = "Rated residual current of the safety switch."},
    Field{.section = limits, .name = "rcd_within", .kind = quantity, .dimension = units::Dimension::time, .unit = "ms", .least = 10, .greatest = 1000,
          .fallback = required, .example = "300 ms", .help = "Its break time at that current."},
    Field{.section = limits, .name = "rcd_within_at_five", .kind = quantity, .dimension = units::Dimension::time, .unit = "ms", .least = 5, .greatest = 500,
          .fallback = required, .example = "40 ms", .help = "Its break time at five times that current."},

    Field{.section = sources, .name = "co_eight_hours", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "co_ceiling", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "co_ratio", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "gas_in_air", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "bathroom_water", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "care_water", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "earth_continuity", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "insulation", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "earth_leakage", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "rcd_trips_at", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "rcd_within", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},
    Field{.section = sources, .name = "rcd_within_at_five", .kind = line, .fallback = required, .example = "from memory: common practice", .help = "Source of this limit."},

    Field{.section = licence, .name = "name", .kind = name, .fallback = required,
          .example = "gasfitter", .help = "How --licence calls it."},
    Field{.section = licence, .name = "supervised", .kind = flag, .fallback = "false",
          .example = "true", .help = "true: a licensed colleague has to be asked before each visit's work."},
    Field{.section = licence, .name = "leaves_out", .kind = works, .example = "live_tests",
          .help = "Remedies and kinds of work it does not cover; all others it does."},
    Field{.section = licence, .name = "covers_only", .kind = works, .example = "change_cylinder",
          .help = "Remedies and kinds of work it covers, and no others; instead of leaves_out."},
};
// clang-format on

/// Twelve figures hide the last bits of a conversion: "7 kPa", never "7.000000000000001 kPa".
std::string figures(double value) {
    std::array<char, 64> buffer{};
    char* const last = buffer.data() + buffer.size();
    return {buffer.data(),
            std::to_chars(buffer.data(), last, value, std::chars_format::general, 12).ptr};
}

std::string range_text(const Field& field, const units::Unit& unit) {
    const units::Unit& own = unit_named(field.dimension, field.unit);
    const auto in_unit = [&](double number) {
        return figures((to_si(own, number) - unit.offset) * unit.divisor / unit.factor);
    };
    return " from " + in_unit(field.least) + " to " + in_unit(field.greatest) + " " +
           std::string(unit.symbol);
}

/// "a pressure", "an energy": what the units layer says before its examples.
std::string with_article(units::Dimension dimension) {
    const std::string text = units::expectation(dimension);
    return text.substr(0, text.find(','));
}

std::string choices(std::string_view words) {
    std::string text = "one of \"";
    for (const char c : words) {
        if (c == '|')
            text += "\", \"";
        else
            text += c;
    }
    return text + "\"";
}

}  // namespace

std::span<const Field> fields() {
    return table_of_fields;
}

std::span<const Field> fields_of(Section section) {
    const auto mine = [section](const Field& field) { return field.section == section; };
    const auto first = std::find_if(table_of_fields.begin(), table_of_fields.end(), mine);
    return {first, std::find_if_not(first, table_of_fields.end(), mine)};
}

const Field* find_field(Section section, std::string_view name) {
    for (const Field& field : fields_of(section))
        if (field.name == name) return &field;
    return nullptr;
}

std::string_view name_of(Section section) {
    switch (section) {
        case job:
            return "the job file";
        case customer:
            return "[customer]";
        case answers:
            return "[customer.answers]";
        case fault:
            return "a [[fault]]";
        case site:
            return "the site";
        case tap:
            return "a [[tap]] of the site";
        case appliance:
            return "an [[appliance]] of the site";
        case wall_controller:
            return "a [[wall_controller]] of the site";
        case window:
            return "a [[window]] of the site";
        case fan:
            return "a [[fan]] of the site";
        case event:
            return "an [[event]] of the site";
        case heater:
            return "the heater";
        case rules:
            break;
        case limits:
            return "[limits] of the rules";
        case sources:
            return "[sources] of the rules";
        case licence:
            return "a [[licence]] of the rules";
    }
    return "the rules";
}

const units::Unit& unit_named(units::Dimension dimension, std::string_view symbol) {
    const auto all = units::units_of(dimension);
    const auto at = std::find_if(all.begin(), all.end(),
                                 [&](const units::Unit& unit) { return unit.symbol == symbol; });
    return at == all.end() ? all.front() : *at;
}

double to_si(const units::Unit& unit, double number) {
    return number * unit.factor / unit.divisor + unit.offset;
}

bool can_be_file(const Field& field) {
    return field.kind == table &&
           (field.holds == site || field.holds == heater || field.holds == rules);
}

std::string expectation(const Field& field, const units::Unit& unit) {
    const std::string such_as = ", such as " + ("\"" + std::string(field.example) + "\"");
    switch (field.kind) {
        case line:
            return "one line of text in quotation marks" + such_as;
        case Kind::name:
            return "a name of small letters, digits, spaces and hyphens" + such_as;
        case word:
            return choices(field.words);
        case works:
            return "a list of remedies and kinds of work, such as [\"" +
                   std::string(field.example) + "\"]";
        case Kind::cause:
            return "a cause from docs/scenarios.md" + such_as;
        case number:
            return "a bare number from " + figures(field.least) + " to " + figures(field.greatest) +
                   ", such as " + std::string(field.example);
        case quantity:
            return with_article(field.dimension) + range_text(field, unit) + such_as;
        case shares:
            return "a list of three shares" + range_text(field, unit) +
                   ", such as [\"25 %\", \"30 %\", \"45 %\"]";
        case flag:
            return "true or false, without quotation marks";
        case file:
            return "the name of a file" + such_as;
        case table:
            return can_be_file(field) ? "a table of keys, or the name of a file"
                                      : "a table, begun with " + std::string(name_of(field.holds));
        case list:
            break;
    }
    return "a list of tables, each begun with [[" + std::string(field.name) + "]]";
}

std::string expectation(const Field& field) {
    return expectation(field, unit_named(field.dimension, field.unit));
}

}  // namespace emberpath::scenario
