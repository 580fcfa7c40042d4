#include "ui/desktop/figures.hpp"

#include <charconv>

#include "sim/units/units.hpp"

namespace emberpath::desktop {

namespace {

constexpr double mbar_per_kpa = 10.0;

bool read_number(std::string_view text, double& number) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc() && end == text.data() + text.size();
}

std::string mbar_text(double kpa) {
    return units::fixed(kpa * mbar_per_kpa, 1);
}

}  // namespace

Figure figure_of(worksite::Quantity quantity, double value, bool kilopascal) {
    const std::string text = worksite::text_of(quantity, value);
    const auto space = text.find(' ');
    Figure figure{text.substr(0, space),
                  space == std::string::npos ? std::string() : text.substr(space + 1), 0.0};
    if (!read_number(figure.digits, figure.number)) return {text, "", 0.0};
    if (figure.unit == "kPa" && !kilopascal)
        figure = {mbar_text(figure.number), "mbar", figure.number * mbar_per_kpa};
    return figure;
}

std::string text_of(const Figure& figure) {
    return figure.unit.empty() ? figure.digits : figure.digits + " " + figure.unit;
}

std::string in_wished_unit(std::string text, bool kilopascal) {
    if (kilopascal) return text;
    for (auto at = text.find(" kPa"); at != std::string::npos; at = text.find(" kPa", at + 1)) {
        const auto before = text.find_last_not_of("-.0123456789", at - 1);
        const auto begin = before == std::string::npos ? 0 : before + 1;
        double kpa = 0.0;
        if (!read_number(std::string_view(text).substr(begin, at - begin), kpa)) continue;
        const std::string mbar = mbar_text(kpa) + " mbar";
        text.replace(begin, at + 4 - begin, mbar);
        at = begin + mbar.size() - 1;
    }
    return text;
}

}  // namespace emberpath::desktop
