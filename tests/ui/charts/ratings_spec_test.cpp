#include "ui/charts/ratings_spec.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;

const QDate kFirst(2026, 3, 2);

PanelsSpec specOf(const AthleteLog& log, std::size_t line = 0)
{
    LineReading reading;
    for (const Exposure& exposure : log.lines[line].exposures) {
        ReadingPoint point;
        point.date = exposure.date;
        point.capacityKg = 50;
        point.watched = true;
        reading.points.push_back(point);
    }
    return buildRatingsSpec({log, log.lines[line], reading}, {.locale = QLocale::c(), .asOf = kFirst.addDays(60)});
}

const PlotPanel* panelOf(const PanelsSpec& spec, const QString& title)
{
    const auto found =
        std::ranges::find_if(spec.panels, [&](const PlotPanel& panel) { return panel.title.startsWith(title); });
    return found == spec.panels.end() ? nullptr : &*found;
}

TEST(RatingsSpec, NotRatedIsNoPointAndNeverZero)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl"));
    builder.exposure(kFirst, {{.load = 30, .reps = 10, .off = 0}}).felt(7, {}, 0);
    builder.exposure(kFirst.addDays(3), {{.load = 30, .reps = 10}});
    const PanelsSpec spec = specOf(builder.build());
    const PlotPanel* felt = panelOf(spec, QStringLiteral("felt"));
    ASSERT_TRUE(felt);
    EXPECT_EQ(felt->series[0].points.size(), 1u);
    EXPECT_TRUE(felt->series[1].points.empty());
    ASSERT_EQ(felt->series[2].points.size(), 1u);
    EXPECT_EQ(felt->series[2].points[0].y, 0);  // rated, as none
    EXPECT_TRUE(spec.stops[1].words.contains(QStringLiteral("not rated")));
    EXPECT_TRUE(spec.stops[1].words.contains(QStringLiteral("not watched")));
}

TEST(RatingsSpec, DiscomfortIsThatOfEveryJointEverAboveZeroHollowWhereItWasAnotherLift)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl"));
    builder.exposure(kFirst, {{.load = 30, .reps = 10}}).discomfort(Joint::Elbow, 3).discomfort(Joint::Wrist, 0);
    builder.line(QStringLiteral("Squat"));
    builder.exposure(kFirst, {{.load = 90, .reps = 5}}).discomfort(Joint::Elbow, 6);
    builder.exposure(kFirst.addDays(2), {{.load = 90, .reps = 5}}).discomfort(Joint::Knee, 4);
    const PanelsSpec spec = specOf(builder.build());
    const PlotPanel* discomfort = panelOf(spec, QStringLiteral("discomfort"));
    ASSERT_TRUE(discomfort);
    ASSERT_EQ(discomfort->series.size(), 2u);  // no wrist
    ASSERT_EQ(discomfort->series[0].points.size(), 1u);
    EXPECT_EQ(discomfort->series[0].points[0].y, 3);  // this line's own, on the same day
    EXPECT_FALSE(discomfort->series[0].points[0].hollow);
    EXPECT_TRUE(discomfort->series[1].points[0].hollow);
}

// Zones of the pain-monitoring model (Thomeé 1997; Silbernagel et al. 2007; cut-offs from memory): whole ratings up to 2, up
// to 5, and above.
TEST(RatingsSpec, ZonesOfDiscomfortPartWholeRatings)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl"));
    builder.exposure(kFirst, {{.load = 30, .reps = 10}}).discomfort(Joint::Elbow, 3);
    const PanelsSpec spec = specOf(builder.build());
    const auto& zones = panelOf(spec, QStringLiteral("discomfort"))->zones;
    ASSERT_EQ(zones.size(), 3u);
    for (const double rating : {0.0, 1.0, 2.0}) EXPECT_LT(rating, zones[0].high);
    for (const double rating : {3.0, 4.0, 5.0}) EXPECT_TRUE(rating > zones[1].low && rating < zones[1].high);
    EXPECT_GT(6, zones[2].low);
    for (const PanelZone& zone : zones) EXPECT_FALSE(zone.label.isEmpty());
}

