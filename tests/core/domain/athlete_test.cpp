#include "core/domain/athlete.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using Tags = std::vector<QString>;

TEST(AthleteTags, AreReadFromWordsBetweenCommasEachOnce)
{
    EXPECT_EQ(tagsFrom(u" Juniors,  back   soon,,juniors , Été, ete"),
              (Tags{QStringLiteral("Juniors"), QStringLiteral("back soon"), QStringLiteral("Été")}));
    EXPECT_TRUE(tagsFrom(u"").empty());
    EXPECT_TRUE(tagsFrom(u" , ,").empty());
}

TEST(AthleteTags, SayTheSameAgainWhenTheirTextIsRead)
{
    const Tags tags{QStringLiteral("zz"), QStringLiteral("a b")};
    EXPECT_EQ(tagText(tags), QStringLiteral("zz, a b"));
    EXPECT_EQ(tagsFrom(tagText(tags)), tags);
}

TEST(AthleteTags, AreRefusedWhenTooLongTooManyTwiceOrWithAComma)
{
    EXPECT_TRUE(validateTags({}).empty());
    EXPECT_TRUE(validateTags({QString(kMaxTagLength, u'x')}).empty());
    EXPECT_EQ(validateTags({QString(kMaxTagLength + 1, u'x')}).size(), 1u);
    Tags many;
    for (int i = 0; i <= kMostTags; ++i) many.push_back(QString::number(i));
    EXPECT_EQ(validateTags(many).size(), 1u);
    many.pop_back();
    EXPECT_TRUE(validateTags(many).empty());
    EXPECT_EQ(validateTags({QStringLiteral("one"), QStringLiteral("ONE")}).size(), 1u);
    EXPECT_EQ(validateTags({QStringLiteral("one, two")}).size(), 1u);
    EXPECT_EQ(validateTags({QString()}).size(), 1u);
}

TEST(AthleteTags, ArePartOfWhatIsCheckedOfAnAthlete)
{
    Athlete athlete;
    athlete.name = QStringLiteral("Ada Fenwick");
    EXPECT_TRUE(validate(athlete, QDate(2026, 6, 1)).empty());
    athlete.tags = {QStringLiteral("a,b")};
    const Problems problems = validate(athlete, QDate(2026, 6, 1));
    ASSERT_EQ(problems.size(), 1u);
    EXPECT_EQ(problems[0].field, QStringLiteral("tags"));
}

}  // namespace
}  // namespace steelyard
