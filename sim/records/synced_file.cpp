#include "sim/records/synced_file.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <system_error>

#include "sim/records/disk.hpp"
#include "sim/records/record.hpp"

namespace emberpath::records {

namespace {

[[noreturn]] void fail(const std::filesystem::path& file, const std::string& what) {
    throw CannotWrite(file.string() + ": " + what);
}

std::string system_reason() {
    return std::generic_category().message(errno);
}

}  // namespace

SyncedFile::SyncedFile(const std::filesystem::path& file, Open how) : file_(file) {
    const int creation = how == Open::new_file ? O_CREAT | O_EXCL : 0;
    descriptor_ = ::open(file.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC | creation, 0644);
    if (descriptor_ < 0 && errno == EEXIST)
        fail(file, "exists already; choose another name for the record");
    if (descriptor_ < 0) fail(file, "the record cannot be opened for writing: " + system_reason());
    if (::flock(descriptor_, LOCK_EX | LOCK_NB) != 0) {
        ::close(descriptor_);
        fail(file, "another program is writing this record; close it first");
    }
    if (how == Open::new_file) bring_name_to_disk(file);
}

SyncedFile::~SyncedFile() {
    ::close(descriptor_);
}

void SyncedFile::append(std::string_view text) {
    struct stat now = {};
    if (::fstat(descriptor_, &now) == 0 && now.st_nlink == 0)
        fail(file_, "the record was deleted while it was being written; what is done now is lost");
    if (!write_all(descriptor_, text))
        fail(file_, "the record cannot be written: " + system_reason());
    if (!bring_to_disk(descriptor_))
        fail(file_, "the record cannot be brought to disk: " + system_reason());
}

void SyncedFile::cut_to(std::uintmax_t bytes) {
    if (::ftruncate(descriptor_, static_cast<off_t>(bytes)) != 0)
        fail(file_, "the torn end cannot be cut off: " + system_reason());
}

}  // namespace emberpath::records
