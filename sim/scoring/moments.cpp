#include "sim/scoring/moments.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/attribution.hpp"
#include "sim/scoring/share_out.hpp"
#include "sim/scoring/warrant.hpp"
#include "sim/units/counted.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::scoring {

namespace {

constexpr double worth_naming_minutes = 0.5;
constexpr std::size_t most_moments = 2;

std::vector<Option> everything_offered(const worksite::Job& job) {
    std::vector<Option> all;
    const std::vector<Mode> in = modes(job);
    for (std::size_t mode = 0; mode < in.size(); ++mode)
        for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
            const auto quantity = static_cast<worksite::Quantity>(q);
            if (could_be_read(quantity, job) && can_be_taken_in(in[mode], quantity))
                all.push_back({quantity, mode, 0.0, 0.0});
        }
    return all;
}

// How far the hot outlets stood open, of all of them fully.
double drawn_share(const plant::Surroundings& at, const worksite::Site& site) {
    double open = 0.0, all = 0.0;
    for (std::size_t i = 0; i < at.outlet_count; ++i) open += at.outlets[i].conductance;
    for (const worksite::Tap& tap : site.taps) all += tap.conductance;
    return all > 0.0 ? open / all : 0.0;
}

/// A quantity in one of modes().
using InMode = std::pair<std::size_t, worksite::Quantity>;

// What was read in the phase of a mode; while the burner runs, near its draw as well.
std::set<InMode> taken_on(const Tape& tape, const worksite::Job& job) {
    constexpr double same_draw = 0.2;
    const std::vector<Mode> all = modes(job);
    std::set<InMode> taken;
    const plant::Surroundings* at = nullptr;
    for (const Tape::Event& event : tape.events) {
        if (event.kind == Tape::Kind::tick) at = &tape.ticks[event.index].surroundings;
        if (event.kind != Tape::Kind::observation || at == nullptr) continue;
        const worksite::Observation& seen = tape.observations[event.index];
        const double drawn = drawn_share(*at, job.site);
        for (std::size_t m = 0; m < all.size(); ++m) {
            const bool same_phase = seen.condition.phase == all[m].phase;
            const bool near = std::abs(drawn - all[m].tap_share) <= same_draw;
            const bool same_draught = !all[m].worst_draught || at->extraction_m3_per_s > 0.0;
            if (same_phase && same_draught && (near || all[m].phase != controller::Phase::run))
                taken.insert({m, seen.quantity});
        }
    }
    return taken;
}

// The readings that would best have told these classes from the likeliest one; the first of equals.
void find_separations(std::vector<Rival>& open, const worksite::Job& job, const Shadows& shadows,
                      const Posterior& posterior, const std::set<InMode>& taken, int threads) {
    const std::size_t first = likeliest(posterior.classes()).index();
    std::vector<std::size_t> asked;
    for (const Rival& rival : open) asked.push_back(rival.of.index());
    const std::vector<Option> offered = everything_offered(job);
    std::vector<std::vector<double>> bits(offered.size());
    share_out(offered.size(), threads, [&](std::size_t i) {
        bits[i] = posterior.separation_bits(
            reading_of(offered[i]), shadows.signatures[offered[i].mode].of(offered[i].quantity),
            asked, first);
    });
    for (std::size_t i = 0; i < offered.size(); ++i)
        for (std::size_t r = 0; r < open.size(); ++r) {
            if (taken.contains({offered[i].mode, offered[i].quantity})) {
                open[r].was_asked = open[r].was_asked || bits[i][r] >= separable_above;
                continue;
            }
            if (bits[i][r] <= open[r].separation) continue;
            open[r].separation = bits[i][r];
            open[r].reading = title_of(offered[i], job);
        }
}

/// Nothing where it ends undecided and no further than the trainee came.
std::string best_there(const ReferenceRun& run, const Hindsight& hindsight, double own) {
    const bool undecided = run.leading < need_of_final_diagnosis && run.leading <= own;
    if (run.options.empty() || undecided) return "";
    return " From there: " + path_in_words(run, hindsight.job) + "; " +
           units::counted(figure(run.minutes, 0), "minute") + " of readings that give " +
           given(run.leading, run.found) + ".";
}

ReferenceRun best_from(const Step& step, const Hindsight& hindsight) {
    if (step.posterior_before == nullptr) return {};
    return run_reference(hindsight, *step.posterior_before, step.set_ups_before, step.cycle);
}

// What could have been read instead of handing in; after the cure nothing could have told the cause any more.
ReferenceRun best_from_the_end(const Ledger& ledger, const Hindsight& hindsight) {
    if (ledger.steps.empty() || ledger.steps.back().cured_before) return {};
    return run_reference(hindsight, ledger.at_cure, ledger.set_ups);
}

