// The keys as docs/window.md prints them.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

namespace {

std::string place_words(const std::string& where) {
    if (where.empty()) return "everywhere";
    if (const auto space = where.find(' '); space != std::string::npos)
        return place_words(where.substr(0, space)) + ", " + place_words(where.substr(space + 1));
    if (where == "dialog") return "in a list in front";
    if (where == "choose") return "in the list of jobs";
    return where == "job" ? "at the house"
                          : "in the " + (where == "authoring" ? "author's preview" : where);
}

}  // namespace

std::string key_page() {
    std::string page = "| key | where | does |\n|---|---|---|\n";
    for (const kit::Binding& b : key_table())
        page += "| `" + b.chord + "` | " + place_words(b.where) + " | " + b.words + " |\n";
    return page;
}

}  // namespace emberpath::screens
