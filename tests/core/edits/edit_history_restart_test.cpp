#include "core/edits/edit_history.h"
#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/exchange/logbook_import.h"
#include "core/storage/statement.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

#include <random>

namespace steelyard {
namespace {

using test::must;
using test::rawDump;
using test::TempBook;
using test::workSet;

std::vector<Id<SetEntry>> setsOf(TempBook& book)
{
    std::vector<Id<SetEntry>> sets;
    auto st = must(book->database().prepare("SELECT id FROM set_entry ORDER BY id"));
    while (must(st.step())) sets.push_back(st.id<SetEntry>(0));
    return sets;
}

std::unique_ptr<Edit> newLifter(const QString& name)
{
    Athlete athlete;
    athlete.name = name;
    return addAthlete(athlete);
}

std::unique_ptr<Edit> someSet(TempBook& book)
{
    return addSet(book.line(), QDate(2026, 2, 5), workSet("40", 8));
}

// Edits of many kinds, chosen by chance but the same for a seed.
class RandomCoach {
public:
    RandomCoach(TempBook& book, unsigned seed) : m_book(book), m_random(seed) {}
    int pick(int most) { return std::uniform_int_distribution<int>(0, most)(m_random); }
    // May turn out to change nothing.
    std::unique_ptr<Edit> edit()
    {
        const auto sets = setsOf(m_book);
        SetEntry set = workSet(pick(1) ? "40" : "42.5", 1 + pick(14), 0);
        set.number = ++m_sets;
        const QDate day = QDate(2026, 2, 1).addDays(pick(12));
        switch (pick(6)) {
        case 0:
            return newLifter(QStringLiteral("Lifter %1").arg(++m_lifters));
        case 1:
            if (!sets.empty()) return changeSet(oneOf(sets), set, m_book->clock());
            break;
        case 2:
            if (!sets.empty()) return removeSet(oneOf(sets), m_book->clock());
            break;
        case 3:
            return setRuleThreshold(QStringLiteral("stalled"), QStringLiteral("weeks"), 4 + pick(8));
        case 4: {
            ExerciseRating rating;
            rating.pump = pick(10);
            return rateExercise(m_book.line(), day, rating);
        }
        default:
            break;
        }
        return addSet(m_book.line(), day, set);
    }

private:
    Id<SetEntry> oneOf(const std::vector<Id<SetEntry>>& sets)
    {
        return sets[static_cast<std::size_t>(pick(static_cast<int>(sets.size()) - 1))];
    }
    TempBook& m_book;
    std::mt19937 m_random;
    int m_lifters = 0;
    int m_sets = 0;
};

class RandomEdits : public testing::TestWithParam<unsigned> {};

TEST_P(RandomEdits, AreAllTakenBackAndForthExactlyWhereverARestartCameBetween)
{
    TempBook book;
    RandomCoach coach(book, GetParam());
    const auto restartPerhaps = [&] {
        if (coach.pick(3) == 0) book.reopen();
    };
    std::vector<QByteArray> states{rawDump(book->database())};
    while (states.size() < 130) {
        const bool changed = must(book->history().perform(coach.edit()));
        const QByteArray now = rawDump(book->database());
        EXPECT_EQ(changed, now != states.back());
        if (changed) states.push_back(now);
        restartPerhaps();
    }
    std::size_t at = states.size() - 1;
    while (book->history().canUndo()) {
        must(book->history().undo());
        ASSERT_EQ(rawDump(book->database()), states[--at]);
        restartPerhaps();
    }
    EXPECT_EQ(states.size() - 1 - at, static_cast<std::size_t>(kMostSteps)) << "the newest hundred can be undone";
    while (book->history().canRedo()) {
        must(book->history().redo());
        ASSERT_EQ(rawDump(book->database()), states[++at]);
        restartPerhaps();
    }
    EXPECT_EQ(at, states.size() - 1);
}

TEST_P(RandomEdits, WalkedToAndFroAtRandomAlwaysStandWhereTheyStoodBefore)
{
    TempBook book;
    RandomCoach coach(book, GetParam() + 1000);
    std::vector<QByteArray> states{rawDump(book->database())};
    std::size_t at = 0;
    for (int step = 0; step < 150; ++step) {
        const int choice = coach.pick(5);
        if (choice == 0) book.reopen();
        if (choice == 1 || choice == 2) {
            EXPECT_EQ(book->history().canUndo(), at > 0);
            must(book->history().undo());
            at -= at > 0 ? 1 : 0;
        } else if (choice == 3) {
            EXPECT_EQ(book->history().canRedo(), at + 1 < states.size());
            must(book->history().redo());
            at += at + 1 < states.size() ? 1 : 0;
        } else if (must(book->history().perform(coach.edit()))) {
            states.resize(++at);
            states.push_back(rawDump(book->database()));
            EXPECT_FALSE(book->history().canRedo()) << "a new edit ends what could be redone";
        }
        ASSERT_EQ(rawDump(book->database()), states[at]);
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomEdits, testing::Range(1U, 3U));

TEST(EditHistoryAfterARestart, NamesTheStepAndTellsWhomItTouches)
{
    TempBook book;
    must(book->history().perform(someSet(book)));
    const QString label = book->history().undoLabel();
    book.reopen();
    EXPECT_EQ(book->history().undoLabel(), label);
    EXPECT_FALSE(label.isEmpty());
    Changes told;
    const auto subscription = book->hub().subscribe([&](const Changes& changes) { told.merge(changes); });
    must(book->history().undo());
    EXPECT_EQ(told.athletes, std::set{book.athlete()});
    EXPECT_FALSE(told.roster || told.library || told.settings);
    book.reopen();
    EXPECT_EQ(book->history().redoLabel(), label);
    EXPECT_FALSE(book->history().canUndo());
}

TEST(EditHistoryAfterARestart, ABookThatCanOnlyBeReadOffersNothing)
{
    TempBook book;
    must(book->history().perform(someSet(book)));
    const auto second = must(Book::open(book.path(), book.clock()));
    ASSERT_TRUE(second->isReadOnly());
    EXPECT_FALSE(second->history().canUndo());
    EXPECT_FALSE(must(Book::openForReading(book.path(), book.clock()))->history().canUndo());
}

TEST(EditHistoryAfterARestart, IsNoPartOfTheContent)
{
    TempBook book;
    const QByteArray content = must(dumpContent(book->database()));
    must(book->history().perform(someSet(book)));
    must(book->history().undo());
    EXPECT_EQ(must(dumpContent(book->database())), content);
}

// Writes as another program does that has the file open and knows nothing of a history.
void writeBehindTheBack(TempBook& book, const char* sql)
{
    const auto other = must(Database::openWriter(book.path()));
    must(other->execute(sql));
}

TEST(EditHistoryBesideAnotherProgram, DropsAStepWhoseRowsHaveChangedAndGoesOnWithTheOneBefore)
{
    TempBook book;
    must(book->history().perform(someSet(book)));
    const QByteArray first = rawDump(book->database());
    must(book->history().perform(newLifter(QStringLiteral("Basil Notch"))));
    writeBehindTheBack(book, "UPDATE athlete SET note = 'moved house' WHERE name = 'Basil Notch'");
    book.reopen();
    const QByteArray before = rawDump(book->database());
    const auto undone = book->history().undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().code, ErrorCode::Conflict);
    EXPECT_EQ(rawDump(book->database()), before);
    EXPECT_FALSE(book->history().canRedo());
    ASSERT_TRUE(book->history().canUndo());
    must(book->history().undo());
    EXPECT_EQ(must(book->database().integer("SELECT count(*) FROM set_entry")), 0);
    EXPECT_EQ(must(book->database().integer("SELECT count(*) FROM athlete")), 2);
    EXPECT_FALSE(book->history().canUndo());
    book.reopen();
    EXPECT_TRUE(book->history().canRedo()) << "only the step that did not fit is gone";
}

TEST(EditHistoryBesideAnotherProgram, NeverTakesAlongWhatTheOtherHungOnARowThatWouldGo)
{
    TempBook book;
    must(book->history().perform(newLifter(QStringLiteral("Basil Notch"))));
    writeBehindTheBack(book,
                       "INSERT INTO body_mass (athlete_id, date, mass) "
                       "SELECT id, '2026-02-01', '71.5 kg' FROM athlete WHERE name = 'Basil Notch'");
    const QByteArray before = rawDump(book->database());
    const auto undone = book->history().undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().code, ErrorCode::Conflict);
    EXPECT_EQ(rawDump(book->database()), before) << "the body mass would have gone along with its lifter";
    EXPECT_FALSE(book->history().canUndo());
}

TEST(EditHistoryBesideAnotherProgram, KeepsTheStepWhenTheBookIsOnlyBusy)
{
    TempBook book;
    must(book->history().perform(someSet(book)));
    must(book->database().execute("PRAGMA busy_timeout = 1"));
    const auto other = must(Database::openWriter(book.path()));
    {
        const auto writing = must(Transaction::begin(*other));
        const auto undone = book->history().undo();
        ASSERT_FALSE(undone);
        EXPECT_EQ(undone.error().code, ErrorCode::Conflict);
    }
    EXPECT_TRUE(book->history().canUndo());
    must(book->history().undo());
}

TEST(EditHistory, DropsAStepWhoseRecordIsDamaged)
{
    TempBook book;
    must(book->history().perform(someSet(book)));
    must(book->database().execute("UPDATE edit_step SET changeset = x'00000010ff'"));
    const auto undone = book->history().undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().code, ErrorCode::Conflict);
    EXPECT_FALSE(book->history().canUndo());
}

