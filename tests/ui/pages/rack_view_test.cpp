// Two lifters counted in turns at the rack, by keys alone, on a clock that the test moves.
#include "ui/pages/floor/rack_view.h"

#include "core/book/book.h"
#include "core/storage/repetition_repository.h"
#include "core/storage/session_reader.h"
#include "tests/support/scripted_prompter.h"
#include "tests/support/sheet_samples.h"
#include "tests/support/temp_book.h"
#include "tests/support/temp_dir.h"
#include "ui/pages/floor/floor_page.h"
#include "ui/pages/floor/rack_board.h"
#include "ui/shell/actions.h"
#include "ui/shell/review_store.h"

#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

class RackViews : public testing::Test {
protected:
    void SetUp() override
    {
        book = must(Book::create(dir.path(u"club.steelyard"), clock));
        fill();
        reviews.emplace(*book, clock, jobs,
                        [](const RosterReviewRequest&, const Progress&) { return std::vector<AthleteReview>(); });
        page.emplace(UiContext{*book, *reviews, prompter, clock, jobs});
        page->resize(1366, 768);
        page->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&*page));
        ASSERT_TRUE(QTest::qWaitFor([&] { return page->isSettled(); }));
        subscription = book->hub().subscribe([this](const Changes& changes) { page->bookChanged(changes); });
        rack().measureWith([this] { return time; });
        page->perform(QStringLiteral("floor.rack"));
        ASSERT_TRUE(rack().isVisible());
    }

    void fill()
    {
        const testing_support::SheetSample sample;
        auto tx = must(Transaction::begin(book->database()));
        const auto exercise = must(book->library().insert(tx, sample.library.exercises[0].value));
        Variant variant = sample.library.variants[0].value;
        variant.exercise = exercise;
        const auto variantId = must(book->library().insert(tx, variant));
        const auto grip = must(book->library().insert(tx, sample.library.grips[0].value));
        RepStandard standard = sample.library.standards[0].value;
        standard.variant = variantId;
        const auto standardId = must(book->library().insert(tx, standard));
        for (const char* name : {"Ada Beam", "Basil Notch"}) {
            Athlete athlete = sample.log.athlete.value;
            athlete.name = QString::fromLatin1(name);
            const auto id = must(book->athletes().insert(tx, athlete));
            lifts.push_back({id, variantId, grip, standardId});
            const auto line = must(book->logbook().line(tx, lifts.back()));
            for (int week = 1; week <= 3; ++week) {
                const auto session = must(book->logbook().session(tx, id, clock.today().addDays(-7 * week)));
                must(book->logbook().insert(tx, id, {session, line, 1, test::workSet("40", 10)}));
            }
        }
        must(tx.commit());
    }

    [[nodiscard]] RackView& rack() { return *page->rack(); }
    void press(Qt::Key key) { QTest::keyClick(&rack(), key); }
    void type(const char* keys)
    {
        for (const char* key = keys; *key; ++key) QTest::keyClick(&rack(), *key);
    }
    void pass(int milliseconds) { time += std::chrono::milliseconds(milliseconds); }
    void lower(int milliseconds)
    {
        QTest::keyPress(&rack(), Qt::Key_V);
        pass(milliseconds);
        QTest::keyRelease(&rack(), Qt::Key_V);
    }
    void repeat(int count)
    {
        for (int i = 0; i < count; ++i) {
            pass(3000);
            press(Qt::Key_Space);
        }
    }
    [[nodiscard]] std::vector<SetEntry> stored(std::size_t lifter)
    {
        std::vector<SetEntry> sets;
        for (const RecordedSet& one : must(readSession(book->database(), lifts[lifter].athlete, clock.today())).sets)
            sets.push_back(one.set);
        return sets;
    }

    testing_support::TempDir dir;
    FixedClock clock{QDate(2027, 3, 8)};
    std::chrono::milliseconds time{1000};
    std::unique_ptr<Book> book;
    ScriptedPrompter prompter;
    JobRunner jobs;
    std::optional<ReviewStore> reviews;
    std::optional<FloorPage> page;
    std::vector<LiftLine> lifts;
    ChangeHub::Subscription subscription;
};

TEST_F(RackViews, TwoLiftersInTurnsWithThreeSetsEachStandInTheBookAsTheyWereCounted)
{
    // Ada: three with a lowering, the second with a swing; Basil: two, then one that fails; and so on.
    for (int round = 0; round < 3; ++round) {
        for (int i = 0; i < 3; ++i) {
            lower(2000 + 100 * i);
            pass(1000);
            press(Qt::Key_Space);
            if (i == 1) type("s");
        }
        press(Qt::Key_Return);
        press(Qt::Key_Tab);
        EXPECT_EQ(rack().active(), 1U);
        repeat(2);
        type("bt+");
        press(Qt::Key_Return);
        press(Qt::Key_Tab);
    }
    const auto ada = stored(0);
    const auto basil = stored(1);
    ASSERT_EQ(ada.size(), 3U);
    ASSERT_EQ(basil.size(), 3U);
    EXPECT_EQ(ada[2].number, 3);
    EXPECT_EQ(ada[2].reps, 3);
    EXPECT_EQ(ada[2].off, 1);
    EXPECT_EQ(ada[2].marks.toString(), "swing:1");
    EXPECT_EQ(ada[2].loweringSeconds, Decimal::parse(u"2.1"));
    EXPECT_FALSE(ada[2].failed);
    EXPECT_EQ(basil[0].reps, 2);
    EXPECT_EQ(basil[0].off, 1);
    EXPECT_TRUE(basil[0].failed);
    EXPECT_EQ(basil[0].marks.toString(), "short_bottom:1;short_top:1");
    EXPECT_FALSE(basil[0].loweringSeconds);

    const auto lists = must(RepetitionRepository(book->database()).ofLifter(lifts[0].athlete));
    ASSERT_EQ(lists.size(), 3U);
    const auto& list = lists[0].repetitions;
    ASSERT_EQ(list.size(), 3U);
    EXPECT_EQ(list[0].source, RepetitionSource::Tapped);
    EXPECT_EQ(list[0].loweringSeconds, Decimal::parse(u"2.00"));
    EXPECT_EQ(list[1].loweringSeconds, Decimal::parse(u"2.10"));
    EXPECT_EQ(list[1].liftingSeconds, Decimal::parse(u"1.00"));
    EXPECT_TRUE(list[1].marks.has(Mark::Swing));
    EXPECT_TRUE(must(RepetitionRepository(book->database()).ofLifter(lifts[1].athlete))[2].repetitions.back().partWay);
}

