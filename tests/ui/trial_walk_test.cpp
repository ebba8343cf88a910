// A whole trial on the real window by keys alone: designed, in the block, keyed session by session, judged, and its choice in the weeks
// that follow; and back by undo.
#include "core/edits/edits.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/support/keying_club.h"
#include "ui/charts/trial_strip.h"
#include "ui/pages/lifter/trial_form.h"
#include "ui/pages/lifter/trial_panel.h"
#include "ui/pages/lifter/trials_view.h"

#include <QtWidgets/QComboBox>

namespace steelyard {
namespace {

constexpr int kWeeksAhead = 14;

class TrialWalk : public testing_support::KeyingClub {
protected:
    TrialWalk() : KeyingClub({.athletes = 2, .years = 1, .seed = 5}) {}

    [[nodiscard]] TrialsView& trials() const { return *window.view()->findChild<TrialsView*>(); }
    // A key, and all that follows from it.
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        KeyingClub::press(key, modifiers);
        settle();
        ASSERT_TRUE(QTest::qWaitFor([&] { return page().isSettled() || !page().isVisible(); }, 30000));
    }
    void tabTo(const QString& field)
    {
        for (int i = 0; i < 80 && window.focusWidget()->accessibleName() != field; ++i) press(Qt::Key_Tab);
        ASSERT_EQ(window.focusWidget()->accessibleName(), field);
    }
    [[nodiscard]] std::vector<Row<Trial>> stored() const { return *window.book()->trials().of(chosen()); }
    [[nodiscard]] std::vector<Row<Block>> blocks() const { return *window.book()->blocks().of(chosen()); }
    // A block of the lift on Mondays and Thursdays, longer than the trial.
    void planAhead(const TrialArm& arm)
    {
        Block block{
            chosen(), QStringLiteral("The weeks ahead"), {}, clock.today().addDays(1 - clock.today().dayOfWeek()), {}};
        for (int week = 0; week < kWeeksAhead; ++week) {
            block.weeks.emplace_back();
            for (const int weekday : {0, 3}) {
                Slot slot{arm.variant, arm.grip, arm.standard};
                slot.band = arm.band;
                block.weeks.back().days.push_back({block.start.addDays(7 * week + weekday), {}, {slot}});
            }
        }
        ASSERT_TRUE(window.book()->history().perform(addBlock(block)));
        settle();
    }
    // The slots of a grip on the days after one.
    [[nodiscard]] int plannedWith(Id<Grip> grip, QDate after) const
    {
        int count = 0;
        for (const Row<Block>& row : blocks())
            for (const PlannedWeek& week : row.value.weeks)
                for (const PlannedDay& day : week.days)
                    for (const Slot& slot : day.slotList) count += day.date > after && slot.grip == grip ? 1 : 0;
        return count;
    }
    void keySession(const Trial& trial, const TrialDay& day)
    {
        const TrialArm& arm = trial.arms[day.arm];
        ASSERT_TRUE(page().isKeying());
        ASSERT_EQ(page().findChild<QDateEdit*>()->date(), day.date);
        if (view().desk()->dayAfter()) type(QStringLiteral("."));
        const auto& exercises = view().desk()->sheet().exercises;
        std::size_t at = 0;
        const auto isArm = [&](std::size_t i) {
            const auto& lift = view().desk()->exercise(i).words.lift;
            return lift && lift->grip == arm.grip && lift->variant == arm.variant;
        };
        while (at < exercises.size() && !isArm(at)) ++at;
        ASSERT_LT(at, exercises.size()) << "the arm of the day stands on its sheet";
        while (view().currentPlace() && view().currentPlace()->exercise < at) press(Qt::Key_PageDown);
        for (std::size_t row = view().desk()->exercise(at).rows.size(); row > 0; --row) {
            if (!view().desk()->row({at, view().desk()->exercise(at).rows.size() - row}).planned)
                type(QStringLiteral("20x10"));
            press(Qt::Key_Return);
        }
        // Arm B is felt more; sessions are not all alike.
        const int better = day.arm == 1 ? 3 : 0;
        const int mood = day.block % 2;
        type(QStringLiteral("%1%2%3t0.").arg(5 + better + mood).arg(5 + better).arg(5 + mood));
        const auto rating = view().desk()->exercise(at).rating;
        ASSERT_EQ(rating.tension, 5 + better + mood);
        press(Qt::Key_Escape);
    }
};

TEST_F(TrialWalk, FromTheQuestionToTheChoiceInTheWeeksAhead)
{
    press(Qt::Key_2, Qt::ControlModifier);
    press(Qt::Key_T);
    ASSERT_TRUE(trials().isDesigning());
    const TrialArm usual = trials().form()->proposed()->trial.arms[0];
    press(Qt::Key_Escape);
    planAhead(usual);
    const QByteArray before = content();

    // Six blocks of two grips, nothing to get used to.
    keys = 0;
    press(Qt::Key_T);
    tabTo(QStringLiteral("Sessions of each arm to get used to it"));
    type(QStringLiteral("0"));
    press(Qt::Key_Return);
    std::printf("A trial was set up with %d keys\n", keys);
    EXPECT_LT(keys, 60) << "a minute at one key a second";
    ASSERT_EQ(stored().size(), 1U);
    const Trial trial = stored()[0].value;
    ASSERT_EQ(trial.days.size(), 12U);
    const Id<Grip> chosenGrip = trial.arms[1].grip;
    EXPECT_EQ(plannedWith(chosenGrip, clock.today()), 6) << "its sessions stand in the block";

    for (std::size_t i = 0; i < trial.days.size(); ++i) {
        clock = FixedClock(trial.days[i].date);
        press(Qt::Key_2, Qt::ControlModifier);
        trials().panel()->takeFocus();
        press(Qt::Key_Home);
        for (std::size_t step = 0; step < i; ++step) press(Qt::Key_Right);
        press(Qt::Key_G);
        keySession(trial, trial.days[i]);
        if (HasFatalFailure()) return;
    }

    const QDate end = trial.days.back().date.addDays(1);
    clock = FixedClock(end);
    press(Qt::Key_2, Qt::ControlModifier);
    press(Qt::Key_1);
    press(Qt::Key_0);
    ASSERT_TRUE(trials().chosen());
    const auto& standing = trials().chosen()->analysis.standing;
    EXPECT_EQ(standing.arms[0].done, 6);
    EXPECT_EQ(standing.arms[1].done, 6);
    EXPECT_FALSE(trials().panel()->isRevealed());
    press(Qt::Key_L);
    ASSERT_TRUE(trials().panel()->isRevealed());
    EXPECT_EQ(trials().chosen()->analysis.verdict.word, TrialWord::Prefer);
    ASSERT_EQ(trials().chosen()->analysis.verdict.arm, std::optional<std::size_t>(1));
    press(Qt::Key_F);
    press(Qt::Key_Return);  // the letter of the verdict stands there
    const auto ending = stored()[0].value.ending;
    ASSERT_TRUE(ending.has_value());
    EXPECT_EQ(ending->choice, std::optional<std::size_t>(1));
    EXPECT_GT(plannedWith(chosenGrip, end), 8);
    EXPECT_EQ(plannedWith(usual.grip, end), 0) << "the weeks that remain go on with the choice";
    EXPECT_EQ(prompter.errors, QStringList());

    while (stored().size() == 1) ASSERT_TRUE(window.book()->history().undo());
    settle();
    EXPECT_EQ(content(), before);
}

TEST_F(TrialWalk, AFlagThatAsksForAComparisonLeadsToItsDesign)
{
    const auto& flags = chosenReview().flags;
    ASSERT_TRUE(std::ranges::any_of(flags, [](const auto& flag) { return flag.line.has_value(); }));
    press(Qt::Key_A);
    auto* list = qobject_cast<QComboBox*>(window.focusWidget());
    ASSERT_TRUE(list);
    for (int i = 0; i < list->count() && list->currentData() != QStringLiteral("start_trial"); ++i) press(Qt::Key_Down);
    ASSERT_EQ(list->currentData().toString(), QStringLiteral("start_trial"));
    press(Qt::Key_Return);
    ASSERT_TRUE(trials().isVisible());
    EXPECT_TRUE(trials().isDesigning());
    EXPECT_EQ(window.book()->decisions().of(chosen())->back().value.action, QStringLiteral("start_trial"));
}

}  // namespace
}  // namespace steelyard
