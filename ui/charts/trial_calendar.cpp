#include "ui/charts/trial_calendar.h"

#include "ui/format/format.h"

#include <QtCore/QLocale>
#include <QtGui/QHelpEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QToolTip>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr int kWeekdayRows = 7;
constexpr double kCellGap = 2;

}  // namespace

TrialCalendarPicture::TrialCalendarPicture(QWidget* parent) : QWidget(parent)
{
    setAccessibleName(tr("Sessions on the calendar"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void TrialCalendarPicture::setCells(std::vector<TrialCell> cells)
{
    m_cells = std::move(cells);
    QStringList words;
    for (const TrialCell& cell : m_cells) words += cell.words;
    setAccessibleDescription(words.join(u'\n'));
    updateGeometry();
    update();
}

QDate TrialCalendarPicture::firstMonday() const
{
    return m_cells.empty() ? QDate() : m_cells.front().date.addDays(1 - m_cells.front().date.dayOfWeek());
}

int TrialCalendarPicture::weeks() const
{
    return m_cells.empty() ? 0 : static_cast<int>(firstMonday().daysTo(m_cells.back().date)) / kWeekdayRows + 1;
}

double TrialCalendarPicture::rowSide() const
{
    return std::ceil(fontMetrics().height() * 1.1);
}

double TrialCalendarPicture::namesWidth() const
{
    double widest = 0;
    for (int day = 1; day <= kWeekdayRows; ++day)
        widest =
            std::max<double>(widest, fontMetrics().horizontalAdvance(QLocale().dayName(day, QLocale::ShortFormat)));
    return widest + 6;
}

// Long trials get narrow columns, but every letter stays whole.
double TrialCalendarPicture::columnWidth() const
{
    const double least = fontMetrics().horizontalAdvance(u'M') + kCellGap;
    return std::clamp((width() - namesWidth()) / std::max(1, weeks()), least, rowSide() * 1.4);
}

QSize TrialCalendarPicture::sizeHint() const
{
    return {300, static_cast<int>(fontMetrics().height() + 2 + kWeekdayRows * rowSide())};
}

QSize TrialCalendarPicture::minimumSizeHint() const
{
    return {160, sizeHint().height()};
}

QRectF TrialCalendarPicture::rectOf(QDate day) const
{
    if (m_cells.empty() || day < firstMonday() || firstMonday().daysTo(day) >= qint64{weeks()} * kWeekdayRows)
        return {};
    const auto days = static_cast<int>(firstMonday().daysTo(day));
    const int week = days / kWeekdayRows;
    return {namesWidth() + week * columnWidth(), fontMetrics().height() + 2 + days % kWeekdayRows * rowSide(),
            columnWidth() - kCellGap, rowSide() - kCellGap};
}

void TrialCalendarPicture::paintHeads(QPainter& painter) const
{
    const ThemeColours& colours = themeColours(palette());
    painter.setPen(colours.quiet);
    for (int day = 1; day <= kWeekdayRows; ++day)
        painter.drawText(QRectF(0, fontMetrics().height() + 2 + (day - 1) * rowSide(), namesWidth(), rowSide()),
                         Qt::AlignLeft | Qt::AlignVCenter, QLocale().dayName(day, QLocale::ShortFormat));
    double free = 0;  // where the last head ended
    for (int week = 0; week < weeks(); ++week) {
        const QDate monday = firstMonday().addDays(week * kWeekdayRows);
        const QString head = format::dayMonth(monday);
        const double x = namesWidth() + week * columnWidth();
        const double wide = fontMetrics().horizontalAdvance(head);
        if (x < free || x + wide > width()) continue;
        painter.drawText(QPointF(x, fontMetrics().ascent()), head);
        free = x + wide + 8;
    }
}

void TrialCalendarPicture::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    if (m_cells.empty()) return;
    const ThemeColours& colours = themeColours(palette());
    paintHeads(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    for (QDate day = firstMonday(); firstMonday().daysTo(day) < qint64{weeks()} * kWeekdayRows; day = day.addDays(1))
        painter.fillRect(QRectF(rectOf(day).center(), QSizeF(1.5, 1.5)), colours.hairline);
    for (const TrialCell& cell : m_cells) {
        painter.fillRect(rectOf(cell.date), colours.ground);
        paintTrialCell(painter, rectOf(cell.date), cell, colours);
    }
}

bool TrialCalendarPicture::event(QEvent* event)
{
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    const auto cell =
        std::ranges::find_if(m_cells, [&](const TrialCell& one) { return rectOf(one.date).contains(help->pos()); });
    if (cell != m_cells.end())
        QToolTip::showText(help->globalPos(), format::plainToolTip(cell->words), this);
    else
        QToolTip::hideText();
    return true;
}

}  // namespace steelyard
