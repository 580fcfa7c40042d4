#pragma once
/// What the files say, checked key by key against the table of fields: types, units, ranges, spelling.
/// Whether the keys agree with one another is checked later, where a job is made of them.

#include <functional>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "sim/scenario/document.hpp"
#include "sim/scenario/fields.hpp"
#include "sim/scenario/problems.hpp"

namespace emberpath::scenario {

/// One key that was written.
struct Item {
    std::string key;  // as written; "site" where `site = "file"` stands for builds_on
    Position key_at;
    Position at;          // of the value
    std::string raw;      // as written
    std::string text;     // of a line, name, word, cause or file
    double number = 0.0;  // SI, of a quantity or number
    bool flag = false;
    std::vector<double> numbers;     // of shares
    std::vector<std::string> words;  // of works
    bool good = false;               // false: a problem about it was reported
};

/// One table that was written.
struct Values {
    Section section{};
    Position at;
    bool whole = true;  // false: a file underneath could not be read
    std::map<std::string, Item, std::less<>> items;
    std::map<std::string, Values, std::less<>> tables;
    std::map<std::string, std::vector<Values>, std::less<>> lists;
    std::set<std::string, std::less<>> spoiled;  // keys written in a way that cannot be read at all

    /// The item if it was written and is good.
    [[nodiscard]] const Item* good(std::string_view name) const;
    /// The item if it was written, good or not.
    [[nodiscard]] const Item* written(std::string_view name) const;
    [[nodiscard]] const std::vector<Values>& list(std::string_view name) const;
    /// The number in SI; its fallback from the table of fields if it was not written or is not good.
    [[nodiscard]] double number(std::string_view name) const;
    /// The text; empty if it was not written or is not good.
    [[nodiscard]] std::string text(std::string_view name) const;
};

/// Reads one table. Missing keys are not looked for: a file underneath may hold them.
[[nodiscard]] Values read_values(const Node& table, Section section, Problems& problems);

/// `upper` laid over `base`: its keys, tables and lists replace those of the base.
[[nodiscard]] Values laid_over(Values base, const Values& upper);

/// Reports the required keys that are missing, here and in all tables and lists below.
void require_all(const Values& values, Problems& problems);

}  // namespace emberpath::scenario
