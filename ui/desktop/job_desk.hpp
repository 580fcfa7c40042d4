#pragma once
/// One visit as the window works it: which thing is selected, what is in hand, how time runs, what stands in
/// front. Commands become sentences of the trainee's language; the visit behind it keeps the record.

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ui/desktop/draft.hpp"
#include "ui/desktop/job_fill.hpp"
#include "ui/desktop/noticed.hpp"
#include "ui/kit/stage.hpp"
#include "ui/kit/synth.hpp"
#include "ui/screens/screens.hpp"
#include "ui/screens/write_up.hpp"

namespace emberpath::desktop {

class JobDesk {
  public:
    /// Sentences for the person: the last thing that happened, as it happens.
    using Say = std::function<void(const std::string&)>;

    JobDesk(views::Visit& visit, const Preferences& preferences, Say say);

    // --- time ---
    /// Wall time passes; the house follows at its speed in whole ticks. After a stall the rest is dropped.
    void elapse(double wall_s);
    [[nodiscard]] bool runs() const;  // time passes by itself now
    [[nodiscard]] bool over() const { return visit_.attempt().over(); }
    [[nodiscard]] kit::SoundScene heard() const;  // by who stands there
    static constexpr double longest_stall_s = 0.25;

    // --- what people do ---
    /// False when the command is not the job's business.
    bool obey(const kit::Command& command, kit::State& state);
    bool back();  // Esc: closes what stands in front; false when nothing did
    void open_help() { front_ = screens::InFront::keys; }

    // --- what is shown ---
    [[nodiscard]] screens::JobView view(const kit::State& state) const;
    [[nodiscard]] screens::InFront in_front() const { return front_; }

    // --- the write-up ---
    [[nodiscard]] screens::WriteUpView write_up(const kit::State& state) const;
    [[nodiscard]] const Draft& draft() const { return draft_; }
    void set_draft(Draft draft) { draft_ = std::move(draft); }
    /// Said in the write-up as long as it is so: why its words are not on disk; empty: they are.
    void draft_is_lost(std::string why) { draft_problem_ = std::move(why); }
    /// Takes the texts out of the editors.
    void read_editors(const kit::State& state);
    /// What the record says for a field of the write-up; empty: nothing.
    [[nodiscard]] std::string fill_for(std::string_view field) const;
    [[nodiscard]] std::string hand_in_refusal() const;
    /// Does the acts that hand it in.
    void hand_in();
    /// Handing in was said at the house: it is asked about first, as nothing can be done after it. Once.
    [[nodiscard]] bool wants_to_hand_in() { return std::exchange(wants_to_hand_in_, false); }
    void choose_cause(bool open) { choosing_cause_ = open; }
    [[nodiscard]] bool choosing_cause() const { return choosing_cause_; }

    [[nodiscard]] const std::string& status() const { return status_; }
    [[nodiscard]] std::size_t acts() const { return visit_.attempt().log().size(); }
    /// The first sentence: what to do, or that the attempt goes on.
    void welcome(bool resumed);
    /// Looking only, at a moment of a visit: acts are refused with these words. Time stands.
    void only_look(std::string why, screens::ReplayView moment, std::string status);
    /// Looks at the same as another desk: the same sheet, thing and place.
    void look_as(const JobDesk& other);
    /// How the last frame placed the drawing: it stays so until it is moved, or something is to be seen.
    void looked_at(const kit::Tree& tree, const std::string& focus);
    /// Does a sentence as if it were said; false when it was refused.
    bool act(const std::string& sentence);

  private:
    [[nodiscard]] Known known(const worksite::Sight& sight) const;
    [[nodiscard]] screens::SelectionView selection() const;
    [[nodiscard]] std::vector<const Offer*> offers_at(std::size_t thing,
                                                      const worksite::Sight& sight) const;
    [[nodiscard]] std::vector<screens::FoundView> found(const kit::State& state) const;
    [[nodiscard]] std::vector<std::string> ready_sentences() const;
    [[nodiscard]] std::string record_refusal(const std::string& sentence) const;
    [[nodiscard]] std::string written_cause() const;
    void say(std::string sentence);
    void after(const worksite::LogEntry& entry);
    void select(const std::string& tag);
    void say_it(const std::string& begin, kit::State& state);
    void go_to_named(kit::State& state);
    void record();
    void take_tool(const std::string& number);
    void take_what_hangs_somewhere();
    void drop(const std::string& what);
    void press_panel(const std::string& key);
    void next_belief(const std::string& cause);
    void wait_for(const std::string& how);
    bool obey_time(const kit::Command& command);
    bool obey_view(const kit::Command& command, kit::State& state);
    bool obey_camera(const kit::Command& command, const kit::State& state);
    void zoom(double by, std::optional<kit::Point> about);
    bool obey_hands(const kit::Command& command, kit::State& state);
    void notice_changes();
    [[nodiscard]] screens::RailView rail(const Known& all) const;
    void say_time_is_up();

    views::Visit& visit_;
    const Preferences& preferences_;
    Say say_;
    std::vector<Thing> things_;
    std::vector<Offer> offers_;

    std::string selected_ = "customer";
    std::size_t page_ = 0;  // of its actions
    std::size_t in_hand_;   // index into the belt
    screens::SheetShown sheet_ = screens::SheetShown::house;
    screens::Camera camera_;
    std::optional<kit::Roam> roam_;  // of the drawing as it was last placed
    kit::Point sheet_middle_;        // on the screen
    bool just_selected_ = false;     // and not drawn yet
    std::string focus_at_selection_;
    std::optional<screens::ReplayView> moment_;
    screens::InFront front_ = screens::InFront::nothing;
    std::string notice_title_, notice_;
    std::string compact_tab_ = "sheet";
    bool paused_ = false;
    bool said_time_is_up_ = false;
    int speed_ = 1;
    std::string wait_ = "30 s";
    double owed_s_ = 0.0, since_stall_s_ = 1.0e6, here_s_ = 0.0, said_at_s_ = 0.0;
    std::string status_, status_time_, only_look_;
    std::string said_;  // of the status, without what happened by itself after it
    Draft draft_;
    std::string draft_problem_;
    bool choosing_cause_ = false, choosing_confidence_ = false;
    bool wants_to_hand_in_ = false;
    screens::CauseAs choosing_as_ = screens::CauseAs::the_cause;
    Watcher watcher_;
};

}  // namespace emberpath::desktop
