#include "core/analysis/line_explanation.h"

#include "core/analysis/set_forecast.h"
#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder curl()
{
    return LogBuilder().line(QStringLiteral("Arm curl")).experience(Experience::Novice);
}

// Sessions of three sets every three days, the last one today: a rise up to the onset and a level stretch after it. What
// is added to the repetitions is fixed, sums to nothing and has no trend.
LogBuilder stalling(int rising, int level)
{
    constexpr std::array<int, 6> kAdded{0, 1, -1, 1, 0, -1};
    LogBuilder builder = curl();
    for (int i = 0; i < rising + level; ++i) {
        const double load = 40 + 0.25 * std::min(i, rising);
        const int reps = 10 + kAdded[static_cast<std::size_t>(i) % kAdded.size()];
        builder.exposure(kToday.addDays(-3 * (rising + level - 1 - i)),
                         {{.load = load, .reps = reps, .off = 0, .rir = 2},
                          {.load = load, .reps = reps, .off = 0, .rir = 1},
                          {.load = load, .reps = reps - 1, .off = 0, .rir = 1}});
    }
    return builder;
}

LineExplanation explained(const LogBuilder& builder, QDate asOf = kToday, int weeks = 12)
{
    const AthleteLog& log = builder.build();
    const RegimeEngine engine;
    return explainLine(engine, log.lines.front(), log, asOf, weeks);
}

double pullsOf(const ExplainedSession& session)
{
    double sum = 0;
    for (const ExplainedSet& set : session.sets) sum += set.pull;
    return sum;
}

// The chances right after the sessions up to a day, from a tracker of its own.
RegimeChances chancesWith(const AthleteLog& log, std::size_t sessions, QDate day)
{
    AthleteLog part = log;
    part.lines.front().exposures.resize(sessions);
    const RegimeEngine engine;
    return engine.track(part.lines.front(), part, day).chances().value();
}

TEST(LineExplanation, PullsAddUpToWhatTheTrackerSaysBeforeAndAfterEverySession)
{
    const LogBuilder builder = stalling(14, 12);
    const AthleteLog& log = builder.build();
    const LineExplanation why = explained(builder);
    ASSERT_EQ(why.sessions.size(), 26u);
    for (std::size_t i = 1; i < why.sessions.size(); ++i) {
        const ExplainedSession& session = why.sessions[i];
        EXPECT_NEAR(session.before, notRisingLogOdds(chancesWith(log, i, session.date)), 1e-9) << i;
        EXPECT_NEAR(session.before + pullsOf(session), notRisingLogOdds(chancesWith(log, i + 1, session.date)), 1e-9)
            << i;
        EXPECT_NEAR(pullsOf(session), session.pull(), 1e-12);
    }
    EXPECT_EQ(why.chances, chancesWith(log, 26, kToday));
}

TEST(LineExplanation, WordsFollowTheOddsWhicheverWayTheyMove)
{
    for (const double side : {1.0, -1.0}) {
        EXPECT_EQ(pullStrength(side * std::log(2.01)), PullStrength::Strongly);
        EXPECT_EQ(pullStrength(side * std::log(1.99)), PullStrength::Somewhat);
        EXPECT_EQ(pullStrength(side * std::log(1.24)), PullStrength::Hardly);
        EXPECT_EQ(pullStrength(side * std::log(1.04)), PullStrength::Neither);
    }
}

TEST(LineExplanation, TheFirstSetPullsFromWhatWasThoughtBeforeAnySet)
{
    const LineExplanation why = explained(curl().exposure(kToday, {{.load = 40, .reps = 9, .off = 0, .rir = 1}}));
    const RegimeParameters p;
    ASSERT_EQ(why.sessions.size(), 1u);
    EXPECT_NEAR(why.sessions[0].before, std::log((p.start[1] + p.start[2]) / p.start[0]), 1e-12);
    EXPECT_NEAR(why.sessions[0].after, notRisingLogOdds(*why.chances), 1e-12);
    EXPECT_FALSE(why.sessions[0].sets[0].expected);
}

TEST(LineExplanation, SetsOfAPlantedStallSpeakForNotRisingOnceItHasBegun)
{
    const LineExplanation stall = explained(stalling(24, 14));
    double before = 0;
    double after = 0;
    int against = 0;
    for (const ExplainedSession& session : stall.sessions) {
        const bool begun = session.date > kToday.addDays(-3 * 14);
        (begun ? after : before) += session.pull();
        against += begun && session.pull() > 0;
    }
    EXPECT_LT(before, -1.0);
    EXPECT_GT(after, 1.5);
    EXPECT_GE(against, 8);  // of 14: single sessions speak both ways
    const LineExplanation rise = explained(stalling(38, 0));
    double whole = 0;
    for (const ExplainedSession& session : rise.sessions) whole += session.pull();
    EXPECT_LT(whole, -1.5);
}

