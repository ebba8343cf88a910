#include "ui/pages/floor/rack_board.h"

#include "core/keying/set_notation.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/print/sheet_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QPainter>

#include <algorithm>

namespace steelyard {
namespace {

struct RackPen {
    QColor colour;
    double height = 20;  // of the letters, in pixels
    bool bold = false;
    int flags = Qt::AlignLeft | Qt::AlignVCenter;
};

// One line, as large as asked where there is room, down to two thirds of it, then cut.
void drawFitting(QPainter& painter, const QRectF& area, const QString& text, const RackPen& pen)
{
    QFont font = painter.font();
    font.setBold(pen.bold);
    const auto wanted = static_cast<int>(pen.height);
    for (int size = wanted; size >= wanted * 2 / 3; --size) {
        font.setPixelSize(std::max(size, 9));
        if (QFontMetricsF(font).horizontalAdvance(text) <= area.width()) break;
    }
    painter.setFont(font);
    painter.setPen(pen.colour);
    painter.drawText(area, pen.flags, QFontMetricsF(font).elidedText(text, Qt::ElideRight, area.width()));
}

void drawParagraph(QPainter& painter, const QRectF& area, const QString& text, const RackPen& pen)
{
    QFont font = painter.font();
    font.setBold(pen.bold);
    for (int size = static_cast<int>(pen.height); size >= 11; --size) {
        font.setPixelSize(size);
        if (QFontMetricsF(font).boundingRect(area, Qt::TextWordWrap, text).height() <= area.height()) break;
    }
    painter.setFont(font);
    painter.setPen(pen.colour);
    painter.drawText(area, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text);
}

QString lettersOf(const RepetitionMarks& marks)
{
    QString letters;
    for (const auto& row : EnumText<Mark>::table)
        if (marks.has(row.value)) letters += letterOf(row.value);
    return letters;
}

// A strip of the area, by shares of its height.
QRectF rackStrip(const QRectF& area, double from, double to)
{
    return {area.left(), area.top() + area.height() * from, area.width(), area.height() * (to - from)};
}

}  // namespace

RackBoard::RackBoard(QWidget* parent) : QWidget(parent)
{
    setMinimumSize(280, 380);
}

void RackBoard::setStation(const RackStation& station, bool active, RepCounter::Time now)
{
    m_station = station;
    m_active = active;
    m_now = now;
    setAccessibleName(words());
    setToolTip(m_station.isEmpty() ? QString()
                                   : format::plainToolTip(
                                       format::person(m_station.lifter) + u'\n' + m_station.exercise().exercise + u'\n'
                                       + detailOf(m_station.exercise()) + u'\n' + cueWords(m_station.exercise())));
    update();
}

QString RackBoard::setWords() const
{
    const auto number = static_cast<int>(m_station.done.size()) + 1;
    const int planned = m_station.exercise().sets;
    return number <= planned ? tr("set %1 of %2").arg(number).arg(planned) : tr("set %1").arg(number);
}

QString RackBoard::loadLine() const
{
    if (!m_station.typed.isEmpty())
        return m_station.typed + u'_' + QLatin1Char(' ') + format::unit(m_station.exercise().unit);
    const auto load = m_station.load();
    return load ? sheetLoad(*load) : tr("type a load");
}

QString RackBoard::restLine() const
{
    if (!m_station.restSince) return {};
    const auto passed = m_now - *m_station.restSince;
    const QString words = RackStation::clockWords(passed);
    const auto planned = m_station.exercise().restSeconds;
    if (!planned) return tr("rest %1").arg(words);
    const std::chrono::seconds wanted(*planned);
    if (passed >= wanted) return tr("rest over, %1").arg(words);
    return tr("rest %1 of %2").arg(words, RackStation::clockWords(wanted));
}

QString RackBoard::offLine() const
{
    const RepCounter& counter = m_station.counter;
    QStringList parts;
    if (counter.marked() > 0) parts += tr("%1 off").arg(counter.marked());
    if (counter.failed()) parts += tr("1 failed");
    return parts.join(QStringLiteral(" · "));
}

QString RackBoard::timeLine() const
{
    const RepCounter& counter = m_station.counter;
    QStringList parts;
    if (counter.isLowering())
        parts += tr("lowering…");
    else if (const auto lowering = counter.lastLowering())
        parts += tr("lowered in %1 s").arg(format::number(lowering->toDouble(), 1));
    if (const auto rhythm = counter.rhythm()) parts += tr("%1 s from one to the next").arg(format::number(*rhythm, 1));
    return parts.join(QStringLiteral(" · "));
}

QString RackBoard::targetLine() const
{
    const SheetExercise& exercise = m_station.exercise();
    const auto set = m_station.done.size();
    const QString reps = set < exercise.target.reps.size()
                             ? QString::number(exercise.target.reps[set])
                             : tr("%1 to %2").arg(exercise.band.low).arg(exercise.band.high);
    const auto& reserve = exercise.target.reserve;
    return reserve ? tr("aim: %1, RIR %2").arg(reps, sheetNumber(*reserve)) : tr("aim: %1").arg(reps);
}

QString RackBoard::words() const
{
    if (m_station.isEmpty()) return tr("Nobody stands here.");
    return QStringList{format::person(m_station.lifter),
                       m_station.exercise().exercise,
                       setWords(),
                       loadLine(),
                       tr("%n repetition(s)", nullptr, m_station.counter.done()),
                       offLine(),
                       timeLine(),
                       restLine()}
        .join(QStringLiteral("; "));
}

void RackBoard::paintHead(QPainter& painter, QRectF area) const
{
    const ThemeColours& colours = themeColours(palette());
    const QColor ink = m_active ? colours.text : colours.quiet;
    QRectF name = rackStrip(area, 0, 0.42);
    const QRectF turn = name.adjusted(name.width() * 0.66, 0, 0, 0);
    name.setWidth(name.width() * 0.64);
    drawFitting(painter, name, format::person(m_station.lifter), {ink, name.height() * 0.8, true});
    drawFitting(painter, turn, setWords(), {ink, name.height() * 0.7, false, Qt::AlignRight | Qt::AlignVCenter});
    drawFitting(painter, rackStrip(area, 0.42, 0.74), m_station.exercise().exercise, {ink, area.height() * 0.27, true});
    drawFitting(painter, rackStrip(area, 0.74, 1), detailOf(m_station.exercise()),
                {colours.quiet, area.height() * 0.19});
}

void RackBoard::paintCount(QPainter& painter, QRectF area) const
{
    const ThemeColours& colours = themeColours(palette());
    QRectF number = area;
    number.setWidth(area.width() * 0.46);
    drawFitting(painter, number, QString::number(m_station.counter.done()),
                {m_active ? colours.text : colours.quiet, area.height() * 1.05, true, Qt::AlignCenter});
    const QRectF beside = area.adjusted(area.width() * 0.5, 0, 0, 0);
    const double line = area.height() * 0.16;
    drawFitting(painter, rackStrip(beside, 0.04, 0.28), m_active ? tr("counting") : tr("Tab: their turn"),
                {m_active ? colours.accent : colours.quiet, line, m_active});
    drawFitting(painter, rackStrip(beside, 0.28, 0.52), targetLine(), {colours.text, line});
    drawFitting(painter, rackStrip(beside, 0.52, 0.76), offLine(), {colours.warm, line, true});
    drawFitting(painter, rackStrip(beside, 0.76, 1), timeLine(), {colours.text, line * 0.8});
}

// A box a repetition, with the letters of its marks in it and its lowering seconds below; the latest where not all have room.
void RackBoard::paintRepetitions(QPainter& painter, QRectF area) const
{
    const ThemeColours& colours = themeColours(palette());
    const auto& list = m_station.counter.repetitions();
    const double side = std::min(area.height() * 0.6, area.width() / 12);
    const double step = side * 1.15;
    const auto room = static_cast<std::size_t>(area.width() / step);
    const std::size_t first = list.size() > room ? list.size() - room : 0;
    for (std::size_t i = first; i < list.size(); ++i) {
        const QRectF box(area.left() + step * static_cast<double>(i - first), area.top(), side, side);
        const bool off = !list[i].marks.none();
        QPen pen(list[i].partWay ? colours.quiet : off ? colours.warm : colours.data[0], off ? 3 : 2);
        if (list[i].partWay) pen.setStyle(Qt::DashLine);
        painter.setPen(pen);
        painter.setBrush(off || list[i].partWay ? QBrush(Qt::NoBrush) : QBrush(colours.data[0]));
        painter.drawRect(box);
        const QString letters = list[i].partWay ? QStringLiteral("+") : lettersOf(list[i].marks);
        drawFitting(painter, box, letters, {colours.text, side * 0.66, true, Qt::AlignCenter});
        if (const auto& lowering = list[i].loweringSeconds)
            drawFitting(painter, {box.left() - 2, box.bottom() + 2, side + 4, area.height() * 0.32},
                        format::number(lowering->toDouble(), 1),
                        {colours.quiet, area.height() * 0.24, false, Qt::AlignHCenter | Qt::AlignTop});
    }
}

void RackBoard::paintLoadAndRest(QPainter& painter, QRectF area) const
{
    const ThemeColours& colours = themeColours(palette());
    QRectF load = area;
    load.setWidth(area.width() * 0.42);
    const QRectF rest = area.adjusted(area.width() * 0.45, 0, 0, 0);
    const bool open = !m_station.typed.isEmpty() || !m_station.load();
    drawFitting(painter, load, loadLine(), {open ? colours.accent : colours.text, area.height() * 0.78, true});
    drawFitting(painter, rest, restLine(),
                {colours.text, area.height() * 0.62, false, Qt::AlignRight | Qt::AlignVCenter});
}

void RackBoard::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    const ThemeColours& colours = themeColours(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double frame = m_active ? 4 : 1;
    painter.fillRect(rect(), colours.ground);
    painter.setPen(QPen(m_active ? colours.accent : colours.hairline, frame));
    painter.drawRect(QRectF(rect()).adjusted(frame / 2, frame / 2, -frame / 2, -frame / 2));
    const double margin = height() * 0.025;
    const QRectF area = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    if (m_station.isEmpty()) {
        drawParagraph(
            painter, rackStrip(area, 0.3, 0.7),
            tr("Nobody stands here. Tab, then Page Down, chooses a lifter of the day: two train in turns, each "
               "with an own count, load and rest."),
            {colours.quiet, area.height() * 0.045});
        return;
    }
    paintHead(painter, rackStrip(area, 0, 0.2));
    paintCount(painter, rackStrip(area, 0.21, 0.53));
    paintRepetitions(painter, rackStrip(area, 0.54, 0.67));
    paintLoadAndRest(painter, rackStrip(area, 0.67, 0.79));
    drawParagraph(painter, rackStrip(area, 0.81, 1), cueWords(m_station.exercise()),
                  {colours.quiet, area.height() * 0.036});
}

}  // namespace steelyard
