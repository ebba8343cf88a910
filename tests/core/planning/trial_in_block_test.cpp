// Where a trial's sessions stand among the planned days, and what becomes of the plan when they move or end.
#include "core/planning/trial_in_block.h"

#include "core/planning/block_ops.h"
#include "tests/support/trial_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TrialBook;

const QDate kTrialMonday(2026, 3, 2);

// Three weeks of Mondays and Thursdays, the last one easier: the curl second of two lifts, with rest and a note.
class TrialInBlock : public ::testing::Test {
protected:
    TrialInBlock() : rowing(slotOn(at.book.line())), curl(rowing)
    {
        auto tx = must(Transaction::begin(at.book->database()));
        const auto row = must(at.book->library().insert(tx, Exercise{QStringLiteral("Row"), {}, false}));
        Variant variant{.exercise = row};
        variant.name = QStringLiteral("seated");
        rowing.variant = must(at.book->library().insert(tx, variant));
        RepStandard standard{.variant = rowing.variant};
        standard.name = QStringLiteral("strict");
        rowing.standard = must(at.book->library().insert(tx, standard));
        must(tx.commit());
        library = must(at.book->library().read());

        curl.sets = 5;
        curl.restSeconds = 150;
        curl.note = QStringLiteral("mirror");
        curl.progression = QStringLiteral("hold");
        curl.load = Load::parseWithUnit(u"30 kg");
        curl.loadLocked = true;
        blocks = {{Id<Block>(1), QUuid(), laidOut()}};
    }
    static Slot slotOn(const LiftLine& line)
    {
        return {.variant = line.variant, .grip = line.grip, .standard = line.standard};
    }
    [[nodiscard]] Block laidOut() const
    {
        Block block = must(blankBlock({.athlete = at.book.athlete(),
                                       .name = QStringLiteral("Spring"),
                                       .start = kTrialMonday,
                                       .weeks = 3,
                                       .weekdays = {1, 4}}));
        for (PlannedWeek& week : block.weeks)
            for (PlannedDay& day : week.days) day.slotList = {rowing, curl};
        return block;
    }
    [[nodiscard]] TrialGround ground(QDate from = kTrialMonday) const { return {blocks, library, {1, 4}, from}; }
    static const PlannedDay* dayIn(const Block& block, QDate date)
    {
        const auto place = dayOn(block, date);
        return place ? &block.weeks[place->week].days[place->day] : nullptr;
    }

    TrialBook at;
    Slot rowing;
    Slot curl;
    Library library;
    std::vector<Row<Block>> blocks;
};

TEST_F(TrialInBlock, PutsTheArmOfTheDayFirstInThePlaceOfTheSameExercise)
{
    Trial trial = at.trial();
    trial.sets = 4;
    trial.plannedRir = Decimal(1);
    trial.arms[1].band = {6, 9};
    const LaidTrial laid = layTrial(ground(), trial);
    ASSERT_EQ(laid.blocks.size(), 1U);
    EXPECT_EQ(laid.laid.size(), 4U);
    EXPECT_TRUE(isLaidOutWell(laid.blocks[0].value));
    EXPECT_TRUE(validate(laid.blocks[0].value).empty());
    for (const TrialDay& day : trial.days) {
        const PlannedDay* planned = dayIn(laid.blocks[0].value, day.date);
        ASSERT_TRUE(planned);
        ASSERT_EQ(planned->slotList.size(), 2U);
        const Slot& first = planned->slotList[0];
        EXPECT_EQ(first.grip, trial.arms[day.arm].grip);
        EXPECT_EQ(first.band, trial.arms[day.arm].band);
        EXPECT_EQ(first.sets, 4);
        EXPECT_EQ(first.plannedRir, Decimal(1));
        EXPECT_EQ(first.restSeconds, 150);
        EXPECT_EQ(first.note, QStringLiteral("mirror"));
        EXPECT_EQ(first.progression, QStringLiteral("hold"));
        EXPECT_FALSE(first.load);
        EXPECT_FALSE(first.loadLocked);
        EXPECT_EQ(planned->slotList[1], rowing);
    }
    // The week without a session of the trial is as it was.
    EXPECT_EQ(laid.blocks[0].value.weeks[2], blocks[0].value.weeks[2]);
}

TEST_F(TrialInBlock, ChangesNothingWhenItIsLaidAgain)
{
    const auto once = layTrial(ground(), at.trial());
    blocks = once.blocks;
    EXPECT_TRUE(layTrial(ground(), at.trial()).blocks.empty());
}

TEST_F(TrialInBlock, TakesNoSecondSlotOfTheExerciseAndLeavesNoSupersetOfOne)
{
    Slot other = curl;
    other.grip = at.neutral.grip;
    other.superset = 1;
    auto& slotList = blocks[0].value.weeks[0].days[0].slotList;
    slotList = {rowing, curl, other};
    slotList[0].superset = 1;
    const auto laid = layTrial(ground(), at.trial());
    const PlannedDay* day = dayIn(laid.blocks[0].value, kTrialMonday);
    ASSERT_EQ(day->slotList.size(), 2U);
    EXPECT_EQ(day->slotList[1].superset, 0);
}

