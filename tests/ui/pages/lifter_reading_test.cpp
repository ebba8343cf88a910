#include "ui/pages/lifter/lifter_reading.h"

#include "core/book/roster_review.h"
#include "tests/support/lifter_book.h"
#include "tests/support/log_builder.h"
#include "ui/format/format.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LifterBook;
using testing_support::must;

TEST(LifterReading, ReadsByTheThresholdsThatTheReviewUses)
{
    const QDate today(2026, 11, 20);
    LifterBook club{today};
    const LiftLine line = club.addLine(QStringLiteral("Arm curl"), 0);
    // Every other session has its effort written down.
    for (int i = 0; i < 20; ++i) {
        testing_support::MadeSet made{.load = i % 2 == 0 ? 40.5 : 39.5, .reps = 8, .off = 0};
        if (i % 2 == 0) made.rir = 1;
        must(
            club.book->history().perform(addSet(line, today.addDays(-4 * (19 - i)), testing_support::madeEntry(made))));
    }
    const auto unread = [&] {
        const auto lifter = must(readLifter(club.book->path(), line.athlete, today, Progress()));
        const auto roster = must(reviewRoster({club.book->path(), today, {line.athlete}}, {}));
        return std::pair(lifter.readings.at(0).reason == u"effort_unknown",
                         roster.at(0).lines.at(0).reading.reason == u"effort_unknown");
    };
    EXPECT_EQ(unread(), std::pair(false, false));
    auto transaction = must(Transaction::begin(club.book->database()));
    ASSERT_TRUE(
        club.book->ruleSettings().put(transaction, QStringLiteral("effort_unknown"), QStringLiteral("percent"), 40));
    ASSERT_TRUE(transaction.commit());
    EXPECT_EQ(unread(), std::pair(true, true));
}

TEST(LifterReading, RestsOnTheNumbersThatTheBookHasLearned)
{
    const QDate today(2026, 11, 20);
    LifterBook club{today};
    const LiftLine line = club.addLine(QStringLiteral("Arm curl"), 20);
    const auto read = [&](QDate asOf) { return must(readLifter(club.book->path(), line.athlete, asOf, Progress())); };
    const auto shipped = read(today);
    EXPECT_EQ(shipped.readings.at(0).parametersVersion, 0);
    auto transaction = must(Transaction::begin(club.book->database()));
    // Lifts that nearly fall apart from day to day: the same record says much less.
    const ReadingFit fit{0, today, 20, 900, -1, 1, {{QStringLiteral("day_noise"), 0.2}}};
    ASSERT_TRUE(club.book->readingParameters().insert(transaction, fit));
    ASSERT_TRUE(transaction.commit());
    const auto learned = read(today);
    EXPECT_EQ(learned.readings.at(0).parametersVersion, 1);
    EXPECT_EQ(learned.engine->parameters().filter.dayNoise, 0.2);
    const auto width = [](const LifterReading& lifter) {
        const TrendRate rate = lifter.readings.at(0).rate.value();
        return rate.high90 - rate.low90;
    };
    EXPECT_GT(width(learned), width(shipped));
    EXPECT_EQ(read(today.addDays(-1)).readings.at(0).parametersVersion, 0);
}

TEST(LifterReading, ReadsTheCourseAndExplainsOneLine)
{
    const QDate today(2026, 11, 20);
    const auto lifter = must(readLines(testing_support::LogBuilder()
                                           .line(QStringLiteral("Arm curl"))
                                           .exposures(12, today, 4,
                                                      [](int i) {
                                                          return testing_support::MadeSet{
                                                              .load = 40 + 0.5 * i, .reps = 8, .off = 0, .rir = 1};
                                                      })
                                           .build(),
                                       {}, {}, today, Progress()));
    EXPECT_FALSE(lifter.readings.at(0).trend.empty());
    EXPECT_EQ(lifter.asOf, today);
    const LineExplanation why = explainLineOf(lifter, 0);
    EXPECT_EQ(why.sessions.size(), 12u);
    EXPECT_TRUE(why.chances);
}

TEST(LifterReading, SaysDaysAsTheScreenWritesThem)
{
    const QDate today(2026, 11, 20);
    AthleteLog log = testing_support::LogBuilder()
                         .line(QStringLiteral("Arm curl"))
                         .exposures(24, today, 4,
                                    [](int i) {
                                        return testing_support::MadeSet{
                                            .load = i % 2 == 0 ? 40.5 : 39.5, .reps = 8, .off = 0, .rir = 1};
                                    })
                         .build();
    const auto lifter = must(readLines(std::move(log), {}, {}, today, Progress()));
    const LineReading& reading = lifter.readings.at(0);
    ASSERT_TRUE(reading.verdict == Verdict::Stalled && reading.since);
    EXPECT_TRUE(reading.why.contains(format::date(*reading.since))) << reading.why.toStdString();
    EXPECT_FALSE(reading.why.contains(reading.since->toString(Qt::ISODate))) << reading.why.toStdString();
}

}  // namespace
}  // namespace steelyard