std::string hand_in_charge(const Findings& f, double minutes) {
    const std::string why =
        f.named.empty()
            ? "No cause was named and handed in"
            : "It was handed in with " + percent(f.diagnosis.probability) + " for its cause";
    return why + ": that costs evidence and remedy, and on the path " +
           units::counted(figure(minutes, 0), "minute") + " for a call-back.";
}

std::string remedy_charge(const Made& made, double minutes) {
    return units::counted(figure(minutes, 0), "minute") +
           " of work charged, because the evidence gave " + so_little(made.commitment.probability) +
           " to \"" + faults::class_title(made.remedy) + "\".";
}

/// All that one act, or the end, was charged.
struct Dear {
    std::size_t act = 0;
    bool at_the_end = false;
    double minutes = 0.0, toll = 0.0;
    std::vector<const worksite::Breach*> breaches;
    std::vector<std::string> charges;  // of the path
};

class DearMoments {
  public:
    /// `hand_in`: the act that carries what was left undone (hand_in_of).
    DearMoments(const Ledger& ledger, std::size_t hand_in)
        : last_(ledger.steps.size() - 1), hand_in_(hand_in) {}

    void charge(std::size_t act, double minutes, const std::string& text) {
        if (minutes < worth_naming_minutes) return;
        Dear& one = of(act);
        one.minutes += minutes;
        one.charges.push_back(text);
    }
    void broke(const worksite::Breach& breach) { of(breach.act).breaches.push_back(&breach); }
    void cost(std::size_t act, double toll) {
        if (const auto found = all_.find(key(act)); found != all_.end()) found->second.toll += toll;
    }
    [[nodiscard]] std::size_t the_end() const { return last_ + 1; }
    /// Dearest first.
    [[nodiscard]] std::vector<Dear> sorted() const {
        std::vector<Dear> out;
        for (const auto& [act, one] : all_) out.push_back(one);
        std::stable_sort(out.begin(), out.end(), [](const Dear& a, const Dear& b) {
            return std::pair(a.toll, a.minutes) > std::pair(b.toll, b.minutes);
        });
        return out;
    }

  private:
    Dear& of(std::size_t act) {
        Dear& one = all_[key(act)];
        one.act = std::min(act, last_);
        one.at_the_end = key(act) == the_end();
        return one;
    }
    [[nodiscard]] std::size_t key(std::size_t act) const {
        return act == hand_in_ ? the_end() : std::min(act, the_end());
    }

    std::size_t last_, hand_in_;
    std::map<std::size_t, Dear> all_;
};

void add_charges(const PlayedAttempt& played, const Ledger& ledger, const Findings& f,
                 DearMoments& all) {
    for (const Step& step : ledger.steps) {
        all.charge(step.act, step.charge, reading_worth(played, step));
        all.charge(step.act, step.idle_minutes, waited_in_vain(step));
    }
    for (const Made& made : f.made) {
        const double minutes = remedy_charge_minutes(made.commitment);
        all.charge(made.step->act, minutes, remedy_charge(made, minutes));
    }
    const double call_back = submission_charge_minutes(f.diagnosis.probability);
    all.charge(all.the_end(), call_back, hand_in_charge(f, call_back));
}

// Proof that was left out is no moment of the visit: the list of lost points has it.
constexpr std::size_t proof_area = 4;

void add_tolls(std::span<const Area> areas, DearMoments& all) {
    for (std::size_t a = 0; a < std::min(areas.size(), proof_area); ++a)
        for (const Lost& lost : areas[a].lost) {
            const double share = lost.points / (100.0 - areas[a].score);
            all.cost(lost.act, share * area_toll(a, areas[a].score));
        }
}

/// The gravest rule broken there, and what would have kept it.
std::string breach_in_words(const worksite::Breach& worst, std::size_t more) {
    return worst.text + " Instead: " + worksite::better_than(worst) + "." +
           (more == 0
                ? ""
                : " The same act broke " + units::counted(static_cast<int>(more), "other rule") +
                      ", listed with the unsafe acts.");
}

// Beside a gate that was broken at the end, minutes for a call-back are not worth a word.
bool ends_with_a_broken_gate(const Dear& one) {
    return one.at_the_end &&
           std::any_of(one.breaches.begin(), one.breaches.end(),
                       [](const worksite::Breach* breach) { return breach->critical; });
}

std::string moment_text(const Dear& one, const Ledger& ledger, const Outcome& outcome) {
    std::vector<std::string> said;
    if (!ends_with_a_broken_gate(one)) said = one.charges;
    if (!one.breaches.empty()) {
        const worksite::Breach& worst =
            **std::max_element(one.breaches.begin(), one.breaches.end(),
                               [](const auto* a, const auto* b) { return is_lighter(*a, *b); });
        said.insert(worst.critical ? said.begin() : said.end(),
                    breach_in_words(worst, one.breaches.size() - 1));
    }
    std::string text = at(outcome, ledger.steps[one.act]) + ":";
    for (const std::string& sentence : said) text += " " + sentence;
    return text;
}

}  // namespace

