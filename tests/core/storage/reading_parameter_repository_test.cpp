#include "core/storage/reading_parameter_repository.h"

#include "core/book/verify.h"
#include "core/exchange/book_json.h"
#include "tests/support/temp_book.h"

#include <QtCore/QJsonArray>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;

const QDate kDay(2026, 2, 20);

ReadingFit madeFit(QDate day, double dayNoise)
{
    return {0,
            day,
            80,
            24'000,
            -1234.5 + 0.1,
            1250.0 / 3,
            {{QStringLiteral("day_noise"), dayNoise}, {QStringLiteral("of_a_newer_program"), -4.5}}};
}

int put(TempBook& book, const ReadingFit& fit)
{
    auto tx = must(Transaction::begin(book->database()));
    const int version = must(book->readingParameters().insert(tx, fit));
    EXPECT_TRUE(tx.changes().settings);
    must(tx.commit());
    return version;
}

TEST(ReadingParameterRepository, KeepsEveryFitWithAllItsNumbers)
{
    TempBook book;
    EXPECT_FALSE(must(book->readingParameters().latest(kDay)));
    ReadingFit first = madeFit(kDay, 0.1 + 0.2);
    ReadingFit second = madeFit(kDay.addDays(7), 0.03);
    first.version = put(book, first);
    second.version = put(book, second);
    EXPECT_EQ(first.version, 1);
    EXPECT_EQ(second.version, 2);
    EXPECT_EQ(must(book->readingParameters().all()), (std::vector{first, second}));
}

TEST(ReadingParameterRepository, GivesTheNewestUpToTheDay)
{
    TempBook book;
    put(book, madeFit(kDay, 0.02));
    put(book, madeFit(kDay.addDays(7), 0.03));
    put(book, madeFit(kDay.addDays(7), 0.04));
    const auto repository = book->readingParameters();
    EXPECT_FALSE(must(repository.latest(kDay.addDays(-1))));
    EXPECT_EQ(must(repository.latest(kDay)).value().version, 1);
    EXPECT_EQ(must(repository.latest(kDay.addDays(6))).value().version, 1);
    EXPECT_EQ(must(repository.latest(kDay.addDays(7))).value().version, 3);
}

TEST(ReadingParameterRepository, WritesNothingThatIsNotCommitted)
{
    TempBook book;
    {
        auto tx = must(Transaction::begin(book->database()));
        must(book->readingParameters().insert(tx, madeFit(kDay, 0.02)));
    }
    EXPECT_TRUE(must(book->readingParameters().all()).empty());
}

TEST(ReadingParameterRepository, VerifyFindsNumbersThatCanNotBeRead)
{
    TempBook book;
    put(book, madeFit(kDay, 0.02));
    EXPECT_EQ(must(verifyBook(book->database(), {})).findings, QStringList());
    for (const char* body : {"[]", "{\"day_noise\":\"much\"}", "{\"day_noise\":-1}", "nonsense"}) {
        auto st = must(book->database().prepare("UPDATE reading_parameters SET body = ?1"));
        st.bind(1, QString::fromLatin1(body));
        must(st.run());
        EXPECT_EQ(must(verifyBook(book->database(), {})).findings.size(), 1) << body;
    }
    EXPECT_FALSE(book->readingParameters().latest(kDay));
}

TEST(ReadingParameterRepository, ReadsExportsWithoutLearnedNumbersAndRefusesBrokenOnes)
{
    const FixedClock clock(QDate(2026, 3, 2));
    TempBook source;
    const QJsonObject bare = must(bookToJson(source->database(), std::nullopt));
    EXPECT_FALSE(bare.contains(QStringLiteral("reading_parameters")));
    put(source, madeFit(kDay, 0.02));
    const QJsonObject full = must(bookToJson(source->database(), std::nullopt));
    EXPECT_FALSE(must(bookToJson(source->database(), source.athlete())).contains(QStringLiteral("reading_parameters")));

    const auto copy = must(Book::create(source.file(QStringLiteral("copy.steelyard")), clock));
    const auto take = [&](const QJsonObject& json) -> Result<void> {
        STEELYARD_TRY(auto tx, Transaction::begin(copy->database()));
        STEELYARD_TRY(const auto rest, bookFromJson(tx, json, clock.today()));
        static_cast<void>(rest);
        EXPECT_TRUE(copy->readingParameters().all().has_value());
        return {};  // rolled back: what was read is looked at elsewhere
    };
    EXPECT_TRUE(take(bare));
    EXPECT_TRUE(take(full));
    for (const auto& [name, value] : std::initializer_list<std::pair<const char*, QJsonValue>>{
             {"version", 0},
             {"version", QStringLiteral("1")},
             {"fitted_on", QStringLiteral("today")},
             {"lines", -1},
             {"log_likelihood_after", QJsonValue::Null},
             {"numbers", QJsonObject{{QStringLiteral("day_noise"), -1}}},
             {"numbers", QJsonObject{{QStringLiteral("day_noise"), QStringLiteral("x")}}},
             {"more", 1}}) {
        QJsonObject broken = full;
        QJsonObject fit = full[QStringLiteral("reading_parameters")].toArray()[0].toObject();
        fit[QString::fromLatin1(name)] = value;
        broken[QStringLiteral("reading_parameters")] = QJsonArray{fit};
        const auto refused = take(broken);
        ASSERT_FALSE(refused) << name;
        EXPECT_EQ(refused.error().code, ErrorCode::Invalid) << name;
        EXPECT_TRUE(refused.error().what.contains(QStringLiteral("reading_parameters")))
            << qPrintable(refused.error().what);
    }
}

}  // namespace
}  // namespace steelyard
