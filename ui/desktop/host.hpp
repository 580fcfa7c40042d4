#pragma once
/// What the window asks of the program around it: jobs, records, files. Work that takes time runs on a
/// worker, one piece at a time; it may be abandoned.

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "ui/desktop/author_solve.hpp"
#include "ui/desktop/draft.hpp"
#include "ui/desktop/preferences.hpp"
#include "ui/screens/author.hpp"
#include "ui/screens/choose.hpp"
#include "ui/screens/debrief_screen.hpp"
#include "ui/screens/states.hpp"
#include "ui/views/visit.hpp"

namespace emberpath::desktop {

/// How far a piece of work is, told by the worker; asked to stop by the window.
struct Progress {
    std::atomic<double> share{-1.0};   // 0 to 1; below 0: cannot be told
    std::atomic<double> minutes{0.0};  // simulated time that the whole is counted in
    std::atomic<bool> abandoned{false};
};

/// Something that cannot be done, as the error screen says it; an empty title: all is well.
using Trouble = screens::ErrorView;

struct Begun {
    std::unique_ptr<views::Visit> visit;
    Draft draft;  // what was written before
    bool resumed = false;
    Trouble trouble;
};
struct Explained {
    screens::DebriefView view;
    bool shown = true;  // false: assessed; the debrief is for trainee and assessor together
    Trouble trouble;
};
struct Previewed {
    screens::AuthorView view;
    std::string job;  // for "play it as a trainee"
    Trouble trouble;
};

struct Listed {
    std::vector<screens::JobRow> jobs;
    Trouble trouble;  // there is no list
};

class Host {
  public:
    virtual ~Host() = default;
    [[nodiscard]] virtual Listed jobs() = 0;

    // On the worker.
    [[nodiscard]] virtual Begun begin(const std::string& job, bool assessed,
                                      Progress& progress) = 0;
    [[nodiscard]] virtual Begun resume(const std::string& job, Progress& progress) = 0;
    /// Weighs the visit that is over and writes its scores.
    [[nodiscard]] virtual Explained explain(Progress& progress) = 0;
    /// The debrief of the last attempt at a job, which is finished.
    [[nodiscard]] virtual Explained reopen(const std::string& job, Progress& progress) = 0;
    /// The house of the last visit as it stood after that many acts, to look at.
    [[nodiscard]] virtual Begun replay(std::size_t acts, Progress& progress) = 0;
    [[nodiscard]] virtual Previewed preview(Progress& progress) = 0;
    /// Whether the previewed job can be solved; takes seconds.
    [[nodiscard]] virtual Solution solve(Progress& progress) = 0;

    // At once.
    /// Returns why it could not be kept; empty: it is on disk.
    [[nodiscard]] virtual std::string keep_draft(const Draft& draft) = 0;
    /// The visit is left unfinished; its record keeps the time that has passed.
    virtual void leave(views::Visit& visit) = 0;
    /// Returns why they could not be kept.
    [[nodiscard]] virtual std::string keep(const Preferences& preferences) = 0;
    /// Writes the debrief as a page; returns a sentence that says where, or why not.
    [[nodiscard]] virtual std::string save_report() = 0;
    /// A file of the previewed job is another than when it was last previewed.
    [[nodiscard]] virtual bool job_file_changed() = 0;
    /// A sentence for the accessibility log.
    virtual void tell(const std::string& sentence) = 0;
};

}  // namespace emberpath::desktop
