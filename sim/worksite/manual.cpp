// The two manual pages that are made from tables.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/acts.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/hazards.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::string_view acts_opening = R"(# Acts: what a trainee can say

<!-- Made from sim/worksite/phrases.cpp; a test compares. -->

An act is one sentence. Each takes simulated time; nothing does several safety steps at once, and every
step can be forgotten. Capitals, articles and "please" do not matter, and many other ways to say the same
are read: "remove the cover", "turn off the kitchen tap", "inspect the flue terminal". What cannot be read
costs no time and names the nearest sentences.

A word in [..] may be left out; {..} stands for one of the things in the second table. A script is a text
file of acts, one a line; `#` begins a comment, except where a number follows it, as in `#4`.

"Part" is the price of what is used up, in minutes of work: a part of 25 min costs as much as 25 minutes of the
person who fits it. What a part costs that a remedy uses up counts in the debrief beside the time; prices are chosen.
"Skill" is the kind of work that a licence has to cover; where nothing stands, anybody may. Which licence
covers what is in the rules file of the house (scenarios.md).

| sentence | what it does | time | part | skill |
|---|---|---|---|---|
)";

constexpr std::string_view acts_things = R"(
## What can stand in the braces

| in braces | one of |
|---|---|
)";

constexpr std::string_view acts_closing = R"(
Taps and other appliances are those of the house. A house on a cylinder has a gas valve at the cylinder
in place of the meter, and one more cause, cylinder_low. A customer may know of further topics.

## Readings

What is read gets a number and one line: quantity, value, condition. The value is the model's, plus an
error that the instrument has that day, plus one of each reading, rounded to what the instrument shows
(see scoring.md for the instruments). Numbers serve as reasons in the record: `write because #3 #7`.

Wrong use reads wrong, as it would: a manometer that was not zeroed is off by its zero, one on a closed
test point shows nothing, a sensor that is still plugged in is measured together with the controller's
input, ohms on a live circuit jump about, a cold analyser drifts, and one started with its probe in the
flue takes the flue gas for clean air. A worn instrument reads wrong too (instruments.md). Such a reading has its number like any other, but no one draws
conclusions from it in the debrief.
)";

constexpr std::string_view safety_opening = R"(# Safety rules

<!-- Made from sim/worksite/hazards.cpp; a test compares. -->

Emberpath trains; it authorises nothing. Local codes and licensed practice decide.

A breach is noted once per rule, with the act and the figure that matters. "Gate" says whether it closes
the gate whatever else was done well; one that ends the job in harm closes it, whatever its rule says. The
deduction is a share of the area "safe work". In coached mode a breach is said after the act; in assessed
mode only what one would see, hear or smell is shown. The severities are chosen and open to a panel of
assessors. dangers.md lists every danger of the trade with the visits that show it.

| rule | endangers | what was to be done | what the simulation makes of it | gate | deduction |
|---|---|---|---|---|---|
)";

constexpr std::string_view safety_closing = R"(
## Where the consequences come from

- **Gas.** An open test point is a bore of 1 mm, an undone joint one of 3 mm²; the flow follows the square
  root of the pressure and is felt by the pipe. What escaped gathers in 60 litres around the work and is
  renewed by air in three minutes (chosen). Where it reaches the lower flammability limit (5.0 % methane,
  2.1 % propane: NFPA 497), three litres or a litre and a quarter, a flame or spark nearby lights it. The
  gas detector shows the share of that limit.
- **Current.** What stands on terminals, casing and pipes is what the electrical network gives
  (physics/electrics.md): behind an open switch whose conductors are swapped, behind an open main switch
  where a battery feeds on, on every pipe where the neutral is lost. A bare hand on a terminal and the
  other on the casing is a body of 1225 ohm at 225 V (median, IEC TS 60479-1:2005, from memory). From
  0.5 mA it tingles; from 10 mA the hand does not let go and the job ends: who had a shock is taken to be looked at,
  also where the safety switch cut it (common practice). When it did is worked out from what it sees of the touch
  (physics/electrics.md): current from hand to casing behind it, not what comes from before it or from line to line. A hand on a pipe has a floor
  of 5 kohm in its way (chosen). The capacitor of the board's power supply holds 325 V, the peak of the
  mains, and empties with a time constant of 20 s (chosen): it takes 34 s to 60 V.
  The incoming bar of an open switchboard stands live whatever is switched off: a bare hand there meets it as it
  meets the heater's terminals. Wiring that comes back to power untested is asked of the network a second later: does
  the safety switch open, and what goes from the casing through a hand to the floor?
