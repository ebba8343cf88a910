#include "ui/pages/lifter/lifter_views.h"

#include "core/book/book.h"
#include "ui/pages/lifter/body_view.h"
#include "ui/pages/lifter/compare_view.h"
#include "ui/pages/lifter/curve_view.h"
#include "ui/pages/lifter/decisions_view.h"
#include "ui/pages/lifter/explaining_view.h"
#include "ui/pages/lifter/logbook_view.h"
#include "ui/pages/lifter/progress_view.h"
#include "ui/pages/lifter/ratings_view.h"
#include "ui/pages/lifter/repetitions_view.h"
#include "ui/pages/lifter/training_view.h"
#include "ui/pages/lifter/trials_view.h"

namespace steelyard {

std::vector<LifterView*> makeLifterViews(const UiContext& context, QWidget* parent)
{
    std::vector<LifterView*> views;
    views.push_back(new ProgressView(parent));
    views.push_back(new CompareView(context.jobs, context.book.path(), parent));
    views.push_back(new CurveView(context.jobs, parent));
    views.push_back(new RatingsView(parent));
    views.push_back(new TrainingView(parent));
    views.push_back(new DecisionsView(parent));
    views.push_back(new LogbookView(context, parent));
    views.push_back(new BodyView(context, parent));
    views.push_back(new RepetitionsView(context, parent));
    views.push_back(new TrialsView(context, parent));
    views.push_back(new ExplainingView(context.jobs, parent));
    return views;
}

}  // namespace steelyard
