#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

constexpr double row_height = 25.0, heading_height = 34.0;

std::string_view words_of(Belief belief) {
    switch (belief) {
        case Belief::held:
            return "held";
        case Belief::doubtful:
            return "doubtful";
        case Belief::struck:
            return "struck out";
    }
    return "";
}

kit::Mark mark_of(Belief belief) {
    switch (belief) {
        case Belief::held:
            return kit::Mark::held;
        case Belief::doubtful:
            return kit::Mark::doubtful;
        case Belief::struck:
            return kit::Mark::struck;
    }
    return kit::Mark::held;
}

std::string spoken(const CauseView& cause) {
    std::string text(words_of(cause.belief));
    for (std::size_t i = 0; i < cause.balloons.size(); ++i)
        text += (i == 0 ? ", because of reading " : " and ") + std::to_string(cause.balloons[i]);
    return text;
}

void draw_row(kit::Stage& stage, const Rect& r, const CauseView& cause) {
    kit::Painter& p = stage.paint();
    kit::draw_mark(p, {r.x + 22.0, r.centre().y}, mark_of(cause.belief), 8.0);
    const bool struck = cause.belief == Belief::struck;
    const double right =
        kit::balloons_before(stage, {r.right() - 12.0, r.centre().y}, cause.balloons,
                             struck ? kit::Balloon::open : kit::Balloon::filled);
    const kit::TextStyle style{cause.belief == Belief::held ? kit::Face::bold : kit::Face::regular,
                               kit::type_size::row, struck ? Token::ink2 : Token::ink};
    const Rect words{r.x + 40.0, r.y, right - r.x - 46.0, r.h};
    const double w = stage.text_shortened(words, cause.title, style);
    if (struck)
        kit::line(p, {words.x, r.centre().y + 0.5}, {words.x + w, r.centre().y + 0.5},
                  {.width = 1.2, .ink = Token::ink2});
    kit::line(p, {r.x + 14.0, r.bottom()}, {r.right() - 12.0, r.bottom()},
              {.width = 1.0, .ink = Token::hair});
}

}  // namespace

double causes_height(std::size_t count) {
    return heading_height + row_height * static_cast<double>(count) + 6.0;
}

void draw_causes(kit::Stage& stage, const Rect& r, const JobView& job) {
    const auto region = stage.region("causes", "Causes you still hold", r);
    kit::panel(stage, r);
    kit::Slicer left(r);
    std::size_t held = 0;
    for (const CauseView& c : job.causes) held += c.belief == Belief::struck ? 0 : 1;
    left.top(6.0);
    kit::panel_heading(stage, kit::inset(left.top(24.0, 4.0), kit::space::panel, 0.0),
                       "causes.heading", "Causes you still hold",
                       std::to_string(held) + " of " + std::to_string(job.causes.size()));
    left.bottom(1.0);
    const Rect view = kit::inset(left.rest(), 1.0, 0.0);
    kit::ScrollList list(stage, view, "causes.list", "Causes",
                         row_height * static_cast<double>(job.causes.size()));
    for (std::size_t i = 0; i < job.causes.size(); ++i) {
        const CauseView& cause = job.causes[i];
        const Rect row = list.row(row_height * static_cast<double>(i), row_height);
        if (list.shows(row)) draw_row(stage, row, cause);
        stage.add({.id = "causes." + cause.word,
                   .role = kit::Role::row,
                   .name = cause.title,
                   .value = spoken(cause),
                   .bounds = row,
                   .command = {"cause", cause.word},
                   .focusable = true});
    }
}

}  // namespace emberpath::screens