TEST(EditHistory, LetsTheOldestStepsFallOffWhenTheirRecordsGrowTooLong)
{
    TempBook book;
    const EditStepRepository steps(book->database());
    std::mt19937 random(7);  // noise, so that it can't be compressed
    QByteArray noise(22 * 1024 * 1024, '\0');
    for (char& byte : noise) byte = static_cast<char>(random());
    for (const QString& label : {QStringLiteral("a"), QStringLiteral("b"), QStringLiteral("c")}) {
        auto tx = must(Transaction::begin(book->database()));
        must(steps.append(tx, {label, noise, {}}, book->clock().nowUtc()));
        must(tx.commit());
    }
    const auto titles = must(steps.titles());
    ASSERT_EQ(titles.size(), 2U);
    EXPECT_EQ(titles[0].label, QStringLiteral("b"));
    EXPECT_EQ(must(steps.find(titles[1].id)).changeset, noise);
}

const QByteArray kThreeRows =
    "date,athlete,exercise,load,reps\n2026-03-01,Basil Notch,Row,50,10\n2026-03-01,Basil Notch,Row,50,9\n"
    "2026-03-01,Cora Plumb,Row,30,12\n";

ImportOutcome importOnAnotherConnection(TempBook& book)
{
    const auto log = must(parseLogbook(kThreeRows, {}, QDate(2026, 3, 2), Progress()));
    const auto other = must(Database::openWriter(book.path()));
    return must(importLogbook(*other, log, {false, false, book->clock().nowUtc()}, Progress()));
}

