#include "tests/support/shell_book.h"
#include "ui/models/roster_filter.h"
#include "ui/pages/first_run/first_run_page.h"
#include "ui/shell/roster_pane.h"
#include "ui/widgets/elided_label.h"

#include <QtGui/QAction>
#include <QtTest/QAbstractItemModelTester>
#include <QtTest/QSignalSpy>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenuBar>
#include <QtWidgets/QPushButton>

#include <algorithm>

namespace steelyard {
namespace {

const QStringList kThree{QStringLiteral("Żaneta Quill"), QStringLiteral("Bo Marrow"), QStringLiteral("Ada Fenwick")};

TEST(ActionTable, GivesNoKeyTwiceWhereBothCouldBePressed)
{
    const auto& table = actionTable();
    for (std::size_t i = 0; i < table.size(); ++i)
        for (std::size_t j = i + 1; j < table.size(); ++j) {
            EXPECT_NE(table[i].id, table[j].id);
            if (!table[i].where.isEmpty() && !table[j].where.isEmpty() && table[i].where != table[j].where) continue;
            for (const QString& key : table[i].shortcut.split(QLatin1Char(';'), Qt::SkipEmptyParts))
                EXPECT_FALSE(table[j].shortcut.split(QLatin1Char(';')).contains(key))
                    << qPrintable(table[i].id + QStringLiteral(" and ") + table[j].id + QStringLiteral(": ") + key);
        }
}

TEST(ActionTable, StandsWholeInTheMenus)
{
    ShellBook shell(kThree);
    const auto window = shell.open();
    QStringList inMenus;
    for (const QAction* menu : window->menuBar()->actions())
        for (const QAction* action : menu->menu()->actions()) inMenus << action->objectName();
    for (const ActionRow& row : actionTable()) EXPECT_EQ(inMenus.count(row.id), 1) << qPrintable(row.id);
}

TEST(RosterModel, KeepsTheRulesOfItemModelsWhileLiftersComeAndGo)
{
    ShellBook shell(kThree);
    const auto window = shell.open();
    RosterModel model(*window->book(), *window->reviews());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    RosterFilter filter;
    filter.setSourceModel(&model);
    EXPECT_EQ(model.rowCount(), 3);
    Athlete athlete;
    athlete.name = QStringLiteral("Cass Thorne");
    ASSERT_TRUE(window->book()->history().perform(addAthlete(athlete)).has_value());
    model.readRoster();
    EXPECT_EQ(filter.rowCount(), 4);
    ASSERT_TRUE(window->book()->history().undo().has_value());
    model.readRoster();
    EXPECT_EQ(filter.rowCount(), 3);
}

TEST(RosterFilter, FindsANameWithoutItsMarksAndCapitals)
{
    ShellBook shell(kThree);
    const auto window = shell.open();
    RosterModel model(*window->book(), *window->reviews());
    RosterFilter filter;
    filter.setSourceModel(&model);
    filter.setSearch(QStringLiteral("zan"));
    ASSERT_EQ(filter.rowCount(), 1);
    EXPECT_EQ(filter.index(0, 0).data().toString(), kThree.front());
    filter.setSearch(QStringLiteral("nobody"));
    EXPECT_EQ(filter.rowCount(), 0);
}

TEST(WeekPage, StoresADecisionMadeByKeysAndTakesItBack)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    const auto window = shell.open();
    const auto who = window->view()->roster()->chosen();
    ASSERT_TRUE(who.has_value());
    QTest::keyClick(window.get(), Qt::Key_D);
    QTest::keyClicks(window->focusWidget(), QStringLiteral("was ill"));
    QTest::keyClick(window->focusWidget(), Qt::Key_Return);
    const auto stored = window->book()->decisions().of(*who);
    ASSERT_TRUE(stored.has_value());
    ASSERT_EQ(stored->size(), 1U);
    EXPECT_EQ(stored->front().value.kind, DecisionKind::Dismiss);
    EXPECT_EQ(stored->front().value.reason, QStringLiteral("was ill"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->reviews()->reviews().front().flags.empty(); }));
    window->action(QStringLiteral("edit.undo"))->trigger();
    EXPECT_TRUE(window->book()->decisions().of(*who)->empty());
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->reviews()->reviews().front().flags.size() == 1; }));
}

