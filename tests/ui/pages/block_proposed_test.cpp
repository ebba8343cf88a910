// The question and the answer of a proposal, by keys on the real window.
#include "ui/pages/block/block_proposed.h"

#include "core/planning/proposal/proposal_problem.h"
#include "tests/support/block_window.h"
#include "ui/pages/block/block_words.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QTreeWidget>
#include <QtWidgets/QTreeWidgetItemIterator>

namespace steelyard {
namespace {

class ProposedBlocks : public testing_support::BlockWindow {
protected:
    // The field that this letter goes to, with another value.
    void set(Qt::Key letter, int value)
    {
        press(letter, Qt::AltModifier);
        auto* field = qobject_cast<QSpinBox*>(window.focusWidget());
        ASSERT_TRUE(field);
        field->selectAll();
        type(QString::number(value));
        press(Qt::Key_Return);
    }
    [[nodiscard]] QString wholeAnswer() const
    {
        QStringList lines;
        for (QTreeWidgetItemIterator at(proposed().answer()); *at; ++at)
            lines << (*at)->text(0) + QStringLiteral(" | ") + (*at)->text(2);
        return lines.join(u'\n');
    }
};

TEST_F(ProposedBlocks, TheQuestionBeginsWithWhatIsUsual)
{
    propose();
    const auto& log = page().shown()->log();
    const auto fields = proposed().findChildren<QSpinBox*>();
    ASSERT_EQ(fields.size(), 3);
    EXPECT_EQ(fields[0]->value(), 5);
    EXPECT_EQ(fields[1]->value(), static_cast<int>(trainingWeekdays(log, {.today = clock.today()}).size()));
    EXPECT_EQ(fields[2]->value(), log.athlete.value.minutesPerDay.value_or(kUsualTrainingMinutes));
    EXPECT_TRUE(proposed().findChild<QCheckBox*>()->isHidden()) << "the block in sight runs already";
}

TEST_F(ProposedBlocks, AnotherQuestionTakesTheAnswerAwayAndEnterAsksIt)
{
    const QByteArray before = content();
    propose();
    set(Qt::Key_S, 3);
    EXPECT_FALSE(proposed().isAnswered()) << "Enter has asked anew instead of taking what was there";
    EXPECT_TRUE(proposed().isVisible());
    waitForAnswer();
    // Another number than there is: the same would be no other question.
    const int days = proposed().findChildren<QSpinBox*>()[1]->value() == 2 ? 1 : 2;
    set(Qt::Key_Y, days);
    waitForAnswer();
    set(Qt::Key_M, 40);
    waitForAnswer();
    EXPECT_EQ(content(), before);
    press(Qt::Key_Return);
    settle();
    ASSERT_FALSE(proposed().isVisible());
    EXPECT_EQ(block().weeks.size(), 3U);
    EXPECT_EQ(block().minutesPerDay, 40);
    for (const PlannedWeek& one : block().weeks) EXPECT_LE(std::ssize(one.days), days);
    for (const WeekTotal& one : page().shown()->totals.weeks)
        for (const DayTotal& day : one.days) EXPECT_LE(day.minutes, 40.0);
    undo();
    EXPECT_EQ(content(), before);
}

TEST_F(ProposedBlocks, EscapeWhileItLooksLeavesEverything)
{
    const QByteArray before = content();
    press(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_TRUE(proposed().isVisible());
    press(Qt::Key_Escape);
    EXPECT_FALSE(proposed().isVisible());
    settle();
    EXPECT_EQ(content(), before);
    EXPECT_TRUE(places().hasFocus());
}

TEST_F(ProposedBlocks, FixedLiftsStayAndThoseThatBreakALimitAreNamed)
{
    toNextWeek();
    const Slot first = at(0, 0);
    const int weekday = block().weeks[3].days[0].date.dayOfWeek();
    const QString name = exerciseWords(first, page().shown()->library());
    press(Qt::Key_I);
    propose();
    EXPECT_TRUE(wholeAnswer().contains(QStringLiteral("Fixed by the coach."))) << qPrintable(wholeAnswer());
    EXPECT_FALSE(wholeAnswer().contains(QStringLiteral("goes over a limit by itself")));
    set(Qt::Key_M, 5);
    waitForAnswer();
    const QString said =
        QStringLiteral("What is fixed goes over a limit by itself: the minutes of a day. It is ") + name;
    EXPECT_TRUE(wholeAnswer().contains(said)) << qPrintable(wholeAnswer());
    press(Qt::Key_Return);
    settle();
    for (const PlannedWeek& one : block().weeks) {
        if (one.kind != WeekKind::Normal) continue;
        const auto day = std::ranges::find(one.days, weekday, [](const PlannedDay& on) { return on.date.dayOfWeek(); });
        ASSERT_NE(day, one.days.end());
        const auto slot =
            std::ranges::find_if(day->slotList, [&](const Slot& other) { return isSameLift(other, first); });
        ASSERT_NE(slot, day->slotList.end());
        EXPECT_EQ(slot->sets, first.sets);
        EXPECT_EQ(slot->band, first.band);
    }
}

TEST_F(ProposedBlocks, ABlockThatChangedMeanwhileKeepsItsPlace)
{
    choose(*without);
    propose();
    press(Qt::Key_Return);
    settle();
    press(Qt::Key_I);
    propose();
    ASSERT_TRUE(proposed().findChild<QCheckBox*>()->isChecked()) << "something of the block in sight is fixed";
    undo();  // the block goes, while its successor is looked at
    const QByteArray before = content();
    press(Qt::Key_Return);
    EXPECT_TRUE(proposed().words().contains(QStringLiteral("changed meanwhile"))) << qPrintable(proposed().words());
    EXPECT_EQ(content(), before);
    press(Qt::Key_Escape);
    EXPECT_FALSE(proposed().isVisible());
}

}  // namespace
}  // namespace steelyard
