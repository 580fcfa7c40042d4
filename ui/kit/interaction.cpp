#include "ui/kit/interaction.hpp"

#include <algorithm>
#include <utility>

#include "ui/kit/edit_keys.hpp"

namespace emberpath::kit {

namespace {

using Commands = std::vector<Command>;

constexpr std::string_view pan_begin = "pan ";

const Node* focused_node(const Frame& frame, const State& state) {
    return frame.tree.get(state.focus);
}

const Node* focused_field(const Frame& frame, const State& state) {
    const Node* node = focused_node(frame, state);
    return node != nullptr && node->field ? node : nullptr;
}

std::size_t hit(const Tree& tree, Point at) {
    const std::size_t scope = tree.scope();
    for (std::size_t i = tree.at(scope).last_inside + 1; i-- > scope;)
        if (tree.at(i).focusable && tree.at(i).visible.contains(at)) return i;
    return nothing;
}

std::string id_at(const Tree& tree, std::size_t index) {
    return index == nothing ? std::string() : tree.at(index).id;
}

Commands activate(const Node& node) {
    if (!node.enabled) return {{"not now", node.hint.empty() ? node.name : node.hint}};
    if (node.command.name.empty()) return {};
    return {node.command};
}

/// Space presses these; on anything else it is the program's key.
bool pressed_by_space(Role role) {
    return role == Role::button || role == Role::toggle || role == Role::choice ||
           role == Role::tab || role == Role::row;
}

std::string_view place_of(const Frame& frame) {
    return frame.tree.scope() != 0 ? std::string_view("dialog") : std::string_view(frame.where);
}

/// The drawing that can be shifted at a place of the screen, or the first one there is.
std::size_t roaming_node(const Tree& tree, const Point* at) {
    const std::size_t scope = tree.scope();
    for (std::size_t i = scope; i <= tree.at(scope).last_inside; ++i)
        if (tree.at(i).roam && (at == nullptr || tree.at(i).visible.contains(*at))) return i;
    return nothing;
}

/// Shifts what is drawn, as far as there is something to be seen.
Commands shift_drawing(const Tree& tree, Point by) {
    const std::size_t at = roaming_node(tree, nullptr);
    if (at == nothing) return {};
    const Roam& room = *tree.at(at).roam;
    const double x = std::clamp(by.x, -room.left, room.right);
    const double y = std::clamp(by.y, -room.up, room.down);
    return {{"pan", std::to_string(x) + " " + std::to_string(y)}};
}

/// "pan left" and its like: the eye goes there, so the drawing goes the other way.
Commands pan_by_key(std::string_view way, const Tree& tree) {
    constexpr double step = 80.0;
    if (way == "left") return shift_drawing(tree, {step, 0.0});
    if (way == "right") return shift_drawing(tree, {-step, 0.0});
    if (way == "up") return shift_drawing(tree, {0.0, step});
    return shift_drawing(tree, {0.0, -step});
}

Commands run(std::string_view command, const Frame& frame, State& state) {
    if (command.empty()) return {};
    if (command.starts_with(pan_begin)) return pan_by_key(command.substr(4), frame.tree);
    if (command.starts_with("prefix.")) {
        state.prefix = command.substr(7);
        return {};
    }
    const Tree& tree = frame.tree;
    const std::size_t scope = tree.scope();
    for (std::size_t i = scope; i <= tree.at(scope).last_inside; ++i)
        if (tree.at(i).shortcut == command) return activate(tree.at(i));
    return {{std::string(command), ""}};
}

void go(const Frame& frame, std::size_t index, State& state) {
    if (index == nothing) return;
    focus_on(frame.tree, index, state);
    state.focus_shown = true;
}

bool move_by_arrow(Key key, const Frame& frame, State& state) {
    std::size_t target = nothing;
    switch (key) {
        case Key::left:
            target = arrow_target(frame.tree, state.focus, Direction::left);
            break;
        case Key::right:
            target = arrow_target(frame.tree, state.focus, Direction::right);
            break;
        case Key::up:
            target = arrow_target(frame.tree, state.focus, Direction::up);
            break;
        case Key::down:
            target = arrow_target(frame.tree, state.focus, Direction::down);
            break;
        case Key::home:
            target = group_end(frame.tree, state.focus, false);
            break;
        case Key::end:
            target = group_end(frame.tree, state.focus, true);
            break;
        default:
            return false;
    }
    go(frame, target, state);
    return target != nothing;
}

void scroll_by(const Tree& tree, std::size_t scroller, double amount, State& state) {
    const Node& node = tree.at(scroller);
    double& offset = state.scroll[node.id];
    offset = std::clamp(offset + amount, 0.0, std::max(0.0, node.content_height - node.bounds.h));
}

/// The list of what is in front of all else, while the focus is not in it: "nothing" when there is none.
std::size_t list_in_front(const Tree& tree, const State& state) {
    const std::size_t scope = tree.scope();
    if (scope == 0 || tree.enclosing_scroller(tree.find(state.focus)) != nothing) return nothing;
    for (std::size_t i = scope; i <= tree.at(scope).last_inside; ++i)
        if (tree.at(i).role == Role::list) return i;
    return nothing;
}

/// Down leads from a field or a button into the list below it.
bool enter_list(Key key, const Frame& frame, State& state) {
    const std::size_t list = key == Key::down ? list_in_front(frame.tree, state) : nothing;
    if (list == nothing) return false;
    for (std::size_t i = list + 1; i <= frame.tree.at(list).last_inside; ++i)
        if (frame.tree.at(i).focusable) {
            go(frame, i, state);
            return true;
        }
    return false;
}

/// The list around the focus; in front of all else, also one that holds nothing to press.
std::size_t scrolled_by_keys(const Tree& tree, const State& state) {
    const std::size_t around = tree.enclosing_scroller(tree.find(state.focus));
    return around != nothing ? around : list_in_front(tree, state);
}

bool scroll_by_key(Key key, const Frame& frame, State& state) {
    const bool page = key == Key::page_up || key == Key::page_down;
    if (!page && key != Key::up && key != Key::down) return false;
    const std::size_t scroller = scrolled_by_keys(frame.tree, state);
    if (scroller == nothing) return false;
    constexpr double line = 40.0;
    const double far = page ? frame.tree.at(scroller).bounds.h * 0.9 : line;
    const bool back = key == Key::page_up || key == Key::up;
    scroll_by(frame.tree, scroller, back ? -far : far, state);
    return true;
}

Commands after_edit(Edit what, const Node& field, const Services& services, State& state) {
    show_caret(field, services, state);
    if (what == Edit::changed) return {{"edited", field.id}};
    return {};
}

Commands on_key(const KeyPress& press, const Frame& frame, const Services& services, State& state) {
    state.prefix.clear();
    if (const Node* field = focused_field(frame, state)) {
        const Edit what = edit(press, *field, services, state);
        if (what != Edit::not_for_text) return after_edit(what, *field, services, state);
    }
    const bool plain = !press.modifiers.control && !press.modifiers.alt;
    if (plain && press.key == Key::tab) {
        go(frame, next_stop(frame.tree, state.memory, state.focus, press.modifiers.shift), state);
        return {};
    }
    if (plain && press.key == Key::f6) {
        go(frame, next_region(frame.tree, state.memory, state.focus, press.modifiers.shift), state);
        return {};
    }
    if (plain && !press.modifiers.shift &&
        (move_by_arrow(press.key, frame, state) || enter_list(press.key, frame, state) ||
         scroll_by_key(press.key, frame, state)))
        return {};
    Chord chord{press.key, 0, press.modifiers};
    // "+" stands above "=" on many keyboards and by itself on others: both are the same key.
    if (press.key == Key::plus || press.key == Key::minus || press.key == Key::zero)
        chord.modifiers.shift = false;
    const auto command = services.keys.command(chord, place_of(frame));
    if (press.repeated && !command.starts_with(pan_begin)) return {};
    const Node* node = focused_node(frame, state);
    if (node != nullptr && plain && !press.modifiers.shift) {
        if (press.key == Key::enter) return activate(*node);
        if (press.key == Key::space && pressed_by_space(node->role)) return activate(*node);
    }
    return run(command, frame, state);
}

/// In a list in front of all else: the next row whose name begins with that letter.
bool go_to_letter(char32_t code, const Frame& frame, State& state) {
    const Tree& tree = frame.tree;
    const std::size_t from = tree.find(state.focus), list = tree.enclosing_scroller(from);
    if (tree.scope() == 0 || list == nothing || code > 127) return false;
    const auto lower = [](char32_t c) { return c >= U'A' && c <= U'Z' ? c + 32 : c; };
    const std::size_t rows = tree.at(list).last_inside - list;
    for (std::size_t step = 1; step <= rows; ++step) {
        const std::size_t i = list + 1 + (from - list - 1 + step) % rows;
        const Node& row = tree.at(i);
        if (!row.focusable || row.name.empty()) continue;
        if (lower(static_cast<unsigned char>(row.name.front())) != lower(code)) continue;
        go(frame, i, state);
        return true;
    }
    return false;
}

Commands on_character(const Character& typed, const Frame& frame, const Services& services,
                      State& state) {
    if (const Node* field = focused_field(frame, state))
        return after_edit(type(typed, *field, state), *field, services, state);
    if (typed.repeated || typed.code == U' ') return {};
    if (!state.prefix.empty()) {
        const std::string prefix = std::exchange(state.prefix, "");
        if (typed.code >= U'0' && typed.code <= U'9')
            return run(prefix + "." + static_cast<char>(typed.code), frame, state);
    }
    const auto command = services.keys.command({Key::none, typed.code, {}}, place_of(frame));
    if (command.empty() && go_to_letter(typed.code, frame, state)) return {};
    return run(command, frame, state);
}

Commands on_press(const PointerPress& press, const Frame& frame, const Services& services,
                  State& state) {
    if (press.secondary) return {};
    const std::size_t at = press.middle ? nothing : hit(frame.tree, press.at);
    state.pressed = id_at(frame.tree, at);
    state.pointer = press.at;
    if (at == nothing) {  // on empty drawing, or with the middle button anywhere on it
        state.roaming = roaming_node(frame.tree, &press.at) != nothing;
        return {};
    }
    const Node& node = frame.tree.at(at);
    focus_on(frame.tree, at, state);
    state.focus_shown = node.field.has_value();
    state.dragging = node.drag;
    if (node.field) place_caret(press.at, node, services, state, press.modifiers.shift);
    return {};
}

Commands on_release(const PointerRelease& release, const Frame& frame, State& state) {
    const std::string pressed = std::exchange(state.pressed, "");
    const std::string carried = std::exchange(state.dragging, "");
    if (std::exchange(state.roaming, false) || release.middle) return {};
    const std::size_t at = hit(frame.tree, release.at);
    if (at == nothing || release.secondary) return {};
    const Node& node = frame.tree.at(at);
    if (node.id == pressed) return node.field ? Commands{} : activate(node);
    if (!carried.empty() && node.accepts_drop) return {{"drop", carried + ">" + node.id}};
    return {};
}

Commands on_move(const PointerMove& move, const Frame& frame, const Services& services,
                 State& state) {
    const Point by = move.at - state.pointer;
    state.pointer = move.at;
    if (state.roaming) return shift_drawing(frame.tree, by);
    state.hovered = id_at(frame.tree, hit(frame.tree, move.at));
    const Node* field = focused_field(frame, state);
    if (field != nullptr && state.pressed == field->id)
        place_caret(move.at, *field, services, state, true);
    return {};
}

Commands on_wheel(const Wheel& wheel, const Frame& frame, State& state) {
    const Tree& tree = frame.tree;
    const std::size_t scope = tree.scope();
    for (std::size_t i = tree.at(scope).last_inside + 1; i-- > scope;) {
        const Node& node = tree.at(i);
        if (node.content_height > node.bounds.h && node.visible.contains(wheel.at)) {
            scroll_by(tree, i, -wheel.steps * 40.0, state);
            return {};
        }
    }
    return {{"wheel", wheel.steps > 0.0 ? "+1" : "-1"}};
}

/// Keys of somebody who goes by the focus.
bool leads(Key key) {
    return key == Key::enter || key == Key::space || key == Key::tab || key == Key::left ||
           key == Key::right || key == Key::up || key == Key::down;
}

struct Handler {
    const Frame& frame;
    const Services& services;
    State& state;
    Commands operator()(const KeyPress& e) const {
        if (leads(e.key)) state.focus_shown = true;
        return on_key(e, frame, services, state);
    }
    Commands operator()(const Character& e) const {
        return on_character(e, frame, services, state);
    }
    Commands operator()(const PointerMove& e) const { return on_move(e, frame, services, state); }
    Commands operator()(const PointerPress& e) const { return on_press(e, frame, services, state); }
    Commands operator()(const PointerRelease& e) const { return on_release(e, frame, state); }
    Commands operator()(const Wheel& e) const { return on_wheel(e, frame, state); }
    Commands operator()(const Resize&) const { return {}; }
    Commands operator()(const CloseRequest&) const { return {{"close window", ""}}; }
    Commands operator()(const WindowFocus& e) const {
        if (!e.has) {
            state.pressed = state.dragging = state.prefix = "";
            state.roaming = false;
        }
        return {};
    }
};

/// Where the focus goes when its thing is gone: the first stop of the region its name began with.
std::size_t replacement(const Tree& tree, const State& state) {
    const std::string_view id = state.focus;
    const std::string_view region = id.substr(0, id.find('.'));
    const auto stops = tab_stops(tree, state.memory);
    for (const std::size_t stop : stops) {
        const std::string_view other = tree.at(stop).id;
        if (other.substr(0, other.find('.')) == region) return stop;
    }
    return stops.empty() ? nothing : stops.front();
}

}  // namespace

std::vector<Command> handle(const Event& event, const Frame& frame, const Services& services,
                            State& state) {
    return std::visit(Handler{frame, services, state}, event);
}

void settle(const Frame& frame, State& state) {
    const Tree& tree = frame.tree;
    const std::size_t scope = tree.scope();
    const std::string in_front = scope == 0 ? "" : tree.at(scope).id;
    if (in_front != state.in_front) {
        if (!state.in_front.empty() && in_front.empty()) state.focus = state.behind;
        if (!in_front.empty()) {
            if (state.in_front.empty()) state.behind = state.focus;
            const auto stops = tab_stops(tree, state.memory);
            state.focus = stops.empty() ? "" : tree.at(stops.front()).id;
            state.focus_shown = true;
        }
        state.in_front = in_front;
    }
    const std::size_t at = tree.find(state.focus);
    const bool usable = at != nothing && tree.is_inside(at, scope) && tree.at(at).focusable;
    if (state.focus.empty() || usable) return;
    state.focus = id_at(tree, replacement(tree, state));
}

bool wants_key_repeat(const Frame& frame, const State& state) {
    const Node* node = focused_node(frame, state);
    return node != nullptr && (node->field.has_value() ||
                               frame.tree.enclosing_group(frame.tree.find(state.focus)) != nothing);
}

void focus_on(const Tree& tree, std::size_t index, State& state) {
    if (index == nothing) return;
    const Node& node = tree.at(index);
    state.focus = node.id;
    remember(tree, node.id, state.memory);
    const std::size_t scroller = tree.enclosing_scroller(node.parent);
    if (scroller == nothing) return;
    const Node& list = tree.at(scroller);
    double amount = 0.0;
    if (node.bounds.bottom() > list.bounds.bottom())
        amount = node.bounds.bottom() - list.bounds.bottom();
    if (node.bounds.top() - amount < list.bounds.top())
        amount = node.bounds.top() - list.bounds.top();
    if (amount != 0.0) scroll_by(tree, scroller, amount, state);
}

}  // namespace emberpath::kit
