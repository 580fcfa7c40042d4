#include <algorithm>
#include <array>
#include <optional>
#include <tuple>

#include "sim/scenario/build.hpp"

namespace emberpath::scenario {

namespace {

using Kind = worksite::HouseholdEvent::Kind;

struct KindName {
    Kind kind;
    std::string_view key;
    bool can_last;
};
constexpr std::array kinds{
    KindName{Kind::tap, "tap", true},
    KindName{Kind::appliance, "appliance", true},
    KindName{Kind::cold_draw, "cold_draw", true},
    KindName{Kind::set_point, "set_point", false},
    KindName{Kind::wind, "wind", true},
    KindName{Kind::reset, "reset", false},
    KindName{Kind::window, "window", true},
    KindName{Kind::fan, "fan", true},
    KindName{Kind::rain, "rain", true},
};

/// An event and when it ends by itself; never when it does not.
struct Draft {
    worksite::HouseholdEvent event;
    std::optional<double> until_s;
    double value_after = 0.0;
    Position at;
    std::string thing;  // "shower", "wind": for sentences
};

class EventMaker {
  public:
    EventMaker(const Values& site, Problems& problems) : site_(site), problems_(problems) {}

    std::vector<worksite::HouseholdEvent> make() {
        for (const Values& event : site_.list("event")) add(event);
        check_overlaps();
        return in_order();
    }

  private:
    void report(const Item& item, const std::string& found, std::string expected) {
        problems_.add(item.key_at, {item.key + ": found " + found, std::move(expected), {}});
    }

    void add(const Values& event) {
        const KindName* kind = kind_of(event);
        if (kind == nullptr) return;
        check_company(event, *kind);
        const Item* at = event.good("at");
        const Item* subject = event.good(kind->key);
        if (at == nullptr || subject == nullptr) return;
        Draft draft;
        draft.at = at->at;
        draft.event.kind = kind->kind;
        draft.event.at_s = at->number;
        draft.thing = kind->key;
        if (!fill(event, *subject, draft)) return;
        const Item* lasts = event.good("lasts");
        if (lasts != nullptr && kind->can_last) draft.until_s = at->number + lasts->number;
        drafts_.push_back(draft);
    }

    /// Exactly one of the kinds must be named.
    const KindName* kind_of(const Values& event) {
        const KindName* chosen = nullptr;
        for (const KindName& kind : kinds) {
            const Item* item = event.written(kind.key);
            if (item == nullptr) continue;
            if (chosen != nullptr) {
                const bool first = item->key_at < event.written(chosen->key)->key_at;
                report(first ? *event.written(chosen->key) : *item, "a second thing in one event",
                       "one [[event]] for each thing that happens");
                return nullptr;
            }
            chosen = &kind;
        }
        if (chosen == nullptr)
            problems_.add(
                event.at,
                {"event: found nothing that happens",
                 "one of tap, appliance, cold_draw, set_point, wind, reset, window, fan or rain",
                 {}});
        return chosen;
    }

    /// Keys that only go with another one.
    void check_company(const Values& event, const KindName& kind) {
        if (const Item* item = event.written("opening"); item != nullptr && kind.kind != Kind::tap)
            report(*item, "an opening without a tap", "a tap key in the same [[event]]");
        if (const Item* item = event.written("on"); item != nullptr && !has_switch(kind.kind))
            report(*item, "a switch without an appliance",
                   "an appliance, window or fan key in the same [[event]]");
        if (const Item* item = event.written("lasts"); item != nullptr && !kind.can_last)
            report(*item, "a duration of a " + std::string(kind.key) + ", which happens at once",
                   "no such key in this [[event]]");
        const Item* reset = event.good("reset");
        if (reset != nullptr && !reset->flag)
            report(*reset, "false, an event that does not happen", "true, or no such [[event]]");
    }

