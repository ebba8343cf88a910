// Loads to come are reckoned again by themselves, and one line says where the record has moved on.
#include "ui/pages/block/loads_ahead.h"

#include "core/edits/edits.h"
#include "core/planning/slot_load.h"
#include "tests/support/block_window.h"
#include "ui/pages/block/block_loads.h"

#include <QtWidgets/QTreeWidget>

namespace steelyard {
namespace {

class LoadsThatMoveOn : public testing_support::BlockWindow {
protected:
    [[nodiscard]] BlockLoads& loads() const { return *page().findChild<BlockLoads*>(); }
    [[nodiscard]] QString news() const { return page().ahead().words(); }
    // Until the last of what was set off is reckoned.
    void waitForNews()
    {
        ASSERT_TRUE(QTest::qWaitFor(
            [&] { return page().isSettled() && page().ahead().isSettled() && window.isSettled(); }, 60000));
    }
    void openLoads()
    {
        press(Qt::Key_F);
        ASSERT_TRUE(loads().isVisible());
        ASSERT_TRUE(QTest::qWaitFor([&] { return loads().isSettled() && loads().canKeep(); }, 60000));
    }
    void writeLoads()
    {
        openLoads();
        press(Qt::Key_Return);
        waitForNews();
    }
    // A session of a lift of the weeks to come that wasn't trained today yet, at half of what it was.
    void keyABadDay()
    {
        const Slot slot = stored().weeks[3].days[1].slotList[0];
        ASSERT_TRUE(slot.load);
        SetEntry set;
        set.load = Load::make(Decimal::nearest(slot.load->kilograms() / 2, 1), MassUnit::kg).value();
        set.reps = 4;
        set.off = 0;
        set.effort = Effort{Effort::Scale::Rir, Decimal(0)};
        for (set.number = 1; set.number <= 3; ++set.number)
            ASSERT_TRUE(window.book()->history().perform(addSet(liftOf(stored(), slot), clock.today(), set)));
    }
};

TEST_F(LoadsThatMoveOn, NothingIsSaidWhereNoLoadIsWritten)
{
    waitForNews();
    EXPECT_EQ(news(), QString());
}

TEST_F(LoadsThatMoveOn, ASessionThatIsKeyedIsSaidAndNothingIsWritten)
{
    writeLoads();
    EXPECT_EQ(news(), QString()) << "what was just written is what the record gives";
    const Block before = stored();
    keyABadDay();
    waitForNews();
    EXPECT_TRUE(news().contains(QStringLiteral("would be written otherwise after 1 Mar"))) << qPrintable(news());
    EXPECT_EQ(stored(), before);

    // Taken over: nothing is left to say.
    writeLoads();
    EXPECT_EQ(news(), QString());
    EXPECT_NE(stored(), before);
    undo();
    waitForNews();
    EXPECT_FALSE(news().isEmpty()) << "taken back, it differs again";
}

TEST_F(LoadsThatMoveOn, AWrittenLoadIsKeptForGoodFromTheList)
{
    writeLoads();
    keyABadDay();
    waitForNews();
    ASSERT_FALSE(news().isEmpty());
    const Block before = stored();
    openLoads();
    // The coach keeps every load as it is written.
    const int rows = loads().changes()->topLevelItemCount();
    for (int row = 0; row < rows; ++row) {
        press(Qt::Key_L, Qt::ShiftModifier);
        press(Qt::Key_Down);
    }
    EXPECT_EQ(loads().changes()->topLevelItem(0)->text(3), QStringLiteral("kept"));
    press(Qt::Key_Return);
    waitForNews();
    EXPECT_EQ(news(), QString());
    int kept = 0;
    const Block after = stored();
    for (const PlanPlace& place : placesOfWeek(after, 3)) {
        EXPECT_EQ(slotAt(after, place)->load, slotAt(before, place)->load);
        kept += slotAt(after, place)->loadLocked ? 1 : 0;
    }
    EXPECT_GT(kept, 0);
}

TEST_F(LoadsThatMoveOn, ABlockThatIsOpenedLaterSaysItToo)
{
    writeLoads();
    press(Qt::Key_1, Qt::ControlModifier);
    keyABadDay();
    EXPECT_TRUE(page().ahead().isSettled()) << "nobody sees the block, so nothing is set off";
    settle();
    press(Qt::Key_3, Qt::ControlModifier);
    waitForNews();
    EXPECT_FALSE(news().isEmpty());
    choose(*without);
    EXPECT_EQ(news(), QString()) << "it is about one lifter";
    choose(*withBlock);
    waitForNews();
    EXPECT_FALSE(news().isEmpty());
}

TEST_F(LoadsThatMoveOn, AnotherChanceOfReachingTheTargetIsAReasonToo)
{
    writeLoads();
    const Block before = stored();
    ASSERT_TRUE(
        window.book()->history().perform(setRuleThreshold(slotLoadNumbers().id(), QStringLiteral("percent"), 95)));
    waitForNews();
    EXPECT_FALSE(news().isEmpty());
    EXPECT_EQ(stored(), before);
    undo();
    waitForNews();
    EXPECT_EQ(news(), QString());
}

}  // namespace
}  // namespace steelyard
