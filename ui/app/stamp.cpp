#include "ui/app/stamp.hpp"

namespace emberpath::app {

namespace {

namespace fs = std::filesystem;

void add(FileStamp& stamp, const fs::path& file) {
    std::error_code missing, unread;
    const auto written = fs::last_write_time(file, missing);
    const auto length = fs::file_size(file, unread);
    if (!missing && !unread) stamp[file.string()] = {written, length};
}

}  // namespace

FileStamp stamp_of_job(const fs::path& job_file) {
    FileStamp stamp;
    add(stamp, job_file);
    for (const char* folder : {"sites", "heaters", "rules"}) {
        std::error_code ignored;
        for (const auto& entry :
             fs::directory_iterator(job_file.parent_path() / ".." / folder, ignored))
            if (entry.path().extension() == ".toml") add(stamp, entry.path());
    }
    return stamp;
}

}  // namespace emberpath::app
