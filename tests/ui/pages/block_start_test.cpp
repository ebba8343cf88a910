// Blocks that are started on the Block place, and plans that change while the page shows them.
#include "core/edits/edits.h"
#include "tests/support/block_window.h"
#include "ui/pages/block/block_start.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>

namespace steelyard {
namespace {

class BlockStarts : public testing_support::BlockWindow {};
class BlockChangedElsewhere : public testing_support::BlockWindow {};

TEST_F(BlockStarts, InviteToStartABlockWhereThereIsNone)
{
    choose(*without);
    EXPECT_EQ(page().shown(), nullptr);
    auto* start = page().findChild<BlockStart*>();
    ASSERT_TRUE(start->isVisible());
    press(Qt::Key_Return);
    ASSERT_TRUE(page().shown());
    EXPECT_EQ(block().weeks.size(), 5U);
    EXPECT_EQ(block().weeks[4].kind, WeekKind::Deload);
    EXPECT_TRUE(places().hasFocus());
    press(Qt::Key_Return);
    type(QStringLiteral("calf"));
    press(Qt::Key_Return);
    EXPECT_EQ(block().weeks[0].days[0].slotList.size(), 1U) << "Enter on the empty line finds a lift";
    undo();
    undo();
    EXPECT_TRUE(window.book()->blocks().of(*without)->empty());
    EXPECT_TRUE(start->isVisible());
}

TEST_F(BlockStarts, KeepAShapeAsATemplateForOthers)
{
    press(Qt::Key_T, Qt::ControlModifier);
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    type(QStringLiteral("Steady"));
    press(Qt::Key_Return);
    ASSERT_EQ(window.book()->blocks().templates()->size(), 1U);
    const Block was = stored();
    choose(*without);
    auto* from = page().findChild<BlockStart*>()->findChild<QComboBox*>();
    from->setCurrentIndex(from->count() - 1);
    EXPECT_EQ(from->currentText(), QStringLiteral("Template: Steady"));
    press(Qt::Key_Return);
    ASSERT_TRUE(page().shown());
    EXPECT_EQ(block().athlete, *without);
    ASSERT_EQ(block().weeks.size(), was.weeks.size());
    EXPECT_EQ(block().weeks[1].days[0].slotList, was.weeks[1].days[0].slotList);
}

TEST_F(BlockStarts, StartTheNextBlockFromTheLastOneAndLeaveThat)
{
    press(Qt::Key_B, Qt::ControlModifier);
    auto* start = page().findChild<BlockStart*>();
    ASSERT_TRUE(start->isVisible());
    press(Qt::Key_Escape);
    EXPECT_FALSE(start->isVisible());
    press(Qt::Key_B, Qt::ControlModifier);
    press(Qt::Key_Return);
    const auto blocks = *window.book()->blocks().of(*withBlock);
    ASSERT_EQ(blocks.size(), 2U);
    EXPECT_EQ(blocks[1].value.start, endOf(blocks[0].value));
    EXPECT_EQ(page().shown()->row.id, blocks[1].id);
    press(Qt::Key_Delete, Qt::ControlModifier);
    EXPECT_EQ(window.book()->blocks().of(*withBlock)->size(), 1U);
    undo();
    EXPECT_EQ(window.book()->blocks().of(*withBlock)->size(), 2U);
}

TEST_F(BlockChangedElsewhere, TakeNoAnswerToAnOlderPlan)
{
    toNextWeek();
    press(Qt::Key_B);
    Block changed = stored();
    changed.weeks[3].days[0].slotList[0].sets = 7;
    const auto row = window.book()->blocks().of(*withBlock)->front();
    ASSERT_TRUE(window.book()->history().perform(changeBlock(row.id, changed)));
    type(QStringLiteral("5-8"));
    press(Qt::Key_Return);
    EXPECT_EQ(stored(), changed);
    EXPECT_EQ(block(), changed);
    EXPECT_TRUE(page().line().contains(QStringLiteral("meanwhile"))) << qPrintable(page().line());
    EXPECT_TRUE(places().hasFocus());
}

TEST_F(BlockChangedElsewhere, TakeNoDoseTypedOnAnOlderPlan)
{
    toNextWeek();
    press(Qt::Key_E);
    ASSERT_TRUE(places().isTyping());
    Block changed = stored();
    changed.weeks[3].days[0].slotList[0].sets = 7;
    const auto row = window.book()->blocks().of(*withBlock)->front();
    ASSERT_TRUE(window.book()->history().perform(changeBlock(row.id, changed)));
    EXPECT_TRUE(places().isTyping()) << "what is being typed stays";
    qobject_cast<QLineEdit*>(window.focusWidget())->selectAll();
    type(QStringLiteral("2x5-8"));
    press(Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !places().isTyping() && block() == changed; }));
    EXPECT_EQ(stored(), changed);
    EXPECT_TRUE(page().line().contains(QStringLiteral("meanwhile"))) << qPrintable(page().line());
}

TEST_F(BlockChangedElsewhere, FollowWhatTheReviewDoesToThePlan)
{
    Block changed = stored();
    changed.weeks[3].days[0].slotList[0].sets = 7;
    const auto row = window.book()->blocks().of(*withBlock)->front();
    ASSERT_TRUE(window.book()->history().perform(changeBlock(row.id, changed)));
    EXPECT_EQ(block().weeks[3].days[0].slotList[0].sets, 7);
}

}  // namespace
}  // namespace steelyard
