#include "ui/pages/lifter/decisions_view.h"

#include "ui/format/people.h"
#include "ui/models/two_line_delegate.h"
#include "ui/pages/lifter/decision_model.h"

#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {

DecisionsView::DecisionsView(QWidget* parent)
    : LifterView(parent), m_model(new DecisionModel(this)), m_table(new QTableView(this)), m_note(new QLabel(this))
{
    m_table->setModel(m_model);
    m_table->setItemDelegate(new TwoLineDelegate(DecisionModel::DetailRole, m_table));
    m_table->setAccessibleName(tr("Decisions about this lifter"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setShowGrid(false);
    m_table->setWordWrap(false);
    m_table->setTabKeyNavigation(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 2 + 8);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_note->setMinimumWidth(1);  // a name without a space must not widen the window
    m_note->setTextFormat(Qt::PlainText);
    m_note->setWordWrap(true);
    m_note->setForegroundRole(QPalette::PlaceholderText);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(m_table, 1);
    all->addWidget(m_note);
    connect(m_table, &QTableView::activated, this, [this](const QModelIndex& index) { openLine(index.row()); });
}

void DecisionsView::show(const ShownLine& shown)
{
    m_shown = shown;
    if (std::exchange(m_listed, shown.lifter) != shown.lifter) {
        const AthleteLog& log = shown.lifter->log;
        m_model->setOutcomes(decisionOutcomes(log, shown.lifter->readings, shown.today), &log);
        fitColumns();
    }
    const bool none = m_model->rowCount() == 0;
    m_table->setVisible(!none);
    m_note->setText(
        none ? tr("No decision about %1 so far. Answer a flag in the week's review, and what happened in the four "
                  "weeks after will stand here.")
                   .arg(format::person(shown.lifter->log.athlete.value.name))
             : tr("What followed a decision need not come from it. Enter opens the progress of the lift, Escape "
                  "goes back."));
}

// What followed is what one comes for: it keeps its width, and flag and answer share the rest.
void DecisionsView::fitColumns()
{
    enum Column { Decided, FlagColumn, Answer, After };
    m_table->resizeColumnsToContents();
    const int bar = m_table->verticalScrollBar()->sizeHint().width();
    const int rest = width() - bar - m_table->columnWidth(Decided) - m_table->columnWidth(After);
    const int wanted = m_table->columnWidth(FlagColumn) + m_table->columnWidth(Answer);
    if (rest >= wanted || wanted == 0) return;
    const int least = fontMetrics().averageCharWidth() * 14;
    const int flag = std::max(least, rest * m_table->columnWidth(FlagColumn) / wanted);
    m_table->setColumnWidth(FlagColumn, flag);
    m_table->setColumnWidth(Answer, std::max(least, rest - flag));
}

void DecisionsView::resizeEvent(QResizeEvent* event)
{
    LifterView::resizeEvent(event);
    fitColumns();
}

void DecisionsView::openLine(int row)
{
    const DecisionOutcome* one = m_model->at(row);
    if (!one || !one->line) return;
    const LineRecord& record = m_shown.lifter->log.lines[*one->line];
    // The session that the decision was made on.
    const auto after = std::ranges::upper_bound(record.exposures, one->decision->value.madeOn, {}, &Exposure::date);
    const auto exposure = static_cast<int>(std::max<std::ptrdiff_t>(0, after - record.exposures.begin() - 1));
    Q_EMIT lineWanted(record.id);
    Q_EMIT sessionWanted(exposure);
}

void DecisionsView::takeFocus()
{
    if (m_table->isVisibleTo(this)) {
        m_table->setFocus(Qt::ShortcutFocusReason);
        if (!m_table->currentIndex().isValid()) m_table->selectRow(0);
    } else {
        setFocus();
    }
}

ChartTable DecisionsView::table() const
{
    return m_model->table();
}

}  // namespace steelyard
