#include "sim/scenario/values.hpp"

#include <algorithm>
#include <cmath>

#include "sim/faults/faults.hpp"
#include "sim/worksite/practice.hpp"

namespace emberpath::scenario {

namespace {

constexpr std::size_t longest_line = 400;
constexpr std::size_t longest_name = 40;
constexpr std::size_t longest_list = 200;

std::vector<std::string> split(std::string_view words) {
    std::vector<std::string> all(1);
    for (const char c : words) {
        if (c == '|')
            all.emplace_back();
        else
            all.back() += c;
    }
    return all;
}

std::vector<std::string> cause_words() {
    std::vector<std::string> all;
    for (const faults::CauseInfo& cause : faults::catalogue()) all.emplace_back(cause.word);
    return all;
}

std::vector<std::string> work_words() {
    std::vector<std::string> all;
    for (const faults::RemedyInfo& remedy : faults::remedies)
        if (faults::works_at_once(remedy.remedy)) all.emplace_back(remedy.word);
    for (std::size_t i = 0; i < worksite::work_count; ++i)
        all.emplace_back(worksite::work_word(static_cast<worksite::Work>(i)));
    return all;
}

/// How to quote what was written: as it stands, or by its kind when it spans lines.
std::string shown(const Node& node) {
    constexpr std::size_t longest = 62;
    if (node.kind == Node::Kind::text) return in_quotes(node.text);
    const bool simple = node.kind != Node::Kind::list && node.kind != Node::Kind::table;
    std::string kind(name_of(node.kind));
    if (!simple || node.raw.empty() || node.raw.size() > longest) return kind;
    return node.kind == Node::Kind::flag ? node.raw : node.raw + ", " + kind;
}

/// Reads the values of one table; `name` stands before each message.
class Reader {
  public:
    Reader(const Field& field, std::string name, Problems& problems)
        : field_(field), name_(std::move(name)), problems_(problems) {}

    Item read(const Entry& entry) const {
        Item item;
        item.key = entry.key;
        item.key_at = entry.at;
        item.at = entry.node.at;
        item.raw = entry.node.raw;
        item.text = entry.node.text;
        const Node& node = entry.node;
        switch (field_.kind) {
            case Kind::number:
                item.good = number(node, item.number);
                break;
            case Kind::quantity:
                item.good = quantity(node, item.number);
                break;
            case Kind::shares:
                item.good = shares(node, item.numbers);
                break;
            case Kind::works:
                item.good = works(node, item.words);
                break;
            case Kind::several:
                item.good = several(node, item.words);
                break;
            case Kind::flag:
                item.flag = node.flag;
                item.good = is(node, Node::Kind::flag);
                break;
            default:
                item.good = is(node, Node::Kind::text) && text_fits(node);
                break;
        }
        return item;
    }

  private:
    void report(const Node& node, const std::string& found, std::string suggestion = {}) const {
        problems_.add(node.at,
                      {name_ + ": found " + found, expectation(field_), std::move(suggestion)});
    }

    bool is(const Node& node, Node::Kind kind) const {
        if (node.kind == kind) return true;
        report(node, shown(node));
        return false;
    }

    bool number(const Node& node, double& value) const {
        const bool numeric =
            node.kind == Node::Kind::whole_number || node.kind == Node::Kind::decimal_number;
        if (!numeric) {
            report(node, shown(node));
            return false;
        }
        value = node.number;
        if (value >= field_.least && value <= field_.greatest) return true;
        report(node, node.raw + (std::isnan(value)      ? ", not a number"
                                 : value < field_.least ? ", too low"
                                                        : ", too high"));
        return false;
    }

    bool quantity(const Node& node, double& si) const {
        if (node.kind == Node::Kind::whole_number || node.kind == Node::Kind::decimal_number) {
            report(node, node.raw + ", a number without a unit");
            return false;
        }
        if (!is(node, Node::Kind::text)) return false;
        const units::Parsed parsed = units::parse(field_.dimension, node.text);
        if (!parsed.good()) {
            report(node, parsed.found, parsed.suggestion);
            return false;
        }
        si = parsed.si;
        return in_range(node, si);
    }

    bool in_range(const Node& node, double si) const {
        const units::Unit& own = unit_named(field_.dimension, field_.unit);
        const double least = to_si(own, field_.least);
        const double greatest = to_si(own, field_.greatest);
        // Half a unit in the twelfth figure: "0.1 min" in seconds is still the limit itself.
        const double slack = 1e-12 * std::max(std::abs(least), std::abs(greatest));
        if (si >= least - slack && si <= greatest + slack) return true;
        problems_.add(node.at, {name_ + ": found " + in_quotes(node.text) +
                                    (si < least ? ", too low" : ", too high"),
                                expectation(field_, written_unit(node.text)),
                                {}});
        return false;
    }

