#pragma once
/// The window's program without a window: which screen stands, what an event does to it, what is painted.
/// Everything is driven by events and by wall time that is handed in, so tests need neither.

#include <future>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "ui/desktop/host.hpp"
#include "ui/desktop/job_desk.hpp"
#include "ui/kit/interaction.hpp"
#include "ui/screens/overlays.hpp"
#include "ui/screens/settings.hpp"

namespace emberpath::desktop {

enum class Place { choose, job, write_up, debrief, replay, author, settings, loading, error };

class Program {
  public:
    /// `author`: begins with the author's preview that the host offers.
    Program(Host& host, const kit::TextMetrics& metrics, kit::Clipboard& clipboard,
            const Preferences& preferences, bool author = false);
    ~Program();
    Program(const Program&) = delete;
    Program& operator=(const Program&) = delete;

    /// What stands on the screen now. `size` in logical pixels: window pixels divided by scale().
    [[nodiscard]] kit::Frame frame(kit::Size size);
    void event(const kit::Event& event);
    /// Wall time passes: the house runs on, work gets done.
    void elapse(double wall_s);

    [[nodiscard]] const Preferences& preferences() const { return preferences_; }
    [[nodiscard]] double scale() const { return preferences_.text_percent / 100.0; }
    [[nodiscard]] kit::SoundScene heard() const;
    [[nodiscard]] bool moves() const;  // something on screen moves by itself
    [[nodiscard]] bool closed() const { return closed_; }
    [[nodiscard]] bool wants_key_repeat() const;
    [[nodiscard]] Place place() const { return place_; }
    [[nodiscard]] const kit::Frame& last_frame() const { return frame_; }
    [[nodiscard]] const std::string& focus() const { return state_.focus; }
    [[nodiscard]] const JobDesk* desk() const { return desk_.get(); }

  private:
    /// A piece of work on the worker and what to do with its result.
    struct Work {
        std::future<void> done;
        std::shared_ptr<Progress> progress;
        std::function<void()> finish;
        std::string title, words;
        std::string
            counted{};  // "minutes before you arrive": what the minutes are, once they count
        double waited_s = 0.0;
        Place from = Place::choose;
        bool quiet = false;       // nobody waits for it; other work puts it away
        bool to_the_end = false;  // writes into the record: nothing else begins before it has ended
    };
    template <class Result>
    void start_work(std::string title, std::string words, std::function<Result(Progress&)> work,
                    std::function<void(Result&)> finish);

    [[nodiscard]] kit::Frame draw(kit::Size size);
    [[nodiscard]] screens::SettingsView settings_view() const;
    [[nodiscard]] screens::LoadingView loading_view() const;
    void obey(const kit::Command& command);
    bool obey_everywhere(const kit::Command& command);
    [[nodiscard]] bool is_under_way(const std::string& job) const;
    void obey_choose(const kit::Command& command);
    void obey_job(const kit::Command& command);
    void obey_write_up(const kit::Command& command);
    void cite(const std::string& reading);
    void obey_debrief(const kit::Command& command);
    void show_lane(const kit::Command& command);
    void obey_author(const kit::Command& command);
    void obey_settings(const kit::Command& command);
    bool take_new_key(const kit::Event& event);
    void back();
    void go(Place place);
    void note_how_left();
    void return_to(Place place);
    void take_up_again();
    void open_choose(std::string notice);
    void home(std::string notice);
    void open_preview();
    void keep_preferences();
    void debrief_again(const std::string& job);
    void show_debrief(Explained& explained);
    void enter(Begun begun, bool replayed);
    void show_replay(std::unique_ptr<JobDesk> before);
    void visit_ended();
    void explain();
    void replay_step();
    void step_to(std::size_t step);
    [[nodiscard]] screens::ReplayView replayed_moment() const;
    void preview();
    void solve();
    void watch_files(double wall_s);
    [[nodiscard]] bool busy() const { return work_ != nullptr && !work_->quiet; }
    void show(Trouble trouble);
    void lose_visit(const std::string& why);
    void guarded(const std::function<void()>& doing);
    void begin_job(const std::string& job, bool resume);
    void settle_work(double wall_s);
    void text_size(int percent);
    void say(const std::string& sentence);
    void save_draft();

    Host& host_;
    const kit::TextMetrics& metrics_;
    kit::Clipboard& clipboard_;
    Preferences preferences_;
    kit::KeyMap keys_;
    kit::State state_;
    /// How a place was left: where the keyboard was, and how far its lists were scrolled.
    struct Left {
        std::string focus;
        bool focus_shown = true;
        std::map<std::string, double, std::less<>> scroll;
    };
    std::map<Place, Left> left_;
    kit::Frame frame_;
    kit::Size size_{1280.0, 800.0};
    Place place_ = Place::choose, behind_settings_ = Place::choose;
    bool closed_ = false, help_ = false, author_ = false;
    bool from_preview_ = false;  // this visit was begun there
    bool solved_ = false;        // the previewed job
    bool changed_ = false;       // by quiet work, and not shown yet
    std::optional<screens::Question> question_;

    screens::ChooseView choose_;
    std::unique_ptr<views::Visit> visit_, replayed_visit_;
    std::unique_ptr<JobDesk> desk_, replay_;
    Explained explained_;
    Previewed previewed_;
    double unwatched_for_s_ = 0.0;  // since the author's files were last looked at
    Trouble trouble_;
    Place after_trouble_ = Place::choose;
    std::string changing_key_, settings_tab_ = "looks", settings_problem_;
    std::string written_last_;      // id of a field of the write-up
    double clock_unsaved_s_ = 0.0;  // since the clock of the house was last marked, while it ran
    std::int64_t kept_tick_ = -1;   // as it was marked
    double unsaved_for_s_ = -1.0;   // since the last key in the write-up; below 0: all is kept
    std::unique_ptr<Work> work_;
    std::vector<std::unique_ptr<Work>> abandoned_;
};

}  // namespace emberpath::desktop
