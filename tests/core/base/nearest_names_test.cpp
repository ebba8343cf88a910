#include "core/base/nearest_names.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(NearestNames, CountsLettersToChangePutInOrLeaveOut)
{
    EXPECT_EQ(editDistance(u"", u""), 0);
    EXPECT_EQ(editDistance(u"abc", u""), 3);
    EXPECT_EQ(editDistance(u"", u"abcd"), 4);
    EXPECT_EQ(editDistance(u"curl", u"curls"), 1);
    EXPECT_EQ(editDistance(u"kitten", u"sitting"), 3);  // the usual textbook pair
    EXPECT_EQ(editDistance(u"sitting", u"kitten"), 3);
}

TEST(NearestNames, PutsWhatHoldsTheTypedTextBeforeWhatIsMerelyAlike)
{
    const QStringList names{QStringLiteral("arm-cord/x"), QStringLiteral("row/cable/strict"),
                            QStringLiteral("arm-curl/straight-bar/supinated/strict")};
    EXPECT_EQ(nearestFirst(names, u"Arm curl").first(), names[2]);
    EXPECT_EQ(nearestFirst(names, u"arm-cort/x").first(), names[0]);
}

TEST(NearestNames, TakesNoOffenceAtCaseAccentsOrLongInput)
{
    const QStringList names{QStringLiteral("Basil Ledger"), QStringLiteral("Żaneta Winch")};
    EXPECT_EQ(nearestFirst(names, u"ZANETA WYNCH").first(), names[1]);
    EXPECT_EQ(nearestFirst(names, QString(100'000, u'x')).size(), 2);
    EXPECT_EQ(nearestFirst({}, u"x"), QStringList());
}

TEST(NearestNames, SortsEqualsByName)
{
    const QStringList names{QStringLiteral("bb"), QStringLiteral("aa")};
    EXPECT_EQ(nearestFirst(names, u"cc"), (QStringList{QStringLiteral("aa"), QStringLiteral("bb")}));
}

}  // namespace
}  // namespace steelyard
