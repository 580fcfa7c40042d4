#include "ui/screens/write_up.hpp"

#include <algorithm>
#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/overlays.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

struct Field {
    const char *id, *name, *help, *placeholder;
    double share;  // of the height that is left
};
constexpr std::array<Field, 4> fields{{
    {write_up_field::because, "Because", "cite readings: type # and the number",
     "What the readings show, and why nothing else fits.", 2.0},
    {write_up_field::done, "Done", "what you changed", "What you did to the house or the heater.",
     1.0},
    {write_up_field::proved, "Proved by", "readings after the remedy",
     "How you know that it is right now.", 1.0},
    {write_up_field::told, "Told the customer", "in their words",
     "What you told the customer at the house: what was wrong, what you did, what to watch for.",
     1.0},
}};

struct Label {
    std::string_view id, name, help;
    bool beside = true;     // left of the field; else above it, where there is little width
    bool fillable = false;  // with what the record says
};

void draw_fill(kit::Stage& stage, const Rect& r, const Label& label) {
    kit::link(stage, r,
              {.id = std::string(label.id) + ".fill",
               .name = label.beside ? "From the record" : "From record",
               .command = {"fill", std::string(label.id)},
               .value = std::string(label.name)});
}

/// Where the field stands, and the link that fills it: empty when there is none.
struct Labelled {
    Rect field, fill{};
};

Labelled draw_label(kit::Stage& stage, kit::Slicer& row, const Label& label) {
    Rect r = label.beside ? row.left(138.0, 12.0) : row.top(24.0, 2.0);
    const double w =
        stage.text({r.x, r.y, r.w, label.beside ? 20.0 : r.h}, label.name, kit::style::body_bold);
    double below = 19.0;
    if (label.beside)
        below += stage.paragraph({r.x, r.y + below, r.w, r.h}, label.help, kit::style::row_quiet);
    else
        stage.text_shortened({r.x + w + 10.0, r.y, r.w - w - (label.fillable ? 110.0 : 10.0), r.h},
                             label.help, kit::style::row_quiet);
    stage.add({.id = std::string(label.id) + ".label",
               .role = kit::Role::label,
               .name = std::string(label.name),
               .value = std::string(label.help),
               .bounds = {r.x, r.y, r.w, 20.0}});
    Labelled placed{row.rest()};
    if (label.fillable && label.beside && r.h >= below + 26.0)
        placed.fill = {r.x, r.y + below + 2.0, 118.0, 24.0};
    if (label.fillable && !label.beside) placed.fill = {r.right() - 90.0, r.y, 90.0, 24.0};
    return placed;
}

const std::string& text_of(const WriteUpView& view, const Field& field) {
    const std::string_view id = field.id;
    if (id == write_up_field::because) return view.because;
    if (id == write_up_field::done) return view.done;
    return id == write_up_field::proved ? view.proved : view.told;
}

int last_reading(const WriteUpView& view) {
    int last = 0;
    for (const CitableReading& r : view.readings) last = std::max(last, r.reading.number);
    return last;
}

void draw_fields(kit::Stage& stage, const Rect& r, const WriteUpView& view, bool beside) {
    kit::Slicer left(r);
    kit::Slicer first(left.top(beside ? 42.0 : 62.0, 10.0));
    const Rect cause =
        draw_label(stage, first, {"form.cause", "Cause", "one you still hold", beside}).field;
    kit::Slicer line({cause.x, cause.y, cause.w, std::min(cause.h, 36.0)});
    const Rect sure = line.right(beside ? 170.0 : 128.0, 8.0);
    kit::chooser(stage, line.rest(),
                 {.id = "form.cause",
                  .name = "Cause",
                  .command = {"choose cause"},
                  .value = view.cause.empty() ? "not chosen yet" : view.cause});
    kit::chooser(stage, sure,
                 {.id = "form.confidence",
                  .name = "How sure you are",
                  .command = {"choose confidence"},
                  .value = view.confidence.empty() ? "how sure?" : view.confidence + " sure"});
    std::vector<kit::Part> parts;
    for (const Field& f : fields) parts.push_back({beside ? 40.0 : 50.0, f.share});
    const auto cells = kit::rows(left.rest(), parts, 12.0);
    for (std::size_t i = 0; i < fields.size(); ++i) {
        kit::Slicer row(cells[i]);
        const bool fillable = std::find(view.fillable.begin(), view.fillable.end(), fields[i].id) !=
                              view.fillable.end();
        const Label label{fields[i].id, fields[i].name, fields[i].help, beside, fillable};
        const auto [box, fill] = draw_label(stage, row, label);
        kit::text_field(stage, box,
                        {.id = fields[i].id,
                         .name = fields[i].name,
                         .text = text_of(view, fields[i]),
                         .placeholder = fields[i].placeholder,
                         .many_lines = true,
                         .last_reading = last_reading(view)});
        // After the field: Tab leads from field to field, and who types writes.
        if (!fill.empty()) draw_fill(stage, fill, label);
    }
}

