// Prints the hashes of every story: eight heaters one by one, then as a pack. Built directly from the sources
// by tests/laws/hash_with, once for each compiler and level of optimisation.

#include <cstdio>

#include "tests/laws/story.hpp"

int main() {
    using namespace emberpath;
    using Pack = math::Pack<8, math::Baseline>;
    for (const laws::Story story : laws::stories) {
        std::printf("%s\n", laws::title(story));
        const std::uint64_t one = laws::combined(laws::scalar_story(story));
        const std::uint64_t pack = laws::combined(laws::pack_story<Pack>(story));
        std::printf("one by one %016llx\n", static_cast<unsigned long long>(one));
        std::printf("as a pack  %016llx\n", static_cast<unsigned long long>(pack));
    }
}
