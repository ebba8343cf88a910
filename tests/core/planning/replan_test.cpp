#include "core/planning/replan.h"

#include "core/flags/actions.h"
#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::SheetSample;

const QDate kToday(2027, 3, 3);  // a Wednesday
const QDate kStart(2027, 3, 1);

// Curl on Mondays and Thursdays, squat on Mondays, pulldown on Thursdays; four weeks, the last one easier.
class Replanning : public testing::Test {
protected:
    SheetSample sample;

    Replanning()
    {
        Block block{sample.log.athlete.id, QStringLiteral("Spring"), {}, kStart, {}};
        for (int week = 0; week < 4; ++week) {
            PlannedWeek planned{week == 3 ? WeekKind::Deload : WeekKind::Normal, {}};
            planned.days.push_back(dayOf(kStart.addDays(7 * week), {sample.curl, sample.squat}, week == 3));
            planned.days.push_back(dayOf(kStart.addDays(7 * week + 3), {sample.curl, sample.pulldown}, week == 3));
            block.weeks.push_back(planned);
        }
        sample.log.blocks.push_back({Id<Block>(9), {}, block});
    }

    [[nodiscard]] PlannedDay dayOf(QDate date, const std::vector<std::size_t>& lines, bool easier) const
    {
        PlannedDay day{date, {}, {}};
        for (const std::size_t line : lines) {
            const LiftLine& lift = sample.log.lines[line].line;
            Slot slot{lift.variant, lift.grip, lift.standard};
            slot.sets = easier ? 2 : 3;
            slot.band = {8, 12};
            slot.plannedRir = Decimal(easier ? 4 : 2);
            day.slotList.push_back(slot);
        }
        return day;
    }

    [[nodiscard]] Block& block() { return sample.log.blocks.front().value; }
    [[nodiscard]] Slot& slot(std::size_t week, std::size_t day, std::size_t place)
    {
        return block().weeks[week].days[day].slotList[place];
    }
    [[nodiscard]] ReplanInput about(std::optional<std::size_t> line, const char16_t* action) const
    {
        std::optional<LiftLine> lift;
        if (line) lift = sample.log.lines[*line].line;
        return {sample.log, sample.library, lift, QString::fromUtf16(action), kToday};
    }
    // A grip, variant or standard more in the library.
    Id<Grip> addGrip(const QString& name, HandOrientation orientation)
    {
        const Id<Grip> id(100 + std::ssize(sample.library.grips));
        sample.library.grips.push_back({id, {}, {name, orientation, {}, {}}});
        return id;
    }
    Id<Variant> addVariant(const QString& name, bool withStandard = true)
    {
        const Id<Variant> id(100 + std::ssize(sample.library.variants));
        Variant variant{sample.library.variants[sample.curl].value.exercise, name};
        variant.usualGrip = addGrip(name + QStringLiteral(" grip"), HandOrientation::Neutral);
        sample.library.variants.push_back({id, {}, variant});
        if (withStandard) {
            RepStandard standard{id, {}, QStringLiteral("strict")};
            standard.isDefault = true;
            sample.library.standards.push_back({Id<RepStandard>(id.value()), {}, standard});
        }
        return id;
    }
};

constexpr ReplanChoice kOneWeek{.scope = ReplanScope::NextWeek};
constexpr ReplanChoice kToTheEnd{.scope = ReplanScope::RestOfBlock};

TEST_F(Replanning, ASetLessForAWeekChangesTheSevenDaysFromTheNextPlannedOneAndNothingElse)
{
    const Replan plan = replan(about(sample.curl, u"drop_set"), kOneWeek);
    ASSERT_EQ(plan.outcome, ReplanOutcome::Changed);
    EXPECT_EQ(plan.id, Id<Block>(9));
    const Slot before = slot(0, 1, 0);
    Slot after = before;
    after.sets = 2;
    const std::vector<PlannedChange> expected{{QDate(2027, 3, 4), before, QDate(2027, 3, 4), after},
                                              {QDate(2027, 3, 8), before, QDate(2027, 3, 8), after}};
    EXPECT_EQ(plan.changes, expected);
    slot(0, 1, 0).sets = 2;
    slot(1, 0, 0).sets = 2;
    EXPECT_EQ(plan.block, block()) << "neighbour weeks, other lifts and the days before today are as they were";
}

