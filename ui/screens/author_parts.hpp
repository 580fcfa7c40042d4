#pragma once
/// Panels of the author's preview.

#include "ui/kit/widgets.hpp"
#include "ui/screens/author.hpp"

namespace emberpath::screens {

void draw_preview(kit::Stage& stage, const kit::Rect& r, const AuthorView& view);
void draw_facts(kit::Stage& stage, const kit::Rect& r, const AuthorView& view);
void draw_checks(kit::Stage& stage, const kit::Rect& r, const AuthorView& view);

}  // namespace emberpath::screens
