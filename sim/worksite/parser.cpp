#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/parse_problem.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

constexpr double zero_celsius_k = 273.15;
constexpr std::size_t longest_sentence = 400;

using faults::Remedy;
constexpr int as_index(Remedy remedy) {
    return static_cast<int>(remedy);
}

/// Other ways to say the same, read but never written.
struct Variant {
    Verb verb;
    std::string_view pattern;
    int remedy = -1;
};
// clang-format off
constexpr std::array variants{
    Variant{Verb::ask, "ask {topic}"}, Variant{Verb::ask, "ask customer about {topic}"},
    Variant{Verb::ask, "ask customer {topic}"}, Variant{Verb::ask, "ask for {topic}"},
    Variant{Verb::look, "look {thing}"}, Variant{Verb::look, "look into {thing}"},
    Variant{Verb::watch, "watch {watched} {duration}"}, Variant{Verb::listen_for, "listen {duration}"},
    Variant{Verb::open_tap, "turn on {tap} [a little|halfway|fully]"},
    Variant{Verb::open_tap, "turn {tap} on [a little|halfway|fully]"},
    Variant{Verb::open_tap, "open {tap} [a bit|half|full]"},
    Variant{Verb::open_tap, "open {tap} [slightly|half way|all way]"},
    Variant{Verb::close_tap, "turn off {tap}"}, Variant{Verb::close_tap, "turn {tap} off"},
    Variant{Verb::turn_on, "turn {appliance} on"}, Variant{Verb::turn_off, "turn {appliance} off"},
    Variant{Verb::set_temperature, "set temperature {temperature}"},
    Variant{Verb::set_temperature, "set heater to {temperature}"},
    Variant{Verb::press_reset, "reset"}, Variant{Verb::press_reset, "reset heater"},
    Variant{Verb::press_reset, "press reset button"},
    Variant{Verb::power_off, "turn off power"}, Variant{Verb::power_off, "turn power off at power point"},
    Variant{Verb::power_on, "turn on power"}, Variant{Verb::power_on, "turn power on at power point"},
    Variant{Verb::unplug, "unplug"}, Variant{Verb::unplug, "pull plug"},
    Variant{Verb::plug_in, "plug in"}, Variant{Verb::plug_in, "plug heater in"},
    Variant{Verb::lock_plug, "lock plug"}, Variant{Verb::lock_plug, "lock and tag plug"},
    Variant{Verb::lock_plug, "lock plug off"},
    Variant{Verb::shut_gas, "close gas {gas valve}"}, Variant{Verb::shut_gas, "turn off gas at {gas valve}"},
    Variant{Verb::shut_gas, "turn gas off at {gas valve}"}, Variant{Verb::shut_gas, "close {gas valve} gas"},
    Variant{Verb::open_gas, "open gas {gas valve}"}, Variant{Verb::open_gas, "turn on gas at {gas valve}"},
    Variant{Verb::open_gas, "turn gas on at {gas valve}"},
    Variant{Verb::shut_water, "close water"}, Variant{Verb::shut_water, "turn off water at heater"},
    Variant{Verb::open_water, "open water"}, Variant{Verb::open_water, "turn on water at heater"},
    Variant{Verb::prove_tester, "prove voltage tester"}, Variant{Verb::test_for_dead, "prove dead"},
    Variant{Verb::test_for_dead, "test dead"},
    Variant{Verb::put_on, "wear {wear}"}, Variant{Verb::put_on, "put {wear} on"},
    Variant{Verb::take_off, "take {wear} off"},
    Variant{Verb::cover_off, "take off cover"}, Variant{Verb::cover_off, "remove cover"},
    Variant{Verb::cover_off, "open cover"}, Variant{Verb::cover_on, "put cover on"},
    Variant{Verb::cover_on, "put cover back"}, Variant{Verb::cover_on, "put cover back on"},
    Variant{Verb::cover_on, "fit cover"}, Variant{Verb::cover_on, "close cover"},
    Variant{Verb::open_point, "open {point} test point"}, Variant{Verb::close_point, "close {point} test point"},
    Variant{Verb::open_point, "open {point}"}, Variant{Verb::close_point, "close {point}"},
    Variant{Verb::attach_manometer, "attach manometer at {point}"},
    Variant{Verb::attach_manometer, "attach manometer to test point {point}"},
    Variant{Verb::manometer_off, "take off manometer"}, Variant{Verb::manometer_off, "remove manometer"},
    Variant{Verb::manometer_off, "detach manometer"},
    Variant{Verb::read_manometer, "read [highest|lowest] manometer"},
    Variant{Verb::clear_hold, "clear holds"},
    Variant{Verb::unplug_sensor, "detach {sensor}"}, Variant{Verb::plug_in_sensor, "plug {sensor} in"},
    Variant{Verb::attach_multimeter, "attach multimeter at {probe}"},
    Variant{Verb::attach_multimeter, "attach multimeter in {probe}"},
    Variant{Verb::multimeter_off, "take off multimeter"}, Variant{Verb::multimeter_off, "remove multimeter"},
    Variant{Verb::multimeter_off, "detach multimeter"},
    Variant{Verb::analyser_on, "turn analyser on"}, Variant{Verb::analyser_on, "start analyser"},
    Variant{Verb::probe_in, "put probe into flue"}, Variant{Verb::probe_in, "put probe in"},
    Variant{Verb::probe_out, "take out probe"}, Variant{Verb::probe_out, "remove probe"},
    Variant{Verb::probe_out, "take probe out of flue"},
    Variant{Verb::measure_tap_temperature, "measure temperature of {tap}"},
    Variant{Verb::measure_tap_temperature, "measure {tap} temperature"},
    Variant{Verb::measure_flow, "measure flow of {tap}"}, Variant{Verb::measure_flow, "measure {tap} flow"},
    Variant{Verb::measure_pipe, "measure temperature at {pipe}"},
    Variant{Verb::measure_pipe, "measure {pipe} temperature"},
    Variant{Verb::open_readout, "open readout"}, Variant{Verb::read_readout, "read service readout {item}"},
    Variant{Verb::read_readout, "read {item} on readout"}, Variant{Verb::read_readout, "read {item} on service readout"},
    Variant{Verb::wait, "wait for {duration}"},
    Variant{Verb::wait_for_change_at_most, "wait at most {duration} until something changes"},
    Variant{Verb::wait_for_change_at_most, "wait until something changes {duration}"},
    Variant{Verb::wait_for_change, "wait for change"},
    Variant{Verb::remedy, "explain to customer how it works", as_index(Remedy::explain_to_customer)},
    Variant{Verb::remedy, "quote larger pipe", as_index(Remedy::quote_larger_gas_pipe)}, Variant{Verb::remedy, "clean exchanger", as_index(Remedy::clean_exchanger)},
    Variant{Verb::remedy, "clean electrode", as_index(Remedy::clean_flame_electrode)}, Variant{Verb::remedy, "clear terminal", as_index(Remedy::clear_flue_terminal)},
    Variant{Verb::hand_on, "escalate supply regulator to {body}", as_index(Remedy::escalate_regulator)},
    Variant{Verb::leak_test_fluid, "leak test with leak fluid"}, Variant{Verb::leak_test_fluid, "leak test"},
    Variant{Verb::leak_test_hold, "pressure hold test"}, Variant{Verb::leak_test_hold, "leak test with manometer"},
    Variant{Verb::combustion_test, "test combustion"},
    Variant{Verb::raise_regulator, "raise regulator"}, Variant{Verb::lower_regulator, "set regulator back"},
    Variant{Verb::bridge_limiter, "bridge overheat limiter"},
    Variant{Verb::unsafe_notice, "write unsafe notice"},
    Variant{Verb::strike_out, "strike {cause} out"}, Variant{Verb::strike_out, "strike {cause}"},
    Variant{Verb::hand_in, "hand in record"},
    Variant{Verb::board_off, "turn off {board switch}"}, Variant{Verb::board_on, "turn on {board switch}"},
    Variant{Verb::board_off, "switch off {board switch}"}, Variant{Verb::board_on, "switch on {board switch}"},
    Variant{Verb::close_safety_switch, "reset safety switch"}, Variant{Verb::lock_board, "lock switchboard"},
    Variant{Verb::measure_volts, "measure voltage between {terminal} and {other terminal}"},
    Variant{Verb::measure_volts, "measure volts from {terminal} to {other terminal}"},
    Variant{Verb::measure_ohms, "measure resistance between {terminal} and {other terminal}"},
    Variant{Verb::measure_ohms, "measure ohms from {terminal} to {other terminal}"},
    Variant{Verb::insulation_test, "insulation test between {terminal} and {other terminal}"},
    Variant{Verb::measure_amps, "measure current between {terminal} and {other terminal}"},
    Variant{Verb::clamp, "measure current in {conductor}"}, Variant{Verb::fit_fuse, "fit fuse"},
    Variant{Verb::fit_fuse, "replace fuse"}, Variant{Verb::close_window, "shut {window}"},
    Variant{Verb::run_fan, "turn on {fan}"}, Variant{Verb::run_fan, "turn {fan} on"},
    Variant{Verb::run_fan, "switch on {fan}"}, Variant{Verb::run_fan, "switch {fan} on"},
    Variant{Verb::stop_fan, "turn off {fan}"}, Variant{Verb::stop_fan, "turn {fan} off"},
    Variant{Verb::stop_fan, "switch off {fan}"}, Variant{Verb::stop_fan, "switch {fan} off"},
    Variant{Verb::go_outside, "go out"}, Variant{Verb::go_outside, "get out"},
    Variant{Verb::go_outside, "step outside"}, Variant{Verb::go_outside, "go outdoors"},
    Variant{Verb::go_outside, "go into open air"}, Variant{Verb::go_outside, "leave room"},
    Variant{Verb::go_in, "go in"}, Variant{Verb::go_in, "go inside"}, Variant{Verb::go_in, "go back inside"},
    Variant{Verb::go_in, "come back in"}, Variant{Verb::go_in, "step back in"}, Variant{Verb::go_in, "go back to heater"},
    Variant{Verb::turn_changeover, "turn changeover to {cylinder}"},
    Variant{Verb::weigh_second_cylinder, "weigh reserve cylinder"},
    Variant{Verb::test_draught, "smoke test"}, Variant{Verb::test_draught, "test draught"},
};
// clang-format on

