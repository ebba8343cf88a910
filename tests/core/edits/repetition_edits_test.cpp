// A set and its repetitions are one step: stored, taken back, removed and brought back together.
#include "core/edits/repetition_edits.h"

#include "core/book/verify.h"
#include "core/edits/edits.h"
#include "core/edits/set_edits.h"
#include "core/storage/repetition_repository.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::rawDump;
using test::TempBook;
using test::workSet;

const QDate kDay(2026, 2, 3);

std::vector<Repetition> counted(int count)
{
    std::vector<Repetition> list;
    for (int number = 1; number <= count; ++number)
        list.push_back({.number = number, .source = RepetitionSource::Tapped, .loweringSeconds = Decimal(2)});
    list[0].marks.set(Mark::Lean);
    return list;
}

Id<SetEntry> addCounted(TempBook& book, int count)
{
    must(book->history().perform(
        addCountedSet(book.line(), kDay, workSet("40", 0), counted(count), QStringLiteral("count a set"))));
    const auto all = must(RepetitionRepository(book->database()).ofLifter(book.athlete()));
    return all.back().set;
}

TEST(RepetitionEdits, ACountedSetGoesInWatchedWithItsRepetitions)
{
    TempBook book;
    const auto id = addCounted(book, 8);
    const SetEntry set = must(book->logbook().find(id)).set;
    EXPECT_EQ(set.reps, 8);
    EXPECT_EQ(set.off, 1);
    EXPECT_EQ(set.loweringSeconds, Decimal(2));
    EXPECT_EQ(must(RepetitionRepository(book->database()).of(id)), counted(8));
    EXPECT_EQ(book->history().undoLabel(), QStringLiteral("count a set"));
    EXPECT_TRUE(must(verifyBook(book->database(), {})).findings.isEmpty());
}

TEST(RepetitionEdits, RecordingKeepsWhatTheSetSaidBefore)
{
    TempBook book;
    const auto id = addCounted(book, 8);
    must(book->history().perform(recordRepetitions({{id, counted(6)}}, book.clock())));
    EXPECT_EQ(must(book->logbook().find(id)).set.reps, 6);
    const auto was = must(book->logbook().replacedSets(id));
    ASSERT_EQ(was.size(), 1U);
    EXPECT_EQ(was[0].was.reps, 8);
    must(book->history().perform(recordRepetitions({{id, {}}}, book.clock())));
    EXPECT_TRUE(must(RepetitionRepository(book->database()).of(id)).empty());
    EXPECT_EQ(must(book->logbook().find(id)).set.reps, 6);
}

TEST(RepetitionEdits, WhatCannotBeIsRefusedAndNothingChanges)
{
    TempBook book;
    const auto id = addCounted(book, 3);
    const QByteArray before = rawDump(book->database());
    auto wrong = counted(3);
    wrong[0].number = 2;
    EXPECT_FALSE(book->history().perform(recordRepetitions({{id, wrong}}, book.clock())));
    EXPECT_FALSE(book->history().perform(recordRepetitions({{Id<SetEntry>(99), counted(3)}}, book.clock())));
    EXPECT_EQ(rawDump(book->database()), before);
}

TEST(RepetitionEdits, ARemovedSetGetsItsRepetitionsBackByUndoAndFromItsHistory)
{
    TempBook book;
    const auto id = addCounted(book, 5);
    const QByteArray before = rawDump(book->database());
    must(book->history().perform(removeSet(id, book.clock())));
    EXPECT_TRUE(must(RepetitionRepository(book->database()).ofLifter(book.athlete())).empty());
    must(book->history().undo());
    EXPECT_EQ(rawDump(book->database()), before);
    must(book->history().redo());
    const auto histories = must(book->logbook().replacedSets(book.athlete(), kDay));
    ASSERT_EQ(histories.size(), 1U);
    must(book->history().perform(bringBack(histories[0], 0, book.athlete(), kDay, book.clock())));
    EXPECT_EQ(must(RepetitionRepository(book->database()).of(id)), counted(5));
}

TEST(RepetitionEdits, AnUnreadableRepetitionIsFoundByTheCheckOfTheBook)
{
    TempBook book;
    addCounted(book, 2);
    must(book->database().execute("UPDATE repetition SET travel_mm = 'far' WHERE number = 1"));
    must(book->database().execute("UPDATE repetition SET number = 7 WHERE number = 2"));
    EXPECT_EQ(must(verifyBook(book->database(), {})).findings.size(), 2);
}

}  // namespace
}  // namespace steelyard
