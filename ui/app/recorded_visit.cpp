#include "ui/app/recorded_visit.hpp"

#include <stdexcept>

#include "ui/views/catalogue.hpp"

namespace emberpath::app {

RecordedVisit::RecordedVisit(const worksite::Job& job, std::unique_ptr<worksite::Attempt> attempt,
                             records::Writer writer, std::unique_ptr<worksite::Follower> follower)
    : follower_(std::move(follower)),
      attempt_(std::move(attempt)),
      writer_(std::move(writer)),
      card_(views::job_card(job, attempt_->mode())),
      suspects_(views::suspects(job)) {}

void RecordedVisit::finish_act(const worksite::LogEntry& entry) {
    writer_.end_act(entry, attempt_->state_hash());
}

void RecordedVisit::close(const scoring::Assessment& assessment) {
    writer_.close(assessment, attempt_->day_after());
}

views::Done RecordedVisit::perform(std::string_view sentence) {
    if (!records::can_be_kept(sentence))
        return {{},
                "That is no sentence: expected plain text of at most " +
                    std::to_string(records::longest_sentence) + " characters."};
    if (auto refusal = attempt_->check(sentence); !refusal.text.empty())
        return {{}, std::move(refusal.text)};
    writer_.begin_act(attempt_->tick(), sentence);
    const auto outcome = attempt_->perform(sentence);
    // check() promised that it can be done; a record that says otherwise must not be written on.
    if (!outcome.entry)
        throw std::logic_error("an act was accepted and then refused: " + outcome.refusal.text);
    writer_.end_act(*outcome.entry, attempt_->state_hash());
    return {outcome.entry->shown, {}};
}

void RecordedVisit::run(std::int64_t ticks) {
    const auto* entry = attempt_->run(ticks);
    if (!entry) return;
    writer_.begin_act(entry->begin_tick, entry->words);
    writer_.end_act(*entry, attempt_->state_hash());
}

}  // namespace emberpath::app
