// Proves that houses which have shown the same look and sound the same, whatever is wrong with them.
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

using faults::Cause;

std::string painting(const kit::Frame& frame) {
    std::string text = frame.tree.as_text();
    for (const auto& layer : frame.layers) text += layer.as_text();
    return text;
}

/// All the trainee was shown: what acts said, and what could be seen without one.
std::string shown_to(const Person& person) {
    const auto& attempt = person.host.at_work->attempt();
    std::string text = worksite::all_shown(attempt);
    const auto sight = attempt.sight();
    for (const auto& figure : sight.figures)
        text += worksite::text_of(figure.quantity, figure.value) + "|";
    return text + std::to_string(sight.display_word) + sight.condition;
}

struct Pair {
    const char* name;
    Cause one, other;
    const char* tells_apart;  // an act after which they may differ
};
std::ostream& operator<<(std::ostream& out, const Pair& pair) {
    return out << pair.name;
}

class SameSoFar : public testing::TestWithParam<Pair> {};

TEST_P(SameSoFar, GivesTheSameTreePaintingAndSound) {
    Person one(worksite::test_job({worksite::fault(GetParam().one, 0.5)}));
    Person other(worksite::test_job({worksite::fault(GetParam().other, 0.5)}));
    one.enter_house();
    other.enter_house();
    int compared = 0;
    for (const char* words :
         {"ask about when", "look at display", "P1", "put on gloves", "shut gas at heater",
          "open test point inlet", "attach manometer to inlet", "look at room", "wait 10 s"}) {
        one.say(words);
        other.say(words);
        if (shown_to(one) != shown_to(other)) break;
        ++compared;
        ASSERT_EQ(painting(one.program.last_frame()), painting(other.program.last_frame()))
            << "after \"" << words << "\"";
        ASSERT_EQ(one.program.heard(), other.program.heard());
        for (int i = 0; i < 4; ++i) {
            one.program.elapse(0.05);
            other.program.elapse(0.05);
        }
        one.look();
        other.look();
        ASSERT_EQ(painting(one.program.last_frame()), painting(other.program.last_frame()));
    }
    EXPECT_GE(compared, 8) << "the houses were told apart before anything was measured";
}

TEST_P(SameSoFar, DiffersOnceAReadingDoes) {
    Person one(worksite::test_job({worksite::fault(GetParam().one, 1.0)}));
    Person other(worksite::test_job({worksite::fault(GetParam().other, 1.0)}));
    one.enter_house();
    other.enter_house();
    for (const char* words : {"open bath tap fully", "wait 1 min", GetParam().tells_apart}) {
        one.say(words);
        other.say(words);
    }
    ASSERT_NE(shown_to(one), shown_to(other));
    EXPECT_NE(painting(one.program.last_frame()), painting(other.program.last_frame()));
}

INSTANTIATE_TEST_SUITE_P(
    Causes, SameSoFar,
    testing::Values(Pair{"PipeAndRegulator", Cause::gas_pipe_restriction, Cause::regulator_droop,
                         "measure temperature at bath tap"},
                    Pair{"PipeAndSoot", Cause::gas_pipe_restriction, Cause::exchanger_sooted,
                         "measure temperature at bath tap"},
                    Pair{"NothingAndSoot", Cause::no_fault, Cause::exchanger_sooted,
                         "measure temperature at bath tap"}),
    [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace emberpath::desktop
