#include "core/flags/athlete_review.h"

#include "core/flags/attention.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);
const QString kPain = QStringLiteral("joint_discomfort");
const QString kStall = QStringLiteral("stalled");

AthleteReview review(const LogBuilder& builder, QDate asOf = kToday)
{
    return reviewAthlete(builder.build(), RegimeEngine(), {}, asOf);
}

LogBuilder stalledCurl()
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(20, kToday, 4, [](int i) {
        return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
}

bool isOpen(const AthleteReview& reviewed, const QString& rule)
{
    return std::ranges::any_of(reviewed.flags, [&](const Flag& flag) { return flag.rule == rule; });
}

Flag flagOf(const char* rule, Severity severity)
{
    Flag flag;
    flag.rule = QString::fromLatin1(rule);
    flag.severity = severity;
    return flag;
}

TEST(AthleteReview, OfAnEmptyRecordAsksForNothing)
{
    const auto reviewed = review(LogBuilder());
    EXPECT_EQ(reviewed.attention, 0.0);
    EXPECT_TRUE(reviewed.flags.empty() && reviewed.lines.empty());
    EXPECT_FALSE(reviewed.lastSession);
}

TEST(AthleteReview, PutsPainFirst)
{
    const auto reviewed = review(stalledCurl().discomfort(Joint::Elbow, 7));
    ASSERT_EQ(reviewed.flags.size(), 2u);
    EXPECT_EQ(reviewed.flags[0].rule, kPain);
    EXPECT_EQ(reviewed.flags[1].rule, kStall);
    EXPECT_EQ(reviewed.lastSession, kToday);
}

TEST(AthleteReview, ListsLinesTrainedLatelyFirstAndRaisesNoStallOnOldOnes)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Abandoned")).exposures(16, kToday.addDays(-57), 4, [](int i) {
        return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
    builder.line(QStringLiteral("Row")).exposure(kToday, {{.load = 50, .reps = 8, .off = 0, .rir = 1}});
    const auto reviewed = review(builder);
    ASSERT_EQ(reviewed.lines.size(), 2u);
    EXPECT_EQ(reviewed.lines[0].exercise, QStringLiteral("Row"));
    EXPECT_EQ(reviewed.lines[1].reading.exposures, 16);
    EXPECT_FALSE(isOpen(reviewed, kStall));
}

TEST(AthleteReview, HidesAWatchedFlagUntilItsDate)
{
    LogBuilder builder = stalledCurl();
    builder.decide(kStall, DecisionKind::Watch, kToday.addDays(-3), kToday.addDays(1));
    EXPECT_FALSE(isOpen(review(builder), kStall));
    ASSERT_EQ(review(builder).answered.size(), 1u);
    EXPECT_EQ(review(builder).attention, 0.0);
    EXPECT_TRUE(isOpen(review(builder, kToday.addDays(1)), kStall));
}

TEST(AthleteReview, HidesADismissedFlagForEightWeeksAndAnActedOneForThree)
{
    const auto openAfter = [](DecisionKind kind, int days) {
        return isOpen(review(stalledCurl().decide(kStall, kind, kToday.addDays(-days))), kStall);
    };
    EXPECT_FALSE(openAfter(DecisionKind::Dismiss, 55));
    EXPECT_TRUE(openAfter(DecisionKind::Dismiss, 56));
    EXPECT_FALSE(openAfter(DecisionKind::Act, 20));
    EXPECT_TRUE(openAfter(DecisionKind::Act, 21));
}

TEST(AthleteReview, TheNewestAnswerCounts)
{
    LogBuilder builder = stalledCurl();
    builder.decide(kStall, DecisionKind::Dismiss, kToday.addDays(-10));
    builder.decide(kStall, DecisionKind::Watch, kToday.addDays(-5), kToday.addDays(-1));
    EXPECT_TRUE(isOpen(review(builder), kStall));
}

TEST(AthleteReview, PainThatHappensAgainComesBackInSpiteOfADismissal)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Row"));
    builder.exposure(kToday.addDays(-4), {{.load = 40, .reps = 10}}).discomfort(Joint::Elbow, 7);
    builder.decide(kPain, DecisionKind::Dismiss, kToday.addDays(-3));
    EXPECT_FALSE(isOpen(review(builder), kPain));
    builder.exposure(kToday, {{.load = 40, .reps = 10}}).discomfort(Joint::Elbow, 6);
    EXPECT_TRUE(isOpen(review(builder), kPain));
}

TEST(AthleteReview, ADismissedFlagComesBackOnlyWhenItIsMoreUrgentThanItWas)
{
    const auto dismissedAs = [](Severity then) {
        LogBuilder builder = stalledCurl();
        builder.decide(kStall, DecisionKind::Dismiss, kToday.addDays(-400));
        builder.lastDecision().severity = then;
        builder.lastDecision().said = QStringLiteral("as it was");
        return review(builder);
    };
    EXPECT_FALSE(isOpen(dismissedAs(Severity::Medium), kStall));
    EXPECT_FALSE(isOpen(dismissedAs(Severity::High), kStall));
    const AthleteReview worse = dismissedAs(Severity::Low);
    ASSERT_TRUE(isOpen(worse, kStall));
    ASSERT_EQ(worse.returned.size(), 1u);
    EXPECT_EQ(worse.returned[0].decision.said, QStringLiteral("as it was"));
}

