#include "ui/charts/panels_chart.h"

#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

PanelsSpec threeStops()
{
    PanelsSpec spec;
    setTimeAxis(spec, QDate(2026, 1, 5), QDate(2026, 3, 30), {.locale = QLocale::c()});
    for (const int column : {0, 0, 1}) {
        PlotPanel panel;
        panel.title = QStringLiteral("load");
        panel.column = column;
        setValueAxis(panel, 0, 9, 3, QLocale::c());
        PanelSeries series{.name = QStringLiteral("one"), .line = PanelLine::Dash};
        for (const int week : {0, 4, 8})
            series.points.push_back({chartDay(QDate(2026, 1, 12).addDays(7 * week)), 2.0 + week / 2});
        series.runs = runsOf(series.points, 100);
        panel.series.push_back(series);
        spec.panels.push_back(panel);
    }
    for (int i = 0; i < 3; ++i)
        spec.stops.push_back(
            {chartDay(QDate(2026, 1, 12).addDays(28 * i)), i == 1 ? 7 : -1, QStringLiteral("stop %1").arg(i)});
    spec.summary = QStringLiteral("three");
    return spec;
}

TEST(PanelsChart, KeysStepThroughTheStops)
{
    PanelsChart chart(QStringLiteral("test"));
    chart.setSpec(threeStops());
    QSignalSpy selected(&chart, &PanelsChart::selectedStop);
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.selected(), 2);  // from nowhere: the newest
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.selected(), 1);
    EXPECT_TRUE(chart.accessibleDescription().contains(QStringLiteral("three stop 1")));
    QTest::keyClick(&chart, Qt::Key_Home);
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.selected(), 0);
    QTest::keyClick(&chart, Qt::Key_End);
    EXPECT_EQ(chart.selected(), 2);
    EXPECT_EQ(selected.size(), 4);
}

TEST(PanelsChart, KeysAskForTheNextLine)
{
    PanelsChart chart(QStringLiteral("test"));
    QSignalSpy stepped(&chart, &PanelsChart::lineStepped);
    QTest::keyClick(&chart, Qt::Key_Down);
    QTest::keyClick(&chart, Qt::Key_BracketLeft);
    ASSERT_EQ(stepped.size(), 2);
    EXPECT_EQ(stepped[0][0].toInt(), 1);
    EXPECT_EQ(stepped[1][0].toInt(), -1);
}

TEST(PanelsChart, FindsStopsByMouseInEveryColumnAndByTheirSession)
{
    PanelsChart chart(QStringLiteral("test"));
    chart.resize(900, 400);
    chart.show();
    chart.setSpec(threeStops());
    for (const std::size_t panel : {0u, 1u, 2u})
        for (int stop = 0; stop < 3; ++stop)
            EXPECT_EQ(chart.nearest(chart.place(panel, chart.spec().stops[static_cast<std::size_t>(stop)].x, 3)
                                    + QPointF(2, 9)),
                      stop);
    EXPECT_EQ(chart.stopOf(7), 1);
    EXPECT_EQ(chart.stopOf(3), -1);
    EXPECT_EQ(chart.stopOf(-1), -1);
    QTest::mouseClick(chart.viewport(), Qt::LeftButton, {}, chart.place(2, chart.spec().stops[1].x, 2).toPoint());
    EXPECT_EQ(chart.selected(), 1);
}

TEST(PanelsChart, ColumnsStandBesideEachOtherAndPanelsBelowEachOther)
{
    PanelsChart chart(QStringLiteral("test"));
    chart.resize(900, 400);
    chart.show();
    chart.setSpec(threeStops());
    EXPECT_LT(chart.place(0, chart.spec().high, 0).x(), chart.place(2, chart.spec().low, 0).x());
    EXPECT_LT(chart.place(0, chart.spec().low, 0).y(), chart.place(1, chart.spec().low, 10).y());
    EXPECT_DOUBLE_EQ(chart.place(0, chart.spec().low, 0).x(), chart.place(1, chart.spec().low, 0).x());
    EXPECT_LT(chart.place(1, chart.spec().low, 0).y(), chart.viewport()->height());
}

TEST(PanelsChart, DrawsAnotherSpecWithFewerPanelsInItsPlace)
{
    PanelsChart chart(QStringLiteral("test"));
    chart.resize(600, 300);
    chart.setSpec(threeStops());
    PanelsSpec one = threeStops();
    one.panels.resize(1);
    chart.setSpec(one);
    EXPECT_EQ(chart.spec(), one);
    EXPECT_EQ(chart.selected(), -1);
    chart.setSpec({});
    EXPECT_EQ(chart.nearest({50, 50}), -1);
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_EQ(chart.selected(), -1);
}

// Every shape leaves other pixels, so that series are told apart without colour.
TEST(PanelShapes, AreToldApartWithoutColour)
{
    std::vector<QImage> drawn;
    for (const PanelShape shape : {PanelShape::Disc, PanelShape::Square, PanelShape::Triangle, PanelShape::Diamond,
                                   PanelShape::Cross, PanelShape::Plus})
        for (const bool hollow : {false, true}) {
            const bool stroke = shape == PanelShape::Cross || shape == PanelShape::Plus;
            if (stroke && hollow) continue;
            QImage image(24, 24, QImage::Format_Grayscale8);
            image.fill(Qt::white);
            QPainter painter(&image);
            painter.setRenderHint(QPainter::Antialiasing);
            paintShape(painter, {12, 12}, shape, Qt::black, Qt::white, hollow);
            painter.end();
            for (const QImage& other : drawn) EXPECT_NE(image, other);
            drawn.push_back(image);
        }
}

TEST(PanelsSpec, JoinsPointsUpToTheGapAndLeavesSinglesAlone)
{
    const std::vector<PanelPoint> points{{0, 1}, {5, 2}, {30, 3}, {60, 4}, {64, 5}, {66, 6}};
    const auto runs = runsOf(points, 10);
    ASSERT_EQ(runs.size(), 2u);
    EXPECT_EQ(runs[0].size(), 2u);
    EXPECT_EQ(runs[1].size(), 3u);
}

TEST(PanelsSpec, ShadesPlannedDeloadsWithinTheAxisOnly)
{
    PanelsSpec spec;
    setTimeAxis(spec, QDate(2026, 1, 5), QDate(2026, 2, 15), {.locale = QLocale::c()});
    Block block{
        Id<Athlete>(1), QStringLiteral("b"), {}, QDate(2026, 1, 5), {{WeekKind::Normal, {}}, {WeekKind::Deload, {}}}};
    for (int i = 0; i < 8; ++i) block.weeks.push_back({i == 7 ? WeekKind::Deload : WeekKind::Normal, {}});
    addDeloads(spec, {{Id<Block>(1), {}, block}});
    ASSERT_EQ(spec.shades.size(), 1u);
    EXPECT_EQ(spec.shades[0], (PanelShade{chartDay(QDate(2026, 1, 12)), chartDay(QDate(2026, 1, 19))}));
}

}  // namespace
}  // namespace steelyard
