// The Block place on the real window: keys and mouse, and what is in the book afterwards.
#include "core/edits/edits.h"
#include "tests/support/block_window.h"
#include "ui/pages/block/block_words.h"
#include "ui/pages/block/week_strip.h"

#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>

namespace steelyard {
namespace {

class BlockPages : public testing_support::BlockWindow {
protected:
    [[nodiscard]] QPoint centreOf(std::size_t column, int row)
    {
        const auto index = places().model()->index(row, static_cast<int>(column));
        return places().visualRect(index).center();
    }
    // Columns of the training days and of one without training.
    [[nodiscard]] std::size_t columnOf(std::size_t day) const
    {
        return static_cast<std::size_t>(page().shown()->dateOfColumn(0).daysTo(block().weeks[week()].days[day].date));
    }
    [[nodiscard]] std::size_t restColumn() const
    {
        for (std::size_t column = 0; column < 7; ++column)
            if (!dayOn(block(), page().shown()->dateOfColumn(static_cast<int>(column)))) return column;
        return 7;
    }
    void carry(QPoint from, QPoint to, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QWidget* ground = places().viewport();
        QTest::mousePress(ground, Qt::LeftButton, {}, from);
        QTest::mouseMove(ground, (from + to) / 2);
        QTest::mouseMove(ground, to);
        QTest::mouseRelease(ground, Qt::LeftButton, modifiers, to);
    }
};

TEST_F(BlockPages, OpensOnTheWeekThatRunsAndHasAllOfThem)
{
    EXPECT_EQ(week(), 2U);
    EXPECT_EQ(block().weeks.size(), 5U);
    EXPECT_TRUE(places().hasFocus());
    press(Qt::Key_BracketLeft);
    EXPECT_EQ(week(), 1U);
    press(Qt::Key_BracketRight);
    press(Qt::Key_BracketRight);
    EXPECT_EQ(week(), 3U);
}

TEST_F(BlockPages, MakesASetMoreWithOneKeyAndTakesItBack)
{
    toNextWeek();
    const Block before = stored();
    const QString name = exerciseWords(at(0, 0), page().shown()->library());
    press(Qt::Key_Plus);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].sets, 4);
    EXPECT_EQ(undoLabel(), QStringLiteral("a set more on %1").arg(name));
    EXPECT_EQ(places().cursor().slot, (PlanPlace{3, 0, 0})) << "the cursor stays";
    undo();
    EXPECT_EQ(stored(), before);
    EXPECT_EQ(block(), before) << "the page follows";
}

TEST_F(BlockPages, ChangesTheLaterWeeksTooWhereThatIsWanted)
{
    press(Qt::Key_BracketLeft);
    press(Qt::Key_BracketLeft);
    ASSERT_EQ(week(), 0U);
    toNextWeek();
    toNextWeek();
    toNextWeek();
    ASSERT_EQ(week(), 3U);
    press(Qt::Key_W);
    EXPECT_EQ(page().scope(), WeekScope::ThisAndLater);
    press(Qt::Key_B);
    type(QStringLiteral("5-8"));
    press(Qt::Key_Return);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].band, (RepBand{5, 8}));
    EXPECT_EQ(stored().weeks[4].days[0].slotList[0].band, (RepBand{5, 8}));
    EXPECT_TRUE(undoLabel().endsWith(QStringLiteral(", 2 week(s)"))) << qPrintable(undoLabel());
    press(Qt::Key_Minus);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].sets, 2);
    EXPECT_EQ(stored().weeks[4].days[0].slotList[0].sets, 2) << "an easier week keeps its sets";
}

TEST_F(BlockPages, TypesTheDoseInPlaceAndKeepsWhatCannotBeRead)
{
    toNextWeek();
    press(Qt::Key_Return);
    ASSERT_TRUE(places().isTyping());
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    type(QStringLiteral("4x6-9 heavy"));
    press(Qt::Key_Return);
    EXPECT_TRUE(places().isTyping());
    EXPECT_EQ(line->selectedText(), QStringLiteral("heavy"));
    EXPECT_TRUE(page().line().contains(QStringLiteral("3x8-12"))) << qPrintable(page().line());
    type(QStringLiteral("rir1 42.5 90s \"slow"));
    press(Qt::Key_Return);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return !places().isTyping() && stored().weeks[3].days[0].slotList[0].sets == 4; }));
    const Slot slot = stored().weeks[3].days[0].slotList[0];
    EXPECT_EQ(slot.band, (RepBand{6, 9}));
    EXPECT_EQ(slot.plannedRir, Decimal(1));
    EXPECT_EQ(slot.load, Load::parse(u"42.5", page().shown()->unit()));
    EXPECT_TRUE(slot.loadLocked);
    EXPECT_EQ(slot.restSeconds, 90);
    EXPECT_EQ(slot.note, QStringLiteral("slow"));
}

