#include "core/planning/propose_block.h"

#include "core/planning/proposal/proposal_problem.h"
#include "core/planning/session_time.h"
#include "tests/support/proposal_case.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace steelyard {
namespace {

using testing_support::ProposalCase;

// Weekly sets by muscle of a planned week.
std::map<Id<Muscle>, double> setsIn(const PlannedWeek& week, const Library& library)
{
    std::map<Id<Muscle>, double> sets;
    for (const PlannedDay& day : week.days)
        for (const Slot& slot : day.slotList)
            for (const MuscleShare& share : library.find(library.find(slot.variant)->value.exercise)->value.shares)
                sets[share.muscle] += slot.sets * share.share;
    return sets;
}

std::vector<int> reservesOf(const Block& block)
{
    std::vector<int> reserves;
    for (const PlannedWeek& week : block.weeks)
        reserves.push_back(static_cast<int>(week.days.front().slotList.front().plannedRir->toDouble()));
    return reserves;
}

bool says(const QStringList& sentences, const char* words)
{
    return std::ranges::any_of(sentences, [&](const QString& one) { return one.contains(QString::fromLatin1(words)); });
}

TEST(ProposeBlock, GivesAWholeBlockThatMeetsTheBandsWithinMinutesAndSpacing)
{
    const ProposalCase c;
    const BlockProposal proposal = c.propose();
    const Block& block = proposal.block;
    EXPECT_TRUE(validate(block).empty());
    EXPECT_EQ(block.start, c.wishes.from);
    ASSERT_EQ(block.weeks.size(), 5U);
    EXPECT_TRUE(proposal.unmet.isEmpty()) << proposal.unmet.join(u'\n').toStdString();
    for (std::size_t week = 0; week < 4; ++week) {
        EXPECT_EQ(block.weeks[week].kind, WeekKind::Normal);
        EXPECT_EQ(block.weeks[week].days.size(), 3U);
        for (const auto& [muscle, sets] : setsIn(block.weeks[week], c.library)) {
            EXPECT_GE(sets, 6) << "week " << week;
            EXPECT_LE(sets, 10) << "week " << week;
        }
        for (const PlannedDay& day : block.weeks[week].days) {
            EXPECT_EQ(weekOfBlock(block, day.date), week);
            EXPECT_LE(minutesOf(day, c.library), 75 + 1e-9);
            for (const Slot& slot : day.slotList) EXPECT_FALSE(slot.load);
        }
    }
}

TEST(ProposeBlock, RampsReserveDownAndSetsUpAndEasesTheLastWeek)
{
    ProposalCase c;
    c.wishes.easing = {50, 90, 3};
    const BlockProposal proposal = c.propose();
    EXPECT_EQ(reservesOf(proposal.block), (std::vector{3, 2, 2, 1, 2 + 3}));
    std::vector<double> totals;
    for (const PlannedWeek& week : proposal.block.weeks) {
        totals.push_back(0);
        for (const auto& [muscle, sets] : setsIn(week, c.library)) totals.back() += sets;
    }
    EXPECT_LE(totals[0], totals[1]);
    EXPECT_EQ(totals[1], totals[2]);
    EXPECT_GE(totals[3], totals[2]);
    EXPECT_GT(totals[3], totals[0]);
    EXPECT_EQ(proposal.block.weeks[4].kind, WeekKind::Deload);
    EXPECT_LT(totals[4], 0.7 * totals[2]);
}

TEST(ProposeBlock, HasNoDeloadInAShortBlock)
{
    ProposalCase c;
    c.wishes.weeks = 3;
    const BlockProposal proposal = c.propose();
    EXPECT_EQ(reservesOf(proposal.block), (std::vector{3, 2, 1}));
    for (const PlannedWeek& week : proposal.block.weeks) EXPECT_EQ(week.kind, WeekKind::Normal);
}

TEST(ProposeBlock, GivesTheSameForTheSame)
{
    const ProposalCase c;
    const BlockProposal first = c.propose();
    const BlockProposal second = c.propose();
    EXPECT_EQ(first.block, second.block);
    EXPECT_EQ(first.week, second.week);
    EXPECT_EQ(first.unmet, second.unmet);
}

TEST(ProposeBlock, KeepsALineThatProgressesAndSaysSo)
{
    ProposalCase c;
    for (int week = 1; week <= 6; ++week) {
        ExerciseRating& rating = c.record(c.press, c.wishes.today.addDays(-7 * week), 3);
        rating.tension = 1;  // the squat, new to the lifter, would be preferred
    }
    c.wishes.progressing = {c.line(c.press).id};
    const BlockProposal proposal = c.propose();
    EXPECT_GT(ProposalCase::setsOf(proposal, c.press), 0);
    const auto slot =
        std::ranges::find(proposal.week, c.press.variant, [](const ProposedSlot& one) { return one.lift.variant; });
    ASSERT_NE(slot, proposal.week.end());
    EXPECT_TRUE(slot->why.startsWith(QStringLiteral("Stays: it is progressing."))) << slot->why.toStdString();
    EXPECT_TRUE(slot->why.contains(QStringLiteral("For Quadriceps:"))) << slot->why.toStdString();
}

TEST(ProposeBlock, PrefersTheWayThatIsFeltMoreAndWhoseTargetGivesOutFirst)
{
    ProposalCase c;
    const auto low = c.variantOf(c.bench, "inclined");
    for (int week = 1; week <= 6; ++week) {
        ExerciseRating& dull = c.record(c.bench, c.wishes.today.addDays(-7 * week), 2);
        dull.tension = 2;
        dull.gaveOut = QStringLiteral("triceps");
        ExerciseRating& keen = c.record(low, c.wishes.today.addDays(-7 * week), 2);
        keen.tension = 9;
        keen.gaveOut = QStringLiteral("target");
    }
    c.gym.dumbbells.clear();  // no flies
    const BlockProposal proposal = c.propose();
    EXPECT_GT(ProposalCase::setsOf(proposal, low), ProposalCase::setsOf(proposal, c.bench));
}

TEST(ProposeBlock, LeavesOutWhatTheGymOrTheLibraryDoesNotShowAndSaysWhatIsMissing)
{
    ProposalCase c;
    c.gym.dumbbells.clear();
    c.library.exercises[0].value.hidden = true;  // the bench press
    const BlockProposal proposal = c.propose();
    for (const auto& lift : {c.bench, c.fly, c.curl}) EXPECT_EQ(ProposalCase::setsOf(proposal, lift), 0);
    EXPECT_TRUE(says(proposal.unmet, "Chest: 0 of at least 6 sets a week. In the way: what the gym has"))
        << proposal.unmet.join(u'\n').toStdString();
    c.record(c.fly, c.wishes.today.addDays(-7), 3);  // so there are dumbbells after all
    EXPECT_GT(ProposalCase::setsOf(c.propose(), c.fly), 0);
    c.library.variants[1].value.hidden = true;
    EXPECT_EQ(ProposalCase::setsOf(c.propose(), c.fly), 0);
}

TEST(ProposeBlock, SparesWhatWasRatedHighAndMindsWhatWasNoticeable)
{
    ProposalCase c;
    c.record(c.squat, c.wishes.today.addDays(-5), 3).discomfort[static_cast<std::size_t>(Joint::Knee)] = 7;
    c.record(c.bench, c.wishes.today.addDays(-5), 3).discomfort[static_cast<std::size_t>(Joint::Shoulder)] = 4;
    const BlockProposal proposal = c.propose();
    EXPECT_EQ(ProposalCase::setsOf(proposal, c.squat), 0);
    EXPECT_EQ(ProposalCase::setsOf(proposal, c.bench), 0);  // the fly does as well
    ASSERT_EQ(proposal.cautions.size(), 2);
    EXPECT_TRUE(says(proposal.cautions, "Squat: discomfort in the knee was rated 7 of 10"));
    EXPECT_TRUE(says(proposal.cautions, "see a licensed professional"));
    EXPECT_TRUE(says(proposal.cautions, "Bench press: discomfort in the shoulder was rated 4 of 10"));
}

TEST(ProposeBlock, ForgetsDiscomfortThatIsOldOrSafe)
{
    ProposalCase c;
    c.record(c.squat, c.wishes.today.addDays(-21), 3).discomfort[static_cast<std::size_t>(Joint::Knee)] = 8;
    c.record(c.squat, c.wishes.today.addDays(-2), 3).discomfort[static_cast<std::size_t>(Joint::Knee)] = 2;
    EXPECT_TRUE(c.propose().cautions.isEmpty());
}

TEST(ProposeBlock, KeepsWhatIsFixedInEveryWorkWeek)
{
    ProposalCase c;
    Slot fixed{c.curl.variant, Id<Grip>(1), c.curl.standard, 7};
    fixed.band = {15, 20};
    c.wishes.pinned = {{2, fixed}};
    const BlockProposal proposal = c.propose();
    for (std::size_t week = 0; week < 4; ++week) {
        const auto tuesday = std::ranges::find(proposal.block.weeks[week].days, 2,
                                               [](const PlannedDay& day) { return day.date.dayOfWeek(); });
        ASSERT_NE(tuesday, proposal.block.weeks[week].days.end());
        const auto slot = std::ranges::find(tuesday->slotList, fixed.variant, &Slot::variant);
        ASSERT_NE(slot, tuesday->slotList.end());
        EXPECT_EQ(slot->sets, 7);
        EXPECT_EQ(slot->band, fixed.band);
    }
    EXPECT_TRUE(std::ranges::any_of(proposal.week, [](const ProposedSlot& one) {
        return one.why.startsWith(QStringLiteral("Fixed by the coach."));
    }));
    EXPECT_TRUE(says(proposal.unmet,
                     "What is fixed goes over a limit by itself: the sets of an exercise on a day. It is Arm curl, "));
}

TEST(ProposeBlock, NamesWhatIsFixedAndStandsInTheWay)
{
    ProposalCase c;
    Slot many{c.curl.variant, Id<Grip>(1), c.curl.standard, 20};
    Slot heavy{c.squat.variant, Id<Grip>(1), c.squat.standard, 3};
    Slot hinge{c.hinge.variant, Id<Grip>(1), c.hinge.standard, 3};
    c.wishes.pinned = {{2, many}, {4, heavy}, {4, hinge}};
    const QStringList unmet = c.propose().unmet;
    const QString squat = QStringLiteral("Squat, %1 (Thursday)").arg(c.library.find(c.squat.variant)->value.name);
    const auto back = std::ranges::find_if(
        unmet, [](const QString& line) { return line.contains(QStringLiteral("the back loading of a day. It is")); });
    ASSERT_NE(back, unmet.end()) << qPrintable(unmet.join(u'\n'));
    EXPECT_TRUE(back->contains(squat)) << qPrintable(*back);
    EXPECT_FALSE(back->contains(QStringLiteral("Arm curl"))) << "it has no part in that: " << qPrintable(*back);
    const auto over = std::ranges::find_if(
        unmet, [](const QString& line) { return line.contains(QStringLiteral("sets a week, 10 are the most")); });
    ASSERT_NE(over, unmet.end()) << qPrintable(unmet.join(u'\n'));
    EXPECT_TRUE(over->startsWith(QStringLiteral("Biceps: "))) << qPrintable(*over);
    EXPECT_TRUE(over->contains(QStringLiteral("what is fixed: Arm curl, "))) << qPrintable(*over);
    EXPECT_FALSE(over->contains(QStringLiteral("Squat"))) << "it trains something else: " << qPrintable(*over);
}

TEST(ProposeBlock, WishesForHalfAnEvenShareOfTheWeekOnEveryDay)
{
    ProposalCase c;
    c.wishes.daysPerWeek = 4;
    const ProposalProblem made = proposalProblem(c.log, c.library, &c.gym, c.wishes);
    ASSERT_EQ(made.problem.days.size(), 4U);
    // Five muscles of at least 6 sets: 30 sets, 7.5 a day.
    for (const PlanDay& day : made.problem.days) EXPECT_EQ(day.leastSets, 3) << day.weekday;
}

TEST(ProposeBlock, GivesEveryDayEnoughToBeWorthComingFor)
{
    ProposalCase c;
    c.wishes.daysPerWeek = 5;
    const BlockProposal proposal = c.propose();
    std::vector<int> setsADay;
    for (const PlannedDay& day : proposal.block.weeks[1].days) {
        int sets = 0;
        for (const Slot& slot : day.slotList) sets += slot.sets;
        setsADay.push_back(sets);
    }
    ASSERT_EQ(setsADay.size(), 5U);
    const double share = std::accumulate(setsADay.begin(), setsADay.end(), 0) / 5.0;
    for (const int sets : setsADay) EXPECT_GE(sets, std::floor(share / 2)) << testing::PrintToString(setsADay);
}

TEST(ProposeBlock, TrainsOnTheWeekdaysOfTheRecord)
{
    ProposalCase c;
    for (int week = 1; week <= 6; ++week)
        for (const int before : {0, 2, 4})  // of a Sunday
            c.record(c.pull, c.wishes.today.addDays(-7 * week - before), 2);
    c.log.athlete.value.daysPerWeek.reset();
    std::vector<int> weekdays;
    const BlockProposal proposal = c.propose();
    for (const PlannedDay& day : proposal.block.weeks[0].days) weekdays.push_back(day.date.dayOfWeek());
    EXPECT_EQ(weekdays, (std::vector{3, 5, 7}));
    c.wishes.daysPerWeek = 2;
    EXPECT_EQ(c.propose().block.weeks[0].days.size(), 2U);
}

TEST(ProposeBlock, PlansNothingOnADayOffAndSaysWhereItWent)
{
    ProposalCase c;
    const QDate second = c.wishes.from.addDays(7);
    c.wishes.daysOff = {{second, second, QStringLiteral("fair")}, {second.addDays(7), second.addDays(13), {}}};
    const BlockProposal proposal = c.propose();
    for (const PlannedWeek& week : proposal.block.weeks)
        for (const PlannedDay& day : week.days)
            for (const DaysOff& off : c.wishes.daysOff) EXPECT_FALSE(day.date >= off.first && day.date <= off.last);
    EXPECT_TRUE(proposal.block.weeks[2].days.empty());
    EXPECT_EQ(proposal.block.daysOff, c.wishes.daysOff);
    EXPECT_TRUE(says(proposal.unmet, "The session of 2026-03-09 falls on a day off"));
    EXPECT_TRUE(says(proposal.unmet, "it is left out"));
}

TEST(ProposeBlock, SaysThatMinutesAreInTheWayWhereTheyAre)
{
    ProposalCase c;
    c.wishes.minutesPerDay = 15;
    const BlockProposal proposal = c.propose();
    EXPECT_TRUE(says(proposal.unmet, "In the way: the minutes of a day")) << proposal.unmet.join(u'\n').toStdString();
    EXPECT_EQ(proposal.block.minutesPerDay, 15);
    for (const PlannedWeek& week : proposal.block.weeks)
        for (const PlannedDay& day : week.days) EXPECT_LE(minutesOf(day, c.library), 15 + 1e-9);
}

TEST(ProposeBlock, KeepsAboutWhatTheRecordShowsWhereNobodyAskedForAnything)
{
    ProposalCase c;
    c.log.athlete.value.aims.clear();
    for (int week = 0; week < 8; ++week) c.record(c.pull, c.wishes.today.addDays(-7 * week), 8);
    const BlockProposal proposal = c.propose();
    EXPECT_GE(ProposalCase::setsOf(proposal, c.pull), 6);
    EXPECT_LE(ProposalCase::setsOf(proposal, c.pull), 10);
    EXPECT_EQ(ProposalCase::setsOf(proposal, c.legCurl), 0);
}

TEST(ProposeBlock, RefusesWishesThatCannotBeAndStopsWhenAsked)
{
    const ProposalCase sound;
    const std::function<void(ProposalCase&)> spoils[] = {
        [](ProposalCase& c) { c.wishes.from = {}; },
        [](ProposalCase& c) { c.wishes.weeks = 0; },
        [](ProposalCase& c) { c.wishes.weeks = 17; },
        [](ProposalCase& c) { c.wishes.daysPerWeek = 8; },
        [](ProposalCase& c) { c.wishes.minutesPerDay = 0; },
        [](ProposalCase& c) { c.library.exercises.clear(); },
        [](ProposalCase& c) {
            c.wishes.pinned = {{8, {Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)}}};
        }};
    for (const auto& spoil : spoils) {
        ProposalCase c = sound;
        spoil(c);
        const auto refused = c.tryToPropose();
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().code, ErrorCode::Invalid);
        EXPECT_FALSE(refused.error().what.isEmpty());
    }
    std::stop_source stop;
    stop.request_stop();
    EXPECT_EQ(sound.tryToPropose(Progress({}, stop.get_token())).error().code, ErrorCode::Cancelled);
}

}  // namespace
}  // namespace steelyard