    /// The unit the author used: the longest symbol at the end of the text.
    const units::Unit& written_unit(std::string_view text) const {
        while (text.ends_with(' ') || text.ends_with('\t')) text.remove_suffix(1);
        const units::Unit* best = nullptr;
        for (const units::Unit& unit : units::units_of(field_.dimension)) {
            const bool fits = text.ends_with(unit.symbol);
            if (fits && (best == nullptr || unit.symbol.size() > best->symbol.size())) best = &unit;
        }
        return best != nullptr ? *best : unit_named(field_.dimension, field_.unit);
    }

    bool shares(const Node& node, std::vector<double>& numbers) const {
        if (!is(node, Node::Kind::list)) return false;
        if (node.items.size() != 3) {
            report(node, "a list of " + std::to_string(node.items.size()));
            return false;
        }
        bool good = true;
        for (const Node& item : node.items) {
            double share = 0.0;
            good = quantity(item, share) && good;
            numbers.push_back(share);
        }
        return good;
    }

    bool works(const Node& node, std::vector<std::string>& words) const {
        return each_of(node, work_words(), "not a remedy or kind of work", words);
    }
    bool several(const Node& node, std::vector<std::string>& words) const {
        return each_of(node, split(field_.words), "not a word this key knows", words);
    }

    bool each_of(const Node& node, const std::vector<std::string>& known,
                 const std::string& otherwise, std::vector<std::string>& words) const {
        if (!is(node, Node::Kind::list)) return false;
        bool good = true;
        for (const Node& item : node.items) {
            good = is(item, Node::Kind::text) && one_of(item, known, otherwise) && good;
            words.push_back(item.text);
        }
        return good;
    }

    bool text_fits(const Node& node) const {
        switch (field_.kind) {
            case Kind::word:
                return one_of(node, split(field_.words), "not a word this key knows");
            case Kind::cause:
                return one_of(node, cause_words(), "not a known cause");
            case Kind::name:
                return name_fits(node);
            default:
                return line_fits(node);
        }
    }

    bool one_of(const Node& node, const std::vector<std::string>& words,
                const std::string& otherwise) const {
        if (std::find(words.begin(), words.end(), node.text) != words.end()) return true;
        report(node, in_quotes(node.text) + ", " + otherwise,
               diagnostics::nearest_word(node.text, words));
        return false;
    }

    bool name_fits(const Node& node) const {
        const std::string_view text = node.text;
        const auto allowed = [](char c) {
            return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == ' ' || c == '-';
        };
        const bool letters = std::all_of(text.begin(), text.end(), allowed);
        const bool edges = !text.empty() && text.front() >= 'a' && text.front() <= 'z' &&
                           text.back() != ' ' && text.find("  ") == std::string_view::npos;
        if (letters && edges && text.size() <= longest_name) return true;
        report(node,
               in_quotes(text) + (text.size() > longest_name ? ", a name longer than 40 letters"
                                                             : ", not a name acts can spell"));
        return false;
    }

    bool line_fits(const Node& node) const {
        const std::string_view text = node.text;
        const bool blank = text.find_first_not_of(" \t\r\n") == std::string_view::npos;
        const bool control = std::any_of(text.begin(), text.end(), [](char c) {
            return static_cast<unsigned char>(c) < 0x20U || c == 0x7f;
        });
        if (!blank && !control && text.size() <= longest_line) return true;
        report(node, blank     ? "a text without words"
                     : control ? "a text of several lines or with control characters"
                               : "a text of " + std::to_string(text.size()) +
                                     " bytes; at most 400 can be shown");
        return false;
    }

