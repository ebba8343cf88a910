#include "core/keying/next_day.h"

#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::SheetSample;

const QDate kNextSession(2027, 3, 8);

TEST(NextDay, AsksAboutTheLatestSessionInItsOrder)
{
    SheetSample sample;
    sample.done(sample.curl, kNextSession.addDays(-5), {{u"40", 10}});
    sample.done(sample.squat, kNextSession.addDays(-3), {{u"80", 10}});
    sample.done(sample.curl, kNextSession.addDays(-3), {{u"40", 10}});
    const auto asked = nextDayQuestions(sample.log, kNextSession);
    ASSERT_TRUE(asked);
    EXPECT_EQ(asked->session, kNextSession.addDays(-3));
    ASSERT_EQ(asked->questions.size(), 2U);
    EXPECT_EQ(asked->questions[0].exercise, QStringLiteral("Arm curl"));
    EXPECT_EQ(asked->questions[1].lift, sample.log.lines[sample.squat].line);
}

TEST(NextDay, DoesNotNag)
{
    SheetSample sample;
    EXPECT_FALSE(nextDayQuestions(sample.log, kNextSession)) << "there was no session";
    Exposure& curl = sample.done(sample.curl, kNextSession.addDays(-kNextDayDays), {{u"40", 10}});
    EXPECT_TRUE(nextDayQuestions(sample.log, kNextSession));
    EXPECT_FALSE(nextDayQuestions(sample.log, kNextSession.addDays(1))) << "nobody remembers for longer";
    EXPECT_FALSE(nextDayQuestions(sample.log, curl.date)) << "the day itself is not the day after";
    curl.rating.nextWeakness = 0;
    EXPECT_FALSE(nextDayQuestions(sample.log, kNextSession)) << "it was answered";
}

TEST(NextDay, AWarmUpAloneMadeNobodySore)
{
    SheetSample sample;
    sample.done(sample.curl, kNextSession.addDays(-1), {{u"20", 10, 0, 2, SetKind::WarmUp}});
    EXPECT_FALSE(nextDayQuestions(sample.log, kNextSession));
}

}  // namespace
}  // namespace steelyard
