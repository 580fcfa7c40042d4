// Proves that what is painted can be written down, compared and painted again.

#include "ui/kit/recording.hpp"

#include <gtest/gtest.h>

namespace emberpath::kit {
namespace {

Recording sample() {
    Recording r;
    r.push_clip({0, 0, 100, 50});
    r.box({1, 2, 30, 40}, Token::paper);
    line(r, {0.0, 0.04}, {10.25, -0.02}, {.width = 1.2, .ink = Token::hot, .dash = {14, 4}});
    r.fill(diamond({5, 5}, 2), Ink(Token::mark, 0.5));
    r.disc({3, 4}, 9.5, Token::mark);
    r.text({10, 20}, "2.75 kPa", {Face::bold, 13.0, Token::ink});
    r.pop_clip();
    return r;
}

TEST(Recordings, ReadAsOneCommandALine) {
    EXPECT_EQ(sample().as_text(),
              "clip 0,0 100x50\n"
              "box paper 1,2 30x40\n"
              "stroke hot 1.2 dash 14:4 0,0 10.3,0\n"
              "fill mark/50 5,3 7,5 5,7 3,5\n"
              "disc mark 3,4 9.5\n"
              "text ink bold 13 10,20 \"2.75 kPa\"\n"
              "unclip\n");
}

TEST(Recordings, AreEqualOnlyWhenEveryCommandIs) {
    Recording other = sample();
    EXPECT_EQ(sample(), other);
    other.disc({0, 0}, 1.0, Token::ink);
    EXPECT_FALSE(sample() == other);
}

TEST(Recordings, PlayBackAsTheyWereMade) {
    Recording again;
    sample().play(again);
    EXPECT_EQ(again, sample());
}

}  // namespace
}  // namespace emberpath::kit
