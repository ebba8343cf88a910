// A trial set up for a lifter: drawn, on days that can be compared, in the plan.
#include "core/planning/propose_trial.h"

#include "core/planning/block_ops.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/support/trial_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TrialBook;

const QDate kSetUpDay(2026, 3, 2);

class ProposeTrial : public ::testing::Test {
protected:
    ProposeTrial()
    {
        library = must(at.book->library().read());
        log = std::make_unique<AthleteLog>(must(readAthleteLog(at.book->database(), library, at.book.athlete())));
        Block block = must(blankBlock({.athlete = at.book.athlete(),
                                       .name = QStringLiteral("Spring"),
                                       .start = kSetUpDay,
                                       .weeks = 5,
                                       .weekdays = {1, 3, 5}}));
        const LiftLine& curl = at.book.line();
        for (PlannedWeek& week : block.weeks)
            for (PlannedDay& day : week.days)
                if (day.date.dayOfWeek() != 3)
                    day.slotList = {{.variant = curl.variant, .grip = curl.grip, .standard = curl.standard}};
        log->blocks = {{Id<Block>(1), QUuid(), block}};
        wish.trial = at.trial();
        wish.trial.days.clear();
        wish.trial.blocks = 4;
    }

    TrialBook at;
    Library library;
    std::unique_ptr<AthleteLog> log;
    TrialWish wish{.trial = {.athlete = at.book.athlete()}, .from = kSetUpDay, .today = kSetUpDay};
};

TEST_F(ProposeTrial, UsesTheWeekdaysOfTheExerciseAndPassesOverEasierWeeksAndDaysOff)
{
    ASSERT_EQ(log->blocks[0].value.weeks[4].kind, WeekKind::Deload);
    log->blocks[0].value.daysOff = {{QDate(2026, 3, 9), QDate(2026, 3, 9), QStringLiteral("fair")}};
    const ProposedTrial made = must(proposeTrial(*log, library, wish));
    EXPECT_EQ(made.weekdays, (std::vector{1, 5}));
    ASSERT_EQ(made.trial.days.size(), 8U);
    const Block& block = log->blocks[0].value;
    for (const TrialDay& day : made.trial.days) {
        EXPECT_TRUE(day.date.dayOfWeek() == 1 || day.date.dayOfWeek() == 5);
        EXPECT_FALSE(isDayOff(block, day.date));
        EXPECT_NE(weekOfBlock(block, day.date), 4U) << "the deload";
    }
    EXPECT_TRUE(validate(made.trial).empty());
    EXPECT_EQ(made.laid.laid.size() + made.laid.outside.size(), 8U);
    EXPECT_TRUE(made.laid.noTraining.empty());
    ASSERT_EQ(made.laid.blocks.size(), 1U);
    EXPECT_EQ(must(proposeTrial(*log, library, wish)).trial, made.trial) << "the same seed, the same draw";
}

TEST_F(ProposeTrial, RefusesArmsThatAreNoFairComparison)
{
    wish.trial.arms[1] = wish.trial.arms[0];
    EXPECT_FALSE(proposeTrial(*log, library, wish));
    wish.trial.arms = at.trial().arms;
    wish.trial.arms[1].band = {3, 5};
    EXPECT_FALSE(proposeTrial(*log, library, wish)) << "two things differ, and nobody says why";
    wish.trial.whyMoreThanOne = QStringLiteral("the neutral bar is too light for more");
    EXPECT_TRUE(proposeTrial(*log, library, wish));
}

TEST_F(ProposeTrial, RefusesASecondTrialOfTheExerciseWhileOneRuns)
{
    log->trials = {{Id<Trial>(1), QUuid(), at.trial()}};
    const auto refused = proposeTrial(*log, library, wish);
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().what.contains(at.trial().question));
    log->trials[0].value.ending = TrialEnding{kSetUpDay.addDays(-1), TrialEnd::Stopped, QStringLiteral("away"), {}};
    EXPECT_TRUE(proposeTrial(*log, library, wish));
}

TEST_F(ProposeTrial, NeedsWeekdaysFromSomewhere)
{
    log->blocks.clear();
    EXPECT_FALSE(proposeTrial(*log, library, wish));
    wish.weekdays = {2, 6};
    const ProposedTrial made = must(proposeTrial(*log, library, wish));
    EXPECT_EQ(made.laid.outside.size(), 8U) << "there is no plan to lay it into";
}

}  // namespace
}  // namespace steelyard
