#include "sim/scenario/files.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <string_view>
#include <system_error>

namespace emberpath::scenario {

namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t longest_file = 1U << 20U;

/// Reading what is not a plain file (a folder, a device) may never end.
struct Bytes {
    std::string text;
    std::string trouble;  // empty when it could be read
};

Bytes bytes_of(const fs::path& path) {
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (!fs::exists(status)) return {{}, "no such file"};
    if (fs::is_directory(status)) return {{}, "a folder, not a file"};
    if (!fs::is_regular_file(status)) return {{}, "not a plain file"};
    if (fs::file_size(path, error) > longest_file) return {{}, "a file of more than 1 MB"};
    std::ifstream stream(path, std::ios::binary);
    if (!stream) return {{}, "a file that may not be read"};
    Bytes bytes;
    bytes.text.assign(std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>());
    if (stream.bad()) bytes.trouble = "a file that may not be read";
    return bytes;
}

/// Nearest name among the .toml files beside the missing one, with the folder as it was written.
std::string nearest_file(const fs::path& path, const fs::path& written) {
    std::vector<std::string> names;
    std::error_code error;
    const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
        if (at->path().extension() == ".toml") names.push_back(at->path().filename().string());
    std::sort(names.begin(), names.end());
    const std::string nearest = diagnostics::nearest_word(path.filename().string(), names);
    return nearest.empty() ? nearest : (written.parent_path() / nearest).generic_string();
}

/// A job without its [release] table, which speaks of the rest: what is said of the contents changes none.
std::string contents_of(const std::string& text) {
    std::string kept;
    bool inside = false;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find('\n', from), text.size() - 1) + 1;
        const std::string_view line(text.data() + from, end - from);
        if (line.starts_with('[')) inside = line.starts_with("[release]");
        if (!inside || line.find_first_not_of(" \t\r\n") == std::string_view::npos) kept += line;
        from = end;
    }
    const std::size_t last = kept.find_last_not_of(" \t\r\n");
    return last == std::string::npos ? "" : kept.substr(0, last + 1) + "\n";
}

fs::path real_path(const fs::path& path) {
    std::error_code error;
    const fs::path real = fs::weakly_canonical(path, error);
    return error ? path.lexically_normal() : real;
}

}  // namespace

std::optional<Values> Files::read(const fs::path& path, Section section, const Item* named_by) {
    Bytes bytes = bytes_of(path);
    if (!bytes.trouble.empty()) {
        if (named_by == nullptr) {
            const std::size_t source = problems_.add_source(path.generic_string(), {});
            problems_.add({source, 0, 0},
                          {"found " + bytes.trouble, "a scenario file", nearest_file(path, path)});
        } else {
            problems_.add(named_by->at, {named_by->key + ": found " + in_quotes(named_by->text) +
                                             ", " + bytes.trouble,
                                         "the name of a file, relative to the file that says it",
                                         nearest_file(path, named_by->text)});
        }
        return std::nullopt;
    }
    hash_.add(contents_of(bytes.text));
    const std::size_t source = problems_.add_source(path.generic_string(), std::move(bytes.text));
    const std::optional<Node> root = parse_document(source, problems_);
    if (!root) return std::nullopt;
    return read_values(*root, section, problems_);
}

std::optional<FileValues> Files::read_first(const fs::path& path, Section section) {
    std::optional<Values> values = read(path, section, nullptr);
    if (!values) return std::nullopt;
    return FileValues{std::move(*values), path};
}

std::optional<Values> Files::with_bases(const Values& upper, const fs::path& path) {
    std::vector<Values> layers{upper};
    std::vector<fs::path> seen{real_path(path)};
    fs::path from = path;
    bool complete = true;
    while (const Item* named = layers.back().written("builds_on")) {
        complete = named->good;
        if (!complete) break;
        const fs::path to = (from.parent_path() / named->text).lexically_normal();
        if (std::find(seen.begin(), seen.end(), real_path(to)) != seen.end()) {
            problems_.add(named->at, {named->key + ": found " + in_quotes(named->text) +
                                          ", which leads back to itself",
                                      "a file that does not build on this one",
                                      {}});
            return std::nullopt;
        }
        std::optional<Values> base = read(to, upper.section, named);
        if (!base) return std::nullopt;
        layers.push_back(std::move(*base));
        seen.push_back(real_path(to));
        from = to;
    }
    Values merged = layers.back();
    for (auto layer = layers.rbegin() + 1; layer != layers.rend(); ++layer)
        merged = laid_over(std::move(merged), *layer);
    if (!complete) return std::nullopt;
    return merged;
}

}  // namespace emberpath::scenario
