#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sim/worksite/hazards.hpp"
#include "sim/worksite/workplace.hpp"

namespace emberpath::worksite {

namespace {

/// Part of an instrument's error that stays the same for the whole visit, and part that is new each time;
/// together they have the standard deviation of QuantityInfo.
constexpr double systematic_part = 0.8;
constexpr double repeat_part = 0.6;

/// One systematic error per instrument; cells and ranges of one instrument err apart.
std::string_view stream_of(const QuantityInfo& row) {
    switch (row.tool) {
        case Tool::manometer:
            return "manometer";
        case Tool::thermometer:
            return "thermometer";
        case Tool::flow_cup:
            return "flow cup";
        case Tool::scale:
            return "scale";
        default:
            return row.word;
    }
}

bool never_negative(const QuantityInfo& row) {
    return row.tool == Tool::analyser || row.tool == Tool::multimeter || row.tool == Tool::scale ||
           row.tool == Tool::flow_cup || row.tool == Tool::clamp ||
           row.tool == Tool::safety_switch_tester || row.tool == Tool::gas_detector ||
           row.tool == Tool::water_gauge;
}

/// Where a reading was taken, of those that can be taken anywhere: leads in either order are one place.
std::uint32_t place_of(Quantity quantity, const ToolSetup& tools) {
    if (quantity == Quantity::clamp_current) return 1U + static_cast<std::uint32_t>(tools.clamp);
    if (quantity == Quantity::tap_flow || quantity == Quantity::tap_temperature)
        return tools.tap < no_tap ? static_cast<std::uint32_t>(tools.tap) : 0U;
    if (quantity != Quantity::volts_between && quantity != Quantity::ohms_between) return 0;
    const auto [low, high] = std::minmax(tools.lead_a, tools.lead_b);
    return static_cast<std::uint32_t>(100U * (high + 1U) + low);
}

/// "#4  gas pressure at the heater inlet  1.82 kPa  (burner running)"
std::string reading_line(const Observation& seen, const std::string& condition,
                         const std::string& note) {
    const QuantityInfo& row = info(seen.quantity);
    std::string line = "#" + std::to_string(seen.number) + "  " + std::string(row.title) + "  " +
                       text_of(seen.quantity, seen.value) + "  (" + condition;
    if (seen.hold == Hold::highest && !row.categorical) line += ", highest";
    if (seen.hold == Hold::lowest) line += ", lowest";
    if (!note.empty()) line += ", " + note;
    return line + ")";
}

}  // namespace

plant::Pair leads_of(const Condition& condition) {
    if (condition.place < 100U) return {};
    return {static_cast<plant::Terminal>(condition.place % 100U),
            static_cast<plant::Terminal>(condition.place / 100U - 1U)};
}

bool Workplace::uses_spare(Quantity quantity) const {
    const auto instrument = instrument_of(quantity);
    return instrument && bench.uses_spare(*instrument);
}

double Workplace::shown_of(Quantity quantity, double known, bool spare) const {
    return with_error(quantity, known, 0.0, spare);
}

double Workplace::with_error(Quantity quantity, double value, double repeat, bool spare) const {
    const QuantityInfo& row = info(quantity);
    const double most = most_shown(quantity);
    if (over_range(quantity, value)) return std::min(value, most);
    double shown = value;
    if (const auto instrument = instrument_of(quantity)) {  // a readout is digital, only rounded
        if (!spare) shown = worn_value(quantity, value, job.kit.of(*instrument));
        const double scale = row.error_absolute + row.error_relative * std::abs(value);
        const std::string stream = (spare ? "spare " : "") + std::string(stream_of(row));
        math::Random of_the_day(seeds.instruments, stream);
        shown += scale * (systematic_part * of_the_day.normal() + repeat_part * repeat);
    }
    if (never_negative(row)) shown = std::max(0.0, shown);
    return std::min(std::round(shown / row.resolution) * row.resolution, most);
}

double Workplace::model_value(const ReadingOf& what) const {
    if (!what.trusted || what.given) return what.instead;
    // A multimeter at a sensor measures its unplugged leads.
    const HeaterView seen_by_tool =
        info(what.quantity).tool == Tool::multimeter ? look_plugged() : look();
    return value_of(what.quantity, what.hold, seen_by_tool, senses, inputs_, setup);
}

double Workplace::on_glass(const ReadingOf& what) const {
    const double value = model_value(what);
    return info(what.quantity).categorical
               ? value
               : with_error(what.quantity, value + what.shift, 0.0, uses_spare(what.quantity));
}

double Workplace::read(const ReadingOf& what) {
    const QuantityInfo& row = info(what.quantity);
    const bool spare = uses_spare(what.quantity);
    const double model = model_value(what) + (row.categorical ? 0.0 : what.shift);
    const double value =
        row.categorical ? model : with_error(what.quantity, model, repeat_.normal(), spare);
    Observation seen;
    seen.number = what.numbered ? ++readings_ : 0;
    seen.act = log.size();
    seen.tick = tick_;
    seen.quantity = what.quantity;
    seen.hold = what.hold;
    seen.watched_s = what.watched_s;
    seen.value = value;
    seen.condition = condition();
    seen.condition.place = place_of(what.quantity, setup);
    seen.condition.spare = spare;
    if (const auto instrument = instrument_of(what.quantity)) judge_label(*instrument);
    if (what.numbered) say(reading_line(seen, condition_words(), what.note));
    entry.observations.push_back(seen);
    if (const auto instrument = instrument_of(what.quantity); instrument && !spare)
        seen.beyond_class = instrument_scale(what.quantity, model, job.kit.of(*instrument));
    if (follower_ && what.trusted) tell_follower(seen);
    return value;
}

void Workplace::judge_label(Instrument instrument) {
    if (bench.uses_spare(instrument)) return;
    if (bench.label_seen[static_cast<std::size_t>(instrument)]) return;
    if (overdue(instrument, job.kit.of(instrument), job.kit.visited_on))
        breach("tool_unchecked", "The " + std::string(info(instrument).word) +
                                     " was used past the date on its label, unseen.");
}

/// Followers measure a sensor as the trainee does: by itself, whatever is unplugged.
void Workplace::tell_follower(const Observation& seen) {
    Alterations alone = fabric.alterations;
    if (info(seen.quantity).tool == Tool::multimeter) alone.sensor_unplugged = {};
    const bool apart = !(alone == fabric.alterations);
    if (apart) follower_->altered(alone);
    follower_->observed(seen);
    if (apart) follower_->altered(fabric.alterations);
}

void Workplace::say(std::string line) {
    entry.shown.push_back(std::move(line));
}

const Breach* Workplace::known_breach(std::string_view word) const {
    const auto found = std::find_if(breaches.begin(), breaches.end(),
                                    [word](const Breach& one) { return one.rule == word; });
    return found == breaches.end() ? nullptr : &*found;
}

Breach* Workplace::known_breach(std::string_view word) {
    return const_cast<Breach*>(std::as_const(*this).known_breach(word));
}

void Workplace::breach(std::string_view word, const std::string& text, std::string_view better) {
    if (known_breach(word) != nullptr) return;
    const Rule& what = rule(word);
    breaches.push_back(
        {std::string(word), text, what.critical, what.deduction, log.size(), std::string(better)});
    if (mode == Mode::coached)
        say("Unsafe: " + text + " Better: " + better_than(breaches.back()) + ".");
}

void Workplace::end_badly(std::string_view word, const std::string& text) {
    if (person.hurt) return;
    say(text);
    const std::string ending = text + " The job ended there.";
    if (known_breach(word) == nullptr)
        breach(word, ending);
    else
        known_breach(word)->text += " " + ending;
    known_breach(word)->critical = true;  // whatever its rule closes otherwise
    person.hurt = true;
    say("The job ends here.");
}

void Workplace::set_tools(bool hold_cleared) {
    ToolSetup next = setup;
    next.manometer = Quantity::display_word;
    if (bench.manometer_at && fabric.point_open[*bench.manometer_at]) {
        constexpr std::array at{Quantity::gas_inlet_pressure, Quantity::manifold_pressure,
                                Quantity::regulator_pressure};
        next.manometer = at[*bench.manometer_at];
    }
    next.analyser_sampling = bench.probe_in_flue && bench.analyser_on_tick != never;
    next.meter_in_flame_lead = bench.multimeter_at == static_cast<std::size_t>(Probe::flame_lead);
    setup = next;
    if (hold_cleared) senses.clear_holds();
    if (follower_) follower_->tools(setup, hold_cleared);
}

void Workplace::begin_watching(bool eyes) {
    setup.watching = eyes;
    setup.listening = true;
    senses.start_watching();
    set_tools();
}

void Workplace::stop_watching() {
    setup.watching = setup.listening = false;
    set_tools();
}

void Workplace::measure_share(std::size_t tap) {
    double all = 0.0;
    for (std::size_t i = 0; i < services.tap_opening.size(); ++i)
        all += services.tap_opening[i] * job.site.taps[i].conductance;
    const double own = services.tap_opening[tap] * job.site.taps[tap].conductance;
    setup.tap_opening_share = all > 0.0 ? own / all : 0.0;
    setup.tap = tap;
    set_tools();
}

void Workplace::set_alterations(const Alterations& alterations) {
    fabric.alterations = alterations;
    heater.install(0, installation_of(job, faults_left(), moment(), alterations));
    if (follower_) follower_->altered(alterations);
    changed();
}

double Workplace::uniform_for(std::string_view purpose, std::uint64_t number) const {
    math::Random one(seeds.house + number * 0x9e3779b97f4a7c15U, purpose);
    return one.uniform();
}

}  // namespace emberpath::worksite
