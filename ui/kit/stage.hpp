#pragma once
/// Where a screen is built: it puts nodes into the tree and paint into layers, and keeps the two in step.
/// The same view, state and size always give the same frame.

#include <array>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "ui/kit/focus.hpp"
#include "ui/kit/key_map.hpp"
#include "ui/kit/recording.hpp"
#include "ui/kit/text_editor.hpp"
#include "ui/kit/tree.hpp"

namespace emberpath::kit {

enum class Layer : std::uint8_t {
    still,
    moving,
    over
};  // repainted: on change; while time runs; last
inline constexpr std::size_t layer_count = 3;

/// A text as drawn, for checks.
struct TextBox {
    std::string text;
    Rect box;      // room it was given
    Rect ink;      // capitals' height over the width drawn
    Rect visible;  // what clipping leaves of `ink`
    Layer layer = Layer::still;
    bool shortened = false;
    Face face = Face::regular;
};

struct Frame {
    Size size;
    std::string where;  // place for the key map: "job"
    Tree tree;
    std::array<Recording, layer_count> layers;
    std::vector<TextBox> texts;
};

/// What the person did to the screen itself: focus, scrolling, text in fields. Lives from frame to frame.
struct State {
    std::string focus;        // id; empty: nothing
    bool focus_shown = true;  // false while the pointer leads
    FocusMemory memory;
    std::map<std::string, double, std::less<>> scroll;       // by id of the scrolling node
    std::map<std::string, TextEditor, std::less<>> editors;  // by id of the field
    std::string pressed, hovered, dragging;                  // ids; dragging: what is carried
    bool roaming = false;  // the pointer holds a drawing and shifts it
    std::string prefix;    // a key that waits for the next one: "tool"
    Point pointer;
    std::string in_front, behind;  // id of what is in front of all else; where the focus was before
};

enum class Align : std::uint8_t { start, centre, end };

class Stage {
  public:
    Stage(const TextMetrics& metrics, const State& state, const KeyMap& keys, Size size);

    [[nodiscard]] const TextMetrics& metrics() const { return metrics_; }
    [[nodiscard]] const State& state() const { return state_; }
    [[nodiscard]] const KeyMap& keys() const { return keys_; }
    [[nodiscard]] Size size() const { return frame_.size; }
    [[nodiscard]] Rect whole() const { return {0.0, 0.0, frame_.size.w, frame_.size.h}; }
    void place(std::string_view where) { frame_.where = where; }
    /// The caps of a command as it is given at this place.
    [[nodiscard]] std::string caps(std::string_view command) const {
        return keys_.caps(command, frame_.where);
    }

    // Tree.
    class Scope {
      public:
        explicit Scope(Stage& stage) : stage_(&stage) {}
        ~Scope() { stage_->close(); }
        Scope(const Scope&) = delete;
        Scope& operator=(const Scope&) = delete;

      private:
        Stage* stage_;
    };
    /// Open until the scope ends.
    [[nodiscard]] Scope inside(Node node);
    [[nodiscard]] Scope region(std::string_view id, std::string_view name, const Rect& bounds);
    void add(Node node);
    [[nodiscard]] bool is_focused(std::string_view id) const { return state_.focus == id; }

    // Paint.
    [[nodiscard]] Painter& paint() { return frame_.layers[static_cast<std::size_t>(layer_)]; }
    [[nodiscard]] Layer layer() const { return layer_; }
    /// Clips go with the layer.
    void use(Layer layer);
    void clip(const Rect& r);
    void unclip();
    [[nodiscard]] Rect clipped(const Rect& r) const;
    /// Nothing of it is cut off by more than half a pixel.
    [[nodiscard]] bool shows_whole(const Rect& r) const;

    /// Words and numbers, with the minus sign where one is meant; segments of a glass have a short stroke.
    [[nodiscard]] static std::string written(std::string_view utf8, const TextStyle& style) {
        const bool segments = style.face == Face::seven || style.face == Face::fourteen;
        return segments ? std::string(utf8) : with_minus(utf8);
    }
    /// One line, upright centred in the box by its capitals. Returns the width drawn.
    double text(const Rect& box, std::string_view utf8, const TextStyle& style,
                Align align = Align::start);
    /// The same, cut with "…" when there is no room; the node must hold the whole.
    double text_shortened(const Rect& box, std::string_view utf8, const TextStyle& style);
    /// Wrapped to the width of the box, from its top. Returns the height used.
    double paragraph(const Rect& box, std::string_view utf8, const TextStyle& style);
    /// The height it would use at that width.
    [[nodiscard]] double paragraph_height(double w, std::string_view utf8,
                                          const TextStyle& style) const;
    [[nodiscard]] double width(std::string_view utf8, const TextStyle& style) const {
        return width_of(metrics_, style, written(utf8, style));
    }

    /// Draws the focus ring and gives the frame away.
    [[nodiscard]] Frame finish();

  private:
    void close() { frame_.tree.close(); }
    void draw_focus();
    double draw_line(const Rect& box, std::string_view utf8, const TextStyle& style, double x);

    const TextMetrics& metrics_;
    const State& state_;
    const KeyMap& keys_;
    Frame frame_;
    Layer layer_ = Layer::still;
    std::vector<Rect> clips_;
};

}  // namespace emberpath::kit
