// Whether each text stands out from what is painted behind it, by day and by night.

#include <cmath>

#include "ui/kit/audit.hpp"

namespace emberpath::kit {

namespace {

constexpr double least_contrast = 4.5;  // WCAG 2.1, 1.4.3, for text of any size
constexpr double opaque = 0.99;

/// Something painted that covers what is behind it.
struct Cover {
    Path outline;
    Rect clip;
    Token token;
};

bool inside(const Path& outline, Point at) {
    bool in = false;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const Point a = outline[i], b = outline[j];
        if ((a.y > at.y) == (b.y > at.y)) continue;
        if (at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x) in = !in;
    }
    return in;
}

/// Reads the layers in the order in which they are painted.
class Reader {
  public:
    explicit Reader(Size size) : clips_{{0.0, 0.0, size.w, size.h}} {}

    void read(const PaintCommand& command) {
        if (const auto* fill = std::get_if<FillCommand>(&command)) cover(fill->outline, fill->ink);
        if (const auto* box = std::get_if<BoxCommand>(&command)) cover(rectangle(box->r), box->ink);
        if (const auto* disc = std::get_if<DiscCommand>(&command))
            cover(circle(disc->centre, disc->radius), disc->ink);
        if (const auto* clip = std::get_if<ClipCommand>(&command))
            clips_.push_back(intersection(clips_.back(), clip->r));
        if (std::holds_alternative<UnclipCommand>(command) && clips_.size() > 1) clips_.pop_back();
        if (const auto* text = std::get_if<TextCommand>(&command)) judge(*text);
    }
    std::vector<std::string> problems;

  private:
    void cover(const Path& outline, Ink ink) {
        if (ink.alpha >= opaque && outline.size() > 2)
            covers_.push_back({outline, clips_.back(), ink.token});
    }
    void judge(const TextCommand& text) {
        if (text.style.ink.alpha < opaque) return;  // unlit segments of a glass say nothing
        // In the first letter, at half its height.
        const Point at{text.baseline.x + text.style.size * 0.25,
                       text.baseline.y - text.style.size * 0.35};
        if (!clips_.back().contains(at)) return;
        for (std::size_t i = covers_.size(); i-- > 0;) {
            const Cover& behind = covers_[i];
            if (!behind.clip.contains(at) || !inside(behind.outline, at)) continue;
            compare(text, behind.token);
            return;
        }
        problems.push_back("\"" + text.text + "\" stands on nothing");
    }
    void compare(const TextCommand& text, Token behind) {
        for (const Theme theme : {Theme::day, Theme::night}) {
            const double ratio =
                contrast_ratio(colour(theme, text.style.ink.token), colour(theme, behind));
            if (ratio >= least_contrast) continue;
            problems.push_back("\"" + text.text + "\", " +
                               std::string(name_of(text.style.ink.token)) + " on " +
                               std::string(name_of(behind)) + " by " + std::string(name_of(theme)) +
                               ": contrast " + std::to_string(std::lround(ratio * 10.0) / 10) +
                               "." + std::to_string(std::lround(ratio * 10.0) % 10));
        }
    }

    std::vector<Rect> clips_;
    std::vector<Cover> covers_;
};

}  // namespace

std::vector<std::string> faint_texts(const Frame& frame) {
    Reader reader(frame.size);
    for (const Recording& layer : frame.layers)
        for (const PaintCommand& command : layer.commands()) reader.read(command);
    return reader.problems;
}

}  // namespace emberpath::kit
