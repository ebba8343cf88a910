// Zooming, panning, pointing and going on from a progress chart, by keys and by mouse.
#include "tests/support/progress_case.h"
#include "ui/charts/chart_marker.h"
#include "ui/charts/progress_chart.h"
#include "ui/charts/progress_key.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtGui/QWheelEvent>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>
#include <QtWidgets/QApplication>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::ProgressCase;

const QDate kFirst(2026, 1, 5);

struct MovingCase {
    ProgressCase content;
    ProgressChart chart;

    explicit MovingCase(int sessions = 60)
    {
        for (int i = 0; i < sessions; ++i)
            content.session(kFirst.addDays(3 * i), {{.load = 40, .reps = 8 + i % 3, .off = 0, .rir = 1}}, 50 + i % 4);
        chart.resize(900, 480);
        chart.show();
        chart.setSpec(content.build());
    }
    void wheel(QPointF at, int notches, Qt::KeyboardModifiers keys)
    {
        QWheelEvent event(at, chart.viewport()->mapToGlobal(at), {}, {0, 120 * notches}, Qt::NoButton, keys,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(chart.viewport(), &event);
    }
};

TEST(ProgressMoving, PlusAndMinusZoomAroundTheChosenSessionAndZeroShowsAll)
{
    MovingCase c;
    c.chart.select(20);
    const double whole = c.chart.window().width();
    const QPointF before = c.chart.place(20);
    QTest::keyClick(&c.chart, Qt::Key_Plus);
    QTest::keyClick(&c.chart, Qt::Key_Plus);
    EXPECT_LT(c.chart.window().width(), 0.6 * whole);
    EXPECT_NEAR(c.chart.place(20).x(), before.x(), 1);
    QTest::keyClick(&c.chart, Qt::Key_Minus);
    EXPECT_GT(c.chart.window().width(), 0.6 * whole);
    QTest::keyClick(&c.chart, Qt::Key_Plus);
    QTest::keyClick(&c.chart, Qt::Key_0);
    EXPECT_TRUE(c.chart.window().isWhole());
}

TEST(ProgressMoving, CtrlAndArrowsPanWithoutLeavingTheSession)
{
    MovingCase c;
    c.chart.select(30);
    for (int i = 0; i < 4; ++i) QTest::keyClick(&c.chart, Qt::Key_Plus);
    const double low = c.chart.window().low();
    QTest::keyClick(&c.chart, Qt::Key_Right, Qt::ControlModifier);
    EXPECT_GT(c.chart.window().low(), low);
    QTest::keyClick(&c.chart, Qt::Key_Left, Qt::ControlModifier);
    EXPECT_NEAR(c.chart.window().low(), low, 1e-6);
    EXPECT_EQ(c.chart.selected(), 30);
}

TEST(ProgressMoving, AStepToASessionOutOfSightBringsItIntoSight)
{
    MovingCase c;
    c.chart.select(30);
    for (int i = 0; i < 5; ++i) QTest::keyClick(&c.chart, Qt::Key_Plus);
    QTest::keyClick(&c.chart, Qt::Key_Home);
    EXPECT_EQ(c.chart.selected(), 0);
    EXPECT_TRUE(c.chart.window().holds(chartDay(kFirst)));
    EXPECT_TRUE(QRectF(c.chart.viewport()->rect()).contains(c.chart.place(0)));
}

TEST(ProgressMoving, TheWheelZoomsAroundTheMouseWithCtrlOnly)
{
    MovingCase c;
    const QPointF at = c.chart.place(40);
    c.wheel(at, 2, Qt::NoModifier);
    EXPECT_TRUE(c.chart.window().isWhole());
    c.wheel(at, 2, Qt::ControlModifier);
    EXPECT_FALSE(c.chart.window().isWhole());
    EXPECT_NEAR(c.chart.place(40).x(), at.x(), 2);
    c.wheel(at, -9, Qt::ControlModifier);
    EXPECT_TRUE(c.chart.window().isWhole());
}

TEST(ProgressMoving, DraggingPansAndChoosesNothing)
{
    MovingCase c;
    c.chart.select(30);
    for (int i = 0; i < 4; ++i) QTest::keyClick(&c.chart, Qt::Key_Plus);
    const QPoint from = c.chart.place(31).toPoint();
    const double low = c.chart.window().low();
    QTest::mousePress(c.chart.viewport(), Qt::LeftButton, {}, from);
    QTest::mouseMove(c.chart.viewport(), from - QPoint(40, 0));
    QTest::mouseMove(c.chart.viewport(), from - QPoint(80, 0));
    QTest::mouseRelease(c.chart.viewport(), Qt::LeftButton, {}, from - QPoint(80, 0));
    EXPECT_GT(c.chart.window().low(), low);
    EXPECT_NEAR(c.chart.place(31).x(), from.x() - 80, 2);
    EXPECT_EQ(c.chart.selected(), 30);
}

TEST(ProgressMoving, AClickChoosesAndADoubleClickOrEnterGoesOnToTheSets)
{
    MovingCase c;
    QSignalSpy wanted(&c.chart, &ProgressChart::setsWanted);
    QTest::mouseClick(c.chart.viewport(), Qt::LeftButton, {}, c.chart.place(25).toPoint());
    EXPECT_EQ(c.chart.selected(), 25);
    EXPECT_TRUE(wanted.isEmpty());
    QTest::mouseDClick(c.chart.viewport(), Qt::LeftButton, {}, c.chart.place(26).toPoint());
    ASSERT_EQ(wanted.size(), 1);
    EXPECT_EQ(wanted[0][0].toInt(), 26);
    QTest::keyClick(&c.chart, Qt::Key_Return);
    ASSERT_EQ(wanted.size(), 2);
    EXPECT_EQ(wanted[1][0].toInt(), 26);
}

TEST(ProgressMoving, TheAxesFollowWhatIsInSight)
{
    ProgressCase c;
    for (int i = 0; i < 60; ++i)
        c.session(kFirst.addDays(7 * i), {{.load = 40, .reps = 8, .off = 0, .rir = 1}}, 40 + i);
    const ProgressSpec spec = c.build();
    const auto from = chartDay(kFirst.addDays(7 * 20));
    const ProgressAxes part = progressAxes(spec, from, from + 70);
    EXPECT_GE(part.capacity.low, 58);
    EXPECT_LE(part.capacity.high, 72);
    EXPECT_EQ(progressAxes(spec, chartDay(spec.from), chartDay(spec.to)),
              (ProgressAxes{spec.capacity.axis, spec.reps.axis}));
}

TEST(ProgressMoving, WhatIsOutOfSightCanNotBePointedAt)
{
    MovingCase c;
    c.chart.select(30);
    for (int i = 0; i < 6; ++i) QTest::keyClick(&c.chart, Qt::Key_Plus);
    EXPECT_EQ(c.chart.nearest(c.chart.place(0)), -1);
    EXPECT_EQ(c.chart.nearest(c.chart.place(30)), 30);
}

TEST(ProgressMoving, TellsWhatStandsAtTheChosenSessionToAssistiveTechnology)
{
    MovingCase c;
    c.chart.select(4);
    const QString told = c.chart.accessibleDescription();
    EXPECT_TRUE(told.contains(QStringLiteral("40 kg × 9"))) << told.toStdString();
    EXPECT_TRUE(told.contains(QStringLiteral("capacity 50.0 kg"))) << told.toStdString();
}

TEST(ProgressMoving, PointingAtTheRulerSaysTheWholeOfWhatIsCutShort)
{
    MovingCase c;
    Block block{Id<Athlete>(1), QStringLiteral("Spring"), {}, kFirst.addDays(28), {}};
    block.weeks.resize(4);
    c.content.blocks.push_back({Id<Block>(1), {}, block});
    c.content.notes = {QStringLiteral("slept badly, but came")};
    Decision decision{Id<Athlete>(1), {}, QStringLiteral("stalled"), DecisionKind::Act, kFirst.addDays(90), {}, {}, {}};
    decision.said = QStringLiteral("No rise for six weeks.");
    c.content.decisions.push_back({Id<Decision>(1), {}, decision});
    c.chart.setSpec(c.content.build());
    const auto tipsInColumn = [&](QDate day) {
        QString tips;
        const double x = c.chart.place(static_cast<int>(kFirst.daysTo(day) / 3)).x() + 1;
        for (int y = 0; y < c.chart.viewport()->height(); ++y) tips += c.chart.tipAt({x, static_cast<double>(y)});
        return tips;
    };
    EXPECT_TRUE(tipsInColumn(kFirst.addDays(33)).contains(QStringLiteral("Spring")));
    EXPECT_TRUE(tipsInColumn(kFirst).contains(QStringLiteral("slept badly, but came")));
    EXPECT_TRUE(tipsInColumn(kFirst.addDays(90)).contains(QStringLiteral("No rise for six weeks.")));
    EXPECT_FALSE(tipsInColumn(kFirst.addDays(75)).contains(QStringLiteral("Spring")));
}

TEST(ProgressMoving, PointingAtALimitOfTheSmallestChangeExplainsIt)
{
    MovingCase c;
    for (const ReadingPoint& point : c.content.reading.points)
        c.content.reading.trend.push_back({point.date, 51, 49, 53});
    const ProgressSpec spec = c.content.build();
    ASSERT_TRUE(spec.realChange);
    c.chart.setSpec(spec);
    const double x = c.chart.place(30).x();
    int pixels = 0;
    for (int y = 0; y < c.chart.viewport()->height(); ++y)
        pixels += c.chart.tipAt({x, static_cast<double>(y)}) == spec.realChange->words;
    EXPECT_GT(pixels, 10);  // two lines
    EXPECT_LT(pixels, 24);
}

TEST(ProgressKey, ExplainsOnlyWhatIsThereAndTakesMoreLinesWhereItIsNarrow)
{
    MovingCase c;
    const auto words = [&] {
        QStringList all;
        for (const KeyEntry& entry : progressKey(c.chart.spec(), chartColours(QPalette()))) all << entry.word;
        return all;
    };
    EXPECT_TRUE(words().contains(QStringLiteral("near failure")));
    EXPECT_FALSE(words().contains(QStringLiteral("hollow: not watched")));
    EXPECT_FALSE(words().contains(QStringLiteral("reps off standard")));
    c.content.session(kFirst.addDays(200), {{.load = 40, .reps = 9, .off = 1, .rir = 3}, {.load = 40, .reps = 9}});
    c.chart.setSpec(c.content.build());
    EXPECT_TRUE(words().contains(QStringLiteral("hollow: not watched")));
    EXPECT_TRUE(words().contains(QStringLiteral("reps off standard")));
    const auto key = progressKey(c.chart.spec(), chartColours(QPalette()));
    const QFontMetricsF metrics(c.chart.font());
    EXPECT_LT(keyLines(key, metrics, 2000), keyLines(key, metrics, 200));
}

// Where the ink of a set's mark lies tells the shapes apart without their colours.
TEST(ChartMarker, MarksOfSetsDifferInShapeAndFilling)
{
    const ChartColours colours = chartColours(QPalette(Qt::lightGray));
    const auto drawn = [&](SetEffort effort, bool watched) {
        QImage image(64, 64, QImage::Format_Grayscale8);
        image.fill(qGray(colours.ground.rgb()));
        QPainter painter(&image);
        painter.scale(8, 8);
        paintSetMarker(painter, {4, 4}, effort, watched, kSetRadius, colours);
        painter.end();
        return image;
    };
    const auto inkIn = [&](const QImage& image, QRect part) {
        int ink = 0;
        for (int y = part.top(); y <= part.bottom(); ++y)
            for (int x = part.left(); x <= part.right(); ++x)
                ink += std::abs(qGray(image.pixel(x, y)) - qGray(colours.ground.rgb())) > 40;
        return ink;
    };
    const QRect upper(0, 0, 64, 32);
    const QRect lower(0, 32, 64, 32);
    const QRect middle(28, 30, 8, 8);
    const QImage near = drawn(SetEffort::Near, true);
    const QImage far = drawn(SetEffort::Far, true);
    const QImage some = drawn(SetEffort::Some, true);
    const QImage unknown = drawn(SetEffort::Unknown, true);
    EXPECT_GT(inkIn(near, lower), 1.3 * inkIn(near, upper));
    EXPECT_GT(inkIn(far, upper), 1.3 * inkIn(far, lower));
    EXPECT_NEAR(inkIn(some, upper), inkIn(some, lower), 0.15 * inkIn(some, lower));
    EXPECT_LT(inkIn(unknown, upper) + inkIn(unknown, lower), 0.7 * (inkIn(some, upper) + inkIn(some, lower)));
    EXPECT_EQ(inkIn(near, middle), middle.width() * middle.height());
    EXPECT_EQ(inkIn(drawn(SetEffort::Near, false), middle), 0);
    EXPECT_EQ(inkIn(drawn(SetEffort::Some, false), middle), 0);
}

TEST(ChartMarker, StrokesOfTheLoadsDifferWithoutColour)
{
    const ChartColours colours = chartColours(QPalette());
    EXPECT_NE(loadPen(colours, 0).style(), loadPen(colours, 1).style());
    EXPECT_NE(loadPen(colours, 1).style(), loadPen(colours, 2).style());
    EXPECT_NE(loadPen(colours, 0).style(), loadPen(colours, 2).style());
}

}  // namespace
}  // namespace steelyard
