#include "ui/pages/lifter/logbook_calendar.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/logbook_list_model.h"
#include "ui/shell/theme.h"

#include <QtGui/QHelpEvent>
#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QToolTip>

#include <algorithm>
#include <functional>

namespace steelyard {
namespace {

constexpr int kMonthsInRow = 3;
constexpr int kWeekDays = 7;
constexpr int kWeekRows = 6;
constexpr int kRowsInSight = 2;
constexpr int kGap = 2;  // between cells
constexpr int kMargin = 4;

QDate monthOf(QDate day)
{
    return {day.year(), day.month(), 1};
}

int monthsBetween(QDate from, QDate to)
{
    return (to.year() - from.year()) * 12 + to.month() - from.month();
}

// From the first column of the locale's week.
int columnOf(QDate day)
{
    return (day.dayOfWeek() - static_cast<int>(QLocale().firstDayOfWeek()) + kWeekDays) % kWeekDays;
}

}  // namespace

LogbookCalendar::LogbookCalendar(QWidget* parent) : QAbstractScrollArea(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setAccessibleName(tr("Calendar of the logbook"));
    viewport()->setMouseTracking(true);
    viewport()->setBackgroundRole(QPalette::Window);
}

LogbookCalendar::Measures LogbookCalendar::measures() const
{
    Measures m;
    const int room = viewport()->width() - 2 * kMargin - (kMonthsInRow - 1) * 2 * kMargin;
    m.cell = std::clamp(room / (kMonthsInRow * kWeekDays), 8, fontMetrics().height() + 4);
    m.title = fontMetrics().height() + 2;
    m.month = kWeekDays * m.cell + 2 * kMargin;
    m.row = m.title + kWeekRows * m.cell + kMargin;
    return m;
}

QSize LogbookCalendar::sizeHint() const
{
    const Measures m = measures();
    return {kMonthsInRow * m.month + 2 * kMargin, kRowsInSight * m.row};
}

void LogbookCalendar::setDays(const std::vector<LogbookDay>* days, std::set<QDate> found, QDate today)
{
    m_days = days;
    m_found = std::move(found);
    m_today = today;
    fitBar();
    viewport()->update();
    describe();
}

// The grid ends with the month of today, or with a later one that has a session, in the last column.
QDate LogbookCalendar::firstMonth() const
{
    if (!m_days || m_days->empty()) return {};
    const QDate last = monthOf(std::max(m_today, m_days->front().date));
    const int months = monthsBetween(monthOf(m_days->back().date), last) + 1;
    const int rows = (months + kMonthsInRow - 1) / kMonthsInRow;
    return last.addMonths(1 - rows * kMonthsInRow);
}

void LogbookCalendar::fitBar()
{
    const QDate first = firstMonth();
    const Measures m = measures();
    int height = 0;
    if (first.isValid())
        height = (monthsBetween(first, std::max(m_today, m_days->front().date)) / kMonthsInRow + 1) * m.row;
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(m.row);
    verticalScrollBar()->setRange(0, std::max(0, height - viewport()->height()));
}

QRect LogbookCalendar::placeOf(QDate day) const
{
    const QDate first = firstMonth();
    if (!first.isValid() || day < first) return {};
    const int month = monthsBetween(first, day);
    const Measures m = measures();
    const int week = (day.day() - 1 + columnOf(monthOf(day))) / kWeekDays;
    const int x = kMargin + month % kMonthsInRow * m.month + columnOf(day) * m.cell;
    const int y = month / kMonthsInRow * m.row + m.title + week * m.cell - verticalScrollBar()->value();
    return {x, y, m.cell - kGap, m.cell - kGap};
}

QDate LogbookCalendar::dayAt(QPoint position) const
{
    if (!m_days) return {};
    for (const LogbookDay& day : *m_days)
        if (placeOf(day.date).adjusted(0, 0, kGap, kGap).contains(position)) return day.date;
    return {};
}

const LogbookDay* LogbookCalendar::find(QDate day) const
{
    if (!m_days) return nullptr;
    const auto at = std::ranges::lower_bound(*m_days, day, std::greater<>(), &LogbookDay::date);
    return at != m_days->end() && at->date == day ? &*at : nullptr;
}

void LogbookCalendar::choose(QDate day)
{
    m_chosen = day;
    if (const QRect place = placeOf(day); !place.isNull()) {
        const Measures m = measures();
        const int row = (place.top() + verticalScrollBar()->value()) / m.row;
        const bool isInSight = place.top() >= m.title && place.bottom() <= viewport()->height();
        if (!isInSight) verticalScrollBar()->setValue((row + 1) * m.row - viewport()->height());  // lowest, whole
    }
    viewport()->update();
    describe();
}

void LogbookCalendar::describe()
{
    const LogbookDay* day = find(m_chosen);
    setAccessibleDescription(
        day ? tr("%1: %2").arg(format::weekday(day->date) + u' ' + format::date(day->date), dayHints(*day))
            : QString());
}

void LogbookCalendar::paintEvent(QPaintEvent*)
{
    QPainter painter(viewport());
    const QDate first = firstMonth();
    if (!first.isValid()) return;
    const Measures m = measures();
    const int rows = monthsBetween(first, std::max(m_today, m_days->front().date)) / kMonthsInRow + 1;
    const int from = verticalScrollBar()->value() / m.row;
    const int to = std::min(rows - 1, (verticalScrollBar()->value() + viewport()->height()) / m.row);
    for (int month = from * kMonthsInRow; month < (to + 1) * kMonthsInRow; ++month)
        paintMonth(painter, first.addMonths(month));
}

void LogbookCalendar::paintMonth(QPainter& painter, QDate month) const
{
    const Measures m = measures();
    const QRect first = placeOf(month);
    const QRect title(first.left() - columnOf(month) * m.cell, first.top() - m.title, m.month, m.title);
    const ThemeColours& colours = themeColours(palette());
    painter.setPen(colours.quiet);
    const bool named = month.month() == 1 || month == firstMonth();
    painter.drawText(title, Qt::AlignLeft | Qt::AlignVCenter,
                     QLocale().toString(month, named ? QStringLiteral("MMM yyyy") : QStringLiteral("MMM")));
    for (QDate day = month; day.month() == month.month(); day = day.addDays(1)) paintDay(painter, day);
}

void LogbookCalendar::paintDay(QPainter& painter, QDate day) const
{
    const ThemeColours& colours = themeColours(palette());
    const QRect place = placeOf(day);
    const LogbookDay* trained = find(day);
    painter.setPen(Qt::NoPen);
    if (!trained) {
        painter.fillRect(QRect(place.center(), QSize(1, 1)), day == m_today ? colours.text : colours.hairline);
        if (day == m_today) painter.fillRect(place.left(), place.bottom(), place.width(), 1, colours.text);
    } else {
        QColor fill = colours.data[0];
        if (!m_found.contains(day)) fill = colours.hairline;
        if (trained->deload) {
            painter.setPen(QPen(fill, 2));
            painter.drawRect(place.adjusted(1, 1, -1, -1));
            painter.setPen(Qt::NoPen);
        } else {
            painter.fillRect(place, fill);
        }
        if (trained->discomfort) {
            const int notch = std::max(4, place.width() / 2);
            painter.setBrush(colours.warm);
            painter.setPen(QPen(colours.ground, 1));
            painter.drawPolygon(QPolygon({place.topRight() + QPoint(1, 0), place.topRight() + QPoint(1 - notch, 0),
                                          place.topRight() + QPoint(1, notch)}));
            painter.setBrush(Qt::NoBrush);
        }
    }
    if (day != m_chosen) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(hasFocus() ? colours.accent : colours.text, 2));
    painter.drawRect(place.adjusted(-1, -1, 1, 1));
}

