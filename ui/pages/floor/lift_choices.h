// What the chooser offers while a session is keyed, each with what taking it means for the history.
//
//   chooser->choose(title, otherWayChoices(desk, exercise), true, [&](const LiftLine& lift) { … });
#pragma once

#include "core/book/keying_desk.h"
#include "ui/widgets/lift_chooser.h"

namespace steelyard {

[[nodiscard]] std::vector<LiftChoice> otherWayChoices(const KeyingDesk&, std::size_t exercise);
[[nodiscard]] std::vector<LiftChoice> choicesToAdd(const KeyingDesk&);

}  // namespace steelyard
