#include "sim/scenario/stray.hpp"

#include <algorithm>

namespace emberpath::scenario {

namespace {

bool starts_a_character(char c) {
    return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U;
}

/// Walks through a file knowing only texts, comments and lines.
class Scanner {
  public:
    explicit Scanner(std::string_view text) : text_(text) {}

    std::optional<Stray> find() {
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == '#')
                at_ = std::min(text_.find('\n', at_), text_.size());
            else if (c == '"' || c == '\'')
                skip_text(c);
            else if (static_cast<unsigned char>(c) >= 0x80U)
                return stray();
            else
                ++at_;
        }
        return std::nullopt;
    }

  private:
    /// To the end of a text; an ordinary one that is not closed ends with its line.
    void skip_text(char quote) {
        const std::string three(3, quote);
        const bool long_text = text_.substr(at_).starts_with(three);
        const std::string_view end =
            long_text ? std::string_view(three) : std::string_view(&quote, 1);
        at_ += end.size();
        while (at_ < text_.size() && !text_.substr(at_).starts_with(end)) {
            if (!long_text && text_[at_] == '\n') return;
            const bool escape = quote == '"' && text_[at_] == '\\' && at_ + 1 < text_.size() &&
                                (long_text || text_[at_ + 1] != '\n');
            at_ += escape ? 2 : 1;
        }
        at_ = std::min(at_ + end.size(), text_.size());
    }

    [[nodiscard]] Stray stray() const {
        Stray found;
        const std::string_view before = text_.substr(0, at_);
        found.line += static_cast<int>(std::count(before.begin(), before.end(), '\n'));
        const std::size_t line_end = before.rfind('\n');
        const std::string_view left =
            line_end == std::string_view::npos ? before : before.substr(line_end + 1);
        found.column +=
            static_cast<int>(std::count_if(left.begin(), left.end(), starts_a_character));
        std::size_t end = at_ + 1;
        while (end < text_.size() && !starts_a_character(text_[end])) ++end;
        found.character = text_.substr(at_, end - at_);
        return found;
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace

std::optional<Stray> find_stray(std::string_view text) {
    return Scanner(text).find();
}

std::string in_ascii(std::string_view text) {
    std::string plain;
    for (const char c : text)
        if (starts_a_character(c)) plain += static_cast<unsigned char>(c) < 0x80U ? c : '?';
    return plain;
}

}  // namespace emberpath::scenario
