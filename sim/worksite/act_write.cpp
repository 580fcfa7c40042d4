// The customer, notices, notes for oneself, the record, and leaving.

#include <algorithm>
#include <array>

#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

void tell(Workplace& w, const Act&) {
    w.deeds.told = w.tick();
    w.say("\"Thank you for telling me.\"");
}

void notice(Workplace& w, const Act&) {
    w.deeds.notice = w.tick();
    w.say(w.job.customer.agrees == Consent::never
              ? "The customer will not sign; you leave a copy and note the refusal."
              : "The customer signs the notice.");
}

void tag(Workplace& w, const Act&) {
    w.fabric.tagged = true;
}

void escalate(Workplace& w, const Act& act) {
    w.deeds.escalated = w.tick();
    w.deeds.bodies_told |= body_bit(act.object);
    w.say("They note what you report.");
}

std::string cause_of(const Act& act) {
    return std::string(faults::info(static_cast<faults::Cause>(act.object)).word);
}

// The first cause begins the list anew.
void write_cause(Workplace& w, const Act& act) {
    w.write_up.cause = cause_of(act);
    w.write_up.also.clear();
    w.write_up.possible.clear();
    w.write_up.confidence.reset();
}

std::string another_cause(const Workplace& w, const Act& act) {
    const WriteUp& written = w.write_up;
    const std::string word = cause_of(act);
    if (written.cause.empty()) return "Write the first cause first: write cause " + word + ".";
    const auto stands_in = [&](const std::vector<std::string>& list) {
        return std::find(list.begin(), list.end(), word) != list.end();
    };
    if (written.cause == word || stands_in(written.also) || stands_in(written.possible))
        return "That cause stands in the record already.";
    return {};
}
void write_also_cause(Workplace& w, const Act& act) {
    w.write_up.also.push_back(cause_of(act));
}
void write_possible_cause(Workplace& w, const Act& act) {
    w.write_up.possible.push_back(cause_of(act));
}

std::string a_cause_stands(const Workplace& w, const Act&) {
    return w.write_up.cause.empty() ? "Write the cause first, and then how sure you are of it."
                                    : "";
}
void write_confidence(Workplace& w, const Act& act) {
    w.write_up.confidence = act.number;
}

std::string readings_exist(const Workplace& w, const Act& act) {
    for (const int number : act.numbers) {
        const bool found = std::any_of(w.log.begin(), w.log.end(), [&](const LogEntry& entry) {
            return std::any_of(entry.observations.begin(), entry.observations.end(),
                               [&](const Observation& seen) { return seen.number == number; });
        });
        if (!found) return "There is no reading #" + std::to_string(number) + ".";
    }
    return {};
}

void write_because(Workplace& w, const Act& act) {
    w.write_up.because = act.numbers;
}
void write_done(Workplace& w, const Act& act) {
    w.write_up.done = act.text;
}
void write_told(Workplace& w, const Act& act) {
    w.write_up.told = act.text;
}

void hand_in(Workplace& w, const Act&) {
    judge_leaving(w);
    w.write_up.handed_in = true;
    w.say("You hand in your record and leave.");
}

constexpr std::array table{
    Doing{Verb::tell_customer, no_obstacle, tell},
    Doing{Verb::unsafe_notice, no_obstacle, notice},
    Doing{Verb::tag_heater, no_obstacle, tag},
    Doing{Verb::escalate, no_obstacle, escalate},
    Doing{Verb::suspect, no_obstacle, nothing},
    Doing{Verb::doubt, no_obstacle, nothing},
    Doing{Verb::strike_out, no_obstacle, nothing},
    Doing{Verb::write_cause, no_obstacle, write_cause},
    Doing{Verb::write_also_cause, another_cause, write_also_cause},
    Doing{Verb::write_possible_cause, another_cause, write_possible_cause},
    Doing{Verb::write_confidence, a_cause_stands, write_confidence},
    Doing{Verb::write_because, readings_exist, write_because},
    Doing{Verb::write_done, no_obstacle, write_done},
    Doing{Verb::write_told, no_obstacle, write_told},
    Doing{Verb::hand_in, no_obstacle, hand_in},
};

}  // namespace

std::span<const Doing> write_doings() {
    return table;
}

}  // namespace emberpath::worksite
