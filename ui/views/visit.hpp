#pragma once
/// One visit to a house as a front end drives it: do an act, look at what is known. The program behind it
/// keeps the record; the front end never holds the job's hidden part.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "ui/views/catalogue.hpp"
#include "ui/views/views.hpp"

namespace emberpath::views {

/// What came of an act.
struct Done {
    std::vector<std::string> shown;
    std::string refusal;  // why the sentence cannot be done; nothing happened and no time passed
};

class Visit {
  public:
    virtual ~Visit() = default;
    /// The act is on disk when this returns.
    virtual Done perform(std::string_view sentence) = 0;
    /// Time passes without an act. An end that comes meanwhile is on disk when this returns.
    virtual void run(std::int64_t ticks) = 0;
    [[nodiscard]] virtual const worksite::Attempt& attempt() const = 0;
    [[nodiscard]] virtual const JobCard& card() const = 0;
    /// All causes that a house of this kind can have, in a fixed order.
    [[nodiscard]] virtual const std::vector<Suspect>& suspects() const = 0;
};

}  // namespace emberpath::views
