#include "core/sheets/session_sheet.h"

#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::SheetSample;

const QDate kMonday(2027, 3, 8);

TEST(SessionSheet, TakesTheExercisesOfTheLatestSessionOnThatWeekday)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-14), {{u"40", 10}});
    sample.done(sample.squat, kMonday.addDays(-7), {{u"60", 10}});
    sample.done(sample.pulldown, kMonday.addDays(-2), {{u"50", 10}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->source, SheetSource::SameWeekday);
    EXPECT_EQ(sheet->takenFrom, kMonday.addDays(-7));
    ASSERT_EQ(sheet->exercises.size(), 1U);
    EXPECT_EQ(sheet->exercises[0].exercise, QStringLiteral("Squat"));
}

TEST(SessionSheet, TakesTheLatestSessionWhenTheWeekdayIsOlderThanFiveWeeks)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-42), {{u"40", 10}});
    sample.done(sample.pulldown, kMonday.addDays(-9), {{u"50", 10}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->source, SheetSource::LatestSession);
    EXPECT_EQ(sheet->exercises.at(0).exercise, QStringLiteral("Pulldown"));
}

TEST(SessionSheet, NobodyWithoutAPlanAndASessionGetsOne)
{
    SheetSample sample;
    EXPECT_FALSE(buildSessionSheet(sample.log, sample.library, sample.gym, kMonday));
    sample.done(sample.curl, kMonday, {{u"40", 10}});
    EXPECT_FALSE(buildSessionSheet(sample.log, sample.library, sample.gym, kMonday))
        << "the day itself is no record yet";
}

TEST(SessionSheet, ThePlannedDayGoesBeforeTheWeekday)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}});
    sample.plan(kMonday, {sample.squat, sample.dumbbell});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->source, SheetSource::PlannedDay);
    EXPECT_EQ(sheet->title, QStringLiteral("Day A"));
    ASSERT_EQ(sheet->exercises.size(), 2U);
    EXPECT_FALSE(sheet->exercises[0].target.load) << "there is no comparable record to take a load from";
    EXPECT_FALSE(sheet->exercises[0].toBeat);
    EXPECT_EQ(sheet->exercises[0].target.reserve, 1.0);
    EXPECT_TRUE(sheet->exercises[0].target.reservePlanned);
}

TEST(SessionSheet, TheResultToBeatHoldsCountedRepetitionsOfWorkingSetsOnly)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-14), {{u"40", 12}, {u"40", 12}});
    sample.done(sample.curl, kMonday.addDays(-7),
                {{u"20", 8, 0, 5.0, SetKind::WarmUp}, {u"40", 10, 3}, {u"40", 9, std::nullopt}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.at(0).toBeat);
    const ResultToBeat& best = *sheet->exercises[0].toBeat;
    EXPECT_EQ(best.date, kMonday.addDays(-7));
    EXPECT_EQ(best.sets, (std::vector<SheetResult>{{kg(u"40"), 7, true}, {kg(u"40"), 9, false}}));
}

TEST(SessionSheet, ADeloadIsNothingToBeat)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-14), {{u"40", 10}});
    sample.done(sample.curl, kMonday.addDays(-7), {{u"30", 8, 0, 5.0, SetKind::Deload}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.at(0).toBeat);
    EXPECT_EQ(sheet->exercises[0].toBeat->date, kMonday.addDays(-14));
    EXPECT_EQ(sheet->exercises[0].target.load->load, kg(u"40"));
}

TEST(SessionSheet, AFullBandTakesTheNextLoadThatThisGymCanSetWithItsPlates)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 12}, {u"40", 12}, {u"40", 12}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.at(0).target.load);
    const SheetTarget& target = sheet->exercises[0].target;
    EXPECT_EQ(target.load->load, kg(u"42.5"));
    EXPECT_EQ(target.load->plates, (std::vector{kg(u"10"), kg(u"1.25")}));
    EXPECT_EQ(target.load->bar, kg(u"20"));
    EXPECT_EQ(target.reps, (std::vector{8, 8, 8}));
}

TEST(SessionSheet, APlannedLoadThatTheGymCantMakeGivesItsNeighbours)
{
    SheetSample sample;
    sample.plan(kMonday, {sample.curl}, kg(u"43"));
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.at(0).target.load);
    const SheetLoad& load = *sheet->exercises[0].target.load;
    EXPECT_FALSE(load.exact);
    EXPECT_EQ(load.asked, kg(u"43"));
    EXPECT_EQ(load.below, kg(u"42.5"));
    EXPECT_EQ(load.above, kg(u"45"));
    EXPECT_EQ(load.load, kg(u"42.5"));
}

TEST(SessionSheet, ADeloadWeekIsLighterAndAsksForNothingMore)
{
    SheetSample sample;
    sample.done(sample.squat, kMonday.addDays(-7), {{u"100", 12}, {u"100", 12}, {u"100", 12}});
    sample.plan(kMonday, {sample.squat}, std::nullopt, WeekKind::Deload);
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.at(0).target.load);
    EXPECT_EQ(sheet->exercises[0].target.load->load, kg(u"90"));
    EXPECT_FALSE(sheet->exercises[0].afterwards);
}

