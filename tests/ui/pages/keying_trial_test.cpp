// Keying a session of a trial: the arm is said, and what the trial asks is asked once before the lifter is left.
#include "core/edits/trial_edits.h"
#include "tests/support/keying_club.h"

namespace steelyard {
namespace {

class KeyingTrials : public testing_support::KeyingClub {
protected:
    KeyingTrials() : KeyingClub({.athletes = 4, .years = 1, .seed = 3, .exercisesPerSession = 3}) {}

    // The lifter in front compares the first exercise's grip with another one today.
    void startWithATrial()
    {
        startKeying();
        const LiftLine lift = view().desk()->exercise(0).lift;
        press(Qt::Key_Escape);
        ASSERT_FALSE(page().isKeying());
        const auto grips = window.book()->library().read()->grips;
        const auto other = std::ranges::find_if(grips, [&](const auto& grip) { return grip.id != lift.grip; });
        Trial trial{.athlete = lift.athlete};
        trial.question = QStringLiteral("Which grip?");
        trial.designedOn = clock.today();
        trial.arms = {{.variant = lift.variant, .grip = lift.grip, .standard = lift.standard, .band = {8, 12}},
                      {.variant = lift.variant, .grip = other->id, .standard = lift.standard, .band = {8, 12}}};
        trial.outcomes = {{QStringLiteral("tension"), 1}};
        trial.blocks = 1;
        trial.days = {{day(), 1, 0}, {day().addDays(7), 1, 1}};
        ASSERT_TRUE(window.book()->history().perform(designTrial(trial, {})));
        settle();
        ASSERT_TRUE(QTest::qWaitFor([&] { return page().isSettled(); }, 30000));
        press(Qt::Key_K);
        ASSERT_TRUE(page().isKeying());
        if (view().desk()->dayAfter()) type(QStringLiteral("."));
        ASSERT_TRUE(view().desk()->exercise(0).words.trial);
    }
};

TEST_F(KeyingTrials, SayTheArmOfTheDay)
{
    startWithATrial();
    const auto labels = page().findChildren<ElidedLabel*>();
    EXPECT_TRUE(std::ranges::any_of(
        labels, [](const ElidedLabel* label) { return label->text().startsWith(QStringLiteral("Trial: arm A")); }));
    EXPECT_TRUE(isSaid(QStringLiteral("Trial: arm A"))) << "and beside the rows, in full";
    EXPECT_TRUE(isSaid(QStringLiteral("How much tension did you feel in the target muscle, 0 to 10?")));
}

TEST_F(KeyingTrials, AskForMissingRatingsOnceAndLeaveThemOutWithTheSameKey)
{
    startWithATrial();
    const auto lifter = view().desk()->sheet().athlete;
    keyFirstExercise();
    type(QStringLiteral("."));
    press(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_EQ(view().desk()->sheet().athlete, lifter) << "the rating is missing";
    auto* row = qobject_cast<RatingRow*>(window.focusWidget());
    ASSERT_TRUE(row);
    EXPECT_EQ(row->currentCell(), RatingCell::Tension);
    press(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_NE(view().desk()->sheet().athlete, lifter) << "nobody is forced";
}

TEST_F(KeyingTrials, AskNothingWhenWhatTheTrialNeedsIsRated)
{
    startWithATrial();
    const auto lifter = view().desk()->sheet().athlete;
    keyFirstExercise();
    type(QStringLiteral("7"));
    type(QStringLiteral("e0"));
    press(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_NE(view().desk()->sheet().athlete, lifter);
}

}  // namespace
}  // namespace steelyard
