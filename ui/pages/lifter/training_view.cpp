#include "ui/pages/lifter/training_view.h"

#include "ui/charts/training_spec.h"

namespace steelyard {

TrainingView::TrainingView(QWidget* parent) : PanelsView(tr("Training by week"), parent)
{
    setFootnote(
        tr("Session effort is the mean effort of the sets (10 less the repetitions in reserve) times their number: the "
           "logbook holds no rating of whole sessions and no minutes. Monotony and strain after Foster 1998; compare a "
           "lifter’s weeks with each other, there is no limit for everybody."));
}

void TrainingView::show(const ShownLine& shown)
{
    showSpec(
        buildTrainingSpec(shown.lifter->log, optionsFor(shown)),
        tr("No training in this stretch of time. Here stand, week by week, the sets each muscle got beside the aim, "
           "and how hard and how even the training was. Choose a longer stretch above."));
}

}  // namespace steelyard
