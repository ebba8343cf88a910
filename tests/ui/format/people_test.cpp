#include "ui/format/people.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

class People : public testing::Test {
protected:
    ~People() override { format::callPeople(false, {}); }
};

QString called(const char* name)
{
    return format::person(QString::fromUtf8(name));
}

TEST_F(People, AreCalledByTheirNamesUnlessInitialsAreWanted)
{
    format::callPeople(false, {QStringLiteral("Ada Fulcrum")});
    EXPECT_EQ(called("Ada Fulcrum"), QStringLiteral("Ada Fulcrum"));
    EXPECT_EQ(format::people(QStringLiteral("add Ada Fulcrum")), QStringLiteral("add Ada Fulcrum"));
}

TEST_F(People, HaveInitialsOfTheirWordsWhateverTheScript)
{
    format::callPeople(true, {});
    EXPECT_EQ(called("Ada Fulcrum"), QStringLiteral("A. F."));
    EXPECT_EQ(called("Bo"), QStringLiteral("B."));
    EXPECT_EQ(called("Anne-Marie van der Poole-Smith"), QStringLiteral("A. M. v. d."));
    EXPECT_EQ(called("Ó’Brien D'Arcy"), QStringLiteral("Ó. D."));
    EXPECT_EQ(called("Żaneta Łoś"), QStringLiteral("Ż. Ł."));
    EXPECT_EQ(called("王 小明"), QStringLiteral("王. 小."));
    EXPECT_EQ(called("<b>x"), QStringLiteral("b. x."));
    EXPECT_EQ(called("— !"), QStringLiteral("?"));
    EXPECT_EQ(called(""), QString());
}

TEST_F(People, OfTheSameInitialsAreToldApart)
{
    format::callPeople(true, {QStringLiteral("Ada Fulcrum"), QStringLiteral("Bo Marrow"), QStringLiteral("Abe Fenn")});
    EXPECT_EQ(called("Ada Fulcrum"), QStringLiteral("A. F."));
    EXPECT_EQ(called("Abe Fenn"), QStringLiteral("A. F. 2"));
}

TEST_F(People, AreFoundInsideAText)
{
    format::callPeople(true, {QStringLiteral("Ada"), QStringLiteral("Ada Fulcrum"), QStringLiteral("Bo Marrow")});
    EXPECT_EQ(format::people(QStringLiteral("Ada Fulcrum beside Bo Marrow and Ada")),
              QStringLiteral("A. F. beside B. M. and A."));
    EXPECT_EQ(format::people(QStringLiteral("Nobody")), QStringLiteral("Nobody"));
}

}  // namespace
}  // namespace steelyard
