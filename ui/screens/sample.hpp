#pragma once
/// An invented house with invented figures: for pictures, tests and the first look at a screen. No figure in
/// it comes from the model.

#include "ui/screens/author.hpp"
#include "ui/screens/choose.hpp"
#include "ui/screens/debrief_screen.hpp"
#include "ui/screens/settings.hpp"
#include "ui/screens/states.hpp"
#include "ui/screens/write_up.hpp"

namespace emberpath::screens {

/// Twenty minutes into a visit: manometer at P1, six readings, some causes struck out.
[[nodiscard]] JobView sample_job();
/// The same visit at its first moment: nothing checked, nothing recorded.
[[nodiscard]] JobView sample_arrival();
/// A house on a gas cylinder with other rooms.
[[nodiscard]] JobView sample_cottage();

[[nodiscard]] ChooseView sample_choose();
[[nodiscard]] WriteUpView sample_write_up();
[[nodiscard]] DebriefView sample_debrief();
[[nodiscard]] AuthorView sample_author();
[[nodiscard]] SettingsView sample_settings();
[[nodiscard]] LoadingView sample_loading();
[[nodiscard]] ErrorView sample_error();

}  // namespace emberpath::screens
