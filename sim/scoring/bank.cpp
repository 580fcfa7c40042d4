#include "sim/scoring/bank.hpp"

#include <algorithm>
#include <span>
#include <utility>
#include <variant>

#include "sim/math/widest.hpp"
#include "sim/scoring/lane_group.hpp"
#include "sim/scoring/share_out.hpp"

namespace emberpath::scoring {

namespace {

constexpr std::size_t group_lanes = 8;

// Representatives first, then the others cause by cause: what falls together sleeps together.
std::vector<std::size_t> group_order(const std::vector<std::size_t>& representative) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < representative.size(); ++i)
        if (representative[i] == i) order.push_back(i);
    for (std::size_t i = 0; i < representative.size(); ++i)
        if (representative[i] != i) order.push_back(i);
    return order;
}

template <class Isa>
struct Member {
    LaneGroup<math::Pack<group_lanes, Isa>> group;
    std::vector<std::size_t> lanes;  // columns
    std::size_t lived = 0;
    bool asleep = false;
};

template <class Isa>
std::vector<Member<Isa>> members(const worksite::Job& job, const std::vector<Hypothesis>& all,
                                 const std::vector<std::size_t>& order) {
    std::vector<Member<Isa>> out;
    for (std::size_t first = 0; first < order.size(); first += group_lanes) {
        std::array<LaneRole, group_lanes> roles;
        std::vector<std::size_t> lanes;
        for (std::size_t i = 0; i < group_lanes; ++i) {
            roles[i].wanted = first + i < order.size();
            if (!roles[i].wanted) continue;
            const std::size_t lane = order[first + i];
            roles[i].column = lane;
            lanes.push_back(lane);
            roles[i].faults = faults_of(all[lane]);
        }
        out.push_back({LaneGroup<math::Pack<group_lanes, Isa>>(job, roles), lanes});
    }
    return out;
}

std::size_t ticks_between(const Tape& tape, std::size_t first, std::size_t last) {
    std::size_t ticks = 0;
    for (std::size_t i = first; i < last; ++i)
        ticks += tape.events[i].kind == Tape::Kind::tick ? 1 : 0;
    return ticks;
}

}  // namespace

struct Bank::Groups {
    std::variant<std::vector<Member<math::Widest>>, std::vector<Member<math::Wide>>,
                 std::vector<Member<math::Baseline>>>
        all;
};

std::vector<std::size_t> representatives(const std::vector<Hypothesis>& all) {
    std::vector<std::size_t> out(all.size());
    for (std::size_t first = 0; first < all.size();) {
        std::size_t last = first;
        while (all[last].upper >= 0) ++last;
        for (std::size_t i = first; i <= last; ++i) out[i] = (first + last) / 2;
        first = last + 1;
    }
    return out;
}

Bank::Bank(const worksite::Job& job, int threads)
    : Bank(job, scoring::hypotheses(worksite::traits_of(job)), threads) {}

Bank::Bank(const worksite::Job& job, std::vector<Hypothesis> all, int threads)
    : job_(std::make_shared<const worksite::Job>(job)),
      threads_(std::max(threads, 1)),
      representative_(representatives(all)),
      asleep_(all.size(), false),
      groups_(std::make_unique<Groups>()) {
    shadows_.complaints.assign(all.size(), worksite::Complaint::none);
    shadows_.signatures.assign(modes(job).size(), Snapshot(all.size()));
    shadows_.hypotheses = std::move(all);
    const auto order = group_order(representative_);
    if (worksite::widest_is_supported())
        groups_->all = members<math::Widest>(*job_, shadows_.hypotheses, order);
    else if (worksite::wide_is_supported())
        groups_->all = members<math::Wide>(*job_, shadows_.hypotheses, order);
    else
        groups_->all = members<math::Baseline>(*job_, shadows_.hypotheses, order);
}

Bank::~Bank() = default;

Bank::Bank(const Bank& other)
    : job_(other.job_),
      threads_(other.threads_),
      shadows_(other.shadows_),
      representative_(other.representative_),
      asleep_(other.asleep_),
      groups_(std::make_unique<Groups>(*other.groups_)),
      lived_(other.lived_),
      group_ticks_(other.group_ticks_) {}

void Bank::make_room(const Tape& tape) {
    const std::size_t lanes = shadows_.hypotheses.size();
    shadows_.observed.resize(tape.observations.size(), std::vector<double>(lanes, 0.0));
    shadows_.passive.resize(tape.marks, Snapshot(lanes));
}

void Bank::live_until(const Tape& tape, std::size_t end) {
    end = std::min(end, tape.events.size());
    if (end <= lived_) return;
    make_room(tape);
    std::visit(
        [&](auto& all) {
            std::vector<std::size_t> awake;
            for (std::size_t i = 0; i < all.size(); ++i)
                if (!all[i].asleep) awake.push_back(i);
            share_out(awake.size(), threads_, [&](std::size_t i) {
                auto& member = all[awake[i]];
                member.group.live_on(tape, member.lived, end, shadows_);
                member.lived = end;
            });
            group_ticks_ += awake.size() * ticks_between(tape, lived_, end);
        },
        groups_->all);
    speak_for_sleepers(lived_, end, tape);
    lived_ = end;
}

