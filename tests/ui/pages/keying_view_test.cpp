// Keying on the real window, keys only, and what is in the book afterwards.
#include "ui/pages/floor/keying_view.h"

#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/storage/session_reader.h"
#include "tests/support/keying_club.h"
#include "ui/pages/floor/floor_page.h"
#include "ui/pages/floor/keying_board.h"
#include "ui/pages/floor/keying_edit.h"
#include "ui/pages/floor/rating_row.h"
#include "ui/widgets/elided_label.h"

#include <QtWidgets/QCheckBox>

namespace steelyard {
namespace {

class KeyingViews : public testing_support::KeyingClub {
protected:
    KeyingViews() : KeyingClub({.athletes = 4, .years = 1, .seed = 3, .exercisesPerSession = 3}) {}
};

TEST_F(KeyingViews, OneKeyKeysARowAsPlannedAndAnotherOneSaysThatItWasWatched)
{
    startKeying();
    const SetEntry planned = *view().desk()->row({0, 0}).planned;
    press(Qt::Key_Return);
    press(Qt::Key_Return, Qt::ControlModifier);
    const auto sets = record().sets;
    ASSERT_EQ(sets.size(), 2U);
    EXPECT_EQ(sets[0].set, planned);
    EXPECT_FALSE(sets[0].set.watched());
    EXPECT_EQ(sets[1].set.off, 0);
    EXPECT_EQ(sets[1].set.number, 2);
}

TEST_F(KeyingViews, WhatIsTypedIsReadInWordsAndStoredWhenTheRowIsLeft)
{
    startKeying();
    type(QStringLiteral("7 w @9"));
    EXPECT_TRUE(words().contains(QStringLiteral("watched, all to the standard"))) << qPrintable(words());
    EXPECT_TRUE(record().sets.empty());
    press(Qt::Key_Down);
    ASSERT_EQ(record().sets.size(), 1U);
    EXPECT_EQ(record().sets[0].set.reps, 7);
    EXPECT_EQ(record().sets[0].set.effort->value, Decimal(9));
    EXPECT_EQ(view().currentPlace(), (KeyingPlace{0, 1}));
}

TEST_F(KeyingViews, WrongInputStaysSaysWhatIsWrongAndPutsTheCursorThere)
{
    startKeying();
    type(QStringLiteral("10 q"));
    press(Qt::Key_Return);
    EXPECT_TRUE(record().sets.empty());
    EXPECT_EQ(edit()->text(), QStringLiteral("10 q"));
    EXPECT_EQ(edit()->cursorPosition(), 3);
    EXPECT_TRUE(words().contains(QStringLiteral("means nothing here"))) << qPrintable(words());
    press(Qt::Key_Escape);
    EXPECT_TRUE(edit()->text().isEmpty()) << "the first Escape drops what is typed";
    EXPECT_TRUE(page().isKeying());
    press(Qt::Key_Escape);
    EXPECT_FALSE(page().isKeying()) << "the second one leaves";
}

TEST_F(KeyingViews, AnUnlikelyLoadIsAskedAboutInPlaceAndKeptWithOneKey)
{
    startKeying();
    const Load usual = view().desk()->row({0, 0}).planned->load;
    const QString fourfold = Decimal::nearest(usual.amount().toDouble() * 4, 1).toString();
    type(fourfold + QStringLiteral("x8"));
    press(Qt::Key_Return);
    EXPECT_TRUE(record().sets.empty());
    EXPECT_TRUE(words().contains(QStringLiteral("is usual here"))) << qPrintable(words());
    EXPECT_TRUE(isSaid(QStringLiteral("Enter: keep "))) << "what the keys do is said as well";
    press(Qt::Key_Return);
    ASSERT_EQ(record().sets.size(), 1U);
    EXPECT_EQ(record().sets[0].set.load, *Load::parse(QStringView(fourfold), usual.unit()));
}

TEST_F(KeyingViews, WhatWouldFitIsTakenWithTab)
{
    startKeying();
    const Load usual = view().desk()->row({0, 0}).planned->load;
    const MassUnit other = usual.unit() == MassUnit::kg ? MassUnit::lb : MassUnit::kg;
    type(usual.amount().toString() + toText(other) + QStringLiteral("x8"));
    press(Qt::Key_Return);
    EXPECT_TRUE(words().contains(QStringLiteral("mixed up"))) << qPrintable(words());
    press(Qt::Key_Tab);
    press(Qt::Key_Return);
    ASSERT_EQ(record().sets.size(), 1U);
    EXPECT_EQ(record().sets[0].set.load, usual);
}

TEST_F(KeyingViews, GoingBackUpChangesTheStoredSet)
{
    startKeying();
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    const auto id = record().sets[0].id;
    press(Qt::Key_Up);
    press(Qt::Key_Up);
    type(QStringLiteral("5"));
    press(Qt::Key_Return);
    ASSERT_EQ(record().sets.size(), 2U);
    EXPECT_EQ(record().sets[0].id, id);
    EXPECT_EQ(record().sets[0].set.reps, 5);
}

TEST_F(KeyingViews, UndoTakesBackWhatIsTypedFirstAndThenTheLastSet)
{
    const QByteArray before = content();
    startKeying();
    press(Qt::Key_Return);
    type(QStringLiteral("5"));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(edit()->text().isEmpty());
    EXPECT_EQ(record().sets.size(), 1U);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(record().sets.empty());
    EXPECT_FALSE(view().desk()->row({0, 0}).stored) << "the row shows it";
    EXPECT_EQ(content(), before);
}

TEST_F(KeyingViews, RatingsAreStoredCellByCellAndOneKeySkipsTheRest)
{
    startKeying();
    keyFirstExercise();
    ASSERT_TRUE(qobject_cast<RatingRow*>(window.focusWidget()));
    type(QStringLiteral("7"));
    EXPECT_EQ(rating().tension, 7);
    type(QStringLiteral("x"));
    EXPECT_EQ(rating().burn, 10);
    press(Qt::Key_Return);
    type(QStringLiteral("t"));
    type(QStringLiteral("."));
    EXPECT_EQ(rating().gaveOut, QStringLiteral("target"));
    EXPECT_FALSE(rating().pump);
    EXPECT_EQ(view().currentPlace(), (KeyingPlace{1, 0})) << "the rest was skipped";
}

TEST_F(KeyingViews, AJointsLetterGoesToItsCellAndAMuscleIsFoundByItsName)
{
    startKeying();
    keyFirstExercise();
    type(QStringLiteral("k4"));
    EXPECT_EQ(rating().discomfort[static_cast<std::size_t>(Joint::Knee)], 4);
    for (int i = 0; i < 7; ++i) press(Qt::Key_Left);
    type(QStringLiteral("calv"));
    press(Qt::Key_Return);
    EXPECT_EQ(rating().gaveOut, QStringLiteral("calves"));
}

TEST_F(KeyingViews, AnotherGripAsksBeforeItOpensANewLine)
{
    startKeying();
    press(Qt::Key_Return);
    const LiftLine before = view().desk()->exercise(0).lift;
    press(Qt::Key_G, Qt::ControlModifier);
    type(QStringLiteral("neutral"));
    press(Qt::Key_Return);
    EXPECT_EQ(view().desk()->sheet().exercises.size(), 3U) << "nothing is changed before it was asked";
    EXPECT_TRUE(isSaid(QStringLiteral("new lift line"))) << "what it means is said";
    press(Qt::Key_Return);
    ASSERT_EQ(view().desk()->sheet().exercises.size(), 4U);
    EXPECT_EQ(view().desk()->exercise(0).lift, before);
    EXPECT_EQ(view().currentPlace(), (KeyingPlace{1, 0}));
    type(QStringLiteral("20x10"));
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    ASSERT_EQ(record().sets.size(), 2U);
    EXPECT_NE(record().sets[1].lift, before);
    EXPECT_EQ(record().sets[1].set.number, 2);
}

TEST_F(KeyingViews, ASetThatGoesWithItsExerciseTakesTheCursorToTheEnd)
{
    startKeying();
    LiftLine other = view().desk()->exercise(0).lift;
    const auto grips = window.book()->library().read()->grips;
    other.grip = std::ranges::find_if(grips, [&](const auto& grip) { return grip.id != other.grip; })->id;
    SetEntry set = *view().desk()->row({0, 0}).planned;
    set.number = 90;
    ASSERT_TRUE(window.book()->history().perform(addSet(other, day(), set)));
    ASSERT_EQ(view().desk()->sheet().exercises.size(), 4U) << "what comes from elsewhere is shown";
    for (int i = 0; i < 3; ++i) press(Qt::Key_PageDown);
    EXPECT_EQ(view().currentPlace(), (KeyingPlace{3, 0}));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(view().desk()->sheet().exercises.size(), 3U);
    EXPECT_FALSE(view().currentPlace());
    EXPECT_TRUE(page().isKeying());
}

TEST_F(KeyingViews, AnExerciseAndASetMoreAreKeyedLikeTheOthers)
{
    startKeying();
    const int rows = view().desk()->sheet().rowCount();
    press(Qt::Key_M, Qt::ControlModifier);
    EXPECT_EQ(view().desk()->sheet().rowCount(), rows + 1);
    press(Qt::Key_E, Qt::ControlModifier);
    type(QStringLiteral("crunch"));
    press(Qt::Key_Return);
    ASSERT_EQ(view().desk()->sheet().exercises.size(), 4U);
    type(QStringLiteral("15x20 w"));
    press(Qt::Key_Return);
    ASSERT_EQ(record().sets.size(), 1U);
    EXPECT_EQ(record().sets[0].set.number, rows + 2);
}

TEST_F(KeyingViews, ASetFromElsewhereGoesIntoTheRowWhereTheCursorIs)
{
    startKeying();
    SetEntry counted = *view().desk()->row({0, 0}).planned;
    counted.reps = 6;
    counted.off = 1;
    EXPECT_TRUE(view().putIntoCurrentRow(counted));
    ASSERT_EQ(record().sets.size(), 1U);
    EXPECT_EQ(record().sets[0].set, counted);
    EXPECT_EQ(view().currentPlace(), (KeyingPlace{0, 1}));
}

TEST_F(KeyingViews, LettersAndDigitsAreNoKeysOfThePage)
{
    startKeying();
    const auto lifter = view().desk()->sheet().athlete;
    keyFirstExercise();
    type(QStringLiteral("n"));
    press(Qt::Key_PageDown);
    press(Qt::Key_PageDown);
    press(Qt::Key_PageDown);
    type(QStringLiteral("npt"));
    EXPECT_TRUE(page().isKeying());
    EXPECT_EQ(view().desk()->sheet().athlete, lifter);
}

TEST_F(KeyingViews, ARowThatCannotBeReadIsShownOnceBeforeItIsLeftOut)
{
    startKeying();
    const auto lifter = view().desk()->sheet().athlete;
    type(QStringLiteral("10 q"));
    press(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_EQ(view().desk()->sheet().athlete, lifter);
    press(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_NE(view().desk()->sheet().athlete, lifter);
}

TEST_F(KeyingViews, WhatIsTypedIsKeptWhenTheBookIsClosed)
{
    startKeying();
    const auto lifter = view().desk()->sheet().athlete;
    type(QStringLiteral("5"));
    window.closeBook();
    const auto reader = Database::openReader(path);
    ASSERT_TRUE(reader);
    EXPECT_EQ(readSession(**reader, lifter, day())->sets.size(), 1U);
}

TEST_F(KeyingViews, SomebodyWithoutASheetIsKeyedByAddingExercises)
{
    Athlete fresh;
    fresh.name = QStringLiteral("Zacharias Newcomer");
    ASSERT_TRUE(window.book()->history().perform(addAthlete(fresh)));
    settle();
    ASSERT_TRUE(window.view()->chooseLifter(fresh.name));
    showFloor(clock.today().addDays(400));
    ASSERT_FALSE(page().canPerform(QStringLiteral("floor.print"))) << "nobody is expected";
    press(Qt::Key_K);
    ASSERT_TRUE(page().isKeying());
    ASSERT_TRUE(view().desk());
    EXPECT_EQ(view().desk()->lifter().log.athlete.value.name, fresh.name);
    EXPECT_TRUE(isSaid(QStringLiteral("Ctrl+E adds an exercise")));
    press(Qt::Key_E, Qt::ControlModifier);
    press(Qt::Key_Return);
    type(QStringLiteral("20x10"));
    press(Qt::Key_Return);
    const auto there = readSession(window.book()->database(), view().desk()->sheet().athlete, day());
    ASSERT_EQ(there->sets.size(), 1U);
}

TEST_F(KeyingViews, WhatIsHalfTypedStaysWhenRowsAreAdded)
{
    startKeying();
    type(QStringLiteral("10 q"));
    view().findChildren<KeyingEdit*>()[1]->setFocus();
    press(Qt::Key_M, Qt::ControlModifier);
    EXPECT_EQ(view().findChildren<KeyingEdit*>()[0]->text(), QStringLiteral("10 q"));
}

TEST_F(KeyingViews, TheRowThatIsLeftByAnotherKeyOfTheWindowIsStored)
{
    startKeying();
    type(QStringLiteral("5"));
    press(Qt::Key_1, Qt::ControlModifier);
    EXPECT_EQ(record().sets.size(), 1U);
    press(Qt::Key_4, Qt::ControlModifier);
    EXPECT_TRUE(page().isKeying());
    EXPECT_EQ(view().currentPlace(), (KeyingPlace{0, 0})) << "and coming back returns to the same row";
}

TEST_F(KeyingViews, TheRosterOpensTheLifterThatIsChosenThere)
{
    startKeying();
    const auto lifter = view().desk()->sheet().athlete;
    const auto all = *window.book()->athletes().all();
    const auto other =
        std::ranges::find_if(all, [&](const auto& row) { return row.id != lifter && row.id != chosen(); });
    ASSERT_TRUE(window.view()->chooseLifter(other->value.name));
    EXPECT_EQ(view().desk()->sheet().athlete, other->id);
}

TEST_F(KeyingViews, TheDayAfterIsAskedFirstAndOnceOnly)
{
    const QDate date = clock.today().addDays(1);
    showFloor(date);
    page().findChild<QCheckBox*>()->setChecked(true);
    ASSERT_TRUE(QTest::qWaitFor([&] { return page().isSettled(); }, 30000));
    press(Qt::Key_K);
    for (int i = 0; i < 4 && !view().desk()->dayAfter(); ++i) press(Qt::Key_PageDown, Qt::ControlModifier);
    ASSERT_TRUE(view().desk()->dayAfter()) << "somebody trained yesterday";
    const auto lifter = view().desk()->sheet().athlete;
    const auto asked = *view().desk()->dayAfter();
    type(QStringLiteral("34."));
    const auto then = *readSession(window.book()->database(), lifter, asked.session);
    const auto rated = std::ranges::find(then.ratings, asked.questions[0].lift, &RecordedRating::lift);
    ASSERT_NE(rated, then.ratings.end());
    EXPECT_EQ(rated->rating.nextSoreness, 3);
    EXPECT_EQ(rated->rating.nextWeakness, 4);
    EXPECT_TRUE(view().currentPlace()) << "the full stop skipped the others";
}

TEST_F(KeyingViews, ABookThatCanOnlyBeReadShowsTheRowsAndTakesNothing)
{
    MainWindow second{MainServices{.reviewer = reviewRoster}, prompter, clock, settings};
    ASSERT_TRUE(second.openBook(path));
    ASSERT_TRUE(second.book()->isReadOnly());
    second.resize(1366, 768);
    second.show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&second));
    second.perform(QStringLiteral("view.floor"));
    auto* floor = second.view()->findChild<FloorPage*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return floor->isSettled() && second.isSettled(); }, 60000));
    const QByteArray before = content();
    QTest::keyClick(&second, Qt::Key_K);
    ASSERT_TRUE(floor->isKeying());
    EXPECT_GT(floor->keying()->desk()->sheet().rowCount(), 0);
    for (int i = 0; i < 6; ++i) QTest::keyClick(second.focusWidget(), Qt::Key_Return);
    QTest::keyClicks(second.focusWidget(), QStringLiteral("5"));
    EXPECT_FALSE(floor->canPerform(QStringLiteral("floor.key.add")));
    EXPECT_EQ(content(), before);
}

TEST_F(KeyingViews, ManyExercisesAndLongNamesStayInsideTheWindow)
{
    startKeying();
    window.resize(1366, 768);
    for (int i = 0; i < 9; ++i) {
        press(Qt::Key_E, Qt::ControlModifier);
        press(Qt::Key_Return);
    }
    ASSERT_EQ(view().desk()->sheet().exercises.size(), 12U);
    QTest::qWait(0);
    const auto* board = view().findChild<KeyingBoard*>();
    EXPECT_LE(board->widget()->width(), board->viewport()->width()) << "nothing is cut off at the right";
    // Whatever stop the cursor goes to, its row is in sight.
    for (int i = 0; i < 12; ++i) {
        press(Qt::Key_PageUp);
        const QWidget* focus = window.focusWidget();
        const QRect inside(focus->mapTo(board->viewport(), QPoint()), focus->size());
        EXPECT_TRUE(board->viewport()->rect().contains(inside)) << i;
    }
    EXPECT_EQ(view().currentPlace(), (KeyingPlace{0, 0}));
}

}  // namespace
}  // namespace steelyard
