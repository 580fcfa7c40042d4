// Proves that docs/scenarios.md is what the program would write, and that its example loads.
// To rewrite the page after changing the tables: EMBERPATH_REGENERATE=1 tests/unit_scenario.
#include "sim/scenario/manual.hpp"

#include <cstdlib>
#include <iterator>

#include "sim/faults/faults.hpp"
#include "sim/scenario/fields.hpp"
#include "tests/unit/scenario/written.hpp"

namespace emberpath::scenario {
namespace {

const std::filesystem::path source_folder = EMBERPATH_SOURCE_DIR;

TEST(Manual, PageOnDiskIsTheGeneratedText) {
    const std::filesystem::path page = source_folder / "docs/scenarios.md";
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) {
        std::filesystem::create_directories(page.parent_path());
        std::ofstream(page, std::ios::binary) << manual();
    }
    std::ifstream stream(page, std::ios::binary);
    ASSERT_TRUE(stream) << page;
    const std::string text((std::istreambuf_iterator<char>(stream)), {});
    EXPECT_TRUE(text == manual()) << "docs/scenarios.md is out of date; EMBERPATH_REGENERATE=1 "
                                     "rewrites it";
}

TEST(Manual, ExampleLoadsWithoutProblems) {
    const Folder folder;
    std::filesystem::copy(source_folder / "scenarios/heaters", folder.path() / "heaters");
    const Loaded loaded = load(folder.write("jobs/sample.toml", example_job()));
    EXPECT_EQ(problems_of(loaded), "");
    EXPECT_EQ(loaded.job.faults.size(), 1U);
}

TEST(Manual, NamesEveryKeyAndEveryCause) {
    const std::string text = manual();
    for (const Field& field : fields())
        EXPECT_NE(text.find("| `" + std::string(field.name) + "` |"), std::string::npos)
            << field.name;
    for (const faults::CauseInfo& cause : faults::catalogue())
        EXPECT_NE(text.find("| `" + std::string(cause.word) + "` |"), std::string::npos)
            << cause.word;
}

}  // namespace
}  // namespace emberpath::scenario
