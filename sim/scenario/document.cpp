#include "sim/scenario/document.hpp"

#include <toml++/toml.h>

#include <algorithm>

namespace emberpath::scenario {

namespace {

/// Byte offset of a column that counts characters.
std::size_t offset_of(std::string_view line, int column) {
    std::size_t at = 0;
    for (int left = column - 1; at < line.size(); ++at) {
        const bool starts = (static_cast<unsigned char>(line[at]) & 0xc0U) != 0x80U;
        if (starts && left-- == 0) break;
    }
    return at;
}

/// Turns the library's tree into ours; holds what every node needs to know of its file.
class Converter {
  public:
    Converter(std::size_t source, const Problems& problems)
        : source_(source), problems_(problems) {}

    Node convert(const toml::node& from) const {
        Node node;
        node.at = position(from.source().begin);
        node.raw = raw(from.source());
        if (const auto* table = from.as_table()) {
            node.kind = Node::Kind::table;
            node.entries = entries(*table);
        } else if (const auto* list = from.as_array()) {
            node.kind = Node::Kind::list;
            for (const toml::node& item : *list) node.items.push_back(convert(item));
        } else {
            scalar(from, node);
        }
        return node;
    }

  private:
    static void scalar(const toml::node& from, Node& node) {
        if (const auto* text = from.as_string()) {
            node.kind = Node::Kind::text;
            node.text = text->get();
        } else if (const auto* whole = from.as_integer()) {
            node.kind = Node::Kind::whole_number;
            node.number = static_cast<double>(whole->get());
        } else if (const auto* decimal = from.as_floating_point()) {
            node.kind = Node::Kind::decimal_number;
            node.number = decimal->get();
        } else if (const auto* flag = from.as_boolean()) {
            node.kind = Node::Kind::flag;
            node.flag = flag->get();
        } else {
            node.kind = Node::Kind::moment;
        }
    }

    /// The library sorts keys by name; readers of messages think in lines.
    std::vector<Entry> entries(const toml::table& table) const {
        std::vector<Entry> all;
        for (const auto& [key, value] : table)
            all.push_back({std::string(key.str()), position(key.source().begin), convert(value)});
        std::stable_sort(all.begin(), all.end(),
                         [](const Entry& a, const Entry& b) { return a.at < b.at; });
        return all;
    }

    Position position(const toml::source_position& at) const {
        return {source_, static_cast<int>(at.line), static_cast<int>(at.column)};
    }

    std::string raw(const toml::source_region& region) const {
        if (region.begin.line != region.end.line) return {};
        const std::string_view line = problems_.line(position(region.begin));
        const std::size_t begin = offset_of(line, static_cast<int>(region.begin.column));
        const std::size_t end = offset_of(line, static_cast<int>(region.end.column));
        return std::string(line.substr(begin, end > begin ? end - begin : 0));
    }

    std::size_t source_;
    const Problems& problems_;
};

/// "Error while parsing SCOPE: expected A, saw B" in our words; other sentences are kept.
Remark remark_of(std::string_view description) {
    constexpr std::string_view opening = "Error while parsing ";
    std::string where = "this file";
    if (description.starts_with(opening)) {
        description.remove_prefix(opening.size());
        const std::size_t colon = description.find(": ");
        if (colon != std::string_view::npos) {
            where = "this " + std::string(description.substr(0, colon));
            description.remove_prefix(colon + 2);
        }
    }
    if (where == "this root table") where = "this place";
    Remark remark;
    const std::size_t saw = description.find(", saw ");
    if (description.starts_with("expected ") && saw != std::string_view::npos) {
        remark.found = "found " + std::string(description.substr(saw + 6)) + " in " + where +
                       ", which TOML does not allow";
        remark.expected = std::string(description.substr(9, saw - 9));
    } else {
        remark.found = "TOML does not allow " + where + ": " + std::string(description);
        remark.expected = "a file that follows the TOML 1.0 rules";
    }
    return remark;
}

}  // namespace

std::string_view name_of(Node::Kind kind) {
    switch (kind) {
        case Node::Kind::text:
            return "a text";
        case Node::Kind::whole_number:
            return "a whole number";
        case Node::Kind::decimal_number:
            return "a decimal number";
        case Node::Kind::flag:
            return "true or false";
        case Node::Kind::moment:
            return "a date or time of day";
        case Node::Kind::list:
            return "a list";
        case Node::Kind::table:
            break;
    }
    return "a table";
}

std::optional<Node> parse_document(std::size_t source, Problems& problems) {
    try {
        const std::string_view text = problems.text(source);
        const toml::table root = toml::parse(text, std::string_view(problems.name(source)));
        Node node = Converter(source, problems).convert(root);
        node.at = {source, 0, 0};
        return node;
    } catch (const toml::parse_error& error) {
        const toml::source_position at = error.source().begin;
        const Position position{source, static_cast<int>(at.line), static_cast<int>(at.column)};
        problems.add(position, remark_of(error.description()));
        return std::nullopt;
    }
}

}  // namespace emberpath::scenario
