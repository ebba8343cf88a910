// A window on a sample club, on the Block place of a lifter who has a block that runs: two weeks of it have passed, the third is this one.
//
//   class BlockPages : public testing_support::BlockWindow {};
#pragma once

#include "tests/support/club_window.h"
#include "ui/pages/block/block_grid.h"
#include "ui/pages/block/block_page.h"
#include "ui/pages/block/block_proposed.h"

namespace steelyard::testing_support {

class BlockWindow : public ClubWindow {
protected:
    explicit BlockWindow(SampleClubOptions options = {.athletes = 6, .years = 1, .seed = 3}) : ClubWindow(options) {}

    void SetUp() override
    {
        ClubWindow::SetUp();
        if (HasFatalFailure()) return;
        press(Qt::Key_3, Qt::ControlModifier);
        const auto athletes = window.book()->athletes().all();
        ASSERT_TRUE(athletes);
        for (const auto& athlete : *athletes)
            if (!window.book()->blocks().of(athlete.id)->empty())
                withBlock = athlete.id;
            else
                without = athlete.id;
        ASSERT_TRUE(withBlock && without);
        choose(*withBlock);
        ASSERT_TRUE(page().shown());
    }
    void choose(Id<Athlete> athlete)
    {
        window.view()->roster()->choose(athlete);
        ASSERT_TRUE(QTest::qWaitFor([&] { return page().isSettled(); }, 30000));
        page().takeFocus();
    }
    [[nodiscard]] BlockPage& page() const { return *window.view()->findChild<BlockPage*>(); }
    [[nodiscard]] BlockPlacesView& places() const { return *page().places(); }
    [[nodiscard]] const Block& block() const { return page().shown()->block(); }
    [[nodiscard]] std::size_t week() const { return page().shown()->weekIndex; }
    // As the book has it, not as the page shows it.
    [[nodiscard]] Block stored() const { return window.book()->blocks().of(*withBlock)->front().value; }
    [[nodiscard]] QString undoLabel() const { return window.book()->history().undoLabel(); }
    void undo() { press(Qt::Key_Z, Qt::ControlModifier); }
    void type(const QString& text) { QTest::keyClicks(window.focusWidget() ? window.focusWidget() : &window, text); }
    // Onto the first lift of the next week, which is all ahead.
    void toNextWeek()
    {
        press(Qt::Key_BracketRight);
        places().goTo(block().weeks[week()].days.front().date, 0);
    }
    [[nodiscard]] const Slot& at(std::size_t day, std::size_t slot) const
    {
        return block().weeks[week()].days[day].slotList[slot];
    }

    [[nodiscard]] BlockProposed& proposed() const { return *page().findChild<BlockProposed*>(); }
    void waitForAnswer()
    {
        ASSERT_TRUE(QTest::qWaitFor([&] { return proposed().isSettled() && proposed().isAnswered(); }, 60000))
            << qPrintable(proposed().words());
    }
    void propose()
    {
        press(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
        ASSERT_TRUE(proposed().isVisible());
        waitForAnswer();
    }

    std::optional<Id<Athlete>> withBlock;
    std::optional<Id<Athlete>> without;
};

}  // namespace steelyard::testing_support
