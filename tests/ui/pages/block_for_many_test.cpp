// A template for many lifters at once, and loads from the record, by keys on the real window.
#include "ui/pages/block/block_for_many.h"

#include "tests/support/block_window.h"
#include "ui/pages/block/block_loads.h"
#include "ui/pages/block/block_proposed.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTreeWidget>

namespace steelyard {
namespace {

class BlocksForMany : public testing_support::BlockWindow {
protected:
    BlocksForMany() : BlockWindow({.athletes = 21, .years = 1, .seed = 3}) {}

    [[nodiscard]] BlockForMany& many() const { return *page().findChild<BlockForMany*>(); }
    [[nodiscard]] BlockLoads& loads() const { return *page().findChild<BlockLoads*>(); }
    void keepTemplate(const QString& name)
    {
        press(Qt::Key_T, Qt::ControlModifier);
        auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
        ASSERT_TRUE(line);
        line->selectAll();
        type(name);
        press(Qt::Key_Return);
        ASSERT_EQ(window.book()->blocks().templates()->size(), 1U);
    }
    [[nodiscard]] std::size_t blocksOfAll() const
    {
        std::size_t count = 0;
        const auto athletes = window.book()->athletes().all();
        for (const auto& athlete : athletes ? *athletes : std::vector<Row<Athlete>>())
            count += window.book()->blocks().of(athlete.id)->size();
        return count;
    }
};

TEST_F(BlocksForMany, TwentyLiftersGetOneTemplateAsOneStepThatIsTakenBackWhole)
{
    keepTemplate(QStringLiteral("Three days"));
    const QByteArray before = content();
    const std::size_t blocksBefore = blocksOfAll();

    press(Qt::Key_M, Qt::ControlModifier);
    ASSERT_TRUE(many().isVisible());
    EXPECT_EQ(many().lifters()->count(), 21);
    press(Qt::Key_Return);
    EXPECT_TRUE(many().words().contains(QStringLiteral("Space on a name"))) << qPrintable(many().words());
    many().lifters()->setFocus();
    for (int row = 0; row < 20; ++row) {
        press(Qt::Key_Space);
        press(Qt::Key_Down);
    }
    press(Qt::Key_Return);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return many().isSettled() && many().answer()->topLevelItemCount() == 20; }, 60000));
    EXPECT_EQ(blocksOfAll(), blocksBefore) << "nothing is written before it was looked at";
    int loaded = 0;
    for (int row = 0; row < 20; ++row) loaded += many().answer()->topLevelItem(row)->text(3).toInt();
    EXPECT_GT(loaded, 0) << "loads from their own records";

    press(Qt::Key_Return, Qt::ControlModifier);
    settle();
    EXPECT_FALSE(many().isVisible());
    EXPECT_EQ(blocksOfAll(), blocksBefore + 20);
    EXPECT_TRUE(undoLabel().contains(QStringLiteral("Three days"))) << qPrintable(undoLabel());
    undo();
    settle();
    EXPECT_EQ(content(), before);
}

TEST_F(BlocksForMany, AChangedQuestionTakesTheAnswerAway)
{
    keepTemplate(QStringLiteral("Three days"));
    press(Qt::Key_M, Qt::ControlModifier);
    many().lifters()->setFocus();
    press(Qt::Key_Space);
    press(Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return many().answer()->topLevelItemCount() == 1; }, 60000));
    many().lifters()->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(many().answer()->topLevelItemCount(), 0);
    const std::size_t blocks = blocksOfAll();
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(blocksOfAll(), blocks);
    press(Qt::Key_Escape);
    EXPECT_FALSE(many().isVisible());
    EXPECT_TRUE(places().hasFocus());
}

TEST_F(BlocksForMany, WithoutATemplateItSaysHowToGetOne)
{
    press(Qt::Key_M, Qt::ControlModifier);
    EXPECT_TRUE(many().words().contains(QStringLiteral("There is no template yet"))) << qPrintable(many().words());
    press(Qt::Key_Escape);
    EXPECT_FALSE(many().isVisible());
}

TEST_F(BlocksForMany, LoadsFromTheRecordAreTakenOneByOneAndAsOneStep)
{
    const Block before = stored();
    press(Qt::Key_F);
    ASSERT_TRUE(loads().isVisible());
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return loads().isSettled() && loads().changes()->topLevelItemCount() > 1; }, 60000));
    const int found = loads().changes()->topLevelItemCount();
    EXPECT_FALSE(loads().changes()->topLevelItem(0)->text(4).isEmpty()) << "each says why";
    press(Qt::Key_Space);  // leaves the first as it is
    press(Qt::Key_Return);
    settle();
    EXPECT_FALSE(loads().isVisible());
    int changed = 0;
    const Block after = stored();
    for (std::size_t w = 0; w < after.weeks.size(); ++w)
        for (std::size_t d = 0; d < after.weeks[w].days.size(); ++d)
            for (std::size_t s = 0; s < after.weeks[w].days[d].slotList.size(); ++s)
                changed += after.weeks[w].days[d].slotList[s] == before.weeks[w].days[d].slotList[s] ? 0 : 1;
    EXPECT_EQ(changed, found - 1);

    // What was left is all that is found the next time.
    press(Qt::Key_F);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return loads().isSettled() && loads().changes()->topLevelItemCount() > 0; }, 60000));
    EXPECT_EQ(loads().changes()->topLevelItemCount(), 1);
    press(Qt::Key_Escape);
    EXPECT_EQ(stored(), after);
    undo();
    EXPECT_EQ(stored(), before);
}

TEST_F(BlocksForMany, AProposalIsLookedAtTakenOverWithLoadsAndTakenBack)
{
    const std::size_t before = blocksOfAll();
    press(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    auto& proposed = *page().findChild<BlockProposed*>();
    ASSERT_TRUE(proposed.isVisible());
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return proposed.isSettled() && proposed.answer()->topLevelItemCount() > 0; }, 60000))
        << qPrintable(proposed.words());
    const QTreeWidgetItem* day = proposed.answer()->topLevelItem(0);
    ASSERT_GT(day->childCount(), 0);
    EXPECT_FALSE(day->child(0)->text(2).isEmpty()) << "each says why";
    EXPECT_EQ(blocksOfAll(), before);
    press(Qt::Key_Return);
    settle();
    EXPECT_FALSE(proposed.isVisible());
    EXPECT_EQ(blocksOfAll(), before + 1);
    EXPECT_GT(block().start, clock.today()) << "the new block is shown";
    EXPECT_TRUE(validate(block()).empty());
    int loaded = 0;
    for (const PlannedWeek& one : block().weeks)
        for (const PlannedDay& planned : one.days)
            for (const Slot& slot : planned.slotList) loaded += slot.load ? 1 : 0;
    EXPECT_GT(loaded, 0);
    undo();
    EXPECT_EQ(blocksOfAll(), before);
}

}  // namespace
}  // namespace steelyard
