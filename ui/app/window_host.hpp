#pragma once
/// The window's host: jobs from the scenarios folder, records and drafts in the state folder.

#include <fstream>
#include <mutex>
#include <optional>

#include "ui/app/context.hpp"
#include "ui/app/jobs.hpp"
#include "ui/app/recorded_visit.hpp"
#include "ui/app/stamp.hpp"
#include "ui/desktop/host.hpp"

namespace emberpath::app {

class WindowHost : public desktop::Host {
  public:
    /// `author_file`: a scenario to preview; empty when nobody authors.
    WindowHost(const Context& context, std::filesystem::path author_file);

    desktop::Listed jobs() override;
    desktop::Begun begin(const std::string& job, bool assessed,
                         desktop::Progress& progress) override;
    desktop::Begun resume(const std::string& job, desktop::Progress& progress) override;
    desktop::Explained explain(desktop::Progress& progress) override;
    desktop::Explained reopen(const std::string& job, desktop::Progress& progress) override;
    desktop::Begun replay(std::size_t acts, desktop::Progress& progress) override;
    desktop::Previewed preview(desktop::Progress& progress) override;
    desktop::Solution solve(desktop::Progress& progress) override;
    bool job_file_changed() override;
    std::string keep_draft(const desktop::Draft& draft) override;
    void leave(views::Visit& visit) override;
    std::string keep(const desktop::Preferences& preferences) override;
    std::string save_report() override;
    void tell(const std::string& sentence) override;

    /// As they were kept, or as they are at first.
    [[nodiscard]] desktop::Preferences preferences() const;

  private:
    /// The visit at work: its record, its scenario, and the object that the window holds.
    struct Now {
        JobFile job;
        scenario::Loaded loaded;
        std::filesystem::path record;
        RecordedVisit* visit = nullptr;  // owned by the window; null once it is weighed
    };
    [[nodiscard]] desktop::Begun taken_up(const std::string& job,
                                          const std::filesystem::path& record);
    [[nodiscard]] std::filesystem::path told_file() const;
    [[nodiscard]] std::filesystem::path draft_file() const;
    [[nodiscard]] desktop::Draft kept_draft() const;  // as it lies beside the record; else empty
    [[nodiscard]] std::filesystem::path settings_file() const;

    const Context& context_;
    std::filesystem::path author_file_;
    std::optional<worksite::Job> previewed_;  // as it was last previewed
    FileStamp previewed_stamp_;
    std::optional<Now> now_;
    std::ofstream told_;
};

/// A failure of the program's own as the error screen says it.
[[nodiscard]] desktop::Trouble trouble_of(const std::string& title, const std::string& text);

}  // namespace emberpath::app
