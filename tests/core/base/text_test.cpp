#include "core/base/text.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(CleanName, FoldsWhiteSpaceAndDropsHiddenCharacters)
{
    EXPECT_EQ(cleanName(u"  Ada \t Fulcrum \n"), QStringLiteral("Ada Fulcrum"));
    EXPECT_EQ(cleanName(u"A\u200bda\u202e"), QStringLiteral("Ada"));
    EXPECT_EQ(cleanName(u"Zoe\u0308"), QStringLiteral("Zo\u00eb"));  // composed form
    EXPECT_EQ(cleanName(u"\U0001F3CB a"), QStringLiteral("\U0001F3CB a"));
}

TEST(SearchKey, LooksPastCaseAndDiacritics)
{
    EXPECT_EQ(searchKey(u"Żaneta Łódź"), QStringLiteral("zaneta lodz"));
    EXPECT_TRUE(searchKey(u"Zoë Beam").contains(searchKey(u"ZOE")));
}

TEST(Slug, JoinsWordsWithSingleDashes)
{
    EXPECT_EQ(slug(u"Straight bar, upright"), QStringLiteral("straight-bar-upright"));
    EXPECT_EQ(slug(u" (x) "), QStringLiteral("x"));
}

}  // namespace
}  // namespace steelyard
