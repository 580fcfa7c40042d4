#include <algorithm>

#include "ui/kit/layout.hpp"
#include "ui/kit/widgets.hpp"

namespace emberpath::kit {

namespace {

constexpr double pad = 12.0, cap_height = 18.0, cap_pad = 6.0;
constexpr TextStyle cap_style{Face::bold, type_size::label, Token::ink};

Node node_of(const ButtonSpec& spec, const Rect& r, Role role) {
    return {.id = spec.id,
            .role = role,
            .name = spec.name,
            .value = spec.value,
            .hint = spec.hint,
            .bounds = r,
            .command = spec.command,
            .focusable = true,
            .enabled = spec.enabled,
            .selected = spec.selected,
            .shortcut = spec.shortcut};
}

void cap_box(Stage& stage, const Rect& r, std::string_view caps, Ink fill, Ink text) {
    Painter& p = stage.paint();
    shape(p, rounded_rectangle(r, 3.0), fill, {.width = 1.0, .ink = Token::rule});
    stage.text(r, caps, with_ink(cap_style, text), Align::centre);
}

struct Look {
    Ink fill, edge, text;
    double edge_width = line_width::control;
};

Look look_of(const Stage& stage, const ButtonSpec& spec) {
    if (!spec.enabled) return {Token::paper, Token::rule, Token::ink2};
    if (spec.primary) return {Token::ink, Token::ink, Token::paper};
    const bool touched = stage.state().hovered == spec.id || stage.state().pressed == spec.id;
    const Token fill = touched ? Token::wash : Token::paper;
    if (spec.default_one) return {fill, Token::ink, Token::ink, 2.0};
    return {fill, Token::rule, Token::ink};
}

/// Caps at both ends; what is left of the button is for its name.
void draw_caps(Stage& stage, Slicer& inner, const ButtonSpec& spec) {
    const Rect r = inner.rest();
    if (spec.number.empty()) {
        inner.left(pad);
    } else {
        const double w = key_cap_width(stage, spec.number);
        const bool strong = spec.default_one && spec.enabled;
        cap_box(stage, around({r.x + 6.0 + w / 2.0, r.centre().y}, w, cap_height), spec.number,
                strong ? Token::ink : Token::wash, strong ? Token::paper : Token::ink);
        inner.left(w + 11.0);
    }
    if (!spec.caps.empty()) {
        const double w = key_cap_width(stage, spec.caps);
        const bool dark = spec.primary && spec.enabled;
        cap_box(stage, around({r.right() - pad + 3.0 - w / 2.0, r.centre().y}, w, cap_height),
                spec.caps, dark ? Token::ink : Token::wash, dark ? Token::paper : Token::ink);
        inner.right(w + pad);
    }
    inner.right(std::min(spec.cost.empty() ? 8.0 : 6.0, inner.rest().w));
}

}  // namespace

TextStyle fitting(const Stage& stage, std::string_view words, TextStyle style, double width) {
    while (style.size > type_size::label && stage.width(words, style) > width)
        style.size = std::max(type_size::label, style.size - 1.0);
    return style;
}

double key_cap_width(const Stage& stage, std::string_view caps) {
    return std::max(cap_height, stage.width(caps, cap_style) + 2.0 * cap_pad);
}

double key_cap(Stage& stage, Point from, std::string_view caps) {
    const double w = key_cap_width(stage, caps);
    cap_box(stage, {from.x, from.y - cap_height / 2.0, w, cap_height}, caps, Token::wash,
            Token::ink);
    return w;
}

double button_width(const Stage& stage, const ButtonSpec& spec) {
    double w = 2.0 * pad + stage.width(spec.name, style::body_bold);
    if (!spec.caps.empty()) w += pad + key_cap_width(stage, spec.caps);
    if (!spec.number.empty()) w += key_cap_width(stage, spec.number) + 2.0;
    if (!spec.cost.empty()) w += stage.width(spec.cost, style::label) + 10.0;
    if (!spec.hint.empty())
        w += stage.width(spec.hint, {Face::italic, type_size::label, Token::ink2}) + 12.0;
    return w;
}

void button(Stage& stage, const Rect& r, const ButtonSpec& spec) {
    const Look look = look_of(stage, spec);
    shape(stage.paint(), rounded_rectangle(r, space::radius), look.fill,
          {.width = look.edge_width,
           .ink = look.edge,
           .dash = spec.enabled ? std::vector<double>{} : std::vector<double>{4.0, 3.0}});
    stage.add(node_of(spec, r, Role::button));
    if (spec.picture_only) return;
    const bool bold = spec.primary || spec.default_one;
    const TextStyle style = with_ink(bold ? style::body_bold : style::body, look.text);
    const TextStyle hint{Face::italic, type_size::label, Token::ink2};
    const bool hint_fits =
        !spec.hint.empty() &&
        stage.width(spec.name, style) + stage.width(spec.hint, hint) + pad + 16.0 <= r.w;
    const bool alone = spec.caps.empty() && spec.number.empty() && !hint_fits && spec.cost.empty();
    if (alone) {
        stage.text(r, spec.name, style, Align::centre);
        return;
    }
    Slicer inner(r);
    ButtonSpec drawn = spec;  // a name matters more than its key, which the help has too
    if (stage.width(spec.name, {style.face, type_size::label, {}}) +
            key_cap_width(stage, spec.caps) >
        r.w - 2.0 * pad - 8.0)
        drawn.caps.clear();
    draw_caps(stage, inner, drawn);
    if (!spec.cost.empty() && spec.hint.empty()) {
        const TextStyle quiet =
            with_ink(style::label, spec.primary ? Ink(Token::paper) : Ink(Token::ink2));
        stage.text(inner.right(stage.width(spec.cost, quiet), 5.0), spec.cost, quiet);
    }
    const double w = stage.text_shortened(inner.rest(), spec.name,
                                          fitting(stage, spec.name, style, inner.rest().w));
    Slicer after(inner.rest());
    after.left(w + 8.0);
    if (!spec.hint.empty() && stage.width(spec.hint, hint) <= after.rest().w)
        stage.text(after.rest(), spec.hint, hint);
}

void link(Stage& stage, const Rect& r, const ButtonSpec& spec) {
    const double w = stage.text(r, spec.name, style::body, Align::end);
    const double y = r.centre().y + 8.0;
    line(stage.paint(), {r.right() - w, y}, {r.right(), y}, {.width = 1.0, .ink = Token::ink});
    stage.add(node_of(spec, r, Role::button));
}

void toggle(Stage& stage, const Rect& r, const ButtonSpec& spec) {
    Painter& p = stage.paint();
    const Rect mark = around({r.x + 9.0, r.centre().y}, 15.0, 15.0);
    shape(p, rectangle(mark), Token::well, {.width = line_width::control, .ink = Token::rule});
    if (spec.selected) {
        const Point c = mark.centre();
        const Point path[] = {{c.x - 4.5, c.y}, {c.x - 1.5, c.y + 3.5}, {c.x + 4.5, c.y - 4.0}};
        p.stroke(path, {.width = 2.0, .ink = Token::ink});
    }
    stage.text({r.x + 26.0, r.y, r.w - 26.0, r.h}, spec.name, style::body);
    Node node = node_of(spec, r, Role::toggle);
    node.value = spec.selected ? "on" : "off";
    stage.add(std::move(node));
}

void segments(Stage& stage, const Rect& r, std::string_view id, std::string_view name,
              std::span<const Choice> choices) {
    Painter& p = stage.paint();
    shape(p, rounded_rectangle(r, space::radius), Token::paper,
          {.width = line_width::control, .ink = Token::rule});
    const auto scope = stage.inside({.id = std::string(id),
                                     .role = Role::group,
                                     .name = std::string(name),
                                     .bounds = r,
                                     .moves = Moves::row});
    const auto cells = columns(r, choices.size());
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const Choice& c = choices[i];
        if (c.selected) p.fill(rounded_rectangle(cells[i], space::radius), Token::ink);
        if (!c.selected && i > 0 && !choices[i - 1].selected)
            line(p, {cells[i].x, r.y + 5.0}, {cells[i].x, r.bottom() - 5.0},
                 {.width = 1.0, .ink = Token::hair});
        stage.text(cells[i], c.name,
                   {c.selected ? Face::bold : Face::regular, type_size::row,
                    c.selected ? Token::paper : Token::ink},
                   Align::centre);
        stage.add({.id = c.id,
                   .role = Role::choice,
                   .name = c.spoken.empty() ? c.name : c.spoken,
                   .bounds = cells[i],
                   .command = c.command,
                   .focusable = true,
                   .selected = c.selected});
    }
}

void tabs(Stage& stage, const Rect& r, std::string_view id, std::string_view name,
          std::span<const Choice> choices) {
    const auto scope = stage.inside({.id = std::string(id),
                                     .role = Role::group,
                                     .name = std::string(name),
                                     .bounds = r,
                                     .moves = Moves::row});
    double x = r.x;
    for (const Choice& c : choices) {
        const TextStyle style{c.selected ? Face::bold : Face::regular, type_size::body,
                              c.selected ? Token::ink : Token::ink2};
        const double w = stage.width(c.name, style) + 20.0;
        const Rect cell{x, r.y, w, r.h};
        stage.text(cell, c.name, style, Align::centre);
        if (c.selected) stage.paint().box({x + 6.0, r.bottom() - 4.0, w - 12.0, 4.0}, Token::ink);
        stage.add({.id = c.id,
                   .role = Role::tab,
                   .name = c.spoken.empty() ? c.name : c.spoken,
                   .bounds = cell,
                   .command = c.command,
                   .focusable = true,
                   .selected = c.selected});
        x += w + 4.0;
    }
}

}  // namespace emberpath::kit
