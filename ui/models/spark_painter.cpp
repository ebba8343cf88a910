#include "ui/models/spark_painter.h"

#include <QtGui/QPainter>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kSparkRadius = 2.2;
constexpr double kSparkRadiusOnCourse = 1.5;  // the line says where it goes, the points only how they lay about it
constexpr double kCapacityRoom = 9;           // at the right, for the bar

// Where days and kilograms stand.
struct SparkScale {
    QRectF area;
    QDate first;
    double days = 1;
    SparkRange range;

    [[nodiscard]] double y(double kg) const
    {
        const double share = (kg - range.low) / (range.high - range.low);
        return area.bottom() - std::clamp(share, 0.0, 1.0) * area.height();
    }
    [[nodiscard]] QPointF at(QDate date, double kg) const
    {
        const double x = static_cast<double>(first.daysTo(date)) / days;
        return {area.left() + x * area.width(), y(kg)};
    }
};

std::vector<const ReadingPoint*> lastPoints(std::span<const ReadingPoint> all)
{
    std::vector<const ReadingPoint*> shown;
    for (auto it = all.rbegin(); it != all.rend() && shown.size() < kMostSparkPoints; ++it)
        if (it->capacityKg) shown.push_back(&*it);
    std::ranges::reverse(shown);
    return shown;
}

// What lies between the first and the last point.
std::span<const TrendPoint> courseAlong(std::span<const TrendPoint> course,
                                        const std::vector<const ReadingPoint*>& shown)
{
    const auto from = std::ranges::lower_bound(course, shown.front()->date, {}, &TrendPoint::date);
    const auto to = std::ranges::upper_bound(course, shown.back()->date, {}, &TrendPoint::date);
    return {from, std::max(from, to)};
}

SparkScale scaleFor(QRectF area, const std::vector<const ReadingPoint*>& shown,
                    const std::optional<CapacityEstimate>& capacity, std::span<const TrendPoint> course)
{
    std::vector<double> values;
    values.reserve(shown.size());
    for (const ReadingPoint* point : shown) values.push_back(*point->capacityKg);
    SparkRange range = sparkRange(std::move(values));
    if (capacity) {
        range = {std::min(range.low, capacity->low90Kg), std::max(range.high, capacity->high90Kg)};
        area.adjust(0, 0, -kCapacityRoom, 0);
    }
    for (const TrendPoint& known : course)
        range = {std::min(range.low, known.low90Kg), std::max(range.high, known.high90Kg)};
    const double least = std::max(0.02 * std::abs(range.low), 1e-6);
    range.high = std::max(range.high, range.low + least);
    const QDate first = shown.front()->date;
    return {area, first, std::max<double>(1, static_cast<double>(first.daysTo(shown.back()->date))), range};
}

void paintCourse(QPainter& painter, const SparkScale& scale, std::span<const TrendPoint> course, QColor ink)
{
    QPolygonF band;
    QPolygonF middle;
    for (const TrendPoint& known : course) {
        band << scale.at(known.date, known.high90Kg);
        middle << scale.at(known.date, known.kg);
    }
    for (auto known = course.rbegin(); known != course.rend(); ++known) band << scale.at(known->date, known->low90Kg);
    const QColor line = ink;
    ink.setAlphaF(0.25F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawPolygon(band);
    painter.setPen(QPen(line, 1.4));
    painter.drawPolyline(middle);
}

void paintCapacity(QPainter& painter, const SparkScale& scale, const CapacityEstimate& capacity, const QColor& ink)
{
    const double x = scale.area.right() + kCapacityRoom - kSparkRadius;
    painter.setPen(QPen(ink, 1));
    painter.drawLine(QPointF(x, scale.y(capacity.low90Kg)), QPointF(x, scale.y(capacity.high90Kg)));
    for (const double kg : {capacity.low90Kg, capacity.high90Kg})
        painter.drawLine(QPointF(x - kSparkRadius, scale.y(kg)), QPointF(x + kSparkRadius, scale.y(kg)));
    painter.setPen(QPen(ink, 2));
    painter.drawLine(QPointF(x - kSparkRadius, scale.y(capacity.kg)), QPointF(x + kSparkRadius, scale.y(capacity.kg)));
}

void paintSparkPoint(QPainter& painter, QPointF at, const ReadingPoint& point, const SparkInk& ink, double radius)
{
    painter.setPen(QPen(ink.ink, 1));
    if (point.offStandard) {
        painter.drawLine(at + QPointF(-radius, -radius), at + QPointF(radius, radius));
        painter.drawLine(at + QPointF(-radius, radius), at + QPointF(radius, -radius));
        return;
    }
    painter.setBrush(point.watched ? ink.ink : ink.ground);
    painter.drawEllipse(at, radius, radius);
}

}  // namespace

SparkRange sparkRange(std::vector<double> values)
{
    std::ranges::sort(values);
    const auto quartile = [&](std::size_t quarter) { return values[(values.size() - 1) * quarter / 4]; };
    const double fence = 3 * (quartile(3) - quartile(1));
    const auto low = std::ranges::lower_bound(values, quartile(1) - fence);
    const auto high = std::ranges::upper_bound(values, quartile(3) + fence);
    return {*low, *std::prev(high)};
}

void paintSpark(QPainter& painter, const QRectF& area, const Spark& spark, const SparkInk& ink)
{
    const auto shown = lastPoints(spark.points);
    if (shown.empty()) return;
    const auto course = courseAlong(spark.course, shown);
    const SparkScale scale = scaleFor(area, shown, spark.capacity, course);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QColor thread = ink.ink;
    thread.setAlphaF(0.45F);
    QPolygonF way;
    for (const ReadingPoint* point : shown) way << scale.at(point->date, *point->capacityKg);
    const bool hasCourse = course.size() > 1;
    if (hasCourse) {
        paintCourse(painter, scale, course, ink.ink);
    } else {
        painter.setPen(QPen(thread, 1));
        painter.drawPolyline(way);
    }
    for (std::size_t i = 0; i < shown.size(); ++i)
        paintSparkPoint(painter, way[static_cast<qsizetype>(i)], *shown[i], ink,
                        hasCourse ? kSparkRadiusOnCourse : kSparkRadius);
    if (spark.capacity) paintCapacity(painter, scale, *spark.capacity, ink.ink);
    painter.restore();
}

}  // namespace steelyard
