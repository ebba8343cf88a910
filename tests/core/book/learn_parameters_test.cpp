#include "core/book/learn_parameters.h"

#include "core/analysis/parameter_names.h"
#include "core/book/fit_sample.h"
#include "core/book/reading_numbers.h"
#include "core/book/roster_review.h"
#include "core/exchange/review_json.h"
#include "tests/support/roster_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::fillRestlessRoster;
using test::must;
using test::TempBook;

const QDate kToday(2026, 3, 2);
constexpr FitOptions kFew{.mostEvaluations = 40};

LearnReport learned(const TempBook& book, QDate asOf = kToday)
{
    return must(learnParameters({book.path(), asOf, kFew}, {}));
}

int versionOfReview(const TempBook& book, QDate asOf, Id<Athlete> who)
{
    const auto reviews = must(reviewRoster({book.path(), asOf, {who}, {}}, {}));
    return reviewJson(asOf, {}, reviews)[QStringLiteral("parameters_version")].toInt(-1);
}

TEST(LearnParameters, StoresWhatSuitsTheRosterBetterAndReadsByItFromThenOn)
{
    TempBook book(kToday);
    const auto lifters = fillRestlessRoster(*book, book.line(), 28, 14, kToday);
    EXPECT_EQ(versionOfReview(book, kToday, lifters[0]), 0);
    const LearnReport report = learned(book);
    ASSERT_EQ(report.version, 1);
    EXPECT_EQ(report.kept, QString());
    EXPECT_EQ(report.fit.lines, 23);
    EXPECT_EQ(report.linesApart, 5);
    EXPECT_GT(report.fit.logLikelihoodAfter, report.fit.logLikelihoodBefore);
    EXPECT_GT(report.apartAfter, report.apartBefore);
    EXPECT_GT(report.after.filter.dayNoise, 1.5 * report.before.filter.dayNoise);
    EXPECT_TRUE(report.changes.settings);
    EXPECT_TRUE(learnSentence(report).contains(QStringLiteral("23")));

    const auto stored = must(book->readingParameters().all());
    ASSERT_EQ(stored.size(), 1U);
    EXPECT_EQ(stored[0].fittedOn, kToday);
    EXPECT_EQ(stored[0].lines, 23);
    EXPECT_EQ(stored[0].sets, report.fit.sets);
    EXPECT_EQ(must(readReadingParameters(book->database(), kToday)), report.after);
    EXPECT_EQ(versionOfReview(book, kToday, lifters[0]), 1);
    // A day before is read as it was then.
    EXPECT_EQ(versionOfReview(book, kToday.addDays(-1), lifters[0]), 0);
    EXPECT_FALSE(book->history().canUndo());
}

TEST(LearnParameters, GoesOnFromTheNewestVersionAndKeepsTheEarlierOne)
{
    TempBook book(kToday);
    fillRestlessRoster(*book, book.line(), 20, 13, kToday);
    const LearnReport first = learned(book);
    ASSERT_EQ(first.version, 1);
    const LearnReport second = must(learnParameters({book.path(), kToday.addDays(1), {.mostEvaluations = 200}}, {}));
    EXPECT_EQ(second.before, first.after);
    EXPECT_GE(second.fit.penalisedAfter, second.fit.penalisedBefore);
    const LearnReport third = must(learnParameters({book.path(), kToday.addDays(1), {.mostEvaluations = 200}}, {}));
    EXPECT_FALSE(third.version);
    EXPECT_EQ(third.kept, QStringLiteral("no_gain"));
    EXPECT_EQ(third.after, third.before);
    EXPECT_TRUE(learnedNumbers(third).empty());
    EXPECT_EQ(must(readReadingParameters(book->database(), kToday)), first.after);
}

TEST(LearnParameters, NamesWhatItChanged)
{
    LearnReport report;
    report.after.filter.weekNoise = 0.02;
    report.after.version = 4;
    const auto numbers = learnedNumbers(report);
    ASSERT_EQ(numbers.size(), 1U);
    EXPECT_EQ(numbers[0].name, QStringLiteral("week_noise"));
    EXPECT_EQ(numbers[0].before, RegimeParameters{}.weekNoise);
    EXPECT_EQ(numbers[0].after, 0.02);
}