std::optional<QDate> LogbookCalendar::target(int key) const
{
    if (m_found.empty()) return std::nullopt;
    const auto before = [&](QDate limit) {
        const auto at = m_found.upper_bound(limit);
        return at == m_found.begin() ? *m_found.begin() : *std::prev(at);
    };
    const auto after = [&](QDate limit) {
        const auto at = m_found.lower_bound(limit);
        return at == m_found.end() ? *m_found.rbegin() : *at;
    };
    const QDate here = m_chosen.isValid() ? m_chosen : *m_found.rbegin();
    switch (key) {
    case Qt::Key_Left:
        return before(here.addDays(-1));
    case Qt::Key_Right:
        return after(here.addDays(1));
    case Qt::Key_Up:
        return before(here.addDays(-kWeekDays));
    case Qt::Key_Down:
        return after(here.addDays(kWeekDays));
    case Qt::Key_PageUp:
        return before(here.addMonths(-1));
    case Qt::Key_PageDown:
        return after(here.addMonths(1));
    case Qt::Key_Home:
        return *m_found.begin();
    case Qt::Key_End:
        return *m_found.rbegin();
    default:
        return std::nullopt;
    }
}

void LogbookCalendar::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        Q_EMIT setsWanted();
        return;
    }
    const auto day = target(event->key());
    if (!day) {
        event->ignore();
        return;
    }
    choose(*day);
    Q_EMIT dayChosen(*day);
}

void LogbookCalendar::mousePressEvent(QMouseEvent* event)
{
    const QDate day = dayAt(event->pos());
    if (!day.isValid()) return;
    choose(day);
    Q_EMIT dayChosen(day);
}

void LogbookCalendar::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (dayAt(event->pos()).isValid()) Q_EMIT setsWanted();
}

bool LogbookCalendar::viewportEvent(QEvent* event)
{
    if (event->type() != QEvent::ToolTip) return QAbstractScrollArea::viewportEvent(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    const LogbookDay* day = find(dayAt(help->pos()));
    if (day)
        QToolTip::showText(
            help->globalPos(),
            format::plainToolTip(format::weekday(day->date) + u' ' + format::date(day->date) + u'\n' + dayHints(*day)),
            this);
    else
        QToolTip::hideText();
    return true;
}

// The frame of the chosen day shows where the keyboard is.
void LogbookCalendar::focusInEvent(QFocusEvent* event)
{
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
}

void LogbookCalendar::focusOutEvent(QFocusEvent* event)
{
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

void LogbookCalendar::resizeEvent(QResizeEvent* event)
{
    QAbstractScrollArea::resizeEvent(event);
    setFixedHeight(kRowsInSight * measures().row);
    fitBar();
    choose(m_chosen);
}

}  // namespace steelyard
