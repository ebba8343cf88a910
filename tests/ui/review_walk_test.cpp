// A whole review of sixty lifters on the real window, keys only: to an empty queue, and back by undo. Actions land in the
// days ahead, or on the next sheet where none are planned.
#include "core/edits/edits.h"
#include "tests/support/club_window.h"
#include "ui/pages/week/decide_bar.h"

#include <QtTest/QSignalSpy>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>

namespace steelyard {
namespace {

constexpr int kLifters = 60;

// Sets on the days up to today, and after it.
std::pair<int, int> plannedSets(const std::vector<Row<Block>>& blocks, QDate today)
{
    std::pair<int, int> sets;
    for (const Row<Block>& row : blocks)
        for (const PlannedWeek& week : row.value.weeks)
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList) (day.date > today ? sets.second : sets.first) += slot.sets;
    return sets;
}

class ReviewWalk : public testing_support::ClubWindow {
protected:
    ReviewWalk() : ClubWindow({.athletes = kLifters, .years = 1, .seed = 5}) {}
    // A key, and all that follows from it.
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ClubWindow::press(key, modifiers);
        settle();
    }
    [[nodiscard]] int finished() const
    {
        return static_cast<int>(std::ranges::count_if(window.reviews()->reviews(), &AthleteReview::finished));
    }
    [[nodiscard]] bool isSaid(const QString& words) const
    {
        const auto labels = window.view()->findChildren<QLabel*>();
        return std::ranges::any_of(
            labels, [&](const QLabel* label) { return label->isVisible() && label->text().contains(words); });
    }
    // With the arrow key, in the list that has the focus.
    void chooseAction(const QString& word)
    {
        const auto* list = qobject_cast<QComboBox*>(window.focusWidget());
        ASSERT_TRUE(list);
        for (int i = 0; i < list->count() && list->currentData() != word; ++i) press(Qt::Key_Down);
        ASSERT_EQ(list->currentData().toString(), word);
    }
    [[nodiscard]] int decisionsInTheBook() const
    {
        int count = 0;
        for (const AthleteReview& review : window.reviews()->reviews())
            count += static_cast<int>(window.book()->decisions().of(review.athlete)->size());
        return count;
    }
    [[nodiscard]] std::vector<Row<Block>> blocks() const { return *window.book()->blocks().of(chosen()); }
    [[nodiscard]] Decision newestDecision() const
    {
        const auto all = *window.book()->decisions().of(chosen());
        if (all.empty()) return Decision{.athlete = chosen()};
        return std::ranges::max_element(all, {}, &Row<Decision>::id)->value;
    }
    // A set less, and that what was said of it is what happened. True: it landed in the plan; else it stands on the sheet.
    bool takeOutASet()
    {
        const auto blocksBefore = blocks();
        press(Qt::Key_A);
        chooseAction(QStringLiteral("drop_set"));
        const bool saysNote = isSaid(QStringLiteral("becomes a note on the next sheet"));
        const bool saysChange = isSaid(QStringLiteral("In “Five weeks of steady work”"));
        EXPECT_NE(saysNote, saysChange);
        press(Qt::Key_Return);
        const Decision decision = newestDecision();
        EXPECT_EQ(decision.action, QStringLiteral("drop_set"));
        EXPECT_EQ(blocks() != blocksBefore, saysChange);
        EXPECT_EQ(decision.reason.isEmpty(), saysChange);
        const auto was = plannedSets(blocksBefore, clock.today());
        const auto is = plannedSets(blocks(), clock.today());
        EXPECT_EQ(is.first, was.first) << "the past is as it was";
        EXPECT_EQ(is.second < was.second, saysChange);
        return saysChange;
    }
};

