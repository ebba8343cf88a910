#include "core/book/keying_desk.h"

#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/session_reader.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using test::workSet;

const QDate kDeskDay(2026, 3, 2);

class KeyingDesks : public testing::Test {
protected:
    KeyingDesks()
    {
        for (const int week : {3, 2, 1})
            for (const int reps : {10, 9, 8})
                must(book->history().perform(addSet(book.line(), kDeskDay.addDays(-7 * week), workSet("40", reps, 0))));
        desk = must(KeyingDesk::open(*book, book.athlete(), kDeskDay));
    }
    void keyAsPlanned(KeyingPlace at) { must(desk->key(at, *keyedAsPlanned(desk->row(at), Watched::No))); }
    [[nodiscard]] QByteArray content() { return must(dumpContent(book->database())); }
    [[nodiscard]] SessionRecord record() { return must(readSession(book->database(), book.athlete(), kDeskDay)); }

    TempBook book{kDeskDay};
    std::unique_ptr<KeyingDesk> desk;
};

TEST_F(KeyingDesks, WhatIsKeyedIsInTheBookWithTheSheetsNumbersAndDay)
{
    keyAsPlanned({0, 0});
    must(desk->key({0, 1}, *desk->read({0, 1}, u"9 w @8")));
    ASSERT_EQ(record().sets.size(), 2U);
    EXPECT_EQ(record().sets[1].set.number, 2);
    EXPECT_EQ(record().sets[1].set.off, 0);
    EXPECT_TRUE(desk->row({0, 1}).stored);
    EXPECT_EQ(must(countSetsOn(book->database(), kDeskDay)).at(book.athlete()), 2);
}

TEST_F(KeyingDesks, EachRowIsOneNamedStepAndAllOfThemCanBeTakenBack)
{
    const QByteArray before = content();
    keyAsPlanned({0, 0});
    EXPECT_TRUE(book->history().undoLabel().contains(QStringLiteral("set 1, Arm curl, of Ada Fulcrum")));
    must(desk->key({0, 0}, *desk->read({0, 0}, u"38x9")));
    EXPECT_TRUE(book->history().undoLabel().startsWith(QStringLiteral("change set 1")));
    ExerciseRating rating;
    rating.tension = 7;
    must(desk->rate(0, rating));
    must(desk->remove({0, 0}));
    for (int step = 0; step < 4; ++step) {
        EXPECT_NE(content(), before);
        must(book->history().undo());
    }
    EXPECT_EQ(content(), before);
    must(desk->reread());
    EXPECT_EQ(desk->sheet().storedSets(), 0);
}

TEST_F(KeyingDesks, GoingBackChangesTheStoredSetAndKeepsWhatItSaid)
{
    keyAsPlanned({0, 0});
    const auto id = desk->row({0, 0}).stored->id;
    must(desk->key({0, 0}, *desk->read({0, 0}, u"41x7")));
    ASSERT_EQ(record().sets.size(), 1U);
    EXPECT_EQ(record().sets[0].id, id);
    EXPECT_EQ(record().sets[0].set.load.toString(), QStringLiteral("41 kg"));
    EXPECT_EQ(must(book->logbook().replacedSets(id)).size(), 1U);
}

TEST_F(KeyingDesks, RowsKeyedOutOfOrderStandInTheOrderOfTheSheet)
{
    keyAsPlanned({0, 2});
    keyAsPlanned({0, 0});
    keyAsPlanned({0, 1});
    QList<int> numbers;
    for (const RecordedSet& stored : record().sets) numbers << stored.set.number;
    EXPECT_EQ(numbers, (QList<int>{1, 2, 3}));
}

TEST_F(KeyingDesks, AUnitMixedUpIsAskedAboutAndThePlanIsNot)
{
    EXPECT_TRUE(desk->questionAbout({0, 0}, *desk->read({0, 0}, u"88x10")));
    EXPECT_EQ(desk->questionAbout({0, 0}, *desk->read({0, 0}, u"88x10"))->slip, EntrySlip::Unit);
    EXPECT_FALSE(desk->questionAbout({0, 0}, *desk->row({0, 0}).planned));
    EXPECT_EQ(desk->read({0, 0}, u"88lbx10")->load.toString(), QStringLiteral("88 lb")) << "the unit typed is kept";
}

TEST_F(KeyingDesks, ALoadThatWasKeptIsNotAskedAboutInEachRow)
{
    must(desk->key({0, 0}, *desk->read({0, 0}, u"88x10")));
    EXPECT_FALSE(desk->questionAbout({0, 1}, *desk->read({0, 1}, u"88x9")));
    EXPECT_TRUE(desk->questionAbout({0, 1}, *desk->read({0, 1}, u"88x99"))) << "but the repetitions are";
    EXPECT_TRUE(desk->questionAbout({0, 0}, *desk->read({0, 0}, u"88x10"))) << "a row is no witness of itself";
}

