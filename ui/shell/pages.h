// The places of the window, in their order. A new page is one include and one line here.
#pragma once

#include "ui/shell/context.h"
#include "ui/shell/page.h"

#include <vector>

namespace steelyard {

// Children of `parent`.
[[nodiscard]] std::vector<Page*> makePages(const UiContext& context, QWidget* parent);

}  // namespace steelyard
