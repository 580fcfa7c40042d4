#include "ui/kit/layout.hpp"
#include "ui/screens/author_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

/// Fewest readings that tell each pair of causes apart, as a staircase.
void draw_pairs(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const std::size_t n = view.causes.size();
    if (n < 2) return;
    kit::Slicer left(r);
    kit::panel_heading(stage, left.top(24.0, 6.0), "checks.pairs", "Fewest readings to tell apart",
                       "");
    const double names = std::min(150.0, r.w * 0.6);
    const double cell = std::min({28.0, (r.w - names) / static_cast<double>(n - 1),
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
                                      : pair.readings == 0  ? "–"
                                                            : std::to_string(pair.readings);
            const kit::TextStyle style =
                hard ? kit::TextStyle{kit::Face::bold, kit::type_size::label, Token::danger}
                     : kit::style::row;
            stage.text(box, stage.width(words, style) <= box.w ? words : "1", style,
                       kit::Align::centre);
        }
    }
    const double foot = left.rest().y + cell * static_cast<double>(n - 1) + 22.0;
    if (foot + 36.0 <= r.bottom())
        stage.paragraph({r.x, foot, r.w, r.bottom() - foot},
                        "Framed: only at the point named; –: by no reading here.",
                        kit::style::row_quiet);
    for (std::size_t k = 0; k + 1 < n; ++k)
        stage.text({r.x + names + cell * static_cast<double>(k),
                    left.rest().y + cell * static_cast<double>(n - 1), cell, 18.0},
                   std::to_string(k + 1), kit::style::row_bold, kit::Align::centre);
}

constexpr double path_head = 34.0, path_row = 22.0;

/// How far it is until the panel can say more.
void draw_simulated(kit::Stage& stage, const Rect& r, double share) {
    constexpr const char* words = "Simulating every other cause";
    stage.text({r.x, r.y, r.w, 20.0}, words, kit::style::row);
    kit::progress(stage, {r.x, r.y + 24.0, r.w, 20.0}, "checks.progress", words, share);
}

void draw_check(kit::Stage& stage, const Rect& row, const CheckView& c) {
    if (!c.asks)
        kit::draw_mark(stage.paint(), {row.x + 11.0, row.y + 12.0},
                       c.good ? kit::Mark::tick : kit::Mark::hazard, c.good ? 9.0 : 8.0);
    stage.text_shortened(
        {row.x + 28.0, row.y + 2.0, row.w - 30.0, 20.0}, c.title,
        c.good ? kit::style::row_bold : kit::with_ink(kit::style::row_bold, Token::danger));
    stage.paragraph({row.x + 28.0, row.y + 21.0, row.w - 30.0, row.h}, c.words,
                    kit::style::row_quiet);
}

/// What a careful person would read, one line each.
void draw_path(kit::Stage& stage, const kit::ScrollList& list, double y, const AuthorView& view) {
    const Rect head = list.row(y, path_head);
    if (list.shows(head))
        stage.text({head.x, head.y + 10.0, head.w, 22.0}, "Shortest safe path",
                   kit::style::row_bold);
    for (std::size_t i = 0; i < view.safe_path.size(); ++i) {
        const Rect row = list.row(y + path_head + path_row * static_cast<double>(i), path_row);
        const std::string n = std::to_string(i + 1);
        if (list.shows(row)) {
            stage.text({row.x + 4.0, row.y, 20.0, row.h}, n,
                       kit::with_ink(kit::style::row_bold, Token::mark));
            stage.text_shortened({row.x + 28.0, row.y, row.w - 30.0, row.h}, view.safe_path[i],
                                 kit::style::row);
        }
        stage.add({.id = "checks.path." + n,
                   .role = kit::Role::row,
                   .name = "Step " + n + " of the shortest safe path",
                   .value = view.safe_path[i],
                   .bounds = {row.x, row.y, row.w, std::max(row.h, kit::space::target)},
                   .focusable = false});
    }
}

void draw_check_list(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const double w = r.w - 46.0;
    double all = view.safe_path.empty()
                     ? 0.0
                     : path_head + path_row * static_cast<double>(view.safe_path.size());
    for (const CheckView& c : view.checks)
        all += 28.0 + stage.paragraph_height(w, c.words, kit::style::row_quiet);
    kit::ScrollList list(stage, r, "checks.list", "Checks", all);
    double y = 0.0;
    for (std::size_t i = 0; i < view.checks.size(); ++i) {
        const CheckView& c = view.checks[i];
        const double h = 28.0 + stage.paragraph_height(w, c.words, kit::style::row_quiet);
        const Rect row = list.row(y, h);
        y += h;
        if (list.shows(row)) draw_check(stage, row, c);
        stage.add({.id = "checks." + std::to_string(i),
                   .role = kit::Role::row,
                   .name = c.title,
                   .value = std::string(c.asks   ? ""
                                        : c.good ? "good, "
                                                 : "open, ") +
                            c.words,
                   .bounds = row,
                   .focusable = true});
    }
    if (!view.safe_path.empty()) draw_path(stage, list, y, view);
}

