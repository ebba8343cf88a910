#include "core/keying/keying_sheet.h"

#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::SheetSample;

const QDate kSheetDay(2027, 3, 8);

class KeyingSheets : public testing::Test {
protected:
    KeyingSheets()
    {
        sample.done(sample.curl, kSheetDay.addDays(-7), {{u"40", 10}, {u"40", 9}, {u"40", 8}});
        sample.done(sample.squat, kSheetDay.addDays(-7), {{u"80", 9}, {u"80", 8}});
        sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kSheetDay);
        plan = planKeying(sample.log.athlete.id, MassUnit::kg, kSheetDay, &*sheet);
    }
    [[nodiscard]] const LiftLine& lift(std::size_t line) const { return sample.log.lines[line].line; }
    [[nodiscard]] RecordedSet recorded(std::size_t line, int number, int reps, SetKind kind = SetKind::Work) const
    {
        SetEntry set;
        set.number = number;
        set.load = kg(u"40");
        set.reps = reps;
        set.kind = kind;
        return {Id<SetEntry>(100 + number), lift(line), set};
    }
    [[nodiscard]] KeyingSheet shown(const SessionRecord& record) const
    {
        return withRecord(plan, record, [](const LiftLine& other) {
            SheetExercise words;
            words.lift = other;
            words.exercise = QStringLiteral("described");
            return words;
        });
    }
    // "1 2* 3": the numbers of an exercise's rows, a star where the book has the set.
    static QString rowsOf(const KeyingExercise& exercise)
    {
        QStringList rows;
        for (const KeyingRow& row : exercise.rows)
            rows += QString::number(row.number) + (row.stored ? QStringLiteral("*") : QString());
        return rows.join(u' ');
    }

    SheetSample sample;
    std::optional<SessionSheet> sheet;
    KeyingSheet plan{Id<Athlete>(1), kSheetDay, MassUnit::kg, SetKind::Work, {}};
};

TEST_F(KeyingSheets, RowsAreNumberedThroughTheSessionAsOnPaper)
{
    ASSERT_EQ(plan.exercises.size(), 2U);
    EXPECT_EQ(rowsOf(plan.exercises[0]), QStringLiteral("1 2 3"));
    EXPECT_EQ(rowsOf(plan.exercises[1]), QStringLiteral("4 5"));
    EXPECT_EQ(plan.exercises[1].rows[0].number, sheet->exercises[1].firstSet);
    EXPECT_EQ(plan.nextNumber(), 6);
}

TEST_F(KeyingSheets, AsPlannedIsTheSheetsLoadAndRepetitionsAndNotWatched)
{
    const auto& first = plan.exercises[0].rows[0];
    ASSERT_TRUE(first.planned);
    EXPECT_EQ(first.planned->load, sheet->exercises[0].target.load->load);
    EXPECT_EQ(first.planned->reps, sheet->exercises[0].target.reps[0]);
    EXPECT_FALSE(first.planned->off);
    EXPECT_FALSE(first.planned->effort) << "a reserve as last time is no plan";
}

TEST_F(KeyingSheets, APlannedReserveAndTheWeeksKindArePartOfThePlan)
{
    sample.plan(kSheetDay, {sample.curl}, std::nullopt, WeekKind::Deload);
    const auto planned = buildSessionSheet(sample.log, sample.library, sample.gym, kSheetDay);
    const auto keyed = planKeying(sample.log.athlete.id, MassUnit::kg, kSheetDay, &*planned);
    EXPECT_EQ(keyed.kind, SetKind::Deload);
    ASSERT_TRUE(keyed.exercises[0].rows[0].planned);
    EXPECT_EQ(keyed.exercises[0].rows[0].planned->kind, SetKind::Deload);
    EXPECT_EQ(keyed.exercises[0].rows[0].planned->effort->repsInReserve(), 1.0);
}

TEST_F(KeyingSheets, WithoutARecordNothingCanBeTakenOver)
{
    sample.plan(kSheetDay, {sample.dumbbell});
    const auto planned = buildSessionSheet(sample.log, sample.library, sample.gym, kSheetDay);
    const auto keyed = planKeying(sample.log.athlete.id, MassUnit::kg, kSheetDay, &*planned);
    ASSERT_EQ(keyed.exercises[0].rows.size(), 3U);
    EXPECT_FALSE(keyed.exercises[0].rows[0].planned);
}

TEST_F(KeyingSheets, WithoutASheetThereAreNoRows)
{
    EXPECT_TRUE(planKeying(sample.log.athlete.id, MassUnit::lb, kSheetDay, nullptr).exercises.empty());
}

TEST_F(KeyingSheets, AStoredSetStandsInTheRowOfItsNumber)
{
    const auto sheetNow = shown({{recorded(sample.curl, 3, 7), recorded(sample.squat, 4, 9)}, {}});
    EXPECT_EQ(rowsOf(sheetNow.exercises[0]), QStringLiteral("1 2 3*"));
    EXPECT_EQ(rowsOf(sheetNow.exercises[1]), QStringLiteral("4* 5"));
    EXPECT_EQ(sheetNow.storedSets(), 2);
    EXPECT_EQ(firstOpenRow(sheetNow), (KeyingPlace{0, 0}));
    EXPECT_EQ(firstOpenRow(sheetNow, {0, 2}), (KeyingPlace{1, 1}));
}

TEST_F(KeyingSheets, AnImportedSessionWithNumbersOfItsOwnFillsTheRowsInOrder)
{
    const auto sheetNow = shown({{recorded(sample.squat, 1, 9), recorded(sample.squat, 2, 8)}, {}});
    EXPECT_EQ(rowsOf(sheetNow.exercises[1]), QStringLiteral("1* 2*"));
    EXPECT_EQ(sheetNow.exercises[1].rows[0].stored->set.reps, 9);
    EXPECT_TRUE(sheetNow.exercises[1].allStored());
}

