#include "sim/scenario/manual.hpp"

#include "sim/faults/faults.hpp"
#include "sim/scenario/fields.hpp"

namespace emberpath::scenario {

namespace {

// clang-format off
constexpr std::string_view opening = R"(# Writing scenarios

A scenario is a TOML file in `scenarios/jobs/`. It builds on a site file (the house) and a heater file
(the appliance), adds the customer, and hides at least one fault. Whoever works the job sees the house,
the customer and what instruments show; the `[[fault]]` tables stay hidden until the debrief.

This page is made by the program from the same tables the loader uses, so it cannot disagree with it.

- `emberpath check FILE...` reports every problem of a file at once, with line, column and remedy.
- `emberpath preview JOB` shows what the fault does to every reading, beside the sound house.
- `emberpath trace JOB --taps ... --csv FILE` runs the heater alone and writes its time series.

## A complete example

```toml
)";

constexpr std::string_view example = R"(title = "Job 9: 1 Sample Street"
call_out = "Hot water comes and goes"
set_point = "48 °C"
heater = "../heaters/generic-ng.toml"

[site]
name = "1 Sample Street"
gas = "natural gas"
inlet_water = "12 °C"
arrival = "10 min"

[[site.tap]]
name = "kitchen tap"
flow = "9 L/min"

[[site.appliance]]
name = "cooktop"
heat_input = "28 MJ/h"

# What the household did before they called: two short draws.
[[site.event]]
at = "1 min"
tap = "kitchen tap"
opening = "50 %"
lasts = "2 min"

[[site.event]]
at = "6 min"
tap = "kitchen tap"
lasts = "2 min"

[customer]
words = "It runs hot, then cold, then hot again."
complaint = "drops out now and then"

[customer.answers]
when = "On some days only."
"other appliances" = "The cooktop is fine."

[[fault]]
cause = "wind_gust"
severity = 0.8
)";

constexpr std::string_view rules = R"(```

## Rules

**Values carry their unit**, in quotation marks: `"2.75 kPa"`, `"14 °C"`, `"20 min"`. A bare number is
refused wherever there is a dimension, because nobody can see later what was meant. `severity` has no
dimension and is a bare number.

**Building on a file.** `site = "../sites/x.toml"` takes a whole house. To change single things, write a
table that builds on the file:

```toml
[site]
builds_on = "../sites/x.toml"
inlet_water = "6 °C"
```

Keys given in the table win. A list (`tap`, `appliance`, `window`, `event` ...) that is given replaces the whole list.
File names are relative to the file that says them. A site, heater or rules file may build on another one in
the same way, with `builds_on` at its top; a chain that leads back to itself is refused. In a site file
the keys stand at the top: `[[tap]]`, not `[[site.tap]]`.

**The complaint comes from physics.** `emberpath check` runs the history: with the fault the household must
meet the stated complaint, and without it none. Keep the history as short as the fault allows.

**Rules of the place.** `rules` of a site names a file of limits and licences, each limit with its source; the
shipped houses share `scenarios/rules/general.toml`. `scenarios/rules/upland.toml` is another place, and
`emberpath work scenarios/elsewhere/willow.toml` the house of `willow` there: what is a repair in the one is handed
on in the other. A licence covers everything but what `leaves_out` lists,
or nothing but what `covers_only` lists: remedies by their word (`emberpath causes` shows them) and the kinds
of work `behind_cover`, `gas_joints` and `live_tests`. Explaining, quoting and handing on are open to all.

**A fault may wait.** `while` lets it be there only at night, in rain, or once some minutes of firing have warmed
the case; `after_light_ups` lets it begin when the burner has lit so often. Onset, ramp and period go on counting
meanwhile. Nothing is random.

**A fault must be able to show.** A cause that needs what the site has not (a tempering valve, a second cylinder), a
severity outside its range, a ramp too slow for a visit and a ramp of what cannot grow (there or not; a part held
where it should move) are refused: accepted but without effect is an error.

**Two faults.** Each does what it does alone where they move different parts, in either order. Of two that move one
number, the later in the file works on what the earlier left: a factor multiplies, a held part stays held. Two
faults are scored where they are one of the chosen pairs (scoring.md); of any others evidence, path and remedy are
not scored, and the debrief says so.

**Names reveal nothing.** `emberpath check` finds a title, call-out or answer that names the cause. Answers are what
an observant householder could say. Streets, houses and people are invented.

**Fingerprint.** A record holds a hash over the bytes of the scenario, site and heater files, in the order
they were read. Any change of a file makes it another scenario.

)";

constexpr std::string_view units_opening = R"(## Units

The first of each line is the one the program prints.

| quantity | units |
|---|---|
)";

constexpr std::string_view causes_opening = R"(## Causes

