#pragma once
/// docs/scenarios.md, made from the table of fields and the catalogue of causes.

#include <string>
#include <string_view>

namespace emberpath::scenario {

/// The whole page. tests/unit/scenario/manual_test.cpp compares it with the file on disk.
[[nodiscard]] std::string manual();

/// The complete example of the page, as it would stand in scenarios/jobs.
[[nodiscard]] std::string_view example_job();

}  // namespace emberpath::scenario
