#include "ui/pages/lifter/progress_view.h"

#include "ui/charts/progress_chart.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/set_words.h"

#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>

namespace steelyard {
namespace {

constexpr int kRestingDays = 120;  // a line that rested for longer is shown to its end; nothing is expected of it

}  // namespace

ProgressView::ProgressView(QWidget* parent)
    : LifterView(parent), m_chart(new ProgressChart(this)), m_note(new QLabel(this))
{
    m_note->setTextFormat(Qt::PlainText);
    m_note->setForegroundRole(QPalette::PlaceholderText);
    m_note->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_note->setWordWrap(true);
    m_note->setFixedWidth(190);
    auto* beside = new QHBoxLayout(this);
    beside->setContentsMargins({});
    beside->addWidget(m_chart, 1);
    beside->addWidget(m_note);
    setFocusProxy(m_chart);
    connect(m_chart, &ProgressChart::pointedAt, this, &ProgressView::showNote);
    connect(m_chart, &ProgressChart::selectedSession, this, &LifterView::sessionLookedAt);
    connect(m_chart, &ProgressChart::setsWanted, this, &LifterView::setsWanted);
    connect(m_chart, &ProgressChart::lineStepped, this, &LifterView::lineStepped);
}

void ProgressView::show(const ShownLine& shown)
{
    m_shown = shown;
    ProgressOptions options;
    options.unit = shown.unit();
    options.asOf = shown.today;
    options.from = shown.from();
    const LineRecord& record = shown.record();
    const QDate last = record.exposures.back().date;
    if (last.daysTo(options.asOf) > kRestingDays) {
        options.asOf = last;
        options.nextSet = false;
    }
    const AthleteLog& log = shown.lifter->log;
    options.layoffDays = shown.lifter->engine->thresholds().layoffDays;
    m_chart->setSpec(buildProgressSpec(
        {shown.reading(), log.blocks, log.decisions, record.id, lineTitle(record), &record, &log.trials,
         options.nextSet ? aheadOf(*shown.lifter, shown.line) : std::vector<CapacityAhead>()},
        options));
    lookAt(shown.exposure());
}

void ProgressView::takeFocus()
{
    m_chart->setFocus();
}

void ProgressView::lookAt(int exposure)
{
    m_chart->select(exposure);
    showNote(exposure);
}

void ProgressView::showNote(int exposure)
{
    const auto& exposures = m_shown.record().exposures;
    const bool there = exposure >= 0 && exposure < static_cast<int>(exposures.size());
    if (!there) {
        m_note->clear();
        return;
    }
    QStringList lines = m_chart->readout(exposure);
    if (!lines.isEmpty()) lines.removeFirst();  // the best set stands among the sets
    m_note->setText(sessionWords(exposures[static_cast<std::size_t>(exposure)]) + QStringLiteral("\n\n")
                    + lines.join(u'\n'));
}

ChartTable ProgressView::table() const
{
    return m_chart->spec().table;
}

QWidget* ProgressView::drawing() const
{
    return m_chart;
}

}  // namespace steelyard
