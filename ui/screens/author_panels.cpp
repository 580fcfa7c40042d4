#include "ui/kit/layout.hpp"
#include "ui/screens/author_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

double words_height(const kit::Stage& stage, std::string_view words, double width) {
    return static_cast<double>(
               kit::wrapped(stage.metrics(), kit::style::row_quiet, words, width).size()) *
           kit::line_height(kit::type_size::row);
}

/// Fewest readings that tell each pair of causes apart, as a staircase.
void draw_pairs(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const std::size_t n = view.causes.size();
    if (n < 2) return;
    kit::Slicer left(r);
    kit::panel_heading(stage, left.top(24.0, 6.0), "checks.pairs", "Fewest readings to tell apart",
                       "");
    const double names = std::min(150.0, r.w * 0.5);
    const double cell = std::min({32.0, (r.w - names) / static_cast<double>(n - 1),
                                  (left.rest().h - 18.0) / static_cast<double>(n - 1)});
    if (cell < 18.0) return;
    for (std::size_t i = 1; i < n; ++i) {
        const double y = left.rest().y + cell * static_cast<double>(i - 1);
        const double w =
            stage.text({r.x, y, 18.0, cell}, std::to_string(i + 1), kit::style::row_bold);
        stage.text_shortened({r.x + w + 8.0, y, names - w - 14.0, cell}, view.causes[i],
                             kit::style::row);
        for (std::size_t k = 0; k < i && i < view.pairs.size() && k < view.pairs[i].size(); ++k) {
            const PairView& pair = view.pairs[i][k];
            const Rect box{r.x + names + cell * static_cast<double>(k) + 1.0, y + 1.0, cell - 2.0,
                           cell - 2.0};
            const bool hard = pair.readings == 0 || !pair.only_at.empty();
            stage.paint().box(box, hard                ? Token::danger_wash
                                   : pair.readings > 1 ? Token::mark_wash
                                                       : Token::wash);
            if (hard) kit::frame(stage.paint(), box, 1.6, Token::danger);
            const std::string words = !pair.only_at.empty() ? pair.only_at
                                      : pair.readings == 0  ? "none"
                                                            : std::to_string(pair.readings);
            const kit::TextStyle style =
                hard ? kit::TextStyle{kit::Face::bold, kit::type_size::label, Token::danger}
                     : kit::style::row;
            if (stage.width(words, style) <= box.w)
                stage.text(box, words, style, kit::Align::centre);
        }
    }
    for (std::size_t k = 0; k + 1 < n; ++k)
        stage.text({r.x + names + cell * static_cast<double>(k),
                    left.rest().y + cell * static_cast<double>(n - 1), cell, 18.0},
                   std::to_string(k + 1), kit::style::row_bold, kit::Align::centre);
}

}  // namespace

void draw_facts(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const auto region = stage.region("facts", "What is set", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 15.0, 6.0));
    kit::panel_heading(stage, left.top(24.0, 6.0), "facts.heading", "What is set", view.file);
    const double customer =
        view.customer.empty() ? 0.0 : 30.0 + words_height(stage, view.customer, left.rest().w);
    const Rect foot = left.bottom(std::min(customer, left.rest().h * 0.4), 8.0);
    {
        constexpr double h = 44.0;
        kit::ScrollList list(stage, left.rest(), "facts.list", "What is set",
                             h * static_cast<double>(view.facts.size()));
        for (std::size_t i = 0; i < view.facts.size(); ++i) {
            const auto& [name, value] = view.facts[i];
            const Rect row = list.row(h * static_cast<double>(i), h);
            if (list.shows(row)) {
                stage.text_shortened({row.x, row.y + 2.0, row.w - 4.0, 18.0}, name,
                                     kit::style::row_quiet);
                stage.text_shortened({row.x, row.y + 20.0, row.w - 4.0, 20.0}, value,
                                     kit::style::body);
                kit::line(stage.paint(), {row.x, row.bottom()}, {row.right(), row.bottom()},
                          {.width = 1.0, .ink = Token::hair});
            }
            stage.add({.id = "facts." + std::to_string(i),
                       .role = kit::Role::row,
                       .name = name,
                       .value = value,
                       .bounds = row,
                       .focusable = true});
        }
    }
    if (customer == 0.0) return;
    stage.text({foot.x, foot.y, foot.w, 22.0}, "Customer says", kit::style::body_bold);
    stage.clip(foot);
    stage.paragraph({foot.x, foot.y + 24.0, foot.w, foot.h}, view.customer, kit::style::row_quiet);
    stage.unclip();
    stage.add({.id = "facts.customer",
               .role = kit::Role::label,
               .name = "Customer says",
               .value = view.customer,
               .bounds = foot});
}

void draw_checks(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const auto region = stage.region("checks", "Can this job be solved?", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 15.0, 6.0));
    std::size_t open = 0;
    for (const CheckView& c : view.checks) open += c.good ? 0 : 1;
    kit::panel_heading(stage, left.top(24.0, 8.0), "checks.heading", "Can this job be solved?",
                       open == 0 ? "yes" : std::to_string(open) + " open");
    const double pairs_h = view.causes.size() < 2
                               ? 0.0
                               : std::min(52.0 + 32.0 * static_cast<double>(view.causes.size() - 1),
                                          left.rest().h * 0.48);
    const Rect pairs = left.bottom(pairs_h, 10.0);
    const double w = left.rest().w - 46.0;
    double all = 0.0;
    for (const CheckView& c : view.checks) all += 28.0 + words_height(stage, c.words, w);
    {
        kit::ScrollList list(stage, left.rest(), "checks.list", "Checks", all);
        double y = 0.0;
        for (std::size_t i = 0; i < view.checks.size(); ++i) {
            const CheckView& c = view.checks[i];
            const double h = 28.0 + words_height(stage, c.words, w);
            const Rect row = list.row(y, h);
            y += h;
            if (list.shows(row)) {
                kit::draw_mark(stage.paint(), {row.x + 11.0, row.y + 12.0},
                               c.good ? kit::Mark::tick : kit::Mark::hazard, c.good ? 9.0 : 8.0);
                stage.text_shortened({row.x + 28.0, row.y + 2.0, row.w - 30.0, 20.0}, c.title,
                                     c.good ? kit::style::row_bold
                                            : kit::with_ink(kit::style::row_bold, Token::danger));
                stage.paragraph({row.x + 28.0, row.y + 21.0, w, h}, c.words, kit::style::row_quiet);
            }
            stage.add({.id = "checks." + std::to_string(i),
                       .role = kit::Role::row,
                       .name = c.title,
                       .value = std::string(c.good ? "good" : "open") + ", " + c.words,
                       .bounds = row,
                       .focusable = true});
        }
    }
    draw_pairs(stage, pairs, view);
}

}  // namespace emberpath::screens
