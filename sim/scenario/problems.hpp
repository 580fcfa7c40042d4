#pragma once
/// The files of one scenario and every problem found in them so far.

#include <compare>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "sim/diagnostics/diagnostic.hpp"

namespace emberpath::scenario {

/// Where something stands: which file, in the order they were read, then line and column from 1.
/// Line 0 means the whole file. Columns count characters, not bytes.
struct Position {
    std::size_t source = 0;
    int line = 0;
    int column = 0;
    auto operator<=>(const Position&) const = default;
};

/// What is wrong with what was written, and what would be right.
struct Remark {
    std::string found;
    std::string expected;
    std::string suggestion;
};

class Problems {
  public:
    /// A file that was read; a byte order mark is dropped. Returns its index.
    std::size_t add_source(std::string name, std::string text);
    [[nodiscard]] const std::string& text(std::size_t source) const {
        return sources_[source].text;
    }
    [[nodiscard]] const std::string& name(std::size_t source) const {
        return sources_[source].name;
    }
    /// The text of a line without its end; empty when there is no such line.
    [[nodiscard]] std::string_view line(const Position& at) const;

    /// The same problem at the same place is kept once: a site file may be reached twice.
    void add(const Position& at, Remark remark);
    /// In file order; of one place, in the order found.
    [[nodiscard]] std::vector<diagnostics::Diagnostic> sorted() const;
    [[nodiscard]] bool empty() const { return problems_.empty(); }

  private:
    struct Source {
        std::string name;
        std::string text;
    };
    struct Problem {
        Position at;
        Remark remark;
    };
    std::vector<Source> sources_;
    std::vector<Problem> problems_;
};

/// `"text"` with quotation marks; long text is cut with dots.
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace emberpath::scenario
