#include "ui/charts/trial_cells.h"

#include "ui/format/plan_words.h"
#include "ui/format/trial_words.h"

#include <QtCore/QCoreApplication>
#include <QtGui/QPainter>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialCellText {
    Q_DECLARE_TR_FUNCTIONS(TrialCellText)
};

QString cellWords(const TrialCell& cell, std::size_t number, const std::vector<QString>& names, const QString& note)
{
    QStringList parts{TrialCellText::tr("Session %1, %2").arg(number).arg(format::shortDay(cell.date)),
                      format::armTitle(names, cell.arm), trialStateWord(cell)};
    if (cell.state == TrialCellState::OtherArm)
        parts.back() = TrialCellText::tr("%1 was done instead").arg(format::armTitle(names, *cell.done));
    parts += cell.block == 0 ? TrialCellText::tr("getting used to it, doesn’t count")
                             : TrialCellText::tr("block %1").arg(cell.block);
    if (cell.isToday) parts += TrialCellText::tr("today");
    if (!note.isEmpty()) parts += note;
    return parts.join(QStringLiteral(" · "));
}

TrialCellState stateOf(const Trial& trial, const TrialRecord& record, std::size_t day)
{
    const auto seen = std::ranges::find(record.observations, day, &TrialObservation::day);
    if (seen != record.observations.end() && seen->done)
        return *seen->done == seen->drawn ? TrialCellState::Done : TrialCellState::OtherArm;
    // A session may be made up for within some days; until then it is to come.
    const bool isMissed = std::ranges::any_of(record.deviations, [&](const NotedDeviation& noted) {
        return noted.kind == TrialDeviation::Missed && noted.day == day;
    });
    if (isMissed || trial.days[day].missed) return TrialCellState::Missed;
    return trial.ending ? TrialCellState::NeverHeld : TrialCellState::ToCome;
}

}  // namespace

QString trialStateWord(const TrialCell& cell)
{
    switch (cell.state) {
    case TrialCellState::ToCome:
        return TrialCellText::tr("to come");
    case TrialCellState::Done:
        return TrialCellText::tr("done");
    case TrialCellState::OtherArm:
        return TrialCellText::tr("another arm was done");
    case TrialCellState::Missed:
        return TrialCellText::tr("missed");
    case TrialCellState::NeverHeld:
        return TrialCellText::tr("not held: the trial had ended");
    }
    return {};
}

std::vector<TrialCell> trialCells(const Trial& trial, const TrialRecord& record, const std::vector<QString>& armNames,
                                  QDate today)
{
    std::vector<TrialCell> cells;
    for (std::size_t i = 0; i < trial.days.size(); ++i) {
        const TrialDay& day = trial.days[i];
        TrialCell cell{.date = day.date,
                       .block = day.block,
                       .arm = day.arm,
                       .state = stateOf(trial, record, i),
                       .isToday = day.date == today,
                       .hasNote = !day.note.isEmpty()};
        if (cell.state == TrialCellState::Done || cell.state == TrialCellState::OtherArm)
            cell.done = std::ranges::find(record.observations, i, &TrialObservation::day)->done;
        cell.words = cellWords(cell, i + 1, armNames, day.note);
        cells.push_back(std::move(cell));
    }
    return cells;
}

std::vector<TrialCell> plannedCells(const Trial& trial, const std::vector<QString>& armNames, QDate today)
{
    return trialCells(trial, {}, armNames, today);
}

namespace {

void paintFrame(QPainter& painter, const QRectF& box, const TrialCell& cell, const ThemeColours& colours)
{
    const bool isDone = cell.done.has_value();
    painter.setBrush(Qt::NoBrush);
    if (isDone && cell.block > 0) painter.setBrush(colours.text);
    if (cell.block == 0 && cell.state != TrialCellState::NeverHeld)
        painter.setBrush(QBrush(isDone ? colours.quiet : colours.hairline, Qt::BDiagPattern));
    painter.setPen(cell.state == TrialCellState::NeverHeld
                       ? QPen(Qt::NoPen)
                       : QPen(isDone ? colours.text : colours.quiet, 1,
                              cell.state == TrialCellState::Missed ? Qt::DotLine : Qt::SolidLine));
    painter.drawRect(box);
}

void paintLetter(QPainter& painter, const QRectF& box, const TrialCell& cell, const ThemeColours& colours)
{
    const bool isFilled = cell.done && cell.block > 0;
    const QFontMetricsF metrics(painter.font());
    if (cell.block == 0 && cell.state != TrialCellState::NeverHeld) {
        // Hatching would run through the letter.
        const double side = metrics.height() * 0.85;
        painter.fillRect(QRectF(box.center().x() - side / 2, box.center().y() - side / 2, side, side), colours.ground);
    }
    painter.setPen(isFilled ? colours.ground : cell.done ? colours.text : colours.quiet);
    // Where the corner is taken, the letter moves out of its way.
    const bool makesRoom = cell.state == TrialCellState::OtherArm;
    const QRectF place = makesRoom ? box.adjusted(1, box.height() * 0.24, -box.width() * 0.34, 0) : box;
    painter.drawText(place, Qt::AlignCenter, cell.letter());
    if (cell.state == TrialCellState::Missed) {
        painter.setPen(QPen(colours.text, 1.5));
        painter.drawLine(box.topLeft() + QPointF(3, 3), box.bottomRight() - QPointF(3, 3));
        painter.drawLine(box.topRight() + QPointF(-3, 3), box.bottomLeft() + QPointF(3, -3));
    }
}

// The drawn letter, small on a ground of its own.
void paintDrawnCorner(QPainter& painter, const QRectF& box, const TrialCell& cell, const ThemeColours& colours)
{
    QFont small = painter.font();
    small.setPointSizeF(small.pointSizeF() * 0.68);
    painter.setFont(small);
    const QRectF corner(box.right() - box.width() * 0.46, box.top(), box.width() * 0.46, box.height() * 0.5);
    painter.setPen(QPen(colours.text, 1));
    painter.setBrush(colours.ground);
    painter.drawRect(corner);
    painter.drawText(corner, Qt::AlignCenter, armLetter(cell.arm));
}

}  // namespace

void paintTrialCell(QPainter& painter, const QRectF& rect, const TrialCell& cell, const ThemeColours& colours)
{
    painter.save();
    const QRectF box = rect.adjusted(0.5, 0.5, -0.5, -0.5);
    paintFrame(painter, box, cell, colours);
    paintLetter(painter, box, cell, colours);
    if (cell.state == TrialCellState::OtherArm) paintDrawnCorner(painter, box, cell, colours);
    if (cell.hasNote) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.warm);
        painter.drawPolygon(
            QPolygonF({box.bottomLeft(), box.bottomLeft() + QPointF(6, 0), box.bottomLeft() - QPointF(0, 6)}));
    }
    painter.restore();
}

}  // namespace steelyard
