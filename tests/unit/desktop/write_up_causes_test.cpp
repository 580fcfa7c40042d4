// Proves that the window's write-up takes a second cause beside the first, or one that no reading tells from it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"
#include "ui/desktop/program.hpp"

namespace emberpath::desktop {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

struct Writer : Person {
    Writer() {
        enter_house();
        press(kit::Key::f2);
        ask_for({}, "flue_blocked");
    }
    /// Opens the list, says how the next one stands, and takes it.
    void ask_for(const std::string& as, const std::string& word) {
        click("form.cause");
        if (!as.empty()) click("cause.as." + as);
        click("cause." + word);
    }
    [[nodiscard]] const worksite::WriteUp& written() const {
        return host.at_work->attempt().write_up();
    }
};

TEST(WrittenCauses, StandBesideTheFirstWhereBothWereThere) {
    Writer writer;
    writer.ask_for("as-well", "igniter_failed");
    EXPECT_EQ(writer.written().cause, "flue_blocked");
    EXPECT_THAT(writer.written().also, ElementsAre("igniter_failed"));
    EXPECT_THAT(writer.node("form.cause")->value, HasSubstr(" and igniter failed"));
}

TEST(WrittenCauses, StandInPlaceOfTheFirstWhereNoReadingTells) {
    Writer writer;
    writer.ask_for("or-this", "igniter_failed");
    EXPECT_THAT(writer.written().possible, ElementsAre("igniter_failed"));
    EXPECT_THAT(writer.node("form.cause")->value, HasSubstr(" or igniter failed"));
}

TEST(WrittenCauses, BeginAnewWithAnotherFirst) {
    Writer writer;
    writer.ask_for("as-well", "igniter_failed");
    writer.ask_for({}, "wind_gust");
    EXPECT_EQ(writer.written().cause, "wind_gust");
    EXPECT_TRUE(writer.written().also.empty());
}

TEST(WrittenCauses, CanBeGivenAConfidenceThatStandsBesideThem) {
    Writer writer;
    EXPECT_EQ(writer.node("form.confidence")->value, "how sure?");
    writer.click("form.confidence");
    writer.click("confidence.80");
    ASSERT_TRUE(writer.written().confidence.has_value());
    EXPECT_DOUBLE_EQ(*writer.written().confidence, 0.8);
    EXPECT_EQ(writer.node("form.confidence")->value, "80 % sure");
    EXPECT_EQ(writer.node("confidence.80"), nullptr);  // the list is closed again
}

TEST(WrittenCauses, OfferNoSecondBeforeThereIsAFirst) {
    Person person;
    person.enter_house();
    person.press(kit::Key::f2);
    person.click("form.cause");
    EXPECT_EQ(person.node("cause.as.as-well"), nullptr);
}

}  // namespace
}  // namespace emberpath::desktop