std::vector<Rival> rivals(const worksite::Job& job, const Shadows& shadows,
                          const Posterior& posterior, const Tape& tape, int threads) {
    const std::vector<double> classes = posterior.classes();
    const Class first = likeliest(classes);
    std::vector<Rival> open;
    for (std::size_t c = 0; c < classes.size(); ++c)
        if (classes[c] >= open_above && Class::at(c) != first)
            open.push_back({Class::at(c), classes[c], 0.0, ""});
    find_separations(open, job, shadows, posterior, taken_on(tape, job), threads);
    std::stable_sort(open.begin(), open.end(),
                     [](const Rival& a, const Rival& b) { return a.probability > b.probability; });
    return open;
}

std::vector<std::string> still_open(const std::vector<Rival>& open, Class likeliest) {
    std::vector<std::string> said;
    for (const Rival& rival : open) {
        const std::string share =
            "\"" + class_title(rival.of) + "\" still had " + percent(rival.probability);
        if (rival.separation < separable_above && rival.was_asked)
            said.push_back("Left open: " + share +
                           "; what can tell it was read, and did not rule it out. No other reading "
                           "on this job tells more.");
        else if (rival.separation < separable_above)
            said.push_back("You could not have known: " + share +
                           ", and no reading on this job tells it from \"" +
                           class_title(likeliest) + "\".");
        else
            said.push_back("You could have known: " + share + "; " + rival.reading +
                           " would have told it from \"" + class_title(likeliest) + "\".");
    }
    return said;
}

double misfit(const PlayedAttempt& played, const Ledger& ledger, const Shadows& shadows) {
    const std::vector<double>& p = ledger.at_cure.probabilities();
    const auto likeliest =
        static_cast<std::size_t>(std::max_element(p.begin(), p.end()) - p.begin());
    double sum = 0.0;
    int readings = 0;
    for (const Step& step : ledger.steps)
        for (std::size_t i = 0; i < step.observation_count && !step.cured_before; ++i) {
            const std::size_t index = step.first_observation + i;
            const worksite::Observation& seen = played.tape.observations[index];
            if (!is_evidence(seen) || worksite::info(seen.quantity).categorical) continue;
            const double off = ledger.at_cure.distance(as_reading(seen, played.tape.cycles[index]),
                                                       shadows.observed[index], likeliest);
            sum += off * off;
            ++readings;
        }
    return readings > 0 ? sum / readings : 0.0;
}

std::string path_in_words(const ReferenceRun& run, const worksite::Job& job) {
    constexpr std::size_t most_named = 5;  // more than a reader follows
    std::string text;
    const std::size_t named = std::min(run.options.size(), most_named);
    for (std::size_t i = 0; i < named; ++i)
        text += (i == 0 ? "" : ", then ") + title_of(run.options[i], job);
    const std::size_t left = run.options.size() - named;
    if (left > 0) text += ", and " + units::counted(static_cast<int>(left), "more reading");
    return text;
}

std::vector<Moment> costliest_moments(const PlayedAttempt& played, const Ledger& ledger,
                                      const Findings& f, const Outcome& outcome,
                                      const Hindsight& hindsight, std::span<const Area> areas) {
    if (ledger.steps.empty()) return {};
    const bool ranked =
        std::all_of(areas.begin(), areas.end(), [](const Area& a) { return a.scored; });
    DearMoments all(ledger, hand_in_of(played, outcome));
    if (ranked) add_charges(played, ledger, f, all);  // what is not scored costs nothing
    for (const worksite::Breach& breach : outcome.breaches) all.broke(breach);
    add_tolls(areas, all);
    std::vector<Moment> out;
    for (const Dear& one : all.sorted()) {
        // What the tolerance of the path allows has cost nothing.
        if (out.size() == most_moments || (ranked && one.toll <= 0.0)) break;
        std::string text = moment_text(one, ledger, outcome);
        if (!one.charges.empty() && !ends_with_a_broken_gate(one))
            text += best_there(one.at_the_end ? best_from_the_end(ledger, hindsight)
                                              : best_from(ledger.steps[one.act], hindsight),
                               hindsight, f.diagnosis.probability);
        const double minutes = ends_with_a_broken_gate(one) ? 0.0 : one.minutes;
        out.push_back({one.act, minutes, one.toll, std::move(text)});
    }
    return out;
}

}  // namespace emberpath::scoring
