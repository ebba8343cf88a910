// One small multiple: the last sessions of a lift line; behind them, where they are given, what was known of the capacity after
// each (the line, and the band of its 90 % interval), and at the right today's as a bar of the same. A filled point was watched and to the standard, a hollow one nobody watched, a
// cross was off standard. A session far out of the others' range stands at the edge, so that it doesn't flatten them. No axis;
// the numbers stand beside it.
//
//   paintSpark(*painter, area, {line.reading.points, line.reading.capacity, course}, {colours.data[0], ground});
#pragma once

#include "core/analysis/line_reading.h"

#include <QtGui/QColor>

#include <span>

class QPainter;
class QRectF;

namespace steelyard {

inline constexpr std::size_t kMostSparkPoints = 24;

struct Spark {
    std::span<const ReadingPoint> points;           // oldest first
    std::optional<CapacityEstimate> capacity = {};  // absent: no bar
    std::span<const TrendPoint> course = {};        // oldest first; empty: no band
};

struct SparkInk {
    QColor ink;
    QColor ground;  // inside of a hollow point
};

void paintSpark(QPainter& painter, const QRectF& area, const Spark& spark, const SparkInk& ink);

// Lowest and highest of the values but for those further out than three times the middle half's spread (Tukey's outer
// fences, 1977). `values` are not empty.
struct SparkRange {
    double low = 0;
    double high = 0;
};
[[nodiscard]] SparkRange sparkRange(std::vector<double> values);

}  // namespace steelyard
