#pragma once
/// The things of a house that something can be done with, where they stand on the sheet, and which acts
/// belong to each. Made from the sentences and words of the trainee's language, so a new act finds its
/// place by itself.

#include <string>
#include <utility>
#include <vector>

#include "ui/screens/site_view.hpp"
#include "ui/views/views.hpp"

namespace emberpath::desktop {

struct Thing {
    screens::PointView point;  // tag, name, shape and place; no state
    bool under_cover = false;
    bool on_sheet = true;              // false: found by its name only
    std::vector<std::string> claims;   // "point:inlet": words of the language that mean it
    std::vector<std::string> aliases;  // words that lead acts without a thing of their own to it
};

/// All of them, in reading order; tags are unique.
[[nodiscard]] std::vector<Thing> things_of(const views::JobCard& card);
/// Index of the thing with that tag; things.size() when there is none.
[[nodiscard]] std::size_t find_thing(const std::vector<Thing>& things, std::string_view tag);

/// The thing whose name, or a word for it, stands in the title of a reading; things.size(): none.
[[nodiscard]] std::size_t thing_named_in(const std::vector<Thing>& things, std::string_view title);

/// The house as rooms and fixtures, all shut; fixtures in the order of `fixture_names`.
[[nodiscard]] screens::SiteView site_of(const views::JobCard& card);
/// Taps and other appliances in the order in which the sheet counts them.
[[nodiscard]] std::vector<std::string> fixture_names(const views::JobCard& card);

/// An act that can be said in this house.
struct Offer {
    std::string sentence;  // "attach manometer to inlet"; what an open word stands for is left out
    bool open = false;     // the sentence still wants words of the trainee's own
    std::string pattern;
    std::vector<std::size_t> things;  // where it belongs
    std::string word{};               // the closed word in it: "inlet"; empty: none
};
/// Every act but waits and what the write-up and the list of causes are for.
[[nodiscard]] std::vector<Offer> offers_of(const views::JobCard& card,
                                           const std::vector<Thing>& things);

/// The act as a button at a thing says it: "Attach manometer" at P1.
[[nodiscard]] std::string short_name(const Offer& offer, const Thing& thing);

}  // namespace emberpath::desktop