TEST(LearnParameters, LeavesABookAloneThatSaysTooLittle)
{
    TempBook book(kToday);
    fillRestlessRoster(*book, book.line(), 19, 14, kToday);
    const QByteArray before = test::rawDump(book->database());
    const LearnReport report = learned(book);
    EXPECT_FALSE(report.version);
    EXPECT_EQ(report.kept, QStringLiteral("too_few_lines"));
    EXPECT_TRUE(learnSentence(report).contains(QStringLiteral("19")));
    EXPECT_EQ(test::rawDump(book->database()), before);
}

TEST(LearnParameters, StoresNothingWhenItIsStopped)
{
    TempBook book(kToday);
    fillRestlessRoster(*book, book.line(), 22, 13, kToday);
    std::stop_source stop;
    double reached = 0;
    const Progress progress(
        [&](double share) {
            reached = std::max(reached, share);
            if (share > 0.5) stop.request_stop();
        },
        stop.get_token());
    const auto report = learnParameters({book.path(), kToday, kFew}, progress);
    ASSERT_FALSE(report);
    EXPECT_EQ(report.error().code, ErrorCode::Cancelled);
    EXPECT_LT(reached, 0.6);
    EXPECT_TRUE(must(book->readingParameters().all()).empty());
}

TEST(LearnParameters, SaysWhenABooksNumbersCanNotBeTrue)
{
    TempBook book(kToday);
    auto tx = must(Transaction::begin(book->database()));
    ReadingFit fit{0, kToday, 20, 900, -1, 1, {{QStringLiteral("week_memory"), 1.5}}};
    EXPECT_EQ(must(book->readingParameters().insert(tx, fit)), 1);
    must(tx.commit());
    const auto report = learnParameters({book.path(), kToday, kFew}, {});
    ASSERT_FALSE(report);
    EXPECT_EQ(report.error().code, ErrorCode::Storage);
    EXPECT_FALSE(reviewRoster({book.path(), kToday, {book.athlete()}, {}}, {}));
}

TEST(FitSample, TakesEverybodyBeforeAnybodyTwiceAndLeavesOutTheArchived)
{
    TempBook book(kToday);
    const auto lifters = fillRestlessRoster(*book, book.line(), 26, 13, kToday);
    Athlete gone = must(book->athletes().find(lifters[3])).value;
    gone.archived = true;
    auto tx = must(Transaction::begin(book->database()));
    must(book->athletes().replace(tx, lifters[3], gone));
    must(tx.commit());
    const FitSample sample = must(readFitSample(book->database(), kToday, {}));
    EXPECT_EQ(sample.lines.size() + sample.apart.size(), 25U);
    EXPECT_EQ(sample.apart.size(), 5U);
    const FitSample again = must(readFitSample(book->database(), kToday, {}));
    EXPECT_EQ(again.lines, sample.lines);
    EXPECT_EQ(again.apart, sample.apart);
}

TEST(FitSample, ListensToNoMoreLinesThanItHasTimeFor)
{
    TempBook book(kToday);
    fillRestlessRoster(*book, book.line(), 130, 12, kToday);
    const FitSample sample = must(readFitSample(book->database(), kToday, {}));
    EXPECT_EQ(sample.lines.size() + sample.apart.size(), kMostSampleLines);
}

TEST(FitSample, LooksBackAYearAndNotPastTheDay)
{
    TempBook book(kToday);
    fillRestlessRoster(*book, book.line(), 1, 70, kToday);
    const QDate asOf = kToday.addDays(-30);
    const FitSample sample = must(readFitSample(book->database(), asOf, {}));
    ASSERT_EQ(sample.lines.size(), 1U);
    const auto& sessions = sample.lines[0].sessions;
    EXPECT_GE(sessions.front().day, static_cast<double>(asOf.addDays(-363).toJulianDay()));
    EXPECT_LE(sessions.back().day, static_cast<double>(asOf.toJulianDay()));
    EXPECT_GT(sessions.size(), 95U);
}

}  // namespace
}  // namespace steelyard
