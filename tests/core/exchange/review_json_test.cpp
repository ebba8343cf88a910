#include "core/exchange/review_json.h"

#include "core/exchange/review_text.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

#include <cmath>

#include <QtCore/QJsonArray>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

std::vector<AthleteReview> fullReview(MassUnit unit = MassUnit::kg, const Wording& wording = {})
{
    LogBuilder builder;
    builder.unit(unit);
    builder.line(QStringLiteral("Arm curl")).exposures(20, kToday, 4, [](int i) {
        return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
    builder.discomfort(Joint::Elbow, 7)
        .line(QStringLiteral("A very long name of an exercise that fills a line").repeated(3));
    return {reviewAthlete(builder.build(), RegimeEngine({}, {}, wording), {}, kToday, wording)};
}

QJsonObject athleteOf(const std::vector<AthleteReview>& reviews)
{
    return reviewJson(kToday, QStringLiteral("club.steelyard"), reviews)[QStringLiteral("athletes")]
        .toArray()
        .at(0)
        .toObject();
}

void expectKeys(const QJsonObject& object, const QString& keys)
{
    for (const QString& key : keys.split(u' ')) EXPECT_TRUE(object.contains(key)) << qPrintable(key);
}

TEST(ReviewJson, HasEveryKeyOfTheContract)
{
    const QJsonObject document = reviewJson(kToday, QStringLiteral("club.steelyard"), fullReview());
    EXPECT_EQ(document[QStringLiteral("as_of")], QStringLiteral("2026-06-01"));
    EXPECT_EQ(document[QStringLiteral("book")], QStringLiteral("club.steelyard"));
    const QJsonObject athlete = athleteOf(fullReview());
    expectKeys(athlete, QStringLiteral("name attention lines flags"));
    for (const QJsonValue& line : athlete[QStringLiteral("lines")].toArray()) {
        expectKeys(
            line.toObject(),
            QStringLiteral(
                "key exercise variant grip standard verdict reason since since_earliest since_latest exposures why "
                "counted_share watched_share rate_per_week rate_low90 rate_high90 "
                "plain_rate_per_week weeks_to_tell p_rising p_falling capacity_kg capacity_low90_kg capacity_high90_kg "
                "next"));
        expectKeys(line[QStringLiteral("next")].toObject(),
                   QStringLiteral("load_kg rir reps_median reps_low80 reps_high80"));
    }
    ASSERT_EQ(athlete[QStringLiteral("flags")].toArray().size(), 2);
    for (const QJsonValue& flag : athlete[QStringLiteral("flags")].toArray()) {
        expectKeys(flag.toObject(), QStringLiteral("id line severity sentence evidence actions"));
        expectKeys(flag[QStringLiteral("evidence")].toArray().at(0).toObject(), QStringLiteral("date what value"));
    }
}

TEST(ReviewJson, WritesWhatIsKnownAndNullForWhatIsNot)
{
    const QJsonArray lines = athleteOf(fullReview())[QStringLiteral("lines")].toArray();
    const QJsonObject read = lines.at(0).toObject();
    EXPECT_EQ(read[QStringLiteral("key")], QStringLiteral("arm-curl/straight-bar/supinated/strict"));
    EXPECT_EQ(read[QStringLiteral("verdict")], QStringLiteral("stalled"));
    EXPECT_NEAR(read[QStringLiteral("capacity_kg")].toDouble(),
                40 * std::pow((1 + 11.55 / 30) / (1 + 1.0 / 30), 1 / 1.18), 2);
    EXPECT_LT(read[QStringLiteral("p_rising")].toDouble() + read[QStringLiteral("p_falling")].toDouble(), 0.6);
    EXPECT_EQ(read[QStringLiteral("next")][QStringLiteral("rir")].toInt(), 1);
    const QJsonObject unread = lines.at(1).toObject();
    EXPECT_EQ(unread[QStringLiteral("verdict")], QStringLiteral("cant_tell"));
    for (const auto& key : {QStringLiteral("since"), QStringLiteral("rate_per_week"), QStringLiteral("p_rising"),
                            QStringLiteral("capacity_kg")})
        EXPECT_TRUE(unread[key].isNull()) << qPrintable(key);
    EXPECT_TRUE(unread[QStringLiteral("next")][QStringLiteral("load_kg")].isNull());
}

TEST(ReviewJson, NamesTheLineOfAFlagByItsKeyOrNull)
{
    auto reviews = fullReview();
    const auto lineOfFirstFlag = [&]() -> QJsonValue {
        return athleteOf(reviews)[QStringLiteral("flags")].toArray().at(0).toObject()[QStringLiteral("line")];
    };
    EXPECT_EQ(lineOfFirstFlag(), QStringLiteral("arm-curl/straight-bar/supinated/strict"));
    reviews[0].flags[0].line.reset();
    EXPECT_TRUE(lineOfFirstFlag().isNull());
}

TEST(ReviewText, KeepsItsWidthAndSaysFlagsBeforeLines)
{
    const QString text = reviewText(kToday, fullReview());
    for (const QString& line : text.split(u'\n')) EXPECT_LE(line.size(), kReviewTextWidth) << qPrintable(line);
    EXPECT_GE(text.indexOf(QStringLiteral("elbow")), 0);
    EXPECT_LT(text.indexOf(QStringLiteral("elbow")), text.indexOf(QStringLiteral("lift line")));
    EXPECT_TRUE(text.contains(QStringLiteral("stalled")));
    EXPECT_TRUE(text.contains(QStringLiteral("can't tell")));
}

TEST(ReviewText, ShowsMassesInTheLiftersUnitAndJsonInKilograms)
{
    const QString text = reviewText(kToday, fullReview(MassUnit::lb));
    EXPECT_TRUE(text.contains(QStringLiteral(" lb"))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral(" kg"))) << text.toStdString();
    const QJsonObject athlete = athleteOf(fullReview(MassUnit::lb, Wording{.unit = MassUnit::kg}));
    EXPECT_EQ(athlete, athleteOf(fullReview(MassUnit::kg)));
}

TEST(ReviewText, ShowsNoRateWhereItCantTell)
{
    auto reviews = fullReview();
    LineReading& reading = reviews[0].lines.at(0).reading;
    reading.rate = TrendRate{0.0123, 0.01, 0.02, 0.9, 0.1};
    ASSERT_NE(reading.verdict, Verdict::CantTell);
    EXPECT_TRUE(reviewText(kToday, reviews).contains(QStringLiteral("+1.23 %/wk")));
    reading.verdict = Verdict::CantTell;
    EXPECT_FALSE(reviewText(kToday, reviews).contains(QStringLiteral("%/wk")));
}

TEST(ReviewJson, WritesTheOnsetThePlainRateAndTheWeeksToTellOrNull)
{
    auto reviews = fullReview();
    LineReading& reading = reviews[0].lines.at(0).reading;
    reading.sinceEarliest = QDate(2026, 3, 2);
    reading.sinceLatest = QDate(2026, 4, 6);
    reading.plain = TrendRate{0.004, 0.001, 0.007, 0.9, 0.1};
    reading.weeksToTell = 7.5;
    const auto first = [&] { return athleteOf(reviews)[QStringLiteral("lines")].toArray().at(0).toObject(); };
    EXPECT_EQ(first()[QStringLiteral("since_earliest")], QStringLiteral("2026-03-02"));
    EXPECT_EQ(first()[QStringLiteral("since_latest")], QStringLiteral("2026-04-06"));
    EXPECT_EQ(first()[QStringLiteral("plain_rate_per_week")].toDouble(), 0.004);
    EXPECT_EQ(first()[QStringLiteral("weeks_to_tell")].toDouble(), 7.5);
    reading = {};
    for (const auto& key : {QStringLiteral("since_earliest"), QStringLiteral("since_latest"),
                            QStringLiteral("plain_rate_per_week"), QStringLiteral("weeks_to_tell")})
        EXPECT_TRUE(first()[key].isNull()) << qPrintable(key);
}

TEST(ReviewText, SaysWhenNothingIsOpen)
{
    AthleteReview review{Id<Athlete>(1), QStringLiteral("Made Up"), {}, 0, {}, {}, {}, {}, {}, MassUnit::kg};
    EXPECT_TRUE(reviewText(kToday, {review}).contains(QStringLiteral("Nothing open.")));
}

}  // namespace
}  // namespace steelyard
