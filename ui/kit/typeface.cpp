#include "ui/kit/typeface.hpp"

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_OUTLINE_H

#include <cmath>
#include <filesystem>
#include <map>
#include <stdexcept>

namespace emberpath::kit {

namespace {

struct Known {
    const char* file;
    const char* package;
};
constexpr std::array<Known, face_count + 1> known{{
    {"opentype/b612/B612-Regular.otf", "fonts-b612"},
    {"opentype/b612/B612-Bold.otf", "fonts-b612"},
    {"opentype/b612/B612-Italic.otf", "fonts-b612"},
    {"opentype/b612/B612-BoldItalic.otf", "fonts-b612"},
    {"truetype/dseg/DSEG7Classic-Bold.ttf", "fonts-dseg"},
    {"truetype/dseg/DSEG14Classic-Bold.ttf", "fonts-dseg"},
    {"truetype/dejavu/DejaVuSans.ttf", "fonts-dejavu-core"},
}};
constexpr std::size_t fallback_index = face_count;

std::string find_one(const std::string& folder, const char* file) {
    namespace fs = std::filesystem;
    std::error_code ignored;
    if (!folder.empty()) {
        const fs::path beside = fs::path(folder) / fs::path(file).filename();
        if (fs::exists(beside, ignored)) return beside.string();
    }
    return std::string("/usr/share/fonts/") + file;
}

/// Lets small dark strokes keep their weight on paper.
std::uint8_t strengthened(std::uint8_t coverage) {
    static const std::array<std::uint8_t, 256> table = [] {
        std::array<std::uint8_t, 256> t{};
        for (std::size_t i = 0; i < t.size(); ++i)
            t[i] = static_cast<std::uint8_t>(
                std::lround(255.0 * std::pow(static_cast<double>(i) / 255.0, 0.82)));
        return t;
    }();
    return table[coverage];
}

}  // namespace

struct Typeface::Impl {
    FT_Library library = nullptr;
    std::array<FT_Face, face_count + 1> faces{};
    mutable std::map<std::pair<Face, char32_t>, double> advances;

    ~Impl() {
        for (FT_Face face : faces)
            if (face != nullptr) FT_Done_Face(face);
        if (library != nullptr) FT_Done_FreeType(library);
    }
    /// The face that has the character, and the glyph's number in it; 0 when none has.
    [[nodiscard]] std::pair<FT_Face, FT_UInt> glyph(Face face, char32_t character) const {
        const FT_Face own = faces[static_cast<std::size_t>(face)];
        const FT_UInt index = FT_Get_Char_Index(own, character);
        if (index != 0) return {own, index};
        const FT_Face other = faces[fallback_index];
        const FT_UInt found = FT_Get_Char_Index(other, character);
        return found != 0 ? std::pair{other, found} : std::pair{own, FT_UInt{0}};
    }
    /// Height of a flat capital or depth of a letter, from its outline [em].
    [[nodiscard]] double extent(Face face, char32_t character, bool above) const {
        const auto [ft, index] = glyph(face, character);
        if (FT_Load_Glyph(ft, index, FT_LOAD_NO_SCALE) != 0) return 0.0;
        const auto& m = ft->glyph->metrics;
        const auto units = above ? m.horiBearingY : m.height - m.horiBearingY;
        return static_cast<double>(units) / ft->units_per_EM;
    }
};

FontFiles find_fonts(const std::string& folder) {
    FontFiles files;
    for (std::size_t i = 0; i < face_count; ++i) files.faces[i] = find_one(folder, known[i].file);
    files.fallback = find_one(folder, known[fallback_index].file);
    return files;
}

Typeface::Typeface(const FontFiles& files) : impl_(std::make_unique<Impl>()) {
    if (FT_Init_FreeType(&impl_->library) != 0) throw std::runtime_error("FreeType does not start");
    for (std::size_t i = 0; i < impl_->faces.size(); ++i) {
        const std::string& file = i < face_count ? files.faces[i] : files.fallback;
        if (FT_New_Face(impl_->library, file.c_str(), 0, &impl_->faces[i]) != 0)
            throw std::runtime_error("the typeface " + file + " cannot be opened; the package " +
                                     known[i].package + " holds it");
    }
}

Typeface::~Typeface() = default;

double Typeface::advance_em(Face face, char32_t character) const {
    const auto known_one = impl_->advances.find({face, character});
    if (known_one != impl_->advances.end()) return known_one->second;
    const auto [ft, index] = impl_->glyph(face, character);
    double em = 0.0;
    if (FT_Load_Glyph(ft, index, FT_LOAD_NO_SCALE) == 0)
        em = static_cast<double>(ft->glyph->metrics.horiAdvance) / ft->units_per_EM;
    impl_->advances[{face, character}] = em;
    return em;
}

double Typeface::cap_height_em(Face face) const {
    return impl_->extent(face, U'H', true);
}
double Typeface::descent_em(Face face) const {
    return impl_->extent(face, U'g', false);
}
double Typeface::ascent_em(Face face) const {
    return impl_->extent(face, U'\u00C5', true);
}

bool Typeface::has(Face face, char32_t character) const {
    return impl_->glyph(face, character).second != 0;
}

GlyphPicture Typeface::picture(Face face, char32_t character, double em_px, int quarter) const {
    const auto [ft, index] = impl_->glyph(face, character);
    const auto em = static_cast<FT_F26Dot6>(std::lround(em_px * 64.0));
    GlyphPicture picture;
    if (FT_Set_Char_Size(ft, em, em, 72, 72) != 0) return picture;
    if (FT_Load_Glyph(ft, index, FT_LOAD_TARGET_LIGHT | FT_LOAD_NO_BITMAP) != 0) return picture;
    FT_Outline_Translate(&ft->glyph->outline, quarter * 16, 0);
    if (FT_Render_Glyph(ft->glyph, FT_RENDER_MODE_NORMAL) != 0) return picture;
    const FT_Bitmap& bitmap = ft->glyph->bitmap;
    picture.left = ft->glyph->bitmap_left;
    picture.top = ft->glyph->bitmap_top;
    picture.width = static_cast<int>(bitmap.width);
    picture.height = static_cast<int>(bitmap.rows);
    picture.coverage.reserve(static_cast<std::size_t>(bitmap.width) * bitmap.rows);
    for (unsigned y = 0; y < bitmap.rows; ++y)
        for (unsigned x = 0; x < bitmap.width; ++x)
            picture.coverage.push_back(
                strengthened(bitmap.buffer[static_cast<std::ptrdiff_t>(y) * bitmap.pitch + x]));
    return picture;
}

}  // namespace emberpath::kit
