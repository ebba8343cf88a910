#include "core/exchange/json_reading.h"

#include "core/domain/library.h"

#include <gtest/gtest.h>

#include <functional>

namespace steelyard {
namespace {

// What is said after reading one key of a document in a certain way; empty when all was well.
QString saidOf(const QByteArray& json, const std::function<void(JsonPlace&)>& read)
{
    auto place = JsonPlace::document(json, QStringLiteral("row 3"));
    if (!place) return place.error().what;
    read(*place);
    const auto done = place->finish();
    if (done) return {};
    EXPECT_EQ(done.error().code, ErrorCode::Invalid);
    return done.error().what;
}

const QString kKey = QStringLiteral("key");

TEST(JsonPlace, RefusesAKeyThatNobodyAskedFor)
{
    const auto nothing = [](JsonPlace&) {};
    EXPECT_EQ(saidOf("{}", nothing), QString());
    const QString said = saidOf(R"({"tempo": 1})", nothing);
    EXPECT_TRUE(said.startsWith(QStringLiteral("row 3: “tempo”"))) << said.toStdString();
}

TEST(JsonPlace, NamesTheRowOnceItsNameIsKnown)
{
    const QString said = saidOf(R"({"key": "bar", "load": "5 stone"})", [](JsonPlace& place) {
        place.setPlace(QStringLiteral("bar “%1”").arg(place.shortText(kKey)));
        EXPECT_EQ(place.load(QStringLiteral("load")), Load{});
    });
    EXPECT_TRUE(said.startsWith(QStringLiteral("bar “bar”: “load”"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("5 stone"))) << said.toStdString();
}

TEST(JsonPlace, KeepsTheFirstOfSeveralFaults)
{
    const QString said = saidOf(R"({"key": 1, "flag": 1})", [](JsonPlace& place) {
        EXPECT_EQ(place.text(kKey), QString());
        EXPECT_FALSE(place.flag(QStringLiteral("flag")));
    });
    EXPECT_TRUE(said.contains(QStringLiteral("“key”"))) << said.toStdString();
    EXPECT_FALSE(said.contains(QStringLiteral("“flag”"))) << said.toStdString();
}

TEST(JsonPlace, AShortTextIsCleanAndNotEmpty)
{
    const auto isRead = [](const QByteArray& text) {
        return saidOf("{\"key\": \"" + text + "\"}", [](JsonPlace& place) { std::ignore = place.shortText(kKey); })
            .isEmpty();
    };
    EXPECT_TRUE(isRead("straight bar"));
    EXPECT_FALSE(isRead(""));
    EXPECT_FALSE(isRead(" bar"));
    EXPECT_FALSE(isRead(QByteArray(2000, 'x')));
}

TEST(JsonPlace, AWholeNumberHasNoFractionAndFitsAnInt)
{
    const auto numberOf = [](const QByteArray& number) {
        std::optional<int> value;
        const QString said =
            saidOf("{\"key\": " + number + "}", [&](JsonPlace& place) { value = place.integer(kKey); });
        return said.isEmpty() ? value : std::nullopt;
    };
    EXPECT_EQ(numberOf("-12"), -12);
    EXPECT_EQ(numberOf("2.5"), std::nullopt);
    EXPECT_EQ(numberOf("1e300"), std::nullopt);
    EXPECT_EQ(numberOf("\"2\""), std::nullopt);
}

TEST(JsonPlace, TellsANeededListFromOneThatMayBeAbsent)
{
    EXPECT_EQ(saidOf("{}", [](JsonPlace& place) { EXPECT_TRUE(place.array(kKey).isEmpty()); }), QString());
    EXPECT_NE(saidOf("{}", [](JsonPlace& place) { EXPECT_TRUE(place.neededArray(kKey).isEmpty()); }), QString());
    EXPECT_NE(saidOf(R"({"key": {}})", [](JsonPlace& place) { EXPECT_TRUE(place.array(kKey).isEmpty()); }), QString());
}

TEST(JsonPlace, AnUnknownChoiceListsTheKnownOnes)
{
    const QString said = saidOf(R"({"key": "loop"})", [](JsonPlace& place) {
        EXPECT_EQ(place.choice(kKey, TravelKind::Body), TravelKind::Body);
    });
    EXPECT_TRUE(said.contains(QStringLiteral("straight, arc, body, stack"))) << said.toStdString();
}

TEST(JsonPlace, RefusesWhatIsNoObjectOrNoJson)
{
    for (const char* text : {"[1, 2]", "{\"key\": ", "7", ""}) {
        const QString said = saidOf(text, [](JsonPlace&) {});
        EXPECT_TRUE(said.startsWith(QStringLiteral("row 3: "))) << text;
    }
    JsonPlace place = JsonPlace::of(QJsonValue(7), QStringLiteral("plate 2"));
    EXPECT_TRUE(place.finish().error().what.startsWith(QStringLiteral("plate 2: ")));
}

}  // namespace
}  // namespace steelyard
