#include "ui/pages/block/block_day_list.h"

#include "ui/pages/block/block_day_model.h"
#include "ui/widgets/checked_line_delegate.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QHeaderView>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kDayCellPad = 9;

}  // namespace

BlockDayList::BlockDayList(QWidget* parent) : BlockPlacesView(parent), m_model(new BlockDayModel(this))
{
    auto* delegate = new CheckedLineDelegate(
        [this](const QModelIndex& index, const QString& text) {
            return m_model->typedSlot(index, text) ? QString() : BlockDayModel::hint(index.column());
        },
        this);
    setModel(m_model);
    setItemDelegate(delegate);
    setAccessibleName(tr("One day of the block"));
    setFrameShape(QFrame::NoFrame);
    setShowGrid(false);
    setWordWrap(false);
    setTabKeyNavigation(false);
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + kDayCellPad);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionsClickable(false);
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setSectionResizeMode(BlockDayModel::Lift, QHeaderView::Stretch);
    horizontalHeader()->setSectionResizeMode(BlockDayModel::Note, QHeaderView::Interactive);
    setColumnWidth(BlockDayModel::Note, fontMetrics().averageCharWidth() * 16);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(selectionModel(), &QItemSelectionModel::selectionChanged, this, &BlockPlacesView::cursorMoved);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this, &BlockPlacesView::cursorMoved);
    connect(m_model, &BlockDayModel::typed, this, &BlockPlacesView::doseTyped, Qt::QueuedConnection);
    connect(m_model, &BlockDayModel::typingSaid, this, &BlockPlacesView::typingSaid);
    connect(delegate, &CheckedLineDelegate::said, this, &BlockPlacesView::typingSaid);
    connect(delegate, &CheckedLineDelegate::ended, this, &BlockPlacesView::typingEnded, Qt::QueuedConnection);
}

void BlockDayList::show(BlockShownPtr shown)
{
    QDate date = m_model->date();
    if (shown && shown->hasWeek()) {
        const auto& days = shown->week().days;
        const bool there = std::ranges::find(days, date, &PlannedDay::date) != days.end();
        if (!there) date = days.empty() ? shown->dateOfColumn(0) : days.front().date;
    }
    m_model->setShown(std::move(shown), date);
}

PlanCursor BlockDayList::cursor() const
{
    if (!m_model->shown()) return {};
    return {m_model->date(), m_model->placeOf(currentIndex().row())};
}

PlanPlaces BlockDayList::chosen() const
{
    PlanPlaces places;
    for (const QModelIndex& index : selectionModel()->selectedIndexes())
        if (const auto place = m_model->placeOf(index.row())) places.push_back(*place);
    std::ranges::sort(places);
    const auto twice = std::ranges::unique(places);
    places.erase(twice.begin(), twice.end());
    return places;
}

void BlockDayList::goTo(QDate date, std::optional<std::size_t> slot)
{
    const int column = std::max(0, currentIndex().column());
    if (date != m_model->date() && m_model->shown())
        m_model->setShown(std::make_shared<const BlockShown>(*m_model->shown()), date);
    const int row = std::min(static_cast<int>(slot.value_or(0)), m_model->rowCount() - 1);
    setCurrentIndex(m_model->index(row, column));
}

bool BlockDayList::startTyping()
{
    QModelIndex index = currentIndex();
    if (index.column() == BlockDayModel::Lift) index = index.siblingAtColumn(BlockDayModel::Sets);
    if (!(m_model->flags(index) & Qt::ItemIsEditable)) return false;
    setCurrentIndex(index);
    edit(index);
    if (isTyping()) Q_EMIT typingSaid(BlockDayModel::hint(index.column()));
    return isTyping();
}

void BlockDayList::activate()
{
    if (cursor().slot)
        startTyping();
    else
        Q_EMIT addWanted();
}

void BlockDayList::keyPressEvent(QKeyEvent* event)
{
    const bool enters = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enters && !isTyping()) return activate();
    const bool walks = event->key() == Qt::Key_Left || event->key() == Qt::Key_Right;
    if (walks && event->modifiers() == Qt::ControlModifier) return stepDay(event->key() == Qt::Key_Left ? -1 : 1);
    BlockPlacesView::keyPressEvent(event);
}

void BlockDayList::stepDay(int by)
{
    if (!m_model->shown() || !m_model->shown()->hasWeek()) return;
    const auto& days = m_model->shown()->week().days;
    const auto now = std::ranges::find(days, m_model->date(), &PlannedDay::date);
    if (now == days.end() || (by < 0 ? now == days.begin() : std::next(now) == days.end())) return;
    goTo(std::next(now, by)->date, 0);
}

void BlockDayList::mouseDoubleClickEvent(QMouseEvent* event)
{
    setCurrentIndex(indexAt(event->position().toPoint()));
    activate();
}

}  // namespace steelyard