// The nearest severity of the same cause that is awake; at the latest the representative.
std::size_t Bank::speaker_of(std::size_t lane) const {
    const std::vector<Hypothesis>& all = shadows_.hypotheses;
    int below = static_cast<int>(lane), above = below;
    while (below >= 0 || above >= 0) {
        if (below >= 0 && !asleep_[static_cast<std::size_t>(below)])
            return static_cast<std::size_t>(below);
        if (above >= 0 && !asleep_[static_cast<std::size_t>(above)])
            return static_cast<std::size_t>(above);
        if (below >= 0) below = all[static_cast<std::size_t>(below)].lower;
        if (above >= 0) above = all[static_cast<std::size_t>(above)].upper;
    }
    return representative_[lane];
}

// What a sleeper would have shown is taken from its speaker.
void Bank::speak_for_sleepers(std::size_t first, std::size_t last, const Tape& tape) {
    if (std::none_of(asleep_.begin(), asleep_.end(), [](bool one) { return one; })) return;
    std::vector<std::pair<std::size_t, std::size_t>> spoken_for;
    for (std::size_t i = 0; i < asleep_.size(); ++i)
        if (asleep_[i]) spoken_for.emplace_back(i, speaker_of(i));
    for (std::size_t e = first; e < last; ++e) {
        const Tape::Event& event = tape.events[e];
        for (const auto& [lane, speaker] : spoken_for) {
            if (event.kind == Tape::Kind::observation)
                shadows_.observed[event.index][lane] = shadows_.observed[event.index][speaker];
            if (event.kind == Tape::Kind::mark) shadows_.passive[event.index].copy(lane, speaker);
        }
    }
}

namespace {

/// Where a lane lives now.
struct Seat {
    std::size_t member = 0, slot = 0;
};

template <class Isa>
Member<Isa> gathered(const std::vector<Member<Isa>>& all, std::span<const Seat> seats) {
    const Member<Isa>& first = all[seats.front().member];
    Member<Isa> out{first.group, {}, first.lived, false};
    for (std::size_t slot = 0; slot < group_lanes; ++slot) {
        const Seat& seat = slot < seats.size() ? seats[slot] : seats.front();
        out.group.adopt(slot, all[seat.member].group, seat.slot);
        if (slot < seats.size())
            out.lanes.push_back(all[seat.member].lanes[seat.slot]);
        else
            out.group.only_fill(slot);
    }
    return out;
}

template <class Isa>
void seat_again(const std::vector<Member<Isa>>& all, const std::vector<Seat>& seats, bool asleep,
                std::vector<Member<Isa>>& out) {
    for (std::size_t first = 0; first < seats.size(); first += group_lanes) {
        const std::size_t count = std::min(group_lanes, seats.size() - first);
        out.push_back(gathered(all, std::span(seats).subspan(first, count)));
        out.back().asleep = asleep;
    }
}

/// Groups filled anew where the lanes that stay fit into fewer; false: nothing gained, nothing changed.
template <class Isa>
bool fill_anew(std::vector<Member<Isa>>& all, const std::vector<bool>& may_sleep) {
    std::vector<Seat> staying, leaving;
    std::vector<Member<Isa>> out;
    std::size_t awake = 0;
    for (std::size_t m = 0; m < all.size(); ++m) {
        if (all[m].asleep) continue;
        ++awake;
        for (std::size_t slot = 0; slot < all[m].lanes.size(); ++slot)
            (may_sleep[all[m].lanes[slot]] ? leaving : staying).push_back({m, slot});
    }
    if ((staying.size() + group_lanes - 1) / group_lanes >= awake) return false;
    seat_again(all, staying, false, out);
    seat_again(all, leaving, true, out);
    for (Member<Isa>& member : all)
        if (member.asleep) out.push_back(std::move(member));
    all = std::move(out);
    return true;
}

}  // namespace

void Bank::let_sleep(const std::vector<bool>& excluded) {
    std::vector<bool> may_sleep = excluded;
    for (std::size_t i = 0; i < may_sleep.size(); ++i)
        if (representative_[i] == i) may_sleep[i] = false;
    std::visit(
        [&](auto& all) {
            if (!fill_anew(all, may_sleep)) return;
            for (const auto& member : all)
                for (const std::size_t lane : member.lanes) asleep_[lane] = member.asleep;
        },
        groups_->all);
}

bool Bank::wake(const Tape& tape, const std::vector<bool>& lanes) {
    return std::visit(
        [&](auto& all) {
            std::vector<std::size_t> woken;
            for (std::size_t i = 0; i < all.size(); ++i)
                if (all[i].asleep && std::any_of(all[i].lanes.begin(), all[i].lanes.end(),
                                                 [&](std::size_t lane) { return lanes[lane]; }))
                    woken.push_back(i);
            share_out(woken.size(), threads_, [&](std::size_t i) {
                auto& member = all[woken[i]];
                member.group.live_on(tape, member.lived, lived_, shadows_);
            });
            for (const std::size_t i : woken) {
                group_ticks_ += ticks_between(tape, all[i].lived, lived_);
                all[i].lived = lived_;
                all[i].asleep = false;
                for (const std::size_t lane : all[i].lanes) asleep_[lane] = false;
            }
            return !woken.empty();
        },
        groups_->all);
}

std::size_t Bank::groups_awake() const {
    return std::visit(
        [](const auto& all) {
            return static_cast<std::size_t>(
                std::count_if(all.begin(), all.end(), [](const auto& m) { return !m.asleep; }));
        },
        groups_->all);
}

}  // namespace emberpath::scoring