double hint_height(const kit::Stage& stage, double w, const WriteUpView& view) {
    if (view.hint.empty()) return 0.0;
    return stage.paragraph_height(w - 30.0, view.hint, kit::style::row) + 8.0;
}

void draw_foot(kit::Stage& stage, const Rect& r, const WriteUpView& view, double indent) {
    kit::Slicer left(r);
    if (!view.hint.empty()) {
        const Rect line = left.top(hint_height(stage, r.w, view), 4.0);
        kit::draw_mark(stage.paint(), {line.x + 12.0, line.y + 13.0},
                       view.hint_is_warning ? kit::Mark::hazard : kit::Mark::unknown, 8.0);
        stage.paragraph({line.x + 30.0, line.y + 4.0, line.w - 30.0, line.h}, view.hint,
                        kit::style::row);
        stage.add(
            {.id = "form.hint", .role = kit::Role::status, .name = view.hint, .bounds = line});
    }
    left.left(indent);
    kit::Slicer buttons(left.top(32.0));
    const bool ready = view.hand_in_refusal.empty();
    const kit::ButtonSpec hand_in{.id = "form.hand-in",
                                  .name = "Sign and hand in",
                                  .command = {"hand in"},
                                  .caps = stage.keys().caps("hand in"),
                                  .shortcut = "hand in",
                                  .hint = view.hand_in_refusal,
                                  .primary = ready,
                                  .enabled = ready};
    const kit::ButtonSpec back{.id = "form.house",
                               .name = "Back to the house",
                               .command = {"house"},
                               .caps = stage.keys().caps("house"),
                               .shortcut = "house"};
    kit::button(
        stage,
        buttons.left(std::min(kit::button_width(stage, hand_in), buttons.rest().w * 0.5), 12.0),
        hand_in);
    kit::button(stage, buttons.left(std::min(kit::button_width(stage, back), buttons.rest().w)),
                back);
}

void draw_form(kit::Stage& stage, const Rect& r, const WriteUpView& view) {
    const auto region = stage.region("form", "Write-up", r);
    const bool compact = stage.size().w<1100.0, beside = stage.size().h> 560.0 && !compact;
    const double margin = compact ? 14.0 : 28.0;
    kit::Slicer left(
        kit::inset(draw_sheet_frame(stage, r, view.rail.paused), margin, compact ? 6.0 : 10.0));
    if (stage.size().h > 560.0) {
        const Rect head = left.top(36.0, 12.0);
        const double w = stage.text(head, "Write-up", kit::style::title);
        stage.text_shortened({head.x + w + 20.0, head.y + 3.0, head.w - w - 20.0, head.h},
                             view.rail.address + " · kept as you type", kit::style::row_quiet);
        kit::line(stage.paint(), {head.x, head.bottom()}, {head.right(), head.bottom()},
                  {.width = 2.0, .ink = Token::ink});
        stage.add({.id = "form.title",
                   .role = kit::Role::heading,
                   .name = "Write-up",
                   .value = view.rail.address,
                   .bounds = head});
    }
    const double hint_h = hint_height(stage, left.rest().w, view);
    const Rect foot = left.bottom(hint_h > 0.0 ? hint_h + 40.0 : 36.0, 8.0);
    if (stage.size().h > 560.0) {
        draw_fields(stage, left.rest(), view, beside);
    } else {  // little height: the fields keep theirs and scroll
        constexpr double content = 62.0 + 4.0 * 108.0 + 10.0;
        kit::ScrollList list(stage, left.rest(), "form.list", "Fields", content, kit::Moves::none);
        draw_fields(stage, kit::inset(list.row(0.0, content), 3.0, 0.0), view, beside);
    }
    draw_foot(stage, foot, view, beside ? 150.0 : 0.0);
}

