#pragma once
/// What it takes for bytes to outlive a power cut, for open descriptors and for names. Where one of these
/// fails, errno says why.

#include <filesystem>
#include <string_view>

namespace emberpath::records {

/// All of it, however often the system takes only a part. False: not all was taken.
[[nodiscard]] bool write_all(int descriptor, std::string_view text);

/// What was written is on disk when this returns true. Pipes and file systems in memory cannot be brought to
/// disk; they have nothing to lose in a power cut, and count as done.
[[nodiscard]] bool bring_to_disk(int descriptor);

/// A new or changed name is only safe once its folder is on disk too. A folder that cannot be opened for
/// this is left alone: the file itself is on disk.
void bring_name_to_disk(const std::filesystem::path& file);

/// Where the file's name stands: "." for a name without a folder.
[[nodiscard]] std::filesystem::path folder_of(const std::filesystem::path& file);

}  // namespace emberpath::records
