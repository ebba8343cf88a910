#include "ui/models/attention_words.h"

#include "ui/format/format.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QDate kDay(2026, 6, 1);

Flag openFlag(const char* rule, Severity severity)
{
    Flag flag;
    flag.rule = QString::fromLatin1(rule);
    flag.severity = severity;
    return flag;
}

AthleteReview reviewWith(std::vector<Flag> flags)
{
    AthleteReview review{.athlete = Id<Athlete>(1)};
    review.name = QStringLiteral("Ada Fenwick");
    review.flags = std::move(flags);
    return review;
}

TEST(AttentionWords, NameTheConcernsInTheirOrderAndTheWorstFlags)
{
    AthleteReview review = reviewWith({openFlag("joint_discomfort", Severity::High),
                                       openFlag("slipping", Severity::Medium), openFlag("stalled", Severity::Low),
                                       openFlag("stalled", Severity::Low), openFlag("effort_unknown", Severity::Low)});
    review.lookedOn = kDay.addDays(-12);
    const QStringList lines = attentionWords(review, kDay).split(u'\n');
    ASSERT_EQ(lines.size(), 7);
    EXPECT_TRUE(lines[0].startsWith(QStringLiteral("Open: 1 pain, 1 falling"))) << qPrintable(lines[0]);
    EXPECT_EQ(lines[1], QStringLiteral("● first: Joint discomfort"));
    EXPECT_TRUE(lines[2].startsWith(QStringLiteral("◐ this week: "))) << qPrintable(lines[2]);
    EXPECT_TRUE(lines[3].startsWith(QStringLiteral("○ later: "))) << qPrintable(lines[3]);
    EXPECT_TRUE(lines[4].contains(QStringLiteral("2 more"))) << qPrintable(lines[4]);
    EXPECT_EQ(lines[5], QStringLiteral("Looked at ") + format::ago(kDay.addDays(-12), kDay));
    EXPECT_EQ(lines[6], QStringLiteral("Order: pain, then falling, then can't be read, then not moving, then "
                                       "housekeeping; among equals, who was looked at longest ago"));
}

TEST(AttentionWords, SayThatNothingIsOpenAndNobodyLookedYet)
{
    const QStringList lines = attentionWords(reviewWith({}), kDay).split(u'\n');
    ASSERT_EQ(lines.size(), 3);
    EXPECT_EQ(lines[0], QStringLiteral("Nothing open"));
    EXPECT_EQ(lines[1], QStringLiteral("Not looked at yet"));
}

TEST(AttentionWords, SayThatALifterIsFinished)
{
    AthleteReview review = reviewWith({});
    review.lookedOn = kDay;
    review.finished = true;
    EXPECT_EQ(attentionWords(review, kDay).split(u'\n')[1], QStringLiteral("Looked at today, finished for this round"));
}

}  // namespace
}  // namespace steelyard
