// Moving and marking the sessions of a running trial never touches the order that was drawn.
#include "core/planning/trial_days.h"

#include "tests/support/trial_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TrialBook;

const std::vector<Row<Block>> kNoBlocks;

std::vector<std::size_t> armsInOrder(const Trial& trial)
{
    std::vector<std::size_t> arms;
    for (const TrialDay& day : trial.days) arms.push_back(day.arm);
    return arms;
}

TEST(TrialDays, MoveOnTogetherWhenOneComesTooNearAndKeepTheirOrder)
{
    const TrialBook at;
    Trial trial = at.trial();
    trial.daysBetween = 3;
    const Trial after = must(moveTrialSession(trial, 1, QDate(2026, 3, 9), {kNoBlocks, {1, 4}}));
    EXPECT_EQ(after.days[0].date, QDate(2026, 3, 2));
    EXPECT_EQ(after.days[1].date, QDate(2026, 3, 9));
    EXPECT_EQ(after.days[2].date, QDate(2026, 3, 12));
    EXPECT_EQ(after.days[3].date, QDate(2026, 3, 16));
    EXPECT_EQ(armsInOrder(after), armsInOrder(trial));
    EXPECT_TRUE(validate(after).empty());
}

TEST(TrialDays, StayWhereThereIsRoomEnough)
{
    const TrialBook at;
    const Trial trial = at.trial();
    const Trial after = must(moveTrialSession(trial, 1, QDate(2026, 3, 6), {kNoBlocks, {1, 4}}));
    EXPECT_EQ(after.days[2], trial.days[2]);
    EXPECT_EQ(after.days[3], trial.days[3]);
}

TEST(TrialDays, AreNotMovedBeforeTheirForerunnerOrAfterTheEnd)
{
    const TrialBook at;
    Trial trial = at.trial();
    EXPECT_FALSE(moveTrialSession(trial, 1, QDate(2026, 3, 3), {kNoBlocks, {1, 4}}));
    EXPECT_FALSE(moveTrialSession(trial, 9, QDate(2026, 3, 3), {kNoBlocks, {1, 4}}));
    EXPECT_FALSE(moveTrialSession(trial, 1, QDate(), {kNoBlocks, {1, 4}}));
    trial.ending = TrialEnding{QDate(2026, 3, 12), TrialEnd::Concluded, {}, 0};
    EXPECT_FALSE(moveTrialSession(trial, 1, QDate(2026, 3, 6), {kNoBlocks, {1, 4}}));
    EXPECT_FALSE(markTrialSessionMissed(trial, 1, true));
}

TEST(TrialDays, PassOverDaysOffAndEasierWeeks)
{
    const TrialBook at;
    Block block{.athlete = at.book.athlete()};
    block.start = QDate(2026, 3, 2);
    block.weeks = {{WeekKind::Normal, {{QDate(2026, 3, 4), {}, {}}}}, {WeekKind::Deload, {}}, {WeekKind::Normal, {}}};
    block.daysOff = {{QDate(2026, 3, 16), QDate(2026, 3, 16), {}}};
    const std::vector<Row<Block>> blocks{{Id<Block>(1), QUuid(), block}};
    const TrainingCalendar calendar{blocks, {1, 4}};
    EXPECT_TRUE(isTrialDay(calendar, QDate(2026, 3, 2)));
    EXPECT_TRUE(isTrialDay(calendar, QDate(2026, 3, 4)));  // planned, though no usual weekday
    EXPECT_FALSE(isTrialDay(calendar, QDate(2026, 3, 3)));
    EXPECT_FALSE(isTrialDay(calendar, QDate(2026, 3, 9)));   // an easier week
    EXPECT_FALSE(isTrialDay(calendar, QDate(2026, 3, 16)));  // a day off
    EXPECT_TRUE(isTrialDay(calendar, QDate(2026, 3, 23)));   // after the block
    Trial trial = at.trial();
    const Trial after = must(moveTrialSession(trial, 1, QDate(2026, 3, 8), calendar));
    EXPECT_EQ(after.days[2].date, QDate(2026, 3, 19));
}

TEST(TrialDays, AreMarkedAsMissedOrAsDoneOtherwiseButNeverBoth)
{
    const TrialBook at;
    const Trial done = must(markTrialSessionDone(at.trial(), 1, 0));
    EXPECT_EQ(done.days[1].armDone, 0U);
    const Trial missed = must(markTrialSessionMissed(done, 1, true));
    EXPECT_TRUE(missed.days[1].missed);
    EXPECT_FALSE(missed.days[1].armDone);
    EXPECT_FALSE(must(markTrialSessionDone(missed, 1, 1)).days[1].missed);
    EXPECT_FALSE(markTrialSessionDone(missed, 1, 2));
    EXPECT_EQ(must(noteTrialSession(at.trial(), 0, QStringLiteral(" late "))).days[0].note, QStringLiteral("late"));
}

}  // namespace
}  // namespace steelyard
