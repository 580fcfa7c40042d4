#include "ui/screens/overlays.hpp"

#include <array>

#include "ui/kit/layout.hpp"
#include "ui/kit/widgets.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

Rect centred(const kit::Stage& stage, double w, double h) {
    const kit::Size s = stage.size();
    return kit::around({s.w / 2.0, s.h / 2.0}, std::min(w, s.w - 24.0), std::min(h, s.h - 24.0));
}

kit::Stage::Scope modal(kit::Stage& stage, std::string_view id, std::string_view name,
                        const Rect& r) {
    return stage.inside({.id = std::string(id),
                         .role = kit::Role::region,
                         .name = std::string(name),
                         .bounds = r,
                         .modal = true});
}

void draw_waits(kit::Stage& stage) {
    struct Wait {
        const char *words, *argument;
    };
    static constexpr std::array<Wait, 5> waits{{{"10 seconds", "10 s"},
                                                {"30 seconds", "30 s"},
                                                {"2 minutes", "2 min"},
                                                {"10 minutes", "10 min"},
                                                {"Until something changes", "change"}}};
    const Rect r = centred(stage, 380.0, 292.0);
    const auto scope = modal(stage, "waits", "Choose a wait", r);
    kit::Slicer left(draw_plate(stage, r, "waits", "How long do you wait?"));
    for (std::size_t i = 0; i < waits.size(); ++i)
        kit::button(stage, left.top(30.0, 6.0),
                    {.id = "waits." + std::to_string(i + 1),
                     .name = waits[i].words,
                     .command = {"wait for", waits[i].argument},
                     .number = std::to_string(i + 1),
                     .shortcut = "choice." + std::to_string(i + 1),
                     .default_one = i == 1});
    close_button(stage, r, "waits");
    stage.paragraph(left.rest(), "It stops early if something happens that you would notice.",
                    kit::style::row_quiet);
}

void draw_go_to(kit::Stage& stage, const JobView& job) {
    const Rect r = centred(stage, 460.0, 330.0);
    const auto scope = modal(stage, "goto", "Go to a point or part", r);
    kit::Slicer left(draw_plate(stage, r, "goto", "Go to"));
    kit::text_field(stage, left.top(32.0, 10.0),
                    {.id = "goto.name",
                     .name = "Tag, name or act",
                     .text = "",
                     .placeholder = "P1, shower, or an act in words: open shower fully",
                     .command = {"go to named"}});
    close_button(stage, r, "goto");  // after the field: what is typed goes there
    if (job.found.empty()) {
        stage.paragraph(left.rest(), "No thing of that name, and no act that can be read so.",
                        kit::style::row_quiet);
        return;
    }
    kit::ScrollList list(stage, left.rest(), "goto.list", "Points, parts and acts",
                         28.0 * static_cast<double>(job.found.size()));
    for (std::size_t i = 0; i < job.found.size(); ++i) {
        const FoundView& v = job.found[i];
        const Rect row = list.row(28.0 * static_cast<double>(i), 28.0);
        if (list.shows(row)) {
            const Rect cost{row.right() - 62.0, row.y, 54.0, row.h};
            const double w = cost.x - row.x - 52.0 - 8.0 + (v.cost.empty() ? cost.w : 0.0);
            stage.text({row.x + 6.0, row.y, 44.0, row.h}, v.tag, kit::style::body_bold);
            stage.text_shortened({row.x + 52.0, row.y, w, row.h}, v.name, kit::style::body);
            stage.text(cost, v.cost, kit::style::row_quiet, kit::Align::end);
        }
        stage.add({.id = "goto." + v.id,
                   .role = kit::Role::row,
                   .name = v.tag.empty() ? v.name : v.tag + " " + v.name,
                   .value = v.cost,
                   .bounds = row,
                   .command = {v.command, v.argument},
                   .focusable = true});
    }
}

void draw_notice(kit::Stage& stage, const JobView& job) {
    const double w = std::min(520.0, stage.size().w - 24.0);
    const Rect r =
        centred(stage, w, 110.0 + stage.paragraph_height(w - 40.0, job.notice, kit::style::body));
    const auto scope = modal(stage, "notice", job.notice_title, r);
    kit::Slicer left(draw_plate(stage, r, "notice", job.notice_title));
    stage.paint().box({r.x, r.y, 5.0, r.h}, Token::danger);
    kit::Slicer foot(left.bottom(30.0, 8.0));
    stage.paragraph(left.rest(), job.notice, kit::style::body);
    stage.add({.id = "notice.words",
               .role = kit::Role::status,
               .name = job.notice,
               .bounds = left.rest()});
    const kit::ButtonSpec go_on{.id = "notice.close",
                                .name = "Go on",
                                .command = {"back"},
                                .caps = stage.keys().caps("back"),
                                .primary = true};
    kit::button(stage, foot.left(kit::button_width(stage, go_on)), go_on);
}

