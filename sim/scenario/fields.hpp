#pragma once
/// The one table of everything a scenario file may say: it feeds the loader and docs/scenarios.md.

#include <span>
#include <string>
#include <string_view>

#include "sim/units/units.hpp"

namespace emberpath::scenario {

/// A table of the TOML files. The heater, site and rules sections are also whole files of their own.
enum class Section {
    job,
    customer,
    answers,
    fault,
    site,
    tap,
    appliance,
    wall_controller,
    window,
    fan,
    event,
    heater,
    rules,
    limits,
    sources,
    licence,
    tell,
    tool,
    release,
    dangers
};
inline constexpr std::size_t section_count = 20;

enum class Kind {
    line,      // one line of text
    name,      // small letters, as acts spell it
    word,      // one of Field::words
    cause,     // one of the catalogue of causes
    number,    // a bare number, because it has no dimension
    quantity,  // a text with a number and a unit
    shares,    // a list of three shares
    works,     // a list of remedies and kinds of work
    several,   // a list of Field::words
    flag,      // true or false
    file,      // a file name, relative to the file that says it
    table,     // a table of its own: Field::holds
    list,      // a list of tables: Field::holds
};

/// Field::fallback of a key that must be there, and of one that may be left out without a substitute.
inline constexpr std::string_view required = "required";
inline constexpr std::string_view optional = "optional";

struct Field {
    Section section;
    std::string_view name;
    Kind kind;
    units::Dimension dimension{};  // of a quantity
    std::string_view unit{};       // in which its range is stated
    double least = 0.0;            // of a quantity in that unit, or of a number
    double greatest = 0.0;
    std::string_view words{};              // choices of a word or of a list, separated by '|'
    Section holds{};                       // what a table or list contains
    std::string_view fallback = optional;  // "required", "optional" or the value used instead
    std::string_view example{};            // for messages and the manual, without quotation marks
    std::string_view help{};               // one line for the manual
};

/// All fields, grouped by section, in the order of the manual.
[[nodiscard]] std::span<const Field> fields();
[[nodiscard]] std::span<const Field> fields_of(Section section);
/// nullptr when the section has no such key.
[[nodiscard]] const Field* find_field(Section section, std::string_view name);

/// True for the tables that may also be whole files: site, heater and rules.
[[nodiscard]] bool can_be_file(const Field& field);

/// "[customer]", "a [[tap]] of the site", "the job file": for sentences.
[[nodiscard]] std::string_view name_of(Section section);

/// The unit by its symbol; the usual one of the dimension when it has no such unit.
[[nodiscard]] const units::Unit& unit_named(units::Dimension dimension, std::string_view symbol);
[[nodiscard]] double to_si(const units::Unit& unit, double number);

/// What belongs in this field: `a pressure from 100 to 1000 kPa, such as "400 kPa"`. The range is put in
/// `unit`, which is the author's own when they wrote one.
[[nodiscard]] std::string expectation(const Field& field, const units::Unit& unit);
[[nodiscard]] std::string expectation(const Field& field);

}  // namespace emberpath::scenario
