#include <variant>

#include "sim/scoring/lane_group.hpp"
#include "sim/trainees/belief.hpp"

namespace emberpath::trainees {

namespace {

constexpr std::size_t group_lanes = 8;
template <class Isa>
using Group = scoring::LaneGroup<math::Pack<group_lanes, Isa>>;

std::array<scoring::LaneRole, group_lanes> roles_of(const std::vector<scoring::Hypothesis>& all,
                                                    std::size_t group) {
    std::array<scoring::LaneRole, group_lanes> roles;
    for (std::size_t i = 0; i < group_lanes; ++i) {
        const std::size_t lane = group * group_lanes + i;
        roles[i].wanted = lane < all.size();
        if (!roles[i].wanted) continue;
        roles[i].column = lane;
        if (all[lane].fault.cause != faults::Cause::no_fault) roles[i].faults = {all[lane].fault};
    }
    return roles;
}

template <class Isa>
std::vector<Group<Isa>> groups_for(const worksite::Job& job,
                                   const std::vector<scoring::Hypothesis>& all) {
    std::vector<Group<Isa>> groups;
    for (std::size_t g = 0; g * group_lanes < all.size(); ++g)
        groups.emplace_back(job, roles_of(all, g));
    return groups;
}

}  // namespace

struct Bank::Groups {
    std::variant<std::vector<Group<math::Wide>>, std::vector<Group<math::Baseline>>> all;
};

Bank::Bank(const worksite::Job& seen) : groups_(std::make_unique<Groups>()) {
    shadows_.hypotheses = scoring::hypotheses(seen.site.gas);
    const std::size_t lanes = shadows_.hypotheses.size();
    shadows_.complaints.assign(lanes, worksite::Complaint::none);
    shadows_.signatures.assign(scoring::modes(seen).size(), scoring::Snapshot(lanes));
    if (worksite::wide_is_supported())
        groups_->all = groups_for<math::Wide>(seen, shadows_.hypotheses);
    else
        groups_->all = groups_for<math::Baseline>(seen, shadows_.hypotheses);
}

Bank::~Bank() = default;

void Bank::follow(const scoring::Tape& tape) {
    const std::size_t lanes = shadows_.hypotheses.size();
    shadows_.observed.resize(tape.observations.size(), std::vector<double>(lanes, 0.0));
    shadows_.passive.resize(tape.marks, scoring::Snapshot(lanes));
    std::visit(
        [&](auto& groups) {
            for (auto& group : groups) group.live_on(tape, lived_, shadows_);
        },
        groups_->all);
    lived_ = tape.events.size();
}

}  // namespace emberpath::trainees
