#pragma once
/// What the trainee has written so far, and how far the clock of the house had run. It lies beside the record until
/// the work is handed in, so that neither is lost when the program stops.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace emberpath::desktop {

struct Draft {
    std::string because, done, proved, told;
    std::int64_t clock = 0;  // tick reached; a record knows only when acts were done
    bool operator==(const Draft&) const = default;
};
[[nodiscard]] std::string to_text(const Draft& draft);
/// What cannot be read is left empty.
[[nodiscard]] Draft draft_from(std::string_view text);

/// Numbers cited as #4, each once, in the order written.
[[nodiscard]] std::vector<int> cited_in(std::string_view text);
[[nodiscard]] int words_in(std::string_view text);

/// The acts that hand it in, "hand in" last. Each fits what a record can keep.
[[nodiscard]] std::vector<std::string> sentences_for(const Draft& draft);
/// What keeps it from being handed in: "Done is 40 characters too long"; empty: nothing.
[[nodiscard]] std::string problem_of(const Draft& draft);

}  // namespace emberpath::desktop
