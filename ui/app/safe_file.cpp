#include "ui/app/safe_file.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <string_view>
#include <system_error>

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

/// A descriptor that is closed however its place is left.
class Descriptor {
  public:
    Descriptor(const fs::path& file, int how) : number_(::open(file.c_str(), how, 0644)) {}
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    [[nodiscard]] bool open() const { return number_ >= 0; }
    [[nodiscard]] bool write_all(std::string_view text) const {
        while (!text.empty()) {
            const auto written = ::write(number_, text.data(), text.size());
            if (written < 0 && errno == EINTR) continue;
            if (written < 0) return false;
            text.remove_prefix(static_cast<std::size_t>(written));
        }
        return true;
    }
    /// Some file systems cannot sync; they have nothing to lose in a power cut.
    [[nodiscard]] bool sync() const {
        return ::fsync(number_) == 0 || errno == EINVAL || errno == EROFS;
    }

  private:
    int number_;
};

std::string why_not(const fs::path& file) {
    return file.string() + ": cannot be written: " + std::generic_category().message(errno) + ".";
}

}  // namespace

std::string write_safely(const fs::path& file, const std::string& text) {
    const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
    const fs::path fresh = file.string() + ".new";
    std::error_code problem;
    fs::create_directories(folder, problem);
    {
        const Descriptor out(fresh, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC);
        if (!out.open() || !out.write_all(text) || !out.sync()) return why_not(fresh);
    }
    if (::rename(fresh.c_str(), file.c_str()) != 0) return why_not(file);
    const Descriptor names(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (names.open()) (void)names.sync();
    return "";
}

}  // namespace emberpath::app
