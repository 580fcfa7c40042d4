#include "ui/screens/states.hpp"

#include "ui/kit/layout.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/screens/overlays.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

void begin(kit::Stage& stage, std::string_view where) {
    stage.place(where);
    stage.paint().box(stage.whole(), Token::desk);
}

/// A wavy line under the wrong part.
void underline(kit::Painter& p, double from, double to, double y) {
    kit::Path path;
    bool up = true;
    for (double x = from; x <= to; x += 4.0, up = !up) path.push_back({x, y + (up ? 0.0 : 3.0)});
    p.stroke(path, {.width = 1.5, .ink = Token::danger});
}

void draw_line_of_file(kit::Stage& stage, const Rect& r, const ErrorView& view) {
    kit::shape(stage.paint(), kit::rectangle(r), Token::well,
               {.width = kit::line_width::control, .ink = Token::rule});
    const Rect first{r.x + 14.0, r.y + 8.0, r.w - 28.0, 22.0};
    const double number_w = stage.text(first, view.line_number, kit::style::body_quiet) + 14.0;
    const Rect code{first.x + number_w, first.y, first.w - number_w, first.h};
    stage.text_shortened(code, view.line, kit::style::body);
    const std::u32string line = kit::decode(view.line);
    const auto width_to = [&](std::size_t n) {
        return stage.width(kit::encode(line.substr(0, std::min(n, line.size()))), kit::style::body);
    };
    const double to = std::min(code.x + width_to(view.from + view.length), code.right());
    underline(stage.paint(), code.x + width_to(view.from), to, code.bottom());
    stage.paragraph({code.x, code.bottom() + 8.0, code.w, 60.0}, view.right,
                    kit::with_ink(kit::style::body, Token::danger));
    stage.add({.id = "error.line",
               .role = kit::Role::label,
               .name = view.line,
               .value = view.right,
               .bounds = r});
}

void draw_loading(kit::Stage& stage, const LoadingView& view) {
    const Rect sheet = kit::inset(stage.whole(), 8.0);
    const auto region = stage.region("loading", view.title, sheet);
    const Rect inner = draw_sheet_frame(stage, sheet, false);
    const double w = std::min(360.0, inner.w - 40.0), mid = inner.centre().y;
    const Rect column{inner.centre().x - w / 2.0, mid - 60.0, w, 160.0};
    stage.text({column.x, column.y, w, 26.0}, view.title, kit::style::heading, kit::Align::centre);
    stage.use(kit::Layer::moving);
    if (view.share >= 0.0)
        kit::progress(stage, {column.x, column.y + 34.0, w, 20.0}, "loading.progress", view.title,
                      view.share);
    const double below = view.share >= 0.0 ? 62.0 : 34.0;
    const Rect words{inner.x + 8.0, column.y + below, inner.w - 16.0, 22.0};
    stage.text(words, view.words, kit::fitting(stage, view.words, kit::style::body_quiet, words.w),
               kit::Align::centre);
    stage.text({words.x, words.y + 21.0, words.w, 20.0}, view.since, kit::style::row_quiet,
               kit::Align::centre);
    stage.use(kit::Layer::still);
    stage.add({.id = "loading.words",
               .role = kit::Role::status,
               .name = view.words,
               .value = view.since,
               .bounds = words});
    if (!view.can_be_stopped) return;
    const kit::ButtonSpec back{.id = "loading.back",
                               .name = "Stop and go back",
                               .command = {"back"},
                               .caps = stage.keys().caps("back")};
    const double bw = kit::button_width(stage, back);
    kit::button(stage, {inner.centre().x - bw / 2.0, column.y + 112.0, bw, 28.0}, back);
}

void draw_error(kit::Stage& stage, const ErrorView& view) {
    const Rect r = kit::inset(stage.whole(), 8.0);
    const auto region = stage.region("error", view.title, r);
    kit::panel(stage, r);
    stage.paint().box({r.x, r.y, 5.0, r.h}, Token::danger);
    const double w = std::min(640.0, r.w - 60.0), indent = 58.0;
    kit::Slicer left(
        {r.x + std::max(24.0, (r.w - w) / 2.0), r.y + std::max(16.0, r.h * 0.14), w, r.h * 0.8});
    const Rect head = left.top(48.0, 14.0);
    kit::draw_mark(stage.paint(), {head.x + 22.0, head.y + 22.0}, kit::Mark::hazard, 17.0);
    stage.text_shortened({head.x + indent, head.y, head.w - indent, 26.0}, view.title,
                         {kit::Face::bold, 20.0, Token::ink});
    stage.text_shortened({head.x + indent, head.y + 26.0, head.w - indent, 22.0}, view.place,
                         kit::style::body_quiet);
    stage.add({.id = "error.title",
               .role = kit::Role::heading,
               .name = view.title,
               .value = view.place,
               .bounds = head});
    left.left(indent);
    if (!view.line.empty()) draw_line_of_file(stage, left.top(100.0, 18.0), view);
    if (view.line.empty()) {
        const double h = stage.paragraph(left.rest(), view.right, kit::style::body);
        stage.add({.id = "error.right",
                   .role = kit::Role::label,
                   .name = view.right,
                   .bounds = {left.rest().x, left.rest().y, left.rest().w, h}});
        left.top(h, 18.0);
    }
    std::vector<double> widths;
    std::vector<kit::ButtonSpec> specs;
    for (std::size_t i = 0; i < view.ways.size(); ++i) {
        specs.push_back({.id = "error.way." + std::to_string(i + 1),
                         .name = view.ways[i].name,
                         .command = view.ways[i].command,
                         .primary = i == 0});
        widths.push_back(kit::button_width(stage, specs.back()));
    }
    const auto boxes = kit::wrapped_row(left.rest(), widths, 32.0, {12.0, 8.0});
    for (std::size_t i = 0; i < boxes.size(); ++i) kit::button(stage, boxes[i], specs[i]);
    const double below = boxes.empty() ? left.rest().y : boxes.back().bottom() + 22.0;
    const Rect safe{left.rest().x, below, left.rest().w, 22.0};
    stage.paragraph(safe, view.safe, kit::style::body_quiet);
    stage.add({.id = "error.safe", .role = kit::Role::label, .name = view.safe, .bounds = safe});
}

void draw_too_small(kit::Stage& stage) {
    const auto region = stage.region("small", "The window is too small", stage.whole());
    stage.paint().box(stage.whole(), Token::paper);
    const Rect r = kit::inset(stage.whole(), 10.0);
    const std::string words =
        "This window is too small. Make it larger, or the text smaller with Ctrl and minus.";
    stage.clip(r);
    stage.paragraph(r, words, kit::style::body);
    stage.unclip();
    stage.add({.id = "small.words", .role = kit::Role::status, .name = words, .bounds = r});
}

}  // namespace

kit::Frame loading_screen(const Setting& setting, const LoadingView& view) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    begin(stage, "loading");
    draw_loading(stage, view);
    return finished(stage, setting, "loading");
}

kit::Frame error_screen(const Setting& setting, const ErrorView& view) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    begin(stage, "error");
    draw_error(stage, view);
    return finished(stage, setting, "error");
}

kit::Frame too_small_screen(const Setting& setting) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    begin(stage, "too small");
    draw_too_small(stage);
    return finished(stage, setting, "too small");
}

}  // namespace emberpath::screens
