#include "core/analysis/lifter_tracker.h"

#include "core/analysis/line_numbers.h"
#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kTrackedTo(2026, 6, 1);
const ReadingParameters kShipped;
const VerdictThresholds kUsualThresholds;

// A lifter to whom load costs much more than usual: z falls by 1.6 for a unit of ln load, seen on two loads a session.
MadeSet steepSet(double load)
{
    const double z = std::log1p(14.0 / 30) - 1.6 * std::log(load / 40);
    return {.load = load, .reps = static_cast<int>(std::lround(30 * std::expm1(z) - 0.5)), .off = 0, .rir = 0};
}

double elasticityOfNewLine(const QString& exercise)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    for (int i = 60; i > 1; --i)
        builder.exposure(kTrackedTo.addDays(-4 * i), {steepSet(40), steepSet(33), steepSet(44)});
    builder.line(exercise, QStringLiteral("neutral")).exposure(kTrackedTo, {steepSet(30)});
    const AthleteLog& log = builder.build();
    LifterTracker lifter(kShipped, kUsualThresholds, log.athlete.value.experience);
    lifter.advance(log, countLines(log, kTrackedTo), kTrackedTo);
    EXPECT_GT(elasticityOf(lifter.line(log.lines[0].id)), 1.3);
    return elasticityOf(lifter.line(log.lines[1].id));
}

TEST(LifterTracker, ANewWayOfAnExerciseStartsFromTheOthersCostOfLoad)
{
    EXPECT_GT(elasticityOfNewLine(QStringLiteral("Arm curl")), 1.3);
    EXPECT_NEAR(elasticityOfNewLine(QStringLiteral("Back squat")), kShipped.filter.elasticityMean, 0.05);
}

TEST(LifterTracker, AsksNoMoreOfWeeksLongAfterTheLastSession)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl")).exposures(20, kTrackedTo, 4, [](int) { return steepSet(40); });
    const AthleteLog& log = builder.build();
    LifterTracker lifter(kShipped, kUsualThresholds, log.athlete.value.experience);
    const QDate farAway(9999, 12, 31);
    lifter.advance(log, countLines(log, farAway), farAway);
    EXPECT_LT(lifter.line(log.lines[0].id).weeks().size(), 80U);
}

}  // namespace
}  // namespace steelyard