/// A paragraph of the job card under its small heading.
struct CardEntry {
    std::string id, heading, words;
    std::string name;  // for who does not see it: the same may be asked twice
    kit::TextStyle style;
    double top = 0.0, height = 0.0;
};

std::vector<CardEntry> card_entries(const kit::Stage& stage, const CardView& card, double w) {
    std::vector<CardEntry> entries{{"jobcard.office", "What the office wrote down", card.office,
                                    "What the office wrote down", kit::style::body}};
    for (std::size_t i = 0; i < card.said.size(); ++i)
        entries.push_back({"jobcard.said." + std::to_string(i + 1),
                           "The customer, when you said \"" + card.said[i].asked + "\"",
                           "“" + card.said[i].words + "”",
                           "The customer, when you said \"" + card.said[i].asked + "\", answer " +
                               std::to_string(i + 1),
                           kit::style::quote});
    double top = 0.0;
    for (CardEntry& e : entries) {
        e.top = top;
        e.height = 20.0 + stage.paragraph_height(w, e.words, e.style) + 10.0;
        top += e.height;
    }
    return entries;
}

/// Everything that was said so far; the strip under the sheet has room for the last of it only.
void draw_card(kit::Stage& stage, const JobView& job) {
    const double w = std::min(520.0, stage.size().w - 24.0),
                 inside_w = w - 40.0 - kit::ScrollList::bar_width;
    const CardEntry last = card_entries(stage, job.card, inside_w).back();
    const Rect r = centred(stage, w, 92.0 + last.top + last.height);
    const auto scope = modal(stage, "jobcard", "Job card", r);
    kit::Slicer left(draw_plate(stage, r, "jobcard", job.rail.job + ", " + job.rail.address));
    close_button(stage, r, "jobcard");
    kit::label(stage, left.top(22.0, 8.0), "jobcard.gas", job.card.gas + ", " + job.rail.mode,
               kit::style::body_quiet);
    draw_card_entries(stage, left.rest(), job.card);
}

/// "1 to 6", as far as keys follow each other; "1 to 5, X" when one was changed.
std::string from_to(const std::string& listed, const std::string& next) {
    const char last = listed.back();
    const bool follows = next.size() == 1 && next.front() == last + 1 &&
                         (listed.size() == 1 || listed[listed.size() - 2] == ' ');
    if (!follows) return listed + ", " + next;
    const auto to = listed.rfind(" to ");
    const bool goes_on = to != std::string::npos && to + 5 == listed.size();
    return (goes_on ? listed.substr(0, to) : listed) + " to " + next;
}

/// All actions in one line, and keys that do the very same.
std::vector<kit::Binding> listed_keys(const kit::KeyMap& keys, std::string_view where) {
    std::vector<kit::Binding> listed;
    for (kit::Binding b : keys.at(where)) {
        const bool action = b.command.starts_with("action.");
        const bool again =
            !listed.empty() && listed.back().command == b.command && listed.back().words == b.words;
        const bool further =
            action && !listed.empty() && listed.back().command.starts_with("action.");
        if (further)
            listed.back().chord = from_to(listed.back().chord, b.chord);
        else if (action)
            listed.push_back({b.command, b.where, b.chord, "that action on the selected thing"});
        else if (again)
            listed.back().chord += " or " + b.chord;
        else
            listed.push_back(std::move(b));
    }
    return listed;
}

}  // namespace

void draw_card_entries(kit::Stage& stage, const Rect& r, const CardView& card) {
    const double w = r.w - kit::ScrollList::bar_width;
    const auto entries = card_entries(stage, card, w);
    const double all = entries.back().top + entries.back().height;
    kit::ScrollList list(stage, r, "jobcard.list", "What was written and said", all);
    for (const CardEntry& e : entries) {
        const Rect row = list.row(e.top, e.height);
        if (list.shows(row)) {
            stage.text_shortened({row.x, row.y, w, 18.0}, e.heading, kit::style::row_quiet);
            stage.paragraph({row.x, row.y + 20.0, w, row.h - 20.0}, e.words, e.style);
        }
        stage.add({.id = e.id,
                   .role = kit::Role::row,
                   .name = e.name,
                   .value = e.words,
                   .bounds = row,
                   .focusable = list.scrolls()});
    }
}

