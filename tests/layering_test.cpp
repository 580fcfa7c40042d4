// Proves that the folders are layers: every #include stays within what CMakeLists.txt allows, outside
// libraries stay in their one layer, and the simulation reads no clock and no platform mathematics.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using testing::IsEmpty;

const fs::path root = EMBERPATH_SOURCE_DIR;

std::string contents(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

struct Layer {
    std::string name;
    std::string folder;
    std::set<std::string> sees;
};

std::set<std::string> words_after(const std::string& text, const std::string& keyword) {
    std::istringstream in(text);
    std::set<std::string> found;
    bool inside = false;
    for (std::string word; in >> word;) {
        if (word == "SEES" || word == "USES" || word == "DIR")
            inside = word == keyword;
        else if (inside)
            found.insert(word);
    }
    return found;
}

/// The layers as CMakeLists.txt declares them, by folder.
std::map<std::string, Layer> declared_layers(const std::string& cmake) {
    static const std::regex call(R"((?:^|\n)emberpath_layer\((\w+)([^)]*)\))");
    std::map<std::string, Layer> layers;
    for (auto it = std::sregex_iterator(cmake.begin(), cmake.end(), call);
         it != std::sregex_iterator(); ++it) {
        Layer layer{(*it)[1], "sim/" + (*it)[1].str(), words_after((*it)[2], "SEES")};
        const auto folder = words_after((*it)[2], "DIR");
        if (!folder.empty()) layer.folder = *folder.begin();
        const std::set<std::string> open_to_all = {"math", "units", "diagnostics"};
        if (!open_to_all.contains(layer.name))
            layer.sees.insert(open_to_all.begin(), open_to_all.end());
        layer.sees.insert(layer.name);
        layers[layer.folder] = layer;
    }
    return layers;
}

std::vector<fs::path> sources_under(const std::vector<std::string>& folders) {
    std::vector<fs::path> files;
    for (const auto& folder : folders) {
        if (!fs::exists(root / folder)) continue;
        for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
            const auto extension = entry.path().extension();
            if (extension == ".hpp" || extension == ".cpp" || extension == ".inc")
                files.push_back(fs::relative(entry.path(), root));
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

std::vector<std::string> includes_of(const std::string& text) {
    static const std::regex line(R"((?:^|\n)\s*#\s*include\s*[<"]([^>"]+)[>"])");
    std::vector<std::string> found;
    for (auto it = std::sregex_iterator(text.begin(), text.end(), line);
         it != std::sregex_iterator(); ++it)
        found.push_back((*it)[1]);
    return found;
}

/// Comments and string literals blanked, so that prose may mention what code may not use.
std::string code_only(const std::string& text) {
    static const std::regex prose(R"re(//[^\n]*|"(?:[^"\\\n]|\\.)*")re");
    return std::regex_replace(text, prose, " ");
}

/// What is wrong with one file's includes, given the layers; empty when nothing is.
std::vector<std::string> forbidden_includes(const std::map<std::string, Layer>& layers,
                                            const fs::path& file, const std::string& text) {
    const auto own = layers.find(file.parent_path().generic_string());
    if (own == layers.end()) return {file.string() + ": is in no declared layer"};
    std::vector<std::string> wrong;
    for (const auto& include : includes_of(text)) {
        if (!include.starts_with("sim/") && !include.starts_with("ui/")) continue;
        const auto target = layers.find(fs::path(include).parent_path().generic_string());
        if (target == layers.end() || !own->second.sees.contains(target->second.name))
            wrong.push_back(file.string() + ": may not include " + include);
    }
    return wrong;
}

bool is_within(const fs::path& file, const std::string& folder) {
    return file.generic_string().starts_with(folder + "/");
}

TEST(Layering, EveryIncludeIsAllowedByTheBuild) {
    const auto layers = declared_layers(contents(root / "CMakeLists.txt"));
    ASSERT_GE(layers.size(), 16U);
    const auto files = sources_under({"sim", "ui"});
    ASSERT_GE(files.size(), 40U);
    std::vector<std::string> wrong;
    for (const auto& file : files)
        for (auto& problem : forbidden_includes(layers, file, contents(root / file)))
            wrong.push_back(std::move(problem));
    EXPECT_THAT(wrong, IsEmpty());
}

TEST(Layering, AnIncludeAgainstTheRuleIsFound) {
    const auto layers = declared_layers(
        "emberpath_layer(plant SEES properties)\nemberpath_layer(properties)\n"
        "emberpath_layer(views DIR ui/views SEES worksite)\n");
    EXPECT_THAT(
        forbidden_includes(layers, "sim/plant/a.cpp", "#include \"sim/properties/b.hpp\"\n"),
        IsEmpty());
    EXPECT_THAT(
        forbidden_includes(layers, "sim/properties/a.cpp", "#include \"sim/plant/b.hpp\"\n"),
        testing::ElementsAre("sim/properties/a.cpp: may not include sim/plant/b.hpp"));
    EXPECT_THAT(forbidden_includes(layers, "ui/views/a.cpp", "#  include <sim/plant/b.hpp>\n"),
                testing::SizeIs(1));
    EXPECT_THAT(forbidden_includes(layers, "sim/stray/a.cpp", ""), testing::SizeIs(1));
}

TEST(Layering, AFolderIsBuiltOnlyOnLayersDeclaredBeforeIt) {
    const std::string cmake = contents(root / "CMakeLists.txt");
    for (const auto& [folder, layer] : declared_layers(cmake))
        for (const auto& seen : layer.sees)
            EXPECT_LE(cmake.find("\nemberpath_layer(" + seen),
                      cmake.find("\nemberpath_layer(" + layer.name))
                << layer.name << " sees " << seen << ", which comes after it";
}

TEST(Layering, EachOutsideLibraryHasOneHome) {
    struct Home {
        const char *pattern, *folder;
    };
    const std::vector<Home> homes = {{"toml\\+\\+|toml\\.hpp", "sim/scenario"},
                                     {"spdlog/", "ui/app"},
                                     {"CLI/", "ui/app"},
                                     {"nlohmann/", "sim/records"},
                                     {"SFML/", "ui/window"},
                                     {"boost/", "sim/plant"}};
    for (const auto& file : sources_under({"sim", "ui"}))
        for (const auto& include : includes_of(contents(root / file)))
            for (const auto& home : homes)
                if (std::regex_search(include, std::regex(home.pattern))) {
                    EXPECT_TRUE(is_within(file, home.folder)) << file << " includes " << include;
                }
}

TEST(Layering, HeadersDoNotLetTheJsonLibraryOut) {
    for (const auto& file : sources_under({"sim", "ui"}))
        if (file.extension() == ".hpp") {
            EXPECT_EQ(contents(root / file).find("nlohmann"), std::string::npos) << file;
        }
}

TEST(Layering, TheSimulationReadsNoClockAndDrawsNoLibraryRandomNumbers) {
    const std::set<std::string> forbidden = {"chrono", "ctime",  "time.h", "random",
                                             "thread", "future", "locale"};
    const std::set<std::string> unordered = {"unordered_map", "unordered_set"};
    for (const auto& file : sources_under({"sim"})) {
        // Shadows, and whole attempts of simulated trainees, are worked on side by side.
        const bool may_thread = is_within(file, "sim/scoring") || is_within(file, "sim/trainees");
        for (const auto& include : includes_of(contents(root / file))) {
            if (may_thread && (include == "thread" || include == "future")) continue;
            EXPECT_FALSE(forbidden.contains(include)) << file << " includes <" << include << ">";
            EXPECT_FALSE(unordered.contains(include)) << file << " includes <" << include << ">";
        }
    }
}

TEST(Layering, ResultsUseNoPlatformTranscendentalFunctions) {
    // std::sqrt, std::abs, std::floor, std::round and their like are exact by IEEE 754 and allowed.
    static const std::regex call(
        R"(\bstd::(exp|exp2|expm1|log|log2|log10|log1p|pow|cbrt|hypot|sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|tanh|erf|erfc|tgamma|lgamma)\s*\()");
    for (const auto& file :
         sources_under({"sim/math", "sim/properties", "sim/plant", "sim/controller", "sim/faults",
                        "sim/worksite", "sim/scoring"})) {
        const std::string code = code_only(contents(root / file));
        std::smatch found;
        EXPECT_FALSE(std::regex_search(code, found, call)) << file << " calls " << found.str();
    }
}

TEST(Layering, TheTraineesSideNamesNoPhysicsControllerOrFault) {
    static const std::regex inside(R"(\b(plant|controller|faults)::)");
    for (const auto& file : sources_under({"ui"})) {
        const std::string code = code_only(contents(root / file));
        std::smatch found;
        EXPECT_FALSE(std::regex_search(code, found, inside)) << file << " names " << found.str();
    }
}

TEST(Layering, ViewsAndTerminalNeverAskForTheTruth) {
    static const std::regex truth(R"(\btruth\s*\()");
    for (const auto& file : sources_under({"ui/views", "ui/terminal", "ui/desktop", "ui/screens"}))
        EXPECT_FALSE(std::regex_search(code_only(contents(root / file)), truth)) << file;
}

TEST(Layering, EveryLibraryOfTheBuildIsAPackageThatStartInstalls) {
    const std::map<std::string, std::string> packages = {{"Boost", "libboost-dev"},
                                                         {"tomlplusplus", "libtomlplusplus-dev"},
                                                         {"nlohmann_json", "nlohmann-json3-dev"},
                                                         {"CLI11", "libcli11-dev"},
                                                         {"spdlog", "libspdlog-dev"},
                                                         {"Threads", "g++"},
                                                         {"Freetype", "libfreetype-dev"},
                                                         {"SFML", "libsfml-dev"}};
    static const std::regex call(R"((?:^|\n)\s*find_package\((\w+))");
    const std::string cmake = contents(root / "CMakeLists.txt");
    const std::string installer = contents(root / "ui/install_packages");
    const std::string wanted = installer.substr(0, installer.find("test_packages="));
    for (auto it = std::sregex_iterator(cmake.begin(), cmake.end(), call);
         it != std::sregex_iterator(); ++it) {
        const auto package = packages.find((*it)[1]);
        ASSERT_NE(package, packages.end()) << (*it)[1] << " has no Debian package named here";
        EXPECT_NE(wanted.find(package->second), std::string::npos) << package->second;
    }
}

std::size_t line_count(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

TEST(Layering, FilesStayShortOrSayWhyNot) {
    // Longer files, each with its reason.
    const std::map<std::string, std::string> longer = {};
    for (const auto& file : sources_under({"sim", "ui", "tests"}))
        if (!longer.contains(file.generic_string())) {
            EXPECT_LE(line_count(contents(root / file)), 400U) << file;
        }
    for (const auto& [file, reason] : longer)
        EXPECT_GT(line_count(contents(root / file)), 400U)
            << file << " no longer needs: " << reason;
}

TEST(Layering, TheTopOfTheRepositoryHoldsOnlyWhatItShould) {
    const std::set<std::string> allowed = {"CMakeLists.txt", "CMakePresets.json",
                                           "README.md",      "DEVELOPERS.md",
                                           "LICENSE",        "sim",
                                           "scenarios",      "ui",
                                           "tests",          "docs",
                                           "build"};
    for (const auto& entry : fs::directory_iterator(root)) {
        const std::string name = entry.path().filename().string();
        EXPECT_TRUE(name.starts_with(".") || allowed.contains(name)) << name;
    }
    for (const auto& name : allowed)
        if (name != "build") {
            EXPECT_TRUE(fs::exists(root / name)) << name << " is missing";
        }
}

TEST(Layering, EveryTestFileSaysFirstWhatItProves) {
    for (const auto& file : sources_under({"tests"}))
        if (file.stem().string().ends_with("_test")) {
            EXPECT_TRUE(contents(root / file).starts_with("// ")) << file;
        }
}

TEST(Layering, TestNamesHaveNoUnderscores) {
    static const std::regex test(
        R"((?:^|\n)\s*(?:TEST|TEST_F|TEST_P|TYPED_TEST)\(\s*(\w+),\s*(\w+)\s*\))");
    for (const auto& file : sources_under({"tests"})) {
        const std::string text = contents(root / file);
        for (auto it = std::sregex_iterator(text.begin(), text.end(), test);
             it != std::sregex_iterator(); ++it)
            EXPECT_EQ(((*it)[1].str() + (*it)[2].str()).find('_'), std::string::npos)
                << file << ": " << (*it)[1] << "." << (*it)[2];
    }
}

}  // namespace
