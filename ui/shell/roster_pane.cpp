#include "ui/shell/roster_pane.h"

#include "ui/models/roster_delegate.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {

RosterPane::RosterPane(RosterModel& model, QWidget* parent)
    : QWidget(parent),
      m_model(model),
      m_search(new QLineEdit(this)),
      m_group(new QComboBox(this)),
      m_order(new QComboBox(this)),
      m_list(new QListView(this)),
      m_count(new QLabel(this))
{
    m_search->setPlaceholderText(tr("Find a lifter   Ctrl+F"));
    m_search->setAccessibleName(tr("Find a lifter"));
    m_search->setClearButtonEnabled(true);
    m_search->installEventFilter(this);
    m_group->setAccessibleName(tr("Group"));
    m_group->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_order->setAccessibleName(tr("Order"));
    m_order->addItem(tr("worst first"));
    m_order->addItem(tr("by name"));
    m_count->setTextFormat(Qt::PlainText);
    m_filter.setSourceModel(&m_model);
    m_list->setModel(&m_filter);
    m_list->setItemDelegate(new RosterDelegate(m_list));
    m_list->setUniformItemSizes(true);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setAccessibleName(tr("Roster"));
    auto* tools = new QHBoxLayout;
    tools->addWidget(m_group, 1);
    tools->addWidget(m_order, 1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(6, 8, 0, 4);
    layout->setSpacing(5);
    layout->addWidget(m_search);
    layout->addLayout(tools);
    layout->addWidget(m_list, 1);
    layout->addWidget(m_count);
    setMinimumWidth(fontMetrics().averageCharWidth() * 34);

    connect(m_search, &QLineEdit::textChanged, this, [this](const QString& text) {
        m_filter.setSearch(text);
        restoreSelection();
    });
    connect(m_group, &QComboBox::currentIndexChanged, this, [this] {
        m_filter.setGroup(m_group->currentData().toString());
        restoreSelection();
    });
    connect(m_order, &QComboBox::currentIndexChanged, this,
            [this](int index) { setOrder(index == 0 ? RosterOrder::Attention : RosterOrder::Name); });
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, &RosterPane::followSelection);
    connect(&m_model, &RosterModel::firstStacked, this, &RosterPane::chooseWorst);
    connect(&m_model, &QAbstractItemModel::modelReset, this, [this] {
        readGroups();
        restoreSelection();
    });
    readGroups();
    restoreSelection();
}

void RosterPane::readGroups()
{
    const QString before = m_group->currentData().toString();
    const QSignalBlocker quiet(m_group);
    m_group->clear();
    m_group->addItem(tr("everybody"), QString());
    for (const QString& group : m_model.groups()) m_group->addItem(group, group);
    m_group->setCurrentIndex(std::max(0, m_group->findData(before)));
    m_group->setVisible(m_group->count() > 1);
    m_filter.setGroup(m_group->currentData().toString());
}

void RosterPane::followSelection(const QModelIndex& current)
{
    if (m_restoring) return;
    m_chosenByCoach = true;
    const QModelIndex source = m_filter.mapToSource(current);
    const auto chosen = source.isValid() ? std::optional(m_model.row(source).athlete) : std::nullopt;
    if (!chosen || chosen == m_chosen) return;
    m_chosen = chosen;
    Q_EMIT athleteChosen(m_chosen);
}

// After a filter or a reset: the same lifter when still in sight, else the first one.
void RosterPane::restoreSelection()
{
    sayCount();
    const auto row = m_chosen ? m_model.rowOf(*m_chosen) : std::nullopt;
    QModelIndex index = row ? m_filter.mapFromSource(m_model.index(*row)) : QModelIndex();
    if (!index.isValid() && m_filter.rowCount() > 0) index = m_filter.index(0, 0);
    m_restoring = true;
    m_list->setCurrentIndex(index);
    m_restoring = false;
    const bool byCoach = m_chosenByCoach;
    if (index.isValid())
        followSelection(index);
    else if (m_chosen && !row) {
        m_chosen.reset();
        Q_EMIT athleteChosen(m_chosen);
    }
    m_chosenByCoach = byCoach;
}

void RosterPane::chooseWorst()
{
    if (m_chosenByCoach || m_filter.rowCount() == 0) return;
    // Who was finished in an earlier sitting isn't begun with again.
    const auto isFinished = [&](int row) { return m_model.row(m_filter.mapToSource(m_filter.index(row, 0))).finished; };
    int row = 0;
    while (row + 1 < m_filter.rowCount() && isFinished(row)) ++row;
    m_list->setCurrentIndex(m_filter.index(isFinished(row) ? 0 : row, 0));
    m_list->scrollTo(m_list->currentIndex());
}

void RosterPane::sayCount()
{
    const int all = m_model.rowCount();
    const int shown = m_filter.rowCount();
    if (shown == 0 && all > 0)
        m_count->setText(tr("Nobody of that name. Escape shows everybody."));
    else if (shown < all)
        m_count->setText(tr("%1 of %2 lifters").arg(QString::number(shown), QString::number(all)));
    else
        m_count->setText(tr("%n lifter(s)", nullptr, all));
}

void RosterPane::choose(Id<Athlete> athlete)
{
    if (const auto row = m_model.rowOf(athlete)) {
        const auto isShown = [&] { return m_filter.mapFromSource(m_model.index(*row)).isValid(); };
        if (!isShown()) m_search->clear();
        if (!isShown()) m_group->setCurrentIndex(0);
        m_list->setCurrentIndex(m_filter.mapFromSource(m_model.index(*row)));
    }
}

void RosterPane::step(int by)
{
    const int count = m_filter.rowCount();
    if (count == 0) return;
    const int row = std::clamp(m_list->currentIndex().row() + by, 0, count - 1);
    m_list->setCurrentIndex(m_filter.index(row, 0));
}

void RosterPane::stepToUnfinished()
{
    const int count = m_filter.rowCount();
    const int here = m_list->currentIndex().row();
    for (int away = 1; away < count; ++away) {
        const QModelIndex index = m_filter.index((here + away) % count, 0);
        if (m_model.row(m_filter.mapToSource(index)).finished) continue;
        m_list->setCurrentIndex(index);
        return;
    }
    step(1);
}

void RosterPane::startSearch()
{
    m_search->setFocus(Qt::ShortcutFocusReason);
    m_search->selectAll();
}

void RosterPane::switchOrder()
{
    m_order->setCurrentIndex(1 - m_order->currentIndex());
}

// Choosing an order is also when the lifters are stacked anew: between, everybody keeps their row.
void RosterPane::setOrder(RosterOrder order)
{
    const QSignalBlocker quiet(m_order);
    m_order->setCurrentIndex(order == RosterOrder::Attention ? 0 : 1);
    m_model.restack();
    m_filter.setOrder(order);
    m_list->scrollTo(m_list->currentIndex());
}

bool RosterPane::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_search || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Down:
        step(1);
        return true;
    case Qt::Key_Up:
        step(-1);
        return true;
    case Qt::Key_Escape:
        m_search->clear();
        Q_EMIT leftSearch();
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT leftSearch();
        return true;
    default:
        return false;
    }
}

}  // namespace steelyard
