#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

kit::Mark mark_of(StateMark mark) {
    switch (mark) {
        case StateMark::on:
            return kit::Mark::on;
        case StateMark::off:
            return kit::Mark::off;
        case StateMark::proved:
            return kit::Mark::proved;
        case StateMark::unknown:
            return kit::Mark::unknown;
        case StateMark::hazard:
            return kit::Mark::hazard;
    }
    return kit::Mark::unknown;
}

/// Words of a mark for those who do not see it.
std::string_view spoken(StateMark mark) {
    switch (mark) {
        case StateMark::proved:
            return ", proved";
        case StateMark::hazard:
            return ", hazard";
        default:
            return "";
    }
}

constexpr double text_from = 37.0;

/// How much a cell says, from most to least.
enum class Words { all, brief, none };
using CellWords = std::vector<Words>;  // of each cell

const std::string& words_of(const ServiceCell& cell, Words how) {
    static const std::string nothing_more;
    return how == Words::all ? cell.words : how == Words::brief ? cell.short_words : nothing_more;
}

double width_of_cell(const kit::Stage& stage, const ServiceCell& cell, Words how) {
    const std::string& words = words_of(cell, how);
    return text_from + 8.0 +
           std::max(stage.width(cell.name, kit::style::body_bold),
                    stage.width(words, kit::style::row));
}

void draw_cell(kit::Stage& stage, const Rect& r, const ServiceCell& cell, Words how) {
    kit::Painter& p = stage.paint();
    const bool hazard = cell.mark == StateMark::hazard;
    if (hazard) {
        p.box(r, Token::danger_wash);
        p.box({r.x, r.y, r.w, 4.0}, Token::danger);
    } else {
        kit::line(p, {r.x, r.y + 10.0}, {r.x, r.bottom() - 10.0},
                  {.width = 1.0, .ink = Token::hair});
    }
    kit::draw_mark(p, {r.x + 18.0, r.centre().y}, mark_of(cell.mark), 8.5);
    const kit::Ink ink = hazard ? Token::danger : Token::ink,
                   quiet = hazard ? Token::danger : Token::ink2;
    const double w = r.w - text_from - 2.0, half = r.centre().y;
    const std::string& words = words_of(cell, how);
    stage.text({r.x + text_from, words.empty() ? half - 10.0 : half - 20.0, w, 20.0}, cell.name,
               kit::with_ink(kit::style::body_bold, ink));
    stage.text_shortened({r.x + text_from, half, w, 18.0}, words,
                         kit::with_ink(kit::style::row, quiet));
    stage.add({.id = "rail." + cell.id,
               .role = kit::Role::reading,
               .name = cell.name,
               .value = cell.words + std::string(spoken(cell.mark)),
               .bounds = r,
               .command = {"select", cell.leads_to},
               .focusable = !cell.leads_to.empty()});
}

void draw_pause(kit::Stage& stage, const Rect& r, const RailView& rail) {
    kit::button(stage, r,
                {.id = "rail.pause",
                 .name = rail.paused ? "Run" : "Pause",
                 .command = {"pause"},
                 .shortcut = "pause",
                 .picture_only = true});
    kit::Painter& p = stage.paint();
    const kit::Point c = r.centre();
    if (rail.paused) {
        const kit::Point triangle[] = {
            {c.x - 5.0, c.y - 7.0}, {c.x + 8.0, c.y}, {c.x - 5.0, c.y + 7.0}};
        p.fill(triangle, Token::ink);
    } else {
        for (const double x : {c.x - 5.5, c.x + 1.5}) p.box({x, c.y - 7.0, 4.0, 14.0}, Token::ink);
    }
}