TEST_F(KeyingDesks, ASetOfAnotherLiftOpensItsLineAndTheFirstSetsStay)
{
    keyAsPlanned({0, 0});
    LiftLine other = book.line();
    {
        auto tx = must(Transaction::begin(book->database()));
        other.grip = must(book->library().insert(tx, Grip{QStringLiteral("neutral, narrow"), {}, {}, {}}));
        must(tx.commit());
    }
    desk = must(KeyingDesk::open(*book, book.athlete(), kDeskDay));
    EXPECT_TRUE(changeOfLine(desk->lifter().log, book.line(), other).opensNew());
    ASSERT_EQ(desk->changeLift(0, other), 1U);
    must(desk->key({1, 0}, *desk->read({1, 0}, u"30x12")));
    ASSERT_EQ(record().sets.size(), 2U);
    EXPECT_EQ(record().sets[0].lift, book.line());
    EXPECT_EQ(record().sets[1].lift, other);
    EXPECT_EQ(record().sets[1].set.number, 2) << "the row goes on, the line is another";
}

TEST_F(KeyingDesks, TheDayAfterIsRatedWhereTheSessionStands)
{
    auto next = must(KeyingDesk::open(*book, book.athlete(), kDeskDay.addDays(-5)));
    ASSERT_TRUE(next->dayAfter());
    EXPECT_EQ(next->dayAfter()->session, kDeskDay.addDays(-7));
    ExerciseRating rating = next->dayAfter()->questions[0].rating;
    rating.nextSoreness = 3;
    must(next->rateDayAfter(0, rating));
    EXPECT_EQ(next->dayAfter()->questions[0].rating.nextSoreness, 3);
    const auto then = must(readSession(book->database(), book.athlete(), kDeskDay.addDays(-7)));
    ASSERT_EQ(then.ratings.size(), 1U);
    EXPECT_EQ(then.ratings[0].rating.nextSoreness, 3);
    EXPECT_FALSE(must(KeyingDesk::open(*book, book.athlete(), kDeskDay.addDays(-5)))->dayAfter());
}

// The stamps on replaced values come from a clock; nothing else may.
TEST_F(KeyingDesks, TheSheetsDayIsKeyedWhateverTheClockSays)
{
    // Before the day, after midnight, the morning when clocks go forward, and a clock set back by years.
    for (const QDate today :
         {QDate(2026, 3, 1), QDate(2026, 3, 3), QDate(2026, 3, 29), QDate(2001, 1, 1), QDate(2031, 12, 31)}) {
        TempBook other{today};
        must(other->history().perform(addSet(other.line(), kDeskDay.addDays(-7), workSet("40", 10, 0))));
        auto there = must(KeyingDesk::open(*other, other.athlete(), kDeskDay));
        must(there->key({0, 0}, *keyedAsPlanned(there->row({0, 0}), Watched::Fine)));
        EXPECT_EQ(must(readSession(other->database(), other.athlete(), kDeskDay)).sets.size(), 1U);
        EXPECT_EQ(must(other->database().integer("SELECT count(*) FROM session")), 2);
    }
}

TEST_F(KeyingDesks, AnEntryThatIsRefusedChangesNothing)
{
    const QByteArray before = content();
    SetEntry broken = workSet("40", 5, 6);
    EXPECT_FALSE(desk->key({0, 0}, broken));
    EXPECT_EQ(content(), before);
    EXPECT_FALSE(desk->row({0, 0}).stored);
}

TEST_F(KeyingDesks, SomebodyWithoutAnyRecordBeginsWithAnEmptySheet)
{
    Athlete fresh;
    fresh.name = QStringLiteral("Basil Notch");
    must(book->history().perform(addAthlete(fresh)));
    const auto who = must(book->athletes().findByName(fresh.name)).id;
    auto empty = must(KeyingDesk::open(*book, who, kDeskDay));
    EXPECT_TRUE(empty->sheet().exercises.empty());
    const auto lifts = liftsToAdd(empty->lifter().log, empty->lifter().library, {});
    ASSERT_EQ(lifts.size(), 1U);
    ASSERT_EQ(empty->addExercise(lifts[0]), 0U);
    EXPECT_EQ(empty->sheet().rowCount(), 3);
    must(empty->key({0, 0}, *empty->read({0, 0}, u"20x12 w")));
    EXPECT_EQ(must(readSession(book->database(), who, kDeskDay)).sets.size(), 1U);
}

}  // namespace
}  // namespace steelyard
