#include "ui/pages/lifter/trials_view.h"

#include "core/exchange/book_dump.h"
#include "tests/support/trial_page_book.h"
#include "ui/charts/panels_chart.h"
#include "ui/charts/trial_strip.h"
#include "ui/pages/lifter/compare_view.h"
#include "ui/pages/lifter/trial_results.h"

#include <QtTest/QSignalSpy>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::must;
using testing_support::TrialPageBook;

const QDate kLongAgo(2026, 9, 7);  // eight sessions from here are past
const QDate kLately(2026, 11, 9);  // four sessions up to today are

struct TrialsCase : TrialPageBook {
    ~TrialsCase() { EXPECT_EQ(prompter.errors, QStringList()); }
    [[nodiscard]] bool can(const char* action) const { return page->canPerform(QString::fromLatin1(action)); }
    [[nodiscard]] QByteArray content() const { return must(dumpContent(club.book->database())); }
};

TEST(TrialsView, SaysWhatATrialIsForAndStartsOneWhileThereIsNone)
{
    TrialsCase c;
    c.openTrials();
    EXPECT_TRUE(c.says(QStringLiteral("A trial asks one question of one lifter")));
    EXPECT_TRUE(c.can("lifter.trial.new"));
    EXPECT_FALSE(c.can("lifter.trial.finish"));
    c.perform("lifter.trial.new");
    EXPECT_TRUE(c.view().isDesigning());
}

TEST(TrialsView, HidesResultsOfARunningTrialUntilSomebodyLooksWhichIsWrittenDown)
{
    TrialsCase c;
    c.store(c.design(6, QDate(2026, 10, 12)));
    c.hold({.better = 1, .by = 3}, 10);
    c.openTrials();
    EXPECT_FALSE(c.panel().isRevealed());
    EXPECT_TRUE(c.says(QStringLiteral("Results stay hidden while the trial runs")));
    EXPECT_FALSE(c.panel().results()->isVisible());
    EXPECT_FALSE(c.view().can(QStringLiteral("lifter.why")));
    EXPECT_TRUE(c.view().table().header.filter(QStringLiteral("Tension")).isEmpty()) << "the numbers are hidden too";
    EXPECT_TRUE(c.stored().value.looks.empty());

    c.perform("lifter.trial.look");
    EXPECT_TRUE(c.panel().isRevealed());
    ASSERT_EQ(c.stored().value.looks.size(), 1U);
    EXPECT_EQ(c.stored().value.looks[0].date, c.club.clock.today());
    EXPECT_EQ(c.stored().value.looks[0].sessionsDone, 10);
    c.perform("lifter.why");
    const QStringList why = whyOfTrial(*c.view().chosen());
    EXPECT_TRUE(why.contains(c.view().chosen()->analysis.verdict.looks));
    EXPECT_FALSE(c.view().chosen()->analysis.verdict.looks.isEmpty());

    // Another look of the same day is the same look; a look taken back hides again.
    c.perform("lifter.progress");
    c.perform("lifter.trials");
    EXPECT_FALSE(c.panel().isRevealed());
    c.perform("lifter.trial.look");
    EXPECT_TRUE(c.panel().isRevealed());
    EXPECT_EQ(c.stored().value.looks.size(), 1U);
    ASSERT_TRUE(c.club.book->history().undo());
    ASSERT_TRUE(c.settled());
    EXPECT_FALSE(c.panel().isRevealed());
}

TEST(TrialsView, SaysWhereARunningTrialStands)
{
    TrialsCase c;
    c.store(c.design(6, kLately));
    c.hold({}, 3);
    c.openTrials();
    const auto& cells = c.panel().strip()->cells();
    ASSERT_EQ(cells.size(), 12U);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_EQ(cells[i].state, TrialCellState::Done) << i;
    EXPECT_EQ(cells[4].state, TrialCellState::ToCome);
    EXPECT_EQ(c.panel().chosenDay(), 3) << "the next one is chosen";
    EXPECT_TRUE(c.says(QStringLiteral("Next: ")));
    EXPECT_TRUE(c.says(QStringLiteral("of 6 block(s) whole")));
}

TEST(TrialsView, AsksForARatingThatIsMissingAndLeadsToItsKeying)
{
    TrialsCase c;
    c.store(c.design(6, kLately));
    c.hold({}, 2);
    const Trial trial = c.stored().value;
    (void)must(c.club.book->history().perform(
        rateExercise(trial.days[1].arm == 0 ? c.plain : c.neutral, trial.days[1].date, ExerciseRating{.burn = 4})));
    c.openTrials();
    EXPECT_TRUE(c.says(QStringLiteral("can still be asked for")));
    QSignalSpy keyed(c.page.get(), &Page::keyingRequested);
    c.panel().strip()->choose(1);
    c.perform("lifter.trial.key");
    ASSERT_EQ(keyed.size(), 1);
    EXPECT_EQ(keyed[0][1].toDate(), trial.days[1].date);
}

