#pragma once
/// A painter that only writes down what it is told: for tests, for finding out whether anything changed,
/// and for painting later.

#include <string>
#include <variant>

#include "ui/kit/painter.hpp"

namespace emberpath::kit {

struct FillCommand {
    Path outline;
    Ink ink;
    bool operator==(const FillCommand&) const = default;
};
struct StrokeCommand {
    Path path;
    Stroke how;
    bool operator==(const StrokeCommand&) const = default;
};
struct BoxCommand {
    Rect r;
    Ink ink;
    bool operator==(const BoxCommand&) const = default;
};
struct DiscCommand {
    Point centre;
    double radius;
    Ink ink;
    bool operator==(const DiscCommand&) const = default;
};
struct TextCommand {
    Point baseline;
    std::string text;
    TextStyle style;
    bool operator==(const TextCommand&) const = default;
};
struct ClipCommand {
    Rect r;
    bool operator==(const ClipCommand&) const = default;
};
struct UnclipCommand {
    bool operator==(const UnclipCommand&) const = default;
};
using PaintCommand = std::variant<FillCommand, StrokeCommand, BoxCommand, DiscCommand, TextCommand,
                                  ClipCommand, UnclipCommand>;

class Recording final : public Painter {
  public:
    void fill(std::span<const Point> outline, Ink ink) override;
    void stroke(std::span<const Point> path, const Stroke& how) override;
    void box(const Rect& r, Ink ink) override;
    void disc(Point centre, double radius, Ink ink) override;
    void text(Point baseline, std::string_view utf8, const TextStyle& style) override;
    void push_clip(const Rect& r) override;
    void pop_clip() override;

    [[nodiscard]] const std::vector<PaintCommand>& commands() const { return commands_; }
    void play(Painter& painter) const;
    /// One command a line, numbers to a tenth of a pixel; the same on every machine.
    [[nodiscard]] std::string as_text() const;
    bool operator==(const Recording& other) const { return commands_ == other.commands_; }

  private:
    std::vector<PaintCommand> commands_;
};

}  // namespace emberpath::kit
