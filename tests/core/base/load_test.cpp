#include "core/base/enum_text.h"
#include "core/base/id.h"
#include "core/base/load.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

// The international pound is 0.45359237 kg exactly (International Yard and Pound Agreement, 1959).
TEST(Load, PoundsBecomeKilogramsExactly)
{
    const Load bar = Load::parse(u"45", MassUnit::lb).value();
    EXPECT_DOUBLE_EQ(bar.kilograms(), 45 * 0.45359237);
    EXPECT_EQ(bar.mass().steps(), 45 * kStepsPerPound);
    EXPECT_EQ(Load::parse(u"0.001", MassUnit::lb)->mass().steps() * 1000, kStepsPerPound);
    EXPECT_EQ(bar.toString(), QStringLiteral("45 lb"));
}

TEST(Load, KeepsItsUnitAndDecimals)
{
    const auto load = Load::parseWithUnit(u"42.50 kg");
    ASSERT_TRUE(load);
    EXPECT_EQ(load->toString(), QStringLiteral("42.50 kg"));
    EXPECT_NE(*load, *Load::parseWithUnit(u"42.5 kg"));
    EXPECT_EQ(load->mass(), Load::parseWithUnit(u"42.5 kg")->mass());
}

TEST(Load, RefusesNegativeHugeAndTooFine)
{
    EXPECT_FALSE(Load::parse(u"-1", MassUnit::kg));
    EXPECT_FALSE(Load::parse(u"2000.5", MassUnit::kg));
    EXPECT_FALSE(Load::parse(u"1.2345", MassUnit::kg));
    EXPECT_TRUE(Load::parse(u"1.2340", MassUnit::kg));
    EXPECT_FALSE(Load::parseWithUnit(u"12"));
    EXPECT_FALSE(Load::parseWithUnit(u"12 st"));
}

TEST(Load, NearestFindsTheRoundNumberInAUnit)
{
    EXPECT_EQ(Load::nearest(Load::parseWithUnit(u"95 lb")->mass(), MassUnit::lb).toString(), QStringLiteral("95 lb"));
    EXPECT_EQ(Load::nearest(massFromGrams(20'412), MassUnit::lb, 0).toString(), QStringLiteral("45 lb"));
}

struct Sheep;
struct Goat;
static_assert(!std::equality_comparable_with<Id<Sheep>, Id<Goat>>);
static_assert(!std::is_convertible_v<int, Id<Sheep>>);
static_assert(!std::is_default_constructible_v<Id<Sheep>>);
static_assert(!std::is_convertible_v<Mass, Length>);

TEST(EnumKeys, ReadBackAsTheValueTheyCameFrom)
{
    for (const auto& row : EnumText<MassUnit>::table) EXPECT_EQ(fromKey<MassUnit>(key(row.value)), row.value);
    EXPECT_FALSE(fromKey<MassUnit>(std::string_view("stone")));
}

}  // namespace
}  // namespace steelyard
