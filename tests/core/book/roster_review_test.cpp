#include "core/book/roster_review.h"

#include "core/edits/edits.h"
#include "core/exchange/review_json.h"
#include "tests/support/log_builder.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

#include <QtCore/QJsonDocument>

#include <set>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using testing_support::madeEntry;

const QDate kToday(2026, 3, 2);

// Adds lifters to the book's own; every one of them trains its line, and "Pained" has discomfort.
std::vector<Id<Athlete>> fillRoster(TempBook& book)
{
    std::vector<Id<Athlete>> added;
    for (const auto& name :
         {QStringLiteral("Anna"), QStringLiteral("Bert"), QStringLiteral("Pained"), QStringLiteral("Zoe")}) {
        Athlete athlete;
        athlete.name = name;
        athlete.consents = {HealthConsent::given(QDate(2020, 1, 1))};
        must(book->history().perform(addAthlete(athlete)));
        LiftLine line = book.line();
        line.athlete = must(book->athletes().findByName(name)).id;
        added.push_back(line.athlete);
        for (int i = 0; i < 12; ++i)
            must(book->history().perform(addSet(line, kToday.addDays(4 * (i - 11)),
                                                madeEntry({.load = 40.0 + i, .reps = 8, .off = 0, .rir = 1}))));
        if (name != u"Pained") continue;
        ExerciseRating rating;
        rating.discomfort[static_cast<std::size_t>(Joint::Elbow)] = 8;
        must(book->history().perform(rateExercise(line, kToday, rating)));
    }
    return added;
}

QByteArray asBytes(const std::vector<AthleteReview>& reviews)
{
    return QJsonDocument(reviewJson(kToday, QStringLiteral("book"), reviews)).toJson();
}

TEST(RosterReview, PutsWhoNeedsAttentionFirstAndTheOthersByName)
{
    TempBook book(kToday);
    const auto added = fillRoster(book);
    const auto reviews = must(reviewRoster({book.path(), kToday, added}, {}));
    ASSERT_EQ(reviews.size(), 4u);
    EXPECT_EQ(reviews[0].name, QStringLiteral("Pained"));
    EXPECT_EQ(reviews[1].name, QStringLiteral("Anna"));
    EXPECT_EQ(reviews[2].name, QStringLiteral("Bert"));
    EXPECT_EQ(reviews[3].name, QStringLiteral("Zoe"));
    ASSERT_EQ(reviews[1].lines.size(), 1u);
    EXPECT_EQ(reviews[1].lines[0].reading.verdict, Verdict::Progressing);
}

TEST(RosterReview, GivesTheSameAnswerEveryTime)
{
    TempBook book(kToday);
    fillRoster(book);
    const QByteArray first = asBytes(must(reviewRoster({book.path(), kToday, {}}, {})));
    for (int i = 0; i < 5; ++i) EXPECT_EQ(asBytes(must(reviewRoster({book.path(), kToday, {}}, {}))), first);
}

TEST(RosterReview, TakesEverybodyWhoIsNotArchived)
{
    TempBook book(kToday);
    const auto added = fillRoster(book);
    Athlete zoe = must(book->athletes().find(added.back())).value;
    zoe.archived = true;
    must(book->history().perform(changeAthlete(added.back(), zoe)));
    std::set<std::int64_t> seen;
    for (const AthleteReview& review : must(reviewRoster({book.path(), kToday, {}}, {})))
        seen.insert(review.athlete.value());
    EXPECT_TRUE(seen.contains(added[0].value()));
    EXPECT_FALSE(seen.contains(added.back().value()));
}

TEST(RosterReview, LooksNoFurtherThanTheDay)
{
    TempBook book(kToday);
    const auto added = fillRoster(book);
    const auto reviews = must(reviewRoster({book.path(), kToday.addDays(-1), {added[2]}}, {}));
    ASSERT_EQ(reviews.size(), 1u);
    EXPECT_EQ(reviews[0].lines.at(0).reading.exposures, 11);
    EXPECT_TRUE(
        std::ranges::none_of(reviews[0].flags, [](const Flag& flag) { return flag.rule == u"joint_discomfort"; }));
}

TEST(RosterReview, ReportsProgressThatGrowsToTheEnd)
{
    TempBook book(kToday);
    const auto added = fillRoster(book);
    std::vector<double> shares;
    must(reviewRoster({book.path(), kToday, added}, Progress([&](double share) { shares.push_back(share); })));
    EXPECT_EQ(shares, (std::vector<double>{0.25, 0.5, 0.75, 1.0}));
}

TEST(RosterReview, StopsWhenAsked)
{
    TempBook book(kToday);
    fillRoster(book);
    std::stop_source stop;
    stop.request_stop();
    const auto result = reviewRoster({book.path(), kToday, {}}, Progress({}, stop.get_token()));
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().code, ErrorCode::Cancelled);
}

TEST(RosterReview, SaysWhenALifterOrABookIsNotThere)
{
    TempBook book(kToday);
    const auto nobody = reviewRoster({book.path(), kToday, {Id<Athlete>(987654)}}, {});
    ASSERT_FALSE(nobody);
    EXPECT_EQ(nobody.error().code, ErrorCode::NotFound);
    EXPECT_FALSE(reviewRoster({book.file(QStringLiteral("none.steelyard")), kToday, {}}, {}));
}

}  // namespace
}  // namespace steelyard
