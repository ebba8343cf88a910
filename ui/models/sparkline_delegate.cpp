#include "ui/models/sparkline_delegate.h"

#include "ui/models/lines_model.h"
#include "ui/shell/theme.h"

#include <QtGui/QPainter>

#include <algorithm>

namespace steelyard {
namespace {

constexpr std::size_t kMostSparkPoints = 24;

struct SparkPoint {
    QPointF at;
    const ReadingPoint* point;
};

std::vector<SparkPoint> sparkPoints(const std::vector<ReadingPoint>& all, const QRectF& area)
{
    std::vector<const ReadingPoint*> shown;
    for (auto it = all.rbegin(); it != all.rend() && shown.size() < kMostSparkPoints; ++it)
        if (it->capacityKg) shown.push_back(&*it);
    std::ranges::reverse(shown);
    if (shown.empty()) return {};
    const auto [low, high] = std::ranges::minmax(shown, {}, [](const ReadingPoint* p) { return *p->capacityKg; });
    const double lowest = *low->capacityKg;
    const double span = std::max(*high->capacityKg - lowest, 0.02 * lowest);
    const double days = std::max<double>(1, static_cast<double>(shown.front()->date.daysTo(shown.back()->date)));
    std::vector<SparkPoint> points;
    for (const ReadingPoint* p : shown) {
        const double x = static_cast<double>(shown.front()->date.daysTo(p->date)) / days;
        const double y = (*p->capacityKg - lowest) / span;
        points.push_back({{area.left() + x * area.width(), area.bottom() - y * area.height()}, p});
    }
    return points;
}

void paintSparkPoint(QPainter* painter, const SparkPoint& spark, const QColor& ink, const QColor& ground)
{
    constexpr double radius = 2.2;
    painter->setPen(QPen(ink, 1));
    if (spark.point->offStandard) {
        painter->drawLine(spark.at + QPointF(-radius, -radius), spark.at + QPointF(radius, radius));
        painter->drawLine(spark.at + QPointF(-radius, radius), spark.at + QPointF(radius, -radius));
        return;
    }
    painter->setBrush(spark.point->watched ? ink : ground);
    painter->drawEllipse(spark.at, radius, radius);
}

}  // namespace

void SparklineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QStyledItemDelegate::paint(painter, option, index);
    const auto* all = index.data(LinesModel::PointsRole).value<const std::vector<ReadingPoint>*>();
    if (!all) return;
    const auto points = sparkPoints(*all, QRectF(option.rect).adjusted(8, 6, -8, -6));
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const ThemeColours& colours = themeColours(option.palette);
    const QColor ink = selected ? option.palette.color(QPalette::HighlightedText) : colours.data[0];
    const QColor ground = option.palette.color(selected ? QPalette::Highlight : QPalette::Base);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    QColor thread = ink;
    thread.setAlphaF(0.45F);
    painter->setPen(QPen(thread, 1));
    for (std::size_t i = 1; i < points.size(); ++i) painter->drawLine(points[i - 1].at, points[i].at);
    for (const SparkPoint& spark : points) paintSparkPoint(painter, spark, ink, ground);
    painter->restore();
}

QSize SparklineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    Q_UNUSED(index)
    return {option.fontMetrics.averageCharWidth() * 18, option.fontMetrics.height() * 8 / 5};
}

}  // namespace steelyard
