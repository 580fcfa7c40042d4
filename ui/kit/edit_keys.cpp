#include "ui/kit/edit_keys.hpp"

#include <algorithm>

#include "ui/kit/text_layout.hpp"

namespace emberpath::kit {

namespace {

TextLayout layout_of(const Node& field, const TextEditor& editor, const TextMetrics& metrics) {
    const FieldSpec& spec = *field.field;
    return lay_out(metrics, spec.style, editor.characters(), spec.text_box.w, spec.many_lines);
}

double scroll_of(const Node& field, const State& state) {
    const auto it = state.scroll.find(field.id);
    return it == state.scroll.end() ? 0.0 : it->second;
}

Edit changed_if(bool did) {
    return did ? Edit::changed : Edit::moved;
}

Edit with_control(const KeyPress& press, const Node& field, const Services& services,
                  TextEditor& editor) {
    const bool selecting = press.modifiers.shift;
    switch (press.key) {
        case Key::a:
            editor.select_all();
            return Edit::moved;
        case Key::c:
            editor.copy(services.clipboard);
            return Edit::moved;
        case Key::x: {
            const bool any = editor.has_selection();
            editor.cut(services.clipboard);
            return changed_if(any);
        }
        case Key::v:
            editor.paste(services.clipboard, field.field->many_lines, field.field->last_reading);
            return Edit::changed;
        case Key::z:
            return changed_if(selecting ? editor.redo() : editor.undo());
        case Key::y:
            return changed_if(editor.redo());
        case Key::left:
            editor.move(TextEditor::Step::word, false, selecting);
            return Edit::moved;
        case Key::right:
            editor.move(TextEditor::Step::word, true, selecting);
            return Edit::moved;
        case Key::home:
            editor.move(TextEditor::Step::all, false, selecting);
            return Edit::moved;
        case Key::end:
            editor.move(TextEditor::Step::all, true, selecting);
            return Edit::moved;
        case Key::backspace:
            editor.backspace(true);
            return Edit::changed;
        case Key::erase:
            editor.erase(true);
            return Edit::changed;
        default:
            return Edit::not_for_text;
    }
}

/// Home and End of the line as wrapped, up and down between lines as wrapped.
Edit move_by_line(const KeyPress& press, const Node& field, const Services& services,
                  TextEditor& editor) {
    const TextLayout layout = layout_of(field, editor, services.metrics);
    const LaidOutLine& line = layout.lines[layout.line_of(editor.caret())];
    const bool selecting = press.modifiers.shift;
    switch (press.key) {
        case Key::home:
            editor.move_to(line.begin, selecting);
            break;
        case Key::end:
            editor.move_to(line.end, selecting);
            break;
        case Key::up:
            editor.move_to(layout.vertical(editor.caret(), -1), selecting);
            break;
        case Key::down:
            editor.move_to(layout.vertical(editor.caret(), 1), selecting);
            break;
        default:
            return Edit::not_for_text;
    }
    return Edit::moved;
}

Edit plain(const KeyPress& press, const Node& field, const Services& services, TextEditor& editor) {
    const bool selecting = press.modifiers.shift;
    switch (press.key) {
        case Key::left:
            editor.move(TextEditor::Step::character, false, selecting);
            return Edit::moved;
        case Key::right:
            editor.move(TextEditor::Step::character, true, selecting);
            return Edit::moved;
        case Key::backspace:
            editor.backspace();
            return Edit::changed;
        case Key::erase:
            editor.erase();
            return Edit::changed;
        case Key::space:
            return Edit::moved;  // arrives as a character
        case Key::enter:
            if (!field.field->many_lines) return Edit::not_for_text;
            editor.type(U'\n');
            return Edit::changed;
        case Key::up:
        case Key::down:
            if (!field.field->many_lines) return Edit::not_for_text;
            [[fallthrough]];
        default:
            return move_by_line(press, field, services, editor);
    }
}

}  // namespace

TextEditor& editor_of(const Node& field, State& state) {
    const auto it = state.editors.find(field.id);
    if (it != state.editors.end()) return it->second;
    return state.editors.emplace(field.id, TextEditor(field.value, field.field->last_reading))
        .first->second;
}

Edit edit(const KeyPress& press, const Node& field, const Services& services, State& state) {
    if (press.modifiers.alt) return Edit::not_for_text;
    TextEditor& editor = editor_of(field, state);
    return press.modifiers.control ? with_control(press, field, services, editor)
                                   : plain(press, field, services, editor);
}

Edit type(const Character& typed, const Node& field, State& state) {
    if (typed.code < 0x20 || typed.code == 0x7F) return Edit::not_for_text;
    editor_of(field, state).type(typed.code, field.field->last_reading);
    return Edit::changed;
}

void place_caret(Point at, const Node& field, const Services& services, State& state,
                 bool selecting) {
    TextEditor& editor = editor_of(field, state);
    const FieldSpec& spec = *field.field;
    const TextLayout layout = layout_of(field, editor, services.metrics);
    const double down = spec.many_lines ? at.y - spec.text_box.y + scroll_of(field, state) : 0.0;
    editor.move_to(layout.index_at({at.x - spec.text_box.x, down}), selecting);
}

void show_caret(const Node& field, const Services& services, State& state) {
    if (!field.field->many_lines) return;
    const TextEditor& editor = editor_of(field, state);
    const TextLayout layout = layout_of(field, editor, services.metrics);
    const double top = static_cast<double>(layout.line_of(editor.caret())) * layout.line_height;
    const double room = field.field->text_box.h;
    double& offset = state.scroll[field.id];
    offset = std::min(offset, top);
    offset = std::max(offset, top + layout.line_height - room);
    offset = std::clamp(offset, 0.0, std::max(0.0, layout.height() - room));
}

}  // namespace emberpath::kit
