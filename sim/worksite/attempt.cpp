#include "sim/worksite/attempt.hpp"

#include <algorithm>
#include <array>

#include "sim/worksite/day_after.hpp"
#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

const Doing& doing_of(Verb verb) {
    const std::array tables{
        house_doings(),      look_doings(),  service_doings(), electrical_doings(),
        gas_doings(),        flue_doings(),  water_doings(),   remedy_doings(),
        proof_doings(),      write_doings(), measure_doings(), supply_doings(),
        protection_doings(), panel_doings(), kit_doings(),     danger_doings()};
    for (const auto table : tables)
        for (const auto& doing : table)
            if (doing.verb == verb) return doing;
    return tables.front().front();
}

struct Attempt::Impl {
    Workplace place;
};

Attempt::Attempt(Job job, Seeds seeds, Mode mode, Follower* follower)
    : impl_(new Impl{Workplace(std::move(job), seeds, mode, follower)}) {
    impl_->place.entry = {};
    if (impl_->place.smells_gas()) impl_->place.say("It smells of gas.");
}
Attempt::~Attempt() = default;
Attempt::Attempt(Attempt&&) noexcept = default;
Attempt& Attempt::operator=(Attempt&&) noexcept = default;

namespace {

std::variant<Act, ActRefusal> understand(const Workplace& place, std::string_view sentence) {
    if (place.over()) return ActRefusal{"The attempt is over."};
    auto parsed = parse_act(sentence, place.job);
    if (const auto* act = std::get_if<Act>(&parsed)) {
        if (place.time_is_up() && row_of(*act).kind != LogEntry::Kind::write)
            return ActRefusal{"The time allowed is up."};
        for (auto obstacle :
             {outside_refuses(place, *act), doing_of(act->verb).obstacle(place, *act),
              battery_refuses(place, *act)})
            if (!obstacle.empty()) return ActRefusal{std::move(obstacle)};
    }
    return parsed;
}

void do_act(Workplace& place, const Act& act) {
    const Doing& doing = doing_of(act.verb);
    judge_scope(place, act);
    judge_consent(place, act);
    judge_label_in_hand(place, act);
    judge_spark(place, act);
    judge_places(place, act);
    if (place.over()) return;
    if (doing.when == Doing::When::before) doing.effect(place, act);
    if (doing.when != Doing::When::own) place.pass(seconds_of(act));
    if (doing.when != Doing::When::before && !place.over()) doing.effect(place, act);
}

/// Keeps the entry of what was being done.
const LogEntry& close_entry(Workplace& place) {
    place.entry.end_tick = place.tick();
    place.log.push_back(std::move(place.entry));
    place.entry = {};
    return place.log.back();
}

}  // namespace

Attempt::Outcome Attempt::perform(std::string_view sentence) {
    Workplace& place = impl_->place;
    auto understood = understand(place, sentence);
    if (auto* refusal = std::get_if<ActRefusal>(&understood)) return {nullptr, std::move(*refusal)};
    const Act& act = std::get<Act>(understood);
    place.entry.words = render(act, place.job);
    place.entry.begin_tick = place.tick();
    place.entry.kind = row_of(act).kind;
    do_act(place, act);
    return {&close_entry(place), {}};
}

ActRefusal Attempt::check(std::string_view sentence) const {
    auto understood = understand(impl_->place, sentence);
    if (auto* refusal = std::get_if<ActRefusal>(&understood)) return std::move(*refusal);
    return {};
}

double Attempt::seconds_for(std::string_view sentence) const {
    const auto parsed = parse_act(sentence, impl_->place.job);
    const auto* act = std::get_if<Act>(&parsed);
    return act ? seconds_here(impl_->place, *act) : 0.0;
}

const LogEntry* Attempt::run(std::int64_t ticks) {
    Workplace& place = impl_->place;
    if (place.over()) return nullptr;
    const auto begin = place.tick();
    for (std::int64_t i = 0; i < ticks && !place.over() && !place.time_is_up(); ++i) place.step();
    if (!place.over()) return nullptr;
    constexpr std::int64_t ticks_per_s = 10;
    Act wait;
    const std::int64_t seconds = (place.tick() - begin + ticks_per_s - 1) / ticks_per_s;
    wait.number = static_cast<double>(seconds);
    place.entry.words = render(wait, place.job);
    place.entry.begin_tick = begin;
    place.entry.kind = LogEntry::Kind::wait;
    return &close_entry(place);
}

Sight Attempt::sight() const {
    return sight_of(impl_->place);
}
void Attempt::keep_trail() {
    impl_->place.keeps_trail = true;
}
const std::deque<TrailPoint>& Attempt::trail() const {
    return impl_->place.trail;
}

std::int64_t Attempt::tick() const {
    return impl_->place.tick();
}
double Attempt::seconds_on_site() const {
    return impl_->place.seconds_on_site();
}
bool Attempt::time_is_up() const {
    return impl_->place.time_is_up();
}
const std::vector<LogEntry>& Attempt::log() const {
    return impl_->place.log;
}
const std::vector<Breach>& Attempt::breaches() const {
    return impl_->place.breaches;
}
const WriteUp& Attempt::write_up() const {
    return impl_->place.write_up;
}
Mode Attempt::mode() const {
    return impl_->place.mode;
}
const std::string& Attempt::beyond_model() const {
    return impl_->place.beyond_model;
}
bool Attempt::over() const {
    return impl_->place.over();
}
std::uint64_t Attempt::state_hash() const {
    return impl_->place.hash();
}

Attempt::After Attempt::day_after() const {
    const DayAfter day = worksite::day_after(impl_->place);
    return {lines_of(day, impl_->place.job.practice.limits), day.state};
}

Attempt::Truth Attempt::truth() const {
    const Workplace& place = impl_->place;
    std::vector<faults::Fault> remaining;
    for (std::size_t i = 0; i < place.job.faults.size(); ++i)
        if (place.dealt_with[i] == 0 &&
            !rightly_handed_on(place, faults::info(place.job.faults[i].cause).remedy))
            remaining.push_back(place.job.faults[i]);
    auto [done, missing, not_needed] = proof_items(place);
    auto doses = dose_lines(place.doses, place.job.practice.limits);
    for (auto& line : danger_lines(place)) doses.push_back(std::move(line));
    return {place.job,        std::move(remaining),       place.look(),          left_behind(place),
            std::move(done),  std::move(missing),         std::move(not_needed), made_safe(place),
            std::move(doses), place.household.complaint()};
}

}  // namespace emberpath::worksite