TEST(LineExplanation, AWarmUpAndASetWithoutLoadAreListedButNotHeard)
{
    LogBuilder builder = stalling(10, 0);
    builder.exposure(kToday.addDays(3), {{.load = 20, .reps = 8, .off = 0, .rir = 5, .kind = SetKind::WarmUp},
                                         {.load = 0, .reps = 12, .off = 0, .rir = 1},
                                         {.load = 42, .reps = 10, .off = 0, .rir = 1}});
    const LineExplanation why = explained(builder, kToday.addDays(3));
    const auto& sets = why.sessions.back().sets;
    ASSERT_EQ(sets.size(), 3u);
    EXPECT_EQ(sets[0].heard, HeardAs::WarmUp);
    EXPECT_EQ(sets[0].number, 0);
    EXPECT_EQ(sets[1].heard, HeardAs::NoLoad);
    for (const int silent : {0, 1}) {
        EXPECT_EQ(sets[static_cast<std::size_t>(silent)].pull, 0);
        EXPECT_EQ(weightWord(sets[static_cast<std::size_t>(silent)]), WeightWord::Not);
        EXPECT_FALSE(sets[static_cast<std::size_t>(silent)].expected);
    }
    EXPECT_EQ(sets[2].heard, HeardAs::Exactly);
    EXPECT_EQ(sets[2].number, 2);
    EXPECT_NE(sets[2].pull, 0);
}

TEST(LineExplanation, ASessionOfWarmUpsOnlyPullsNothing)
{
    LogBuilder builder = stalling(10, 0);
    builder.exposure(kToday.addDays(2), {{.load = 20, .reps = 8, .off = 0, .kind = SetKind::WarmUp}});
    const LineExplanation why = explained(builder, kToday.addDays(2));
    ASSERT_EQ(why.sessions.size(), 11u);
    EXPECT_EQ(why.sessions.back().pull(), 0);
}

TEST(LineExplanation, ATenfoldSlipOfThePenIsListedAsASlipAndPullsNothing)
{
    LogBuilder builder = stalling(20, 0);
    builder.exposure(kToday.addDays(3), {{.load = 450, .reps = 10, .off = 0, .rir = 1}});
    LogBuilder usual = stalling(20, 0);
    usual.exposure(kToday.addDays(3), {{.load = 45, .reps = 10, .off = 0, .rir = 1}});
    const ExplainedSet slip = explained(builder, kToday.addDays(3)).sessions.back().sets.front();
    const ExplainedSet sound = explained(usual, kToday.addDays(3)).sessions.back().sets.front();
    EXPECT_EQ(slip.heard, HeardAs::Slip);
    EXPECT_EQ(weightWord(slip), WeightWord::Not);
    EXPECT_EQ(slip.pull, 0);
    EXPECT_GT(sound.weight, 0.9);
    EXPECT_EQ(weightWord(sound), WeightWord::Fully);
}

TEST(LineExplanation, ASetFarFromWhatWasExpectedCountsLittleAndPullsLessThanItsDistance)
{
    const auto withReps = [](int reps) {
        LogBuilder builder = stalling(20, 0);
        builder.exposure(kToday.addDays(3), {{.load = 45, .reps = reps, .off = 0, .rir = 1}});
        return explained(builder, kToday.addDays(3)).sessions.back().sets.front();
    };
    const ExplainedSet near = withReps(7);
    const ExplainedSet far = withReps(1);
    EXPECT_EQ(far.heard, HeardAs::Exactly);
    EXPECT_GT(near.weight, 2 * far.weight);
    EXPECT_LT(far.weight, 1.0 / 3.0);
    EXPECT_GT(near.pull, 0);
    EXPECT_LT(far.pull, 2 * near.pull);  // three times as far from what was expected
}

TEST(LineExplanation, ExpectsWhatTheForecastSaidBeforeTheSession)
{
    const LogBuilder builder = stalling(20, 0);
    const AthleteLog& log = builder.build();
    const LineExplanation why = explained(builder);
    AthleteLog before = log;
    before.lines.front().exposures.pop_back();
    const RegimeEngine engine;
    const LineTracker tracker = engine.track(before.lines.front(), before, kToday);
    const SetContext context = tracker.contextAt(before.lines.front(), before, kToday);
    const ExplainedSet& third = why.sessions.back().sets[2];
    const HeardSet heard = hearSet(third.logged.set, 3, context);
    const SetForecast forecast = forecastSet(tracker, kToday, heard.said[0].lnLoad, 3, heard.said[0].repError);
    ASSERT_TRUE(third.expected);
    EXPECT_NEAR(third.expected->median, forecast.reps(0.5), 1e-9);
    EXPECT_NEAR(third.expected->low80, forecast.reps(0.1), 1e-9);
    EXPECT_NEAR(third.expected->high80, forecast.reps(0.9), 1e-9);
    EXPECT_NEAR(third.atLeast.value(), heard.repsToFailure, 1e-9);
    EXPECT_EQ(third.atLeast, third.atMost);
    // Later sets of a session are expected to bring less.
    EXPECT_LT(third.expected->median, why.sessions.back().sets[0].expected->median);
}