TEST(SessionSheet, AfterThreeWeeksAwayTheTargetIsAStepLighter)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-21), {{u"40", 12}, {u"40", 12}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.at(0).target.load);
    EXPECT_EQ(sheet->exercises[0].target.load->load, kg(u"37.5"));
    EXPECT_EQ(sheet->cautions.at(0).kind, CautionKind::AfterBreak);
}

TEST(SessionSheet, RowsAreNumberedThroughTheSession)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}, {u"40", 10}, {u"40", 9}});
    sample.done(sample.squat, kMonday.addDays(-7), {{u"60", 8}, {u"60", 8}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.size() == 2);
    EXPECT_EQ(sheet->exercises[0].firstSet, 1);
    EXPECT_EQ(sheet->exercises[0].sets, 3);
    EXPECT_EQ(sheet->exercises[1].firstSet, 4);
    EXPECT_EQ(sheet->exercises[1].sets, 2);
}

TEST(SessionSheet, TheSameLifterAndDayGiveTheSameId)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}});
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    EXPECT_EQ(sheet->sheetId, QStringLiteral("04HTQK-1DBM4"));
    sample.log.athlete.value.name = QStringLiteral("Another Name");
    EXPECT_EQ(buildSessionSheet(sample.log, sample.library, sample.gym, kMonday)->sheetId, sheet->sheetId)
        << "a changed name leaves printed sheets good";
}

TEST(SessionSheet, APlannedDaySaysWhichWeekOfItsBlockItIs)
{
    SheetSample sample;
    sample.plan(kMonday, {sample.squat});
    auto& weeks = sample.log.blocks.front().value.weeks;
    sample.log.blocks.front().value.start = kMonday.addDays(-7);
    weeks.insert(weeks.begin(), PlannedWeek());
    weeks.emplace_back();
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->place, (PlaceInBlock{2, 3}));
    sample.log.blocks.clear();
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}});
    EXPECT_FALSE(buildSessionSheet(sample.log, sample.library, sample.gym, kMonday)->place);
}

TEST(SessionSheet, ExercisesOfOneSupersetAreNamedAsTurnsInTheOrderTheyCome)
{
    SheetSample sample;
    sample.plan(kMonday, {sample.squat, sample.curl, sample.pulldown, sample.dumbbell, sample.curl});
    auto& slotList = sample.log.blocks.front().value.weeks.front().days.front().slotList;
    for (std::size_t i = 0; i < slotList.size(); ++i) slotList[i].superset = std::array{7, 3, 3, 2, 2}[i];
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_TRUE(sheet && sheet->exercises.size() == 5);
    QStringList turns;
    for (const SheetExercise& exercise : sheet->exercises) turns += exercise.turn;
    EXPECT_EQ(turns, (QStringList{QString(), QStringLiteral("A1"), QStringLiteral("A2"), QStringLiteral("B1"),
                                  QStringLiteral("B2")}))
        << "one exercise alone with its number is no turn";
}

bool cautions(const SessionSheet& sheet, CautionKind kind)
{
    return std::ranges::any_of(sheet.cautions, [&](const SheetCaution& c) { return c.kind == kind; });
}

TEST(SheetCautions, DiscomfortOfFourOrMoreIsNamedWithItsDayForTwoWeeks)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}}).rating.discomfort[0] = 4;
    const auto soon = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
    ASSERT_EQ(soon->cautions.size(), 1U);
    EXPECT_EQ(soon->cautions[0], (SheetCaution{CautionKind::Discomfort, Joint::Elbow, 4, kMonday.addDays(-7), 0}));
    const auto later = buildSessionSheet(sample.log, sample.library, sample.gym, kMonday.addDays(8));
    EXPECT_FALSE(cautions(*later, CautionKind::Discomfort));
}

TEST(SheetCautions, ALaterLowRatingTakesTheCautionBack)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-10), {{u"40", 10}}).rating.discomfort[0] = 6;
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}}).rating.discomfort[0] = 1;
    EXPECT_FALSE(
        cautions(*buildSessionSheet(sample.log, sample.library, sample.gym, kMonday), CautionKind::Discomfort));
}

TEST(SheetCautions, AgeIsNeverInferred)
{
    SheetSample sample;
    sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}});
    const auto under18 = [&] {
        return cautions(*buildSessionSheet(sample.log, sample.library, sample.gym, kMonday), CautionKind::Under18);
    };
    EXPECT_FALSE(under18());
    sample.log.athlete.value.born = kMonday.addYears(-18).addDays(1);
    EXPECT_TRUE(under18());
    sample.log.athlete.value.born = kMonday.addYears(-18);
    EXPECT_FALSE(under18());
}

TEST(SheetCautions, OnlyAHeavyBarAsksForASpotter)
{
    SheetSample sample;
    sample.done(sample.pulldown, kMonday.addDays(-7), {{u"90", 10}});
    EXPECT_FALSE(cautions(*buildSessionSheet(sample.log, sample.library, sample.gym, kMonday), CautionKind::HeavyBar));
    sample.done(sample.squat, kMonday.addDays(-7), {{u"60", 10}});
    EXPECT_TRUE(cautions(*buildSessionSheet(sample.log, sample.library, sample.gym, kMonday), CautionKind::HeavyBar));
}

}  // namespace
}  // namespace steelyard
