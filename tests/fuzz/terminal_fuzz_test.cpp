// Proves that nothing typed at the terminal crashes the program or is written into a record unread, and
// that whatever was typed, the record verifies.

#include <gtest/gtest.h>

#include "sim/math/random.hpp"
#include "tests/unit/ui/program.hpp"

namespace emberpath::app {
namespace {

std::string random_bytes(math::Random& random, std::size_t most) {
    std::string text;
    for (auto left = random.next() % most; left > 0; --left) {
        const char byte = static_cast<char>(random.next() & 0xffU);
        text += byte == '\n' ? ' ' : byte;
    }
    return text;
}

/// A sentence with one or two letters changed.
std::string misspelt(std::string sentence, math::Random& random) {
    for (auto slips = 1 + random.next() % 2; slips > 0; --slips)
        sentence[static_cast<std::size_t>(random.next() % sentence.size())] =
            static_cast<char>('a' + random.next() % 26);
    return sentence;
}

const std::vector<std::string> sentences = {"look at display",
                                            "listen",
                                            "open kitchen tap",
                                            "close kitchen tap",
                                            "wait 20 s",
                                            "measure flow at kitchen tap",
                                            "press reset",
                                            "readings",
                                            "services",
                                            "log",
                                            "help manometer",
                                            "causes",
                                            "time",
                                            "write because #1",
                                            "suspect no_fault",
                                            "switch power off",
                                            "test for dead",
                                            "take cover off",
                                            "tell customer it's fine; \"really\""};

TEST(TerminalFuzz, WhateverIsTypedTheRecordVerifies) {
    math::Random random(7);
    for (int round = 0; round < 12; ++round) {
        Program program;
        std::string typed;
        for (int line = 0; line < 60; ++line) {
            const auto& sentence =
                sentences[static_cast<std::size_t>(random.next() % sentences.size())];
            const auto kind = random.next() % 3;
            typed += kind == 0   ? random_bytes(random, 200)
                     : kind == 1 ? misspelt(sentence, random)
                                 : sentence;
            typed += '\n';
        }
        const auto record = program.file("r.jsonl");
        ASSERT_EQ(program({"work", "tanager", "--record", record}, typed, round % 2 == 0), 0)
            << program.talk;
        ASSERT_EQ(program({"verify", record}), 0) << program.output;
    }
}

TEST(TerminalFuzz, ArgumentsOfAnyShapeAreAnswered) {
    math::Random random(8);
    const std::vector<std::string> words = {
        "work",   "debrief", "verify", "check",   "preview", "trace", "list", "causes",    "--seed",
        "--taps", "-1",      "",       "tanager", "--",      "/",     "0 1",  "--assessed"};
    for (int round = 0; round < 300; ++round) {
        Program program;
        std::vector<std::string> arguments;
        for (auto left = 1 + random.next() % 4; left > 0; --left)
            arguments.push_back(words[static_cast<std::size_t>(random.next() % words.size())]);
        EXPECT_LE(program(arguments, "quit\n", true), 2) << testing::PrintToString(arguments);
    }
}

TEST(TerminalFuzz, AVeryLongLineIsAnsweredInReason) {
    Program program;
    EXPECT_EQ(program({"work", "tanager", "--record", program.file("r.jsonl")},
                      std::string(1000000, 'a') + "\nquit\n", true),
              0);
    EXPECT_LT(program.output.size(), 20000U);
}

}  // namespace
}  // namespace emberpath::app
