// In the open air, away from the heater: what one breathes there, what one does not hear or smell, and what can be
// done from there.

#include "sim/worksite/doings.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::worksite {

namespace {

/// By the place of each thing: meter and cylinders stand outdoors, and the customer comes along; telephone, gloves,
/// alarm and notebook are on the person. Everything else is at the heater or in the house: the switchboard too, for
/// its switches spark in the same air.
bool within_reach_outside(const Act& act) {
    using enum Verb;
    switch (act.verb) {
        case go_outside:  // its own obstacle says so
        case go_in:
        case wait:
        case escalate:
        case hand_on:
        case ask:
        case ask_consent:
        case tell_customer:
        case unsafe_notice:
        case say_where:
        case decline_climb:
        case put_on:
        case take_off:
        case co_alarm_on:
        case co_alarm_off:
        case weigh_cylinder:
        case weigh_second_cylinder:
        case turn_changeover:
            return true;
        case shut_gas:
        case open_gas:
            return act.object == 1;  // at meter or cylinder
        case look:
            return act.object == static_cast<std::size_t>(Thing::cylinder) ||
                   act.object == static_cast<std::size_t>(Thing::changeover);
        case remedy:
            return faults::info(static_cast<faults::Remedy>(act.remedy)).reach ==
                   faults::Reach::words;
        default:
            return row_of(act).kind == LogEntry::Kind::write;
    }
}

}  // namespace

std::string outside_refuses(const Workplace& w, const Act& act) {
    if (!w.person.outside || within_reach_outside(act)) return {};
    return "You stand in the open air, away from it; go back in first.";
}

void leave_meanwhile(Workplace& w, double seconds) {
    auto& ticks = w.precautions.in_gas_ticks;
    const auto stayed = ticks;
    ticks -= ticks_in(seconds);
    w.pass(seconds);
    ticks = stayed;
}

void Workplace::step_outside() {
    seen_inside = sight_of(*this);
    person.outside = true;
}

/// The nose begins anew: what has gathered meanwhile is smelt at the door.
void Workplace::come_in() {
    seen_inside.reset();
    person.outside = smell_noticed_ = false;
}

void Workplace::notice(std::string line) {
    if (!person.outside) say(std::move(line));
}

void Workplace::take_breath() {
    breathe(doses, breathed_co(), tick_s, job.practice.limits);
    if (person.outside) doses.outside_s += tick_s;
}

}  // namespace emberpath::worksite
