#pragma once
/// A host that keeps everything in memory, and a person at the keyboard, for tests of the window's program
/// without window, disk or clock.

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <thread>
#include <utility>

#include "tests/unit/worksite/house.hpp"
#include "ui/desktop/program.hpp"
#include "ui/kit/typeface.hpp"

namespace emberpath::desktop {

inline const kit::Typeface& typeface() {
    static const kit::Typeface face(kit::find_fonts());
    return face;
}

class MemoryVisit final : public views::Visit {
  public:
    MemoryVisit(const worksite::Job& job, worksite::Mode mode)
        : attempt_(job, 1, mode),
          card_(views::job_card(job, mode)),
          suspects_(views::suspects(job)) {
        attempt_.keep_trail();
    }
    views::Done perform(std::string_view sentence) override {
        if (disk_full) throw std::runtime_error("the record cannot be written");
        const auto outcome = attempt_.perform(sentence);
        if (!outcome.entry) return {{}, outcome.refusal.text};
        return {outcome.entry->shown, {}};
    }
    void run(std::int64_t ticks) override { attempt_.run(ticks); }
    [[nodiscard]] const worksite::Attempt& attempt() const override { return attempt_; }
    [[nodiscard]] const views::JobCard& card() const override { return card_; }
    [[nodiscard]] const std::vector<views::Suspect>& suspects() const override { return suspects_; }

    bool disk_full = false;

  private:
    worksite::Attempt attempt_;
    views::JobCard card_;
    std::vector<views::Suspect> suspects_;
};

class MemoryHost final : public Host {
  public:
    explicit MemoryHost(worksite::Job job_given) : job(std::move(job_given)) {}

    Listed jobs() override {
        if (!no_list.empty()) {
            Listed none;
            none.trouble.title = no_list;
            none.trouble.ways = {{"Look again", {"look again"}}};
            return none;
        }
        screens::JobRow row;
        row.id = "test";
        row.title = "Job 1";
        row.address = "Test house";
        row.gas = "natural gas";
        row.call_out = "No hot water";
        row.last = can_resume ? "left after 01:00" : "not tried";
        row.can_resume = can_resume;
        row.can_debrief = can_debrief;
        std::vector<screens::JobRow> rows;
        for (int i = 1; i <= others_before; ++i) {
            rows.emplace_back();
            rows.back().id = "other" + std::to_string(i);
            rows.back().title = "Other " + std::to_string(i);
        }
        rows.push_back(row);
        return {rows, {}};
    }
    Begun begin(const std::string&, bool assessed, Progress&) override {
        Begun begun;
        if (!refusal.empty()) {
            begun.trouble.title = refusal;
            begun.trouble.ways = {{"Back", {"back"}}};
            return begun;
        }
        auto visit = std::make_unique<MemoryVisit>(
            job, assessed ? worksite::Mode::assessed : worksite::Mode::coached);
        at_work = visit.get();
        begun.visit = std::move(visit);
        return begun;
    }
    Begun resume(const std::string& name, Progress& progress) override {
        Begun begun = begin(name, false, progress);
        if (!begun.visit) return begun;
        (void)begun.visit->perform("look at display");
        begun.resumed = true;
        begun.draft.done = "written before";
        return begun;
    }
    Explained explain(Progress& progress) override {
        ++weighed;
        while (hold) {
            progress.minutes = minutes_weighed.load();
            progress.share = share_weighed.load();
            std::this_thread::yield();
        }
        Explained explained;
        explained.view.outcome = "Put right";
        explained.view.steps = {{1.0, "Look at display"}, {2.0, "Hand in"}};
        if (!steps.empty()) explained.view.steps = steps;
        explained.view.columns = {"Nothing wrong"};
        explained.view.rows = {{1, "P1", "at rest", "1.0 kPa", {{"1.0", false}}}};
        explained.view.likely = likely;
        explained.view.stands = stands;
        explained.view.minutes = explained.view.steps.back().minute;
        return explained;
    }
    Explained reopen(const std::string&, Progress& progress) override {
        ++reopened;
        return explain(progress);
    }
    Begun replay(std::size_t acts, Progress& progress) override {
        replayed = acts;
        return begin("test", false, progress);
    }
    Previewed preview(Progress&) override {
        ++previews;
        Previewed previewed;
        if (!preview_refusal.empty()) {
            previewed.trouble.title = preview_refusal;
            previewed.trouble.ways = {{"Choose a job instead", {"back"}}};
            return previewed;
        }
        previewed.view.title = "Job 1";
        previewed.view.loop = loop;
        previewed.job = "test";
        return previewed;
    }
    Solution solve(Progress& progress) override {
        while (hold_solving && !progress.abandoned) {
            progress.share = share_solved.load();
            std::this_thread::yield();
        }
        return solution;
    }
    screens::LoopView loop;  // of the preview
    bool job_file_changed() override { return std::exchange(file_changed, false); }
    std::string keep_draft(const Draft& draft) override {
        if (disk_gone) return "the folder cannot be written.";
        kept = draft;
        return "";
    }
    void leave(views::Visit&) override {
        ++left;
        kept_on_leaving = kept;
    }
    std::string keep(const Preferences& preferences) override {
        if (disk_gone) return "the folder cannot be written.";
        settings = preferences;
        return "";
    }
    std::string save_report() override { return "Saved."; }
    void tell(const std::string& sentence) override { told.push_back(sentence); }