void draw_time_controls(kit::Stage& stage, kit::Slicer& left, const RailView& rail) {
    const double mid = left.rest().centre().y;
    const Rect clock = left.right(92.0, 8.0);
    stage.use(kit::Layer::moving);
    stage.text({clock.x, mid - 20.0, clock.w - 8.0, 20.0}, rail.clock, kit::style::heading,
               kit::Align::end);
    stage.text({clock.x, mid, clock.w - 8.0, 18.0}, rail.on_site, kit::style::row_quiet,
               kit::Align::end);
    stage.use(kit::Layer::still);
    stage.add({.id = "rail.clock",
               .role = kit::Role::reading,
               .name = "Time",
               .value = rail.clock + ", " + rail.on_site,
               .bounds = clock});
    if (rail.replay) {
        const kit::ButtonSpec back{.id = "rail.debrief",
                                   .name = "Debrief",
                                   .command = {"back"},
                                   .caps = stage.caps("back")};
        const Rect box = left.right(kit::button_width(stage, back), 6.0);
        kit::button(stage, {box.x, mid - 14.0, box.w, 28.0}, back);
        return;
    }
    if (rail.time_is_up) {  // no time is left to stop, to hurry or to wait for
        const std::string words = "Time is up";
        const Rect box = left.right(stage.width(words, kit::style::body_bold), 12.0);
        stage.text({box.x, mid - 14.0, box.w, 28.0}, words, kit::style::body_bold);
        return;
    }
    const std::string wait = "Wait " + rail.wait;
    const Rect waits_box = left.right(24.0, 2.0);
    const Rect wait_box = left.right(stage.width(wait, kit::style::body) + 20.0, 6.0);
    const Rect speed_box = left.right(90.0, 6.0);
    const Rect pause_box = left.right(36.0, 6.0);
    const auto at_mid = [&](const Rect& r) { return Rect{r.x, mid - 14.0, r.w, 28.0}; };
    draw_pause(stage, at_mid(pause_box), rail);
    const auto speed = [&](int n, const char* spoken_name) {
        const std::string digits = std::to_string(n);
        return kit::Choice{"rail.speed." + digits, digits + "×", {"speed", digits},
                           rail.speed == n,        "",           spoken_name};
    };
    const std::array speeds{speed(1, "Real time"), speed(5, "5 times"), speed(20, "20 times")};
    kit::segments(stage, at_mid(speed_box), "rail.speed", "Speed", speeds);
    kit::button(stage, at_mid(wait_box),
                {.id = "rail.wait", .name = wait, .command = {"wait"}, .shortcut = "wait"});
    kit::button(stage, at_mid(waits_box),
                {.id = "rail.waits",
                 .name = "Choose a wait",
                 .command = {"choose wait"},
                 .shortcut = "choose wait",
                 .picture_only = true});
    const kit::Point c = waits_box.centre();
    const kit::Point down[] = {{c.x - 4.5, mid - 2.0}, {c.x, mid + 3.0}, {c.x + 4.5, mid - 2.0}};
    stage.paint().stroke(down, {.width = 1.8, .ink = Token::ink});
}

void draw_titles(kit::Stage& stage, const Rect& r, const RailView& rail, std::string_view second) {
    const double mid = r.centre().y;
    stage.text({r.x, mid - 20.0, r.w, 20.0}, rail.job, kit::style::heading);
    stage.text_shortened({r.x, mid, r.w, 18.0}, second, kit::style::row_quiet);
    stage.add({.id = "rail.job",
               .role = kit::Role::heading,
               .name = rail.job,
               .value = rail.address + ", " + rail.mode,
               .bounds = r});
}

double width_of_cells(const kit::Stage& stage, const std::vector<ServiceCell>& cells,
                      const CellWords& how) {
    double w = 0.0;
    for (std::size_t i = 0; i < cells.size(); ++i) w += width_of_cell(stage, cells[i], how[i]);
    return w;
}

/// The cell that gives the most room when it says less; cells.size() when none gives any.
std::size_t longest_winded(const kit::Stage& stage, const std::vector<ServiceCell>& cells,
                           const CellWords& how) {
    std::size_t best = cells.size();
    double most = 0.0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const double gives = how[i] == Words::all ? width_of_cell(stage, cells[i], Words::all) -
                                                        width_of_cell(stage, cells[i], Words::brief)
                                                  : 0.0;
        if (gives > most) {
            best = i;
            most = gives;
        }
    }
    return best;
}

/// Only as many cells are brief as must be, the longest first; none says anything where that is not enough.
CellWords words_that_fit(const kit::Stage& stage, const std::vector<ServiceCell>& cells,
                         double room) {
    CellWords how(cells.size(), Words::all);
    while (width_of_cells(stage, cells, how) > room) {
        const std::size_t next = longest_winded(stage, cells, how);
        if (next == cells.size()) return CellWords(cells.size(), Words::none);
        how[next] = Words::brief;
    }
    return how;
}

}  // namespace

void draw_rail(kit::Stage& stage, const Rect& r, const RailView& rail, Form form) {
    const auto region = stage.region("rail", "Job and services", r);
    kit::Painter& p = stage.paint();
    p.box(r, Token::paper);
    const bool compact = form == Form::compact;
    kit::Slicer left(r);
    const std::string& second = compact ? rail.clock : rail.address;
    const double title_w =
        std::max({compact ? 80.0 : 120.0, stage.width(rail.job, kit::style::heading),
                  stage.width(second, kit::style::row)}) +
        14.0;
    left.left(14.0);
    draw_titles(stage, left.left(title_w), rail, second);
    if (!compact) draw_time_controls(stage, left, rail);
    const Rect room = left.rest();
    const CellWords how = words_that_fit(stage, rail.cells, room.w);
    std::vector<kit::Part> parts;
    for (std::size_t i = 0; i < rail.cells.size(); ++i)
        parts.push_back({width_of_cell(stage, rail.cells[i], how[i]), compact ? 1.0 : 0.0});
    if (!compact) {  // even cells look calmer, where there is room for them
        double widest = 0.0;
        for (const kit::Part& part : parts) widest = std::max(widest, part.fixed);
        const double even = std::clamp(room.w / static_cast<double>(parts.size()), 0.0, 150.0);
        if (widest <= even)
            for (kit::Part& part : parts) part.fixed = even;
    }
    const auto cells = kit::columns(room, parts);
    for (std::size_t i = 0; i < cells.size(); ++i)
        draw_cell(stage, cells[i], rail.cells[i], how[i]);
    p.box({r.x, r.bottom() - 2.0, r.w, 2.0}, Token::ink);
}

}  // namespace emberpath::screens
