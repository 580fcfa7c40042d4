#pragma once
/// Cutting the screen into places: slices from an edge, rows and columns, and things that wrap.

#include <initializer_list>
#include <span>
#include <vector>

#include "ui/kit/geometry.hpp"

namespace emberpath::kit {

/// Cuts slices off a rectangle. What is asked for beyond what is left is not given.
class Slicer {
  public:
    explicit Slicer(const Rect& all) : left_(all) {}
    Rect top(double h, double gap_after = 0.0);
    Rect bottom(double h, double gap_before = 0.0);
    Rect left(double w, double gap_after = 0.0);
    Rect right(double w, double gap_before = 0.0);
    [[nodiscard]] const Rect& rest() const { return left_; }

  private:
    Rect left_;
};

/// One part of a row or column: a fixed size, and a share of what is left over.
struct Part {
    double fixed = 0.0;
    double share = 0.0;
};
[[nodiscard]] std::vector<Rect> columns(const Rect& all, std::span<const Part> parts,
                                        double gap = 0.0);
[[nodiscard]] std::vector<Rect> rows(const Rect& all, std::span<const Part> parts,
                                     double gap = 0.0);
/// `n` equal columns or rows.
[[nodiscard]] std::vector<Rect> columns(const Rect& all, std::size_t n, double gap = 0.0);
[[nodiscard]] std::vector<Rect> rows(const Rect& all, std::size_t n, double gap = 0.0);
/// `n` equal cells in reading order.
[[nodiscard]] std::vector<Rect> grid(const Rect& all, std::size_t n, std::size_t across, Size gap);

/// Boxes of given widths and one height, side by side, going on in a new line where the width ends.
[[nodiscard]] std::vector<Rect> wrapped_row(const Rect& all, std::span<const double> widths,
                                            double height, Size gap);

}  // namespace emberpath::kit
