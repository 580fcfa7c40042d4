#pragma once
/// An invented house with invented figures: for pictures, tests and the first look at a screen. No figure in
/// it comes from the model.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

/// Twenty minutes into a visit: manometer at P1, six readings, some causes struck out.
[[nodiscard]] JobView sample_job();
/// The same visit at its first moment: nothing checked, nothing recorded.
[[nodiscard]] JobView sample_arrival();
/// A house on a gas cylinder with other rooms.
[[nodiscard]] JobView sample_cottage();

}  // namespace emberpath::screens
