// How a slot goes on and what is fixed in the plan, by keys on the real window; what was done beside what was planned.
#include "core/planning/progression_registry.h"
#include "tests/support/block_window.h"
#include "ui/pages/block/block_words.h"
#include "ui/pages/block/done_words.h"
#include "ui/pages/block/loads_ahead.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>

namespace steelyard {
namespace {

class BlockSlotWays : public testing_support::BlockWindow {
protected:
    [[nodiscard]] const QLabel& label(const char* name) const
    {
        return *page().findChild<QLabel*>(QString::fromLatin1(name));
    }
    [[nodiscard]] QString cell() const { return places().currentIndex().data().toString(); }
    // Everything that is said of loads.
    void waitForLoads()
    {
        ASSERT_TRUE(QTest::qWaitFor([&] { return page().ahead().isSettled(); }, 30000));
    }
};

TEST_F(BlockSlotWays, TheWayItGoesOnIsChosenByNumberOrNameAndTakenBack)
{
    toNextWeek();
    const Block before = stored();
    const QString usual = progressionRules().front()->title();
    EXPECT_TRUE(page().line().contains(usual)) << qPrintable(page().line());
    EXPECT_FALSE(cell().contains(usual)) << "the usual way needs no words in the week";

    press(Qt::Key_U);
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    EXPECT_EQ(line->text(), usual);
    for (const ProgressionRule* rule : progressionRules())
        EXPECT_TRUE(page().line().contains(rule->title())) << qPrintable(page().line());
    type(QStringLiteral("sideways"));
    press(Qt::Key_Return);
    EXPECT_TRUE(line->isVisible()) << "what can't be read stays";
    line->selectAll();
    type(QStringLiteral("4"));
    press(Qt::Key_Return);
    const ProgressionRule& hold = *findProgression(u"hold");
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].progression, hold.id());
    EXPECT_EQ(stored().weeks[4], before.weeks[4]) << "this week alone";
    EXPECT_TRUE(cell().contains(hold.title())) << qPrintable(cell());
    EXPECT_TRUE(page().line().contains(hold.title()));
    EXPECT_TRUE(label("howItGoesOn").text().startsWith(hold.title())) << qPrintable(label("howItGoesOn").text());
    EXPECT_TRUE(undoLabel().contains(QStringLiteral("goes on"))) << qPrintable(undoLabel());

    press(Qt::Key_U);
    type(QStringLiteral("eff"));
    press(Qt::Key_Return);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].progression, findProgression(u"effort_ramp")->id());
    press(Qt::Key_U);
    press(Qt::Key_Backspace);
    press(Qt::Key_Return);
    EXPECT_EQ(stored(), before) << "nothing typed is the usual way";
    undo();
    undo();
    undo();
    EXPECT_EQ(stored(), before);
}

TEST_F(BlockSlotWays, BesideTheWeekStandsWhyTheRecordGivesThatLoad)
{
    toNextWeek();
    waitForLoads();
    const SlotForecast* today = page().ahead().at({3, 0, 0});
    ASSERT_TRUE(today);
    ASSERT_FALSE(today->load.why.isEmpty());
    EXPECT_TRUE(label("howItGoesOn").text().contains(today->load.why)) << qPrintable(label("howItGoesOn").text());
    press(Qt::Key_BracketLeft);
    press(Qt::Key_BracketLeft);
    places().goTo(block().weeks[1].days.front().date, 0);
    EXPECT_TRUE(label("howItGoesOn").text().contains(progressionRules().front()->description()))
        << "of what has passed nothing is forecast";
}

TEST_F(BlockSlotWays, AFixedLiftIsMarkedAndTheBookIsLeftAlone)
{
    toNextWeek();
    const QByteArray before = content();
    press(Qt::Key_I);
    EXPECT_TRUE(page().shown()->isPinned({3, 0, 0}));
    EXPECT_TRUE(cell().contains(QStringLiteral("fixed for the next proposal"))) << qPrintable(cell());
    EXPECT_EQ(places().cursor().slot, (PlanPlace{3, 0, 0})) << "the cursor stays";
    EXPECT_TRUE(page().line().contains(QStringLiteral("Ctrl+Shift+B"))) << qPrintable(page().line());
    press(Qt::Key_D);
    EXPECT_TRUE(places().model()->index(0, 0).data().toString().startsWith(kPinShape));
    press(Qt::Key_D);

    // It is this lifter's, and still there on coming back.
    choose(*without);
    EXPECT_TRUE(!page().shown() || page().shown()->pins.slotsOf(page().shown()->block(), 0).empty());
    choose(*withBlock);
    EXPECT_TRUE(page().shown()->isPinned({3, 0, 0}));
    toNextWeek();
    press(Qt::Key_I);
    EXPECT_FALSE(page().shown()->isPinned({3, 0, 0}));
    EXPECT_FALSE(cell().contains(QStringLiteral("fixed")));
    EXPECT_EQ(content(), before);
}

TEST_F(BlockSlotWays, WhatWasDoneOfThePlanStandsBesideWeeksThatHavePassed)
{
    const PlannedBesideDone beside = plannedBesideDone(page().shown()->log(), block(), clock.today());
    press(Qt::Key_BracketLeft);
    ASSERT_EQ(week(), 1U);
    ASSERT_GT(beside.ofWeek(1).doneSets, 0);
    EXPECT_EQ(label("doneOfThePlan").text(), besideWords(beside.ofWeek(1), beside.ofBlock()));
    EXPECT_FALSE(label("doneOfThePlan").isHidden());
    EXPECT_FALSE(label("doneOfThePlan").toolTip().isEmpty()) << "says what on target means";
    toNextWeek();
    toNextWeek();
    EXPECT_TRUE(label("doneOfThePlan").isHidden()) << "nothing was to be done yet";
}

}  // namespace
}  // namespace steelyard