/// One attempt to read the tokens along a pattern.
class Matcher {
  public:
    Matcher(std::string_view sentence, const std::vector<Token>& tokens, const Job& job)
        : sentence_(sentence), tokens_(tokens), job_(job) {}

    bool match(std::string_view pattern, Act& act) {
        parts_ = parts_of(pattern);
        return from(0, 0, act);
    }
    [[nodiscard]] const Furthest& furthest() const { return furthest_; }

  private:
    bool from(std::size_t part, std::size_t token, Act& act) {
        if (part == parts_.size()) return token == tokens_.size();
        const Part& p = parts_[part];
        if (p.kind == Part::Kind::literal) return literal(p, part, token, act);
        if (p.kind == Part::Kind::optional) return optional(p, part, token, act);
        if (p.text == "text") return text(part, token, act);
        if (p.text == "duration") return duration(part, token, act);
        if (p.text == "temperature") return temperature(part, token, act);
        if (p.text == "confidence") return confidence(part, token, act);
        if (p.text == "balloons") return balloons(part, token, act);
        return object(p, part, token, act);
    }

    /// Number of tokens of `words` found at `token`; 0 when they are not there.
    [[nodiscard]] std::size_t found_at(std::string_view words, std::size_t token) const {
        const auto wanted = tokens_of(words);
        if (wanted.empty() || token + wanted.size() > tokens_.size()) return 0;
        for (std::size_t i = 0; i < wanted.size(); ++i)
            if (wanted[i].word != tokens_[token + i].word) return 0;
        return wanted.size();
    }

