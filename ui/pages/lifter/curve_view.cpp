#include "ui/pages/lifter/curve_view.h"

#include "ui/charts/curve_spec.h"

namespace steelyard {

CurveView::CurveView(JobRunner& jobs, QWidget* parent)
    : PanelsView(tr("Repetitions against load"), parent), m_jobs(jobs)
{}

CurveView::~CurveView()
{
    m_job.cancel();
}

void CurveView::show(const ShownLine& shown)
{
    leave();
    m_shown = shown;
    const int asked = m_asked;
    showSpec({}, tr("Working out the curve…"));
    m_job = m_jobs.run(
        this, tr("Working out a lifter’s own curve"),
        [lifter = shown.lifter, line = shown.line](const Progress&) { return curveOf(*lifter, line); },
        [this, asked](const std::optional<LineCurve>& curve) {
            if (asked != m_asked) return;
            PanelsSpec spec = curve ? buildCurveSpec(*curve, optionsFor(m_shown)) : PanelsSpec();
            setFootnote(spec.summary + u' '
                        + tr("Sets of the last %n week(s), as they would be today: moved by what strength changed "
                             "since, and by what earlier sets of the session cost.",
                             nullptr, kCurveWeeks));
            showSpec(std::move(spec),
                     tr("No curve can be said of this line yet. It takes %n set(s) near failure (up to four in "
                        "reserve) in half a year, at loads that differ; then repetitions to failure stand here against "
                        "load, beside the published curve.",
                        nullptr, kLeastCurveSets));
            lookAt(m_shown.exposure());
            Q_EMIT changed();
        });
}

void CurveView::leave()
{
    m_job.cancel();
    ++m_asked;
}

}  // namespace steelyard
