#include "ui/charts/training_spec.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kMonday(2026, 3, 2);
const Id<Muscle> kBack(1);
const Id<Muscle> kBiceps(2);

LogBuilder fourWeeks()
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row")).trains(kBack, QStringLiteral("back"), 1);
    builder.trains(kBiceps, QStringLiteral("biceps"), 0.5).aim(kBiceps, 8, 14);
    for (int week = 0; week < 4; ++week)
        for (const int day : {0, 3}) {
            const MadeSet set{.load = 60, .reps = 10, .rir = 2, .kind = week == 2 ? SetKind::Deload : SetKind::Work};
            builder.exposure(kMonday.addDays(7 * week + day), {set, set, set});
        }
    return builder;
}

PanelsOptions untilThe(QDate day)
{
    return {.locale = QLocale::c(), .asOf = day};
}

const PlotPanel& panelOf(const PanelsSpec& spec, const QString& title)
{
    return *std::ranges::find_if(spec.panels, [&](const PlotPanel& panel) { return panel.title.startsWith(title); });
}

TEST(TrainingSpec, ShowsEffortMonotonyAndStrainOfEveryWeekThatIsOver)
{
    // The last week ends on the Sunday after its Thursday: open on the Friday.
    const PanelsSpec spec = buildTrainingSpec(fourWeeks().build(), untilThe(kMonday.addDays(25)));
    const auto& effort = panelOf(spec, QStringLiteral("session effort")).series[0].points;
    ASSERT_EQ(effort.size(), 4u);
    EXPECT_DOUBLE_EQ(effort[0].y, 48);  // two sessions of three sets at 8
    EXPECT_FALSE(effort[2].hollow);
    EXPECT_TRUE(effort[3].hollow);
    EXPECT_EQ(panelOf(spec, QStringLiteral("monotony")).series[0].points.size(), 3u);
    EXPECT_EQ(panelOf(spec, QStringLiteral("strain")).series[0].points.size(), 3u);
    EXPECT_EQ(spec.stops.size(), 4u);
    EXPECT_TRUE(spec.stops[3].words.contains(QStringLiteral("not over yet")));
}

TEST(TrainingSpec, PutsMusclesWithAnAimFirstWithItAsAZoneOnOneScale)
{
    const PanelsSpec spec = buildTrainingSpec(fourWeeks().build(), untilThe(kMonday.addDays(27)));
    const PlotPanel& biceps = spec.panels[4];
    const PlotPanel& back = spec.panels[5];
    EXPECT_TRUE(biceps.title.startsWith(QStringLiteral("biceps, aim 8 to 14"))) << biceps.title.toStdString();
    ASSERT_EQ(biceps.zones.size(), 1u);
    EXPECT_EQ(biceps.zones[0].low, 8);
    EXPECT_EQ(biceps.zones[0].high, 14);
    EXPECT_TRUE(back.zones.empty());
    EXPECT_EQ(biceps.high, back.high);
    EXPECT_GE(biceps.high, 14);
    ASSERT_EQ(back.series[0].points.size(), 3u);  // deload sets don't count
    EXPECT_DOUBLE_EQ(back.series[0].points[0].y, 6);
    EXPECT_DOUBLE_EQ(biceps.series[0].points[0].y, 3);
    EXPECT_NE(biceps.column, back.column);
}

TEST(TrainingSpec, ShadesTheDeloadAndSaysItInWordsAndTable)
{
    const PanelsSpec spec = buildTrainingSpec(fourWeeks().build(), untilThe(kMonday.addDays(27)));
    ASSERT_EQ(spec.shades.size(), 1u);
    EXPECT_EQ(spec.shades[0].from, chartDay(kMonday.addDays(14)));
    EXPECT_TRUE(spec.stops[2].words.contains(QStringLiteral("deload")));
    ASSERT_EQ(spec.table.rows.size(), 4u);
    for (const QStringList& row : spec.table.rows) EXPECT_EQ(row.size(), spec.table.header.size());
    EXPECT_EQ(spec.table.rows[0][0], QStringLiteral("2026-03-02"));
    EXPECT_TRUE(spec.table.rows[2].contains(QStringLiteral("deload")));
}

TEST(TrainingSpec, SaysWhenEffortIsNotKnownInsteadOfDrawingZero)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row")).exposure(kMonday, {{.load = 60, .reps = 10}, {.load = 60, .reps = 10}});
    const PanelsSpec spec = buildTrainingSpec(builder.build(), untilThe(kMonday.addDays(6)));
    EXPECT_TRUE(panelOf(spec, QStringLiteral("session effort")).series[0].points.empty());
    EXPECT_TRUE(spec.stops[0].words.contains(QStringLiteral("effort written down for 0 of 2")));
}

TEST(TrainingSpec, ShowsVolumeInTheLiftersUnitAndKeepsToTheStretch)
{
    LogBuilder builder = fourWeeks();
    builder.unit(MassUnit::lb);
    PanelsOptions options = untilThe(kMonday.addDays(27));
    options.unit = MassUnit::lb;
    options.from = kMonday.addDays(7);
    const PanelsSpec spec = buildTrainingSpec(builder.build(), options);
    EXPECT_EQ(spec.stops.size(), 3u);
    // Six sets of 60 kg x 10.
    EXPECT_NEAR(panelOf(spec, QStringLiteral("volume load, 1000 lb")).series[0].points[0].y, 3.6 / 0.45359237, 1e-9);
}

TEST(TrainingSpec, IsEmptyWithoutTraining)
{
    EXPECT_TRUE(buildTrainingSpec(LogBuilder().build(), untilThe(kMonday)).empty());
    PanelsOptions later = untilThe(kMonday.addDays(200));
    later.from = kMonday.addDays(100);
    EXPECT_TRUE(buildTrainingSpec(fourWeeks().build(), later).empty());
}

}  // namespace
}  // namespace steelyard