TEST_F(TrialInBlock, AddsADayOnlyOnATrainingWeekdayAndSaysWhatItCouldNotDo)
{
    Trial trial = at.trial();
    trial.days[0].date = QDate(2026, 3, 3);  // a Tuesday
    trial.days[1].date = QDate(2026, 3, 5);  // its day was dropped from the plan
    trial.days[2].date = QDate(2026, 3, 9);  // a day off
    trial.days[3].date = QDate(2026, 4, 2);  // after the block
    trial.days.push_back({QDate(2026, 4, 9), 3, 0});
    blocks[0].value.weeks[0].days.pop_back();
    blocks[0].value.daysOff = {{QDate(2026, 3, 9), QDate(2026, 3, 10), QStringLiteral("fair")}};
    const auto laid = layTrial(ground(), trial);
    EXPECT_EQ(laid.noTraining, std::vector{QDate(2026, 3, 3)});
    EXPECT_EQ(laid.laid, std::vector{QDate(2026, 3, 5)});
    EXPECT_EQ(laid.daysOff, std::vector{QDate(2026, 3, 9)});
    EXPECT_EQ(laid.outside, (std::vector{QDate(2026, 4, 2), QDate(2026, 4, 9)}));
    ASSERT_EQ(laid.blocks.size(), 1U);
    const PlannedDay* added = dayIn(laid.blocks[0].value, QDate(2026, 3, 5));
    ASSERT_TRUE(added);
    EXPECT_EQ(added->slotList.size(), 1U);
    EXPECT_TRUE(isLaidOutWell(laid.blocks[0].value));
}

TEST_F(TrialInBlock, SaysWhichSessionsLieInAnEasierWeekAndLeavesThePastAlone)
{
    Trial trial = at.trial();
    trial.days[3].date = QDate(2026, 3, 16);
    const auto laid = layTrial(ground(QDate(2026, 3, 9)), trial);
    EXPECT_EQ(laid.laid, (std::vector{QDate(2026, 3, 9), QDate(2026, 3, 16)}));
    EXPECT_EQ(laid.easier, std::vector{QDate(2026, 3, 16)});
    EXPECT_EQ(laid.blocks[0].value.weeks[0], blocks[0].value.weeks[0]);
}

TEST_F(TrialInBlock, FollowsAMovedSessionAndGivesTheOldDayWhatTheNewOneHad)
{
    const Trial before = at.trial();
    blocks = layTrial(ground(), before).blocks;
    Trial after = before;
    after.days[3].date = QDate(2026, 3, 16);
    const auto laid = relayTrial(ground(), before, after);
    ASSERT_EQ(laid.blocks.size(), 1U);
    const Block& block = laid.blocks[0].value;
    EXPECT_EQ(dayIn(block, QDate(2026, 3, 16))->slotList[0].sets, before.sets);
    const PlannedDay* old = dayIn(block, QDate(2026, 3, 12));
    ASSERT_TRUE(old);
    EXPECT_EQ(old->slotList, (std::vector{curl, rowing}));
    // Days whose sessions stay are as they were.
    EXPECT_EQ(block.weeks[0], blocks[0].value.weeks[0]);
}

TEST_F(TrialInBlock, LeavesNoSupersetOfOneWhereASessionIsMovedAway)
{
    const Trial before = at.trial();
    blocks = layTrial(ground(), before).blocks;
    // The trial's lift stands alone; the coach has put both in turns all the same.
    PlannedDay& day = blocks[0].value.weeks[1].days[1];
    ASSERT_EQ(day.date, QDate(2026, 3, 12));
    ASSERT_EQ(day.slotList.size(), 2U);
    for (Slot& slot : day.slotList) {
        EXPECT_EQ(slot.superset, 0);
        slot.superset = 1;
    }
    Trial after = before;
    after.days[3].date = QDate(2026, 3, 16);
    const auto laid = relayTrial(ground(), before, after);
    for (const Slot& slot : dayIn(laid.blocks[0].value, QDate(2026, 3, 12))->slotList) EXPECT_EQ(slot.superset, 0);
}

TEST_F(TrialInBlock, DropsADayThatHadNothingButTheMovedSession)
{
    const Trial before = at.trial();
    blocks[0].value.weeks[1].days.pop_back();
    blocks = layTrial(ground(), before).blocks;
    ASSERT_EQ(dayIn(blocks[0].value, QDate(2026, 3, 12))->slotList.size(), 1U);
    Trial after = before;
    after.days[3].date = QDate(2026, 4, 2);
    const auto laid = relayTrial(ground(), before, after);
    EXPECT_FALSE(dayIn(laid.blocks[0].value, QDate(2026, 3, 12)));
    EXPECT_EQ(laid.outside, std::vector{QDate(2026, 4, 2)});
}

TEST_F(TrialInBlock, CarriesTheChoiceIntoWhatRemainsWithoutAForeignLoad)
{
    const auto carried = carryChoice(ground(QDate(2026, 3, 9)), at.trial(), 1);
    ASSERT_EQ(carried.blocks.size(), 1U);
    const Block& block = carried.blocks[0].value;
    EXPECT_EQ(block.weeks[0], blocks[0].value.weeks[0]);
    for (const std::size_t week : {1U, 2U})
        for (const PlannedDay& day : block.weeks[week].days) {
            EXPECT_EQ(day.slotList[0], rowing);
            EXPECT_EQ(day.slotList[1].grip, at.neutral.grip);
            EXPECT_EQ(day.slotList[1].sets, curl.sets);
            EXPECT_FALSE(day.slotList[1].load);
        }
    // The lift that was planned anyway stays as it is, load and all.
    EXPECT_TRUE(carryChoice(ground(), at.trial(), 0).blocks.empty());
}

}  // namespace
}  // namespace steelyard
