#pragma once
/// The fixed texts of the terminal, and the answers to words that are not acts.

#include <string>
#include <string_view>

#include "ui/views/visit.hpp"

namespace emberpath::terminal {

/// All sentences with the time they take; or those about one word with what they do, take, and what their {words} can stand for;
/// or with "all" everything.
[[nodiscard]] std::string help_text(const views::JobCard& card, std::string_view word);
[[nodiscard]] std::string readings_text(const views::Visit& visit);
[[nodiscard]] std::string log_text(const views::Visit& visit);
[[nodiscard]] std::string services_text(const views::Visit& visit);
[[nodiscard]] std::string suspects_text(const views::Visit& visit);

}  // namespace emberpath::terminal