void draw_reading(kit::Stage& stage, const Rect& r, const CitableReading& entry) {
    const ReadingView& reading = entry.reading;
    kit::balloon(stage, {r.x + 24.0, r.centre().y}, reading.number,
                 entry.cited ? kit::Balloon::filled : kit::Balloon::open, 10.0);
    const Rect first{r.x, r.y + 5.0, r.w, 18.0}, second{r.x, r.y + 23.0, r.w, 17.0};
    const double right = r.right() - 12.0;
    const double cited_w = entry.cited ? stage.width("cited", kit::style::row) : 0.0;
    if (entry.cited)
        stage.text({right - cited_w, first.y, cited_w, first.h}, "cited",
                   kit::with_ink(kit::style::row, Token::mark));
    stage.text_shortened({r.x + 44.0, first.y, 46.0, first.h}, reading.where, kit::style::row_bold);
    draw_reading_words(stage, {r.x + 94.0, first.y, right - cited_w - 8.0 - r.x - 94.0, first.h},
                       {r.x + 94.0, second.y, right - r.x - 94.0, second.h}, reading);
    kit::line(stage.paint(), {r.x + 14.0, r.bottom()}, {right, r.bottom()},
              {.width = 1.0, .ink = Token::hair});
}

void draw_readings(kit::Stage& stage, const Rect& r, const WriteUpView& view) {
    const auto region = stage.region("evidence", "Evidence", r);
    kit::panel(stage, r);
    kit::Slicer left(r);
    left.top(6.0);
    const std::size_t n = view.readings.size();
    kit::panel_heading(stage, kit::inset(left.top(24.0, 4.0), kit::space::panel, 0.0),
                       "evidence.heading", "Evidence",
                       n == 1 ? "1 reading" : std::to_string(n) + " readings");
    const std::string words =
        "Filled: cited in the write-up. Open: not cited yet. Uncited readings are fine if they "
        "told you nothing.";
    const double note_w = r.w - 2.0 * kit::space::panel;
    const double note_h = stage.paragraph_height(note_w, words, kit::style::row_quiet);
    const bool room = left.rest().h - note_h > 130.0;
    const Rect note = kit::inset(left.bottom(room ? note_h + 14.0 : 2.0), kit::space::panel, 6.0);
    constexpr double h = 46.0;
    {
        kit::ScrollList list(stage, kit::inset(left.rest(), 1.0, 0.0), "evidence.list", "Readings",
                             h * static_cast<double>(n));
        for (std::size_t i = 0; i < n; ++i) {
            const CitableReading& entry = view.readings[i];
            const Rect row = list.row(h * static_cast<double>(i), h);
            if (list.shows(row)) draw_reading(stage, row, entry);
            const std::string number = std::to_string(entry.reading.number);
            stage.add({.id = "evidence.reading." + number,
                       .role = kit::Role::row,
                       .name = "Reading " + number + ", " + entry.reading.where + " " +
                               entry.reading.quantity,
                       .value = entry.reading.value + ", " + what_and_when(entry.reading) +
                                (entry.cited ? ", cited" : ", not cited"),
                       .bounds = row,
                       .command = {"cite", number},
                       .focusable = true});
        }
    }
    if (room) stage.paragraph(note, words, kit::style::row_quiet);
}

void draw_causes_to_choose(kit::Stage& stage, const Rect& r, const WriteUpView& view) {
    kit::ScrollList list(stage, r, "cause.list", "Causes you still hold",
                         32.0 * static_cast<double>(view.held.size()));
    for (std::size_t i = 0; i < view.held.size(); ++i) {
        const CauseView& cause = view.held[i];
        const Rect row = list.row(32.0 * static_cast<double>(i), 32.0);
        const bool chosen =
            std::find(view.written.begin(), view.written.end(), cause.word) != view.written.end();
        if (list.shows(row)) {
            kit::draw_mark(stage.paint(), {row.x + 12.0, row.centre().y},
                           cause.belief == Belief::held ? kit::Mark::held : kit::Mark::doubtful,
                           8.0);
            stage.text_shortened({row.x + 30.0, row.y, row.w - 36.0, row.h}, cause.title,
                                 chosen ? kit::style::body_bold : kit::style::body);
        }
        stage.add({.id = "cause." + cause.word,
                   .role = kit::Role::row,
                   .name = cause.title,
                   .bounds = row,
                   .command = {"cause is", cause.word},
                   .focusable = true,
                   .selected = chosen});
    }
}

/// A second cause stands beside the first, or in its place; without a first there is nothing to choose.
struct As {
    CauseAs as;
    const char *id, *name, *help;
};
constexpr std::array ways_of_standing{
    As{CauseAs::the_cause, "the", "The cause", "The record is begun anew with this one."},
    As{CauseAs::as_well, "as-well", "There as well", "Both were there, and each needs its remedy."},
    As{CauseAs::or_this, "or-this", "Or this one", "No reading on this job tells them apart."},
};

