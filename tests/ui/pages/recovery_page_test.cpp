// A window that is given a book that can't be opened: what it says, and that each way out leads somewhere.
#include "ui/pages/care/recovery_page.h"

#include "tests/support/shell_book.h"
#include "tests/support/temp_book.h"

#include <QtCore/QFile>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>

namespace steelyard {
namespace {

using test::fileBytes;
using test::must;

class Recovery : public testing::Test {
protected:
    Recovery() : m_shell({QStringLiteral("Bo Marrow"), QStringLiteral("Ada Fenwick")}) {}
    // Overwrites the beginning, as a program that wrote to the wrong file does.
    void damage()
    {
        QFile file(m_shell.path());
        ASSERT_TRUE(file.open(QIODevice::ReadWrite));
        file.write(QByteArray(40, 'x'));
    }
    void open(RecoveryServices services = {})
    {
        damage();
        m_damaged = fileBytes(m_shell.path());
        m_window = std::make_unique<MainWindow>(MainServices{.reviewer = reviewByHand, .recovery = std::move(services)},
                                                m_shell.prompter, m_shell.clock, m_shell.settings);
        m_window->show();
        EXPECT_FALSE(m_window->openBook(m_shell.path()));
        settle();
    }
    void settle()
    {
        EXPECT_TRUE(QTest::qWaitFor([&] { return m_window->isSettled(); }));
    }
    template <class Widget>
    Widget* find(const char* name)
    {
        auto* widget = m_window->findChild<Widget*>(QString::fromLatin1(name));
        EXPECT_NE(widget, nullptr) << name;
        return widget;
    }
    void press(const char* button)
    {
        QTest::mouseClick(find<QPushButton>(button), Qt::LeftButton);
        settle();
    }
    std::size_t lifters() const { return must(m_window->book()->athletes().all()).size(); }
    ShellBook m_shell;
    QByteArray m_damaged;
    std::unique_ptr<MainWindow> m_window;
};

TEST_F(Recovery, SaysWhatIsWrongAndThatNothingWasChanged)
{
    open();
    auto* page = m_window->findChild<RecoveryPage*>();
    ASSERT_TRUE(page->isVisible());
    EXPECT_TRUE(find<QLabel>("recoveryWrong")->text().contains(QStringLiteral("damaged at its beginning")));
    EXPECT_FALSE(find<QPushButton>("recoveryRestore")->isEnabled());
    EXPECT_TRUE(find<QPushButton>("recoveryLeave")->hasFocus() || !m_window->isActiveWindow())
        << "nothing is done by Enter";
    EXPECT_EQ(fileBytes(m_shell.path()), m_damaged);
    for (const QLabel* label : page->findChildren<QLabel*>())
        EXPECT_EQ(label->textFormat(), Qt::PlainText) << qPrintable(label->text());
}

TEST_F(Recovery, SavesWhatCanBeSavedIntoANewBookAndOpensIt)
{
    open();
    m_shell.prompter.path = m_shell.folder.filePath(QStringLiteral("saved.steelyard"));
    press("recoverySave");
    EXPECT_TRUE(find<QLabel>("recoveryResult")->text().contains(QStringLiteral("Lifters: 2 saved, none lost")))
        << qPrintable(find<QLabel>("recoveryResult")->text());
    EXPECT_EQ(fileBytes(m_shell.path()), m_damaged);
    press("recoveryOpen");
    ASSERT_NE(m_window->book(), nullptr);
    EXPECT_EQ(m_window->book()->path(), m_shell.prompter.path);
    EXPECT_EQ(lifters(), 2U);
}

TEST_F(Recovery, RestoresTheNewestGoodBackupThatItNames)
{
    const QString backup = m_shell.folder.filePath(QStringLiteral("backup.steelyard"));
    ASSERT_TRUE(QFile::copy(m_shell.path(), backup));
    open({.newestGoodBackup = [&](const QString& book, const Progress&) -> Result<std::optional<KnownBackup>> {
              EXPECT_EQ(book, m_shell.path());
              return KnownBackup{backup, QDateTime(QDate(2027, 2, 27), QTime(18, 10), Qt::UTC)};
          },
          .restore = [](const QString& book, const QString& from, const Progress&) -> Result<void> {
              EXPECT_TRUE(QFile::rename(book, book + QStringLiteral(".aside")));
              EXPECT_TRUE(QFile::copy(from, book));
              return {};
          }});
    EXPECT_TRUE(find<QLabel>("recoveryBackup")->text().contains(QStringLiteral("2027"))) << "names its day";
    press("recoveryRestore");
    ASSERT_NE(m_window->book(), nullptr);
    EXPECT_EQ(m_window->book()->path(), m_shell.path());
    EXPECT_EQ(lifters(), 2U);
}

TEST_F(Recovery, SaysWhenABackupCanNotBeRestored)
{
    open({.newestGoodBackup = [](const QString&, const Progress&) -> Result<std::optional<KnownBackup>> {
              return KnownBackup{QStringLiteral("gone"), QDateTime(QDate(2027, 2, 27), QTime(18, 10), Qt::UTC)};
          },
          .restore = [](const QString&, const QString&, const Progress&) -> Result<void> {
              return fail(ErrorCode::Storage, QStringLiteral("The disk is full, so nothing was changed."));
          }});
    press("recoveryRestore");
    EXPECT_EQ(m_window->book(), nullptr);
    EXPECT_TRUE(find<QLabel>("recoveryResult")->text().contains(QStringLiteral("disk is full")));
    EXPECT_TRUE(find<QPushButton>("recoverySave")->isEnabled());
}

// Only the pages that are read by opening it are whole.
TEST(BookDamagedInPlaces, IsFoundOutSoonAfterItIsOpenedAndClosed)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    QByteArray bytes = fileBytes(shell.path());
    qint64 page = 0;
    {
        const auto db = must(Database::openReader(shell.path()));
        page = must(db->integer("SELECT rootpage FROM sqlite_schema WHERE name = 'trial_look'")) - 1;
    }
    bytes.replace(page * 4096, 4096, QByteArray(4096, 'x'));
    QFile file(shell.path());
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
    file.close();
    MainWindow window(MainServices{.reviewer = reviewByHand}, shell.prompter, shell.clock, shell.settings);
    window.show();
    ASSERT_TRUE(window.openBook(shell.path()));
    EXPECT_TRUE(QTest::qWaitFor([&] { return window.isSettled(); }));
    EXPECT_EQ(window.book(), nullptr);
    EXPECT_TRUE(window.findChild<RecoveryPage*>()->isVisible());
    EXPECT_TRUE(window.findChild<QLabel*>(QStringLiteral("recoveryWrong"))
                    ->text()
                    .contains(QStringLiteral("damaged in places")));
}

TEST_F(Recovery, IsLeftByEscAndSaysOnTheFirstPageWhatWasWrong)
{
    open();
    QTest::keyClick(find<QPushButton>("recoveryLeave"), Qt::Key_Escape);
    EXPECT_FALSE(m_window->findChild<RecoveryPage*>()->isVisible());
    EXPECT_TRUE(find<QLabel>("firstRunMessage")->text().contains(QStringLiteral("damaged at its beginning")));
}

TEST_F(Recovery, OpensACopyElsewhereAndSaysWhenThatIsDamagedToo)
{
    open();
    m_shell.prompter.path = m_shell.folder.filePath(QStringLiteral("copy.steelyard"));
    press("recoveryCopy");
    EXPECT_EQ(fileBytes(m_shell.prompter.path), m_damaged);
    EXPECT_TRUE(m_window->findChild<RecoveryPage*>()->isVisible());
    EXPECT_TRUE(find<QLabel>("recoveryWrong")->text().contains(QStringLiteral("copy.steelyard")));
}

}  // namespace
}  // namespace steelyard