TEST_F(Replanning, ASetMoreToTheEndLeavesTheEasierWeekAlone)
{
    const Replan plan = replan(about(sample.curl, u"add_set"), kToTheEnd);
    ASSERT_EQ(plan.changes.size(), 5U);
    EXPECT_EQ(plan.changes.back().dayBefore, QDate(2027, 3, 18));
    for (const PlannedChange& change : plan.changes) EXPECT_EQ(change.after.sets, 4);
    EXPECT_EQ(plan.block->weeks[3], block().weeks[3]);
}

TEST_F(Replanning, TheLastSetIsNeverTakenOut)
{
    slot(0, 1, 0).sets = 1;
    slot(1, 0, 0).sets = 1;
    const Replan plan = replan(about(sample.curl, u"drop_set"), kOneWeek);
    EXPECT_EQ(plan.outcome, ReplanOutcome::NothingToChange);
    EXPECT_TRUE(plan.isForSheet());
}

TEST_F(Replanning, AHeldLoadIsTheWorkingLoadOfTheLastComparableSession)
{
    sample.done(sample.curl, kToday.addDays(-9), {{u"37.5", 12}});
    sample.done(sample.curl, kToday.addDays(-2), {{u"20", 5, 0, 5.0, SetKind::WarmUp}, {u"40", 9}, {u"40", 8}});
    sample.done(sample.curl, kToday.addDays(2), {{u"90", 9}});
    const Replan plan = replan(about(sample.curl, u"hold_load"), kOneWeek);
    ASSERT_EQ(plan.changes.size(), 2U);
    EXPECT_FALSE(plan.changes[0].before.load);
    EXPECT_EQ(plan.changes[0].after.load, kg(u"40"));
    EXPECT_EQ(plan.changes[1].after.load, kg(u"40"));
}

TEST_F(Replanning, ForTheWholeLifterEveryExerciseWithARecordIsHeld)
{
    sample.done(sample.curl, kToday.addDays(-2), {{u"40", 9}});
    sample.done(sample.squat, kToday.addDays(-2), {{u"100", 9}});
    const Replan plan = replan(about(std::nullopt, u"hold_load"), kOneWeek);
    ASSERT_EQ(plan.changes.size(), 3U);
    EXPECT_EQ(plan.changes[2].after.load, kg(u"100"));
    EXPECT_EQ(plan.block->weeks[0].days[1].slotList[1], slot(0, 1, 1)) << "the pulldown has no record to hold";
}

TEST_F(Replanning, NearerToFailureIsOneLessInReserveDownToNone)
{
    slot(1, 0, 0).plannedRir = Decimal::parse(u"0.5");
    slot(1, 1, 0).plannedRir = Decimal(0);
    slot(2, 0, 0).plannedRir.reset();
    const Replan plan = replan(about(sample.curl, u"harder_sets"), kToTheEnd);
    ASSERT_EQ(plan.changes.size(), 4U) << "none in reserve stays none";
    EXPECT_EQ(plan.changes[0].after.plannedRir, Decimal(1));
    EXPECT_TRUE(plan.changes[1].after.plannedRir->isZero());
    EXPECT_EQ(plan.changes[2].dayBefore, QDate(2027, 3, 15));
    EXPECT_EQ(plan.changes[2].after.plannedRir, Decimal(kReserveNearFailure));
}

TEST_F(Replanning, AnotherBandIsTheNextHigherOneUnlessChosenAndDropsThePlannedLoad)
{
    slot(0, 1, 0).load = kg(u"40");
    const Replan plan = replan(about(sample.curl, u"change_band"), kOneWeek);
    ASSERT_EQ(plan.changes.size(), 2U);
    EXPECT_EQ(plan.changes[0].after.band, (RepBand{12, 15}));
    EXPECT_FALSE(plan.changes[0].after.load);
    const Replan chosen = replan(about(sample.curl, u"change_band"), {.band = RepBand{5, 8}});
    EXPECT_EQ(chosen.changes.at(0).after.band, (RepBand{5, 8}));
    const auto choices = choicesFor(about(sample.curl, u"change_band"));
    ASSERT_EQ(choices.size(), 5U) << "the band of now is no choice";
    EXPECT_EQ(choices[1].band, (RepBand{5, 8}));
}

