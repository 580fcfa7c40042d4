#pragma once
/// Keys and pointer inside a text field.

#include "ui/kit/interaction.hpp"

namespace emberpath::kit {

/// The editor of a field; made from the field's value when there is none yet.
[[nodiscard]] TextEditor& editor_of(const Node& field, State& state);

enum class Edit { not_for_text, moved, changed };
[[nodiscard]] Edit edit(const KeyPress& press, const Node& field, const Services& services,
                        State& state);
[[nodiscard]] Edit type(const Character& typed, const Node& field, State& state);
/// The caret goes to where the pointer is.
void place_caret(Point at, const Node& field, const Services& services, State& state,
                 bool selecting);
/// Scrolls a field of many lines so that its caret can be seen.
void show_caret(const Node& field, const Services& services, State& state);

}  // namespace emberpath::kit
