#include "core/sheets/sheet_code.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QUuid kLifter(QStringLiteral("{0123abcd-0000-4000-8000-000000000000}"));
const QDate kDay(2027, 3, 8);

Row<Athlete> somebody(std::int64_t id, const QUuid& uuid)
{
    return {Id<Athlete>(id), uuid, Athlete()};
}

// The worked example of the GRid standard's check character, which is ISO 7064, MOD 37,36: A1-2425G-ABC1234002-M. From memory.
TEST(SheetCode, TheCheckCharacterIsThatOfIso7064)
{
    EXPECT_EQ(checkCharacter(u"A12425GABC1234002"), u'M');
}

TEST(SheetCode, ANumberGivesItsLifterAndItsDayBack)
{
    for (const QDate date : {kDay, QDate(1900, 1, 1), QDate(2000, 2, 29), QDate(2199, 12, 31)}) {
        const auto code = readSheetId(sheetIdFor(kLifter, date));
        ASSERT_TRUE(code) << qPrintable(code.error().what);
        EXPECT_EQ(code->date, date);
        const std::vector athletes{somebody(4, QUuid::createUuid()), somebody(7, kLifter)};
        EXPECT_EQ(athleteOfSheet(*code, athletes), Id<Athlete>(7));
    }
}

TEST(SheetCode, OtherLiftersAndOtherDaysHaveOtherNumbers)
{
    const QString id = sheetIdFor(kLifter, kDay);
    EXPECT_NE(sheetIdFor(kLifter, kDay.addDays(1)), id);
    EXPECT_NE(sheetIdFor(QUuid(QStringLiteral("{0123abd0-0000-4000-8000-000000000000}")), kDay), id);
}

TEST(SheetCode, IsReadInAnyCaseWithSpacesHyphensAndLookAlikes)
{
    const auto plain = readSheetId(u"04HTQK-1DBM4");
    ASSERT_TRUE(plain);
    for (const auto* typed : {u"04htqk1dbm4", u" 04HTQK 1DBM4 ", u"O4HTQK-IDBM4", u"o4-htqk-ldbm-4"}) {
        const auto code = readSheetId(typed);
        ASSERT_TRUE(code) << qPrintable(QString::fromUtf16(typed));
        EXPECT_EQ(*code, *plain);
    }
}

TEST(SheetCode, EverySingleWrongCharacterIsNoticed)
{
    const QString good = QStringLiteral("04HTQK1DBM4");
    const QString letters = QStringLiteral("0123456789ABCDEFGHJKMNPQRSTVWXYZ");
    for (qsizetype at = 0; at < good.size(); ++at)
        for (const QChar letter : letters) {
            if (letter == good[at]) continue;
            QString wrong = good;
            wrong[at] = letter;
            const auto code = readSheetId(wrong);
            ASSERT_FALSE(code) << qPrintable(wrong);
            EXPECT_EQ(code.error().code, ErrorCode::Invalid);
        }
}

TEST(SheetCode, WhatIsNoNumberIsSaidToBeNone)
{
    for (const auto* typed :
         {u"", u"   ", u"04HTQK", u"04HTQK-1DBM44", u"04HTQK-1D!M4", u"https://x.y", u"04HTUK-1DBM4"}) {
        const auto code = readSheetId(typed);
        ASSERT_FALSE(code);
        EXPECT_EQ(code.error().code, ErrorCode::Invalid);
        EXPECT_FALSE(code.error().what.isEmpty());
    }
}

TEST(SheetCode, ALifterOfAnotherBookAndTwoThatShareANumberAreToldApart)
{
    const auto code = readSheetId(sheetIdFor(kLifter, kDay));
    ASSERT_TRUE(code);
    const std::vector others{somebody(1, QUuid(QStringLiteral("{ff23abcd-0000-4000-8000-000000000000}")))};
    EXPECT_EQ(athleteOfSheet(*code, others).error().code, ErrorCode::NotFound);
    const std::vector twins{somebody(1, kLifter),
                            somebody(2, QUuid(QStringLiteral("{0123abcd-1111-4000-8000-000000000000}")))};
    EXPECT_EQ(athleteOfSheet(*code, twins).error().code, ErrorCode::Conflict);
}

}  // namespace
}  // namespace steelyard
