#include "ui/screens/glass.hpp"

#include <algorithm>

namespace emberpath::screens {

namespace {

using kit::Face;
using kit::Ink;
using kit::Token;

bool seven_can_show(std::string_view text) {
    return text.find_first_not_of("0123456789.-: ") == std::string_view::npos;
}

std::size_t figures_in(std::string_view text) {
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return c != '.' && c != ':'; }));
}

/// All segments of every place, and no points.
std::string unlit(std::string_view digits, std::size_t places) {
    return std::string(std::max(places, figures_in(digits)), '8');
}

kit::TextStyle words_style(double size) {
    return {Face::bold, size * 0.8, Token::lcd_ink};
}

}  // namespace

void draw_glass(kit::Stage& stage, const kit::Rect& r) {
    kit::shape(stage.paint(), kit::rounded_rectangle(r, 3.0), Token::lcd,
               {.width = 1.0, .ink = Token::rule});
}

double figures_width(const kit::Stage& stage, std::string_view digits, double size,
                     std::size_t places) {
    if (!seven_can_show(digits)) return stage.width(digits, words_style(size));
    return stage.width(unlit(digits, places), {Face::seven, size, Token::lcd_ink});
}

void draw_figures(kit::Stage& stage, kit::Point right, std::string_view digits, double size,
                  std::size_t places) {
    const bool seven = seven_can_show(digits);
    const kit::TextStyle lit =
        seven ? kit::TextStyle{Face::seven, size, Token::lcd_ink} : words_style(size);
    kit::Painter& p = stage.paint();
    if (seven) {
        const std::string all = unlit(digits, places);
        const kit::TextStyle ghost{Face::seven, size, Ink(Token::lcd_ink, 0.08)};
        p.text({right.x - stage.width(all, ghost), right.y}, all, ghost);
    }
    p.text({right.x - stage.width(digits, lit), right.y}, digits, lit);
}

void draw_display_word(kit::Stage& stage, kit::Point left, std::string_view word, double size) {
    stage.paint().text(left, word, {Face::fourteen, size, Token::lcd_ink});
}

}  // namespace emberpath::screens