- **Carbon monoxide.** With the cover off, a tenth of the products enters the heater's room (chosen); an
  open flue that cannot take them all spills the rest. The room is that of the site file: left out, 30 m³ with half
  an air change an hour. What the person at work breathes goes into the blood by the
  equation of Coburn, Forster and Kane (1965), light work, and leaves it again in clean air. The limits for
  the air of a workplace stand in the rules file of the house (30 ppm as a mean over eight hours; above 60 ppm
  for no more than an hour of the eight, above 100 ppm for half an hour, above 200 ppm for a quarter of one;
  400 ppm never): who stays above them breaks a rule. The job ends when a fifth of the blood carries carbon monoxide;
  headache begins near a tenth (clinical tables, from memory). The personal alarm warns only when it is
  switched on. The correlation for CO in the flue gas is a plausible shape, not data.
- **Heat.** A bare hand on metal is drawn back after half a second (chosen); the time to a burn on bare metal
  is 60 s at 51 °C, 10 s at 56 °C, 1 s at 65 °C (ISO 13732-1, from memory). A full cup runs over the hand for
  a second (chosen); times for water by Moritz and Henriques (1947). Shares add up; at 100 % the hand is burnt.
- **Who may do what.** The licence of the person at work stands in the rules file and is chosen with
  `--licence`. Work outside it closes the gate. A fault whose remedy it does not cover is rightly ended by
  isolating, tagging, telling, a notice in writing and a call to a licensed colleague.
- **The customer.** Consent is asked before services are shut or the cover comes off, unless smell, the alarm,
  a reading of the flue gas or of the room's air above the limit, smoke blown out at the diverter, or a voltage, an earth
  path, an insulation or a leakage beyond its limit has shown a danger. Some agree only when told why; one who refuses does not
  heed a notice alone: then the distributor, the gas supplier or the technical regulator is told as well. A
  report is no notice: who lives there is told in writing whoever else is.
- **Gas on arrival.** A leak at the regulator runs on from before the visit; what has gathered is its steady
  state, and one smells it at the door. Doors and windows wide open renew the air in 45 s instead of three minutes (chosen). A switch, a
  plug, a telephone in the house before everybody was led out, a lit appliance or a heater called by its tap is a spark; at the lower
  flammability limit it flashes.
- **Outside.** `go outside` leads into the open air, `go back in` to the heater again; a quarter of a minute each (chosen).
  There the person at work breathes no carbon monoxide and stands in no gas: what the blood holds falls by the same
  equation, and neither the minutes there nor the way out count as staying. Nothing of the house is seen, heard or smelt.
  Reached from there, by where things stand: the valve at meter or cylinder, the cylinders themselves (look, weigh, turn
  the lever), the telephone, the customer, what one wears and one's notes. Everything at the heater, the switchboard,
  windows, fans and taps are not, nobody sees from there that something changes, and who leads people out has to be
  with them: such an act is refused and takes no time. What lights meanwhile burns nobody's hands, and the visit ends
  all the same.
- **Propane lies low.** Half of what escapes sinks into a drain, 0.1 m³ that renews itself in an hour, in five
  minutes when the place is aired (chosen). The detector has to be held down there. At the lower limit any
  flame lights it.
- **Air in the pipe.** A changed cylinder or a cleaned gas screen lets in 0.3 litres, as much as a hose holds; a
  changed gas valve or a remade inlet union 1.5 litres, for the pipe stands open (chosen). While that goes out through the burner, at 0.3 L/s, no gas comes behind it; purging, or another
  appliance that is on, clears it.
- **Water.** A part of the water side undone under pressure is a bore of 8 mm at mains pressure for twenty
  seconds; undrained, 1.2 litres run out (chosen). With the cover off that wets the board: under pressure the
  board is lost, else its air is damp. Descaling acid thins as water runs, by the heater's three litres.
- **Heights.** From 2 m the terminal needs a ladder, to look at it as to clear it, fit a guard or brush the flue: each
  time it counts whether `check ladder` was done before. It slides on soft ground unless it is tied, and falls where
  the wind presses with more than 30 Pa, some 7 m/s (chosen): v = sqrt(2 g h), and the job ends.
