// Every view of the Lifter page, in the order of its tabs. A new view is a class, a line here and a row in the table of
// actions.
#pragma once

#include "ui/pages/lifter/lifter_view.h"
#include "ui/shell/context.h"

#include <vector>

namespace steelyard {

// Owned by `parent`.
[[nodiscard]] std::vector<LifterView*> makeLifterViews(const UiContext& context, QWidget* parent);

}  // namespace steelyard
