// A block from its proposal to the first day's printed sheet, on the real window by keys alone, and back by undo.
#include "tests/support/block_window.h"
#include "ui/pages/block/block_loads.h"
#include "ui/pages/block/block_proposed.h"
#include "ui/pages/block/block_words.h"
#include "ui/pages/floor/floor_page.h"

#include <QtCore/QProcess>
#include <QtPrintSupport/QPrinter>
#include <QtWidgets/QTreeWidget>

namespace steelyard {
namespace {

class BlockWalk : public testing_support::BlockWindow {
protected:
    [[nodiscard]] BlockLoads& loads() const { return *page().findChild<BlockLoads*>(); }
    [[nodiscard]] FloorPage& floor() const { return *window.view()->findChild<FloorPage*>(); }
    [[nodiscard]] std::vector<Row<Block>> blocks() const { return *window.book()->blocks().of(*without); }
    void takeOver()
    {
        press(Qt::Key_Return);
        settle();
        ASSERT_FALSE(proposed().isVisible()) << qPrintable(proposed().words());
    }
    // A line that is asked for, or typed in place.
    void answer(Qt::Key key, const QString& text)
    {
        press(key);
        type(text);
        press(Qt::Key_Return);
        settle();
    }
    [[nodiscard]] QString printed()
    {
        const QString pdf = dir.path(u"sheet.pdf");
        prompter.printer = [&](const PrintQuestion& question) {
            QPrinter printer;
            printer.setOutputFileName(pdf);
            return question.paintPages(printer);
        };
        press(Qt::Key_P, Qt::ControlModifier);
        QProcess text;
        text.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
        EXPECT_TRUE(text.waitForFinished());
        return QString::fromUtf8(text.readAllStandardOutput());
    }
};

TEST_F(BlockWalk, LeadsFromAProposalToAPrintedSheetAndUndoTakesAllOfItBack)
{
    choose(*without);
    ASSERT_TRUE(blocks().empty());
    const QByteArray before = content();

    // Six weeks, one more than is usual: asked anew, then taken over.
    propose();
    press(Qt::Key_S, Qt::AltModifier);
    press(Qt::Key_Up);
    EXPECT_FALSE(proposed().isAnswered());
    press(Qt::Key_Return);
    waitForAnswer();
    EXPECT_EQ(content(), before) << "looking writes nothing";
    takeOver();
    ASSERT_EQ(blocks().size(), 1U);
    EXPECT_EQ(block().weeks.size(), 6U);

    // Another dose and another way to go on for the first lift, which is fixed then.
    const QDate first = block().weeks[0].days[0].date;
    const Slot lift = at(0, 0);
    const QString name = exerciseWords(lift, page().shown()->library());
    places().goTo(first, 0);
    answer(Qt::Key_E, QStringLiteral("5x6-9 rir2"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return blocks().front().value.weeks[0].days[0].slotList[0].sets == 5; }, 30000));
    answer(Qt::Key_U, QStringLiteral("hold"));
    press(Qt::Key_I);
    propose();
    takeOver();
    ASSERT_EQ(blocks().size(), 1U) << "it has taken the place of the one before";
    const Block proposedAnew = blocks().front().value;
    EXPECT_EQ(proposedAnew.weeks.size(), 6U);
    for (const PlannedWeek& one : proposedAnew.weeks) {
        if (one.kind != WeekKind::Normal) continue;
        const auto place = placeOf(proposedAnew, first.addDays(7 * (&one - proposedAnew.weeks.data())), lift);
        ASSERT_TRUE(place);
        const Slot& slot = *slotAt(proposedAnew, *place);
        EXPECT_EQ(slot.sets, 5);
        EXPECT_EQ(slot.band, (RepBand{6, 9}));
        EXPECT_EQ(slot.progression, QStringLiteral("hold"));
    }

    // Its loads are those of the record: another reserve moves them, and F writes them.
    places().goTo(first, 0);
    answer(Qt::Key_R, QStringLiteral("0"));
    press(Qt::Key_F);
    ASSERT_TRUE(QTest::qWaitFor([&] { return loads().isSettled(); }, 60000));
    const bool differs = loads().canKeep();
    press(differs ? Qt::Key_Return : Qt::Key_Escape);
    settle();
    ASSERT_FALSE(loads().isVisible());

    // The first day's sheet.
    const auto place = placeOf(block(), first, lift);
    ASSERT_TRUE(place);
    const Slot onSheet = *slotAt(block(), *place);
    press(Qt::Key_4, Qt::ControlModifier);
    for (QDate day = clock.today(); day < first; day = day.addDays(1)) {
        press(Qt::Key_BracketRight);
        ASSERT_TRUE(QTest::qWaitFor([&] { return floor().isSettled(); }, 30000));
    }
    ASSERT_TRUE(QTest::qWaitFor([&] { return floor().isSettled() && !floor().chosenSheets().empty(); }, 30000));
    const QString words = printed();
    EXPECT_TRUE(words.contains(page().shown()->log().athlete.value.name)) << qPrintable(words);
    EXPECT_TRUE(words.contains(name)) << qPrintable(words);
    ASSERT_TRUE(onSheet.load);
    EXPECT_TRUE(words.contains(onSheet.load->amount().toString())) << qPrintable(words);
    EXPECT_EQ(prompter.errors, QStringList());
    EXPECT_EQ(blocks().front().value.weeks[place->week].days[place->day].slotList[place->slot], onSheet);

    // Proposed, dose, way, proposed anew, reserve, and the loads where they differed.
    for (int step = 0; step < (differs ? 6 : 5); ++step) {
        EXPECT_NE(content(), before);
        undo();
    }
    EXPECT_EQ(content(), before);
}

}  // namespace
}  // namespace steelyard