- **Heat where none should be.** Timber a finger's width from the flue takes 0.6 of what the flue is hotter than
  the air (chosen). A cylinder in the flue's outlet stands at 60 °C, and its pressure follows the vapour.
  A roof space is 25 K above the air; a pipe run in it is crawled along for four minutes. Crawls with less than ten
  minutes between them add up: beyond ten minutes the head swims, beyond twenty one faints and the job ends (chosen;
  short spells are common practice).
- **People.** Where children play, one reaches into a heater that has been open for five minutes and touches
  its metal for half a second.
- **Instruments.** docs/instruments.md: what is worn, overdue or without a battery, and how one finds out.
- **The day after.** The house is simulated for 24 hours as it was left: the household draws what it drew
  before the visit, five times over; presses reset after a minute of lockout; and turns on again what no
  tag with a notice that is heeded forbids; at a tag nobody presses reset. Too little water is a draw that gave
  less than 0.45 of what the open tap gives alone (chosen). At each draw a bare hand is on the tap, and one on the
  heater's casing: the most that goes to the floor is told from 0.5 mA, where it is felt. What it meets stands in the debrief and in the record, which
  `emberpath verify` simulates again.
- **Flue gas left behind.** After the trainee has gone, somebody presses reset, draws fully for three
  minutes and a little for two, with gusts. CO/CO2 above 0.004, both meaned over
  twenty seconds, is not acceptable; neither here nor in the day after is a flame judged in its first half-minute
  (chosen). The limit is that of UK practice to BS 7967, from a training note.
- **Scald.** 55 °C burns in about ten seconds (Moritz & Henriques 1947, as reproduced publicly): ten
  seconds of it at the tap, hotter than the panel was set, is left behind as a danger. So is water that burns a hand
  in five seconds at a fixture people wash at and no mixer blends, whoever set it so: from 58.6 °C by the same table.
- **Joints.** One joint in eight weeps when it is made (chosen, seeded): a small flow that only a leak test
  finds. Leak fluid proves what stands under pressure; the pressure hold proves the line from the meter or
  cylinder to the heater, dp/dt = -p Q / V over three litres of pipe.

## The eight items of proof and handover

They count only when done after the work that calls for them: gas joints proved sound, combustion proved
at a small and a full draw, hot water measured at the set temperature, display clear after a minute of
running, cover refitted and services back (or taken out of use with a tag), test points closed and tools
away, customer told, record written. What the work did not call for earns nothing and costs nothing: joints
that nobody opened, combustion where nobody worked on flame, air or flue. A heater that was rightly taken out
of use, tagged and reported needs no proof of combustion, hot water or display.

## What each repair asks for besides

Hot water, a clear display, cover, tools, customer and record are asked for after every repair; these belong to
one kind each. What only hands on or explains asks for none of them.

A limiter is not made to open to prove it. It opens at 95 °C on the metal it sits on, and a sound heater does not
get there at its highest setting, at any draw or after one: to reach it, another guard would have to be put out of
action or the heater starved of water under fire, and that is done on a bench and not in a house. What is asked is
what a house can show: its leads as made, no bridge, and a minute of running with a clear display.

A proof counts by what it shows. Bubbles, fluid that does not foam, a manometer that shows no pressure held or loses it,
CO/CO2 above the limit, smoke that is not drawn in, an earth path or insulation beyond the limits, water that is not as
hot as it ought to be: each was looked at and proves nothing. The same holds for the readings named below: leads as
made, a dry floor, a companion that fires, an air tube of 20 Pa or more with a steady needle while the fan blows, an
ambient temperature within 3 K of the air, cold water below what opens the relief valve, a tempered tap within 2.5 K
of its due with the burner on.

| repair | before it | after it |
|---|---|---|
)";

void add(std::string& list, bool needed, std::string_view item) {
    if (needed) list += (list.empty() ? "" : ", ") + std::string(item);
}

