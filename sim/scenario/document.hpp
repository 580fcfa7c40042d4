#pragma once
/// A TOML file as a tree with positions, in file order. The only place that knows the TOML library.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/scenario/problems.hpp"

namespace emberpath::scenario {

struct Entry;

/// One value of a TOML file.
struct Node {
    enum class Kind { text, whole_number, decimal_number, flag, moment, list, table };
    Kind kind = Kind::table;
    Position at;          // where the value begins; of a table, its header or brace
    std::string raw;      // as written, where it fits one line
    std::string text;     // of a text, unescaped
    double number = 0.0;  // of a number; may be infinite or not a number
    bool flag = false;
    std::vector<Node> items;     // of a list
    std::vector<Entry> entries;  // of a table, in file order
};

struct Entry {
    std::string key;
    Position at;  // where the key begins
    Node node;
};

/// "a text", "a whole number", "a table" ...: for sentences.
[[nodiscard]] std::string_view name_of(Node::Kind kind);

/// Reads the source with this index. A syntax error is added to the problems and gives nothing.
[[nodiscard]] std::optional<Node> parse_document(std::size_t source, Problems& problems);

}  // namespace emberpath::scenario
