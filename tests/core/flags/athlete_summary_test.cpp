#include "core/flags/athlete_summary.h"

#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);
const MadeSet kSet{.load = 40, .reps = 8, .off = 0, .rir = 1};

AthleteSummary summaryOf(const LogBuilder& builder, QDate asOf = kToday)
{
    const AthleteLog log = builder.build();
    const RegimeEngine engine;
    return summarise(takeSnapshot(log, engine, asOf));
}

TEST(AthleteSummary, OfAnEmptyRecordSaysNothing)
{
    const AthleteSummary summary = summaryOf(LogBuilder());
    EXPECT_TRUE(summary.mainLines.empty());
    EXPECT_TRUE(summary.muscles.empty());
    EXPECT_TRUE(summary.joints.empty());
    EXPECT_FALSE(summary.discomfortRated);
    for (const AttendedWeek& week : summary.weeks) {
        EXPECT_EQ(week.came, 0);
        EXPECT_FALSE(week.expected);
    }
}

TEST(AthleteSummary, NamesTheFourLinesTrainedMostLately)
{
    LogBuilder builder;
    // Often, but long ago; then five lines, the later the more often.
    builder.line(QStringLiteral("Abandoned")).exposures(20, kToday.addDays(-60), 3, [](int) { return kSet; });
    for (int i = 1; i <= 5; ++i)
        builder.line(QStringLiteral("Lift %1").arg(i)).exposures(i, kToday, 7, [](int) { return kSet; });
    const AthleteSummary summary = summaryOf(builder);
    const std::vector<Id<LiftLine>> expected{Id<LiftLine>(6), Id<LiftLine>(5), Id<LiftLine>(4), Id<LiftLine>(3)};
    EXPECT_EQ(summary.mainLines, expected);
}

TEST(AthleteSummary, CountsSetsAWeekWithAimsFirstAndThenTheMost)
{
    LogBuilder builder;
    builder.aim(Id<Muscle>(3), 8, 12);
    builder.line(QStringLiteral("Arm curl"))
        .trains(Id<Muscle>(1), QStringLiteral("forearm"), 0.5)
        .trains(Id<Muscle>(2), QStringLiteral("biceps"), 1)
        .trains(Id<Muscle>(3), QStringLiteral("calf"), 1.0 / 3)
        .exposure(kToday.addDays(-21), std::vector(9, kSet))  // a day too early
        .exposure(kToday.addDays(-20), std::vector(9, kSet))
        .exposure(kToday, std::vector(9, kSet));
    const AthleteSummary summary = summaryOf(builder);
    ASSERT_EQ(summary.muscles.size(), 3u);
    EXPECT_EQ(summary.muscles[0].name, QStringLiteral("calf"));
    ASSERT_TRUE(summary.muscles[0].aim);
    EXPECT_EQ(summary.muscles[0].aim->weeklySetsHigh, 12);
    EXPECT_NEAR(summary.muscles[0].perWeek, 2, 1e-9);  // 18 sets in three weeks, a third each
    EXPECT_EQ(summary.muscles[1].name, QStringLiteral("biceps"));
    EXPECT_NEAR(summary.muscles[1].perWeek, 6, 1e-9);
    EXPECT_FALSE(summary.muscles[1].aim);
    EXPECT_EQ(summary.muscles[2].name, QStringLiteral("forearm"));
    EXPECT_NEAR(summary.muscles[2].perWeek, 3, 1e-9);
}

TEST(AthleteSummary, KeepsAnAimThatNobodyTrainsFor)
{
    LogBuilder builder;
    builder.aim(Id<Muscle>(7), 8, 12);
    const AthleteSummary summary = summaryOf(builder);
    ASSERT_EQ(summary.muscles.size(), 1u);
    EXPECT_EQ(summary.muscles[0].perWeek, 0);
}