TEST_F(Replanning, ABandThatTheLifterRatedBetterComesFirst)
{
    const auto rated = [&](int daysAgo, const char16_t* load, int reps, int tension, const char* gaveOut) {
        sample.done(sample.curl, kToday.addDays(-daysAgo), {{load, reps}});
        ExerciseRating& rating = sample.log.lines[sample.curl].exposures.back().rating;
        rating.tension = tension;
        rating.gaveOut = QString::fromLatin1(gaveOut);
    };
    for (int i = 0; i < 4; ++i) rated(60 - i, u"55", 5, 8, "target");
    for (int i = 0; i < 3; ++i) rated(40 - i, u"40", 10, 5, "target");
    EXPECT_EQ(choicesFor(about(sample.curl, u"change_band"))[0].band, (RepBand{12, 15})) << "three sessions say little";
    rated(20, u"40", 10, 5, "target");
    const auto choices = choicesFor(about(sample.curl, u"change_band"));
    ASSERT_EQ(choices.size(), 5U);
    EXPECT_EQ(choices[0].band, (RepBand{5, 8})) << "of the better ones the nearest";
    EXPECT_EQ(choices[1].band, (RepBand{3, 5}));
    EXPECT_EQ(choices[2].band, (RepBand{12, 15}));
    for (Exposure& one : sample.log.lines[sample.curl].exposures)
        if (one.sets.front().set.reps == 5) one.rating.gaveOut = QStringLiteral("grip");
    EXPECT_EQ(choicesFor(about(sample.curl, u"change_band"))[0].band, (RepBand{12, 15}))
        << "felt more, but something else gave out";
}

TEST_F(Replanning, AnotherGripStartsANewLineAndLeavesTheOldOnesHistoryAlone)
{
    addGrip(QStringLiteral("neutral"), HandOrientation::Neutral);
    addGrip(QStringLiteral("supinated"), HandOrientation::Supinated);
    const Id<Grip> wide = addGrip(QStringLiteral("supinated, wide"), HandOrientation::Supinated);
    sample.library.grips.back().value.spacing = HandSpacing::Wide;
    sample.done(sample.curl, kToday.addDays(-2), {{u"40", 9}});
    sample.library.grips[0].value.orientation = HandOrientation::Supinated;
    sample.library.grips[0].value.spacing = HandSpacing::Medium;
    EXPECT_EQ(choicesFor(about(sample.curl, u"change_grip")).at(0).grip, wide) << "a grip that says less is no other";
    for (const ReplanChoice& choice : choicesFor(about(sample.curl, u"change_grip")))
        EXPECT_NE(sample.library.find(*choice.grip)->value.orientation, HandOrientation::Neutral)
            << "a straight bar can't be held so";

    const Replan plan = replan(about(sample.curl, u"change_grip"), {ReplanScope::RestOfBlock, wide});
    ASSERT_EQ(plan.changes.size(), 7U) << "the easier week too";
    block() = *plan.block;
    const QDate thursday(2027, 3, 4);
    const auto sheet = buildSessionSheet(sample.log, sample.library, sample.gym, thursday);
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->exercises.at(0).grip, QStringLiteral("supinated, wide"));
    EXPECT_FALSE(sheet->exercises.at(0).toBeat) << "nothing comparable was done with it";
    EXPECT_EQ(sample.log.lines[sample.curl].exposures.size(), 1U);
}

TEST_F(Replanning, AnotherVariantComesWithItsOwnStandardAndGrip)
{
    addVariant(QStringLiteral("no standard"), false);
    const Id<Variant> cable = addVariant(QStringLiteral("cable, seated"));
    const auto choices = choicesFor(about(sample.curl, u"change_variant"));
    ASSERT_EQ(choices.size(), 1U) << "one without a standard can't be planned";
    const Replan plan = replan(about(sample.curl, u"change_variant"), kOneWeek);
    ASSERT_EQ(plan.changes.size(), 2U);
    const Slot& after = plan.changes[0].after;
    EXPECT_EQ(after.variant, cable);
    EXPECT_EQ(after.standard, Id<RepStandard>(cable.value()));
    EXPECT_EQ(after.grip, sample.library.find(cable)->value.usualGrip);
}

TEST_F(Replanning, AVariantThatWasDoneBeforeGoesOnWhereItWas)
{
    const Id<Variant> cable = addVariant(QStringLiteral("cable, seated"));
    const Id<Variant> again = addVariant(QStringLiteral("dumbbells"));
    LineRecord line = sample.log.lines[sample.curl];
    line.id = Id<LiftLine>(50);
    line.variant = *sample.library.find(again);
    line.line = {sample.log.athlete.id, again, Id<Grip>(3), Id<RepStandard>(again.value())};
    line.exposures = {{kToday.addDays(-70), {}, {}}};
    sample.log.lines.push_back(line);
    const auto choices = choicesFor(about(sample.curl, u"change_variant"));
    ASSERT_EQ(choices.size(), 2U);
    EXPECT_EQ(choices[0].variant, again);
    EXPECT_EQ(choices[1].variant, cable);
    EXPECT_EQ(liftWithVariant(about(sample.curl, u"change_variant"), again), line.line);
}

