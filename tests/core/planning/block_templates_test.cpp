#include "core/planning/block_templates.h"

#include "core/planning/block_ops.h"
#include "tests/support/plan_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::PlanKit;
using enum PlanKit::Lift;

const QDate kWednesday(2027, 3, 3);

// Begins on a Wednesday: Friday, and the Monday after.
Block midweek()
{
    Block block = PlanKit::block(kWednesday, 2, {3, 6});
    block.aim = QStringLiteral("arms");
    block.easing.setsPercent = 60;
    for (PlannedWeek& week : block.weeks) {
        week.days[0].slotList = {PlanKit::slot(Press, 3)};
        week.days[1].slotList = {PlanKit::slot(Curl, 2)};
        week.days[1].slotList[0].load = Load::parseWithUnit(u"20 kg");
        week.days[1].slotList[0].loadLocked = true;
    }
    return block;
}

TEST(BlockTemplates, KeepTheShapeAndDropTheLoads)
{
    const auto shape = templateOf(midweek(), QStringLiteral(" Two days "));
    ASSERT_TRUE(shape) << qPrintable(shape.error().what);
    EXPECT_EQ(shape->name, QStringLiteral("Two days"));
    EXPECT_EQ(shape->aim, QStringLiteral("arms"));
    EXPECT_EQ(shape->easing.setsPercent, 60);
    EXPECT_TRUE(validate(*shape).empty());
    EXPECT_EQ(shape->weeks[0].days[0].date, kTemplateStart);
    EXPECT_EQ(shape->weeks[0].days[0].slotList[0], PlanKit::slot(Curl, 2));
    EXPECT_EQ(shape->weeks[1].days[1].date, kTemplateStart.addDays(11));
}

TEST(BlockTemplates, BecomeTheBlockAgainOnItsWeekdays)
{
    const auto shape = templateOf(midweek(), QStringLiteral("Two days"));
    ASSERT_TRUE(shape);
    const auto block = blockOf(*shape, Id<Athlete>(7), QStringLiteral("Summer"), kWednesday);
    ASSERT_TRUE(block);
    Block expected = midweek();
    expected.athlete = Id<Athlete>(7);
    expected.name = QStringLiteral("Summer");
    for (PlannedWeek& week : expected.weeks) {
        week.days[1].slotList[0].load.reset();
        week.days[1].slotList[0].loadLocked = false;
    }
    EXPECT_EQ(*block, expected);
    EXPECT_TRUE(isLaidOutWell(*block));
}

TEST(BlockTemplates, NeedANameAndAStart)
{
    EXPECT_FALSE(templateOf(midweek(), QString()));
    const auto shape = templateOf(midweek(), QStringLiteral("Two days"));
    ASSERT_TRUE(shape);
    EXPECT_FALSE(blockOf(*shape, Id<Athlete>(7), QString(), kWednesday));
    EXPECT_FALSE(blockOf(*shape, Id<Athlete>(7), QStringLiteral("Summer"), QDate()));
}

}  // namespace
}  // namespace steelyard
