#pragma once
/// A file that is appended to, locked against other writers, and on disk when append() returns.

#include <cstdint>
#include <filesystem>
#include <string_view>

namespace emberpath::records {

class SyncedFile {
  public:
    enum class Open { new_file, existing };
    /// Throws CannotWrite (record.hpp) with a sentence a user can act on.
    SyncedFile(const std::filesystem::path& file, Open how);
    ~SyncedFile();
    SyncedFile(const SyncedFile&) = delete;
    SyncedFile& operator=(const SyncedFile&) = delete;

    void append(std::string_view text);
    void cut_to(std::uintmax_t bytes);

  private:
    std::filesystem::path file_;
    int descriptor_ = -1;
};

}  // namespace emberpath::records
