// What the screens of a visit show.

#include <algorithm>

#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/cause_list.hpp"
#include "ui/desktop/account.hpp"
#include "ui/desktop/figures.hpp"
#include "ui/desktop/job_desk.hpp"
#include "ui/desktop/search.hpp"

namespace emberpath::desktop {

namespace {

constexpr std::size_t most_actions = 6;  // so that the customer's words stay beside them
constexpr const char* only_in_the_house = "only in the house itself";  // not in a replay

/// What is read or taken off belongs to the place where the tool hangs; all else, to all places.
bool tool_is_elsewhere(const Offer& offer, const std::string& tag, const Known& known) {
    for (const std::size_t tool : {std::size_t{0}, std::size_t{1}}) {
        const std::string name(belt()[tool].name);
        const bool at_its_place =
            offer.sentence.starts_with("read " + name) || offer.sentence == "take " + name + " off";
        if (at_its_place) return tool_is_at(known, tool) != tag;
    }
    return false;
}

screens::RailView rail_of(const Known& known, const std::string& mode) {
    screens::RailView rail;
    const auto colon = known.card.title.find(": ");
    rail.job = known.card.title.substr(0, colon);
    if (colon != std::string::npos) rail.address = known.card.title.substr(colon + 2);
    rail.mode = mode;
    rail.cells = cells_of(known);
    rail.clock = views::clock_text(known.seconds_on_site);
    rail.on_site = known.card.time_allowed.empty() ? mode : "of " + known.card.time_allowed;
    return rail;
}

}  // namespace

std::vector<const Offer*> JobDesk::offers_at(std::size_t thing,
                                             const worksite::Sight& sight) const {
    std::vector<const Offer*> here;
    const Known all = known(sight);
    for (const Offer& offer : offers_)
        if (std::find(offer.things.begin(), offer.things.end(), thing) != offer.things.end() &&
            !tool_is_elsewhere(offer, things_[thing].point.tag, all))
            here.push_back(&offer);
    return here;
}

screens::SelectionView JobDesk::selection() const {
    const auto thing = find_thing(things_, selected_);
    if (thing >= things_.size()) return {};
    const auto& point = things_[thing].point;
    screens::SelectionView view{point.tag, point.name == point.tag ? "" : point.name, {}};
    const auto here = offers_at(thing, visit_.attempt().sight());
    const bool paged = here.size() > most_actions;
    const std::size_t per_page = paged ? most_actions - 1 : most_actions;
    const std::size_t pages = (here.size() + per_page - 1) / per_page;
    const std::size_t page = pages == 0 ? 0 : page_ % pages;
    for (std::size_t i = page * per_page; i < here.size() && i < (page + 1) * per_page; ++i) {
        const Offer& offer = *here[i];
        screens::ActionView action;
        action.name = short_name(offer, things_[thing]);
        action.sentence = offer.sentence;
        action.command = offer.open ? "say" : "act";
        const double seconds = visit_.attempt().seconds_for(offer.sentence);
        if (!offer.open && seconds > 0.0) action.cost = views::cost_text(seconds);
        if (!offer.open) action.needs = visit_.attempt().check(offer.sentence).text;
        if (moment_) action.needs = only_in_the_house;
        view.actions.push_back(std::move(action));
    }
    if (paged)
        view.actions.push_back(
            {page + 1 < pages ? "More …" : "Back to the first", "", "", "", "more actions"});
    return view;
}

std::vector<screens::FoundView> JobDesk::found(const kit::State& state) const {
    const auto editor = state.editors.find("goto.name");
    const std::string said = editor == state.editors.end() ? "" : editor->second.text();
    const auto& attempt = visit_.attempt();
    return found_for(
        said, {things_, offers_, ready_sentences(),
               [&attempt](const std::string& words) { return attempt.check(words).text.empty(); },
               [&attempt](const std::string& words) {
                   const double seconds = attempt.seconds_for(words);
                   return seconds > 0.0 ? views::cost_text(seconds) : "";
               }});
}

std::vector<std::string> JobDesk::ready_sentences() const {
    std::vector<std::string> ready;
    if (const std::string words = account_of(visit_.attempt().log(), visit_.suspects());
        !words.empty())
        ready.push_back("tell customer " + words);
    return ready;
}

std::string JobDesk::record_refusal(const std::string& sentence) const {
    if (moment_) return only_in_the_house;
    if (sentence.empty()) return in_hand_ < belt().size() ? "not connected" : "nothing in hand";
    return visit_.attempt().check(sentence).text;
}

screens::RailView JobDesk::rail(const Known& all) const {
    screens::RailView rail = rail_of(all, visit_.card().mode);
    rail.time_is_up = visit_.attempt().time_is_up();
    rail.paused = paused_ || rail.time_is_up;
    rail.replay = moment_.has_value();
    rail.speed = speed_;
    rail.wait = wait_ == "change" ? "for a change" : wait_;
    return rail;
}

screens::JobView JobDesk::view(const kit::State& state) const {
    const auto sight = visit_.attempt().sight();
    const Known all = known(sight);
    const auto readings = readings_of(all);
    screens::JobView job;
    job.rail = rail(all);
    job.site = site_view_of(all, readings);
    job.sheet = sheet_;
    job.camera = camera_;
    job.selected = selected_;
    job.selected_first = just_selected_ || state.focus == focus_at_selection_;
    job.selection = selection();
    job.panel = panel_of(all, readings);
    job.card = card_of(all);
    job.bench = bench_of(all, in_hand_);
    job.bench.only_look = moment_.has_value();
    if (moment_)  // its keys would be acts
        job.bench.in_hand.keys.clear();
    for (auto it = readings.rbegin(); it != readings.rend(); ++it) job.readings.push_back(it->view);
    job.record_refusal = record_refusal(recording_sentence(all, in_hand_, selected_));
    job.causes = causes_of(all);
    job.recorder = recorder_of(all, readings);
    job.status_time = status_time_;
    job.status = status_;
    if (front_ == screens::InFront::go_to) job.found = found(state);
    job.notice_title = notice_title_;
    job.notice = notice_;
    job.compact_tab = compact_tab_;
    job.reduce_motion = preferences_.reduce_motion;
    job.replay = moment_;
    return job;
}

// --- the write-up ---

std::string JobDesk::written_cause() const {
    return visit_.attempt().write_up().cause;
}

void JobDesk::read_editors(const kit::State& state) {
    using namespace screens::write_up_field;
    const auto take = [&](const char* id, std::string& text) {
        if (const auto editor = state.editors.find(id); editor != state.editors.end())
            text = editor->second.text();
    };
    take(because, draft_.because);
    take(done, draft_.done);
    take(proved, draft_.proved);
    take(told, draft_.told);
}

std::string JobDesk::fill_for(std::string_view field) const {
    const auto& log = visit_.attempt().log();
    if (field == screens::write_up_field::done) return done_in(log);
    if (field == screens::write_up_field::proved) return proved_in(log);
    if (field == screens::write_up_field::told) return told_in(log);
    return {};
}

std::string JobDesk::hand_in_refusal() const {
    if (!only_look_.empty()) return "only to look at";
    if (written_cause().empty()) return "no cause chosen";
    return problem_of(draft_);
}

void JobDesk::hand_in() {
    for (const auto& sentence : sentences_for(draft_))
        if (!over() && !act(sentence)) return;
}

screens::WriteUpView JobDesk::write_up(const kit::State&) const {
    const auto sight = visit_.attempt().sight();
    const Known all = known(sight);
    screens::WriteUpView view;
    view.rail = rail(all);
    for (auto& cause : causes_of(all)) {
        if (cause.belief != screens::Belief::struck) view.held.push_back(std::move(cause));
    }
    const worksite::WriteUp& written = visit_.attempt().write_up();
    view.cause = kit::capitalised(worksite::titles_of_causes_in(written));
    view.written = worksite::causes_in(written);
    view.choosing_as = choosing_as_;
    view.because = draft_.because;
    view.done = draft_.done;
    view.proved = draft_.proved;
    view.told = draft_.told;
    for (const auto& [field, text] : {std::pair{screens::write_up_field::done, &draft_.done},
                                      std::pair{screens::write_up_field::proved, &draft_.proved},
                                      std::pair{screens::write_up_field::told, &draft_.told}})
        if (text->empty() && !fill_for(field).empty()) view.fillable.emplace_back(field);
    const auto cited = cited_in(draft_.because + " " + draft_.proved);
    const auto readings = readings_of(all);
    for (auto it = readings.rbegin(); it != readings.rend(); ++it)
        view.readings.push_back(
            {it->view, std::find(cited.begin(), cited.end(), it->view.number) != cited.end()});
    std::string open;
    const auto miss = [&](bool missing, const char* what) {
        if (missing) open += (open.empty() ? "" : ", ") + std::string(what);
    };
    miss(written_cause().empty(), "the cause");
    miss(draft_.because.empty(), "the reason");
    miss(draft_.proved.empty(), "how it was proved");
    miss(draft_.told.empty(), "what the customer was told");
    const bool coached = visit_.card().mode == "coached";
    view.hint = open.empty() ? "" : "Still empty: " + open + ".";
    if (coached && told_in(visit_.attempt().log()).empty())
        view.hint += std::string(view.hint.empty() ? "" : " ") +
                     "Nothing was told to the customer at the house yet.";
    view.hint_is_warning = coached && !view.hint.empty();
    view.hand_in_refusal = hand_in_refusal();
    view.choosing_cause = choosing_cause_;
    view.choosing_confidence = choosing_confidence_;
    if (const auto sure = visit_.attempt().write_up().confidence)
        view.confidence = units::per_cent(*sure);
    view.status = "Because: " + std::to_string(words_in(draft_.because)) + " words, " +
                  std::to_string(cited.size()) +
                  (cited.size() == 1 ? " reading cited." : " readings cited.");
    if (!draft_problem_.empty()) view.status = "Not kept: " + draft_problem_;
    return view;
}

}  // namespace emberpath::desktop