Rect draw_plate(kit::Stage& stage, const Rect& r, std::string_view id, std::string_view title) {
    kit::Painter& p = stage.paint();
    p.box(stage.whole(), kit::Ink(Token::ink, 0.28));
    p.box(r, Token::paper);
    kit::frame(p, r, 2.0, Token::ink);
    kit::Slicer left(kit::inset(r, 20.0, 14.0));
    kit::label(stage, left.top(26.0, 8.0), std::string(id) + ".title", title, kit::style::heading);
    return left.rest();
}

void close_button(kit::Stage& stage, const Rect& plate, std::string_view id) {
    const kit::ButtonSpec spec{.id = std::string(id) + ".close",
                               .name = "Close",
                               .command = {"back"},
                               .caps = stage.keys().caps("back")};
    const double w = kit::button_width(stage, spec);
    kit::button(stage, {plate.right() - w - 14.0, plate.y + 12.0, w, 28.0}, spec);
}

void draw_keys(kit::Stage& stage, std::string_view where) {
    const auto listed = listed_keys(stage.keys(), where);
    const bool two = stage.size().w > 860.0;
    const Rect r =
        centred(stage, two ? 860.0 : 520.0,
                92.0 + 26.0 * static_cast<double>(two ? (listed.size() + 1) / 2 : listed.size()));
    const auto scope = modal(stage, "keys", "All keys for where you are", r);
    const Rect inside = draw_plate(stage, r, "keys", "All keys for where you are");
    close_button(stage, r, "keys");
    const std::size_t lines = two ? (listed.size() + 1) / 2 : listed.size();
    kit::ScrollList list(stage, inside, "keys.list", "Keys", 26.0 * static_cast<double>(lines));
    for (std::size_t i = 0; i < listed.size(); ++i) {
        const bool right = i >= lines;
        Rect row = list.row(26.0 * static_cast<double>(i % lines), 26.0);
        if (two) row = {row.x + (right ? row.w / 2.0 + 8.0 : 0.0), row.y, row.w / 2.0 - 8.0, row.h};
        if (list.shows(row)) {
            kit::key_cap(stage, {row.x, row.centre().y}, listed[i].chord);
            stage.text_shortened({row.x + 92.0, row.y, row.w - 92.0, row.h}, listed[i].words,
                                 kit::style::row);
        }
        stage.add({.id = "keys." + std::to_string(i),
                   .role = kit::Role::row,
                   .name = listed[i].chord,
                   .value = listed[i].words,
                   .bounds = row});
    }
}

void draw_question(kit::Stage& stage, const Question& q) {
    stage.use(kit::Layer::over);
    const Rect r = centred(stage, 460.0, 200.0);
    const auto scope = modal(stage, "question", q.title, r);
    kit::Slicer left(draw_plate(stage, r, "question", q.title));
    if (q.grave) stage.paint().box({r.x, r.y, 5.0, r.h}, Token::danger);
    kit::Slicer foot(left.bottom(30.0, 8.0));
    stage.paragraph(left.rest(), q.words, kit::style::body);
    stage.add(
        {.id = "question.words", .role = kit::Role::label, .name = q.words, .bounds = left.rest()});
    const kit::ButtonSpec no{.id = "question.no",
                             .name = q.no,
                             .command = {"back"},
                             .caps = stage.keys().caps("back"),
                             .default_one = true};
    const kit::ButtonSpec yes{.id = "question.yes", .name = q.yes, .command = q.yes_command};
    kit::button(stage, foot.left(kit::button_width(stage, no), 12.0), no);
    kit::button(stage, foot.left(kit::button_width(stage, yes)), yes);
    stage.use(kit::Layer::still);
}

kit::Frame finished(kit::Stage& stage, const Setting& setting, std::string_view where) {
    if (setting.help) {
        stage.use(kit::Layer::over);
        draw_keys(stage, where);
        stage.use(kit::Layer::still);
    }
    if (setting.question != nullptr) draw_question(stage, *setting.question);
    return stage.finish();
}

void draw_in_front(kit::Stage& stage, const JobView& job, InFront front) {
    stage.use(kit::Layer::over);
    switch (front) {
        case InFront::nothing:
            break;
        case InFront::keys:
            draw_keys(stage, job.replay ? "replay" : "job");
            break;
        case InFront::go_to:
            draw_go_to(stage, job);
            break;
        case InFront::waits:
            draw_waits(stage);
            break;
        case InFront::job_card:
            draw_card(stage, job);
            break;
        case InFront::notice:
            draw_notice(stage, job);
            break;
    }
    stage.use(kit::Layer::still);
}

}  // namespace emberpath::screens
