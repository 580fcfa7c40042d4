// Rooms and fixtures from the names of taps and appliances.

#include <algorithm>
#include <array>

#include "ui/desktop/things.hpp"

namespace emberpath::desktop {

namespace {

using screens::FixtureKind;

struct Known {
    std::string_view part;  // of the name
    FixtureKind kind;
    std::string_view room;
};
// The first that fits; a name that fits none stands as a basin in the bathroom.
// clang-format off
constexpr std::array known{
    Known{"cooktop", FixtureKind::cooktop, "Kitchen"},     Known{"oven", FixtureKind::oven, "Kitchen"},
    Known{"room heater", FixtureKind::room_heater, "Living room"},
    Known{"kitchen", FixtureKind::sink, "Kitchen"},        Known{"laundry", FixtureKind::laundry_tub, "Laundry"},
    Known{"shower", FixtureKind::shower, "Bathroom"},      Known{"bath", FixtureKind::bath, "Bathroom"},
    Known{"basin", FixtureKind::basin, "Bathroom"},        Known{"", FixtureKind::basin, "Bathroom"},
};
// clang-format on

const Known& kind_of(std::string_view name) {
    return *std::find_if(known.begin(), known.end(), [&](const Known& row) {
        return name.find(row.part) != std::string_view::npos;
    });
}

std::string room_of(const std::string& name) {
    if (name.starts_with("upstairs")) return "Upstairs";
    if (name.starts_with("downstairs")) return "Downstairs";
    return std::string(kind_of(name).room);
}

void add(std::vector<screens::RoomView>& rooms, const std::string& name) {
    const std::string room = room_of(name);
    auto found = std::find_if(rooms.begin(), rooms.end(),
                              [&](const screens::RoomView& one) { return one.name == room; });
    if (found == rooms.end()) found = rooms.insert(rooms.end(), screens::RoomView{room, {}});
    screens::FixtureView fixture;
    fixture.kind = kind_of(name).kind;
    fixture.name = name;
    fixture.state = "off";
    found->fixtures.push_back(std::move(fixture));
}

}  // namespace

screens::SiteView site_of(const views::JobCard& card) {
    screens::SiteView site;
    const auto is_cylinder = [](const views::Choice& choice) {
        return choice.placeholder == "gas valve" &&
               std::find(choice.words.begin(), choice.words.end(), "cylinder") !=
                   choice.words.end();
    };
    if (std::any_of(card.choices.begin(), card.choices.end(), is_cylinder))
        site.gas = screens::GasSource::cylinder;
    for (const auto& name : card.appliances) add(site.rooms, name);
    for (const auto& name : card.taps) add(site.rooms, name);
    return site;
}

std::vector<std::string> fixture_names(const views::JobCard& card) {
    std::vector<std::string> names;
    for (const auto& room : site_of(card).rooms)
        for (const auto& fixture : room.fixtures) names.push_back(fixture.name);
    return names;
}

}  // namespace emberpath::desktop
