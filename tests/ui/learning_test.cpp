// "Learn from the roster" in the window: in the background, with a sentence at the end, and no edit.
#include "tests/support/roster_book.h"
#include "tests/support/shell_book.h"

#include <QtGui/QAction>
#include <QtWidgets/QLabel>

namespace steelyard {
namespace {

bool isSaid(const MainWindow& window, const QString& text)
{
    const auto labels = window.findChildren<QLabel*>();
    return std::ranges::any_of(labels, [&](const QLabel* label) { return label->text().contains(text); });
}

// In place of the book that the shell would open: lifters whose days vary more than the shipped numbers say.
void fillRestless(const ShellBook& shell, int lifters, int weeks)
{
    test::TempBook pattern(shell.clock.today());
    pattern.close();
    ASSERT_TRUE(QFile::remove(shell.path()));
    ASSERT_TRUE(QFile::copy(pattern.path(), shell.path()));
    const auto book = test::must(Book::open(shell.path(), shell.clock));
    test::fillRestlessRoster(*book, pattern.line(), lifters, weeks, shell.clock.today());
}

TEST(Learning, SaysWhenThereIsTooLittleAndChangesNothing)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    const auto window = shell.open();
    int told = 0;
    const auto subscription = window->book()->hub().subscribe([&](const Changes&) { ++told; });
    QAction* learn = window->action(QStringLiteral("roster.learn"));
    ASSERT_TRUE(learn->isEnabled());
    learn->trigger();
    EXPECT_FALSE(learn->isEnabled());
    EXPECT_TRUE(QTest::qWaitFor([&] { return isSaid(*window, QStringLiteral("Too little to learn from")); }));
    EXPECT_TRUE(learn->isEnabled());
    EXPECT_EQ(told, 0);
}

TEST(Learning, StoresTheNumbersAndHasEverythingReadAgain)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    fillRestless(shell, 20, 12);
    const auto window = shell.open();
    bool settings = false;
    const auto subscription =
        window->book()->hub().subscribe([&](const Changes& changes) { settings = changes.settings; });
    window->action(QStringLiteral("roster.learn"))->trigger();
    EXPECT_TRUE(QTest::qWaitFor([&] { return settings; }, 60'000));
    EXPECT_TRUE(isSaid(*window, QStringLiteral("Learned from 20 lift line")));
    EXPECT_EQ(test::must(window->book()->readingParameters().all()).size(), 1U);
    EXPECT_FALSE(window->book()->history().canUndo());
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
}

TEST(Learning, StopsWhenAskedAndCanBeAskedForAgain)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    fillRestless(shell, 40, 16);
    const auto window = shell.open();
    window->action(QStringLiteral("roster.learn"))->trigger();
    window->action(QStringLiteral("view.cancel"))->trigger();
    EXPECT_TRUE(QTest::qWaitFor([&] { return isSaid(*window, QStringLiteral("Learning was stopped")); }));
    EXPECT_TRUE(window->action(QStringLiteral("roster.learn"))->isEnabled());
    EXPECT_TRUE(test::must(window->book()->readingParameters().all()).empty());
}

}  // namespace
}  // namespace steelyard
