// Proves that no file, however spoiled, crashes the reader of records or passes for a good record.

#include <gtest/gtest.h>

#include "sim/math/random.hpp"
#include "sim/records/line.hpp"
#include "sim/records/record.hpp"
#include "tests/unit/records/sample.hpp"

namespace emberpath::records {
namespace {

std::size_t up_to(math::Random& random, std::size_t limit) {
    return static_cast<std::size_t>(random.next() % limit);
}

/// One random injury: a byte changed, taken out, put in, or a stretch repeated.
std::string injured(std::string text, math::Random& random) {
    const std::size_t at = up_to(random, text.size());
    switch (random.next() % 4) {
        case 0:
            text[at] = static_cast<char>(random.next() & 0xffU);
            break;
        case 1:
            text.erase(at, 1 + up_to(random, 30));
            break;
        case 2:
            text.insert(at, 1, static_cast<char>(random.next() & 0xffU));
            break;
        default:
            text.insert(at, text.substr(up_to(random, text.size()), 1 + up_to(random, 200)));
    }
    return text;
}

TEST(RecordFuzz, AnInjuredRecordIsNeverTakenForAnotherGoodOne) {
    const sample::Folder folder;
    const auto file = sample::closed_record(folder);
    const std::string good = sample::contents(file);
    math::Random random(20260101);
    for (int round = 0; round < 4000; ++round) {
        std::string bad = good;
        for (auto injuries = 1 + random.next() % 3; injuries > 0; --injuries)
            bad = injured(bad, random);
        sample::write(file, bad);
        const Record record = read(file);
        if (!record.good() || !record.notes.empty() || bad == good) continue;
        // What is left to pass is a record cut at a line end: a shorter but true one.
        ASSERT_TRUE(good.starts_with(bad) || bad + "\n" == good) << "round " << round;
    }
}

TEST(RecordFuzz, ObjectsOfAnyShapeAreReportedNotBelieved) {
    const sample::Folder folder;
    const auto file = folder.file("shape.jsonl");
    const std::vector<std::string> shapes = {
        "{}",
        "[]",
        "null",
        "7",
        "\"act\"",
        R"({"act":{}})",
        R"({"act":1e300,"tick":1,"sentence":""})",
        R"({"result":-1})",
        R"({"closed":[]})",
        R"({"act":1,"tick":9223372036854775808,"sentence":1})",
        R"({"result":1,"tick":1,"shown":{},"readings":[[]],"state":null})",
        R"({"closed":true,"scores":[1],"gates_met":0})",
        R"({"record":"emberpath","schema":1e99})"};
    for (const auto& first : shapes)
        for (const auto& second : shapes) {
            const auto chain = next_chain(first_chain, first);
            sample::write(
                file, seal(first, chain) + "\n" + seal(second, next_chain(chain, second)) + "\n");
            EXPECT_FALSE(read(file).good()) << first << " then " << second;
        }
}

TEST(RecordFuzz, DeepNestingAndLongLinesAreSurvived) {
    const sample::Folder folder;
    const auto file = folder.file("deep.jsonl");
    const std::string deep = std::string(200000, '[') + std::string(200000, ']');
    sample::write(file, deep + "\n" + R"({"a":)" + deep + "}\n" + std::string(3000000, 'x') + "\n");
    const Record record = read(file);
    EXPECT_EQ(record.problems.size(), 3U);
    for (const auto& problem : record.problems) EXPECT_LT(problem.source_line.size(), 200U);
}

}  // namespace
}  // namespace emberpath::records
