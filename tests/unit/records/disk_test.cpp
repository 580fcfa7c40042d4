// Proves that all of a text is taken, that what cannot be brought to disk is told from what need not be, and
// that every file has a folder.

#include "sim/records/disk.hpp"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <array>
#include <thread>

#include "tests/unit/records/sample.hpp"

namespace emberpath::records {
namespace {

TEST(Disk, TakesMoreThanAPipeHoldsAtOnce) {
    std::array<int, 2> pipe{};
    ASSERT_EQ(::pipe(pipe.data()), 0);
    const std::string text(1 << 20, 'a');
    std::size_t read = 0;
    std::thread reader([&] {
        std::array<char, 4096> part{};
        for (ssize_t n = 0; (n = ::read(pipe[0], part.data(), part.size())) > 0;)
            read += static_cast<std::size_t>(n);
    });
    EXPECT_TRUE(write_all(pipe[1], text));
    EXPECT_TRUE(bring_to_disk(pipe[1])) << "a pipe has no disk to lose it from";
    ::close(pipe[1]);
    reader.join();
    ::close(pipe[0]);
    EXPECT_EQ(read, text.size());
}

TEST(Disk, SaysWhenNothingIsTakenOrBroughtThere) {
    constexpr int closed = -1;
    EXPECT_FALSE(write_all(closed, "words"));
    EXPECT_FALSE(bring_to_disk(closed));
    EXPECT_TRUE(write_all(closed, "")) << "there is nothing to be taken";
}

TEST(Disk, KnowsTheFolderOfEveryName) {
    EXPECT_EQ(folder_of("record.jsonl"), ".");
    EXPECT_EQ(folder_of("deep/down/record.jsonl"), "deep/down");
}

}  // namespace
}  // namespace emberpath::records
