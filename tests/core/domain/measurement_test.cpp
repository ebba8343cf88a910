#include "core/domain/measurement.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QDate kMeasuredToday(2026, 3, 2);

Measurement waistOf(const char16_t* value, TapeUnit unit)
{
    return {kMeasuredToday, BodyPlace::Waist, Decimal::parse(QStringView(value)).value(), unit};
}

TEST(Measurement, KeepsWhatWasTypedAndKnowsItsCentimetres)
{
    // The inch is 2.54 cm exactly: NIST Special Publication 811 (2008), appendix B.8.
    EXPECT_DOUBLE_EQ(waistOf(u"33", TapeUnit::in).centimetres(), 83.82);
    EXPECT_DOUBLE_EQ(waistOf(u"84.50", TapeUnit::cm).centimetres(), 84.5);
    EXPECT_EQ(waistOf(u"84.50", TapeUnit::cm).value.toString(), QStringLiteral("84.50"));
}

TEST(Measurement, RefusesLengthsThatNoBodyHasAndDaysToCome)
{
    EXPECT_TRUE(validate(waistOf(u"84.5", TapeUnit::cm), kMeasuredToday).empty());
    EXPECT_TRUE(validate(waistOf(u"118", TapeUnit::in), kMeasuredToday).empty());
    EXPECT_EQ(validate(waistOf(u"119", TapeUnit::in), kMeasuredToday).size(), 1U);
    EXPECT_EQ(validate(waistOf(u"845", TapeUnit::cm), kMeasuredToday).size(), 1U);
    EXPECT_EQ(validate(waistOf(u"0", TapeUnit::cm), kMeasuredToday).size(), 1U);
    EXPECT_EQ(validate(waistOf(u"84.5", TapeUnit::cm), kMeasuredToday.addDays(-1)).size(), 1U);
    EXPECT_EQ(validate(Measurement{{}, BodyPlace::Calf, Decimal(38)}, kMeasuredToday).size(), 1U);
}

}  // namespace
}  // namespace steelyard