TEST_F(ReviewWalk, EndsWithAnEmptyQueueAndUndoBringsTheBookBack)
{
    const QByteArray before = content();
    const int decisionsBefore = decisionsInTheBook();
    int edits = 0;

    // The worst lifter: every flag answered, which finishes them.
    const Id<Athlete> worst = chosen();
    ASSERT_FALSE(chosenReview().flags.empty());
    for (std::size_t left = chosenReview().flags.size(); left > 0; --left) {
        press(Qt::Key_D);
        QTest::keyClicks(window.focusWidget(), QStringLiteral("spoken about it"));
        press(Qt::Key_Return);
        ++edits;
        ASSERT_EQ(chosenReview().flags.size(), left - 1);
    }
    EXPECT_TRUE(chosenReview().finished);
    EXPECT_EQ(finished(), 1);

    // The others: an action for every fourth, then F, which goes on by itself, and never to somebody who is finished.
    int landed = 0;
    int noted = 0;
    press(Qt::Key_N);
    EXPECT_NE(chosen(), worst);
    for (int lifter = 1; lifter < kLifters; ++lifter) {
        ASSERT_FALSE(chosenReview().finished);
        if (lifter % 4 == 0 && !chosenReview().flags.empty()) {
            (takeOutASet() ? landed : noted) += 1;
            ++edits;
        }
        const bool answered = chosenReview().finished;  // it was the only flag
        press(answered ? Qt::Key_N : Qt::Key_F);
        if (!answered) ++edits;
        ASSERT_EQ(finished(), lifter + 1);
        EXPECT_EQ(isSaid(QStringLiteral("%1 of 60 finished, about").arg(lifter + 1)),
                  lifter >= 3 && lifter + 1 < kLifters);
    }
    EXPECT_GT(landed, 0);
    EXPECT_GT(noted, 0);
    EXPECT_TRUE(isSaid(QStringLiteral("Everybody is finished")));
    EXPECT_EQ(prompter.errors, QStringList());

    // The decisions are in the book, one a key that stored.
    EXPECT_EQ(decisionsInTheBook() - decisionsBefore, edits);

    for (int i = 0; i < edits; ++i) press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(content(), before);
    EXPECT_EQ(finished(), 0);
}

TEST_F(ReviewWalk, LettersChooseAnActionInsteadOfWalkingAway)
{
    press(Qt::Key_A);
    QTest::keyClicks(window.focusWidget(), QStringLiteral("take"));
    press(Qt::Key_Return);
    EXPECT_EQ(newestDecision().action, QStringLiteral("drop_set"));
}

TEST_F(ReviewWalk, AQuickEnterWaitsUntilThePlanIsRead)
{
    ClubWindow::press(Qt::Key_A);
    ClubWindow::press(Qt::Key_Return);
    settle();
    EXPECT_EQ(newestDecision().kind, DecisionKind::Act);
    EXPECT_EQ(prompter.errors, QStringList());
}

TEST_F(ReviewWalk, AReviewThatArrivesLeavesAnOpenAnswerWithWhatWasTyped)
{
    press(Qt::Key_D);
    QTest::keyClicks(window.focusWidget(), QStringLiteral("half a rea"));
    // Somebody else's record changes, so a review of them comes in.
    const auto& all = window.reviews()->reviews();
    const auto other = std::ranges::find_if(all, [&](const AthleteReview& one) { return one.athlete != chosen(); });
    auto changed = window.book()->athletes().find(other->athlete)->value;
    changed.note = QStringLiteral("back from travel");
    ASSERT_TRUE(window.book()->history().perform(changeAthlete(other->athlete, changed)));
    QSignalSpy arrived(window.reviews(), &ReviewStore::reviewsChanged);
    settle();
    ASSERT_GE(arrived.size(), 1);
    QTest::keyClicks(window.focusWidget(), QStringLiteral("son"));
    press(Qt::Key_Return);
    EXPECT_EQ(newestDecision().reason, QStringLiteral("half a reason"));
}

TEST_F(ReviewWalk, EscapeLeavesThePlanAlone)
{
    const QByteArray before = content();
    press(Qt::Key_A);
    EXPECT_EQ(window.view()->findChild<DecideBar*>()->isVisible(), true);
    press(Qt::Key_Tab);
    press(Qt::Key_Escape);
    EXPECT_EQ(content(), before);
    EXPECT_EQ(window.view()->findChild<DecideBar*>()->isVisible(), false);
}

TEST_F(ReviewWalk, GoesOnWhereTheLastSittingEnded)
{
    press(Qt::Key_F);
    press(Qt::Key_F);
    const Id<Athlete> third = chosen();
    ASSERT_TRUE(window.openBook(path));
    settle();
    EXPECT_EQ(finished(), 2);
    EXPECT_EQ(chosen(), third);
    // N passes by those who are finished, also from the end of the list.
    for (int i = 1; i < kLifters - 2; ++i) press(Qt::Key_N);
    press(Qt::Key_N);
    EXPECT_EQ(chosen(), third);
}

}  // namespace
}  // namespace steelyard
