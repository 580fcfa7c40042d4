#include "ui/desktop/author_fill.hpp"

#include <algorithm>

#include "sim/scoring/scoring.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/cause_list.hpp"
#include "ui/desktop/author_loop.hpp"
#include "ui/desktop/author_quirks.hpp"
#include "ui/desktop/figures.hpp"
#include "ui/desktop/job_fill.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

/// "2.31 kPa" without its unit; the line's title carries that.
std::string digits_of(const std::string& text) {
    const auto space = text.find(' ');
    const bool number =
        !text.empty() && (text.front() == '-' || (text.front() >= '0' && text.front() <= '9'));
    return number ? text.substr(0, space) : text;
}

std::string unit_of(const std::string& text) {
    const auto space = text.find(' ');
    return digits_of(text) == text || space == std::string::npos ? "" : text.substr(space + 1);
}

/// The point where a reading is taken; nothing for what is looked at or asked of the panel.
std::string tag_for(const std::vector<Thing>& things, const std::string& title) {
    const auto thing = thing_named_in(things, title);
    const bool point =
        thing < things.size() && things[thing].point.shape != screens::PointShape::part;
    return point ? things[thing].point.tag : "";
}

void add_readings(screens::AuthorView& view, const worksite::Job& job,
                  const std::vector<Thing>& things) {
    for (const auto& row : scoring::preview(job)) {
        auto column = std::find_if(view.columns.begin(), view.columns.end(),
                                   [&](const auto& c) { return c.condition == row.condition; });
        if (column == view.columns.end())
            column = view.columns.insert(view.columns.end(), {row.condition});
        const auto index = static_cast<std::size_t>(column - view.columns.begin());
        const std::string unit = unit_of(row.faulty);
        const std::string title = unit.empty() ? row.title : row.title + ", " + unit;
        const auto same = [&](const auto& l) { return l.title.starts_with(row.title); };
        auto line = std::find_if(view.lines.begin(), view.lines.end(), same);
        if (line == view.lines.end())
            line = view.lines.insert(view.lines.end(), {tag_for(things, row.title), title, {}});
        line->cells.resize(std::max(line->cells.size(), index + 1));
        line->cells[index] = {digits_of(row.faulty), digits_of(row.sound), row.changed};
    }
    for (auto& line : view.lines) line.cells.resize(view.columns.size());
    std::stable_sort(view.lines.begin(), view.lines.end(), [](const auto& a, const auto& b) {
        const auto moved = [](const auto& l) {
            return std::any_of(l.cells.begin(), l.cells.end(),
                               [](const auto& cell) { return cell.changed; });
        };
        return moved(a) && !moved(b);
    });
}

/// The cause is drawn where its remedy is done.
void add_faults(screens::AuthorView& view, const worksite::Job& job,
                const std::vector<Thing>& things, const std::vector<Offer>& offers) {
    const auto causes = worksite::cause_list();
    for (const auto& fault : job.faults) {
        const auto index = static_cast<std::size_t>(fault.cause);
        if (index >= causes.size()) continue;
        view.facts.emplace_back("Cause", kit::capitalised(causes[index].title));
        view.facts.emplace_back("Severity", units::fixed(fault.severity, 2));
        view.facts.emplace_back("Set right by", causes[index].remedy);
        if (!view.fault_tag.empty()) continue;
        view.fault_words = "set right here: " + causes[index].title;
        std::string remedy = causes[index].remedy_word;
        std::replace(remedy.begin(), remedy.end(), '_', ' ');
        for (const Offer& offer : offers)
            if (offer.sentence == remedy && !offer.things.empty() &&
                things[offer.things.front()].on_sheet)
                view.fault_tag = things[offer.things.front()].point.tag;
    }
}

void add_house(screens::AuthorView& view, const worksite::Job& job) {
    view.facts.emplace_back("House", job.site.name);
    view.facts.emplace_back("Taps", std::to_string(job.site.taps.size()));
    view.facts.emplace_back("Other appliances", std::to_string(job.site.appliances.size()));
    view.facts.emplace_back("Water main", units::format_pressure(job.site.mains_water_pa));
    view.facts.emplace_back("Cold water", units::format_temperature(job.site.inlet_water_k));
    view.facts.emplace_back("History before arrival",
                            units::fixed(job.site.arrival_s / 60.0, 0) + " min");
}

void add_checks(screens::AuthorView& view, const worksite::Job& job) {
    const auto moved = static_cast<std::size_t>(
        std::count_if(view.lines.begin(), view.lines.end(), [](const auto& line) {
            return std::any_of(line.cells.begin(), line.cells.end(),
                               [](const auto& cell) { return cell.changed; });
        }));
    view.checks.push_back({"The files load", "Scenario, site and heater have no problem.", true});
    view.checks.push_back({moved > 0 ? "The fault can be measured" : "No reading shows the fault",
                           std::to_string(moved) + " of " + std::to_string(view.lines.size()) +
                               " readings differ from the sound house by more than the "
                               "instrument can hide.",
                           moved > 0 || job.faults.empty()});
    for (const std::string& doubt : scenario::doubts_about(job))
        view.checks.push_back({"Worth another look", doubt, false});
    view.checks.push_back({"Are bad habits rated apart?",
                           "emberpath rate JOB lets simulated trainees play it.", true, true});
}

screens::JobView house_of(const worksite::Job& job, const std::vector<Thing>& things,
                          const views::JobCard& card) {
    screens::JobView house;
    house.site = site_of(card);
    for (const Thing& thing : things)
        if (thing.on_sheet) house.site.points.push_back(thing.point);
    house.card = {card.gas, job.customer.words, true};
    house.reduce_motion = true;
    return house;
}

}  // namespace

screens::AuthorView author_view(const scenario::Loaded& loaded, const std::string& file) {
    const worksite::Job& job = loaded.job;
    const auto card = views::job_card(job, worksite::Mode::coached);
    const auto things = things_of(card);
    screens::AuthorView view;
    view.title = job.title;
    view.file = file;
    view.customer = job.customer.words;
    view.house = house_of(job, things, card);
    add_faults(view, job, things, offers_of(card, things));
    add_house(view, job);
    view.quirks = quirks_of(job);
    add_readings(view, job, things);
    view.loop = loop_of(job);
    add_checks(view, job);
    view.status =
        "Worked out from the file as it is now. Whether it can be solved is being worked out.";
    return view;
}

}  // namespace emberpath::desktop
