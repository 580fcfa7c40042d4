#include "ui/kit/layout.hpp"

namespace emberpath::kit {

namespace {

/// Begins and sizes of parts along a line of length `all`.
std::vector<std::pair<double, double>> divided(double all, std::span<const Part> parts,
                                               double gap) {
    double fixed = parts.empty() ? 0.0 : gap * static_cast<double>(parts.size() - 1), shares = 0.0;
    for (const Part& p : parts) {
        fixed += p.fixed;
        shares += p.share;
    }
    const double spare = std::max(0.0, all - fixed);
    std::vector<std::pair<double, double>> pieces;
    double at = 0.0;
    for (const Part& p : parts) {
        const double size = p.fixed + (shares > 0.0 ? spare * p.share / shares : 0.0);
        pieces.emplace_back(at, size);
        at += size + gap;
    }
    return pieces;
}

}  // namespace

Rect Slicer::top(double h, double gap_after) {
    h = std::min(h, left_.h);
    const Rect slice{left_.x, left_.y, left_.w, h};
    const double used = std::min(h + gap_after, left_.h);
    left_ = {left_.x, left_.y + used, left_.w, left_.h - used};
    return slice;
}

Rect Slicer::bottom(double h, double gap_before) {
    h = std::min(h, left_.h);
    const Rect slice{left_.x, left_.bottom() - h, left_.w, h};
    left_.h = std::max(0.0, left_.h - h - gap_before);
    return slice;
}

Rect Slicer::left(double w, double gap_after) {
    w = std::min(w, left_.w);
    const Rect slice{left_.x, left_.y, w, left_.h};
    const double used = std::min(w + gap_after, left_.w);
    left_ = {left_.x + used, left_.y, left_.w - used, left_.h};
    return slice;
}

Rect Slicer::right(double w, double gap_before) {
    w = std::min(w, left_.w);
    const Rect slice{left_.right() - w, left_.y, w, left_.h};
    left_.w = std::max(0.0, left_.w - w - gap_before);
    return slice;
}

std::vector<Rect> columns(const Rect& all, std::span<const Part> parts, double gap) {
    std::vector<Rect> cells;
    for (const auto& [at, size] : divided(all.w, parts, gap))
        cells.push_back({all.x + at, all.y, size, all.h});
    return cells;
}

std::vector<Rect> rows(const Rect& all, std::span<const Part> parts, double gap) {
    std::vector<Rect> cells;
    for (const auto& [at, size] : divided(all.h, parts, gap))
        cells.push_back({all.x, all.y + at, all.w, size});
    return cells;
}

std::vector<Rect> columns(const Rect& all, std::size_t n, double gap) {
    return columns(all, std::vector<Part>(n, {0.0, 1.0}), gap);
}

std::vector<Rect> rows(const Rect& all, std::size_t n, double gap) {
    return rows(all, std::vector<Part>(n, {0.0, 1.0}), gap);
}

std::vector<Rect> grid(const Rect& all, std::size_t n, std::size_t across, Size gap) {
    std::vector<Rect> cells;
    if (n == 0 || across == 0) return cells;
    for (const Rect& row : rows(all, (n + across - 1) / across, gap.h))
        for (const Rect& cell : columns(row, across, gap.w))
            if (cells.size() < n) cells.push_back(cell);
    return cells;
}

std::vector<Rect> wrapped_row(const Rect& all, std::span<const double> widths, double height,
                              Size gap) {
    std::vector<Rect> boxes;
    double x = all.x, y = all.y;
    for (const double w : widths) {
        if (x > all.x && x + w > all.right() + 1e-6) {
            x = all.x;
            y += height + gap.h;
        }
        boxes.push_back({x, y, w, height});
        x += w + gap.w;
    }
    return boxes;
}

}  // namespace emberpath::kit