TEST(TrialsView, WritesWhatHappenedOtherwiseToTheSessionAndTakesItBack)
{
    TrialsCase c;
    c.store(c.design(6, kLately));
    c.hold({}, 2);
    c.openTrials();
    const QByteArray before = c.content();
    c.panel().strip()->choose(1);
    c.perform("lifter.trial.other");
    const QString other = armLetter(1 - c.stored().value.days[1].arm);
    c.answer(other.toLower());
    EXPECT_EQ(c.stored().value.days[1].armDone, armOfLetter(other));
    EXPECT_EQ(c.panel().strip()->cells()[1].state, TrialCellState::OtherArm);
    c.panel().strip()->choose(0);
    c.perform("lifter.trial.note");
    c.answer(QStringLiteral("slept badly"));
    EXPECT_EQ(c.stored().value.days[0].note, QStringLiteral("slept badly"));
    EXPECT_TRUE(c.panel().strip()->cells()[0].hasNote);
    c.panel().strip()->choose(2);
    c.perform("lifter.trial.missed");
    EXPECT_TRUE(c.stored().value.days[2].missed);
    EXPECT_EQ(c.panel().strip()->cells()[2].state, TrialCellState::Missed);
    for (int i = 0; i < 3; ++i) ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_EQ(c.content(), before);
}

TEST(TrialsView, SaysWhatIsWrongWithALetterAndLeavesTheSessionAlone)
{
    TrialsCase c;
    c.store(c.design(6, kLately));
    c.hold({}, 2);
    c.openTrials();
    const QByteArray before = c.content();
    c.panel().strip()->choose(1);
    c.perform("lifter.trial.other");
    c.answer(QStringLiteral("D"));
    EXPECT_TRUE(c.says(QStringLiteral("An arm is a letter from A to B")));
    EXPECT_EQ(c.content(), before);
    c.press(Qt::Key_Escape);
    EXPECT_TRUE(c.view().isVisible()) << "Escape leaves the question, not the view";
    EXPECT_FALSE(c.says(QStringLiteral("An arm is a letter from A to B")));
}

TEST(TrialsView, ShowsTheVerdictOfATrialThatEndedWithItsNumbers)
{
    TrialsCase c;
    c.store(c.design(6, kLongAgo));
    c.hold({.better = 1, .by = 4}, 12);
    c.openTrials();
    c.perform("lifter.trial.finish");
    EXPECT_EQ(c.page->focusWidget()->metaObject()->className(), std::string("QLineEdit"));
    c.answer(QStringLiteral("b"));
    ASSERT_TRUE(c.stored().value.ending.has_value());
    EXPECT_EQ(c.stored().value.ending->kind, TrialEnd::Concluded);
    EXPECT_EQ(c.stored().value.ending->choice, std::optional<std::size_t>(1));
    ASSERT_TRUE(c.panel().isRevealed());
    EXPECT_EQ(c.view().chosen()->analysis.verdict.word, TrialWord::Prefer);
    EXPECT_EQ(c.view().chosen()->analysis.verdict.arm, std::optional<std::size_t>(1));
    EXPECT_TRUE(c.says(QStringLiteral("◆ prefer B (neutral)")));
    EXPECT_FALSE(c.can("lifter.trial.look"));
    EXPECT_FALSE(c.can("lifter.trial.finish"));
    EXPECT_TRUE(c.can("lifter.trial.print"));
    const PanelsSpec& course = c.panel().results()->course()->spec();
    EXPECT_EQ(course.stops.size(), 12U);
    EXPECT_GE(course.panels.size(), 4U);
    EXPECT_EQ(c.view().table().rows.size(), 12U);
}

