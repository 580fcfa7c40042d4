// Numbered readings, and the causes with the trainee's marks.

#include <algorithm>

#include "ui/desktop/figures.hpp"
#include "ui/desktop/job_fill.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

constexpr double tick_s = 0.1;

/// The words in brackets at the end of a reading's line: under what conditions it was taken.
std::string condition_in(const std::vector<std::string>& shown, int number) {
    const std::string begin = "#" + std::to_string(number) + "  ";
    for (const auto& line : shown) {
        const auto bracket = line.rfind("  (");
        if (line.starts_with(begin) && bracket != std::string::npos && line.ends_with(")"))
            return line.substr(bracket + 3, line.size() - bracket - 4);
    }
    return {};
}

std::size_t thing_of(const Known& known, const std::string& words, std::string_view title) {
    for (const auto& offer : known.offers)
        if (offer.sentence == words && offer.things.size() == 1) return offer.things.front();
    // A reading at a tap or by the tool of a place: the title names the place.
    return thing_named_in(known.things, title);
}

std::string where_words(const Known& known, std::size_t thing) {
    if (thing >= known.things.size()) return "";
    const auto& point = known.things[thing].point;
    if (point.spot == screens::Spot::display) return "Panel";
    return point.shape == screens::PointShape::part ? "Seen" : point.tag;
}

/// A title without where it was read, which stands beside it.
std::string without_place(std::string title) {
    for (const std::string_view place : {", on the service readout", " on the service readout",
                                         " in the flue gas", " in the room"})
        if (const auto at = title.find(place); at != std::string::npos)
            title.erase(at, place.size());
    return title;
}

/// Gas pressures and temperatures are known by their point and unit; of all else one has to say what it is.
bool says_what(const std::string& where) {
    return !where.empty() && (where.front() == 'P' || where.front() == 'T') && where != "Panel";
}

/// Lines "#20  oxygen in the flue gas  7.3 %  (burner running)" in one: "Readings 20 to 23: oxygen ...".
std::string readings_in_one(const std::vector<std::string>& shown) {
    std::string first, last, text;
    for (const std::string& line : shown) {
        const auto end = line.find("  ");
        if (!line.starts_with("#") || end == std::string::npos) continue;
        last = line.substr(1, end - 1);
        if (first.empty()) first = last;
        std::string words = line.substr(end + 2);
        if (const auto bracket = words.rfind("  ("); bracket != std::string::npos)
            words.resize(bracket);
        text += (text.empty() ? "" : " · ") + without_place(std::move(words));
    }
    return first == last ? "" : "Readings " + first + " to " + last + ": " + text;
}

/// What a note for oneself says about a cause: its word, and the belief; empty word when it is none.
struct Note {
    std::string cause;
    screens::Belief belief = screens::Belief::held;
};
Note note_in(const std::string& words) {
    constexpr std::string_view suspect = "suspect ", doubt = "doubt ", strike = "strike out ";
    if (words.starts_with(suspect)) return {words.substr(suspect.size()), screens::Belief::held};
    if (words.starts_with(doubt)) return {words.substr(doubt.size()), screens::Belief::doubtful};
    if (words.starts_with(strike)) return {words.substr(strike.size()), screens::Belief::struck};
    return {};
}

}  // namespace

std::vector<TakenReading> readings_of(const Known& known) {
    std::vector<TakenReading> taken;
    for (const auto& entry : known.log)
        for (const auto& seen : entry.observations) {
            if (seen.number == 0) continue;
            TakenReading one;
            const auto& row = worksite::info(seen.quantity);
            one.thing = thing_of(known, entry.words, row.title);
            one.tick = seen.tick;
            one.view.number = seen.number;
            one.view.where = where_words(known, one.thing);
            one.view.value =
                text_of(figure_of(seen.quantity, seen.value, known.preferences.kilopascal));
            one.view.condition = condition_in(entry.shown, seen.number);
            one.view.time = views::clock_text(known.seconds_on_site -
                                              static_cast<double>(known.tick - seen.tick) * tick_s);
            one.view.quantity = std::string(row.title);
            if (!says_what(one.view.where)) one.view.what = without_place(one.view.quantity);
            taken.push_back(std::move(one));
        }
    return taken;
}

std::vector<screens::CauseView> causes_of(const Known& known) {
    std::vector<screens::CauseView> causes;
    for (const auto& suspect : known.suspects)
        causes.push_back(
            {suspect.word, kit::capitalised(suspect.title), screens::Belief::held, {}});
    int last_reading = 0;
    for (const auto& entry : known.log) {
        const Note note = note_in(entry.words);
        for (auto& cause : causes) {
            if (cause.word != note.cause || note.cause.empty()) continue;
            cause.belief = note.belief;
            const bool pinned = std::find(cause.balloons.begin(), cause.balloons.end(),
                                          last_reading) != cause.balloons.end();
            if (last_reading > 0 && !pinned) cause.balloons.push_back(last_reading);
        }
        for (const auto& seen : entry.observations)
            last_reading = std::max(last_reading, seen.number);
    }
    return causes;
}

std::string status_of(const worksite::LogEntry& entry, const Known& known) {
    std::string text = readings_in_one(entry.shown);
    const bool in_one = !text.empty();
    for (const std::string& line : entry.shown) {
        std::string words = line;
        if (in_one && words.starts_with("#")) continue;
        if (words.starts_with("#")) words = "Reading " + words.substr(1);
        if (!text.empty()) text += " · ";
        text += words;
    }
    for (auto at = text.find("  "); at != std::string::npos; at = text.find("  "))
        text.replace(at, 2, " ");
    if (!text.empty()) return in_wished_unit(std::move(text), known.preferences.kilopascal);
    return kit::capitalised(entry.words) + ": done.";
}

}  // namespace emberpath::desktop