TEST_F(RackViews, UndoNamesTheSetAndTakesItWithItsRepetitions)
{
    repeat(4);
    press(Qt::Key_Return);
    EXPECT_TRUE(book->history().undoLabel().startsWith(QStringLiteral("Ada Beam’s set of ")));
    EXPECT_EQ(rack().station(0).done.size(), 1U);
    must(book->history().undo());
    EXPECT_TRUE(stored(0).empty());
    EXPECT_TRUE(must(RepetitionRepository(book->database()).ofLifter(lifts[0].athlete)).empty());
    EXPECT_TRUE(rack().station(0).done.empty());
    must(book->history().redo());
    EXPECT_EQ(must(RepetitionRepository(book->database()).ofLifter(lifts[0].athlete))[0].repetitions.size(), 4U);
}

TEST_F(RackViews, ALoadIsTypedTakenAndStaysForTheNextSets)
{
    type("52,5");
    press(Qt::Key_Backspace);
    press(Qt::Key_Return);
    repeat(1);
    press(Qt::Key_Return);
    repeat(1);
    press(Qt::Key_Return);
    const auto sets = stored(0);
    ASSERT_EQ(sets.size(), 2U);
    for (const SetEntry& set : sets) EXPECT_EQ(set.load.kilograms(), 52);
}

TEST_F(RackViews, BackspaceTakesTheLastOneBackAndAFailureEndsTheSet)
{
    repeat(3);
    type("+");
    press(Qt::Key_Space);
    EXPECT_EQ(rack().station(0).counter.done(), 3);
    EXPECT_FALSE(rack().message().isEmpty());
    press(Qt::Key_Backspace);
    EXPECT_FALSE(rack().station(0).counter.failed());
    press(Qt::Key_Backspace);
    EXPECT_EQ(rack().station(0).counter.done(), 2);
}

TEST_F(RackViews, RestBeginsWithTheStoredSetForThatLifterAlone)
{
    repeat(2);
    press(Qt::Key_Return);
    pass(83'000);
    press(Qt::Key_Tab);
    EXPECT_TRUE(rack().board(0)->words().contains(QStringLiteral("rest 1:23"))) << qPrintable(rack().board(0)->words());
    EXPECT_FALSE(rack().station(1).restSince);
}

TEST_F(RackViews, NothingIsStoredWithoutARepetitionAndTheReasonStandsThere)
{
    press(Qt::Key_Return);
    EXPECT_TRUE(stored(0).empty());
    EXPECT_TRUE(rack().message().contains(QStringLiteral("Space")));
    type("s");
    EXPECT_FALSE(rack().message().isEmpty());
}

TEST_F(RackViews, EscapeClosesAndKeepsWhatIsCounted)
{
    repeat(5);
    press(Qt::Key_Escape);
    EXPECT_FALSE(rack().isVisible());
    page->perform(QStringLiteral("floor.rack"));
    EXPECT_EQ(rack().station(0).counter.done(), 5);
    EXPECT_EQ(rack().station(0).lifter, QStringLiteral("Ada Beam"));
}

TEST_F(RackViews, WhileASetIsCountedNeitherLifterNorExerciseChanges)
{
    repeat(1);
    press(Qt::Key_PageDown);
    press(Qt::Key_Right);
    EXPECT_EQ(rack().station(0).lifter, QStringLiteral("Ada Beam"));
    EXPECT_FALSE(rack().message().isEmpty());
    press(Qt::Key_Backspace);
    press(Qt::Key_PageDown);
    EXPECT_EQ(rack().station(0).lifter, QStringLiteral("Ada Beam"));  // the other one stands at the other place
}

TEST_F(RackViews, NoPlainKeyReachesAnActionOfTheWindow)
{
    for (const ActionRow& row : actionTable())
        for (const QString& keys : row.shortcut.split(u';', Qt::SkipEmptyParts)) {
            const QKeyCombination combination = QKeySequence(keys)[0];
            if (combination.keyboardModifiers() != Qt::NoModifier) continue;
            QKeyEvent asked(QEvent::ShortcutOverride, combination.key(), Qt::NoModifier, keys.toLower());
            asked.ignore();
            QCoreApplication::sendEvent(&rack(), &asked);
            EXPECT_TRUE(asked.isAccepted()) << qPrintable(row.id);
        }
    QKeyEvent undo(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    undo.ignore();
    QCoreApplication::sendEvent(&rack(), &undo);
    EXPECT_FALSE(undo.isAccepted());
}

}  // namespace
}  // namespace steelyard