    const Field& field_;
    std::string name_;
    Problems& problems_;
};

/// All keys of a small table; for a large one, where they are listed.
std::string keys_of(const std::vector<std::string>& names) {
    constexpr std::size_t few = 8;
    if (names.size() > few) return "a key from docs/scenarios.md";
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "one of " : ", ") + name;
    return text;
}

/// A key that is only misspelt counts as written: nobody needs to hear that it is missing as well.
void unknown_key(const Entry& entry, Values& into, Problems& problems) {
    std::vector<std::string> names;
    for (const Field& field : fields_of(into.section)) names.emplace_back(field.name);
    const std::string nearest = diagnostics::nearest_word(entry.key, names);
    if (!nearest.empty()) into.spoiled.insert(nearest);
    problems.add(entry.at, {entry.key + ": not a key of " + std::string(name_of(into.section)),
                            keys_of(names), nearest});
}

void wrong_table(const Entry& entry, const Node& node, const Field& field, Values& into,
                 Problems& problems) {
    into.spoiled.insert(entry.key);
    problems.add(node.at, {entry.key + ": found " + shown(node), expectation(field), {}});
}

void read_list(const Entry& entry, const Field& field, Values& into, Problems& problems) {
    const std::vector<Node>& items = entry.node.items;
    if (entry.node.kind != Node::Kind::list)
        return wrong_table(entry, entry.node, field, into, problems);
    if (items.empty() && field.fallback == required)
        problems.add(entry.node.at, {entry.key + ": found an empty list", expectation(field), {}});
    std::vector<Values>& all = into.lists[entry.key];
    if (items.size() > longest_list) {
        const std::string count = std::to_string(items.size());
        problems.add(entry.at, {entry.key + ": found " + count + " tables", "at most 200", {}});
        return;
    }
    for (const Node& item : items) {
        if (item.kind == Node::Kind::table)
            all.push_back(read_values(item, field.holds, problems));
        else
            wrong_table(entry, item, field, into, problems);
    }
}

/// `site = "file"` is short for a table that says nothing but `builds_on = "file"`.
Values built_on(const Entry& entry, const Field& field, Problems& problems) {
    Values values;
    values.section = field.holds;
    values.at = entry.node.at;
    const Field* builds_on = find_field(field.holds, "builds_on");
    values.items.emplace("builds_on", Reader(*builds_on, entry.key, problems).read(entry));
    return values;
}

void read_table(const Entry& entry, const Field& field, Values& into, Problems& problems) {
    if (entry.node.kind == Node::Kind::text && can_be_file(field)) {
        into.tables.emplace(entry.key, built_on(entry, field, problems));
        return;
    }
    if (entry.node.kind != Node::Kind::table)
        return wrong_table(entry, entry.node, field, into, problems);
    into.tables.emplace(entry.key, read_values(entry.node, field.holds, problems));
}

bool has(const Values& values, const Field& field) {
    if (values.spoiled.contains(field.name)) return true;
    if (field.kind == Kind::table) return values.tables.contains(field.name);
    if (field.kind == Kind::list) return values.lists.contains(field.name);
    return values.items.contains(field.name);
}

}  // namespace

const Item* Values::written(std::string_view name) const {
    const auto found = items.find(name);
    return found == items.end() ? nullptr : &found->second;
}

const Item* Values::good(std::string_view name) const {
    const Item* item = written(name);
    return item != nullptr && item->good ? item : nullptr;
}

const std::vector<Values>& Values::list(std::string_view name) const {
    static const std::vector<Values> none;
    const auto found = lists.find(name);
    return found == lists.end() ? none : found->second;
}

double Values::number(std::string_view name) const {
    if (const Item* item = good(name)) return item->number;
    const Field* field = find_field(section, name);
    if (field == nullptr || field->kind != Kind::quantity) return 0.0;
    return units::parse(field->dimension, field->fallback).si;
}

std::string Values::text(std::string_view name) const {
    const Item* item = good(name);
    return item != nullptr ? item->text : std::string();
}

Values read_values(const Node& table, Section section, Problems& problems) {
    Values values;
    values.section = section;
    values.at = table.at;
    for (const Entry& entry : table.entries) {
        const Field* field = find_field(section, entry.key);
        if (field == nullptr)
            unknown_key(entry, values, problems);
        else if (field->kind == Kind::table)
            read_table(entry, *field, values, problems);
        else if (field->kind == Kind::list)
            read_list(entry, *field, values, problems);
        else
            values.items.emplace(entry.key, Reader(*field, entry.key, problems).read(entry));
    }
    return values;
}

Values laid_over(Values base, const Values& upper) {
    for (const auto& [name, item] : upper.items) base.items.insert_or_assign(name, item);
    for (const auto& [name, table] : upper.tables) base.tables.insert_or_assign(name, table);
    for (const auto& [name, list] : upper.lists) base.lists.insert_or_assign(name, list);
    base.spoiled.insert(upper.spoiled.begin(), upper.spoiled.end());
    return base;
}

void require_all(const Values& values, Problems& problems) {
    if (!values.whole) return;
    for (const Field& field : fields_of(values.section)) {
        if (field.fallback != required || has(values, field)) continue;
        problems.add(values.at, {std::string(field.name) + ": missing from " +
                                     std::string(name_of(values.section)),
                                 expectation(field),
                                 {}});
    }
    for (const auto& [name, table] : values.tables) require_all(table, problems);
    for (const auto& [name, list] : values.lists)
        for (const Values& item : list) require_all(item, problems);
}

}  // namespace emberpath::scenario
