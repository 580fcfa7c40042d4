#include "ui/views/views.hpp"

#include <algorithm>

#include "sim/units/units.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::views {

namespace {

constexpr double tick_s = 0.1;

/// Site time of a tick: the attempt's own clock less the ticks since.
double seconds_at(const worksite::Attempt& attempt, std::int64_t tick) {
    return attempt.seconds_on_site() - static_cast<double>(attempt.tick() - tick) * tick_s;
}

std::string hold_words(worksite::Hold hold) {
    if (hold == worksite::Hold::highest) return "highest since attached";
    if (hold == worksite::Hold::lowest) return "lowest since attached";
    return {};
}

std::string condition_words(const worksite::Observation& seen) {
    std::string words(worksite::category_word(worksite::Quantity::readout_phase,
                                              static_cast<std::size_t>(seen.condition.phase)));
    if (!seen.condition.settled) words += ", not settled";
    if (const auto hold = hold_words(seen.hold); !hold.empty()) words += ", " + hold;
    return words;
}

Choice choice_for(std::string_view placeholder, const worksite::Job& job) {
    Choice choice{
        std::string(placeholder), std::string(worksite::meaning_of(placeholder)), {}, false};
    for (const auto& spelling : worksite::spellings(placeholder, job)) {
        const bool again = spelling.index < choice.words.size();  // another spelling of the same
        if (!again) choice.words.push_back(spelling.text);
    }
    if (choice.words.empty() && !worksite::example_of(placeholder).empty()) {
        choice.words.emplace_back(worksite::example_of(placeholder));
        choice.open = true;
    }
    return choice;
}

std::vector<Choice> choices_in(const worksite::Job& job) {
    std::vector<Choice> choices;
    for (const auto& phrase : worksite::phrases())
        for (const auto& part : worksite::parts_of(phrase.pattern)) {
            const bool known = std::any_of(choices.begin(), choices.end(), [&](const auto& choice) {
                return choice.placeholder == part.text;
            });
            if (part.kind == worksite::Part::Kind::placeholder && !known)
                choices.push_back(choice_for(part.text, job));
        }
    return choices;
}

bool holds(std::string_view text, std::string_view word) {
    const auto lower = [](unsigned char c) { return c >= 'A' && c <= 'Z' ? c + 32 : c; };
    return std::search(text.begin(), text.end(), word.begin(), word.end(), [&](char a, char b) {
               return lower(static_cast<unsigned char>(a)) == lower(static_cast<unsigned char>(b));
           }) != text.end();
}

}  // namespace

JobCard job_card(const worksite::Job& job, worksite::Mode mode) {
    JobCard card;
    card.title = job.title;
    card.call_out = job.call_out;
    card.gas =
        job.site.gas == worksite::GasKind::natural_gas ? "natural gas" : "propane from a cylinder";
    card.mode = mode == worksite::Mode::assessed ? "assessed" : "coached";
    if (mode == worksite::Mode::assessed && job.time_allowed_s > 0.0)
        card.time_allowed = units::fixed(job.time_allowed_s / 60.0, 0) + " min";
    for (const auto& tap : job.site.taps) card.taps.push_back(tap.name);
    for (const auto& appliance : job.site.appliances) card.appliances.push_back(appliance.name);
    card.choices = choices_in(job);
    return card;
}

std::vector<ReadingRow> readings(const worksite::Attempt& attempt) {
    std::vector<ReadingRow> rows;
    for (const auto& entry : attempt.log())
        for (const auto& seen : entry.observations)
            if (seen.number > 0)
                rows.push_back({seen.number, clock_text(seconds_at(attempt, seen.tick)),
                                std::string(worksite::info(seen.quantity).title),
                                worksite::text_of(seen.quantity, seen.value),
                                condition_words(seen)});
    return rows;
}

std::vector<LogRow> log(const worksite::Attempt& attempt) {
    std::vector<LogRow> rows;
    for (const auto& entry : attempt.log())
        rows.push_back(
            {clock_text(seconds_at(attempt, entry.begin_tick)), entry.words, entry.shown});
    return rows;
}

std::string takes_text(const worksite::Phrase& phrase) {
    std::string text(phrase.skill);
    if (phrase.part_minutes <= 0.0) return text;
    return std::string(price_begins) + cost_text(60.0 * phrase.part_minutes) + " of work" +
           (text.empty() ? "" : "; " + text);
}

std::vector<PhraseRow> phrases(std::string_view word) {
    std::vector<PhraseRow> rows;
    for (const auto& phrase : worksite::phrases())
        if (word.empty() || holds(phrase.pattern, word) || holds(phrase.help, word) ||
            holds(phrase.skill, word))
            rows.push_back({std::string(phrase.pattern), std::string(phrase.help),
                            cost_text(phrase.seconds), takes_text(phrase)});
    return rows;
}

std::vector<std::string> first_words() {
    std::vector<std::string> words;
    for (const auto& phrase : worksite::phrases()) {
        std::string word(phrase.pattern.substr(0, phrase.pattern.find(' ')));
        if (std::find(words.begin(), words.end(), word) == words.end())
            words.push_back(std::move(word));
    }
    return words;
}

std::string clock_text(double seconds_on_site) {
    const auto whole = static_cast<long>(std::max(0.0, seconds_on_site));
    const auto two = [](long n) { return (n < 10 ? "0" : "") + std::to_string(n); };
    return two(whole / 60) + ":" + two(whole % 60);
}

std::string clock_text(const worksite::Attempt& attempt) {
    return clock_text(attempt.seconds_on_site());
}

std::string cost_text(double seconds) {
    if (seconds <= 0.0) return "varies";  // waits take what the sentence says
    if (seconds < 60.0) return units::fixed(seconds, 0) + " s";
    const double minutes = seconds / 60.0;
    return units::fixed(minutes,
                        minutes == static_cast<double>(static_cast<long>(minutes)) ? 0 : 1) +
           " min";
}

}  // namespace emberpath::views
