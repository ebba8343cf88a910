#include "ui/pages/lifter/why_view.h"

#include "ui/pages/lifter/why_words.h"

#include <QtWidgets/QApplication>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QStyledItemDelegate>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kLeastSetWidth = 90;

// Room on both sides of a cell, so that a number at the right end doesn't touch the word of the next column.
class RoomyDelegate final : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        QStyleOptionViewItem ground = option;
        initStyleOption(&ground, index);
        const QStyle* style = ground.widget ? ground.widget->style() : QApplication::style();
        style->drawPrimitive(QStyle::PE_PanelItemViewItem, &ground, painter, ground.widget);
        QStyleOptionViewItem text = option;
        text.rect.adjust(kCellRoom, 0, -kCellRoom, 0);
        QStyledItemDelegate::paint(painter, text, index);
    }
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        return QStyledItemDelegate::sizeHint(option, index) + QSize(2 * kCellRoom, 0);
    }

private:
    static constexpr int kCellRoom = 3;
};

QLabel* whyLabel(QWidget* parent, bool quiet)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setFocusPolicy(Qt::NoFocus);
    if (quiet) label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace

WhyView::WhyView(QWidget* parent)
    : QWidget(parent),
      m_model(new WhyModel(this)),
      m_decision(whyLabel(this, false)),
      m_table(new QTableView(this)),
      m_note(whyLabel(this, true))
{
    m_table->setModel(m_model);
    m_table->setItemDelegate(new RoomyDelegate(m_table));
    m_table->setAccessibleName(tr("Sets that carried the verdict"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setShowGrid(false);
    m_table->setWordWrap(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setTabKeyNavigation(false);
    m_table->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->horizontalHeader()->setMinimumSectionSize(20);
    m_table->setTextElideMode(Qt::ElideRight);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(6);
    all->addWidget(m_decision);
    all->addWidget(m_table, 1);
    all->addWidget(m_note);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& now) {
        if (now.isValid()) Q_EMIT sessionLookedAt(m_model->exposureAt(now.row()));
    });
    connect(m_table, &QTableView::activated, this,
            [this](const QModelIndex& index) { Q_EMIT sessionWanted(m_model->exposureAt(index.row())); });
}

void WhyView::showWaiting()
{
    m_model->setExplanation({});
    m_decision->setText(tr("Going through the sets…"));
    m_note->clear();
}

void WhyView::showExplanation(const LineReading& reading, LineExplanation explanation, const VerdictThresholds& limits)
{
    m_model->setExplanation(std::move(explanation));
    m_decision->setText(decisionWords(reading, m_model->explanation(), limits));
    m_note->setText(m_model->rowCount() == 0
                        ? tr("No set of this line in the last twelve weeks.")
                        : tr("The last twelve weeks. Reps are repetitions to failure. Weeks that pass move the odds as "
                             "well, which no set is blamed for. Enter goes to the session, Escape back."));
    fitColumns();
}

// Every column as wide as its words. Where that is too much the set gives way, never the answer at the right end; where
// there is room to spare it stays behind the answer, so that a row is read without a leap.
void WhyView::fitColumns()
{
    m_table->horizontalHeader()->setStretchLastSection(false);  // which would count as width that is wanted
    m_table->resizeColumnsToContents();
    int others = 0;
    for (int column = 0; column < m_model->columnCount(); ++column)
        if (column != WhyModel::SetColumn) others += m_table->columnWidth(column);
    // Room for the scroll bar is kept whether or not it is there yet.
    const int room = m_table->contentsRect().width() - m_table->verticalScrollBar()->sizeHint().width() - others;
    const int wanted = std::max(kLeastSetWidth, m_table->columnWidth(WhyModel::SetColumn));
    m_table->setColumnWidth(WhyModel::SetColumn, std::clamp(room, kLeastSetWidth, wanted));
    m_table->horizontalHeader()->setStretchLastSection(true);
}

void WhyView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    fitColumns();
}

void WhyView::lookAt(int exposure)
{
    if (m_model->rowCount() == 0) return;
    const int row = std::max(0, m_model->rowOfExposure(exposure));
    m_table->setCurrentIndex(m_model->index(row, 0));
    m_table->scrollTo(m_model->index(row, 0),
                      row == 0 ? QAbstractItemView::PositionAtTop : QAbstractItemView::EnsureVisible);
}

QString WhyView::decision() const
{
    return m_decision->text();
}

void WhyView::takeFocus()
{
    m_table->setFocus(Qt::ShortcutFocusReason);
}

}  // namespace steelyard
