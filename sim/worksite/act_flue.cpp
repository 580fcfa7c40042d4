// The flue-gas analyser and the air of the room.

#include <algorithm>
#include <array>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::int64_t warm_up_ticks = 600;
constexpr double clean_air_o2 = 0.2095;
constexpr std::array cells{Quantity::flue_o2, Quantity::flue_co2, Quantity::flue_co,
                           Quantity::flue_temperature};

void analyser_on(Workplace& w, const Act&) {
    w.bench.analyser_on_tick = w.tick();
    const auto p = w.look().plant;
    w.bench.zeroed_in_products = w.bench.probe_in_flue && p.co2_share > 0.001;
    w.bench.analyser_zero = {};
    if (w.bench.zeroed_in_products)
        w.bench.analyser_zero = {clean_air_o2 - p.o2_share, -p.co2_share, -p.co_share};
    w.set_tools();
    w.say("The analyser warms up and takes what it draws in for clean air.");
}

std::string analyser_is_on(const Workplace& w, const Act&) {
    return w.bench.analyser_on_tick == never ? "The analyser is off." : "";
}

void probe_in(Workplace& w, const Act&) {
    w.bench.probe_in_flue = true;
    w.set_tools();
}

void probe_out(Workplace& w, const Act&) {
    w.bench.probe_in_flue = false;
    w.set_tools();
}

void read_analyser(Workplace& w, const Act& act) {
    const Hold hold = act.option == 1 ? Hold::highest : act.option == 2 ? Hold::lowest : Hold::now;
    read_analyser_now(w, hold);
}

/// "oxygen 8.1 %, carbon dioxide 7.3 %, carbon monoxide 41 ppm, flue gas 148 °C"
std::string glass_words(const Workplace& w) {
    constexpr std::array<std::string_view, cells.size()> names{"oxygen ", "carbon dioxide ",
                                                               "carbon monoxide ", "flue gas "};
    const auto now = analyser_readings(w, Hold::now);
    std::string words;
    for (std::size_t cell = 0; cell < cells.size(); ++cell)
        words += (cell == 0 ? "" : ", ") + std::string(names[cell]) +
                 text_of(cells[cell], w.on_glass(now[cell]));
    return words;
}

void read_room_air(Workplace& w, const Act&) {
    Workplace::ReadingOf what{Quantity::room_co};
    what.trusted = analyser_sound(w);
    what.instead = std::max(0.0, w.room_co() + cell_shift(w, 2));
    w.read(what);
}

constexpr std::array table{
    Doing{Verb::analyser_on, no_obstacle, analyser_on},
    Doing{Verb::probe_in, no_obstacle, probe_in},
    Doing{Verb::probe_out, no_obstacle, probe_out},
    Doing{Verb::read_analyser, analyser_is_on, read_analyser},
    Doing{Verb::read_room_air, analyser_is_on, read_room_air},
};

}  // namespace

double cell_shift(const Workplace& w, std::size_t cell) {
    double shift = cell < 3 ? w.bench.analyser_zero[cell] : 0.0;
    const auto age = w.tick() - w.bench.analyser_on_tick;
    if (age < warm_up_ticks && cell < 3) {
        constexpr std::array cold{0.025, -0.012, 90.0e-6};
        shift += cold[cell] * (1.0 - static_cast<double>(age) / static_cast<double>(warm_up_ticks));
    }
    return shift;
}

bool analyser_ready(const Workplace& w) {
    return w.bench.analyser_on_tick != never &&
           w.tick() - w.bench.analyser_on_tick >= warm_up_ticks;
}

bool analyser_sound(const Workplace& w) {
    return analyser_ready(w) && !w.bench.zeroed_in_products;
}

void watch_analyser(Workplace& w, double seconds) {
    constexpr int looks = 8;
    if (!analyser_ready(w)) w.say("The analyser is still warming up.");
    const auto begin = w.tick();
    for (int look = 1; look <= looks && !w.over(); ++look) {
        w.pass(seconds / looks);
        const double after_s = static_cast<double>(w.tick() - begin) * tick_s;
        if (look < looks)
            w.say("After " + units::fixed(after_s, 0) + " s: " + glass_words(w) + ".");
    }
    if (w.over()) return;
    for (const auto& what : analyser_readings(w, Hold::now)) w.read(what);
}

std::vector<Workplace::ReadingOf> analyser_readings(const Workplace& w, Hold hold) {
    std::vector<Workplace::ReadingOf> readings;
    for (std::size_t cell = 0; cell < cells.size(); ++cell) {
        Workplace::ReadingOf what{cells[cell], hold};
        what.trusted = analyser_sound(w);
        if (!what.trusted) {
            const double model =
                value_of(cells[cell], hold, w.look(), w.senses, w.inputs(), w.setup);
            what.instead = std::max(0.0, model + cell_shift(w, cell));
        }
        readings.push_back(std::move(what));
    }
    return readings;
}

void read_analyser_now(Workplace& w, Hold hold) {
    if (!analyser_ready(w)) w.say("The analyser is still warming up.");
    for (const auto& what : analyser_readings(w, hold)) w.read(what);
}

std::span<const Doing> flue_doings() {
    return table;
}

}  // namespace emberpath::worksite
