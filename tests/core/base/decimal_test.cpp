#include "core/base/decimal.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(Decimal, KeepsTheZerosThatWereTyped)
{
    const auto typed = Decimal::parse(u"42.50");
    ASSERT_TRUE(typed);
    EXPECT_EQ(typed->toString(), QStringLiteral("42.50"));
    EXPECT_DOUBLE_EQ(typed->toDouble(), 42.5);
    EXPECT_NE(*typed, *Decimal::parse(u"42.5"));
    EXPECT_EQ(typed->trimmed(), *Decimal::parse(u"42.5"));
}

TEST(Decimal, WritesWhatItReadsForManyValues)
{
    for (int mantissa = -12'345; mantissa < 12'345; mantissa += 77)
        for (int decimals = 0; decimals <= Decimal::kMaxDecimals; ++decimals) {
            const Decimal number = Decimal::fromScaled(mantissa, decimals);
            const auto back = Decimal::parse(QStringView(number.toString()));
            ASSERT_TRUE(back) << number.toString().toStdString();
            EXPECT_EQ(*back, number);
            EXPECT_EQ(number.toString().toDouble(), number.toDouble());
        }
}

TEST(Decimal, RefusesWhatIsNoPlainNumber)
{
    for (const char16_t* text : {u"", u"-", u".", u"1.", u"1,5", u"1.2.3", u"1e3", u" 1", u"1 ", u"0x10", u"１", u"nan",
                                 u"1234567890123456", u"0.1234567"})
        EXPECT_FALSE(Decimal::parse(QStringView(text))) << QString::fromUtf16(text).toStdString();
}

TEST(Decimal, NearestDropsIdleZeros)
{
    EXPECT_EQ(Decimal::nearest(20.0, 2).toString(), QStringLiteral("20"));
    EXPECT_EQ(Decimal::nearest(1.25, 2).toString(), QStringLiteral("1.25"));
    EXPECT_EQ(Decimal::nearest(-0.05, 1).toString(), QStringLiteral("-0.1"));
}

}  // namespace
}  // namespace steelyard
