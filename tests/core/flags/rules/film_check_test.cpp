#include "tests/support/made_up_lifter.h"
#include "tests/support/made_up_progress.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;
using testing_support::madeUpLifter;
using testing_support::madeUpProgress;
using testing_support::wobble;

const QDate kToday(2026, 6, 7);

QString filmSentence(const LogBuilder& builder, const RuleSettings& settings = {})
{
    const auto flags = askRule(u"film_check", builder.build(), kToday, settings);
    return flags.empty() ? QString() : flags.front().sentence;
}

LogBuilder steadyBut(int changed, const MadeSet& set)
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(24, kToday, 4, [&](int i) {
        return i == changed ? set : MadeSet{.load = 40 + wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
}

TEST(FilmCheckRule, AsksAboutASetFarAboveWhatWasExpected)
{
    const QString sentence = filmSentence(steadyBut(22, {.load = 40, .reps = 17, .off = 0, .rir = 1}));
    EXPECT_TRUE(sentence.contains(QStringLiteral("40 kg × 17 on 2026-06-03"))) << qPrintable(sentence);
    EXPECT_TRUE(sentence.contains(QStringLiteral("repetitions more"))) << qPrintable(sentence);
    EXPECT_TRUE(filmSentence(steadyBut(22, {.load = 40, .reps = 11, .off = 0, .rir = 1})).isEmpty());
    EXPECT_TRUE(filmSentence(steadyBut(22, {.load = 40, .reps = 4, .off = 0, .rir = 1})).isEmpty());
}

TEST(FilmCheckRule, FollowsTheCoachsLimits)
{
    const auto builder = steadyBut(17, {.load = 40, .reps = 17, .off = 0, .rir = 1});  // 24 days ago
    EXPECT_TRUE(filmSentence(builder).isEmpty());
    EXPECT_FALSE(filmSentence(builder, {{{QStringLiteral("film_check"), QStringLiteral("days")}, 30.0}}).isEmpty());
    const auto lately = steadyBut(22, {.load = 40, .reps = 14, .off = 0, .rir = 1});
    EXPECT_TRUE(filmSentence(lately, {{{QStringLiteral("film_check"), QStringLiteral("deviations")}, 6.0}}).isEmpty());
    EXPECT_FALSE(filmSentence(lately, {{{QStringLiteral("film_check"), QStringLiteral("deviations")}, 2.0}}).isEmpty());
}

TEST(FilmCheckRule, LeavesSlipsOfThePenToTheirOwnRule)
{
    const auto typo = steadyBut(22, {.load = 400, .reps = 10, .off = 0, .rir = 1});
    EXPECT_EQ(askRule(u"implausible_entry", typo.build(), kToday).size(), 1u);
    EXPECT_TRUE(filmSentence(typo).isEmpty());
}

TEST(FilmCheckRule, AsksAboutARiseThatExperienceDoesNotExplain)
{
    const auto rising = [](Experience experience, double aWeek) {
        return askRule(u"film_check",
                       madeUpProgress({.experience = experience, .risePerWeek = aWeek, .weeks = 30, .seed = 4}, kToday),
                       kToday);
    };
    const auto flags = rising(Experience::Intermediate, 0.02);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("0.7 % would be fast for this lifter's experience")))
        << qPrintable(flags[0].sentence);
    EXPECT_TRUE(rising(Experience::Intermediate, 0.01).empty());
    EXPECT_TRUE(rising(Experience::Novice, 0.02).empty());
    EXPECT_EQ(rising(Experience::Advanced, 0.01).size(), 1u);
}

LogBuilder marksUntil(int lastMarked, int repsAfter)
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(20, kToday, 4, [&](int i) {
        const bool marked = i <= lastMarked;
        return MadeSet{.load = 40, .reps = marked ? 12 : repsAfter, .off = marked ? 3 : 0, .rir = 1};
    });
}

TEST(FilmCheckRule, AsksWhenMarksStopWhileRepetitionsJump)
{
    const QString sentence = filmSentence(marksUntil(17, 12));
    EXPECT_TRUE(sentence.contains(QStringLiteral("marks stopped while the counted repetitions went from 9 to 12")))
        << qPrintable(sentence);
    EXPECT_FALSE(filmSentence(marksUntil(17, 9)).contains(QStringLiteral("marks stopped")));
    EXPECT_FALSE(filmSentence(marksUntil(19, 12)).contains(QStringLiteral("marks stopped")));
}

// By turns watched and not; the unwatched ones have so many repetitions more.
LogBuilder halfWatched(int more, int weeks = 16)
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(weeks * 2, kToday, 3, [&](int i) {
        MadeSet set{.load = 40 + 0.5 * wobble(i / 2), .reps = 9, .off = 0, .rir = 1};
        if (i % 2 == 1) {
            set.off.reset();
            set.reps += more;
        }
        return set;
    });
}

TEST(FilmCheckRule, AsksWhenUnwatchedSetsRunAboveTheWatchedOnes)
{
    const QString sentence = filmSentence(halfWatched(2));
    EXPECT_TRUE(sentence.contains(QStringLiteral("nobody watched run above the watched ones"))) << qPrintable(sentence);
    EXPECT_TRUE(filmSentence(halfWatched(0)).isEmpty());
    EXPECT_TRUE(filmSentence(halfWatched(-2)).isEmpty());
    EXPECT_TRUE(
        filmSentence(halfWatched(2), {{{QStringLiteral("film_check"), QStringLiteral("sets_each")}, 12.0}}).isEmpty());
}

TEST(FilmCheckRule, SeldomAsksOfHonestLifters)
{
    // Six lines in three weeks each: 40 lifters have 240 lines and 1440 sessions that could be asked about.
    int flags = 0;
    for (unsigned i = 0; i < 40; ++i)
        flags += static_cast<int>(
            askRule(u"film_check", madeUpLifter({.weeks = 24, .seed = 900 + i}, kToday), kToday).size());
    RecordProperty("flags", flags);
    EXPECT_LE(flags, 6);
}

TEST(FilmCheckRule, IsSilentAboutOldLinesAndWithoutData)
{
    EXPECT_TRUE(filmSentence(LogBuilder()).isEmpty());
    const auto old = LogBuilder().line(QStringLiteral("Row")).exposures(20, kToday.addDays(-60), 4, [](int i) {
        return MadeSet{.load = 40, .reps = i == 19 ? 20 : 10, .off = 0, .rir = 1};
    });
    EXPECT_TRUE(filmSentence(old).isEmpty());
}

}  // namespace
}  // namespace steelyard