TEST_F(KeyingSheets, MoreSetsThanWerePrintedAreRowsMore)
{
    const auto sheetNow = shown({{recorded(sample.curl, 1, 9), recorded(sample.curl, 6, 5)}, {}});
    EXPECT_EQ(rowsOf(sheetNow.exercises[0]), QStringLiteral("1* 2 3 6*")) << "a set more takes no printed row";
    EXPECT_EQ(sheetNow.nextNumber(), 7);
}

TEST_F(KeyingSheets, ASessionThatWasNumberedWithItsWarmUpsStandsInOrderAllTheSame)
{
    const auto sheetNow = shown(
        {{recorded(sample.curl, 1, 5, SetKind::WarmUp), recorded(sample.curl, 2, 9), recorded(sample.curl, 3, 8),
          recorded(sample.curl, 4, 7), recorded(sample.squat, 5, 4, SetKind::WarmUp), recorded(sample.squat, 6, 9)},
         {}});
    EXPECT_EQ(rowsOf(sheetNow.exercises[0]), QStringLiteral("1* 2* 3* 4*"));
    EXPECT_EQ(sheetNow.exercises[0].rows[0].stored->set.kind, SetKind::WarmUp);
    EXPECT_TRUE(sheetNow.exercises[0].rows[1].planned) << "the first printed row has the first working set";
    EXPECT_EQ(rowsOf(sheetNow.exercises[1]), QStringLiteral("5* 6* 5"));
}

TEST_F(KeyingSheets, AWarmUpThatWasKeyedIntoARowStaysThere)
{
    const auto sheetNow = shown({{recorded(sample.curl, 2, 5, SetKind::WarmUp)}, {}});
    EXPECT_EQ(rowsOf(sheetNow.exercises[0]), QStringLiteral("1 2* 3"));
}

TEST_F(KeyingSheets, ALiftThatIsNotOnTheSheetIsAnExerciseMore)
{
    ExerciseRating rating;
    rating.pump = 8;
    const auto sheetNow = shown({{recorded(sample.pulldown, 7, 12)}, {{lift(sample.pulldown), rating}}});
    ASSERT_EQ(sheetNow.exercises.size(), 3U);
    EXPECT_EQ(sheetNow.exercises[2].words.exercise, QStringLiteral("described"));
    EXPECT_EQ(rowsOf(sheetNow.exercises[2]), QStringLiteral("7*"));
    EXPECT_EQ(sheetNow.exercises[2].rating, rating);
}

TEST_F(KeyingSheets, ASetMoreTakesTheNextNumberAndThePlanOfTheLast)
{
    KeyingSheet more = plan;
    addRow(more, plan, 0);
    EXPECT_EQ(rowsOf(more.exercises[0]), QStringLiteral("1 2 3 6"));
    EXPECT_EQ(more.exercises[0].rows[3].planned->load, more.exercises[0].rows[2].planned->load);
}

TEST_F(KeyingSheets, AnAddedExerciseGoesOnNumbering)
{
    const SheetEquipment equipment(sample.gym, MassUnit::kg);
    sample.done(sample.pulldown, kSheetDay.addDays(-3), {{u"50", 10}, {u"50", 9}});
    const auto words = buildSheetExercise(sample.log, sample.library, equipment, lift(sample.pulldown), kSheetDay);
    ASSERT_TRUE(words);
    KeyingSheet more = plan;
    EXPECT_EQ(addExercise(more, plan, *words), 2U);
    EXPECT_EQ(rowsOf(more.exercises[2]), QStringLiteral("6 7"));
    EXPECT_EQ(more.exercises[2].rows[0].planned->load, kg(u"50"));
}

TEST_F(KeyingSheets, AnotherLiftTakesTheRowsThatAreLeftAndTheSetsStayWhereTheyWereDone)
{
    const auto before = shown({{recorded(sample.curl, 1, 9)}, {}});
    SheetExercise other;
    other.lift = lift(sample.pulldown);
    EXPECT_EQ(changeLift(plan, before, 0, other), 1U);
    const auto after = shown({{recorded(sample.curl, 1, 9)}, {}});
    ASSERT_EQ(after.exercises.size(), 3U);
    EXPECT_EQ(rowsOf(after.exercises[0]), QStringLiteral("1*"));
    EXPECT_EQ(after.exercises[1].lift, lift(sample.pulldown));
    EXPECT_EQ(rowsOf(after.exercises[1]), QStringLiteral("2 3"));
}

TEST_F(KeyingSheets, AnotherLiftBeforeTheFirstSetTakesTheWholeExercise)
{
    SheetExercise other;
    other.lift = lift(sample.pulldown);
    EXPECT_EQ(changeLift(plan, shown({}), 0, other), 0U);
    ASSERT_EQ(plan.exercises.size(), 2U);
    EXPECT_EQ(plan.exercises[0].lift, lift(sample.pulldown));
    EXPECT_EQ(rowsOf(plan.exercises[0]), QStringLiteral("1 2 3"));
}

TEST_F(KeyingSheets, ALiftThatStandsTwiceIsRatedOnceAfterItsLast)
{
    plan.exercises.push_back(plan.exercises[0]);
    EXPECT_FALSE(plan.ratesAfter(0));
    EXPECT_TRUE(plan.ratesAfter(1));
    EXPECT_TRUE(plan.ratesAfter(2));
}

}  // namespace
}  // namespace steelyard
