#include "ui/pages/week/roster_picture_cells.h"

#include "ui/format/format.h"
#include "ui/models/spark_painter.h"
#include "ui/pages/week/roster_picture_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QFontMetrics>
#include <QtGui/QPainter>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr int kCellMargin = 4;
constexpr int kSetRows = 3;
constexpr double kSmallShare = 0.85;

QFont smallFont(const QFont& font)
{
    QFont small = font;
    small.setPointSizeF(font.pointSizeF() * kSmallShare);
    return small;
}

QColor verdictInk(Verdict verdict, const CellInk& ink)
{
    if (verdict == Verdict::Slipping) return ink.alarm;
    return verdict == Verdict::Stalled ? ink.warm : ink.quiet;
}

struct Multiple {
    const LineReview& line;
    std::span<const TrendPoint> course;
    QString name;
    QString more;  // how many lines have no place
};

void paintMultiple(QPainter& painter, const QRect& place, const Multiple& multiple, const CellInk& ink)
{
    const auto& [line, course, name, more] = multiple;
    const QFontMetrics metrics(ink.small);
    const QRect title(place.left(), place.top(), place.width(), metrics.height());
    const QString shape = format::verdictShape(line.reading.verdict) + u' ';
    const int shapeWidth = metrics.horizontalAdvance(shape);
    const int moreWidth = metrics.horizontalAdvance(more);
    painter.setPen(verdictInk(line.reading.verdict, ink));
    painter.drawText(title, Qt::AlignLeft | Qt::AlignVCenter, shape);
    painter.setPen(ink.quiet);
    painter.drawText(title, Qt::AlignRight | Qt::AlignVCenter, more);
    painter.setPen(ink.text);
    const int room = title.width() - shapeWidth - moreWidth;
    painter.drawText(title.adjusted(shapeWidth, 0, -moreWidth, 0), Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(name, Qt::ElideRight, room));
    const QRectF area = QRectF(place).adjusted(4, metrics.height() + 3, -4, -4);
    paintSpark(painter, area, {line.reading.points, line.reading.capacity, course}, {ink.data, ink.ground});
}

// Widths of one row of the sets: name, bar, number.
struct SetPlaces {
    QRect name;
    QRect bar;
    QRect number;
};

SetPlaces setPlaces(const QRect& row, const QFontMetrics& metrics)
{
    const int number = metrics.horizontalAdvance(QStringLiteral("00.0 ↓"));
    const int name = std::min(metrics.averageCharWidth() * 13, row.width() * 2 / 5);
    const QRect named(row.left(), row.top(), name, row.height());
    const QRect numbered(row.right() + 1 - number, row.top(), number, row.height());
    return {named, QRect(QPoint(named.right() + 4, row.top()), QPoint(numbered.left() - 4, row.bottom())), numbered};
}

void paintSetBar(QPainter& painter, const QRectF& bar, const WeeklyMuscleSets& sets, double most, const CellInk& ink)
{
    const auto at = [&](double value) { return bar.left() + bar.width() * std::min(1.0, value / most); };
    const double middle = bar.center().y();
    if (sets.aim) {
        // A bracket: its ends are seen without colour.
        const double low = at(sets.aim->weeklySetsLow);
        const double high = at(sets.aim->weeklySetsHigh);
        painter.setPen(QPen(ink.quiet, 1));
        painter.drawLine(QPointF(low, middle + 3), QPointF(high, middle + 3));
        painter.drawLine(QPointF(low, middle - 3), QPointF(low, middle + 3));
        painter.drawLine(QPointF(high, middle - 3), QPointF(high, middle + 3));
    }
    painter.setPen(QPen(ink.data, 3, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(bar.left(), middle), QPointF(at(sets.perWeek), middle));
}

void paintSetRow(QPainter& painter, const QRect& row, const WeeklyMuscleSets& sets, double most, const CellInk& ink)
{
    const QFontMetrics metrics(ink.small);
    const SetPlaces places = setPlaces(row, metrics);
    const AimFit fit = aimFit(sets);
    painter.setPen(ink.text);
    painter.drawText(places.name, Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(sets.name, Qt::ElideRight, places.name.width()));
    if (places.bar.width() > 12) paintSetBar(painter, places.bar, sets, most, ink);
    const QString arrow = fit == AimFit::Under  ? QStringLiteral(" ↓")
                          : fit == AimFit::Over ? QStringLiteral(" ↑")
                                                : QString();
    // Numbers stand below each other whether or not an arrow follows.
    const int arrowWidth = metrics.horizontalAdvance(QStringLiteral(" ↓"));
    painter.setPen(arrow.isEmpty() ? ink.quiet : ink.warm);
    painter.drawText(places.number.adjusted(0, 0, -arrowWidth, 0), Qt::AlignRight | Qt::AlignVCenter,
                     format::number(sets.perWeek, 1));
    painter.drawText(places.number, Qt::AlignRight | Qt::AlignVCenter, arrow);
}

}  // namespace

