#include "sim/records/disk.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>

namespace emberpath::records {

bool write_all(int descriptor, std::string_view text) {
    while (!text.empty()) {
        const auto written = ::write(descriptor, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

bool bring_to_disk(int descriptor) {
    return ::fsync(descriptor) == 0 || errno == EINVAL || errno == EROFS;
}

std::filesystem::path folder_of(const std::filesystem::path& file) {
    return file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
}

void bring_name_to_disk(const std::filesystem::path& file) {
    const int descriptor = ::open(folder_of(file).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return;
    (void)bring_to_disk(descriptor);
    ::close(descriptor);
}

}  // namespace emberpath::records