TEST_F(Replanning, StayingWithOneWayTurnsTheOtherWaysOfTheExerciseIntoIt)
{
    const Id<Variant> cable = addVariant(QStringLiteral("cable, seated"));
    slot(1, 0, 0).variant = cable;
    const Replan plan = replan(about(sample.curl, u"keep_line"), kToTheEnd);
    ASSERT_EQ(plan.changes.size(), 1U);
    EXPECT_EQ(plan.changes[0].dayBefore, QDate(2027, 3, 8));
    EXPECT_EQ(plan.changes[0].after.variant, sample.log.lines[sample.curl].line.variant);
}

TEST_F(Replanning, ALiftMovesToAnotherPlannedDayOfTheSameWeekButNeverIntoThePast)
{
    const Replan plan = replan(about(sample.pulldown, u"move_day"), kToTheEnd);
    ASSERT_EQ(plan.changes.size(), 3U) << "this week's Monday is over";
    EXPECT_EQ(plan.changes[0].dayBefore, QDate(2027, 3, 11));
    EXPECT_EQ(plan.changes[0].dayAfter, QDate(2027, 3, 8));
    EXPECT_EQ(plan.block->weeks[0], block().weeks[0]);
    EXPECT_EQ(plan.block->weeks[1].days[0].slotList.size(), 3U);
    EXPECT_EQ(plan.block->weeks[1].days[1].slotList.size(), 1U);
    EXPECT_EQ(replan(about(sample.curl, u"move_day"), kToTheEnd).outcome, ReplanOutcome::NothingToChange)
        << "it is done on both days already";
}

TEST_F(Replanning, ALiftThatIsSwungMovesAwayFromTheDaysBeforeTheBackIsNeeded)
{
    for (Row<Variant>& variant : sample.library.variants)
        if (variant.id == sample.log.lines[sample.squat].line.variant) variant.value.backLoading = BackLoading::High;
    for (int week = 0; week < 4; ++week) {
        auto& days = block().weeks[static_cast<std::size_t>(week)].days;
        days.insert(days.begin() + 1, dayOf(kStart.addDays(7 * week + 1), {sample.curl}, false));
        days.push_back(dayOf(kStart.addDays(7 * week + 6), {sample.curl}, false));
    }
    const auto weekdays = [&](std::size_t line) {
        std::vector<int> found;
        for (const ReplanChoice& choice : choicesFor(about(line, u"move_day"))) found.push_back(*choice.weekday);
        return found;
    };
    EXPECT_EQ(weekdays(sample.pulldown), (std::vector<int>{1, 7, 2})) << "the farthest first";
    sample.done(sample.pulldown, kToday.addDays(-6), {{u"60", 10}});
    sample.log.lines[sample.pulldown].exposures.back().sets.back().set.marks.set(Mark::Swing, 4);
    EXPECT_EQ(weekdays(sample.pulldown), (std::vector<int>{1, 2, 7})) << "Sunday is the day before the squat";
    EXPECT_EQ(weekdays(sample.squat), (std::vector<int>{7, 4, 2})) << "nothing else loads the back";
}

TEST_F(Replanning, TheNextWeekThatHasNotBegunBecomesAnEasierOne)
{
    slot(1, 0, 0).load = kg(u"40");
    const Replan plan = replan(about(sample.curl, u"deload"), kOneWeek);
    ASSERT_EQ(plan.changes.size(), 4U) << "the whole week, whichever lift the flag was about";
    EXPECT_EQ(plan.block->weeks[1].kind, WeekKind::Deload);
    const Slot& easier = plan.block->weeks[1].days[0].slotList[0];
    EXPECT_EQ(easier.sets, 2);
    EXPECT_EQ(easier.plannedRir, Decimal(4));
    EXPECT_FALSE(easier.load);
    for (const std::size_t other : {0U, 2U, 3U}) EXPECT_EQ(plan.block->weeks[other], block().weeks[other]);
    block().weeks[1].kind = WeekKind::Deload;
    EXPECT_EQ(replan(about(sample.curl, u"deload"), kOneWeek).outcome, ReplanOutcome::NothingToChange);
}

