#include "ui/charts/progress_chart.h"

#include "tests/support/made_up_reading.h"
#include "ui/charts/chart_marker.h"

#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

ProgressSpec specOf(const LineReading& reading)
{
    const std::vector<Row<Block>> blocks;
    const std::vector<Row<Decision>> decisions;
    return buildProgressSpec({reading, blocks, decisions, {}, QStringLiteral("Arm curl")}, {QLocale::c()});
}

TEST(ProgressChart, KeysStepThroughTheSessions)
{
    ProgressChart chart;
    chart.resize(800, 420);
    chart.setSpec(specOf(madeUpReading(12)));
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.selected(), 11);  // from nowhere: the newest
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.selected(), 10);
    QTest::keyClick(&chart, Qt::Key_Home);
    EXPECT_EQ(chart.selected(), 0);
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.selected(), 0);
    QTest::keyClick(&chart, Qt::Key_End);
    EXPECT_EQ(chart.selected(), 11);
}

TEST(ProgressChart, KeysAskForTheNextLine)
{
    ProgressChart chart;
    chart.setSpec(specOf(madeUpReading(3)));
    QSignalSpy stepped(&chart, &ProgressChart::lineStepped);
    QTest::keyClick(&chart, Qt::Key_Down);
    QTest::keyClick(&chart, Qt::Key_BracketLeft);
    ASSERT_EQ(stepped.size(), 2);
    EXPECT_EQ(stepped[0][0].toInt(), 1);
    EXPECT_EQ(stepped[1][0].toInt(), -1);
}

TEST(ProgressChart, FindsTheSessionUnderTheMouseWithinReachOnly)
{
    ProgressChart chart;
    chart.resize(900, 420);
    chart.show();
    chart.setSpec(specOf(madeUpReading(20)));
    const QPointF at = chart.place(7);
    EXPECT_EQ(chart.nearest(at + QPointF(2, 1)), 7);
    EXPECT_EQ(chart.nearest({1, 1}), -1);
}

TEST(ProgressChart, FindsASessionBeyondTheScaleAtTheEdgeWhereItIsDrawn)
{
    LineReading reading = madeUpReading(30);
    reading.points[12].countedReps = 88;
    ProgressChart chart;
    chart.resize(900, 420);
    chart.show();
    chart.setSpec(specOf(reading));
    const QPointF at = chart.place(12);
    EXPECT_TRUE(QRectF(chart.viewport()->rect()).contains(at)) << at.x() << ' ' << at.y();
    EXPECT_LT(at.y(), chart.place(11).y());
    EXPECT_EQ(chart.nearest(at + QPointF(1, 2)), 12);
}

TEST(ProgressChart, PointsAtWhatIsHoveredAndThenAgainAtWhatIsSelected)
{
    ProgressChart chart;
    chart.resize(900, 420);
    chart.show();
    chart.setSpec(specOf(madeUpReading(20)));
    chart.select(3);
    QSignalSpy pointed(&chart, &ProgressChart::pointedAt);
    QTest::mouseMove(chart.viewport(), chart.place(9).toPoint());
    QTest::mouseMove(chart.viewport(), QPoint(1, 1));
    ASSERT_EQ(pointed.size(), 2);
    EXPECT_EQ(pointed[0][0].toInt(), 9);
    EXPECT_EQ(pointed[1][0].toInt(), 3);
}

// Counts pixels that aren't ground in the columns right of the last session, where nothing but the next set stands.
TEST(ProgressChart, DrawsTheNextSetRightOfTheLastSession)
{
    const auto inkBehindLast = [](bool nextSet) {
        ProgressChart chart;
        chart.resize(900, 420);
        ProgressSpec spec = specOf(madeUpReading(20));
        if (!nextSet) spec.next.reset();
        chart.show();
        chart.setSpec(spec);
        const QImage image = chart.viewport()->grab().toImage();
        const QPointF last = chart.place(19);
        int ink = 0;
        for (int x = static_cast<int>(last.x()) + 12; x < image.width() - 14; ++x)
            for (int y = static_cast<int>(last.y()) - 40; y < static_cast<int>(last.y()) + 40; ++y)
                ink += image.valid(x, y) && qBlue(image.pixel(x, y)) - qRed(image.pixel(x, y)) > 60;
        return ink;
    };
    EXPECT_GT(inkBehindLast(true), 20);
    EXPECT_EQ(inkBehindLast(false), 0);
}

TEST(ProgressChart, TellsItsSummaryAndSelectionToAssistiveTechnology)
{
    ProgressChart chart;
    chart.setSpec(specOf(madeUpReading(6)));
    EXPECT_TRUE(chart.accessibleDescription().contains(chart.spec().summary));
    const QString before = chart.accessibleDescription();
    chart.select(2);
    EXPECT_NE(chart.accessibleDescription(), before);
}

TEST(ProgressChart, IgnoresASelectionItDoesNotHave)
{
    ProgressChart chart;
    chart.setSpec(specOf(madeUpReading(4)));
    chart.select(99);
    EXPECT_EQ(chart.selected(), -1);
    chart.setSpec(specOf(LineReading{}));
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_EQ(chart.selected(), -1);
}

// The mean darkness of the middle and of the corners of a marker tells the shapes apart without their colours.
TEST(ChartMarker, ShapesDifferWithoutColour)
{
    const auto grey = [](PointKind kind) {
        QImage image(64, 64, QImage::Format_Grayscale8);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(4, 4);
        paintMarker(painter, {8, 8}, kind,
                    chartColours(QPalette(Qt::black, Qt::lightGray, Qt::white, Qt::darkGray, Qt::gray, Qt::black,
                                          Qt::white, Qt::white, Qt::white)));
        painter.end();
        return image;
    };
    const auto dark = [](const QImage& image, int x, int y) { return qGray(image.pixel(x, y)) < 200; };
    const QImage solid = grey(PointKind::Standard);
    const QImage ring = grey(PointKind::Unwatched);
    const QImage cross = grey(PointKind::OffStandard);
    const QImage small = grey(PointKind::Deload);
    EXPECT_TRUE(dark(solid, 32, 32));
    EXPECT_FALSE(dark(ring, 32, 32));
    EXPECT_TRUE(dark(ring, 32, 32 - 13));
    EXPECT_TRUE(dark(cross, 32 + 12, 32 - 12));  // an arm reaches where no disc does
    EXPECT_FALSE(dark(solid, 32 + 12, 32 - 12));
    EXPECT_FALSE(dark(cross, 32, 32 - 12));
    EXPECT_FALSE(dark(small, 32, 32 - 12));
}

TEST(ChartMarker, TheTriangleOfASessionBeyondTheScalePointsToItsSide)
{
    const auto drawn = [](Beyond beyond) {
        QImage image(64, 64, QImage::Format_Grayscale8);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.scale(4, 4);
        paintBeyondMarker(painter, {8, 8}, beyond, PointKind::Standard, chartColours(QPalette(Qt::lightGray)));
        painter.end();
        return image;
    };
    const auto darkInRow = [](const QImage& image, int y) {
        int dark = 0;
        for (int x = 0; x < image.width(); ++x) dark += qGray(image.pixel(x, y)) < 200;
        return dark;
    };
    const QImage up = drawn(Beyond::Above);
    const QImage down = drawn(Beyond::Below);
    EXPECT_GT(darkInRow(up, 44), darkInRow(up, 22) + 8);
    EXPECT_GT(darkInRow(down, 20), darkInRow(down, 42) + 8);
}

}  // namespace
}  // namespace steelyard
