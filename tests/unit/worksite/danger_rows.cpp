// The dangers by number: what threatens, what is to be done, what the simulation makes of it when it is not.

#include "tests/unit/worksite/danger_pairs.hpp"

namespace emberpath::worksite {

std::vector<HazardRow> hazard_rows() {
    return {
        {"H01", "Shock from the mains",
         "isolate, lock or hold the plug; prove the tester, test every pair, prove it again",
         "current from hand to hand where it is live; else a breach without a shock"},
        {"H02", "Shock while something live is tested",
         "only where the test needs the supply; insulated; the right range",
         "leads beside live terminals; the wrong range flashes"},
        {"H03", "Current on metal pipes",
         "heed a tingle; bridge the pipe before it is opened; report what is not right",
         "who opens the pipe is the way across the gap"},
        {"H04", "A second supply, a stored charge",
         "find what else feeds it, wait, prove at the point of work",
         "live or charged after \"off\""},
        {"H05", "Polarity or earth wrong", "check before a switch is trusted",
         "the switch breaks the neutral and leaves the terminals live"},
        {"H06", "Safety switch defeated", "test it, find what opens it, keep to its outlet",
         "a leak to earth is not cut off any more"},
        {"H07", "Before reconnection", "earth path and insulation after work on mains wiring",
         "what was left loose is energised: metal that is touched stands at a voltage"},
        {"H08", "Fixed wiring", "leave it to an electrician",
         "a bare hand meets the incoming bar; circuits that nobody proved stay behind"},
        {"H09", "Gas released on opening",
         "shut it, check that it is off, no flame near, close again",
         "gas gathers and lights at the lower flammability limit"},
        {"H10", "Smell of gas on arrival",
         "no switch, no flame; people out, shut outside, air, call",
         "a switch sparks in what has gathered"},
        {"H11", "No leak test before the work", "test first",
         "an old leak stays or is laid to whoever worked"},
        {"H12", "No leak test after the work", "test, remake, test again",
         "a leak runs through the day after"},
        {"H13", "Air in the pipe", "purge to a safe place", "the light-up is late"},
        {"H14", "Propane lies low", "detector down drains and pits",
         "a pocket stays that a flame can light"},
        {"H15", "Cylinder heated or badly placed", "never heat it; move it, or report it",
         "its pressure follows its vapour"},
        {"H16", "Supply regulator altered", "it belongs to the supplier: report it",
         "every appliance of the house gets more pressure"},
        {"H17", "Adjusted beyond the plate", "set to the plate, prove by combustion",
         "carbon monoxide in the flue gas, an overheated heater, hotter water at the tap"},
        {"H18", "Safety device bridged", "never", "the next fault has no guard"},
        {"H19", "Carbon monoxide where one works", "alarm on, room air first, air the place, leave",
         "it goes into the blood"},
        {"H20", "Combustion not proved after work on the flame",
         "analyser, at a small and at a full draw", "carbon monoxide is left behind"},
        {"H21", "Spillage untested, or tested kindly", "burner on, windows shut, every fan on",
         "products enter the room"},
        {"H22", "One try after another", "wait between tries, stop after few",
         "gas gathers in the chamber and lights hard"},
        {"H23", "Case open while it fires", "only for a reading that needs it",
         "products and hot parts in one's face"},
        {"H24", "Fire near the flue", "look for scorch marks, keep clearances",
         "timber keeps getting hot"},
        {"H25", "Burns", "let it cool, gloves", "heat in the skin by time and temperature"},
        {"H26", "Scald", "measure what is delivered; the limits of the rules; warn",
         "burn by time and temperature, a day long"},
        {"H27", "Water damage", "shut, relieve, drain, keep it off the board",
         "litres over floor and board"},
        {"H28", "Acid and drinking water", "flush by a hose after descaling",
         "acid comes out of a tap"},
        {"H29", "A fall from the terminal", "judge ground, wind and ties; tie it, or stay down",
         "a fall by its height"},
        {"H30", "Old sheet that may hold asbestos", "do not disturb it; hand it on",
         "its dust gets into the air"},
        {"H31", "Roof space", "power off, somebody knows, not long",
         "live cables, nobody who would look; who stays too long faints in the heat"},
        {"H32", "Children and passers-by", "keep them away from what is open",
         "a child reaches in"},
        {"H33", "Unsafe heater left usable", "make safe, tag, tell, notice in writing",
         "the household turns it on again"},
        {"H34", "Instrument out of date or worn", "look at the label, check it, take the spare",
         "what it shows is off, and what is done by it is wrong"},
        {"H35", "Handover and record", "ask, explain, write it down",
         "the next visit starts from nothing"},
    };
}

std::vector<Danger> every_danger() {
    std::vector<Danger> all = dangers_of_current();
    for (auto& group : {dangers_of_gas(), dangers_of_fumes(), dangers_of_the_place()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace emberpath::worksite