TEST(AthleteReview, ADismissedFlagComesBackWhenItIsWorseByItsRulesStep)
{
    const auto now = review(stalledCurl());
    const auto stall = std::ranges::find(now.flags, kStall, &Flag::rule);
    ASSERT_NE(stall, now.flags.end());
    ASSERT_TRUE(stall->measure);
    const auto dismissedAt = [&](double measure, const RuleSettings& settings = {}) {
        LogBuilder builder = stalledCurl();
        builder.decide(kStall, DecisionKind::Dismiss, kToday.addDays(-100));
        builder.lastDecision().severity = Severity::High;
        builder.lastDecision().measure = measure;
        return isOpen(reviewAthlete(builder.build(), RegimeEngine(), settings, kToday), kStall);
    };
    const double weeks = stall->measure->value;
    EXPECT_EQ(stall->measure->step, 8);
    EXPECT_FALSE(dismissedAt(weeks));
    EXPECT_FALSE(dismissedAt(weeks - 7.9));
    EXPECT_TRUE(dismissedAt(weeks - 8));
    // The step is the coach's.
    const RuleSettings twelve{{{kStall, QStringLiteral("worse")}, 12}};
    EXPECT_FALSE(dismissedAt(weeks - 11.9, twelve));
    EXPECT_TRUE(dismissedAt(weeks - 12, twelve));
}

TEST(AthleteReview, AWatchedFlagReturnsWithWhatItSaidThen)
{
    LogBuilder builder = stalledCurl();
    builder.decide(kStall, DecisionKind::Watch, kToday.addDays(-14), kToday);
    builder.lastDecision().said = QStringLiteral("as it was");
    const AthleteReview before = reviewAthlete(builder.build(), RegimeEngine(), {}, kToday.addDays(-1));
    EXPECT_TRUE(before.returned.empty());
    const AthleteReview now = review(builder);
    ASSERT_TRUE(isOpen(now, kStall));
    ASSERT_EQ(now.returned.size(), 1u);
    EXPECT_EQ(now.returned[0].decision.said, QStringLiteral("as it was"));
    EXPECT_NE(now.returned[0].flag.sentence, QStringLiteral("as it was"));
}

TEST(Attention, OneGraverConcernOutweighsAnyNumberOfLesserOnes)
{
    const std::vector<const char*> concerns{"joint_discomfort", "slipping", "mixed_record", "stalled", "unwatched"};
    for (std::size_t grave = 0; grave + 1 < concerns.size(); ++grave) {
        std::vector<Flag> lesser;
        for (std::size_t i = grave + 1; i < concerns.size(); ++i)
            lesser.insert(lesser.end(), 10, flagOf(concerns[i], Severity::High));
        EXPECT_GT(attentionOf({flagOf(concerns[grave], Severity::Low)}), attentionOf(lesser)) << concerns[grave];
    }
}

TEST(Attention, GrowsWithSeverityAndNumber)
{
    const Flag low = flagOf("stalled", Severity::Low);
    const Flag high = flagOf("stalled", Severity::High);
    EXPECT_EQ(attentionOf({}), 0.0);
    EXPECT_LT(attentionOf({low}), attentionOf({high}));
    EXPECT_LT(attentionOf({high}), attentionOf({high, low}));
}

TEST(AthleteReview, ALookAtTheWholeFinishesTheLifterForOneRound)
{
    EXPECT_FALSE(review(stalledCurl()).finished);
    const auto looked = [](int daysAgo) { return review(stalledCurl().lookAtWhole(kToday.addDays(-daysAgo))); };
    EXPECT_TRUE(looked(0).finished);
    EXPECT_TRUE(looked(4).finished);
    EXPECT_FALSE(looked(5).finished);
    EXPECT_FALSE(looked(-1).finished);  // not yet
    EXPECT_EQ(looked(4).lookedOn, kToday.addDays(-4));
    EXPECT_TRUE(isOpen(looked(0), kStall));  // it answers no flag
}

TEST(AthleteReview, AnsweringEveryFlagFinishesTheLifter)
{
    auto builder = stalledCurl().discomfort(Joint::Elbow, 7);
    builder.decide(kStall, DecisionKind::Dismiss, kToday);
    EXPECT_FALSE(review(builder).finished);  // the pain is open
    builder.decide(kPain, DecisionKind::Act, kToday);
    EXPECT_TRUE(review(builder).finished);
    // Without a flag somebody still has to look.
    EXPECT_FALSE(review(LogBuilder()).finished);
}

TEST(AthleteReview, PainAfterTheLookBringsTheLifterBack)
{
    auto builder = stalledCurl().lookAtWhole(kToday.addDays(-1));
    EXPECT_TRUE(review(builder).finished);
    builder.discomfort(Joint::Elbow, 7);  // rated today
    EXPECT_FALSE(review(builder).finished);
    builder.lookAtWhole(kToday);
    EXPECT_TRUE(review(builder).finished);
}

TEST(AthleteReview, AmongEquallyUrgentLiftersTheLongestUnseenComesFirst)
{
    const auto made = [](const char* name, double attention, std::optional<QDate> lookedOn) {
        return AthleteReview{
            .athlete = Id<Athlete>(1), .name = QString::fromLatin1(name), .attention = attention, .lookedOn = lookedOn};
    };
    std::vector<AthleteReview> all{made("A", 3, kToday), made("B", 3, kToday.addDays(-9)), made("C", 3, std::nullopt),
                                   made("Z", 4, kToday)};
    std::ranges::sort(all, comesBefore);
    QString order;
    for (const AthleteReview& one : all) order += one.name;
    EXPECT_EQ(order, QStringLiteral("ZCBA"));
}

}  // namespace
}  // namespace steelyard
