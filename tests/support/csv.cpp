#include "tests/support/csv.hpp"

namespace emberpath::csv {

namespace {

std::string quoted(const std::string& text) {
    if (text.find_first_of(",\"\n") == std::string::npos) return text;
    std::string out = "\"";
    for (const char c : text) {
        out += c;
        if (c == '"') out += c;
    }
    return out + "\"";
}

}  // namespace

std::vector<std::string> split(std::string_view line) {
    std::vector<std::string> fields(1);
    bool inside = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        if (inside && c == '"' && i + 1 < line.size() && line[i + 1] == '"') {
            fields.back() += '"';
            ++i;
        } else if (c == '"') {
            inside = !inside;
        } else if (c == ',' && !inside) {
            fields.emplace_back();
        } else if (c != '\r') {
            fields.back() += c;
        }
    }
    return fields;
}

std::string joined(std::span<const std::string> fields) {
    std::string line;
    for (const std::string& field : fields) {
        if (!line.empty() || &field != fields.data()) line += ',';
        line += quoted(field);
    }
    return line + '\n';
}

}  // namespace emberpath::csv