    bool fill(const Values& event, const Item& subject, Draft& draft) {
        const Item* opening = event.good("opening");
        const Item* on = event.good("on");
        switch (draft.event.kind) {
            case Kind::tap:
                draft.event.value = opening != nullptr ? opening->number : 1.0;
                return find(subject, "tap", draft);
            case Kind::appliance:
            case Kind::window:
            case Kind::fan:
                draft.event.value = on == nullptr || on->flag ? 1.0 : 0.0;
                draft.value_after = at_rest(draft.event.kind, subject);
                return find(subject, subject.key.c_str(), draft);
            case Kind::rain:
                draft.event.value = subject.flag ? 1.0 : 0.0;
                draft.value_after = flag_of(site_, "rain");
                return true;
            case Kind::reset:
                draft.event.value = 1.0;
                return true;
            case Kind::wind:
                draft.value_after = site_.number("wind");
                break;
            default:
                break;
        }
        draft.event.value = subject.number;
        return true;
    }

    static bool has_switch(Kind kind) {
        return kind == Kind::appliance || kind == Kind::window || kind == Kind::fan;
    }

    static double flag_of(const Values& values, const char* key) {
        const Item* item = values.good(key);
        return item != nullptr && item->flag ? 1.0 : 0.0;
    }

    /// How the household keeps it; appliances are off.
    double at_rest(Kind kind, const Item& subject) const {
        if (kind == Kind::appliance) return 0.0;
        for (const Values& thing : site_.list(subject.key))
            if (thing.text("name") == subject.text)
                return flag_of(thing, kind == Kind::window ? "open" : "on");
        return 0.0;
    }

    bool find(const Item& subject, const char* list, Draft& draft) {
        std::vector<std::string> names;
        for (const Values& thing : site_.list(list)) names.push_back(thing.text("name"));
        const auto found = std::find(names.begin(), names.end(), subject.text);
        draft.thing = subject.text;
        draft.event.index = static_cast<std::size_t>(found - names.begin());
        if (found != names.end()) return true;
        // A name that could not be read may be the very one; its own problem is reported.
        if (std::find(names.begin(), names.end(), "") != names.end()) return false;
        problems_.add(subject.at, {subject.key + ": found " + in_quotes(subject.text) +
                                       ", which this site does not have",
                                   "the name of one " + std::string(list) + " of the site",
                                   diagnostics::nearest_word(subject.text, names)});
        return false;
    }

    /// An event that lasts owns its thing until its end; another one within would be undone by it.
    void check_overlaps() {
        for (const Draft& first : drafts_) {
            for (const Draft& second : drafts_) {
                const bool same = &first != &second && first.event.kind == second.event.kind &&
                                  first.event.index == second.event.index;
                const double until_s = first.until_s.value_or(first.event.at_s);
                const bool later = second.event.at_s > first.event.at_s ||
                                   (second.event.at_s == first.event.at_s && first.at < second.at);
                const bool within =
                    second.event.at_s < until_s || second.event.at_s == first.event.at_s;
                if (!same || !later || !within) continue;
                problems_.add(second.at, {"at: found an event of the " + second.thing +
                                              " while an earlier one still lasts",
                                          "a time after the earlier one has ended",
                                          {}});
            }
        }
    }

    /// Where one ends as the next begins, the end comes first.
    std::vector<worksite::HouseholdEvent> in_order() const {
        std::vector<worksite::HouseholdEvent> endings, events;
        for (const Draft& draft : drafts_) {
            events.push_back(draft.event);
            if (!draft.until_s) continue;
            endings.push_back(draft.event);
            endings.back().at_s = *draft.until_s;
            endings.back().value = draft.value_after;
        }
        endings.insert(endings.end(), events.begin(), events.end());
        std::stable_sort(endings.begin(), endings.end(),
                         [](const auto& a, const auto& b) { return a.at_s < b.at_s; });
        return endings;
    }

    const Values& site_;
    Problems& problems_;
    std::vector<Draft> drafts_;
};

}  // namespace

std::vector<worksite::HouseholdEvent> make_events(const Values& site, Problems& problems) {
    return EventMaker(site, problems).make();
}

}  // namespace emberpath::scenario
