#include "ui/pages/lifter/explaining_view.h"

#include "ui/pages/lifter/why_view.h"

#include <QtWidgets/QVBoxLayout>

namespace steelyard {

ExplainingView::ExplainingView(JobRunner& jobs, QWidget* parent)
    : LifterView(parent), m_jobs(jobs), m_why(new WhyView(this))
{
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(m_why);
    connect(m_why, &WhyView::sessionLookedAt, this, &LifterView::sessionLookedAt);
    connect(m_why, &WhyView::sessionWanted, this, &LifterView::sessionWanted);
}

ExplainingView::~ExplainingView()
{
    m_job.cancel();
}

void ExplainingView::show(const ShownLine& shown)
{
    leave();
    m_shown = shown;
    const int asked = m_asked;
    m_why->showWaiting();
    m_job = m_jobs.run(
        this, tr("Going through the sets of a line"),
        [lifter = shown.lifter, line = shown.line](const Progress&) { return explainLineOf(*lifter, line); },
        [this, asked](LineExplanation answer) {
            if (asked != m_asked) return;
            m_why->showExplanation(m_shown.reading(), std::move(answer), m_shown.lifter->engine->thresholds());
            m_why->lookAt(m_shown.exposure());
        });
}

void ExplainingView::leave()
{
    m_job.cancel();
    ++m_asked;
}

void ExplainingView::takeFocus()
{
    m_why->takeFocus();
}

}  // namespace steelyard
