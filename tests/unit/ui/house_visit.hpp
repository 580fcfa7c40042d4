#pragma once
/// A visit to a house that is kept in memory, for tests of what the terminal prints.

#include "ui/views/visit.hpp"

namespace emberpath::terminal {

class HouseVisit final : public views::Visit {
  public:
    explicit HouseVisit(const worksite::Job& job)
        : attempt_(job, 1, worksite::Mode::coached),
          card_(views::job_card(job, worksite::Mode::coached)),
          suspects_(views::suspects(job)) {}

    views::Done perform(std::string_view sentence) override {
        last = attempt_.perform(sentence);
        if (last.entry == nullptr) return {{}, last.refusal.text};
        return {last.entry->shown, {}};
    }
    void run(std::int64_t ticks) override { attempt_.run(ticks); }
    [[nodiscard]] const worksite::Attempt& attempt() const override { return attempt_; }
    [[nodiscard]] const views::JobCard& card() const override { return card_; }
    [[nodiscard]] const std::vector<views::Suspect>& suspects() const override { return suspects_; }

    worksite::Attempt::Outcome last;

  private:
    worksite::Attempt attempt_;
    views::JobCard card_;
    std::vector<views::Suspect> suspects_;
};

}  // namespace emberpath::terminal
