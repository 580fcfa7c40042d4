#include "ui/kit/audit.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "ui/kit/focus.hpp"

namespace emberpath::kit {

namespace {

constexpr double tolerance = 0.5;

std::string quoted(std::string_view text) {
    return "\"" + std::string(text) + "\"";
}

std::string whole(double v) {
    return std::to_string(static_cast<long>(std::lround(v)));
}

std::string at(const Rect& r) {
    return " at " + whole(r.x) + "," + whole(r.y) + " " + whole(r.w) + "x" + whole(r.h);
}

/// Walks with `next` from the first stop until it comes round; what it passed.
template <class Next>
std::set<std::string> walk(const Tree& tree, Next next) {
    std::set<std::string> passed;
    std::string here;
    for (std::size_t i = 0; i <= tree.nodes().size(); ++i) {
        const std::size_t to = next(here);
        if (to == nothing || !passed.insert(tree.at(to).id).second) break;
        here = tree.at(to).id;
    }
    return passed;
}

/// What arrows reach from the things already passed.
void spread_by_arrows(const Tree& tree, std::set<std::string>& passed) {
    std::vector<std::string> waiting(passed.begin(), passed.end());
    while (!waiting.empty()) {
        const std::string here = waiting.back();
        waiting.pop_back();
        for (const Direction d :
             {Direction::left, Direction::right, Direction::up, Direction::down}) {
            const std::size_t to = arrow_target(tree, here, d);
            if (to != nothing && passed.insert(tree.at(to).id).second)
                waiting.push_back(tree.at(to).id);
        }
    }
}

bool overlap(const Rect& a, const Rect& b) {
    const Rect both = intersection(a, b);
    return both.w > tolerance && both.h > tolerance;
}

}  // namespace

std::vector<std::string> names_missing_or_repeated(const Frame& frame) {
    std::vector<std::string> problems;
    std::set<std::string> ids;
    std::set<std::pair<std::size_t, std::string>> names;
    const Tree& tree = frame.tree;
    for (std::size_t i = 0; i < tree.nodes().size(); ++i) {
        const Node& node = tree.at(i);
        const std::string what = std::string(name_of(node.role)) + " " + quoted(node.name);
        if (!ids.insert(node.id).second) problems.push_back("id " + quoted(node.id) + " twice");
        const bool needs_name = node.focusable || node.role == Role::region;
        if (needs_name && node.name.empty())
            problems.push_back(std::string(name_of(node.role)) + " " + quoted(node.id) +
                               " has no name");
        if (!node.focusable) continue;
        const std::size_t region = tree.enclosing(i, Role::region);
        if (region == nothing) problems.push_back(what + " is in no region");
        if (!names.insert({region, node.name + "\n" + node.value}).second)
            problems.push_back(what + " twice in one region");
    }
    return problems;
}

std::vector<std::string> unreachable(const Frame& frame) {
    std::vector<std::string> problems;
    const Tree& tree = frame.tree;
    const FocusMemory none;
    auto passed =
        walk(tree, [&](const std::string& here) { return next_stop(tree, none, here, false); });
    const auto back =
        walk(tree, [&](const std::string& here) { return next_stop(tree, none, here, true); });
    if (passed != back) problems.emplace_back("Shift Tab passes other things than Tab");
    spread_by_arrows(tree, passed);
    const std::size_t scope = tree.scope();
    std::set<std::size_t> regions;
    for (std::size_t i = scope; i <= tree.at(scope).last_inside; ++i) {
        const Node& node = tree.at(i);
        if (!node.focusable) continue;
        regions.insert(tree.enclosing(i, Role::region));
        if (!passed.contains(node.id)) problems.push_back(quoted(node.id) + " is not reached");
    }
    const auto by_f6 =
        walk(tree, [&](const std::string& here) { return next_region(tree, none, here, false); });
    if (by_f6.size() != regions.size())
        problems.push_back("F6 visits " + std::to_string(by_f6.size()) + " of " +
                           std::to_string(regions.size()) + " regions");
    return problems;
}

std::vector<std::string> crowded_texts(const Frame& frame) {
    std::vector<std::string> problems;
    const Rect window{0.0, 0.0, frame.size.w, frame.size.h};
    const auto& texts = frame.texts;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const TextBox& t = texts[i];
        if (t.ink.w > t.box.w + tolerance)
            problems.push_back(quoted(t.text) + " is wider than its box" + at(t.box));
        if (t.visible.empty()) continue;
        if (t.ink.left() < window.left() - tolerance || t.ink.right() > window.right() + tolerance)
            problems.push_back(quoted(t.text) + " leaves the window" + at(t.ink));
        for (std::size_t j = 0; j < i; ++j)
            if (texts[j].layer == t.layer && overlap(texts[j].visible, t.visible))
                problems.push_back(quoted(t.text) + " covers " + quoted(texts[j].text) +
                                   at(t.visible));
    }
    return problems;
}

std::vector<std::string> scrolled_by_pointer_only(const Frame& frame) {
    std::vector<std::string> problems;
    const Tree& tree = frame.tree;
    const std::size_t scope = tree.scope();
    bool list_seen = false;
    for (std::size_t i = scope; i <= tree.at(scope).last_inside; ++i) {
        const Node& node = tree.at(i);
        const bool first_in_front = scope != 0 && node.role == Role::list && !list_seen;
        list_seen = list_seen || node.role == Role::list;
        if (node.content_height <= node.bounds.h + tolerance || first_in_front) continue;
        bool takes_focus = false;
        for (std::size_t j = i; j <= node.last_inside; ++j)
            takes_focus = takes_focus || tree.at(j).focusable;
        if (!takes_focus) problems.push_back(quoted(node.id) + " scrolls by the pointer only");
    }
    return problems;
}

std::vector<std::string> small_targets(const Frame& frame) {
    std::vector<std::string> problems;
    const Tree& tree = frame.tree;
    const std::size_t scope = tree.scope();
    for (std::size_t i = scope; i <= tree.at(scope).last_inside; ++i) {
        const Node& node = tree.at(i);
        if (!node.focusable) continue;
        const Rect& r = node.bounds;
        if (r.w < space::target - 0.01 || r.h < space::target - 0.01)
            problems.push_back(quoted(node.id) + " is small" + at(r));
        for (std::size_t j = scope; j < i; ++j)
            if (tree.at(j).focusable && overlap(tree.at(j).visible, node.visible))
                problems.push_back(quoted(node.id) + " covers " + quoted(tree.at(j).id));
    }
    return problems;
}

std::vector<std::string> missing_characters(const Frame& frame, const TextMetrics& metrics) {
    std::vector<std::string> problems;
    for (const TextBox& t : frame.texts)
        for (const char32_t c : decode(t.text))
            if (!metrics.has(t.face, c))
                problems.push_back("no shape for a character of " + quoted(t.text));
    return problems;
}

std::vector<CutText> cut_texts(const Frame& frame) {
    std::vector<CutText> found;
    for (const TextBox& t : frame.texts) {
        if (!t.shortened || t.visible.empty()) continue;
        CutText cut{t.text, "", false};
        const std::string begins = t.text.substr(0, t.text.rfind("…"));
        for (const Node& node : frame.tree.nodes()) {
            if (!node.visible.contains(t.visible.centre())) continue;
            bool whole = false;
            for (const std::string* words : {&node.name, &node.value, &node.hint})
                whole = whole || with_minus(*words).find(begins) != std::string::npos;
            if (cut.whole && !whole) continue;
            cut.place = node.id;
            cut.whole = whole;
        }
        found.push_back(std::move(cut));
    }
    return found;
}

}  // namespace emberpath::kit
