#include "ui/models/spark_painter.h"

#include <QtGui/QImage>
#include <QtGui/QPainter>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(SparkRange, IsThatOfAllValuesWhenNoneIsFarOut)
{
    const SparkRange range = sparkRange({43, 40, 42, 41, 44});
    EXPECT_EQ(range.low, 40);
    EXPECT_EQ(range.high, 44);
}

TEST(SparkRange, LeavesASlipOfThePenOut)
{
    const SparkRange range = sparkRange({40, 41, 42, 420, 43, 44, 4});
    EXPECT_EQ(range.low, 40);
    EXPECT_EQ(range.high, 44);
}

TEST(SparkRange, OfOneValueOrOfEqualOnesIsThatValue)
{
    EXPECT_EQ(sparkRange({7}).low, 7);
    EXPECT_EQ(sparkRange({7}).high, 7);
    EXPECT_EQ(sparkRange({7, 7, 7, 9}).high, 7);
}

// How dark a column of the picture is, from the top: true where anything is painted.
std::vector<bool> columnOf(const std::vector<TrendPoint>& course, int x)
{
    std::vector<ReadingPoint> points(2);
    points[0].date = QDate(2026, 1, 1);
    points[1].date = QDate(2026, 1, 11);
    for (ReadingPoint& point : points) point.capacityKg = 50;
    QImage image(100, 100, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintSpark(painter, QRectF(0, 0, 100, 100), {points, {}, course}, {Qt::black, Qt::white});
    painter.end();
    std::vector<bool> painted;
    for (int y = 0; y < image.height(); ++y) painted.push_back(image.pixel(x, y) != QColor(Qt::white).rgb());
    return painted;
}

TEST(SparkCourse, IsABandFromTheOneEndOfItsIntervalToTheOther)
{
    // Between 0 and 100 kg, so a kilogram is a pixel; what lies before the first point is left out.
    const std::vector<TrendPoint> course{{QDate(2025, 1, 1), 900, 800, 1000},
                                         {QDate(2026, 1, 1), 50, 0, 100},
                                         {QDate(2026, 1, 6), 50, 30, 80},
                                         {QDate(2026, 1, 11), 50, 0, 100}};
    const std::vector<bool> middle = columnOf(course, 50);
    EXPECT_FALSE(middle[17]);
    EXPECT_TRUE(middle[23]);
    EXPECT_TRUE(middle[66]);
    EXPECT_FALSE(middle[73]);
    EXPECT_TRUE(columnOf(course, 2)[90]);
    EXPECT_FALSE(columnOf({}, 2)[90]) << "no course, no band";
}

}  // namespace
}  // namespace steelyard
