#pragma once
/// The parts screens are made of. Each draws itself and puts its node into the tree.

#include <span>
#include <string>
#include <vector>

#include "ui/kit/stage.hpp"

namespace emberpath::kit {

/// Text styles by use.
namespace style {
inline constexpr TextStyle label{Face::regular, type_size::label, Token::ink2};
inline constexpr TextStyle row{Face::regular, type_size::row, Token::ink};
inline constexpr TextStyle row_quiet{Face::regular, type_size::row, Token::ink2};
inline constexpr TextStyle row_bold{Face::bold, type_size::row, Token::ink};
inline constexpr TextStyle body{Face::regular, type_size::body, Token::ink};
inline constexpr TextStyle body_quiet{Face::regular, type_size::body, Token::ink2};
inline constexpr TextStyle body_bold{Face::bold, type_size::body, Token::ink};
inline constexpr TextStyle quote{Face::italic, type_size::body, Token::ink};
inline constexpr TextStyle absent{Face::italic, type_size::row, Token::ink2};
inline constexpr TextStyle heading{Face::bold, type_size::heading, Token::ink};
inline constexpr TextStyle title{Face::bold, type_size::title, Token::ink};
}  // namespace style
[[nodiscard]] constexpr TextStyle with_ink(TextStyle s, Ink ink) {
    s.ink = ink;
    return s;
}

// --- quiet things ---

/// A panel: paper with a rule around it.
void panel(Stage& stage, const Rect& r);
/// Text with a node of its own.
void label(Stage& stage, const Rect& box, std::string_view id, std::string_view utf8,
           const TextStyle& s);
/// A panel's title, a hairline, and a note at the right end.
void panel_heading(Stage& stage, const Rect& row, std::string_view id, std::string_view title,
                   std::string_view note);
/// A key as drawn on a keyboard; returns its width. `from` is its left edge at mid height.
double key_cap(Stage& stage, Point from, std::string_view caps);
[[nodiscard]] double key_cap_width(const Stage& stage, std::string_view caps);

/// The numbered mark of a reading.
enum class Balloon : std::uint8_t { filled, open, expected };
void balloon(Stage& stage, Point centre, int number, Balloon look, double radius = 10.0);
/// Numbers of readings, from right to left before `right`; returns the left end.
double balloons_before(Stage& stage, Point right, std::span<const int> numbers, Balloon look);

/// Marks of states: never colour alone.
enum class Mark : std::uint8_t {
    on,
    off,
    proved,
    unknown,
    hazard,
    held,
    doubtful,
    struck,
    tick,
    cross
};
void draw_mark(Painter& painter, Point centre, Mark mark, double radius = 8.0);

// --- things to press ---

struct ButtonSpec {
    std::string id, name;
    Command command;
    std::string caps{};      // drawn at the right end
    std::string number{};    // drawn as a cap at the left end
    std::string shortcut{};  // command of the key map
    std::string hint{};      // why not now; drawn after the name where there is room
    std::string value{};
    bool primary = false, enabled = true, selected = false;
    bool default_one = false;   // a stronger edge: what Enter does
    bool picture_only = false;  // the name is not written: a picture is drawn over it
    std::string cost{};         // simulated time it takes; drawn at the right end
};
void button(Stage& stage, const Rect& r, const ButtonSpec& spec);
[[nodiscard]] double button_width(const Stage& stage, const ButtonSpec& spec);
/// Underlined words that lead somewhere.
void link(Stage& stage, const Rect& r, const ButtonSpec& spec);
/// A box with a tick, and words.
void toggle(Stage& stage, const Rect& r, const ButtonSpec& spec);

/// The style in the largest size, down to that of labels, in which the words keep to a width; the least
/// one where none does.
[[nodiscard]] TextStyle fitting(const Stage& stage, std::string_view words, TextStyle style,
                                double width);

struct Choice {
    std::string id, name;
    Command command;
    bool selected = false;
    std::string caps{};
    std::string
        spoken{};  // name for those who do not see it, where the drawn one is short: "1 times"
};
/// Side by side, one of them chosen.
void segments(Stage& stage, const Rect& r, std::string_view id, std::string_view name,
              std::span<const Choice> choices);
/// Tabs along the top of what they choose.
void tabs(Stage& stage, const Rect& r, std::string_view id, std::string_view name,
          std::span<const Choice> choices);

// --- lists ---

/// A scrolling column. Rows are placed in its content, from `top()`; the last row is cut where it ends.
class ScrollList {
  public:
    /// With Moves::none each thing inside is a stop of the Tab key.
    ScrollList(Stage& stage, const Rect& view, std::string_view id, std::string_view name,
               double content_height, Moves moves = Moves::column);
    ~ScrollList();
    static constexpr double bar_width = 12.0;  // what rows are narrower by where it scrolls
    ScrollList(const ScrollList&) = delete;
    ScrollList& operator=(const ScrollList&) = delete;
    /// Rectangle of a row whose top is `y` from the top of the content.
    [[nodiscard]] Rect row(double y, double height) const;
    [[nodiscard]] bool shows(const Rect& row) const { return !intersection(row, view_).empty(); }
    [[nodiscard]] bool scrolls() const { return content_ > view_.h + 0.5; }

  private:
    Stage& stage_;
    Rect view_;
    double content_, offset_;
    Stage::Scope scope_;
};

// --- fields ---

struct TextFieldSpec {
    std::string id, name;
    std::string text;  // shown while no editor holds it
    std::string placeholder{};
    Command command{};  // Enter in a field of one line
    bool many_lines = false;
    int last_reading = 0;
    TextStyle style = kit::style::body;
};
void text_field(Stage& stage, const Rect& r, const TextFieldSpec& spec);
/// A closed choice among many: shows the chosen one, opens a list.
void chooser(Stage& stage, const Rect& r, const ButtonSpec& spec);

/// A ruler that fills.
void progress(Stage& stage, const Rect& r, std::string_view id, std::string_view name,
              double share);

}  // namespace emberpath::kit
