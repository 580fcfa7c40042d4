#include <algorithm>

#include "ui/kit/text_layout.hpp"
#include "ui/kit/widgets.hpp"

namespace emberpath::kit {

namespace {

Node list_node(std::string_view id, std::string_view name, const Rect& view, Moves moves) {
    return {.id = std::string(id),
            .role = Role::list,
            .name = std::string(name),
            .bounds = view,
            .moves = moves};
}

Node scrolling(Node node, double content) {
    node.content_height = content;
    return node;
}

double offset_of(const Stage& stage, std::string_view id, double most) {
    const auto it = stage.state().scroll.find(id);
    return it == stage.state().scroll.end() ? 0.0
                                            : std::clamp(it->second, 0.0, std::max(0.0, most));
}

void draw_selection(Stage& stage, const TextLayout& layout, const TextEditor& editor,
                    Point origin) {
    const std::size_t begin = editor.selection_begin(), end = editor.selection_end();
    for (std::size_t i = 0; i < layout.lines.size(); ++i) {
        const LaidOutLine& l = layout.lines[i];
        const std::size_t from = std::max(begin, l.begin), to = std::min(end, l.end);
        if (from > to || (from == to && end <= l.end)) continue;
        const double x0 = l.x[from - l.begin], x1 = l.x[to - l.begin] + (end > l.end ? 5.0 : 0.0);
        stage.paint().box({origin.x + x0, origin.y + static_cast<double>(i) * layout.line_height,
                           x1 - x0, layout.line_height},
                          Token::mark_wash);
    }
}

/// A line of the text: runs of characters, and balloons where readings are cited.
void draw_text_line(Stage& stage, const TextEditor& editor, const LaidOutLine& l, const Rect& row,
                    const TextStyle& style) {
    const std::u32string& text = editor.characters();
    const double cap = stage.metrics().cap_height_em(style.face) * style.size;
    std::size_t i = l.begin;
    while (i < l.end) {
        const double x = row.x + l.x[i - l.begin];
        if (is_citation(text[i])) {
            const double w = l.x[i + 1 - l.begin] - l.x[i - l.begin];
            balloon(stage, {x + w / 2.0, row.centre().y}, cited_number(text[i]), Balloon::filled,
                    style.size * 0.7);
            ++i;
            continue;
        }
        std::size_t run = i;
        while (run < l.end && !is_citation(text[run])) ++run;
        stage.paint().text({x, row.centre().y + cap / 2.0},
                           encode(std::u32string_view(text).substr(i, run - i)), style);
        i = run;
    }
}

void draw_editor(Stage& stage, const Rect& box, const TextEditor& editor, const TextFieldSpec& spec,
                 double offset) {
    const TextLayout layout =
        lay_out(stage.metrics(), spec.style, editor.characters(), box.w, spec.many_lines);
    const double top = spec.many_lines ? box.y - offset : box.centre().y - layout.line_height / 2.0;
    const Point origin{box.x, top};
    const bool focused = stage.is_focused(spec.id);
    if (focused && editor.has_selection()) draw_selection(stage, layout, editor, origin);
    for (std::size_t i = 0; i < layout.lines.size(); ++i) {
        const Rect row{box.x, top + static_cast<double>(i) * layout.line_height, box.w,
                       layout.line_height};
        draw_text_line(stage, editor, layout.lines[i], row, spec.style);
    }
    if (!focused) return;
    const double x = origin.x + layout.x_of(editor.caret());
    const double y =
        origin.y + static_cast<double>(layout.line_of(editor.caret())) * layout.line_height;
    stage.paint().box({x, y + 1.0, 2.0, layout.line_height - 2.0}, Token::ink);
}

}  // namespace

void panel(Stage& stage, const Rect& r) {
    stage.paint().box(r, Token::paper);
    frame(stage.paint(), r, 1.0, Token::rule);
}

void label(Stage& stage, const Rect& box, std::string_view id, std::string_view utf8,
           const TextStyle& s) {
    stage.text(box, utf8, s);
    stage.add(
        {.id = std::string(id), .role = Role::label, .name = std::string(utf8), .bounds = box});
}

void panel_heading(Stage& stage, const Rect& row, std::string_view id, std::string_view title,
                   std::string_view note) {
    const double left = stage.text(row, title, style::body_bold);
    const double right =
        note.empty() ? 0.0 : stage.text(row, note, style::row_quiet, Align::end) + 10.0;
    const double from = row.x + left + 10.0, to = row.right() - right;
    if (to - from > 8.0)
        line(stage.paint(), {from, row.centre().y}, {to, row.centre().y},
             {.width = line_width::divider, .ink = Token::hair});
    stage.add({.id = std::string(id),
               .role = Role::heading,
               .name = std::string(title),
               .value = std::string(note),
               .bounds = row});
}

ScrollList::ScrollList(Stage& stage, const Rect& view, std::string_view id, std::string_view name,
                       double content_height, Moves moves)
    : stage_(stage),
      view_(view),
      content_(content_height),
      offset_(offset_of(stage, id, content_height - view.h)),
      scope_(stage.inside(scrolling(list_node(id, name, view, moves), content_height))) {
    stage_.clip(view_);
}

Rect ScrollList::row(double y, double height) const {
    const double bar = scrolls() ? bar_width : 0.0;
    return {view_.x, view_.y + y - offset_, view_.w - bar, height};
}

ScrollList::~ScrollList() {
    if (scrolls()) {
        Painter& p = stage_.paint();
        const double x = view_.right() - 6.0, length = std::max(24.0, view_.h * view_.h / content_);
        const double room = view_.h - length, most = content_ - view_.h;
        const double y = view_.y + room * (most > 0.0 ? offset_ / most : 0.0);
        p.box({x, view_.y, 4.0, view_.h}, Token::wash);
        p.fill(rounded_rectangle({x, y, 4.0, length}, 2.0), Token::rule);
    }
    stage_.unclip();
}

void text_field(Stage& stage, const Rect& r, const TextFieldSpec& spec) {
    Painter& p = stage.paint();
    shape(p, rectangle(r), Token::well, {.width = line_width::control, .ink = Token::rule});
    const Rect box = spec.many_lines ? inset(r, 13.0, 8.0) : inset(r, 13.0, 2.0);
    const auto held = stage.state().editors.find(spec.id);
    const TextEditor editor = held != stage.state().editors.end()
                                  ? held->second
                                  : TextEditor(spec.text, spec.last_reading);
    const TextLayout layout =
        lay_out(stage.metrics(), spec.style, editor.characters(), box.w, spec.many_lines);
    const double offset = offset_of(stage, spec.id, layout.height() - box.h);
    stage.clip(inset(r, 1.0));
    if (editor.characters().empty() && !spec.placeholder.empty()) {
        const Rect first = spec.many_lines ? Rect{box.x, box.y, box.w, layout.line_height} : box;
        stage.text_shortened(first, spec.placeholder, {Face::italic, spec.style.size, Token::ink2});
    }
    draw_editor(stage, box, editor, spec, offset);
    stage.unclip();
    stage.add({.id = spec.id,
               .role = Role::field,
               .name = spec.name,
               .value = editor.text(),
               .bounds = r,
               .command = spec.command,
               .focusable = true,
               .content_height = spec.many_lines ? layout.height() + r.h - box.h : 0.0,
               .field = FieldSpec{box, spec.style, spec.many_lines, spec.last_reading}});
}

void chooser(Stage& stage, const Rect& r, const ButtonSpec& spec) {
    Painter& p = stage.paint();
    shape(p, rectangle(r), Token::well, {.width = line_width::control, .ink = Token::rule});
    stage.text_shortened({r.x + 13.0, r.y, r.w - 44.0, r.h}, spec.value, style::body_bold);
    const Point c{r.right() - 20.0, r.centre().y};
    const Point chevron[] = {{c.x - 6.0, c.y - 3.0}, {c.x, c.y + 3.0}, {c.x + 6.0, c.y - 3.0}};
    p.stroke(chevron, {.width = 1.8, .ink = Token::ink});
    stage.add({.id = spec.id,
               .role = Role::button,
               .name = spec.name,
               .value = spec.value,
               .hint = spec.hint,
               .bounds = r,
               .command = spec.command,
               .focusable = true,
               .enabled = spec.enabled,
               .shortcut = spec.shortcut});
}

void progress(Stage& stage, const Rect& r, std::string_view id, std::string_view name,
              double share) {
    Painter& p = stage.paint();
    const double y = r.centre().y, done = r.w * std::clamp(share, 0.0, 1.0);
    line(p, {r.x, y}, {r.right(), y}, {.width = 1.0, .ink = Token::rule});
    for (int i = 0; i <= 20; ++i) {
        const double x = r.x + r.w * i / 20.0, deep = i % 5 == 0 ? 8.0 : 4.0;
        line(p, {x, y}, {x, y + deep}, {.width = 1.0, .ink = Token::rule});
    }
    p.box({r.x, y - 4.0, done, 8.0}, Token::ink);
    stage.add({.id = std::string(id),
               .role = Role::progress,
               .name = std::string(name),
               .value = std::to_string(static_cast<int>(share * 100.0)) + " %",
               .bounds = r});
}

}  // namespace emberpath::kit
