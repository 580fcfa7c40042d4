#include "sim/scenario/document.hpp"

#include <algorithm>
#include <stdexcept>

#include "sim/scenario/stray.hpp"

// The library states what it takes for granted of its own parsing with an assertion; a table header such
// as "[.a]" breaks one. Here that is an exception: a file must never end the program. The library is
// therefore compiled into this file alone, with its assertions on.
namespace emberpath::scenario {
namespace {
struct BrokenAssumption : std::logic_error {
    using std::logic_error::logic_error;
};
[[noreturn]] void break_off(const char* assumption) {
    throw BrokenAssumption(assumption);
}
}  // namespace
}  // namespace emberpath::scenario
#undef NDEBUG
#undef TOML_HEADER_ONLY
#undef TOML_SHARED_LIB
#define TOML_HEADER_ONLY 1
#define TOML_ASSERT(condition)                           \
    (static_cast<bool>(condition) ? static_cast<void>(0) \
                                  : emberpath::scenario::break_off(#condition))
#include <toml++/toml.h>

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

/// What the library says most often, in our words.
std::optional<Remark> familiar(std::string_view description) {
    constexpr std::string_view again = "cannot redefine existing ";
    if (description.find("invalid utf-8") != std::string_view::npos)
        return Remark{"found bytes that are not UTF-8 text", "a text file in UTF-8", {}};
    if (description.find("unescaped control characters") != std::string_view::npos)
        return Remark{"found the end of the line or a control character inside a text",
                      "a quotation mark that closes the text",
                      {}};
    if (const std::size_t at = description.find(again); at != std::string_view::npos) {
        const std::string_view rest = description.substr(at);
        const std::size_t name = rest.find('\'');
        const std::size_t end = rest.rfind('\'');
        if (name < end)
            return Remark{
                std::string(rest.substr(name + 1, end - name - 1)) + ": found a second time",
                "each key and each table once",
                {}};
    }
    return std::nullopt;
}

/// "Error while parsing SCOPE: expected A, saw B" in our words; other sentences are kept.
Remark remark_of(std::string_view description) {
    if (std::optional<Remark> remark = familiar(description)) return *remark;
    const std::size_t colon = description.find(": ");
    const std::string_view sentence =
        colon == std::string_view::npos ? description : description.substr(colon + 2);
    const std::size_t saw = sentence.find(", saw ");
    if (!sentence.starts_with("expected ") || saw == std::string_view::npos)
        return {"not TOML: " + std::string(sentence), "a file that follows the TOML 1.0 rules", {}};
    std::string_view found = sentence.substr(saw + 6);
    if (found.starts_with("'\\n'") || found.starts_with("'\\r'")) found = "the end of the line";
    const std::string_view expected = sentence.substr(9, saw - 9);
    return {"found " + std::string(found) + " where TOML does not allow it",
            expected == "value" ? "a value" : std::string(expected),
            {}};
}

bool breaks(std::string_view text) {
    try {
        const toml::table ignored = toml::parse(text);
        return false;
    } catch (const toml::parse_error&) {
        return false;
    } catch (const BrokenAssumption&) {
        return true;
    }
}

/// First line at which reading breaks off: the shortest beginning of the text that breaks too.
int line_that_breaks(std::string_view text) {
    std::vector<std::size_t> ends;
    for (std::size_t at = text.find('\n'); at != std::string_view::npos;
         at = text.find('\n', at + 1))
        ends.push_back(at + 1);
    std::size_t sound = 0;
    std::size_t broken = ends.size();
    while (sound < broken) {
        const std::size_t middle = (sound + broken) / 2;
        if (breaks(text.substr(0, ends[middle])))
            broken = middle;
        else
            sound = middle + 1;
    }
    return static_cast<int>(broken) + 1;
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
    const std::string_view text = problems.text(source);
    if (const std::optional<Stray> stray = find_stray(text)) {
        problems.add({source, stray->line, stray->column},
                     {"found " + stray->character + " outside quotation marks",
                      "a text or value in quotation marks, such as \"14 °C\"",
                      {}});
        return std::nullopt;
    }
    try {
        const toml::table rehearsal = toml::parse(std::string_view(in_ascii(text)));
        const toml::table root = toml::parse(text);
        Node node = Converter(source, problems).convert(root);
        node.at = {source, 0, 0};
        return node;
    } catch (const toml::parse_error& error) {
        const toml::source_position at = error.source().begin;
        const Position position{source, static_cast<int>(at.line), static_cast<int>(at.column)};
        problems.add(position, remark_of(error.description()));
    } catch (const BrokenAssumption&) {
        problems.add(
            {source, line_that_breaks(in_ascii(text)), 1},
            {"found a line that cannot be read as TOML", "a key, a table header or a comment", {}});
    }
    return std::nullopt;
}

}  // namespace emberpath::scenario
