#pragma once
/// What is on the screen, for people who do not see it, for the keyboard and for tests: role, name, value,
/// place and state of each thing, in the order in which it is read.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ui/kit/geometry.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::kit {

// clang-format off
enum class Role : std::uint8_t {
    window, region, group, heading, label, status, button, toggle, choice, tab, list, row, field, point,
    part, reading, picture, progress,
};
// clang-format on
[[nodiscard]] std::string_view name_of(Role role);

/// How arrow keys move among the things inside a group.
enum class Moves : std::uint8_t {
    none,
    row,      // left and right; the group is one stop of the Tab key
    column,   // up and down; the group is one stop
    nearest,  // to the nearest thing in that direction; each thing is a stop
};

/// What activating something asks of the program: a name, and whatever belongs to it.
struct Command {
    std::string name, argument{};
    bool operator==(const Command&) const = default;
};

/// A field that text is typed into.
struct FieldSpec {
    Rect text_box;  // where the text stands
    TextStyle style;
    bool many_lines = false;
    int last_reading = 0;  // balloons 1 to this can be cited with #; 0: none
    bool operator==(const FieldSpec&) const = default;
};

/// How far what is drawn inside a thing can still be shifted each way, and by how much it is [logical px].
struct Roam {
    double left = 0.0, right = 0.0, up = 0.0, down = 0.0;
    Point at{};
    std::string shows{};  // id of the thing that was brought into view
    bool operator==(const Roam&) const = default;
};

inline constexpr std::size_t nothing = static_cast<std::size_t>(-1);

struct Node {
    std::string id;  // unique in the tree, the same from frame to frame: "bench.tool.3"
    Role role = Role::group;
    std::string name;     // what it is called
    std::string value{};  // what it holds or says now
    std::string hint{};   // why it cannot be used, or what it needs first
    Rect bounds{};        // where it would be without clipping
    Command command{};    // when activated
    bool focusable = false, enabled = true, selected = false;
    bool modal = false;  // nothing outside it can be used
    Moves moves = Moves::none;
    std::string shortcut{};  // command of the key map that activates it: "record"
    std::string drag{};      // what a drag from here carries; empty: cannot be dragged
    bool accepts_drop = false;
    double content_height = 0.0;  // of what scrolls inside; 0: does not scroll
    std::optional<FieldSpec> field{};
    std::optional<Roam> roam{};  // a drawing larger than its place

    Rect visible{};  // what clipping leaves of the bounds
    std::size_t parent = nothing;
    std::size_t last_inside = 0;  // index of the last descendant, or its own
};

class Tree {
  public:
    /// Opens a node inside the one open now; what is added until close() is inside it.
    std::size_t open(Node node);
    void close();

    [[nodiscard]] const std::vector<Node>& nodes() const { return nodes_; }
    [[nodiscard]] const Node& at(std::size_t index) const { return nodes_[index]; }
    [[nodiscard]] std::size_t find(std::string_view id) const;  // nothing when there is none
    [[nodiscard]] const Node* get(std::string_view id) const;
    [[nodiscard]] bool is_inside(std::size_t index, std::size_t ancestor) const;
    /// The nearest node of that role at or above; nothing when there is none.
    [[nodiscard]] std::size_t enclosing(std::size_t index, Role role) const;
    /// The nearest node at or above with arrow keys.
    [[nodiscard]] std::size_t enclosing_group(std::size_t index) const;
    /// The nearest scrolling node above.
    [[nodiscard]] std::size_t enclosing_scroller(std::size_t index) const;
    /// The topmost modal node, or 0: what can be used now.
    [[nodiscard]] std::size_t scope() const;

    /// One node a line, indented: role, "name", value, state, place to whole pixels. `focus`: id of the
    /// thing that has the keyboard, which is marked.
    [[nodiscard]] std::string as_text(std::string_view focus = {}) const;

  private:
    std::vector<Node> nodes_;
    std::vector<std::size_t> open_;
};

}  // namespace emberpath::kit