TEST_F(BlockPages, LeavesADoseWithEscape)
{
    toNextWeek();
    const Block before = stored();
    press(Qt::Key_E);
    ASSERT_TRUE(places().isTyping());
    type(QStringLiteral("9x"));
    press(Qt::Key_Escape);
    EXPECT_FALSE(places().isTyping());
    EXPECT_EQ(stored(), before);
}

TEST_F(BlockPages, PutsInALiftFoundByTyping)
{
    toNextWeek();
    const std::size_t lifts = block().weeks[3].days[0].slotList.size();
    press(Qt::Key_A);
    type(QStringLiteral("calf"));
    press(Qt::Key_Return);
    const auto after = stored().weeks[3].days[0].slotList;
    ASSERT_EQ(after.size(), lifts + 1);
    EXPECT_TRUE(exerciseWords(after[1], page().shown()->library()).contains(QStringLiteral("alf")));
    EXPECT_TRUE(places().hasFocus());
    EXPECT_TRUE(undoLabel().startsWith(QStringLiteral("put in ")));
    undo();
    EXPECT_EQ(stored().weeks[3].days[0].slotList.size(), lifts);
}

TEST_F(BlockPages, LeavesTheFindingWithEscape)
{
    toNextWeek();
    const Block before = stored();
    press(Qt::Key_A);
    press(Qt::Key_Escape);
    EXPECT_TRUE(places().hasFocus());
    EXPECT_EQ(stored(), before);
    press(Qt::Key_Plus);
    EXPECT_NE(stored(), before) << "the keys work again";
}

TEST_F(BlockPages, TakesAnotherWayOfAnExercise)
{
    toNextWeek();
    const Slot before = at(0, 0);
    press(Qt::Key_C);
    press(Qt::Key_Return);
    const Slot after = stored().weeks[3].days[0].slotList[0];
    EXPECT_FALSE(isSameLift(before, after));
    const Library& library = page().shown()->library();
    EXPECT_EQ(library.find(before.variant)->value.exercise, library.find(after.variant)->value.exercise);
    EXPECT_EQ(stored().weeks[4].days[0].slotList[0].variant, before.variant);
}

TEST_F(BlockPages, CopiesCutsAndPastes)
{
    toNextWeek();
    const Slot first = at(0, 0);
    press(Qt::Key_C, Qt::ControlModifier);
    EXPECT_TRUE(QGuiApplication::clipboard()->text().contains(exerciseWords(first, page().shown()->library())));
    press(Qt::Key_X, Qt::ControlModifier);
    EXPECT_FALSE(isSameLift(stored().weeks[3].days[0].slotList[0], first));
    press(Qt::Key_Right);
    press(Qt::Key_V, Qt::ControlModifier);
    const auto there = placeOf(stored(), block().weeks[3].days[1].date, first);
    EXPECT_TRUE(there);
}

TEST_F(BlockPages, MovesWithAltAndArrows)
{
    toNextWeek();
    const Slot first = at(0, 0);
    press(Qt::Key_Down, Qt::AltModifier);
    EXPECT_TRUE(isSameLift(stored().weeks[3].days[0].slotList[1], first));
    places().goTo(block().weeks[3].days[0].date, 1);
    press(Qt::Key_Right, Qt::AltModifier);
    EXPECT_TRUE(placeOf(stored(), block().weeks[3].days[1].date, first));
    EXPECT_FALSE(placeOf(stored(), block().weeks[3].days[0].date, first));
}

TEST_F(BlockPages, ChangesSeveralAtOnce)
{
    toNextWeek();
    press(Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(places().chosen().size(), 2U);
    press(Qt::Key_R);
    type(QStringLiteral("1"));
    press(Qt::Key_Return);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].plannedRir, Decimal(1));
    EXPECT_EQ(stored().weeks[3].days[0].slotList[1].plannedRir, Decimal(1));
    EXPECT_TRUE(undoLabel().contains(QStringLiteral("2 lift(s)"))) << qPrintable(undoLabel());
}

TEST_F(BlockPages, MakesASupersetOfTwo)
{
    toNextWeek();
    press(Qt::Key_S);
    EXPECT_TRUE(page().line().contains(QStringLiteral("two lifts")))
        << "one alone is none: " << qPrintable(page().line());
    press(Qt::Key_Down, Qt::ShiftModifier);
    press(Qt::Key_S);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].superset, 1);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[1].superset, 1);
}

