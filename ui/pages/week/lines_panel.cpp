#include "ui/pages/week/lines_panel.h"

#include "ui/format/format.h"
#include "ui/models/sparkline_delegate.h"
#include "ui/models/two_line_delegate.h"

#include <QtCore/QSortFilterProxyModel>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

void setUpLinesTable(QTableView* table)
{
    table->setSortingEnabled(true);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setShowGrid(false);
    table->setWordWrap(false);
    table->setTabKeyNavigation(false);
    table->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    table->setFrameShape(QFrame::NoFrame);
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() * 2 + 6);
    table->horizontalHeader()->setHighlightSections(false);
}

}  // namespace

LinesPanel::LinesPanel(QWidget* parent)
    : QWidget(parent),
      m_model(new LinesModel(this)),
      m_sorted(new QSortFilterProxyModel(this)),
      m_title(new QLabel(this)),
      m_table(new QTableView(this)),
      m_why(new QLabel(this))
{
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 6, 0, 0);
    layout->setSpacing(4);
    m_title->setTextFormat(Qt::PlainText);
    m_title->setContentsMargins(14, 0, 0, 0);
    m_sorted->setSourceModel(m_model);
    m_sorted->setSortRole(LinesModel::SortRole);
    m_table->setModel(m_sorted);
    setUpLinesTable(m_table);
    m_table->sortByColumn(-1, Qt::AscendingOrder);
    m_table->setItemDelegate(new TwoLineDelegate(LinesModel::DetailRole, m_table));
    m_table->horizontalHeader()->setSectionResizeMode(LinesModel::nameColumn(), QHeaderView::Stretch);
    m_table->setItemDelegateForColumn(LinesModel::sparklineColumn(), new SparklineDelegate(m_table));
    m_table->setAccessibleName(tr("Lift lines"));
    m_why->setTextFormat(Qt::PlainText);
    m_why->setWordWrap(true);
    m_why->setContentsMargins(14, 4, 8, 6);
    m_why->hide();
    layout->addWidget(m_title);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_why);
    connect(m_table, &QTableView::activated, this, [this] {
        if (const auto line = chosen()) Q_EMIT lineOpened(*line);
    });
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &LinesPanel::showWhy);
}

void LinesPanel::setLines(const std::vector<LineReview>& lines, MassUnit unit)
{
    const auto before = chosen();
    m_model->setLines(lines, unit);
    m_title->setText(lines.empty() ? tr("No lift lines yet: nothing is logged.")
                                   : tr("%n lift line(s)   —   G goes here, Enter opens the chart, Y says why", nullptr,
                                        static_cast<int>(lines.size())));
    m_table->resizeColumnsToContents();
    if (before && m_model->rowOf(*before)) choose(*before);
    if (!chosen() && !lines.empty()) m_table->setCurrentIndex(m_sorted->index(0, 0));
    showWhy();
}

void LinesPanel::choose(Id<LiftLine> line)
{
    if (const auto row = m_model->rowOf(line))
        m_table->setCurrentIndex(m_sorted->mapFromSource(m_model->index(*row, 0)));
}

std::optional<Id<LiftLine>> LinesPanel::chosen() const
{
    const QModelIndex index = m_sorted->mapToSource(m_table->currentIndex());
    if (!index.isValid()) return std::nullopt;
    return m_model->lines().at(static_cast<std::size_t>(index.row())).id;
}

void LinesPanel::takeFocus()
{
    m_table->setFocus(Qt::ShortcutFocusReason);
}

bool LinesPanel::tableHasFocus() const
{
    return m_table->hasFocus();
}

void LinesPanel::toggleWhy()
{
    m_whyShown = !m_whyShown;
    showWhy();
}

void LinesPanel::showWhy()
{
    const QModelIndex index = m_sorted->mapToSource(m_table->currentIndex());
    m_why->setVisible(m_whyShown && index.isValid());
    if (!index.isValid()) return;
    const LineReview& line = m_model->lines().at(static_cast<std::size_t>(index.row()));
    m_why->setText(tr("%1, %2: %3. %4")
                       .arg(line.exercise, line.variant, format::verdictWord(line.reading.verdict), line.reading.why));
}

}  // namespace steelyard