`severity` counts from 0 (none); 1 is the full amount. Below the range given nobody would notice anything, and the loader
refuses it.

| cause | what it does | severity | gas |
|---|---|---|---|
)";
// clang-format on

std::string heading(Section section) {
    switch (section) {
        case Section::job:
            return "## Job file";
        case Section::customer:
            return "## Customer: `[customer]`";
        case Section::answers:
            return "## Answers by topic: `[customer.answers]`";
        case Section::fault:
            return "## Faults: `[[fault]]`";
        case Section::site:
            return "## Site: `[site]` of a job, or a site file";
        case Section::tap:
            return "## Taps: `[[site.tap]]`, or `[[tap]]` in a site file";
        case Section::appliance:
            return "## Other gas appliances: `[[site.appliance]]`, or `[[appliance]]` in a site "
                   "file";
        case Section::wall_controller:
            return "## Wall controllers: `[[site.wall_controller]]`, or `[[wall_controller]]` in a "
                   "site file";
        case Section::window:
            return "## Windows and doors: `[[site.window]]`, or `[[window]]` in a site file";
        case Section::fan:
            return "## Extraction fans: `[[site.fan]]`, or `[[fan]]` in a site file";
        case Section::event:
            return "## Household events: `[[site.event]]`, or `[[event]]` in a site file";
        case Section::heater:
            return "## Heater: `[heater]` of a job, or a heater file";
        case Section::rules:
            return "## Rules: `[rules]` of a site, or a rules file";
        case Section::limits:
            return "## Limits: `[limits]` of a rules file";
        case Section::sources:
            return "## Sources of the limits: `[sources]` of a rules file";
        case Section::tell:
            return "## Who is told: `[tell]` of a rules file";
        case Section::tool:
            return "## Instruments: `[[tool]]`";
        case Section::release:
            return "## Release check: `[release]`";
        case Section::dangers:
            return "## Dangers: `[site.dangers]`, or `[dangers]` in a site file";
        case Section::licence:
            break;
    }
    return "## Licences: `[[licence]]` of a rules file";
}

/// "a pressure from 100 to 1000 kPa": the expectation of the messages without its example.
std::string value_text(const Field& field) {
    if (field.kind == Kind::word) return expectation(field).substr(7);
    const std::string text = expectation(field);
    return text.substr(0, text.find(", such as"));
}

std::string fallback_text(const Field& field) {
    if (field.fallback == required) return "**required**";
    if (field.fallback == optional) return "may be left out";
    return "`" + std::string(field.fallback) + "`";
}

std::string table_of(Section section) {
    std::string text =
        heading(section) + "\n\n| key | value | if left out | meaning |\n|---|---|---|---|\n";
    for (const Field& field : fields_of(section))
        text += "| `" + std::string(field.name) + "` | " + value_text(field) + " | " +
                fallback_text(field) + " | " + std::string(field.help) + " |\n";
    return text + "\n";
}

std::string units_table() {
    std::string text(units_opening);
    for (std::size_t at = 0; at <= static_cast<std::size_t>(units::Dimension::calorific_value);
         ++at) {
        const auto dimension = static_cast<units::Dimension>(at);
        bool used = false;
        for (const Field& field : fields())
            used = used || (!field.unit.empty() && field.dimension == dimension);
        if (!used) continue;
        text += "| " + std::string(units::name_of(dimension)) + " |";
        for (const units::Unit& unit : units::units_of(dimension))
            text += " `" + std::string(unit.symbol) + "`";
        text += " |\n";
    }
    return text + "\n";
}

std::string severity_text(const faults::CauseInfo& cause) {
    if (cause.on_off || cause.cause == faults::Cause::no_fault) return "none: there or not";
    const std::string range =
        units::fixed(cause.least_severity, 2) + " to " + units::fixed(cause.greatest_severity, 2);
    return cause.has_sign ? range + ", or negative" : range;
}

std::string causes_table() {
    std::string text(causes_opening);
    for (const faults::CauseInfo& cause : faults::catalogue()) {
        std::string gas = cause.cylinder_only ? "propane cylinder"
                          : cause.mains_only  ? "natural gas"
                                              : "any";
        if (cause.needs != faults::Needs::nothing)
            gas += ", with " + std::string(faults::title(cause.needs));
        text += "| `" + std::string(cause.word) + "` | " + std::string(cause.effect) + " | " +
                severity_text(cause) + " | " + gas + " |\n";
    }
    return text;
}

}  // namespace

std::string_view example_job() {
    return example;
}

std::string manual() {
    std::string text = std::string(opening) + std::string(example) + std::string(rules);
    for (std::size_t at = 0; at < section_count; ++at) text += table_of(static_cast<Section>(at));
    return text + units_table() + causes_table();
}

}  // namespace emberpath::scenario
