#pragma once
/// The faces of the program through FreeType: widths for layout, and coverage pictures for the window.
/// Needs no display.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ui/kit/text.hpp"

namespace emberpath::kit {

/// Files of the faces, in the order of Face, and the fallback for missing characters.
struct FontFiles {
    std::array<std::string, face_count> faces;
    std::string fallback;
};

/// The usual places of the packages fonts-b612, fonts-dseg and fonts-dejavu-core. `folder`, when not empty,
/// is looked in first.
[[nodiscard]] FontFiles find_fonts(const std::string& folder = "");

/// How a glyph covers whole pixels, 0 to 255, row by row.
struct GlyphPicture {
    int left = 0, top = 0;  // of the picture's corner from the pen; top grows upwards
    int width = 0, height = 0;
    std::vector<std::uint8_t> coverage;
};

class Typeface final : public TextMetrics {
  public:
    /// Throws std::runtime_error with the file and the package that holds it if a face cannot be opened.
    explicit Typeface(const FontFiles& files);
    ~Typeface() override;
    Typeface(const Typeface&) = delete;
    Typeface& operator=(const Typeface&) = delete;

    [[nodiscard]] double advance_em(Face face, char32_t character) const override;
    [[nodiscard]] double cap_height_em(Face face) const override;
    [[nodiscard]] double descent_em(Face face) const override;
    [[nodiscard]] double ascent_em(Face face) const override;
    [[nodiscard]] bool has(Face face, char32_t character) const override;

    /// Lightly hinted, at `em_px` pixels to the em, moved right by `quarter`/4 of a pixel. Coverage is raised
    /// to the power 0.82, so that small dark text is not thin.
    [[nodiscard]] GlyphPicture picture(Face face, char32_t character, double em_px,
                                       int quarter) const;

  private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

}  // namespace emberpath::kit
