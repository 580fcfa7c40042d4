#include "ui/desktop/found_safe.hpp"

#include <string>
#include <vector>

#include "ui/views/services.hpp"

namespace emberpath::desktop {

bool gas_is_smelt(const Known& known) {
    bool smelt = false;
    const auto hear = [&smelt](const std::vector<std::string>& lines) {
        for (const std::string& line : lines) {
            if (line.starts_with("It smells of gas")) smelt = true;
            if (line.starts_with("No smell of gas")) smelt = false;
        }
    };
    for (const auto& entry : known.log) hear(entry.shown);
    hear(known.sight.noticed);
    return smelt;
}

bool power_is_proved_dead(const Known& known) {
    return views::power_is_proved_dead(known.log);
}

}  // namespace emberpath::desktop
