#pragma once
/// The files of one scenario: read once each, hashed in the order read, laid over one another.

#include <filesystem>
#include <optional>
#include <vector>

#include "sim/math/hash.hpp"
#include "sim/scenario/values.hpp"

namespace emberpath::scenario {

/// What one file says, alone.
struct FileValues {
    Values values;
    std::filesystem::path path;
};

class Files {
  public:
    explicit Files(Problems& problems) : problems_(problems) {}

    /// The file the user named. Nothing when it cannot be read; the problem is reported.
    [[nodiscard]] std::optional<FileValues> read_first(const std::filesystem::path& path,
                                                       Section section);

    /// `upper`, which stands in the file `path`, over the files it builds on. Reports files that are
    /// missing or lead back to themselves; then, or when one cannot be read, gives nothing.
    [[nodiscard]] std::optional<Values> with_bases(const Values& upper,
                                                   const std::filesystem::path& path);

    [[nodiscard]] std::string hash() const { return hash_.text(); }

  private:
    [[nodiscard]] std::optional<Values> read(const std::filesystem::path& path, Section section,
                                             const Item* named_by);

    Problems& problems_;
    math::Hash hash_;
};

}  // namespace emberpath::scenario
