#pragma once
/// What the "go to" box finds: things by tag and name, and acts by the words in them.

#include <functional>
#include <string>
#include <vector>

#include "ui/desktop/things.hpp"
#include "ui/screens/job_view.hpp"

namespace emberpath::desktop {

/// Acts that are listed at most: who wants more, types more.
inline constexpr std::size_t most_acts_found = 40;
/// Beginning of the id of a row that does an act which was not written out.
inline constexpr std::string_view suggested_act = "suggested.";

/// Where the box looks.
struct Searched {
    const std::vector<Thing>& things;
    const std::vector<Offer>& offers;
    std::vector<std::string>
        ready;  // whole sentences in the trainee's words, offered where they fit
    std::function<bool(const std::string&)> can_be_done;     // an act in words, now
    std::function<std::string(const std::string&)> cost_of;  // "10 s"; empty: it takes no time
};
/// The exact thing or act first, then things that begin with it, then acts that hold its words.
[[nodiscard]] std::vector<screens::FoundView> found_for(const std::string& typed,
                                                        const Searched& in);

}  // namespace emberpath::desktop