TEST_F(Replanning, WhatThePlanCannotCarryIsForTheSheet)
{
    EXPECT_EQ(replan(about(sample.dumbbell, u"drop_set"), kOneWeek).outcome, ReplanOutcome::NotPlanned);
    EXPECT_EQ(replan(about(std::nullopt, u"change_grip"), kOneWeek).outcome, ReplanOutcome::NotPlanned);
    EXPECT_EQ(replan(about(sample.curl, u"film_check"), kOneWeek).outcome, ReplanOutcome::OnSheet);
    const Replan desk = replan(about(sample.curl, u"contact_lifter"), kOneWeek);
    EXPECT_EQ(desk.outcome, ReplanOutcome::AtDesk);
    EXPECT_FALSE(desk.isForSheet());
    block().start = kStart.addDays(-28);
    for (PlannedWeek& week : block().weeks)
        for (PlannedDay& day : week.days) day.date = day.date.addDays(-28);
    EXPECT_EQ(replan(about(sample.curl, u"drop_set"), kOneWeek).outcome, ReplanOutcome::NoBlock);
    EXPECT_TRUE(liftsAhead(sample.log, kToday).empty());
    sample.log.blocks.clear();
    const Replan none = replan(about(sample.curl, u"drop_set"), kOneWeek);
    EXPECT_EQ(none.outcome, ReplanOutcome::NoBlock);
    EXPECT_TRUE(none.isForSheet() && !none.block);
}

TEST_F(Replanning, TheBlockWithTheNextPlannedDayIsTheOneThatChanges)
{
    Row<Block> later = sample.log.blocks.front();
    later.id = Id<Block>(10);
    later.value.start = kStart.addDays(28);
    for (PlannedWeek& week : later.value.weeks)
        for (PlannedDay& day : week.days) day.date = day.date.addDays(28);
    sample.log.blocks.insert(sample.log.blocks.begin(), later);
    EXPECT_EQ(blockAhead(sample.log, kToday)->id, Id<Block>(9));
    EXPECT_EQ(blockAhead(sample.log, kStart.addDays(25))->id, Id<Block>(10));
    EXPECT_EQ(liftsAhead(sample.log, kToday).size(), 3U);
}

class EveryAction : public Replanning, public testing::WithParamInterface<QString> {};

// Whatever is done: a valid block, no word of the past changed, and rows that say exactly what changed.
TEST_P(EveryAction, KeepsTheBlockValidAndThePastAsItWas)
{
    addVariant(QStringLiteral("cable, seated"));
    addGrip(QStringLiteral("pronated"), HandOrientation::Pronated);
    sample.done(sample.curl, kToday.addDays(-2), {{u"40", 9}});
    for (const auto line : {std::optional<std::size_t>(sample.curl), std::optional<std::size_t>()})
        for (const ReplanScope scope : {ReplanScope::NextWeek, ReplanScope::RestOfBlock}) {
            const Replan plan = replan(about(line, GetParam().toStdU16String().c_str()), {.scope = scope});
            if (!plan.block) continue;
            EXPECT_TRUE(validate(*plan.block).empty());
            std::size_t different = 0;
            for (std::size_t week = 0; week < 4; ++week)
                for (std::size_t day = 0; day < 2; ++day) {
                    const auto& was = block().weeks[week].days[day];
                    const auto& is = plan.block->weeks[week].days[day];
                    ASSERT_EQ(is.date, was.date);
                    ASSERT_EQ(is.slotList.size(), was.slotList.size());
                    if (was.date <= kToday) {
                        EXPECT_EQ(is, was);
                    }
                    for (std::size_t place = 0; place < was.slotList.size(); ++place)
                        if (is.slotList[place] != was.slotList[place]) ++different;
                }
            EXPECT_EQ(plan.changes.size(), different);
        }
}

INSTANTIATE_TEST_SUITE_P(Words, EveryAction, testing::ValuesIn(actionWords()),
                         [](const auto& test) { return test.param.toStdString(); });

TEST(ActionPlaces, OnlyWhatIsDoneAwayFromTheFloorIsForTheDesk)
{
    QStringList desk;
    for (const QString& word : actionWords())
        if (placeOf(word) == ActionPlace::Desk) desk.push_back(word);
    EXPECT_EQ(desk, (QStringList{QStringLiteral("start_trial"), QStringLiteral("correct_entry"),
                                 QStringLiteral("contact_lifter")}));
    EXPECT_EQ(placeOf(u"a_newer_word"), ActionPlace::Desk);
}

}  // namespace
}  // namespace steelyard