    bool literal(const Part& p, std::size_t part, std::size_t token, Act& act) {
        if (tokens_of(p.text).empty()) return from(part + 1, token, act);
        const auto count = found_at(p.text, token);
        return count > 0 && from(part + 1, token + count, act);
    }

    bool optional(const Part& p, std::size_t part, std::size_t token, Act& act) {
        std::size_t which = 0;
        for (const auto words : alternatives(p.text)) {
            ++which;
            const auto count = found_at(words, token);
            if (count == 0) continue;
            act.option = which;
            if (from(part + 1, token + count, act)) return true;
        }
        act.option = 0;
        return from(part + 1, token, act);
    }

    bool object(const Part& p, std::size_t part, std::size_t token, Act& act) {
        for (const auto& spelling : spellings(p.text, job_)) {
            const auto count = found_at(spelling.text, token);
            if (count == 0) continue;
            (p.text.starts_with("other ") ? act.second : act.object) = spelling.index;
            if (from(part + 1, token + count, act)) return true;
        }
        return missed(p.text, token);
    }

    bool text(std::size_t part, std::size_t token, Act& act) {
        if (token >= tokens_.size()) return missed("text", token);
        auto words = sentence_.substr(tokens_[token].begin);
        while (!words.empty() && words.back() == ' ') words.remove_suffix(1);
        act.text = std::string(words);
        return from(part + 1, tokens_.size(), act);
    }

