#include "ui/app/safe_file.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "sim/records/disk.hpp"

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

/// A file that is closed however its place is left.
class Descriptor {
  public:
    Descriptor(const fs::path& file, int how) : number_(::open(file.c_str(), how, 0644)) {}
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    [[nodiscard]] bool open() const { return number_ >= 0; }
    [[nodiscard]] int number() const { return number_; }

  private:
    int number_;
};

std::string why_not(const fs::path& file) {
    return file.string() + ": cannot be written: " + std::generic_category().message(errno) + ".";
}

}  // namespace

std::string write_safely(const fs::path& file, const std::string& text) {
    const fs::path fresh = file.string() + ".new";
    std::error_code problem;
    fs::create_directories(records::folder_of(file), problem);
    {
        const Descriptor out(fresh, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC);
        if (!out.open() || !records::write_all(out.number(), text) ||
            !records::bring_to_disk(out.number()))
            return why_not(fresh);
    }
    if (::rename(fresh.c_str(), file.c_str()) != 0) return why_not(file);
    records::bring_name_to_disk(file);
    return "";
}

}  // namespace emberpath::app
