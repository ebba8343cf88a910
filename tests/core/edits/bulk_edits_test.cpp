#include "core/edits/bulk_edits.h"

#include "core/analysis/regime_engine.h"
#include "core/book/verify.h"
#include "core/exchange/book_dump.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using test::workSet;

const QDate kFirstDay(2026, 1, 5);
const QDate kBulkToday(2026, 3, 2);
constexpr int kSessions = 16;  // three or four days apart, the last on kBulkToday - 3

QDate sessionDay(int session)
{
    return kFirstDay.addDays(7 * (session / 2) + (session % 2) * 3);
}

// A curl with sixteen sessions of three sets, a second grip and an "own" standard of somebody else, a block ahead and a decision.
struct BulkBook {
    TempBook book;
    std::optional<Id<Grip>> neutral;
    std::optional<Id<RepStandard>> foreign;
    std::optional<Id<LiftLine>> line;
    QByteArray first;

    BulkBook()
    {
        auto tx = must(Transaction::begin(book->database()));
        neutral = must(book->library().insert(tx, Grip{QStringLiteral("neutral"), HandOrientation::Neutral, {}, {}}));
        Athlete other;
        other.name = QStringLiteral("Basil Notch");
        RepStandard standard{.variant = book.line().variant};
        standard.athlete = must(book->athletes().insert(tx, other));
        standard.name = QStringLiteral("Basil's own");
        foreign = must(book->library().insert(tx, standard));
        must(tx.commit());
        for (int i = 0; i < kSessions; ++i)
            for (int set = 0; set < 3; ++set) perform(addSet(book.line(), sessionDay(i), workSet("40", 8 + i / 4, 0)));
        ExerciseRating rating;
        rating.pump = 7;
        perform(rateExercise(book.line(), sessionDay(12), rating));
        line = log().lines.front().id;
        perform(changeSet(log().lines.front().exposures[12].sets[1].id, changedSet(), book.clock()));
        perform(addBlock(blockAheadOf()));
        Decision decision{.athlete = book.athlete()};
        decision.line = line;
        decision.rule = QStringLiteral("stalled");
        decision.madeOn = QDate(2026, 2, 20);
        perform(makeDecision(decision, QStringLiteral("stalled")));
        first = dump();
    }

    [[nodiscard]] static SetEntry changedSet()
    {
        SetEntry set = workSet("41.25", 11, 0);
        set.number = 2;
        return set;
    }
    [[nodiscard]] Block blockAheadOf() const
    {
        Block block{.athlete = book.line().athlete};
        block.name = QStringLiteral("Spring");
        block.start = kBulkToday;
        const Slot slot{.variant = book.line().variant, .grip = book.line().grip, .standard = book.line().standard};
        block.weeks = {{WeekKind::Normal, {{kBulkToday, {}, {slot}}, {kBulkToday.addDays(3), {}, {slot}}}}};
        return block;
    }
    void perform(std::unique_ptr<Edit> edit) { ASSERT_TRUE(must(book->history().perform(std::move(edit)))); }
    [[nodiscard]] Library library() { return must(book->library().read()); }
    [[nodiscard]] AthleteLog log() { return must(readAthleteLog(book->database(), library(), book.athlete())); }
    [[nodiscard]] QByteArray dump() { return must(dumpContent(book->database())); }
    [[nodiscard]] MoveWish toNeutral(std::optional<QDate> from = {}, std::optional<QDate> to = {}) const
    {
        return {.line = *line,
                .from = from,
                .to = to,
                .variant = book.line().variant,
                .grip = *neutral,
                .standard = book.line().standard};
    }
    [[nodiscard]] MovePlan plan(const MoveWish& wish) { return planMove(log(), library(), wish, kBulkToday); }
    [[nodiscard]] const LineRecord& record(const AthleteLog& log, Id<Grip> grip) const
    {
        return *std::ranges::find_if(log.lines, [&](const LineRecord& one) { return one.line.grip == grip; });
    }
    void undoAll(int edits)
    {
        for (int i = 0; i < edits; ++i) must(book->history().undo());
        EXPECT_EQ(dump(), first);
    }
};

