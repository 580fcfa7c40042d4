#pragma once
/// A visit whose every act is on disk before its result is shown.

#include <memory>

#include "sim/records/record.hpp"
#include "ui/views/visit.hpp"

namespace emberpath::app {

class RecordedVisit final : public views::Visit {
  public:
    /// `follower`: one that the attempt was made with.
    RecordedVisit(const worksite::Job& job, std::unique_ptr<worksite::Attempt> attempt,
                  records::Writer writer, std::unique_ptr<worksite::Follower> follower = nullptr);
    /// Writes the result of the last act, when a power cut came between the act and its result.
    void finish_act(const worksite::LogEntry& entry);
    /// Writes the scores; the record is complete then.
    void close(const scoring::Assessment& assessment);

    views::Done perform(std::string_view sentence) override;
    void run(std::int64_t ticks) override;
    [[nodiscard]] const worksite::Attempt& attempt() const override { return *attempt_; }
    [[nodiscard]] const views::JobCard& card() const override { return card_; }
    [[nodiscard]] const std::vector<views::Suspect>& suspects() const override { return suspects_; }

  private:
    std::unique_ptr<worksite::Follower> follower_;  // outlives the attempt
    std::unique_ptr<worksite::Attempt> attempt_;
    records::Writer writer_;
    views::JobCard card_;
    std::vector<views::Suspect> suspects_;
};

}  // namespace emberpath::app
