#include "ui/pages/block/block_grid.h"

#include "ui/pages/block/block_grid_model.h"
#include "ui/pages/block/block_slot_delegate.h"
#include "ui/shell/theme.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QApplication>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QScrollBar>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kRestLetters = 4;
constexpr int kWidestDay = 380;
constexpr int kHeaderPad = 7;

// The days' names and sums as plain words over a hairline.
class DayHeader final : public QHeaderView {
public:
    explicit DayHeader(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {}

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override
    {
        const ThemeColours& colours = themeColours(palette());
        const auto header = [&](int role) { return model()->headerData(section, Qt::Horizontal, role); };
        const QStringList lines = header(Qt::DisplayRole).toString().split(u'\n');
        const bool isRest = header(Qt::TextAlignmentRole).value<Qt::Alignment>().testFlag(Qt::AlignHCenter);
        const auto alignment = (isRest ? Qt::AlignHCenter : Qt::AlignLeft) | Qt::AlignVCenter;
        QRect line = rect.adjusted(isRest ? 0 : kHeaderPad, 3, isRest ? 0 : -2, 0);
        line.setHeight(fontMetrics().height());
        painter->save();
        painter->setPen(header(Qt::ForegroundRole).value<QColor>());
        for (const QString& text : lines) {
            painter->setFont(font());
            if (!isRest && &text == &lines.front()) {
                QFont bold = font();
                bold.setBold(true);
                painter->setFont(bold);
            }
            painter->drawText(line, alignment,
                              QFontMetrics(painter->font()).elidedText(text, Qt::ElideRight, line.width()));
            line.translate(0, line.height());
        }
        painter->setPen(colours.hairline);
        painter->drawLine(rect.bottomLeft(), rect.bottomRight());
        painter->restore();
    }
    [[nodiscard]] QSize sectionSizeFromContents(int section) const override
    {
        Q_UNUSED(section)
        return {10, 2 * fontMetrics().height() + 6};
    }
};

}  // namespace

BlockGrid::BlockGrid(QWidget* parent)
    : BlockPlacesView(parent), m_model(new BlockGridModel(this)), m_delegate(new BlockSlotDelegate(*m_model, this))
{
    setHorizontalHeader(new DayHeader(this));
    setModel(m_model);
    setItemDelegate(m_delegate);
    // What is open stands out from the ground; the ground goes on below the days.
    QPalette ground = palette();
    ground.setColor(QPalette::Base, ground.color(QPalette::Window));
    viewport()->setPalette(ground);
    setAccessibleName(tr("The week, day by day"));
    setFrameShape(QFrame::NoFrame);
    setShowGrid(false);
    setWordWrap(false);
    setTabKeyNavigation(false);
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->hide();
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setMinimumSectionSize(10);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionsClickable(false);
    connect(selectionModel(), &QItemSelectionModel::selectionChanged, this, &BlockPlacesView::cursorMoved);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this, &BlockPlacesView::cursorMoved);
    connect(m_delegate, &BlockSlotDelegate::typed, this, &BlockPlacesView::doseTyped, Qt::QueuedConnection);
    connect(m_delegate, &BlockSlotDelegate::typingSaid, this, &BlockPlacesView::typingSaid);
    connect(m_delegate, &BlockSlotDelegate::ended, this, &BlockPlacesView::typingEnded, Qt::QueuedConnection);
}

void BlockGrid::show(BlockShownPtr shown)
{
    const int scrolled = verticalScrollBar()->value();
    const bool past = shown && shown->hasWeek() && shown->dateOfColumn(0) <= shown->today;
    m_carry.reset();
    m_model->setShown(std::move(shown));
    const int lines = past ? 4 : 3;
    m_delegate->setLines(lines);
    verticalHeader()->setDefaultSectionSize(lines * fontMetrics().height() + 8);
    fitColumns();
    verticalScrollBar()->setValue(scrolled);
}

void BlockGrid::fitColumns()
{
    const int columns = m_model->columnCount();
    int training = 0;
    for (int column = 0; column < columns; ++column) training += isTraining(column) ? 1 : 0;
    const int rest = fontMetrics().averageCharWidth() * kRestLetters + 6;
    const int room = viewport()->width() - rest * (columns - training);
    for (int column = 0; column < columns; ++column)
        setColumnWidth(column, isTraining(column) ? std::min(kWidestDay, room / training)
                               : training == 0    ? viewport()->width() / columns
                                                  : rest);
}

bool BlockGrid::isTraining(int column) const
{
    return m_model->dayOf(column).has_value();
}

void BlockGrid::resizeEvent(QResizeEvent* event)
{
    BlockPlacesView::resizeEvent(event);
    fitColumns();
}

PlanCursor BlockGrid::cursor() const
{
    const QModelIndex index = currentIndex();
    if (!index.isValid()) return {};
    return {m_model->dateOf(index.column()), m_model->placeOf(index)};
}

PlanPlaces BlockGrid::chosen() const
{
    PlanPlaces places;
    for (const QModelIndex& index : selectionModel()->selectedIndexes())
        if (const auto place = m_model->placeOf(index)) places.push_back(*place);
    std::ranges::sort(places);
    return places;
}