TEST(RatingsSpec, CountedShareIsOfTheWatchedRepetitionsAndMarksStandByKind)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl"));
    builder.exposure(kFirst, {{.load = 30, .reps = 10, .off = 2}}).mark(Mark::Swing, 2);
    builder.exposure(kFirst.addDays(3), {{.load = 30, .reps = 10, .off = 0}, {.load = 30, .reps = 10}});
    builder.exposure(kFirst.addDays(6), {{.load = 30, .reps = 10, .off = 1}}).mark(Mark::Dropped, 1);
    const PanelsSpec spec = specOf(builder.build());
    const auto& share = panelOf(spec, QStringLiteral("counted"))->series[0].points;
    ASSERT_EQ(share.size(), 3u);
    EXPECT_DOUBLE_EQ(share[0].y, 80);
    EXPECT_DOUBLE_EQ(share[1].y, 100);
    const PlotPanel* marks = panelOf(spec, QStringLiteral("reps off standard"));
    ASSERT_EQ(marks->ticks.size(), 2u);
    ASSERT_EQ(marks->series[0].points.size(), 2u);
    EXPECT_EQ(marks->series[0].points[0].label, QStringLiteral("2"));
    EXPECT_NE(marks->series[0].points[0].y, marks->series[0].points[1].y);
}

TEST(RatingsSpec, WhatGaveOutFirstIsSolidForTheTargetAndHollowForTheRest)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl")).trains(Id<Muscle>(1), QStringLiteral("forearm"), 0.5);
    builder.exposure(kFirst, {{.load = 30, .reps = 10}}).felt(5, 5, 5, QStringLiteral("forearm"));
    builder.exposure(kFirst.addDays(3), {{.load = 30, .reps = 10}}).felt(5, 5, 5, QStringLiteral("target"));
    const PanelsSpec spec = specOf(builder.build());
    const PlotPanel* gave = panelOf(spec, QStringLiteral("gave out"));
    ASSERT_TRUE(gave);
    EXPECT_EQ(gave->ticks[0].label, QStringLiteral("the target"));
    EXPECT_EQ(gave->ticks[1].label, QStringLiteral("forearm"));
    EXPECT_TRUE(gave->series[0].points[0].hollow);
    EXPECT_FALSE(gave->series[0].points[1].hollow);
    EXPECT_GT(gave->series[0].points[1].y, gave->series[0].points[0].y);
}

TEST(RatingsSpec, LeavesOutWhatWasNeverWrittenDownAndNamesIt)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl")).exposure(kFirst, {{.load = 30, .reps = 10}});
    const PanelsSpec spec = specOf(builder.build());
    EXPECT_FALSE(panelOf(spec, QStringLiteral("felt")));
    EXPECT_FALSE(panelOf(spec, QStringLiteral("lowering")));
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("tension, burn and pump")));
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("seconds of lowering")));
    ASSERT_EQ(spec.table.rows.size(), 1u);
    EXPECT_EQ(spec.table.rows[0].size(), spec.table.header.size());
    EXPECT_EQ(spec.table.rows[0][2], QString());
}

TEST(RatingsSpec, LoweringIsTheMeanOfTheSetsThatHaveIt)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Curl"));
    builder.exposure(kFirst, {{.load = 30, .reps = 10}, {.load = 30, .reps = 10}, {.load = 30, .reps = 9}});
    builder.newestExposure().sets[0].set.loweringSeconds = Decimal(2);
    builder.newestExposure().sets[1].set.loweringSeconds = Decimal(3);
    const PanelsSpec spec = specOf(builder.build());
    ASSERT_TRUE(panelOf(spec, QStringLiteral("lowering")));
    EXPECT_DOUBLE_EQ(panelOf(spec, QStringLiteral("lowering"))->series[0].points[0].y, 2.5);
}

}  // namespace
}  // namespace steelyard
