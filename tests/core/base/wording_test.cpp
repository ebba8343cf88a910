#include "core/base/wording.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Wording germanWording()
{
    return {.locale = QLocale(QLocale::German, QLocale::Germany),
            .datePattern = QStringLiteral("dd.MM.yyyy"),
            .minus = QChar(u'\u2212'),
            .unit = {}};
}

TEST(Wording, WritesIsoDaysAndPointsWhenNothingIsSaid)
{
    const Wording plain;
    EXPECT_EQ(plain.day(QDate(2027, 3, 1)), QStringLiteral("2027-03-01"));
    EXPECT_EQ(plain.number(42.50), QStringLiteral("42.5"));
    EXPECT_EQ(plain.number(-1234.04), QStringLiteral("-1234"));
    EXPECT_EQ(plain.fixed(2, 1), QStringLiteral("2.0"));
    EXPECT_EQ(plain.day({}), QString());
}

TEST(Wording, FollowsTheLocaleThatItIsGiven)
{
    const Wording german = germanWording();
    EXPECT_EQ(german.day(QDate(2027, 3, 1)), QStringLiteral("01.03.2027"));
    EXPECT_EQ(german.number(42.5), QStringLiteral("42,5"));
    EXPECT_EQ(german.fixed(-0.3, 1), QStringLiteral("−0,3"));
    EXPECT_EQ(german.load(*Load::parse(u"42.50", MassUnit::lb)), QStringLiteral("42,50 lb"));
}

TEST(Wording, ShowsMassesInTheLiftersUnitUnlessOneIsSetForAll)
{
    const Wording plain;
    EXPECT_EQ(plain.mass(45.359237, MassUnit::lb), QStringLiteral("100 lb"));
    EXPECT_EQ(plain.mass(42.5, MassUnit::kg), QStringLiteral("42.5 kg"));
    const Wording kilograms{.unit = MassUnit::kg};
    EXPECT_EQ(kilograms.mass(45.359237, MassUnit::lb), QStringLiteral("45.4 kg"));
    EXPECT_DOUBLE_EQ(kilograms.massIn(45, MassUnit::lb), 45);
}

}  // namespace
}  // namespace steelyard