TEST_F(BlockPages, CarriesALiftToADayWithoutTrainingWithTheMouse)
{
    toNextWeek();
    const Slot first = at(0, 0);
    const std::size_t rest = restColumn();
    ASSERT_LT(rest, 7U);
    const QDate date = page().shown()->dateOfColumn(static_cast<int>(rest));
    const QDate from = block().weeks[3].days[0].date;
    carry(centreOf(columnOf(0), 0), centreOf(rest, 0));
    EXPECT_TRUE(placeOf(stored(), date, first));
    EXPECT_FALSE(placeOf(stored(), from, first));
    undo();
    EXPECT_FALSE(dayOn(stored(), date));
}

TEST_F(BlockPages, CopiesALiftWithTheMouseAndCtrl)
{
    toNextWeek();
    const Slot first = at(0, 0);
    const std::size_t rest = restColumn();
    const QDate from = block().weeks[3].days[0].date;
    const QDate to = page().shown()->dateOfColumn(static_cast<int>(rest));
    carry(centreOf(columnOf(0), 0), centreOf(rest, 0), Qt::ControlModifier);
    EXPECT_TRUE(placeOf(stored(), to, first));
    EXPECT_TRUE(placeOf(stored(), from, first));
}

TEST_F(BlockPages, KeepsWhatHasPassedAsItWasPlanned)
{
    const Block before = stored();
    press(Qt::Key_BracketLeft);
    places().goTo(block().weeks[1].days.front().date, 0);
    press(Qt::Key_Plus);
    press(Qt::Key_Delete);
    EXPECT_FALSE(places().startTyping());
    press(Qt::Key_X);
    EXPECT_EQ(stored(), before);
    EXPECT_TRUE(page().line().contains(QStringLiteral("passed"))) << qPrintable(page().line());
    const auto isDone = [&](int row) {
        const auto index = places().model()->index(row, static_cast<int>(columnOf(0)));
        return index.data().toString().contains(QStringLiteral("done "));
    };
    EXPECT_TRUE(isDone(0) || isDone(1) || isDone(2)) << "the lifter trained that day";
}

TEST_F(BlockPages, MakesAnEasierWeekAndANormalOneAgain)
{
    toNextWeek();
    const Block before = stored();
    press(Qt::Key_X);
    EXPECT_EQ(stored().weeks[3].kind, WeekKind::Deload);
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].sets, 2);
    press(Qt::Key_X);
    EXPECT_EQ(stored().weeks[3].kind, WeekKind::Normal);
    undo();
    undo();
    EXPECT_EQ(stored(), before);
}

TEST_F(BlockPages, DuplicatesInsertsAndTakesOutWeeks)
{
    toNextWeek();
    press(Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(stored().weeks.size(), 6U);
    press(Qt::Key_Insert);
    EXPECT_EQ(stored().weeks.size(), 7U);
    press(Qt::Key_BracketRight);
    press(Qt::Key_Delete, Qt::ShiftModifier);
    EXPECT_EQ(stored().weeks.size(), 6U);
    EXPECT_EQ(undoLabel(), QStringLiteral("take out week 5"));
}

TEST_F(BlockPages, AsksForTrainingDaysAndSaysWhatIsWrong)
{
    toNextWeek();
    press(Qt::Key_D, Qt::ShiftModifier);
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    type(QStringLiteral("noday"));
    press(Qt::Key_Return);
    EXPECT_TRUE(line->isVisible());
    line->selectAll();
    type(QStringLiteral("1 2 3 4 5 6 7"));
    press(Qt::Key_Return);
    EXPECT_EQ(stored().weeks[3].days.size(), 7U);
    EXPECT_EQ(stored().weeks[2].days.size(), block().weeks[2].days.size());
    EXPECT_TRUE(places().hasFocus());
}

TEST_F(BlockPages, GivesWayToDaysOff)
{
    toNextWeek();
    const QDate day = block().weeks[3].days[0].date;
    press(Qt::Key_H);
    type(day.toString(Qt::ISODate) + QStringLiteral(" holiday"));
    press(Qt::Key_Return);
    EXPECT_EQ(stored().daysOff, (std::vector<DaysOff>{{day, day, QStringLiteral("holiday")}}));
    EXPECT_FALSE(dayOn(stored(), day));
}

TEST_F(BlockPages, ShowsADayAsAListAndTypesItsCells)
{
    toNextWeek();
    press(Qt::Key_D);
    EXPECT_EQ(places().model()->headerData(1, Qt::Horizontal).toString(), QStringLiteral("Sets"));
    EXPECT_EQ(places().cursor().slot, (PlanPlace{3, 0, 0}));
    places().setCurrentIndex(places().model()->index(0, 2));
    press(Qt::Key_Return);
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    type(QStringLiteral("many"));
    press(Qt::Key_Return);
    EXPECT_TRUE(places().isTyping());
    line->selectAll();
    type(QStringLiteral("10-15"));
    press(Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return stored().weeks[3].days[0].slotList[0].band == RepBand{10, 15}; }));
    EXPECT_EQ(stored().weeks[3].days[0].slotList[0].sets, 3);
    press(Qt::Key_D);
    EXPECT_EQ(places().cursor().slot, (PlanPlace{3, 0, 0}));
}

