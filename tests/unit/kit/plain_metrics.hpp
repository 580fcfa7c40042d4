#pragma once
/// Text metrics without a font: every character is half an em wide, capitals are 0.7 em high.

#include "ui/kit/text.hpp"

namespace emberpath::kit {

class PlainMetrics final : public TextMetrics {
  public:
    [[nodiscard]] double advance_em(Face, char32_t) const override { return 0.5; }
    [[nodiscard]] double cap_height_em(Face) const override { return 0.7; }
    [[nodiscard]] double descent_em(Face) const override { return 0.2; }
    [[nodiscard]] double ascent_em(Face) const override { return 0.9; }
    [[nodiscard]] bool has(Face, char32_t c) const override { return c < 0x2500; }
};

}  // namespace emberpath::kit