TEST(BulkMove, SplitsALineAtADayWithRatingsHistoryAndVerdict)
{
    BulkBook b;
    const MovePlan plan = b.plan(b.toNeutral(sessionDay(10)));
    EXPECT_EQ(plan.problems, std::vector<BulkProblem>());
    EXPECT_EQ(plan.days.size(), 6U);
    EXPECT_EQ(plan.sets, 18);
    EXPECT_EQ(plan.ratings, 1);
    EXPECT_EQ(plan.decisions, 0);  // sets stay behind, and so does what was decided
    EXPECT_EQ(plan.lines[0], (LineCount{b.book.line(), 16, 48, 10, 30}));
    EXPECT_EQ(plan.lines[1].sessionsAfter, 6);
    b.perform(moveSets(plan));
    const AthleteLog log = b.log();
    const LineRecord& old = b.record(log, b.book.line().grip);
    const LineRecord& split = b.record(log, *b.neutral);
    EXPECT_EQ(old.exposures.back().date, sessionDay(9));
    EXPECT_EQ(split.exposures.front().date, sessionDay(10));
    EXPECT_EQ(split.exposures[2].rating.pump, 7);
    EXPECT_EQ(must(b.book->logbook().replacedSets(split.exposures[2].sets[1].id)).size(), 1U);
    const auto readings = RegimeEngine().readAll(log, kBulkToday);
    ASSERT_EQ(readings.size(), 2U);
    EXPECT_EQ(readings[0].points.size() + readings[1].points.size(), 16U);
    EXPECT_EQ(std::max(readings[0].points.size(), readings[1].points.size()), 10U);
    EXPECT_TRUE(must(verifyBook(b.book->database(), Progress())).findings.isEmpty());
    b.undoAll(1);
}

TEST(BulkMove, AWholeLineTakesItsDecisionsAlong)
{
    BulkBook b;
    const MovePlan plan = b.plan(b.toNeutral());
    EXPECT_EQ(plan.decisions, 1);
    b.perform(moveSets(plan));
    const AthleteLog log = b.log();
    EXPECT_EQ(log.decisions[0].value.line, b.record(log, *b.neutral).id);
    EXPECT_TRUE(b.record(log, b.book.line().grip).exposures.empty());
    b.undoAll(1);
}

TEST(BulkMove, APlannedSlotAfterTodayFollowsOnlyWhenAsked)
{
    BulkBook b;
    MoveWish wish = b.toNeutral(sessionDay(10));
    EXPECT_EQ(b.plan(wish).plannedSlots, 1);  // that of today stays
    EXPECT_TRUE(b.plan(wish).blocks.empty());
    wish.planToo = true;
    b.perform(moveSets(b.plan(wish)));
    const auto days = b.log().blocks[0].value.weeks[0].days;
    EXPECT_EQ(days[0].slotList[0].grip, b.book.line().grip);
    EXPECT_EQ(days[1].slotList[0].grip, *b.neutral);
    b.undoAll(1);
}

TEST(BulkMove, MakesAStandardOfThisLifterAloneAndLeavesPastSlotsToTheOld)
{
    BulkBook b;
    MoveWish wish = b.toNeutral(sessionDay(10));
    wish.grip = b.book.line().grip;
    wish.standard.reset();
    wish.standardName = QStringLiteral("  strict,  paused ");
    wish.planToo = true;
    const MovePlan plan = b.plan(wish);
    ASSERT_TRUE(plan.newStandard);
    EXPECT_EQ(plan.problems, std::vector<BulkProblem>());
    b.perform(moveSets(plan));
    const Library library = b.library();
    const auto made = std::ranges::find(library.standards, QStringLiteral("strict, paused"),
                                        [](const Row<RepStandard>& row) { return row.value.name; });
    ASSERT_NE(made, library.standards.end());
    EXPECT_EQ(made->value.athlete, b.book.athlete());
    EXPECT_FALSE(made->value.isDefault);
    const auto days = b.log().blocks[0].value.weeks[0].days;
    EXPECT_EQ(days[0].slotList[0].standard, b.book.line().standard);
    EXPECT_EQ(days[1].slotList[0].standard, made->id);
    b.undoAll(1);
}

