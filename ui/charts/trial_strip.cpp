#include "ui/charts/trial_strip.h"

#include "ui/format/format.h"

#include <QtCore/QLocale>
#include <QtGui/QHelpEvent>
#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QToolTip>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kBetweenCells = 3;
constexpr double kBetweenTrialBlocks = 10;
constexpr double kStripMargin = 3;

}  // namespace

TrialStrip::TrialStrip(QWidget* parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Sessions of the trial"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    layOut();
}

double TrialStrip::cellSide() const
{
    return std::ceil(fontMetrics().height() * 1.35);
}

// The cells with the mark of today and the number of the block above them.
double TrialStrip::rowHeight() const
{
    return cellSide() + fontMetrics().height() + 6;
}

void TrialStrip::setCells(std::vector<TrialCell> cells, int otherwise)
{
    m_cells = std::move(cells);
    const int last = static_cast<int>(m_cells.size()) - 1;
    if (m_chosen < 0 || m_chosen > last) m_chosen = otherwise >= 0 && otherwise <= last ? otherwise : last;
    layOut();
    choose(m_chosen);
    update();
}

// A block stays in one row where it fits.
void TrialStrip::layOut()
{
    m_places.clear();
    const double side = cellSide();
    double x = kStripMargin;
    double y = fontMetrics().height() + 4;
    for (std::size_t i = 0; i < m_cells.size();) {
        std::size_t end = i;
        while (end < m_cells.size() && m_cells[end].block == m_cells[i].block) ++end;
        const double wide = static_cast<double>(end - i) * (side + kBetweenCells);
        if (x > kStripMargin && x + wide > width() - kStripMargin) {
            x = kStripMargin;
            y += rowHeight();
        }
        for (; i < end; ++i) {
            if (x > kStripMargin && x + side > width() - kStripMargin) {
                x = kStripMargin;
                y += rowHeight();
            }
            m_places.emplace_back(x, y, side, side);
            x += side + kBetweenCells;
        }
        x += kBetweenTrialBlocks - kBetweenCells;
    }
    const int high = static_cast<int>(std::ceil((m_places.empty() ? y : m_places.back().bottom()) + kStripMargin));
    if (high != height()) setFixedHeight(high);
}

QSize TrialStrip::sizeHint() const
{
    return {480, height()};
}

QRectF TrialStrip::rectOf(int cell) const
{
    return cell >= 0 && cell < static_cast<int>(m_places.size()) ? m_places[static_cast<std::size_t>(cell)] : QRectF();
}

int TrialStrip::cellAt(QPointF position) const
{
    const auto at = std::ranges::find_if(
        m_places, [&](const QRectF& place) { return place.adjusted(0, -2, kBetweenCells, 2).contains(position); });
    return at == m_places.end() ? -1 : static_cast<int>(at - m_places.begin());
}

void TrialStrip::choose(int cell)
{
    if (cell < 0 || cell >= static_cast<int>(m_cells.size())) {
        setAccessibleDescription({});
        return;
    }
    m_chosen = cell;
    setAccessibleDescription(m_cells[static_cast<std::size_t>(cell)].words);
    update();
    Q_EMIT cellChosen(cell);
}

void TrialStrip::paintBlockNumbers(QPainter& painter) const
{
    const ThemeColours& colours = themeColours(palette());
    for (std::size_t i = 0; i < m_cells.size(); ++i) {
        const bool begins =
            i == 0 || m_cells[i].block != m_cells[i - 1].block || m_places[i].top() != m_places[i - 1].top();
        const QRectF above(m_places[i].left(), m_places[i].top() - fontMetrics().height() - 3, m_places[i].width(),
                           fontMetrics().height());
        painter.setPen(colours.quiet);
        if (begins && m_cells[i].block > 0)
            painter.drawText(above, Qt::AlignLeft, QLocale().toString(m_cells[i].block));
        if (begins && i > 0 && m_cells[i].block != m_cells[i - 1].block && m_places[i].left() > kStripMargin) {
            const double x = std::round(m_places[i].left() - kBetweenTrialBlocks / 2) - 0.5;
            painter.setPen(QPen(colours.hairline, 1));
            painter.drawLine(QPointF(x, above.top() + 2), QPointF(x, m_places[i].bottom()));
        }
        if (!m_cells[i].isToday) continue;
        const QPointF foot(m_places[i].center().x(), m_places[i].top() - 2);
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.text);
        painter.drawPolygon(QPolygonF({foot, foot + QPointF(-5, -7), foot + QPointF(5, -7)}));
        painter.setBrush(Qt::NoBrush);
    }
}

void TrialStrip::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const ThemeColours& colours = themeColours(palette());
    paintBlockNumbers(painter);
    for (std::size_t i = 0; i < m_cells.size(); ++i) paintTrialCell(painter, m_places[i], m_cells[i], colours);
    if (m_chosen < 0) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(hasFocus() ? colours.accent : colours.text, 2));
    painter.drawRect(rectOf(m_chosen).adjusted(-1.5, -1.5, 1.5, 1.5));
}

int TrialStrip::inRow(int by) const
{
    const QRectF here = rectOf(m_chosen);
    int best = m_chosen;
    double away = 1e9;
    for (std::size_t i = 0; i < m_places.size(); ++i) {
        const double rows = (m_places[i].top() - here.top()) / rowHeight();
        const double across = std::abs(m_places[i].left() - here.left());
        if (std::lround(rows) != by || across >= away) continue;
        away = across;
        best = static_cast<int>(i);
    }
    return best;
}

void TrialStrip::keyPressEvent(QKeyEvent* event)
{
    const int last = static_cast<int>(m_cells.size()) - 1;
    if (m_chosen < 0) return QWidget::keyPressEvent(event);
    switch (event->key()) {
    case Qt::Key_Left:
        return choose(std::max(0, m_chosen - 1));
    case Qt::Key_Right:
        return choose(std::min(last, m_chosen + 1));
    case Qt::Key_Home:
        return choose(0);
    case Qt::Key_End:
        return choose(last);
    case Qt::Key_Up:
        return choose(inRow(-1));
    case Qt::Key_Down:
        return choose(inRow(1));
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT cellOpened(m_chosen);
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void TrialStrip::mousePressEvent(QMouseEvent* event)
{
    choose(cellAt(event->position()));
}

void TrialStrip::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (const int cell = cellAt(event->position()); cell >= 0) Q_EMIT cellOpened(cell);
}

void TrialStrip::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    layOut();
}

bool TrialStrip::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const int cell = cellAt(help->pos());
        if (cell >= 0)
            QToolTip::showText(help->globalPos(), format::plainToolTip(m_cells[static_cast<std::size_t>(cell)].words),
                               this);
        else
            QToolTip::hideText();
        return true;
    }
    if (event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut) update();
    if (event->type() == QEvent::FontChange) layOut();
    return QWidget::event(event);
}

}  // namespace steelyard
