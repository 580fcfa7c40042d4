// Proves that no word is cut on any screen at any size and text scale, but in the places named here, where the
// whole can be had. Themes have no part in it: they are colours.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

#include "tests/unit/screens/every_screen.hpp"
#include "ui/kit/audit.hpp"

namespace emberpath::screens {
namespace {

/// Where a text may be cut, and where it stands in full.
struct Place {
    std::string_view begins;
    double below_w;  // in windows narrower than this [logical px]
    const char* whole;
    bool otherwise = false;  // the thing says it in another order
};
constexpr std::array places{
    Place{"evidence.reading.", 1000.0, "in the debrief's table, and when it was recorded"},
    Place{"status.line", 1000.0, "in the file of spoken sentences"},
    Place{"outcome.", 1100.0, "in the list under the score"},
    Place{"steps.chart", 700.0, "in the table, and in the replay of the step", true},
    Place{"jobs.", 1100.0, "beside the list, once the job is chosen"},
    Place{"table.column.", 10000.0, "read out as the column's name"},
    Place{"head.title", 850.0, "in a wider window; what to do first is in focus"},
};

bool allowed(const kit::CutText& cut, const Window& window) {
    for (const Place& place : places)
        if (cut.place.starts_with(place.begins) && window.logical().w < place.below_w)
            return cut.whole || place.otherwise;
    return false;
}

TEST(EveryScreen, CutsWordsOnlyWhereTheWholeCanBeHad) {
    std::vector<std::string> cuts;
    for (const NamedScreen& screen : sample_screens())
        for (const Window& window : every_window())
            for (const auto& cut : kit::cut_texts(draw(screen, window)))
                if (!allowed(cut, window))
                    cuts.push_back(where(screen, window) + ": " + cut.text + " in " + cut.place);
    EXPECT_THAT(cuts, testing::IsEmpty());
}

TEST(EveryScreen, CutsWordsInEachOfTheNamedPlaces) {
    std::array<bool, places.size()> needed{};
    for (const NamedScreen& screen : sample_screens())
        for (const Window& window : every_window())
            for (const auto& cut : kit::cut_texts(draw(screen, window)))
                for (std::size_t i = 0; i < places.size(); ++i)
                    needed[i] = needed[i] || cut.place.starts_with(places[i].begins);
    for (std::size_t i = 0; i < places.size(); ++i)
        EXPECT_TRUE(needed[i]) << places[i].begins << " need not be allowed";
}

}  // namespace
}  // namespace emberpath::screens
