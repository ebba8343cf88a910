#include "core/flags/review_sheet.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QDate kDay(2026, 6, 1);

LineReview lineTrained(const char* exercise, QDate last)
{
    LineReview line{
        .id = Id<LiftLine>(1), .exercise = QString::fromLatin1(exercise), .variant = QStringLiteral("cable")};
    line.reading.verdict = Verdict::Stalled;
    ReadingPoint point;
    point.date = last;
    line.reading.points = {point};
    return line;
}

Flag stalledFlag()
{
    Flag flag;
    flag.rule = QStringLiteral("stalled");
    flag.sentence = QStringLiteral("Arm curl: no clear improvement.");
    flag.severity = Severity::Medium;
    flag.actions = {QStringLiteral("hold_load"), QStringLiteral("of_a_newer_program")};
    return flag;
}

TEST(ReviewSheet, HasEveryLifterWorstFirst)
{
    AthleteReview calm{.athlete = Id<Athlete>(1)};
    calm.name = QStringLiteral("Ada Fenwick");
    AthleteReview urgent{.athlete = Id<Athlete>(1)};
    urgent.name = QStringLiteral("Bo Marrow");
    urgent.attention = 50;
    const ReviewSheet sheet = buildReviewSheet({&calm, &urgent}, kDay);
    EXPECT_EQ(sheet.asOf, kDay);
    ASSERT_EQ(sheet.entries.size(), 2u);
    EXPECT_EQ(sheet.entries[0].athlete, urgent.name);
    EXPECT_EQ(sheet.entries[1].athlete, calm.name);
    EXPECT_TRUE(sheet.entries[1].flags.empty());
}

TEST(ReviewSheet, SetsChoicesBesideAnOpenFlagAndTheDecisionBesideAnAnsweredOne)
{
    AthleteReview review{.athlete = Id<Athlete>(1)};
    review.flags = {stalledFlag()};
    Decision decision{.athlete = Id<Athlete>(1)};
    decision.kind = DecisionKind::Dismiss;
    decision.reason = QStringLiteral("slept badly");
    review.answered = {{stalledFlag(), decision}};
    const ReviewSheet sheet = buildReviewSheet({&review}, kDay);
    const auto& flags = sheet.entries.at(0).flags;
    ASSERT_EQ(flags.size(), 2u);
    EXPECT_EQ(flags[0].title, QStringLiteral("Stalled"));
    EXPECT_EQ(flags[0].choices, (QStringList{QStringLiteral("Keep the load"), QStringLiteral("of_a_newer_program")}));
    EXPECT_FALSE(flags[0].answer);
    ASSERT_TRUE(flags[1].answer);
    EXPECT_EQ(flags[1].answer->reason, QStringLiteral("slept badly"));
}

TEST(ReviewSheet, LeavesOutLinesThatAreNoLongerTrained)
{
    AthleteReview review{.athlete = Id<Athlete>(1)};
    review.lines = {lineTrained("Arm curl", kDay.addDays(-56)), lineTrained("Abandoned", kDay.addDays(-57))};
    const ReviewSheet sheet = buildReviewSheet({&review}, kDay);
    ASSERT_EQ(sheet.entries.at(0).lines.size(), 1u);
    EXPECT_EQ(sheet.entries[0].lines[0].name, QStringLiteral("Arm curl, cable"));
    EXPECT_EQ(sheet.entries[0].lines[0].verdict, Verdict::Stalled);
}

}  // namespace
}  // namespace steelyard