void BlockGrid::goTo(QDate date, std::optional<std::size_t> slot)
{
    QModelIndex index = m_model->indexOf(date, slot.value_or(0));
    if (!index.isValid()) return;
    // Past the last slot of its day stands the line to add one.
    while (index.row() > 0 && !m_model->slotOf(index) && !m_model->slotOf(index.siblingAtRow(index.row() - 1)))
        index = index.siblingAtRow(index.row() - 1);
    setCurrentIndex(index);
}

bool BlockGrid::startTyping()
{
    const QModelIndex index = currentIndex();
    if (!(m_model->flags(index) & Qt::ItemIsEditable)) return false;
    edit(index);
    return isTyping();
}

void BlockGrid::activate()
{
    const PlanCursor at = cursor();
    if (at.slot)
        startTyping();
    else if (at.date.isValid())
        Q_EMIT addWanted();
}

QModelIndex BlockGrid::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers)
{
    if (action != MoveLeft && action != MoveRight) return BlockPlacesView::moveCursor(action, modifiers);
    const QModelIndex from = currentIndex();
    const int step = action == MoveLeft ? -1 : 1;
    int column = from.column() + step;
    if (!(modifiers & Qt::ControlModifier))
        while (column >= 0 && column < m_model->columnCount() && !isTraining(column)) column += step;
    const QModelIndex to = m_model->index(from.row(), column);
    return to.isValid() ? to : from;
}

void BlockGrid::keyPressEvent(QKeyEvent* event)
{
    const bool enters = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enters && !isTyping()) return activate();
    // With Ctrl the cursor goes along instead of leaving what was chosen behind.
    const bool walks = event->key() == Qt::Key_Left || event->key() == Qt::Key_Right;
    if (walks && event->modifiers() == Qt::ControlModifier) {
        const auto action = event->key() == Qt::Key_Left ? MoveLeft : MoveRight;
        setCurrentIndex(moveCursor(action, event->modifiers()));
        return;
    }
    BlockPlacesView::keyPressEvent(event);
}

void BlockGrid::mousePressEvent(QMouseEvent* event)
{
    const QModelIndex index = indexAt(event->position().toPoint());
    const bool plain = event->modifiers() == Qt::NoModifier || event->modifiers() == Qt::ControlModifier;
    if (event->button() == Qt::LeftButton && plain && m_model->slotOf(index)) {
        const bool chosen = selectionModel()->isSelected(index);
        m_carry = Carry{event->position().toPoint(), index, false, chosen, {}};
        // What is chosen may be about to be carried together; which of it is left chosen is settled on release.
        if (chosen) return;
    }
    BlockPlacesView::mousePressEvent(event);
}

void BlockGrid::mouseMoveEvent(QMouseEvent* event)
{
    if (!m_carry) return BlockPlacesView::mouseMoveEvent(event);
    const QPoint at = event->position().toPoint();
    const bool far = (at - m_carry->pressed).manhattanLength() >= QApplication::startDragDistance();
    if (!m_carry->begun && far && m_model->shown()->isOpen(m_model->dateOf(m_carry->from.column()))) {
        m_carry->begun = true;
        if (!selectionModel()->isSelected(m_carry->from)) setCurrentIndex(m_carry->from);
    }
    m_carry->at = at;
    viewport()->update();
}

BlockGrid::Landing BlockGrid::landingAt(QPoint position) const
{
    const int column = std::clamp(columnAt(position.x()), 0, std::max(0, m_model->columnCount() - 1));
    const auto day = m_model->dayOf(column);
    const int last = day ? static_cast<int>(m_model->shown()->week().days[*day].slotList.size()) : 0;
    const int row = rowAt(position.y());
    if (row < 0) return {column, position.y() < 0 ? 0 : last};
    const QRect cell = visualRect(m_model->index(row, column));
    return {column, std::min(last, position.y() > cell.center().y() ? row + 1 : row)};
}

void BlockGrid::mouseReleaseEvent(QMouseEvent* event)
{
    const auto carry = std::exchange(m_carry, std::nullopt);
    if (!carry) return BlockPlacesView::mouseReleaseEvent(event);
    viewport()->update();
    const bool control = event->modifiers() & Qt::ControlModifier;
    if (!carry->begun) {
        const auto what = control ? QItemSelectionModel::Deselect : QItemSelectionModel::ClearAndSelect;
        if (carry->wasChosen) selectionModel()->setCurrentIndex(carry->from, what);
        return BlockPlacesView::mouseReleaseEvent(event);
    }
    const Landing landing = landingAt(event->position().toPoint());
    const int days = landing.column - carry->from.column();
    Q_EMIT carried(days, static_cast<std::size_t>(landing.row), control);
}

void BlockGrid::mouseDoubleClickEvent(QMouseEvent* event)
{
    m_carry.reset();
    setCurrentIndex(indexAt(event->position().toPoint()));
    activate();
}

void BlockGrid::paintEvent(QPaintEvent* event)
{
    BlockPlacesView::paintEvent(event);
    if (!m_carry || !m_carry->begun) return;
    const Landing landing = landingAt(m_carry->at);
    const QRect cell = visualRect(m_model->index(std::min(landing.row, m_model->rowCount() - 1), landing.column));
    QPainter painter(viewport());
    painter.setPen(QPen(themeColours(palette()).accent, 3));
    painter.drawLine(cell.left() + 2, cell.top(), cell.right() - 2, cell.top());
}

}  // namespace steelyard
