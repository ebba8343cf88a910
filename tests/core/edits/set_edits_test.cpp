#include "core/edits/set_edits.h"

#include "core/edits/edits.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::rawDump;
using test::TempBook;
using test::workSet;

const QDate kTrainedDay(2026, 2, 3);

// Three sets of one day, logged by edits.
struct BookWithThreeSets {
    TempBook book;

    BookWithThreeSets()
    {
        for (const int reps : {10, 9, 8}) perform(addSet(book.line(), kTrainedDay, workSet("40", reps, 0)));
    }

    void perform(std::unique_ptr<Edit> edit) { ASSERT_TRUE(must(book->history().perform(std::move(edit)))); }

    [[nodiscard]] std::vector<LoggedSet> sets()
    {
        const auto log = must(readAthleteLog(book->database(), must(book->library().read()), book.athlete()));
        return log.lines.front().exposures.empty() ? std::vector<LoggedSet>() : log.lines.front().exposures[0].sets;
    }
    [[nodiscard]] std::vector<int> reps()
    {
        std::vector<int> list;
        for (const LoggedSet& one : sets()) list.push_back(one.set.reps);
        return list;
    }
    [[nodiscard]] std::vector<SetHistory> histories()
    {
        return must(book->logbook().replacedSets(book.athlete(), kTrainedDay));
    }
    [[nodiscard]] std::unique_ptr<Edit> back(std::size_t history, std::size_t value)
    {
        return bringBack(histories().at(history), value, book.athlete(), kTrainedDay, book.clock());
    }
};

TEST(BringBack, GivesASetTheValueItHadAndKeepsTheOneItHas)
{
    BookWithThreeSets b;
    const Id<SetEntry> second = b.sets()[1].id;
    SetEntry changed = b.sets()[1].set;
    changed.reps = 19;
    b.perform(changeSet(second, changed, b.book.clock()));
    ASSERT_EQ(b.histories().size(), 1U);
    EXPECT_FALSE(b.histories()[0].gone);
    EXPECT_EQ(b.histories()[0].was[0].was.reps, 9);
    b.perform(b.back(0, 0));
    EXPECT_EQ(b.reps(), (std::vector{10, 9, 8}));
    ASSERT_EQ(b.histories()[0].was.size(), 2U);
    EXPECT_EQ(b.histories()[0].was[1].was.reps, 19);
    EXPECT_EQ(b.sets()[1].id, second);
}

TEST(BringBack, ReturnsARemovedSetToItsPlaceWithItsHistory)
{
    BookWithThreeSets b;
    const auto before = b.sets();
    b.perform(removeSet(before[1].id, b.book.clock()));
    EXPECT_EQ(b.reps(), (std::vector{10, 8}));
    ASSERT_EQ(b.histories().size(), 1U);
    EXPECT_TRUE(b.histories()[0].gone);
    b.perform(b.back(0, 0));
    EXPECT_EQ(b.sets(), before);
    ASSERT_EQ(b.histories().size(), 1U);
    EXPECT_FALSE(b.histories()[0].gone);
    EXPECT_TRUE(b.histories()[0].was[0].removed);
}

TEST(BringBack, ANewSetIsNeverTakenForTheOneThatWasRemovedBeforeIt)
{
    BookWithThreeSets b;
    b.perform(removeSet(b.sets()[2].id, b.book.clock()));  // the newest row of the book
    b.perform(addSet(b.book.line(), kTrainedDay, workSet("50", 5, 0)));
    ASSERT_EQ(b.histories().size(), 1U);
    EXPECT_TRUE(b.histories()[0].gone);
    EXPECT_TRUE(must(b.book->logbook().replacedSets(b.sets()[2].id)).empty());
    b.perform(b.back(0, 0));  // its number is taken by now
    EXPECT_EQ(b.reps(), (std::vector{10, 9, 5, 8}));
    EXPECT_EQ(b.sets()[3].set.number, 4);
    EXPECT_FALSE(b.histories()[0].gone);
}

TEST(BringBack, KeepsTheHistoryWithASetWhoseIdWasTaken)
{
    BookWithThreeSets b;
    const Id<SetEntry> newest = b.sets()[2].id;
    b.perform(removeSet(newest, b.book.clock()));
    const QDate other = kTrainedDay.addDays(1);  // another session takes the free id
    b.perform(addSet(b.book.line(), other, workSet("50", 5, 0)));
    EXPECT_TRUE(must(b.book->logbook().replacedSets(newest)).empty());
    b.perform(b.back(0, 0));
    EXPECT_EQ(b.reps(), (std::vector{10, 9, 8}));
    EXPECT_NE(b.sets()[2].id, newest);
    EXPECT_EQ(must(b.book->logbook().replacedSets(b.sets()[2].id)).size(), 1U);
}

TEST(BringBack, IsUndoneExactly)
{
    BookWithThreeSets b;
    b.perform(removeSet(b.sets()[0].id, b.book.clock()));
    const QByteArray before = rawDump(b.book->database());
    b.perform(b.back(0, 0));
    EXPECT_EQ(b.reps(), (std::vector{10, 9, 8}));
    EXPECT_EQ(b.sets()[0].position, 1);
    must(b.book->history().undo());
    EXPECT_EQ(rawDump(b.book->database()), before);
}

}  // namespace
}  // namespace steelyard