TEST(AthleteSummary, KeepsTheHighestDiscomfortOfEachJointAndTheDayItWasLastThatHigh)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    builder.exposure(kToday.addDays(-28), {kSet}).discomfort(Joint::Knee, 9);  // too long ago
    builder.exposure(kToday.addDays(-14), {kSet}).discomfort(Joint::Elbow, 4).discomfort(Joint::Wrist, 0);
    builder.exposure(kToday.addDays(-7), {kSet}).discomfort(Joint::Elbow, 4).discomfort(Joint::Hip, 6);
    builder.exposure(kToday, {kSet}).discomfort(Joint::Elbow, 2);
    builder.exposure(kToday.addDays(1), {kSet}).discomfort(Joint::Elbow, 10);  // not yet
    const AthleteSummary summary = summaryOf(builder);
    ASSERT_EQ(summary.joints.size(), 2u);
    EXPECT_EQ(summary.joints[0].joint, Joint::Hip);
    EXPECT_EQ(summary.joints[0].rating, 6);
    EXPECT_EQ(summary.joints[1].joint, Joint::Elbow);
    EXPECT_EQ(summary.joints[1].rating, 4);
    EXPECT_EQ(summary.joints[1].date, kToday.addDays(-7));
}

TEST(AthleteSummary, TellsNothingFeltFromNobodyAsked)
{
    LogBuilder asked;
    asked.line(QStringLiteral("Arm curl")).exposure(kToday, {kSet}).discomfort(Joint::Elbow, 0);
    EXPECT_TRUE(summaryOf(asked).discomfortRated);
    EXPECT_TRUE(summaryOf(asked).joints.empty());
    LogBuilder unasked;
    unasked.line(QStringLiteral("Arm curl")).exposure(kToday, {kSet});
    EXPECT_FALSE(summaryOf(unasked).discomfortRated);
}

TEST(AthleteSummary, SetsSessionsOfEightWeeksBesideWhatWasUsual)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    // Twice a week for long, then one week away, then once.
    for (int days = 120; days > 14; --days)
        if (days % 7 == 0 || days % 7 == 3) builder.exposure(kToday.addDays(-days), {kSet});
    builder.exposure(kToday, {kSet});
    const AthleteSummary summary = summaryOf(builder);
    EXPECT_EQ(summary.weeks.back().lastDay, kToday);
    EXPECT_EQ(summary.weeks.back().came, 1);
    EXPECT_EQ(summary.weeks[6].lastDay, kToday.addDays(-7));
    EXPECT_EQ(summary.weeks[6].came, 0);
    EXPECT_EQ(summary.weeks[0].came, 2);
    for (const AttendedWeek& week : summary.weeks) {
        ASSERT_TRUE(week.expected);
        EXPECT_NEAR(*week.expected, 2, 0.15);
    }
}

TEST(AthleteSummary, ExpectsTheDaysAgreedBeforeTheHabit)
{
    LogBuilder builder;
    builder.daysPerWeek(4).line(QStringLiteral("Arm curl")).exposures(12, kToday, 7, [](int) { return kSet; });
    for (const AttendedWeek& week : summaryOf(builder).weeks) {
        EXPECT_EQ(week.came, 1);
        EXPECT_EQ(week.expected, 4);
    }
}

TEST(AthleteSummary, ExpectsWhatABlockPlansBeforeAllElse)
{
    LogBuilder builder;
    const QDate start = kToday.addDays(-55);
    std::vector<PlannedWeek> weeks(8);
    for (int i = 0; i < 8; ++i)
        for (int day = 0; day < 3; ++day)
            weeks[static_cast<std::size_t>(i)].days.push_back({.date = start.addDays(7 * i + day)});
    builder.daysPerWeek(5).block(start, weeks);
    builder.line(QStringLiteral("Arm curl")).exposure(kToday, {kSet});
    for (const AttendedWeek& week : summaryOf(builder).weeks) EXPECT_EQ(week.expected, 3);
}

}  // namespace
}  // namespace steelyard