TEST_F(BlockPages, SaysWhereALimitIsBrokenAndGoesThere)
{
    toNextWeek();
    press(Qt::Key_M, Qt::ShiftModifier);
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    type(QStringLiteral("5"));
    press(Qt::Key_Return);
    EXPECT_EQ(stored().minutesPerDay, 5);
    const auto* limits = page().findChild<QListWidget*>(QStringLiteral("brokenLimits"));
    ASSERT_GT(limits->count(), 0);
    const auto header = places().model()->headerData(static_cast<int>(columnOf(0)), Qt::Horizontal).toString();
    EXPECT_TRUE(header.contains(kLimitShape) && header.contains(QStringLiteral("too long"))) << qPrintable(header);
    const QDate first = block().weeks[3].days[0].date;
    press(Qt::Key_J);
    EXPECT_GT(places().cursor().date, first);
    EXPECT_TRUE(page().line().contains(kLimitShape)) << qPrintable(page().line());
    press(Qt::Key_K);
    EXPECT_LE(places().cursor().date, first);
}

TEST_F(BlockPages, HoldsTheWeekAgainstTheBandsOfTheBlock)
{
    toNextWeek();
    const Id<Muscle> muscle = page().shown()->totals.weeks[3].muscles.front().muscle;
    const QString name = page().shown()->library().find(muscle)->value.name;
    press(Qt::Key_G);
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    type(QStringLiteral("%1 28-30").arg(name));
    press(Qt::Key_Return);
    EXPECT_EQ(stored().aims, (std::vector<MuscleAim>{{muscle, 28, 30}}));
    const auto* limits = page().findChild<QListWidget*>(QStringLiteral("brokenLimits"));
    const auto found = limits->findItems(name + QStringLiteral(": "), Qt::MatchContains);
    ASSERT_EQ(found.size(), 1);
    EXPECT_TRUE(found.front()->text().contains(QStringLiteral("28 to 30 are wanted")));
}

TEST_F(BlockPages, KeepsLongNamesInTheirColumns)
{
    toNextWeek();
    const Library& library = page().shown()->library();
    const auto* exercise = library.find(library.find(at(0, 0).variant)->value.exercise);
    Exercise renamed = exercise->value;
    renamed.name = QStringLiteral("Maximiliana-Theodora overhead cable extension behind the neck with half a turn");
    auto tx = Transaction::begin(window.book()->database());
    ASSERT_TRUE(tx);
    ASSERT_TRUE(window.book()->library().replace(*tx, exercise->id, renamed));
    const Changes changes = tx->changes();
    ASSERT_TRUE(tx->commit());
    window.book()->hub().publish(changes);
    ASSERT_TRUE(QTest::qWaitFor([&] { return page().isSettled(); }, 30000));
    const auto* model = places().model();
    const auto cell = model->index(0, static_cast<int>(columnOf(0)));
    EXPECT_TRUE(cell.data().toString().contains(renamed.name)) << "a screen reader says the whole name";
    EXPECT_TRUE(cell.data(Qt::ToolTipRole).toString().contains(renamed.name));
    int width = 0;
    for (int column = 0; column < model->columnCount(); ++column) width += places().columnWidth(column);
    EXPECT_LE(width, places().viewport()->width());
}

TEST_F(BlockPages, SaysWhatItIsForWithoutALifter)
{
    page().showAthlete(std::nullopt);
    EXPECT_EQ(page().shown(), nullptr);
    EXPECT_FALSE(page().canPerform(QStringLiteral("block.add")));
    const auto labels = page().findChildren<QLabel*>();
    EXPECT_TRUE(std::ranges::any_of(labels, [](const QLabel* label) {
        return label->isVisible() && label->text().contains(QStringLiteral("Choose a lifter"));
    }));
}

TEST_F(BlockPages, AWeekIsChosenInTheStripWithTheMouse)
{
    auto* strip = page().findChild<WeekStrip*>();
    QTest::mouseClick(strip, Qt::LeftButton, {}, strip->rectOf(4).center());
    EXPECT_EQ(week(), 4U);
    EXPECT_TRUE(places().hasFocus());
}

}  // namespace
}  // namespace steelyard
