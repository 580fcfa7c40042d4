#include "sim/scoring/bank.hpp"

#include <algorithm>
#include <utility>
#include <variant>

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
            if (all[lane].fault.cause != faults::Cause::no_fault)
                roles[i].faults = {all[lane].fault};
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
    std::variant<std::vector<Member<math::Wide>>, std::vector<Member<math::Baseline>>> all;
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
    : Bank(job, scoring::hypotheses(job.site.gas), threads) {}

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
    if (worksite::wide_is_supported())
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

// What a sleeper would have shown is taken from its representative.
void Bank::speak_for_sleepers(std::size_t first, std::size_t last, const Tape& tape) {
    if (std::none_of(asleep_.begin(), asleep_.end(), [](bool one) { return one; })) return;
    for (std::size_t e = first; e < last; ++e) {
        const Tape::Event& event = tape.events[e];
        for (std::size_t i = 0; i < asleep_.size(); ++i) {
            if (!asleep_[i]) continue;
            if (event.kind == Tape::Kind::observation)
                shadows_.observed[event.index][i] =
                    shadows_.observed[event.index][representative_[i]];
            if (event.kind == Tape::Kind::mark)
                shadows_.passive[event.index].copy(i, representative_[i]);
        }
    }
}

void Bank::let_sleep(const std::vector<bool>& excluded) {
    std::visit(
        [&](auto& all) {
            for (auto& member : all) {
                const auto may_sleep = [&](std::size_t lane) {
                    return excluded[lane] && representative_[lane] != lane;
                };
                if (member.asleep ||
                    !std::all_of(member.lanes.begin(), member.lanes.end(), may_sleep))
                    continue;
                member.asleep = true;
                for (const std::size_t lane : member.lanes) asleep_[lane] = true;
            }
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

std::size_t Bank::group_count() const {
    return std::visit([](const auto& all) { return all.size(); }, groups_->all);
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