TEST(TrialsView, ShowsWhatHurtsWhileResultsAreHiddenAndEndsForIt)
{
    TrialsCase c;
    c.store(c.design(6, QDate(2026, 10, 12)));
    c.hold({.better = 1, .by = 2, .elbow = 5}, 8);
    c.openTrials();
    EXPECT_FALSE(c.panel().isRevealed());
    EXPECT_TRUE(c.says(QStringLiteral("B (neutral) is out for discomfort")));
    EXPECT_TRUE(c.says(QStringLiteral("see a licensed professional")));
    EXPECT_TRUE(c.panel().discomfort()->isVisible());
    c.perform("lifter.trial.hurt");
    auto* line = qobject_cast<QLineEdit*>(c.page->focusWidget());
    ASSERT_TRUE(line);
    EXPECT_EQ(line->text(), QStringLiteral("elbow"));
    QTest::keyClick(line, Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    ASSERT_TRUE(c.stored().value.ending.has_value());
    EXPECT_EQ(c.stored().value.ending->kind, TrialEnd::Discomfort);
    EXPECT_TRUE(c.panel().isRevealed());
}

TEST(TrialsView, StopsOnlyWithAReason)
{
    TrialsCase c;
    c.store(c.design(6, kLately));
    c.openTrials();
    c.perform("lifter.trial.stop");
    c.answer(QString());
    EXPECT_TRUE(c.says(QStringLiteral("Say why")));
    EXPECT_FALSE(c.stored().value.ending.has_value());
    c.answer(QStringLiteral("competition came in between"));
    ASSERT_TRUE(c.stored().value.ending.has_value());
    EXPECT_EQ(c.stored().value.ending->reason, QStringLiteral("competition came in between"));
}

TEST(TrialsView, ListsRunningTrialsBeforeThoseThatEnded)
{
    TrialsCase c;
    Trial old = c.design(4, kLongAgo);
    old.question = QStringLiteral("Last year's question?");
    old.ending = TrialEnding{.date = QDate(2026, 10, 5), .kind = TrialEnd::Stopped, .reason = QStringLiteral("ill")};
    c.store(c.design(6, kLately));
    c.store(old);
    c.openTrials();
    const auto* list = c.view().findChild<QListWidget*>();
    ASSERT_EQ(list->count(), 2);
    EXPECT_TRUE(list->item(0)->text().contains(QStringLiteral("running")));
    EXPECT_TRUE(list->item(1)->text().contains(QStringLiteral("Last year's question?")));
    EXPECT_TRUE(list->item(1)->text().contains(QStringLiteral("stopped")));
}

TEST(TrialsView, ShowsWhatWasPreferredOverTheRosterAndGoesBack)
{
    TrialsCase c;
    Trial ended = c.design(6, kLongAgo);
    c.store(ended);
    c.hold({.better = 1, .by = 4}, 12);
    c.openTrials();
    c.perform("lifter.trial.wins");
    EXPECT_TRUE(c.says(QStringLiteral("No trial of the roster has ended that tells kinds of arms apart")));
    c.perform("lifter.trial.wins");
    c.perform("lifter.trial.finish");
    c.answer(QStringLiteral("B"));
    c.perform("lifter.trial.wins");
    EXPECT_TRUE(c.says(QStringLiteral("What one lifter prefers doesn’t bind the next")));
    const ChartTable table = c.view().table();
    ASSERT_FALSE(table.rows.empty());
    EXPECT_TRUE(std::ranges::any_of(table.rows, [](const QStringList& row) {
        return row[1] == u"1" && row[2] == u"1";
    })) << "one trial had the neutral grip and preferred it";
    c.press(Qt::Key_Escape);
    EXPECT_TRUE(c.panel().isVisible());
}

TEST(TrialsView, SavesTheResultForTheLifterAsPdf)
{
    TrialsCase c;
    c.store(c.design(6, kLongAgo));
    c.hold({.better = 1, .by = 4}, 12);
    c.openTrials();
    EXPECT_FALSE(c.can("lifter.trial.pdf")) << "hidden results go on no paper";
    c.perform("lifter.trial.finish");
    c.answer(QStringLiteral("B"));
    const QString path = c.club.dir.path(u"result.pdf");
    c.prompter.path = path;
    c.perform("lifter.trial.pdf");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray pdf = file.readAll();
    EXPECT_TRUE(pdf.startsWith("%PDF"));
    EXPECT_TRUE(pdf.contains("/FontFile")) << "type is embedded";
}

TEST(CompareView, ShowsHowLinesFeltAndThatThisIsNoTrial)
{
    TrialsCase c;
    c.store(c.design(6, kLongAgo));
    c.hold({.better = 1, .by = 3}, 12);
    c.open();
    ASSERT_TRUE(c.settled());
    c.perform("lifter.compare");
    auto& compare = *c.page->findChild<CompareView*>();
    for (auto* box : compare.findChildren<QCheckBox*>())
        if (box->text().contains(QStringLiteral("felt"))) box->setChecked(true);
    EXPECT_TRUE(c.says(QStringLiteral("not a trial: nobody drew lots")));
    const PanelsSpec& spec = compare.findChild<PanelsChart*>()->spec();
    ASSERT_FALSE(spec.panels.empty());
    EXPECT_EQ(spec.panels[0].ticks.size(), 2U) << "a row a line";
    EXPECT_FALSE(compare.table().rows.empty());
}

}  // namespace
}  // namespace steelyard
