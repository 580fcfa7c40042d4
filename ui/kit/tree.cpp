#include "ui/kit/tree.hpp"

#include <array>
#include <cmath>

namespace emberpath::kit {

namespace {

void append_place(std::string& out, const Rect& r) {
    const auto whole = [](double v) { return std::to_string(static_cast<long>(std::lround(v))); };
    out += " [" + whole(r.x) + "," + whole(r.y) + " " + whole(r.w) + "x" + whole(r.h) + "]";
}

std::string line_of(const Node& node, std::size_t depth, bool focused) {
    std::string out(depth * 2, ' ');
    out += std::string(name_of(node.role)) + " \"" + node.name + "\"";
    if (!node.value.empty()) out += " = " + node.value;
    if (focused) out += ", focused";
    if (node.selected) out += ", selected";
    if (node.focusable && node.visible.empty()) out += ", out of sight";
    if (!node.enabled) out += ", not now";
    if (!node.hint.empty()) out += " (" + node.hint + ")";
    append_place(out, node.bounds);
    return out + "\n";
}

}  // namespace

std::string_view name_of(Role role) {
    constexpr std::array<std::string_view, 18> names{
        "window", "region", "group",  "heading", "label",   "status",
        "button", "toggle", "choice", "tab",     "list",    "row",
        "field",  "point",  "part",   "reading", "picture", "progress"};
    return names[static_cast<std::size_t>(role)];
}

std::size_t Tree::open(Node node) {
    const std::size_t index = nodes_.size();
    node.parent = open_.empty() ? nothing : open_.back();
    node.last_inside = index;
    nodes_.push_back(std::move(node));
    open_.push_back(index);
    return index;
}

void Tree::close() {
    const std::size_t index = open_.back();
    open_.pop_back();
    nodes_[index].last_inside = nodes_.size() - 1;
}

std::size_t Tree::find(std::string_view id) const {
    if (!id.empty())
        for (std::size_t i = 0; i < nodes_.size(); ++i)
            if (nodes_[i].id == id) return i;
    return nothing;
}

const Node* Tree::get(std::string_view id) const {
    const std::size_t i = find(id);
    return i == nothing ? nullptr : &nodes_[i];
}

bool Tree::is_inside(std::size_t index, std::size_t ancestor) const {
    return index >= ancestor && index <= nodes_[ancestor].last_inside;
}

std::size_t Tree::enclosing(std::size_t index, Role role) const {
    while (index != nothing && nodes_[index].role != role) index = nodes_[index].parent;
    return index;
}

std::size_t Tree::enclosing_group(std::size_t index) const {
    while (index != nothing && nodes_[index].moves == Moves::none) index = nodes_[index].parent;
    return index;
}

std::size_t Tree::enclosing_scroller(std::size_t index) const {
    while (index != nothing && nodes_[index].content_height <= 0.0) index = nodes_[index].parent;
    return index;
}

std::size_t Tree::scope() const {
    for (std::size_t i = nodes_.size(); i-- > 0;)
        if (nodes_[i].modal) return i;
    return 0;
}

std::string Tree::as_text(std::string_view focus) const {
    std::string out;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
        std::size_t depth = 0;
        for (std::size_t p = nodes_[i].parent; p != nothing; p = nodes_[p].parent) ++depth;
        out += line_of(nodes_[i], depth, !focus.empty() && nodes_[i].id == focus);
    }
    return out;
}

}  // namespace emberpath::kit
