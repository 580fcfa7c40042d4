// Proves that drafts, settings and figures come back as they were, and are written as people read them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/records/record.hpp"
#include "ui/desktop/draft.hpp"
#include "ui/desktop/figures.hpp"
#include "ui/desktop/preferences.hpp"

namespace emberpath::desktop {
namespace {

using testing::ElementsAre;
using worksite::Quantity;

TEST(Drafts, ComeBackWithTheirLinesAndSigns) {
    const Draft draft{"2.3 kPa #4\nand \\ more", "done", "", "told\n"};
    EXPECT_EQ(draft_from(to_text(draft)), draft);
}

TEST(Drafts, AreEmptyWhenTheFileIsSomethingElse) {
    EXPECT_EQ(draft_from("no draft at all\n= =\n"), Draft{});
}

TEST(Drafts, CiteEachReadingOnce) {
    EXPECT_THAT(cited_in("#4, then #12 and #4 again; # is none"), ElementsAre(4, 12));
}

TEST(Drafts, BecomeTheActsThatHandThemIn) {
    const Draft draft{"low #2", "quoted\na pipe", "seen #3", "use the sink"};
    EXPECT_THAT(sentences_for(draft),
                ElementsAre("write because #2 #3",
                            "write done quoted a pipe Proved by: seen #3 Because: low #2",
                            "write told use the sink", "hand in"));
    EXPECT_THAT(sentences_for({}), ElementsAre("hand in"));
}

TEST(Drafts, SayWhenTheyAreTooLongToKeep) {
    Draft draft;
    draft.told = std::string(records::longest_sentence, 'a');
    EXPECT_EQ(problem_of(draft), "the text is 11 characters too long");
    draft.told = "short";
    EXPECT_EQ(problem_of(draft), "");
}

TEST(Settings, ComeBackAsTheyWere) {
    Preferences p;
    p.text_percent = 175;
    p.night = true;
    p.kilopascal = false;
    p.reduce_motion = true;
    p.sound = false;
    p.character_keys = false;
    p.keys = {{"record", "X"}, {"hand in", "Ctrl Enter"}};
    EXPECT_EQ(preferences_from(to_text(p)), p);
}

TEST(Settings, LeaveOutWhatCannotBeRead) {
    EXPECT_EQ(preferences_from("text size = 130\nkey record = no key\nnonsense\n"), Preferences{});
}

TEST(Settings, LeaveOutAKeyThatClashesAndSaySo) {
    Preferences p;
    p.keys = {{"record", "W"}};
    EXPECT_EQ(key_map_for(p).keys.caps("record"), "R");
    EXPECT_EQ(key_map_for(p).problems.size(), 1U);
    p.keys = {{"record", "X"}};
    EXPECT_EQ(key_map_for(p).keys.caps("record"), "X");
}

TEST(Figures, AreInKilopascalUnlessMillibarIsWished) {
    EXPECT_EQ(text_of(figure_of(Quantity::gas_inlet_pressure, 1840.0, true)), "1.84 kPa");
    EXPECT_EQ(text_of(figure_of(Quantity::gas_inlet_pressure, 1840.0, false)), "18.4 mbar");
    EXPECT_EQ(figure_of(Quantity::tap_temperature, 311.55, true).digits, "38.4");
    EXPECT_EQ(figure_of(Quantity::outlet_ohms, 1.0e7, true).digits, "over range");
}

TEST(Figures, ChangeTheirUnitInsideASentence) {
    EXPECT_EQ(in_wished_unit("from -0.05 kPa to 2.31 kPa.", false), "from -0.5 mbar to 23.1 mbar.");
    EXPECT_EQ(in_wished_unit("2.31 kPa", true), "2.31 kPa");
    EXPECT_EQ(in_wished_unit("shown in kPa", false), "shown in kPa");
}

}  // namespace
}  // namespace emberpath::desktop