    [[nodiscard]] std::optional<double> number_at(std::size_t token) const {
        if (token >= tokens_.size()) return std::nullopt;
        const auto& word = tokens_[token].word;
        double value = 0.0;
        const auto result = std::from_chars(word.data(), word.data() + word.size(), value);
        if (result.ec != std::errc() || result.ptr != word.data() + word.size())
            return std::nullopt;
        return std::isfinite(value) ? std::optional(value) : std::nullopt;
    }

    [[nodiscard]] double unit_seconds(std::size_t token) const {
        if (token >= tokens_.size()) return 0.0;
        const auto& word = tokens_[token].word;
        if (word == "s" || word == "sec" || word == "second" || word == "seconds") return 1.0;
        if (word == "min" || word == "mins" || word == "minute" || word == "minutes") return 60.0;
        return word == "h" || word == "hour" || word == "hours" ? 3600.0 : 0.0;
    }

    bool duration(std::size_t part, std::size_t token, Act& act) {
        double total = 0.0;
        std::size_t at = token;
        while (const auto number = number_at(at)) {
            const double unit = unit_seconds(at + 1);
            if (unit <= 0.0) break;
            total += *number * unit;
            at += 2;
        }
        if (at == token || total < 1.0 || total > 3600.0) return missed("duration", token);
        act.number = std::round(total * 10.0) / 10.0;
        return from(part + 1, at, act);
    }

    bool temperature(std::size_t part, std::size_t token, Act& act) {
        const auto number = number_at(token);
        if (!number || *number < 0.0 || *number > 100.0) return missed("temperature", token);
        std::size_t at = token + 1;
        while (at < tokens_.size() && (tokens_[at].word == "c" || tokens_[at].word == "degrees" ||
                                       tokens_[at].word == "celsius"))
            ++at;
        act.number = std::round(*number * 10.0) / 10.0 + zero_celsius_k;
        return from(part + 1, at, act);
    }

    bool confidence(std::size_t part, std::size_t token, Act& act) {
        const auto number = number_at(token);
        // 0.8 could be meant for 80 % or for less than 1 %: whole ones alone are read.
        if (!number || *number < 0.0 || *number > 100.0 || *number != std::round(*number))
            return missed("confidence", token);
        std::size_t at = token + 1;
        if (at < tokens_.size() && (tokens_[at].word == "%" || tokens_[at].word == "percent")) ++at;
        act.number = *number / 100.0;
        return from(part + 1, at, act);
    }

    bool balloons(std::size_t part, std::size_t token, Act& act) {
        act.numbers.clear();
        for (std::size_t at = token; at < tokens_.size(); ++at) {
            auto word = std::string_view(tokens_[at].word);
            if (word == "and" && at > token) continue;
            if (word.starts_with('#')) word.remove_prefix(1);
            int number = 0;
            const auto result = std::from_chars(word.data(), word.data() + word.size(), number);
            if (result.ec != std::errc() || result.ptr != word.data() + word.size() || number < 1)
                return missed("balloons", at);
            act.numbers.push_back(number);
        }
        if (act.numbers.empty()) return missed("balloons", token);
        return from(part + 1, tokens_.size(), act);
    }

