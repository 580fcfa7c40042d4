// Proves that the table of fields agrees with itself: every default and example is a value it accepts.
#include "sim/scenario/fields.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <string>

namespace emberpath::scenario {
namespace {

TEST(Fields, AreGroupedBySection) {
    std::size_t counted = 0;
    for (std::size_t at = 0; at < section_count; ++at)
        counted += fields_of(static_cast<Section>(at)).size();
    EXPECT_EQ(counted, fields().size());
}

TEST(Fields, HaveOneNameEach) {
    std::set<std::pair<Section, std::string_view>> seen;
    for (const Field& field : fields())
        EXPECT_TRUE(seen.insert({field.section, field.name}).second) << field.name;
}

TEST(Fields, AreExplainedInASentence) {
    for (const Field& field : fields()) {
        EXPECT_FALSE(field.help.empty()) << field.name;
        EXPECT_TRUE(field.help.ends_with('.')) << field.name;
        EXPECT_EQ(field.help.find('|'), std::string_view::npos) << field.name;
    }
}

TEST(Fields, StateTheirRangeInAUnitThatExists) {
    for (const Field& field : fields()) {
        if (field.kind != Kind::quantity && field.kind != Kind::shares) continue;
        EXPECT_EQ(unit_named(field.dimension, field.unit).symbol, field.unit) << field.name;
        EXPECT_LT(field.least, field.greatest) << field.name;
    }
}

TEST(Fields, AcceptTheirOwnExamplesAndDefaults) {
    for (const Field& field : fields()) {
        if (field.kind != Kind::quantity) continue;
        const units::Unit& unit = unit_named(field.dimension, field.unit);
        const double least = to_si(unit, field.least);
        const double greatest = to_si(unit, field.greatest);
        EXPECT_TRUE(units::parse(field.dimension, field.example, least, greatest).good())
            << field.name << " " << field.example;
        if (field.fallback == required || field.fallback == optional) continue;
        EXPECT_TRUE(units::parse(field.dimension, field.fallback, least, greatest).good())
            << field.name << " " << field.fallback;
    }
}

TEST(Fields, ChoicesHoldTheirExample) {
    for (const Field& field : fields()) {
        if (field.kind != Kind::word) continue;
        const std::string words = "|" + std::string(field.words) + "|";
        EXPECT_NE(words.find("|" + std::string(field.example) + "|"), std::string::npos)
            << field.name;
    }
}

TEST(Fields, ExpectationsUseTheUnitOfTheAuthor) {
    const Field& pressure = *find_field(Section::site, "mains_water_pressure");
    EXPECT_EQ(expectation(pressure), "a pressure from 100 to 1000 kPa, such as \"400 kPa\"");
    EXPECT_EQ(expectation(pressure, unit_named(units::Dimension::pressure, "bar")),
              "a pressure from 1 to 10 bar, such as \"400 kPa\"");
    const Field& water = *find_field(Section::site, "inlet_water");
    EXPECT_EQ(expectation(water, unit_named(units::Dimension::temperature, "K")),
              "a temperature from 274.15 to 308.15 K, such as \"14 °C\"");
}

TEST(Fields, UnknownNamesAreNotFound) {
    EXPECT_EQ(find_field(Section::tap, "presure"), nullptr);
    EXPECT_EQ(find_field(Section::tap, "arrival"), nullptr);
}

}  // namespace
}  // namespace emberpath::scenario
