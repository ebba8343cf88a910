#include "ui/pages/lifter/ratings_view.h"

#include "ui/charts/panels_chart.h"
#include "ui/charts/ratings_spec.h"

namespace steelyard {

RatingsView::RatingsView(QWidget* parent) : PanelsView(tr("Ratings and repetitions"), parent) {}

void RatingsView::show(const ShownLine& shown)
{
    PanelsSpec spec = buildRatingsSpec({shown.lifter->log, shown.record(), shown.reading(), shown.lifter->repetitions},
                                       optionsFor(shown));
    const QString caution = tr(
        "Zones of discomfort: the pain-monitoring model (Thomeé 1997; Silbernagel 2007); hollow: on another lift. They "
        "sort what was said and diagnose nothing. Stop what hurts; if it lasts, swells, or spreads, see a licensed "
        "professional.");
    setFootnote(spec.summary + u' ' + caution);
    showSpec(std::move(spec),
             tr("No sessions of this line in this stretch of time. Here stands how they felt, what gave out first, "
                "discomfort by joint, and how alike the repetitions were. Choose a longer stretch above."));
    lookAt(shown.exposure());
}

}  // namespace steelyard
