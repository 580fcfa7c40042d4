#include "ui/app/program_log.hpp"

#include <spdlog/sinks/basic_file_sink.h>
#include <spdlog/spdlog.h>

#include "ui/app/context.hpp"

namespace emberpath::app {

namespace {

constexpr const char* name = "emberpath";

}  // namespace

void open_log(const std::filesystem::path& file) {
    try {
        if (file.has_parent_path()) std::filesystem::create_directories(file.parent_path());
        spdlog::drop(name);
        const auto logger = spdlog::basic_logger_mt(name, file.string());
        logger->set_pattern("%Y-%m-%d %H:%M:%S.%e %l %v");
        logger->flush_on(spdlog::level::info);
    } catch (const std::exception& problem) {
        throw BadInput(file.string() + ": the log cannot be written: " + problem.what());
    }
}

void log_event(std::string_view what) {
    if (const auto logger = spdlog::get(name)) logger->info("{}", what);
}

void log_fault(std::string_view what) {
    if (const auto logger = spdlog::get(name)) logger->error("{}", what);
}

}  // namespace emberpath::app