CellInk cellInk(const QFont& font, const QPalette& palette, bool selected)
{
    const ThemeColours& colours = themeColours(palette);
    if (!selected)
        return {smallFont(font),  colours.text,    colours.quiet,
                colours.hairline, colours.data[0], palette.color(QPalette::Base),
                colours.alarm,    colours.warm};
    const QColor all = palette.color(QPalette::HighlightedText);
    return {smallFont(font), all, all, all, all, palette.color(QPalette::Highlight), all, all};
}

int pictureRowHeight(const QFont& font)
{
    return kSetRows * QFontMetrics(smallFont(font)).height() + 2 * kCellMargin;
}

void paintMainLines(QPainter& painter, const QRect& cell, const AthleteReview& review, const CellInk& ink,
                    const CourseOf& courseOf)
{
    const auto lines = mainLinesOf(review);
    if (lines.empty()) return;
    painter.setFont(ink.small);
    const QFontMetrics metrics(ink.small);
    const auto places = std::clamp<std::size_t>(
        static_cast<std::size_t>(cell.width() / (metrics.averageCharWidth() * 18)), 1, kMostMainLines);
    const int width = cell.width() / static_cast<int>(places);
    const std::size_t shown = std::min(places, lines.size());
    for (std::size_t i = 0; i < shown; ++i) {
        const QRect place(cell.left() + static_cast<int>(i) * width, cell.top() + kCellMargin, width - 2 * kCellMargin,
                          cell.height() - 2 * kCellMargin);
        const std::size_t hidden = i + 1 == shown ? lines.size() - shown : 0;
        const QString more = hidden > 0 ? QStringLiteral(" +") + QLocale().toString(hidden) : QString();
        paintMultiple(painter, place, {*lines[i], courseOf(*lines[i]), shortLineName(lines, i), more}, ink);
    }
}

void paintWeeklySets(QPainter& painter, const QRect& cell, const AthleteReview& review, const CellInk& ink)
{
    const auto sets = setsByUrgency(review);
    if (sets.empty()) return;
    painter.setFont(ink.small);
    const QFontMetrics metrics(ink.small);
    double most = 10;
    for (const WeeklyMuscleSets* each : sets)
        most = std::max({most, each->perWeek, each->aim ? static_cast<double>(each->aim->weeklySetsHigh) : 0.0});
    const int columns = std::max(1, cell.width() / (metrics.averageCharWidth() * 30));
    const int width = cell.width() / columns;
    const std::size_t shown = std::min<std::size_t>(sets.size(), static_cast<std::size_t>(columns * kSetRows));
    for (std::size_t i = 0; i < shown; ++i) {
        const int column = static_cast<int>(i) / kSetRows;
        const int row = static_cast<int>(i) % kSetRows;
        paintSetRow(painter,
                    QRect(cell.left() + column * width, cell.top() + kCellMargin + row * metrics.height(),
                          width - 2 * kCellMargin, metrics.height()),
                    *sets[i], most, ink);
    }
}

void paintSessions(QPainter& painter, const QRect& cell, const AthleteReview& review, const CellInk& ink)
{
    constexpr int mostDots = 7;
    const auto weeks = static_cast<int>(kAttendanceWeeks);
    const double step = std::min((cell.width() - 2.0 * kCellMargin) / weeks, 16.0);
    const double rise = (cell.height() - 2.0 * kCellMargin) / mostDots;
    const double radius = std::min(step, rise) * 0.36;
    painter.setRenderHint(QPainter::Antialiasing);
    const double ground = cell.bottom() - kCellMargin;
    painter.setPen(QPen(ink.faint, 1));
    painter.drawLine(QPointF(cell.left() + 1, ground), QPointF(cell.left() + step * weeks, ground));
    painter.setPen(QPen(ink.data, 1));
    for (int week = 0; week < weeks; ++week) {
        const AttendedWeek& attended = review.summary.weeks.at(static_cast<std::size_t>(week));
        const int expected = static_cast<int>(std::lround(attended.expected.value_or(0)));
        for (int dot = 0; dot < std::min(mostDots, std::max(attended.came, expected)); ++dot) {
            painter.setBrush(dot < attended.came ? ink.data : ink.ground);
            painter.drawEllipse(QPointF(cell.left() + step * (week + 0.5), ground - 1 - rise * (dot + 0.5)), radius,
                                radius);
        }
    }
}

}  // namespace steelyard