TEST(BulkMove, SaysWhatIsInItsWay)
{
    BulkBook b;
    const auto troubles = [&](const MoveWish& wish) { return b.plan(wish).problems; };
    MoveWish same = b.toNeutral();
    same.grip = b.book.line().grip;
    EXPECT_EQ(troubles(same), (std::vector<BulkProblem>{{BulkTrouble::SameLine}}));
    MoveWish foreign = b.toNeutral();
    foreign.standard = *b.foreign;
    EXPECT_EQ(troubles(foreign), (std::vector<BulkProblem>{{BulkTrouble::ForeignStandard}}));
    EXPECT_EQ(troubles(b.toNeutral(kBulkToday)), (std::vector<BulkProblem>{{BulkTrouble::NothingThere}}));
    MoveWish nameless = b.toNeutral();
    nameless.standard.reset();
    EXPECT_EQ(troubles(nameless), (std::vector<BulkProblem>{{BulkTrouble::NameNeeded}}));
}

TEST(BulkMove, JoinsADayOfTheOtherLineUnlessASetClashes)
{
    BulkBook b;
    b.perform(moveSets(b.plan(b.toNeutral(sessionDay(10), sessionDay(10)))));
    SetEntry second = workSet("42.5", 6, 0);
    b.perform(addSet(b.book.line(), sessionDay(10), second));  // is number 4 of the day
    EXPECT_EQ(b.plan(b.toNeutral(sessionDay(10), sessionDay(10))).problems, std::vector<BulkProblem>());
    EXPECT_EQ(b.plan(b.toNeutral(sessionDay(10), sessionDay(10))).lines[1],
              (LineCount{{b.book.athlete(), b.book.line().variant, *b.neutral, b.book.line().standard}, 1, 3, 1, 4}));
    const AthleteLog log = b.log();
    const auto added = b.record(log, b.book.line().grip).exposures[10].sets[0];
    second.number = 2;
    b.perform(changeSet(added.id, second, b.book.clock()));
    const auto problems = b.plan(b.toNeutral(sessionDay(10), sessionDay(10))).problems;
    EXPECT_EQ(problems, (std::vector<BulkProblem>{{BulkTrouble::SetsClash, sessionDay(10)}}));
    b.undoAll(3);
}

TEST(BulkMove, RefusesAPlanThatTheBookHasLeftBehind)
{
    BulkBook b;
    const MovePlan plan = b.plan(b.toNeutral(sessionDay(10)));
    const auto log = b.log();
    b.perform(removeSet(log.lines.front().exposures[11].sets[0].id, b.book.clock()));
    const QByteArray before = b.dump();
    const auto moved = b.book->history().perform(moveSets(plan));
    ASSERT_FALSE(moved);
    EXPECT_EQ(moved.error().code, ErrorCode::Conflict);
    EXPECT_EQ(b.dump(), before);
}

TEST(BulkShift, MovesSessionsPastEachOtherAndBack)
{
    BulkBook b;
    for (const int by : {-3, -4, -7, 3}) {  // onto days that move away themselves
        const ShiftPlan plan =
            planShift(b.log(), {.from = sessionDay(0), .to = sessionDay(11), .days = by}, kBulkToday);
        ASSERT_EQ(plan.problems, std::vector<BulkProblem>()) << by;
        EXPECT_EQ(plan.moves.size(), 12U);
        b.perform(shiftSessions(plan));
        EXPECT_EQ(b.log().sessionDates.front(), sessionDay(0).addDays(by));
        b.undoAll(1);
    }
}

TEST(BulkShift, JoinsASessionThatStaysAndSaysSo)
{
    BulkBook b;
    const LiftLine other{b.book.athlete(), b.book.line().variant, *b.neutral, b.book.line().standard};
    const QDate free = sessionDay(3).addDays(1);
    b.perform(addSet(other, free, workSet("30", 12, 0)));
    const ShiftWish wish{.from = free, .to = free, .days = -1};
    const ShiftPlan plan = planShift(b.log(), wish, kBulkToday);
    EXPECT_EQ(plan.problems, std::vector<BulkProblem>());
    EXPECT_EQ(plan.moves, (std::vector<DayMove>{{free, sessionDay(3), 1, true}}));
    b.perform(shiftSessions(plan));
    const AthleteLog log = b.log();
    EXPECT_EQ(log.sessionDates.size(), static_cast<std::size_t>(kSessions));
    EXPECT_EQ(b.record(log, *b.neutral).exposures[0].date, sessionDay(3));
    EXPECT_EQ(b.record(log, *b.neutral).exposures[0].sets[0].position, 4);
    EXPECT_TRUE(must(verifyBook(b.book->database(), Progress())).findings.isEmpty());
    b.undoAll(2);
}