TEST(ImportOnAnotherConnection, CanBeUndoneThoughTheProgramEndedBeforeTheHistoryHeardOfIt)
{
    TempBook book;
    const QByteArray before = rawDump(book->database());
    const QString label = importOnAnotherConnection(book).label;
    EXPECT_FALSE(book->history().canUndo());
    book.reopen();
    EXPECT_EQ(book->history().undoLabel(), label);
    must(book->history().undo());
    EXPECT_EQ(rawDump(book->database()), before);
    EXPECT_FALSE(book->history().canUndo()) << "an import is one step, once";
}

TEST(ImportOnAnotherConnection, IsNotUndoneInPlaceOfTheStepThatTheMenuNamed)
{
    TempBook book;
    must(book->history().perform(someSet(book)));
    const ImportOutcome outcome = importOnAnotherConnection(book);
    const QByteArray imported = rawDump(book->database());
    const auto undone = book->history().undo();  // of the set, before anybody told of the import
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().code, ErrorCode::Conflict);
    EXPECT_EQ(rawDump(book->database()), imported);
    EXPECT_EQ(book->history().undoLabel(), outcome.label) << "nothing is dropped, and the menu is right now";
    book->history().adopt(outcome.changes);
    must(book->history().undo());
    must(book->history().undo());
    EXPECT_EQ(must(book->database().integer("SELECT count(*) FROM set_entry")), 0);
    EXPECT_FALSE(book->history().canUndo());
}

TEST(ImportOnAnotherConnection, ThatBringsNothingNewLeavesWhatCouldBeRedone)
{
    TempBook book;
    book->history().adopt(importOnAnotherConnection(book).changes);
    must(book->history().perform(someSet(book)));
    must(book->history().undo());
    book->history().adopt(importOnAnotherConnection(book).changes);
    EXPECT_TRUE(book->history().canRedo());
}

}  // namespace
}  // namespace steelyard
