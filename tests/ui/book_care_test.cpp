// What the window does when the book can't take a change, and that it never asks a coach to type twice what can be kept.
#include "tests/support/shell_book.h"
#include "tests/support/temp_book.h"
#include "ui/shell/roster_pane.h"

#include <QtCore/QFile>
#include <QtGui/QAction>
#include <QtWidgets/QLineEdit>

namespace steelyard {
namespace {

using test::must;

TEST(UndoMenu, NamesTheLastStepOfAnEarlierRunAndTakesItBackByItsKey)
{
    ShellBook shell({QStringLiteral("Bo Marrow"), QStringLiteral("Ada Fenwick")});
    const auto window = shell.open();
    const QAction* undo = window->action(QStringLiteral("edit.undo"));
    EXPECT_TRUE(undo->isEnabled());
    EXPECT_TRUE(undo->text().contains(window->book()->history().undoLabel())) << qPrintable(undo->text());
    EXPECT_FALSE(window->book()->history().undoLabel().isEmpty());
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(must(window->book()->athletes().all()).size(), 1U);
    EXPECT_TRUE(window->action(QStringLiteral("edit.redo"))->isEnabled());
}

class WindowOfADisplacedBook : public testing::Test {
protected:
    WindowOfADisplacedBook() : m_shell({QStringLiteral("Bo Marrow")}), m_window(m_shell.open())
    {
        m_elsewhere = m_shell.folder.filePath(QStringLiteral("elsewhere.steelyard"));
    }
    void move(bool away)
    {
        ASSERT_TRUE(QFile::rename(away ? m_shell.path() : m_elsewhere, away ? m_elsewhere : m_shell.path()));
    }
    std::size_t decisions()
    {
        return must(m_window->book()->decisions().of(*m_window->view()->roster()->chosen())).size();
    }
    ShellBook m_shell;
    std::unique_ptr<MainWindow> m_window;
    QString m_elsewhere;
};

TEST_F(WindowOfADisplacedBook, KeepsAReasonThatWasTypedUntilItCanBeStored)
{
    QTest::keyClick(m_window.get(), Qt::Key_D);
    QTest::keyClicks(m_window->focusWidget(), QStringLiteral("was ill"));
    auto* field = qobject_cast<QLineEdit*>(m_window->focusWidget());
    ASSERT_NE(field, nullptr);
    move(true);
    QTest::keyClick(field, Qt::Key_Return);
    ASSERT_EQ(m_shell.prompter.errors.size(), 1);
    EXPECT_TRUE(m_shell.prompter.errors.front().contains(QStringLiteral("moved, deleted or replaced")));
    EXPECT_EQ(decisions(), 0U);
    EXPECT_TRUE(field->isVisible());
    EXPECT_EQ(field->text(), QStringLiteral("was ill"));
    move(false);
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(decisions(), 1U);
}

TEST_F(WindowOfADisplacedBook, SavesACopyWithEverything)
{
    move(true);
    m_shell.prompter.path = m_shell.folder.filePath(QStringLiteral("copy.steelyard"));
    m_window->perform(QStringLiteral("book.copy"));
    EXPECT_EQ(m_shell.prompter.errors, QStringList());
    const auto copy = must(Book::open(m_shell.prompter.path, m_shell.clock));
    EXPECT_EQ(must(copy->athletes().all()).size(), 1U);
    EXPECT_TRUE(copy->history().canUndo());
}

TEST(SaveACopy, IsMadeBesideTheWindowAndNeverInPlaceOfTheBookItself)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    const auto window = shell.open();
    shell.prompter.path = shell.folder.filePath(QStringLiteral("copy.steelyard"));
    window->perform(QStringLiteral("book.copy"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
    EXPECT_EQ(must(must(Book::open(shell.prompter.path, shell.clock))->athletes().all()).size(), 1U);
    shell.prompter.path = shell.path();
    window->perform(QStringLiteral("book.copy"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
    ASSERT_EQ(shell.prompter.errors.size(), 1);
    EXPECT_TRUE(shell.prompter.errors.front().contains(QStringLiteral("is the book itself")));
}

TEST(SaveACopy, WorksForABookThatCanOnlyBeRead)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    const auto holder = must(Book::open(shell.path(), shell.clock));
    const auto window = shell.open();
    ASSERT_TRUE(window->book()->isReadOnly());
    shell.prompter.path = shell.folder.filePath(QStringLiteral("copy.steelyard"));
    window->perform(QStringLiteral("book.copy"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
    EXPECT_EQ(shell.prompter.errors, QStringList());
    EXPECT_EQ(must(must(Book::open(shell.prompter.path, shell.clock))->athletes().all()).size(), 1U);
}

}  // namespace
}  // namespace steelyard
