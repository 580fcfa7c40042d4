#include "ui/kit/layout.hpp"
#include "ui/screens/author_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

/// Where "Fewest readings to tell apart" stands, and how large its cells are.
struct Pairs {
    Rect place;
    double names, width, height;  // of a cause's name; of a cell
};

/// On one line, else in smaller type on two; what is longer still is cut, and the row has the whole.
void draw_cause(kit::Stage& stage, const Rect& r, const std::string& words) {
    if (stage.width(words, kit::style::row) <= r.w) {
        stage.text(r, words, kit::style::row);
        return;
    }
    kit::TextStyle style = kit::style::row;
    style.size = kit::type_size::label;
    auto lines = kit::wrapped(stage.metrics(), style, words, r.w);
    const std::size_t most = r.h >= 28.0 ? 2 : 1;
    for (std::size_t k = most; k < lines.size(); ++k) lines[most - 1] += " " + lines[k];
    lines.resize(std::min(lines.size(), most));
    const double step = 15.0, all = step * static_cast<double>(lines.size());
    for (std::size_t k = 0; k < lines.size(); ++k)
        stage.text_shortened(
            {r.x, r.centre().y - all / 2.0 + step * static_cast<double>(k), r.w, step}, lines[k],
            style);
}

bool is_hard(const PairView& pair) {
    return pair.readings == 0 || !pair.only_at.empty();
}

/// A place whose name has no room is a dot: a number would say how many readings.
void draw_pair(kit::Stage& stage, const Rect& box, const PairView& pair) {
    const bool hard = is_hard(pair);
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
    stage.text(box, stage.width(words, style) <= box.w ? words : "·", style, kit::Align::centre);
}

/// "1 reading from This job; 2 readings from Regulator; only by P3 from Fins".
std::string spoken_pairs(const AuthorView& view, std::size_t i) {
    std::string text;
    for (std::size_t k = 0; k < i && i < view.pairs.size() && k < view.pairs[i].size(); ++k) {
        const PairView& pair = view.pairs[i][k];
        text += text.empty() ? "" : "; ";
        text += pair.readings == 0      ? "by no reading here"
                : !pair.only_at.empty() ? "only by " + pair.only_at
                : pair.readings == 1    ? "1 reading"
                                        : std::to_string(pair.readings) + " readings";
        text += " from " + view.causes[k];
    }
    return text;
}

void draw_pair_row(kit::Stage& stage, const Pairs& in, const AuthorView& view, std::size_t i) {
    const Rect row{in.place.x, in.place.y + in.height * static_cast<double>(i - 1), in.place.w,
                   in.height};
    const double w =
        stage.text({row.x, row.y, 18.0, row.h}, std::to_string(i + 1), kit::style::row_bold);
    draw_cause(stage, {row.x + w + 8.0, row.y, in.names - w - 12.0, row.h}, view.causes[i]);
    for (std::size_t k = 0; k < i && i < view.pairs.size() && k < view.pairs[i].size(); ++k)
        draw_pair(stage,
                  {row.x + in.names + in.width * static_cast<double>(k) + 1.0, row.y + 1.0,
                   in.width - 2.0, in.height - 2.0},
                  view.pairs[i][k]);
    stage.add({.id = "checks.pair." + std::to_string(i),
               .role = kit::Role::row,
               .name = view.causes[i],
               .value = spoken_pairs(view, i),
               .bounds = row,
               .focusable = true});
}

/// Fewest readings that tell each pair of causes apart, as a staircase.
void draw_pairs(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const std::size_t n = view.causes.size();
    if (n < 2) return;
    constexpr double numbers_h = 18.0, widest = 28.0, highest = 32.0;
    const auto others = static_cast<double>(n - 1);
    kit::Slicer left(r);
    kit::panel_heading(stage, left.top(24.0, 6.0), "checks.pairs", "Fewest readings to tell apart",
                       "");
    const double names =
        std::clamp(r.w - widest * others, std::min(150.0, r.w * 0.6), std::max(300.0, r.w * 0.6));
    const Pairs in{left.rest(), names, std::min(widest, (r.w - names) / others),
                   std::min(highest, (left.rest().h - numbers_h) / others)};
    if (in.width < 18.0 || in.height < 18.0) return;
    for (std::size_t i = 1; i < n; ++i) draw_pair_row(stage, in, view, i);
    const double below = in.place.y + in.height * others;
    for (std::size_t k = 0; k + 1 < n; ++k)
        stage.text({r.x + names + in.width * static_cast<double>(k), below, in.width, numbers_h},
                   std::to_string(k + 1), kit::style::row_bold, kit::Align::centre);
    const double foot = below + numbers_h + 4.0;
    constexpr const char* key = "Framed: only there (·: a longer name); –: by no reading here.";
    if (foot + stage.paragraph_height(r.w, key, kit::style::row_quiet) <= r.bottom())
        stage.paragraph({r.x, foot, r.w, r.bottom() - foot}, key, kit::style::row_quiet);
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
    const double customer = view.customer.empty()
                                ? 0.0
                                : 30.0 + stage.paragraph_height(left.rest().w - 16.0, view.customer,
                                                                kit::style::row_quiet);
    const Rect foot = left.bottom(std::min(customer, left.rest().h * 0.4), 8.0);
    draw_fact_list(stage, left.rest(), view);
    if (customer == 0.0) return;
    stage.text({foot.x, foot.y, foot.w, 22.0}, "Customer says", kit::style::body_bold);
    const Rect words{foot.x, foot.y + 24.0, foot.w, foot.h - 24.0};
    const double text_w = foot.w - 16.0;  // beside the scroll bar
    const double text_h = stage.paragraph_height(text_w, view.customer, kit::style::row_quiet);
    {
        kit::ScrollList list(stage, words, "facts.words", "Customer says", text_h);
        const Rect text = list.row(0.0, text_h);
        stage.paragraph({text.x, text.y, text_w, text_h}, view.customer, kit::style::row_quiet);
        stage.add({.id = "facts.customer",
                   .role = kit::Role::label,
                   .name = "Customer says",
                   .value = view.customer,
                   .bounds = text,
                   .focusable = text_h > words.h});
    }
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
    const auto others = static_cast<double>(std::max<std::size_t>(view.causes.size(), 1) - 1);
    // As much as they like to have, up to half of the panel; but no less than rows that can be pressed.
    const double least = 49.0 + kit::space::target * others, liked = 90.0 + 32.0 * others;
    const double pairs_h =
        others == 0.0 ? 0.0 : std::min(liked, std::max(least, left.rest().h * 0.48));
    const Rect pairs = left.bottom(pairs_h, 10.0);
    draw_check_list(stage, left.rest(), view);
    draw_pairs(stage, pairs, view);
}

}  // namespace emberpath::screens
