#include "ui/pages/lifter/lifter_views.h"

#include "ui/pages/lifter/decisions_view.h"
#include "ui/pages/lifter/explaining_view.h"
#include "ui/pages/lifter/progress_view.h"

namespace steelyard {

std::vector<LifterView*> makeLifterViews(const UiContext& context, QWidget* parent)
{
    return {
        new ProgressView(parent),
        new DecisionsView(parent),
        new ExplainingView(context.jobs, parent),
    };
}

}  // namespace steelyard