TEST(LineExplanation, SaysHowASetWasBounded)
{
    LogBuilder builder = stalling(12, 0);
    builder.exposure(kToday.addDays(3), {{.load = 43, .reps = 6, .off = 0, .rir = 6},
                                         {.load = 43, .reps = 10, .off = 2, .rir = 1},
                                         {.load = 43, .reps = 10, .off = 6, .rir = 1}});
    const auto sets = explained(builder, kToday.addDays(3)).sessions.back().sets;
    EXPECT_EQ(sets[0].heard, HeardAs::AtLeast);
    EXPECT_TRUE(sets[0].atLeast && !sets[0].atMost);
    EXPECT_EQ(sets[1].heard, HeardAs::Between);
    EXPECT_LT(sets[1].atLeast.value(), sets[1].atMost.value());
    EXPECT_EQ(sets[2].heard, HeardAs::AtMost);
    EXPECT_TRUE(sets[2].atMost && !sets[2].atLeast);
}

TEST(LineExplanation, ABoundThatWasExpectedAnywayCountsNothingAndOneThatBitesCountsFully)
{
    LogBuilder builder = stalling(12, 0);
    builder.exposure(kToday.addDays(3), {{.load = 20, .reps = 6, .off = 0, .rir = 6}});
    builder.exposure(kToday.addDays(6), {{.load = 50, .reps = 9, .off = 0, .rir = 6}});
    const LineExplanation why = explained(builder, kToday.addDays(6));
    const ExplainedSet& idle = why.sessions[why.sessions.size() - 2].sets.front();
    const ExplainedSet& biting = why.sessions.back().sets.front();
    EXPECT_EQ(idle.weight, 0);
    EXPECT_EQ(pullStrength(idle.pull), PullStrength::Neither);
    EXPECT_EQ(biting.weight, 1);
    EXPECT_LT(biting.pull, 0);  // so much in reserve at that load speaks for a rise
}

TEST(LineExplanation, NothingAfterTheDayAndNothingBeforeTheStretchIsListed)
{
    const LineExplanation why = explained(stalling(30, 10), kToday.addDays(-9), 4);
    ASSERT_FALSE(why.sessions.empty());
    EXPECT_GT(why.sessions.front().date, kToday.addDays(-9 - 28));
    EXPECT_EQ(why.sessions.back().date, kToday.addDays(-9));
    // What was expected doesn't depend on what was logged later.
    LogBuilder shorter = curl();
    const AthleteLog whole = stalling(30, 10).build();
    AthleteLog cut = whole;
    std::erase_if(cut.lines.front().exposures,
                  [](const Exposure& exposure) { return exposure.date > kToday.addDays(-9); });
    const RegimeEngine engine;
    const LineExplanation same = explainLine(engine, cut.lines.front(), cut, kToday.addDays(-9), 4);
    ASSERT_EQ(same.sessions.size(), why.sessions.size());
    for (std::size_t i = 0; i < same.sessions.size(); ++i) {
        EXPECT_EQ(same.sessions[i].after, why.sessions[i].after);
        EXPECT_EQ(same.sessions[i].sets[0].expected, why.sessions[i].sets[0].expected);
    }
}

TEST(LineExplanation, AnEmptyLineHasNothingToExplain)
{
    const LineExplanation why = explained(curl());
    EXPECT_TRUE(why.sessions.empty());
    EXPECT_FALSE(why.chances);
}

TEST(ReadingCourse, IsReadOnlyWhenAskedForAndNeverLooksAhead)
{
    const LogBuilder builder = stalling(20, 0);
    const AthleteLog& log = builder.build();
    const RegimeEngine brief;
    const RegimeEngine full({}, {}, {}, ReadingDepth::Course);
    EXPECT_TRUE(brief.read(log.lines.front(), log, kToday).trend.empty());
    const LineReading reading = full.read(log.lines.front(), log, kToday);
    ASSERT_EQ(reading.trend.size(), 16u);  // from the fifth session on
    for (const TrendPoint& point : reading.trend) {
        const LineReading then = full.read(log.lines.front(), log, point.date);
        EXPECT_NEAR(point.kg, then.capacity.value().kg, 1e-9) << point.date.toString(Qt::ISODate).toStdString();
        EXPECT_NEAR(point.low90Kg, then.capacity->low90Kg, 1e-9);
        EXPECT_NEAR(point.high90Kg, then.capacity->high90Kg, 1e-9);
        EXPECT_EQ(then.trend.back(), point);
    }
}

TEST(ReadingCourse, LeavesOutDaysWhoseRecordWasMixed)
{
    LogBuilder builder = stalling(12, 0);
    for (int i = 1; i <= 3; ++i)
        builder.exposure(kToday.addDays(3 * i), {{.load = 43, .reps = 10, .off = 7, .rir = 1}});
    const AthleteLog& log = builder.build();
    const RegimeEngine full({}, {}, {}, ReadingDepth::Course);
    const LineReading reading = full.read(log.lines.front(), log, kToday.addDays(9));
    ASSERT_EQ(reading.reason, QStringLiteral("mixed_record"));
    ASSERT_FALSE(reading.trend.empty());
    EXPECT_LT(reading.trend.back().date, kToday.addDays(6));
}

}  // namespace
}  // namespace steelyard
