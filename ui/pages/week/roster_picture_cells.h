// What the picture of the roster paints instead of writing: small multiples of the main lines, sets a week against the
// aims, and the sessions of the last weeks. Everything stays inside its cell; shapes and words carry it, colour repeats it.
#pragma once

#include "core/flags/athlete_review.h"

#include <QtGui/QColor>
#include <QtGui/QFont>

#include <functional>
#include <span>

class QPainter;
class QPalette;
class QRect;

namespace steelyard {

struct CellInk {
    QFont small;
    QColor text;
    QColor quiet;
    QColor faint;  // what is aimed at, the axis
    QColor data;
    QColor ground;
    QColor alarm;
    QColor warm;
};

[[nodiscard]] CellInk cellInk(const QFont& font, const QPalette& palette, bool selected);
// That three lines of small type need.
[[nodiscard]] int pictureRowHeight(const QFont& font);

// How a line went, where that is known yet.
using CourseOf = std::function<std::span<const TrendPoint>(const LineReview&)>;
void paintMainLines(QPainter& painter, const QRect& cell, const AthleteReview& review, const CellInk& ink,
                    const CourseOf& courseOf);
void paintWeeklySets(QPainter& painter, const QRect& cell, const AthleteReview& review, const CellInk& ink);
void paintSessions(QPainter& painter, const QRect& cell, const AthleteReview& review, const CellInk& ink);

}  // namespace steelyard
