#pragma once
/// What a check expected and what it got, written while the tests run: one file a subject in the build
/// folder. docs/validation.md is made from these files by tests/validation/report.cpp.

#include <fstream>
#include <string>
#include <string_view>

namespace emberpath::validation {

/// One line of the report. Texts, as they will be read; `unit` belongs to expected and got.
struct Result {
    std::string id;          // within its subject; not printed
    std::string quantity;    // what was checked
    std::string conditions;  // at which state
    std::string unit;
    std::string expected, got;
    std::string tolerance;
    std::string outcome;     // pass, fail, skipped, known miss, unaccounted
    std::string kind;        // check; plausibility (the value is recalled); note (nothing to pass)
    std::string checked_by;  // a function or test; for skipped rows the reason
    std::string source;
};

/// The columns of a results file, in order.
inline constexpr std::string_view columns =
    "id,quantity,conditions,unit,expected,got,tolerance,outcome,kind,checked_by,source\n";

/// Writes validation_results/SUBJECT.csv in the build folder, anew. An empty subject writes nothing.
class ResultsFile {
  public:
    explicit ResultsFile(std::string_view subject);
    void add(const Result& result);

  private:
    std::ofstream out_;
};

/// A number with `digits` significant digits, in the shortest form that has them.
[[nodiscard]] std::string number_text(double value, int digits = 9);

/// A number with that many decimals; a change shows its sign.
[[nodiscard]] std::string fixed_text(double value, int decimals);
[[nodiscard]] std::string change_text(double value, int decimals);

}  // namespace emberpath::validation
