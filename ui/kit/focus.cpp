#include "ui/kit/focus.hpp"

#include <algorithm>

namespace emberpath::kit {

namespace {

bool is_one_stop(const Node& node) {
    return node.moves == Moves::row || node.moves == Moves::column;
}

/// The row or column around a node, itself not counted.
std::size_t one_stop_group(const Tree& tree, std::size_t index) {
    for (std::size_t p = tree.at(index).parent; p != nothing; p = tree.at(p).parent)
        if (is_one_stop(tree.at(p))) return p;
    return nothing;
}

std::vector<std::size_t> members(const Tree& tree, std::size_t group) {
    std::vector<std::size_t> found;
    for (std::size_t i = group + 1; i <= tree.at(group).last_inside; ++i)
        if (tree.at(i).focusable) found.push_back(i);
    return found;
}

std::size_t entry_of(const Tree& tree, std::size_t group, const FocusMemory& memory) {
    const std::vector<std::size_t> inside = members(tree, group);
    if (inside.empty()) return nothing;
    if (const auto it = memory.find(tree.at(group).id); it != memory.end())
        for (const std::size_t i : inside)
            if (tree.at(i).id == it->second) return i;
    for (const std::size_t i : inside)
        if (tree.at(i).selected) return i;
    return inside.front();
}

std::ptrdiff_t place_in(const std::vector<std::size_t>& list, std::size_t index) {
    const auto it = std::find(list.begin(), list.end(), index);
    return it == list.end() ? -1 : it - list.begin();
}

std::size_t step(const std::vector<std::size_t>& list, std::ptrdiff_t from, bool backwards) {
    const auto n = static_cast<std::ptrdiff_t>(list.size());
    if (n == 0) return nothing;
    if (from < 0) return backwards ? list.back() : list.front();
    return list[static_cast<std::size_t>((from + (backwards ? n - 1 : 1)) % n)];
}

/// Where the focus counts as standing among the stops: inside a group it is the group's stop.
std::ptrdiff_t stop_of_focus(const Tree& tree, const std::vector<std::size_t>& stops,
                             std::size_t focus) {
    if (focus == nothing) return -1;
    if (const auto own = place_in(stops, focus); own >= 0) return own;
    const std::size_t group = one_stop_group(tree, focus);
    if (group == nothing) return -1;
    for (std::size_t i = 0; i < stops.size(); ++i)
        if (tree.is_inside(stops[i], group)) return static_cast<std::ptrdiff_t>(i);
    return -1;
}

/// How far a thing lies in a direction; sideways distance counts double. Negative: not in that direction.
double reach(const Rect& from, const Rect& to, Direction direction) {
    const Point d = to.centre() - from.centre();
    const bool level = direction == Direction::left || direction == Direction::right;
    const bool back = direction == Direction::left || direction == Direction::up;
    const double ahead = (level ? d.x : d.y) * (back ? -1.0 : 1.0);
    const double aside = std::abs(level ? d.y : d.x);
    return ahead > 1.0 && aside <= 3.0 * ahead ? ahead + 2.0 * aside : -1.0;
}

std::size_t nearest(const Tree& tree, const std::vector<std::size_t>& inside, std::size_t from,
                    Direction direction) {
    std::size_t best = nothing;
    double least = 0.0;
    for (const std::size_t i : inside) {
        const double far =
            i == from ? -1.0 : reach(tree.at(from).bounds, tree.at(i).bounds, direction);
        if (far >= 0.0 && (best == nothing || far < least)) {
            best = i;
            least = far;
        }
    }
    return best;
}

}  // namespace

std::vector<std::size_t> tab_stops(const Tree& tree, const FocusMemory& memory) {
    std::vector<std::size_t> stops;
    if (tree.nodes().empty()) return stops;
    const std::size_t scope = tree.scope();
    for (std::size_t i = scope; i <= tree.at(scope).last_inside; ++i) {
        if (is_one_stop(tree.at(i))) {
            if (const std::size_t entry = entry_of(tree, i, memory); entry != nothing)
                stops.push_back(entry);
            i = tree.at(i).last_inside;
        } else if (tree.at(i).focusable) {
            stops.push_back(i);
        }
    }
    return stops;
}

std::size_t next_stop(const Tree& tree, const FocusMemory& memory, std::string_view focus,
                      bool backwards) {
    const auto stops = tab_stops(tree, memory);
    return step(stops, stop_of_focus(tree, stops, tree.find(focus)), backwards);
}

std::size_t next_region(const Tree& tree, const FocusMemory& memory, std::string_view focus,
                        bool backwards) {
    std::vector<std::size_t> regions;
    for (const std::size_t stop : tab_stops(tree, memory)) {
        const std::size_t region = tree.enclosing(stop, Role::region);
        if (region != nothing && place_in(regions, region) < 0) regions.push_back(region);
    }
    const std::size_t at = tree.find(focus);
    const std::size_t own = at == nothing ? nothing : tree.enclosing(at, Role::region);
    const std::size_t region = step(regions, place_in(regions, own), backwards);
    if (region == nothing) return nothing;
    if (const auto it = memory.find(tree.at(region).id); it != memory.end()) {
        const std::size_t left = tree.find(it->second);
        if (left != nothing && tree.at(left).focusable && tree.is_inside(left, region)) return left;
    }
    for (const std::size_t stop : tab_stops(tree, memory))
        if (tree.is_inside(stop, region)) return stop;
    return nothing;
}

std::size_t arrow_target(const Tree& tree, std::string_view focus, Direction direction) {
    const std::size_t from = tree.find(focus);
    if (from == nothing) return nothing;
    const std::size_t group = tree.enclosing_group(tree.at(from).parent);
    if (group == nothing) return nothing;
    const auto inside = members(tree, group);
    if (tree.at(group).moves == Moves::nearest) return nearest(tree, inside, from, direction);
    const bool level = direction == Direction::left || direction == Direction::right;
    if (level != (tree.at(group).moves == Moves::row)) return nothing;
    const std::ptrdiff_t at = place_in(inside, from);
    const std::ptrdiff_t to =
        at + (direction == Direction::left || direction == Direction::up ? -1 : 1);
    if (at < 0 || to < 0 || to >= static_cast<std::ptrdiff_t>(inside.size())) return nothing;
    return inside[static_cast<std::size_t>(to)];
}

std::size_t group_end(const Tree& tree, std::string_view focus, bool last) {
    const std::size_t from = tree.find(focus);
    if (from == nothing) return nothing;
    const std::size_t group = tree.enclosing_group(tree.at(from).parent);
    if (group == nothing) return nothing;
    const auto inside = members(tree, group);
    return inside.empty() ? nothing : last ? inside.back() : inside.front();
}

void remember(const Tree& tree, std::string_view focus, FocusMemory& memory) {
    const std::size_t at = tree.find(focus);
    if (at == nothing) return;
    for (std::size_t p = tree.at(at).parent; p != nothing; p = tree.at(p).parent)
        if (is_one_stop(tree.at(p)) || tree.at(p).role == Role::region)
            memory[tree.at(p).id] = std::string(focus);
}

}  // namespace emberpath::kit