constexpr double fact_row = 44.0, quirks_head = 34.0;

void draw_fact(kit::Stage& stage, const Rect& row, const std::string& name,
               const std::string& value) {
    stage.text_shortened({row.x, row.y + 2.0, row.w - 4.0, 18.0}, name, kit::style::row_quiet);
    stage.text_shortened({row.x, row.y + 20.0, row.w - 4.0, 20.0}, value, kit::style::body);
    kit::line(stage.paint(), {row.x, row.bottom()}, {row.right(), row.bottom()},
              {.width = 1.0, .ink = Token::hair});
}

double quirk_height(const kit::Stage& stage, double w, const std::string& words) {
    return std::max(kit::space::target,
                    8.0 + stage.paragraph_height(w - 20.0, words, kit::style::row));
}

/// What a trainee may take for a fault, below what is set.
void draw_quirks(kit::Stage& stage, const kit::ScrollList& list, double y, double w,
                 const AuthorView& view) {
    const Rect head = list.row(y, quirks_head);
    if (list.shows(head))
        stage.text({head.x, head.y + 10.0, head.w, 22.0}, "Stands out beside the fault",
                   kit::style::body_bold);
    y += quirks_head;
    for (std::size_t i = 0; i < view.quirks.size(); ++i) {
        const Rect row = list.row(y, quirk_height(stage, w, view.quirks[i]));
        y += row.h;
        if (list.shows(row)) {
            stage.text({row.x, row.y + 4.0, 12.0, 18.0}, "·", kit::style::row_bold);
            stage.paragraph({row.x + 12.0, row.y + 4.0, w - 20.0, row.h}, view.quirks[i],
                            kit::style::row);
        }
        stage.add({.id = "facts.quirk." + std::to_string(i),
                   .role = kit::Role::row,
                   .name = view.quirks[i],
                   .value = "stands out beside the fault",
                   .bounds = row,
                   .focusable = true});
    }
}

void draw_fact_list(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const double w = r.w - 16.0;  // beside the scroll bar
    const double facts = fact_row * static_cast<double>(view.facts.size());
    double all = facts + (view.quirks.empty() ? 0.0 : quirks_head);
    for (const std::string& quirk : view.quirks) all += quirk_height(stage, w, quirk);
    kit::ScrollList list(stage, r, "facts.list", "What is set", all);
    for (std::size_t i = 0; i < view.facts.size(); ++i) {
        const auto& [name, value] = view.facts[i];
        const Rect row = list.row(fact_row * static_cast<double>(i), fact_row);
        if (list.shows(row)) draw_fact(stage, row, name, value);
        stage.add({.id = "facts." + std::to_string(i),
                   .role = kit::Role::row,
                   .name = name,
                   .value = value,
                   .bounds = row,
                   .focusable = true});
    }
    if (!view.quirks.empty()) draw_quirks(stage, list, facts, w, view);
}

}  // namespace

void draw_facts(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const auto region = stage.region("facts", "What is set", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 15.0, 6.0));
    kit::panel_heading(stage, left.top(24.0, 6.0), "facts.heading", "What is set", view.file);
    const double customer =
        view.customer.empty()
            ? 0.0
            : 30.0 + stage.paragraph_height(left.rest().w, view.customer, kit::style::row_quiet);
    const Rect foot = left.bottom(std::min(customer, left.rest().h * 0.4), 8.0);
    draw_fact_list(stage, left.rest(), view);
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
    if (view.simulated >= 0.0) draw_simulated(stage, left.top(50.0, 6.0), view.simulated);
    const double pairs_h = view.causes.size() < 2
                               ? 0.0
                               : std::min(52.0 + 32.0 * static_cast<double>(view.causes.size() - 1),
                                          left.rest().h * 0.48);
    const Rect pairs = left.bottom(pairs_h, 10.0);
    draw_check_list(stage, left.rest(), view);
    draw_pairs(stage, pairs, view);
}

}  // namespace emberpath::screens