TEST(BulkShift, SaysWhatIsInItsWay)
{
    BulkBook b;
    const auto troubles = [&](const ShiftWish& wish) { return planShift(b.log(), wish, kBulkToday).problems; };
    const QDate day = sessionDay(4);
    EXPECT_EQ(troubles({.from = day, .to = day, .days = 0}), (std::vector<BulkProblem>{{BulkTrouble::NoDays}}));
    EXPECT_EQ(troubles({.from = day, .to = day, .days = 3}),
              (std::vector<BulkProblem>{{BulkTrouble::SetsClash, sessionDay(5)}}));
    EXPECT_EQ(troubles({.from = sessionDay(15), .days = 10}),
              (std::vector<BulkProblem>{{BulkTrouble::IntoTheFuture, sessionDay(15).addDays(10)}}));
    EXPECT_EQ(troubles({.to = kFirstDay.addDays(-1), .days = -1}),
              (std::vector<BulkProblem>{{BulkTrouble::NothingThere}}));
}

TEST(BulkRename, CountsWhatItTouchesAndChangesOnlyTheName)
{
    BulkBook b;
    const auto wish = [&](RenameKind kind, std::int64_t id, const char16_t* name) {
        return must(planRename(b.book->database(), b.library(), {kind, id, QStringView(name).toString()}));
    };
    const Library library = b.library();
    const std::int64_t exercise = library.exercises.front().id.value();
    const RenamePlan plan = wish(RenameKind::Exercise, exercise, u" Elbow  bend ");
    EXPECT_EQ(plan.before, QStringLiteral("Arm curl"));
    EXPECT_EQ(plan.wish.name, QStringLiteral("Elbow bend"));
    EXPECT_EQ(std::tuple(plan.lines, plan.lifters, plan.plannedSlots), std::tuple(1, 1, 2));
    b.perform(renameInLibrary(plan));
    EXPECT_EQ(b.log().lines.front().exercise.value.name, QStringLiteral("Elbow bend"));
    EXPECT_EQ(b.log().lines.front().exposures.size(), static_cast<std::size_t>(kSessions));
    const auto stale = b.book->history().perform(renameInLibrary(plan));
    ASSERT_FALSE(stale);
    EXPECT_EQ(stale.error().code, ErrorCode::Conflict);
    for (const auto& [kind, id] : {std::pair(RenameKind::Variant, b.book.line().variant.value()),
                                   {RenameKind::Grip, b.book.line().grip.value()},
                                   {RenameKind::Standard, b.book.line().standard.value()}})
        b.perform(renameInLibrary(wish(kind, id, u"Renamed")));
    b.undoAll(4);
}

TEST(BulkRename, RefusesANameThatIsTakenOrNone)
{
    BulkBook b;
    const auto troubles = [&](const char16_t* name) {
        return must(planRename(b.book->database(), b.library(),
                               {RenameKind::Grip, b.book.line().grip.value(), QStringView(name).toString()}))
            .problems;
    };
    EXPECT_EQ(troubles(u"neutral"), (std::vector<BulkProblem>{{BulkTrouble::NameTaken}}));
    EXPECT_EQ(troubles(u"supinated, medium"), (std::vector<BulkProblem>{{BulkTrouble::SameName}}));
    EXPECT_EQ(troubles(u" \t"), (std::vector<BulkProblem>{{BulkTrouble::NameNeeded}}));
    EXPECT_FALSE(planRename(b.book->database(), b.library(), {RenameKind::Grip, 4711, QStringLiteral("x")}));
}

}  // namespace
}  // namespace steelyard