// What was laid out before the other page came into sight is of another lifter by then.
TEST(WeekPage, ShowsAndAnswersTheLifterWhoWasChosenBehindAnotherPage)
{
    ShellBook shell({QStringLiteral("Bo Marrow"), QStringLiteral("Ada Fenwick")});
    const auto window = shell.open();
    const auto first = window->view()->roster()->chosen();
    window->view()->showPlace(QStringLiteral("lifter"));
    const auto& reviews = window->reviews()->reviews();
    const auto other = std::ranges::find_if(reviews, [&](const AthleteReview& one) { return one.athlete != first; });
    ASSERT_TRUE(other != reviews.end() && !other->flags.empty());
    const Id<Athlete> who = other->athlete;
    const auto line = other->flags.front().line;
    window->view()->roster()->choose(who);
    const QString name = other->name;
    window->view()->showPlace(QStringLiteral("week"));
    const auto labels = window->view()->findChildren<ElidedLabel*>();
    EXPECT_TRUE(std::ranges::any_of(
        labels, [&](const ElidedLabel* label) { return label->isVisible() && label->text() == name; }));
    QTest::keyClick(window.get(), Qt::Key_D);
    QTest::keyClicks(window->focusWidget(), QStringLiteral("was ill"));
    QTest::keyClick(window->focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(window->book()->decisions().of(*first)->empty());
    const auto stored = window->book()->decisions().of(who);
    ASSERT_EQ(stored->size(), 1U);
    EXPECT_EQ(stored->front().value.line, line);
}

TEST(RosterPane, OpensOnTheWorstLifter)
{
    ShellBook shell(kThree);
    const auto bookAtRest = Book::open(shell.path(), shell.clock);
    ASSERT_TRUE(bookAtRest.has_value());
    for (const QString& name : {kThree[1], kThree[2]}) {
        const auto athlete = (*bookAtRest)->athletes().findByName(name);
        const Decision answered{.athlete = athlete->id,
                                .rule = QStringLiteral("stalled"),
                                .madeOn = shell.clock.today(),
                                .action = QStringLiteral("hold_load")};
        ASSERT_TRUE((*bookAtRest)->history().perform(makeDecision(answered, name)).has_value());
    }
    const auto worst = (*bookAtRest)->athletes().findByName(kThree[0]);
    const auto window = shell.open();
    EXPECT_EQ(window->view()->roster()->chosen(), worst->id);
}

TEST(WeekPage, ShowsASentenceAndANameThatLookLikeMarkUpAsTheyAre)
{
    const QString name = QStringLiteral("<b>Bold</b> Harrow");
    ShellBook shell({name});
    const auto window = shell.open();
    int shown = 0;
    for (const QLabel* label : window->findChildren<QLabel*>()) {
        if (!label->text().contains(name)) continue;
        ++shown;
        EXPECT_EQ(label->textFormat(), Qt::PlainText);
    }
    EXPECT_GE(shown, 1);
}

TEST(MainWindow, SaysWhoHoldsABookThatItCanOnlyRead)
{
    ShellBook shell(kThree);
    const auto holder = Book::open(shell.path(), shell.clock);
    ASSERT_TRUE(holder.has_value());
    const auto window = shell.open();
    const auto* banner = window->findChild<QLabel*>(QStringLiteral("readOnlyBanner"));
    ASSERT_NE(banner, nullptr);
    EXPECT_TRUE(banner->isVisible());
    EXPECT_TRUE(banner->text().contains(window->book()->holder()));
    EXPECT_FALSE(window->book()->holder().isEmpty());
    EXPECT_FALSE(window->action(QStringLiteral("week.act"))->isEnabled());
}

TEST(FirstRunPage, OffersThreeWaysToBegin)
{
    FirstRunPage page;
    const QSignalSpy spy(&page, &FirstRunPage::actionRequested);
    for (const char* way : {"book.sample", "book.importNew", "book.new"}) {
        auto* button = page.findChild<QPushButton*>(QString::fromLatin1(way));
        ASSERT_NE(button, nullptr) << way;
        button->click();
        EXPECT_EQ(spy.last().first().toString(), QString::fromLatin1(way));
    }
    EXPECT_EQ(spy.count(), 3);
}

TEST(MainWindow, SaysOnTheFirstPageWhyABookCannotBeOpened)
{
    ShellBook shell({});
    MainWindow window({.reviewer = reviewByHand}, shell.prompter, shell.clock, shell.settings);
    EXPECT_FALSE(window.openBook(shell.folder.filePath(QStringLiteral("absent.steelyard"))));
    const auto* message = window.findChild<QLabel*>(QStringLiteral("firstRunMessage"));
    ASSERT_NE(message, nullptr);
    EXPECT_TRUE(message->text().contains(QStringLiteral("absent.steelyard")));
}

}  // namespace
}  // namespace steelyard