    worksite::Job job;
    bool can_resume = false, can_debrief = false, disk_gone = false;
    std::string refusal, preview_refusal, no_list;
    std::atomic<int> reopened{0};
    MemoryVisit* at_work = nullptr;
    Draft kept, kept_on_leaving;
    std::atomic<int> weighed{0};
    std::atomic<bool> hold = false;  // weighing takes as long as this is set
    std::atomic<double> share_weighed{-1.0}, minutes_weighed{0.0};  // told meanwhile
    std::atomic<bool> hold_solving = false;  // solving takes as long as this is set
    std::atomic<double> share_solved{0.0};   // told meanwhile
    int left = 0;
    int others_before = 0;  // in the list, never tried
    std::atomic<int> previews{0};
    Solution solution;
    std::vector<screens::StepView> steps;    // of the debrief; empty: two of them
    std::vector<std::string> likely;         // of the debrief's chart of causes
    std::vector<screens::StandView> stands;  // the same; empty: nothing was weighed
    bool file_changed = false;
    std::size_t replayed = 0;
    Preferences settings;
    std::vector<std::string> told;
};

class MemoryClipboard final : public kit::Clipboard {
  public:
    [[nodiscard]] std::string get() const override { return text; }
    void set(std::string_view utf8) override { text = utf8; }
    std::string text;
};

/// Somebody who types and points.
class Person {
  public:
    explicit Person(worksite::Job job = worksite::test_job(), kit::Size size = {1280.0, 800.0},
                    bool author = false)
        : host(std::move(job)), program(host, typeface(), clipboard, {}, author), size_(size) {
        look();
    }

    void look() { (void)program.frame(size_); }
    void press(kit::Key key, kit::Modifiers modifiers = {}) {
        program.event(kit::KeyPress{key, modifiers, false});
        look();
    }
    void type(std::string_view text) {
        for (const char32_t c : kit::decode(text)) {
            program.event(kit::Character{c, false});
            look();
        }
    }
    void click(std::string_view id) {
        const kit::Node* node = program.last_frame().tree.get(id);
        ASSERT_NE(node, nullptr) << id;
        const kit::Point at = node->visible.centre();
        program.event(kit::PointerPress{at, false, {}});
        look();
        program.event(kit::PointerRelease{at, false});
        look();
    }
    /// Tab until that thing has the focus, or arrows inside its list.
    void focus(std::size_t index) {
        const std::string id = program.last_frame().tree.at(index).id;
        const std::string list = id.substr(0, id.find('.') + 1);
        for (int i = 0; i < 400 && program.focus() != id; ++i) {
            const auto* now = program.last_frame().tree.get(program.focus());
            const bool inside =
                now != nullptr && now->role == kit::Role::row && program.focus().starts_with(list);
            press(inside ? kit::Key::down : kit::Key::tab);
        }
        EXPECT_EQ(program.focus(), id);
    }
    /// Until work on the worker is done.
    void wait_for(Place place) {
        until([&] { return program.place() == place; });
        EXPECT_EQ(program.place(), place);
        look();
    }
    /// Lets the program go on until something is so; a busy machine gets its time.
    template <class True>
    void until(True is_so, double each_s = 0.0) {
        const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(30);
        while (!is_so() && std::chrono::steady_clock::now() < end) {
            program.elapse(each_s);
            look();
            std::this_thread::yield();
        }
    }
    void enter_house() {
        press(kit::Key::enter);
        wait_for(Place::job);
    }
    /// The same in assessed mode.
    void enter_assessed() {
        click("start.assessed");
        click("start.go");
        wait_for(Place::job);
    }
    void leave_house() {
        press(kit::Key::escape);
        click("question.yes");
    }
    /// The visit ends, and its weighing does not until it is let go on.
    void hand_in_and_hold() {
        enter_house();
        host.hold = true;
        hand_in();
    }
    /// Says so at the house, and that it is meant.
    void hand_in() {
        say("hand in");
        click("question.yes");
    }
    /// "/", the words, Enter.
    void say(std::string_view words) {
        type("/");
        type(words);
        press(kit::Key::enter);
    }
    /// The same by the clipboard: what the letters do between is proved elsewhere.
    void paste(std::string_view words) {
        clipboard.text = words;
        type("/");
        press(kit::Key::v, {.control = true});
        press(kit::Key::enter);
    }
    [[nodiscard]] const kit::Node* node(std::string_view id) const {
        return program.last_frame().tree.get(id);
    }
    [[nodiscard]] std::string last_act() const {
        const auto& log = host.at_work->attempt().log();
        return log.empty() ? "" : log.back().words;
    }

    MemoryHost host;
    MemoryClipboard clipboard;
    Program program;

  private:
    kit::Size size_;
};

}  // namespace emberpath::desktop
