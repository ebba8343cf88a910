#include "core/exchange/logbook_cells.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

constexpr NumberStyle kHand{u'.', true};

TEST(DateCell, IsReadInTheOrderThatIsAskedForWithOrWithoutATime)
{
    EXPECT_EQ(readDateCell(u"2026-3-4", DateOrder::YearMonthDay), QDate(2026, 3, 4));
    EXPECT_EQ(readDateCell(u"3/4/2026 18:30", DateOrder::MonthDayYear), QDate(2026, 3, 4));
    EXPECT_EQ(readDateCell(u"3.4.2026", DateOrder::DayMonthYear), QDate(2026, 4, 3));
    for (const QStringView time : {QStringView(u"2026-03-04T18:30:05.123Z"), QStringView(u"2026-03-04 6:30 PM"),
                                   QStringView(u"2026-03-04 18:30:05+01:00"), QStringView(u"2026-03-04, 18:30")})
        EXPECT_EQ(readDateCell(time, DateOrder::YearMonthDay), QDate(2026, 3, 4)) << time.toString().toStdString();
    for (const QStringView bad :
         {QStringView(u"2026-02-30"), QStringView(u"2026-03-04x"), QStringView(u"2026-03-04 later"),
          QStringView(u"2026-03"), QStringView(u"26-03-04"), QStringView(u"")})
        EXPECT_FALSE(readDateCell(bad, DateOrder::YearMonthDay)) << bad.toString().toStdString();
}

// POSIX.1-2017, strptime, %y: "values in the range 69-99 refer to years 1969 to 1999, 00-68 to 2000 to 2068" (from memory).
TEST(DateCell, TakesTwoDigitsOfAYearAsPosixDoes)
{
    EXPECT_EQ(readDateCell(u"3/4/68", DateOrder::MonthDayYear), QDate(2068, 3, 4));
    EXPECT_EQ(readDateCell(u"3/4/69", DateOrder::MonthDayYear), QDate(1969, 3, 4));
}

TEST(NumberCell, TakesEitherMarkByHandUnlessItMayBeGrouping)
{
    EXPECT_EQ(readNumberCell(u"42,5", kHand)->toString(), QStringLiteral("42.5"));
    EXPECT_EQ(readNumberCell(u"42.5", NumberStyle{u',', true})->toString(), QStringLiteral("42.5"));
    EXPECT_FALSE(readNumberCell(u"1.250", NumberStyle{u',', true}));
    EXPECT_FALSE(readNumberCell(u"42,5", NumberStyle{}));
    EXPECT_EQ(readWholeCell(u"8.0", kHand), 8);
    EXPECT_FALSE(readWholeCell(u"8.5", kHand));
    EXPECT_FALSE(readWholeCell(u"3333333333333333", kHand)) << "more than a count can be";
    EXPECT_FALSE(readWholeCell(u"-3333333333333333.0", kHand));
    EXPECT_FALSE(readWholeCell(u"8.0", NumberStyle{}));
}

TEST(LoadCell, MayHaveItsUnitBehindIt)
{
    EXPECT_EQ(readLoadCell(u"95 lb", {}), (LoadCell{Decimal(95), MassUnit::lb}));
    EXPECT_EQ(readLoadCell(u"42.5KG", {})->unit, MassUnit::kg);
    EXPECT_FALSE(readLoadCell(u"40", {})->unit);
    EXPECT_EQ(readLoadCell(u"BW", kHand), (LoadCell{Decimal(0), std::nullopt}));
    for (const QStringView bad :
         {QStringView(u"heavy"), QStringView(u"4e1"), QStringView(u"kg"), QStringView(u"40 stone")})
        EXPECT_FALSE(readLoadCell(bad, kHand)) << bad.toString().toStdString();
}

TEST(Cells, KnowTheMarksForNothingAndTheLabelsOfTotals)
{
    for (const QStringView mark : {QStringView(u"-"), QStringView(u"–"), QStringView(u"n/a")})
        EXPECT_TRUE(isNothingMark(mark));
    EXPECT_FALSE(isNothingMark(u"-5"));
    for (const QStringView label : {QStringView(u"Total"), QStringView(u"TOTAL VOLUME:"), QStringView(u"Summe"),
                                    QStringView(u"Durchschnitt"), QStringView(u"Promedio")})
        EXPECT_TRUE(isTotalsLabel(label)) << label.toString().toStdString();
    EXPECT_FALSE(isTotalsLabel(u"Totally new lifter"));
}

}  // namespace
}  // namespace steelyard