void draw_ways_of_standing(kit::Stage& stage, kit::Slicer& left, const WriteUpView& view) {
    std::vector<kit::Choice> choices;
    const char* help = "";
    for (const As& way : ways_of_standing) {
        choices.push_back({std::string("cause.as.") + way.id,
                           way.name,
                           {"cause as", way.id},
                           way.as == view.choosing_as});
        if (way.as == view.choosing_as) help = way.help;
    }
    kit::segments(stage, left.top(28.0, 4.0), "cause.as", "How it stands in the record", choices);
    stage.text_shortened(left.top(20.0, 6.0), help, kit::style::row_quiet);
}

void draw_cause_choice(kit::Stage& stage, const WriteUpView& view) {
    stage.use(kit::Layer::over);
    const kit::Size s = stage.size();
    const double ways = view.written.empty() ? 0.0 : 58.0;
    const double h =
        std::min(s.h - 40.0, 84.0 + ways + 32.0 * static_cast<double>(view.held.size()));
    const Rect r = kit::around({s.w / 2.0, s.h / 2.0}, std::min(440.0, s.w - 24.0), h);
    const auto scope = stage.inside({.id = "cause",
                                     .role = kit::Role::region,
                                     .name = "Choose the cause",
                                     .bounds = r,
                                     .modal = true});
    const Rect inside = draw_plate(stage, r, "cause", "What was wrong?");
    kit::Slicer left(inside);
    if (ways > 0.0) draw_ways_of_standing(stage, left, view);
    draw_causes_to_choose(stage, left.rest(), view);
    close_button(stage, r, "cause");
    stage.use(kit::Layer::still);
}

/// From a coin's toss upwards, and what leaves more doubt than that.
constexpr std::array confidences{20, 35, 50, 60, 70, 80, 90, 95, 99};

void draw_confidence_choice(kit::Stage& stage, const WriteUpView& view) {
    constexpr double row_h = 32.0;
    stage.use(kit::Layer::over);
    const kit::Size s = stage.size();
    const double h = std::min(s.h - 40.0, 108.0 + row_h * static_cast<double>(confidences.size()));
    const Rect r = kit::around({s.w / 2.0, s.h / 2.0}, std::min(440.0, s.w - 24.0), h);
    const auto scope = stage.inside({.id = "confidence",
                                     .role = kit::Role::region,
                                     .name = "Say how sure you are",
                                     .bounds = r,
                                     .modal = true});
    kit::Slicer left(draw_plate(stage, r, "confidence", "How sure are you of the cause?"));
    stage.text_shortened(left.top(20.0, 6.0),
                         "It moves no score; the debrief sets it beside your readings.",
                         kit::style::row_quiet);
    kit::ScrollList list(stage, left.rest(), "confidence.list", "How sure",
                         row_h * static_cast<double>(confidences.size()));
    for (std::size_t i = 0; i < confidences.size(); ++i) {
        const std::string number = std::to_string(confidences[i]);
        const bool chosen = view.confidence == number + " %";
        const Rect row = list.row(row_h * static_cast<double>(i), row_h);
        if (list.shows(row))
            stage.text({row.x + 12.0, row.y, row.w - 24.0, row.h}, number + " %",
                       chosen ? kit::style::body_bold : kit::style::body);
        stage.add({.id = "confidence." + number,
                   .role = kit::Role::row,
                   .name = number + " % sure",
                   .bounds = row,
                   .command = {"confidence is", number},
                   .focusable = true,
                   .selected = chosen});
    }
    close_button(stage, r, "confidence");
    stage.use(kit::Layer::still);
}

}  // namespace

kit::Frame write_up_screen(const Setting& setting, const WriteUpView& view) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    stage.place("write-up");
    stage.paint().box(stage.whole(), Token::desk);
    const bool compact = setting.size.w < 1100.0;
    kit::Slicer left(stage.whole());
    draw_rail(stage, left.top(compact ? 52.0 : 54.0), view.rail,
              compact ? Form::compact : Form::normal);
    const Rect status = left.bottom(30.0);
    kit::Slicer body(
        {left.rest().x + 8.0, left.rest().y + 8.0, left.rest().w - 16.0, left.rest().h - 8.0});
    const Rect readings =
        compact ? body.right(std::min(280.0, body.rest().w * 0.34), 8.0) : body.right(356.0, 8.0);
    draw_form(stage, body.rest(), view);
    draw_readings(stage, readings, view);
    static const std::array hints{KeyHint{"next thing", "next field"},
                                  KeyHint{"hand in", "hand in"}, KeyHint{"help", "all keys"}};
    draw_status(stage, status, "", view.status, hints);
    if (view.choosing_cause) draw_cause_choice(stage, view);
    if (view.choosing_confidence) draw_confidence_choice(stage, view);
    return finished(stage, setting, "write-up");
}

}  // namespace emberpath::screens
