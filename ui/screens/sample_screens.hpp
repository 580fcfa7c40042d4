#pragma once
/// Every screen in every state with invented figures, by name: for pictures and tests.

#include <functional>
#include <string>
#include <vector>

#include "ui/screens/sample.hpp"

namespace emberpath::screens {

struct NamedScreen {
    std::string name;
    std::function<kit::Frame(const Setting&)> draw;
};
[[nodiscard]] const std::vector<NamedScreen>& sample_screens();

}  // namespace emberpath::screens
