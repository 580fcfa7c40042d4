#include "sim/scenario/fields.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace emberpath::scenario {

namespace {

using enum Section;
using enum Kind;
using enum units::Dimension;

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

std::span<const Field> fields_of(Section section) {
    const auto mine = [section](const Field& field) { return field.section == section; };
    const auto all = fields();
    const auto first = std::find_if(all.begin(), all.end(), mine);
    return {first, std::find_if_not(first, all.end(), mine)};
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
        case tell:
            return "[tell] of the rules";
        case tool:
            return "a [[tool]]";
        case release:
            return "[release]";
        case dangers:
            return "[dangers] of the site";
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
        case several:
            return "a list of " + choices(field.words).substr(7) + ", such as [\"" +
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