/// From the same table and functions that judge it.
std::string proofs_table() {
    using faults::Remedy;
    std::string text;
    for (const faults::RemedyInfo& info : faults::remedies) {
        if (!faults::works_at_once(info.remedy) || info.reach == faults::Reach::words) continue;
        const Remedy remedy = info.remedy;
        const bool gas = info.joint != faults::GasJoint::none;
        std::string before, after;
        const bool keys = remedy == Remedy::correct_settings;
        const bool burning = remedy == Remedy::set_manifold_pressure;
        add(before, info.reach == faults::Reach::inside && !keys,
            "isolate, lock, prove dead, gloves");
        add(before, keys, "cover off while isolated, then power on for the readout");
        add(before, works_at_terminal(remedy), "from 2 m a look at the ladder");
        add(before, info.needs_glasses, "glasses");
        add(before, gas, "leak test, gas shut");
        add(before, opens_water_side(remedy), "water shut and drained");
        add(before, parted_by(remedy) != Parted::nothing, "bridging conductor");
        add(before, burning,
            "gas shut: all of it while cover, point and hose are handled; then power and burner "
            "on, hands clear of live parts");
        add(after, gas, "leak test");
        add(after, air_let_in_m3(remedy) > 0.0, "purge");
        add(after, info.touches_flame && !keys, "combustion at a small and a full draw");
        add(after, keys, "combustion, where gas or altitude was stored anew");
        add(after, remedy == Remedy::clear_open_flue, "draught, windows shut and fans on");
        add(after, remedy == Remedy::dry_and_reseal, "earth path and insulation before power");
        add(after, remedy == Remedy::descale_exchanger, "flush by a hose before a tap is opened");
        if (const RepairProof* own = own_proof(remedy))
            after += (after.empty() ? "" : ", ") + std::string(own->sentence);
        add(after, after.empty(), "hot water, clear display");
        text += "| " + std::string(info.title) + " | " + (before.empty() ? "-" : before) + " | " +
                (after.empty() ? "-" : after) + " |\n";
    }
    return text;
}

std::string spell(double seconds) {
    if (seconds < 60.0) return units::fixed(seconds, 0) + " s";
    const auto tenths = std::lround(seconds / 6.0);
    return units::fixed(seconds / 60.0, tenths % 10 == 0 ? 0 : 1) + " min";
}

std::string time_text(const PhraseRow& row) {
    const bool says_how_long = row.phrase.pattern.find("{duration}") != std::string_view::npos;
    if (row.phrase.seconds <= 0.0) return says_how_long ? "as said" : "varies";
    return spell(row.phrase.seconds);
}

std::string part_text(const PhraseRow& row) {
    const double minutes = row.phrase.part_minutes;
    return minutes > 0.0 ? spell(60.0 * minutes) : std::string();
}

std::string one_of(std::string_view placeholder) {
    const Job any;  // only what every house has
    std::string text;
    for (const auto& word : words_of(placeholder, any)) text += (text.empty() ? "" : ", ") + word;
    if (text.empty()) text = std::string(meaning_of(placeholder));
    return text;
}

std::string things_table() {
    std::string text;
    std::vector<std::string_view> seen;
    for (const auto& row : phrase_rows())
        for (const auto& part : parts_of(row.phrase.pattern)) {
            const bool second = part.text.starts_with("other ");  // as the first
            if (part.kind != Part::Kind::placeholder || second) continue;
            if (std::find(seen.begin(), seen.end(), part.text) != seen.end()) continue;
            seen.push_back(part.text);
            text += "| {" + std::string(part.text) + "} | " + one_of(part.text) + " |\n";
        }
    return text;
}

}  // namespace

std::string acts_page() {
    std::string text(acts_opening);
    for (const auto& row : phrase_rows()) {
        std::string pattern(row.phrase.pattern);
        for (std::size_t at = 0; (at = pattern.find('|', at)) != std::string::npos; at += 2)
            pattern.insert(at, "\\");
        text += "| " + pattern + " | " + std::string(row.phrase.help) + " | " + time_text(row) +
                " | " + part_text(row) + " | " + std::string(row.phrase.skill) + " |\n";
    }
    return text + std::string(acts_things) + things_table() + std::string(acts_closing);
}

std::string safety_page() {
    std::string text(safety_opening);
    for (const auto& row : rules())
        text += "| " + std::string(row.word) + " | " + std::string(row.hazard) + " | " +
                std::string(row.precaution) + " | " + std::string(row.consequence) + " | " +
                (row.critical ? "closes" : "open") + " | " + units::per_cent(row.deduction) +
                " |\n";
    return text + std::string(safety_closing) + proofs_table();
}

}  // namespace emberpath::worksite
