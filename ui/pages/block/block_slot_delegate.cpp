#include "ui/pages/block/block_slot_delegate.h"

#include "ui/pages/block/block_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QGuiApplication>
#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QLineEdit>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kSlotMargin = 7;
constexpr int kSlotPad = 4;
constexpr int kEditorLetters = 26;

// The cell's parts from top to bottom.
class SlotPainter {
public:
    SlotPainter(QPainter& painter, const QStyleOptionViewItem& option)
        : m_painter(painter),
          m_colours(themeColours(option.palette)),
          m_selected(option.state & QStyle::State_Selected),
          m_text(m_selected ? option.palette.color(QPalette::HighlightedText) : m_colours.text),
          m_quiet(m_selected ? option.palette.color(QPalette::HighlightedText) : m_colours.quiet),
          m_metrics(option.fontMetrics),
          m_line(option.rect.adjusted(kSlotMargin, kSlotPad, -kSlotMargin, 0))
    {
        m_line.setHeight(m_metrics.height());
    }

    void name(const QString& text, const QString& mark)
    {
        int width = m_line.width();
        if (!mark.isEmpty()) {
            m_painter.setPen(m_selected ? m_text : m_colours.warm);
            m_painter.drawText(m_line, Qt::AlignRight | Qt::AlignVCenter, mark);
            width -= m_metrics.horizontalAdvance(mark) + kSlotMargin;
        }
        QFont bold = m_painter.font();
        bold.setWeight(QFont::DemiBold);
        m_painter.save();
        m_painter.setFont(bold);
        draw(text, m_text, width);
        m_painter.restore();
        next();
    }
    void line(const QString& text, bool quiet)
    {
        draw(text, quiet ? m_quiet : m_text, m_line.width());
        next();
    }

private:
    void draw(const QString& text, const QColor& colour, int width)
    {
        m_painter.setPen(colour);
        m_painter.drawText(QRect(m_line.topLeft(), QSize(width, m_line.height())), Qt::AlignLeft | Qt::AlignVCenter,
                           QFontMetrics(m_painter.font()).elidedText(text, Qt::ElideRight, width));
    }
    void next() { m_line.translate(0, m_metrics.height()); }

    QPainter& m_painter;
    const ThemeColours& m_colours;
    bool m_selected;
    QColor m_text;
    QColor m_quiet;
    QFontMetrics m_metrics;
    QRect m_line;
};

void drawGround(QPainter& painter, const QStyleOptionViewItem& option, bool open, bool training)
{
    const ThemeColours& colours = themeColours(option.palette);
    const bool selected = option.state & QStyle::State_Selected;
    if (selected && training)
        painter.fillRect(option.rect, option.palette.color(QPalette::Highlight));
    else if (open && training)
        painter.fillRect(option.rect, QGuiApplication::palette().color(QPalette::Base));
    painter.setPen(colours.hairline);
    painter.drawLine(option.rect.topRight(), option.rect.bottomRight());
}

void drawBracket(QPainter& painter, const QStyleOptionViewItem& option, const BlockGridModel& model,
                 const QModelIndex& index, int number)
{
    const auto isSame = [&](int row) {
        const Slot* slot = model.slotOf(model.index(row, index.column()));
        return slot && slot->superset == number;
    };
    const bool first = !isSame(index.row() - 1);
    const bool last = !isSame(index.row() + 1);
    const QRect edge = option.rect.adjusted(2, first ? kSlotPad : 0, 0, last ? -kSlotPad : 0);
    const bool selected = option.state & QStyle::State_Selected;
    painter.setPen(
        QPen(selected ? option.palette.color(QPalette::HighlightedText) : themeColours(option.palette).accent, 2));
    painter.drawLine(edge.topLeft(), edge.bottomLeft());
    if (first) painter.drawLine(edge.topLeft(), edge.topLeft() + QPoint(4, 0));
    if (last) painter.drawLine(edge.bottomLeft(), edge.bottomLeft() + QPoint(4, 0));
}

}  // namespace

BlockSlotDelegate::BlockSlotDelegate(const BlockGridModel& model, QObject* parent)
    : QStyledItemDelegate(parent), m_model(model)
{}

QSize BlockSlotDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    Q_UNUSED(index)
    return {0, m_lines * option.fontMetrics.height() + 2 * kSlotPad};
}

void BlockSlotDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const BlockShown* shown = m_model.shown();
    if (!shown) return;
    painter->save();
    painter->setFont(option.font);
    const bool training = m_model.dayOf(index.column()).has_value();
    const bool open = m_model.dateOf(index.column()) >= shown->firstOpen;
    drawGround(*painter, option, open, training);
    if (const Slot* slot = m_model.slotOf(index)) {
        const auto limits = m_model.limitsOf(*m_model.placeOf(index));
        const QString mark =
            limits.empty() ? QString() : kLimitShape + QStringLiteral(" ") + limitWord(limits.front()->kind);
        const bool pinned = shown->isPinned(*m_model.placeOf(index));
        const QString name = exerciseWords(*slot, shown->library());
        QStringList dose{doseWords(*slot), slot->note.isEmpty() ? QString() : tr("note"), otherProgressionWords(*slot)};
        dose.removeAll(QString());
        SlotPainter cell(*painter, option);
        cell.name(pinned ? kPinShape + QStringLiteral(" ") + name : name, mark);
        cell.line(wayWords(*slot, shown->library()), true);
        cell.line(dose.join(QStringLiteral(" · ")), false);
        if (const QString did = m_model.done(index); !did.isEmpty()) cell.line(tr("done %1").arg(did), true);
        if (slot->superset > 0) drawBracket(*painter, option, m_model, index, slot->superset);
        painter->setPen(themeColours(option.palette).hairline);
        painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    }
    if (option.state & QStyle::State_HasFocus) {
        painter->setPen(QPen(themeColours(option.palette).accent, 2));
        painter->drawRect(option.rect.adjusted(1, 1, -2, -2));
    }
    painter->restore();
}

QWidget* BlockSlotDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                         const QModelIndex& index) const
{
    Q_UNUSED(option)
    auto* line = new QLineEdit(parent);
    line->setAccessibleName(tr("The dose on one line"));
    line->setToolTip(tr("3x8-12 rir2 42.5 120s \"note"));
    m_typed = index;
    connect(line, &QLineEdit::textEdited, this, [this](const QString& text) {
        const auto reading = read(text, m_typed);
        Q_EMIT typingSaid(reading ? QString() : reading.error().text);
    });
    return line;
}

void BlockSlotDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                             const QModelIndex& index) const
{
    Q_UNUSED(index)
    const int width = std::max(option.rect.width(), option.fontMetrics.averageCharWidth() * kEditorLetters);
    QRect place(option.rect.left(), option.rect.top() + 2 * option.fontMetrics.height(), width,
                editor->sizeHint().height());
    const int most = editor->parentWidget()->width();
    if (place.right() >= most) place.moveRight(most - 1);
    editor->setGeometry(place);
}

DoseReading BlockSlotDelegate::read(const QString& line, const QModelIndex& index) const
{
    const Slot* slot = m_model.slotOf(index);
    if (!slot) return tl::unexpected(NotationProblem{0, 0, tr("The lift is no longer there.")});
    return readDose(line, *slot, m_model.shown()->unit());
}

void BlockSlotDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const
{
    Q_UNUSED(model)
    const auto* line = qobject_cast<QLineEdit*>(editor);
    const auto place = m_model.placeOf(index);
    if (!line || !place) return;
    if (auto reading = read(line->text(), index)) Q_EMIT typed(*place, std::move(*reading));
}

void BlockSlotDelegate::destroyEditor(QWidget* editor, const QModelIndex& index) const
{
    m_typed = QPersistentModelIndex();
    QStyledItemDelegate::destroyEditor(editor, index);
    Q_EMIT ended();
}

// False: it can't be read, and the place that is wrong is selected.
bool BlockSlotDelegate::keepsReading(QLineEdit& line) const
{
    const auto reading = read(line.text(), m_typed);
    if (reading) return true;
    Q_EMIT typingSaid(reading.error().text);
    line.setSelection(static_cast<int>(reading.error().at), static_cast<int>(reading.error().length));
    return false;
}

bool BlockSlotDelegate::eventFilter(QObject* watched, QEvent* event)
{
    auto* line = qobject_cast<QLineEdit*>(watched);
    if (line && event->type() == QEvent::KeyPress && m_typed.isValid()) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const bool keeps = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab;
        if (keeps && !keepsReading(*line)) return true;
    }
    return QStyledItemDelegate::eventFilter(watched, event);
}

}  // namespace steelyard
