// Copying and saving what the Lifter page draws, through its actions.
#include "tests/support/lifter_page_book.h"
#include "ui/charts/progress_chart.h"
#include "ui/pages/lifter/chart_menu.h"
#include "ui/pages/lifter/lifter_page.h"

#include <QtCore/QFileInfo>
#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>
#include <QtWidgets/QMenu>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

struct HandOutCase : testing_support::LifterPageBook {
    [[nodiscard]] bool openLine()
    {
        club.addLine(QStringLiteral("Arm curl"), 20);
        open();
        return QTest::qWaitFor([&] { return !chart().spec().empty(); }, 10000);
    }
};

TEST(ChartHandOut, CopiesTheChartAsAPictureToTheClipboard)
{
    HandOutCase c;
    ASSERT_TRUE(c.openLine());
    QGuiApplication::clipboard()->clear();
    ASSERT_TRUE(c.page->canPerform(QStringLiteral("lifter.copyPicture")));
    c.page->perform(QStringLiteral("lifter.copyPicture"));
    const QImage copied = QGuiApplication::clipboard()->image();
    EXPECT_GT(copied.width(), 2 * c.page->findChild<ProgressChart*>()->width());
}

TEST(ChartHandOut, SavesThePictureWhereTheCoachSaysAndSaysSo)
{
    HandOutCase c;
    ASSERT_TRUE(c.openLine());
    c.prompter.path = c.club.dir.path(u"curl.svg");
    QSignalSpy said(c.page.get(), &Page::said);
    c.page->perform(QStringLiteral("lifter.savePicture"));
    EXPECT_GT(QFileInfo(c.prompter.path).size(), 2000);
    ASSERT_EQ(said.size(), 1);
    EXPECT_TRUE(said[0][0].toString().contains(c.prompter.path));
    EXPECT_TRUE(c.prompter.errors.isEmpty());
}

TEST(ChartHandOut, TellsWhenThePictureCanNotBeWritten)
{
    HandOutCase c;
    ASSERT_TRUE(c.openLine());
    c.prompter.path = c.club.dir.path(u"nowhere/curl.pdf");
    QSignalSpy said(c.page.get(), &Page::said);
    c.page->perform(QStringLiteral("lifter.savePicture"));
    ASSERT_EQ(c.prompter.errors.size(), 1);
    EXPECT_TRUE(c.prompter.errors[0].contains(QStringLiteral("curl.pdf")));
    EXPECT_TRUE(said.isEmpty());
}

TEST(ChartHandOut, OffersInItsMenuOnlyWhatTheViewHas)
{
    HandOutCase c;
    ASSERT_TRUE(c.openLine());
    QMenu* menu = c.page->findChild<ChartMenu*>()->menu();
    const auto enabled = [&](const char* action) {
        Q_EMIT menu->aboutToShow();
        for (const QAction* entry : menu->actions())
            if (entry->data().toString() == QLatin1StringView(action)) return entry->isEnabled();
        return false;
    };
    EXPECT_TRUE(enabled("lifter.chart"));
    EXPECT_TRUE(enabled("lifter.copy"));
    EXPECT_TRUE(enabled("lifter.savePicture"));
    c.page->perform(QStringLiteral("lifter.why"));  // a view of words
    EXPECT_FALSE(enabled("lifter.copyPicture"));
    EXPECT_FALSE(enabled("lifter.savePicture"));
}

TEST(ChartHandOut, TicksTheNumbersWhileTheyAreShown)
{
    HandOutCase c;
    ASSERT_TRUE(c.openLine());
    QAction* numbers = c.page->findChild<ChartMenu*>()->menu()->actions().front();
    numbers->trigger();
    EXPECT_TRUE(numbers->isChecked());
    EXPECT_FALSE(c.page->findChild<ProgressChart*>()->isVisible());
    c.page->perform(QStringLiteral("lifter.chart"));
    EXPECT_FALSE(numbers->isChecked());
    EXPECT_TRUE(c.page->findChild<ProgressChart*>()->isVisible());
}

}  // namespace
}  // namespace steelyard