    /// Remembers the farthest token that no placeholder could read; the first such pattern counts.
    bool missed(std::string_view placeholder, std::size_t token) {
        if (token > furthest_.token || furthest_.placeholder.empty())
            furthest_ = {token, placeholder};
        return false;
    }

    std::string_view sentence_;
    const std::vector<Token>& tokens_;
    const Job& job_;
    std::vector<Part> parts_;
    Furthest furthest_;
};

bool in_remedy_words(const std::vector<Token>& tokens, Act& act) {
    for (std::size_t r = 0; r < faults::remedy_count; ++r) {
        const auto remedy = static_cast<faults::Remedy>(r);
        if (faults::info(remedy).whom != faults::Whom::nobody) continue;  // needs to whom
        const auto words = tokens_of(faults::remedy_word(remedy));
        if (!std::equal(words.begin(), words.end(), tokens.begin(), tokens.end(),
                        [](const Token& a, const Token& b) { return a.word == b.word; }))
            continue;
        act = {};
        act.verb = Verb::remedy;
        act.remedy = static_cast<int>(r);
        return true;
    }
    return false;
}

}  // namespace

Understanding read_sentence(std::string_view sentence, const Job& job) {
    Understanding reading;
    if (sentence.size() > longest_sentence) {
        reading.too_long = true;
        return reading;
    }
    const auto tokens = tokens_of(sentence);
    Matcher matcher(sentence, tokens, job);
    for (const auto& row : phrase_rows()) {
        reading.act = {};
        reading.act.verb = row.verb;
        reading.act.remedy = row.remedy;
        if (matcher.match(row.phrase.pattern, reading.act))
            return reading.understood = true, reading;
    }
    for (const auto& variant : variants) {
        reading.act = {};
        reading.act.verb = variant.verb;
        reading.act.remedy = variant.remedy;
        if (matcher.match(variant.pattern, reading.act)) return reading.understood = true, reading;
    }
    reading.understood = in_remedy_words(tokens, reading.act);
    reading.furthest = matcher.furthest();
    if (reading.furthest.token < tokens.size())
        reading.furthest.offset = tokens[reading.furthest.token].begin;
    else
        reading.furthest.offset = sentence.size();
    return reading;
}

namespace {

std::string write_balloons(const std::vector<int>& numbers) {
    std::string text;
    for (const int number : numbers) text += (text.empty() ? "#" : " #") + std::to_string(number);
    return text;
}

std::string write_duration(double seconds) {
    const auto tenths = static_cast<long>(std::round(seconds * 10.0));
    if (tenths % 600 == 0) return std::to_string(tenths / 600) + " min";
    return units::fixed(seconds, tenths % 10 == 0 ? 0 : 1) + " s";
}

std::string write_placeholder(std::string_view name, const Act& act, const Job& job) {
    if (name == "text") return act.text;
    if (name == "duration") return write_duration(act.number);
    if (name == "balloons") return write_balloons(act.numbers);
    if (name == "confidence") return units::per_cent(act.number);
    if (name == "temperature") {
        const double celsius = act.number - zero_celsius_k;
        const bool whole = std::abs(celsius - std::round(celsius)) < 0.05;
        return units::fixed(celsius, whole ? 0 : 1) + " °C";
    }
    const std::size_t index = name.starts_with("other ") ? act.second : act.object;
    for (const auto& spelling : spellings(name, job))
        if (spelling.index == index) return spelling.text;
    return std::string(name);
}

}  // namespace

std::string render(const Act& act, const Job& job) {
    std::string text;
    for (const auto& part : parts_of(row_of(act).phrase.pattern)) {
        std::string words;
        if (part.kind == Part::Kind::literal) words = std::string(part.text);
        if (part.kind == Part::Kind::placeholder) words = write_placeholder(part.text, act, job);
        if (part.kind == Part::Kind::optional && act.option > 0)
            words = std::string(alternatives(part.text)[act.option - 1]);
        if (!words.empty()) text += (text.empty() ? "" : " ") + words;
    }
    return text;
}

}  // namespace emberpath::worksite
