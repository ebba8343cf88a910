// The lock covers whatever the program shows, in whatever state it is met.
#include "tests/support/shell_book.h"
#include "tests/support/text_walk.h"
#include "ui/shell/lock_dialog.h"
#include "ui/shell/screen_lock.h"

#include <QtGui/QAction>
#include <QtWidgets/QApplication>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDialog>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QMainWindow>
#include <QtWidgets/QMenuBar>
#include <QtWidgets/QPushButton>

namespace steelyard {
namespace {

using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;

const QString kWords = QStringLiteral("twelve crooked gherkins");
const QStringList kNames{QStringLiteral("Zorblatt Quibblewick"), QStringLiteral("Bo Marrow")};

void setLock(QSettings& settings)
{
    LockSettings(settings).set(*LockSecret::of(*Passphrase::make(kWords)));
}

// Every text that a window in sight shows or would show on hovering.
QString visibleTexts()
{
    QStringList texts;
    for (QWidget* window : QApplication::topLevelWidgets()) {
        if (!window->isVisible()) continue;
        texts << window->windowTitle();
        for (QWidget* each : window->findChildren<QWidget*>()) {
            if (!each->isVisible()) continue;
            texts << each->toolTip() << each->accessibleName() << each->property("text").toString();
        }
    }
    return texts.join(u'\n');
}

bool namesAnybody()
{
    const QString texts = visibleTexts();
    return texts.contains(QStringLiteral("Quibblewick")) || texts.contains(QStringLiteral("Marrow"));
}

class ScreenLockTest : public testing::Test {
protected:
    QLineEdit* field(MainWindow& window)
    {
        return window.findChild<QWidget*>(QStringLiteral("lockCover"))
            ->findChild<QLineEdit*>(QStringLiteral("passphrase"));
    }
    void attempt(MainWindow& window, const QString& words)
    {
        field(window)->setText(words);
        QTest::keyClick(field(window), Qt::Key_Return);
        ASSERT_TRUE(QTest::qWaitFor([&] {
            return !window.screenLock().isLocked() || (window.isSettled() && field(window)->text().isEmpty());
        }));
    }
    ShellBook shell{kNames};
};

TEST_F(ScreenLockTest, ShowsNothingOfTheBookUntilThePassphraseIsTyped)
{
    setLock(shell.settings);
    auto window = std::make_unique<MainWindow>(MainServices{.reviewer = reviewByHand}, shell.prompter, shell.clock,
                                               shell.settings);
    ASSERT_TRUE(window->screenLock().isLocked());  // from the start
    ASSERT_TRUE(window->openBook(shell.path()));
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    ASSERT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
    EXPECT_FALSE(namesAnybody());
    EXPECT_FALSE(testing_support::paintedBy(*window).contains(QStringLiteral("Marrow")));
    EXPECT_FALSE(visibleTexts().contains(QStringLiteral("club")));
    EXPECT_FALSE(window->menuBar()->isVisible());
    attempt(*window, kWords);
    EXPECT_FALSE(window->screenLock().isLocked());
    EXPECT_TRUE(namesAnybody());
    EXPECT_TRUE(testing_support::paintedBy(*window).contains(QStringLiteral("Marrow")));
    EXPECT_TRUE(window->windowTitle().contains(QStringLiteral("club")));
    EXPECT_TRUE(window->menuBar()->isVisible());
}

TEST_F(ScreenLockTest, CoversOtherWindowsAndBringsThemBackAsTheyWere)
{
    setLock(shell.settings);
    const auto window = shell.open();
    window->screenLock().lock();
    attempt(*window, kWords);
    auto* dialog = new QDialog(window.get());
    dialog->setWindowTitle(QStringLiteral("Quibblewick's profile"));
    auto* half = new QLineEdit(QStringLiteral("half typed"), dialog);
    dialog->open();
    auto* beside = new QWidget(window.get(), Qt::Window);
    beside->setWindowTitle(QStringLiteral("Quibblewick beside"));
    beside->show();
    ASSERT_TRUE(dialog->isVisible());
    window->screenLock().lock();
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_FALSE(beside->isVisible());
    EXPECT_FALSE(visibleTexts().contains(QStringLiteral("Quibblewick")));
    attempt(*window, kWords);
    ASSERT_FALSE(window->screenLock().isLocked());
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(dialog->windowModality(), Qt::WindowModal);
    EXPECT_TRUE(beside->isVisible());
    EXPECT_EQ(half->text(), QStringLiteral("half typed"));
    dialog->close();
}

TEST_F(ScreenLockTest, KeepsAWindowThatOpensMeanwhileBehindTheCover)
{
    setLock(shell.settings);
    const auto window = shell.open();
    window->screenLock().lock();
    auto* late = new QDialog(window.get());
    late->setWindowTitle(QStringLiteral("Quibblewick could not be read"));
    late->open();
    EXPECT_TRUE(late->testAttribute(Qt::WA_DontShowOnScreen));
    EXPECT_TRUE(QTest::qWaitFor([&] { return !late->isVisible(); }));
    EXPECT_FALSE(visibleTexts().contains(QStringLiteral("Quibblewick")));
    attempt(*window, kWords);
    ASSERT_FALSE(window->screenLock().isLocked());
    EXPECT_TRUE(late->isVisible());
    EXPECT_FALSE(late->testAttribute(Qt::WA_DontShowOnScreen));
    late->close();
}

TEST_F(ScreenLockTest, PerformsNothingWhileLocked)
{
    setLock(shell.settings);
    const auto window = shell.open();
    window->screenLock().lock();
    const auto before = window->book()->athletes().all()->size();
    window->perform(QStringLiteral("roster.add"));
    window->perform(QStringLiteral("book.close"));
    window->action(QStringLiteral("book.close"))->trigger();
    EXPECT_NE(window->book(), nullptr);
    QTest::keyClick(window.get(), Qt::Key_F, Qt::ControlModifier);
    QTest::keyClick(window.get(), Qt::Key_F);
    EXPECT_EQ(window->book()->athletes().all()->size(), before);
    EXPECT_TRUE(window->screenLock().isLocked());
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
}

TEST_F(ScreenLockTest, KeepsWhatWasHalfTyped)
{
    setLock(shell.settings);
    const auto window = shell.open();
    attempt(*window, kWords);
    window->action(QStringLiteral("roster.search"))->trigger();
    auto* typing = qobject_cast<QLineEdit*>(window->focusWidget());
    ASSERT_NE(typing, nullptr);
    QTest::keyClicks(typing, QStringLiteral("Quib"));
    ASSERT_EQ(typing->text(), QStringLiteral("Quib"));
    window->screenLock().lock();
    attempt(*window, kWords);
    ASSERT_FALSE(window->screenLock().isLocked());
    EXPECT_EQ(typing->text(), QStringLiteral("Quib"));
    EXPECT_TRUE(typing->hasFocus());
}

TEST_F(ScreenLockTest, AsksForAPassphraseWhenNoneIsSetAndLocksOnceItIs)
{
    const auto window = shell.open();
    window->action(QStringLiteral("book.lock"))->trigger();
    EXPECT_FALSE(window->screenLock().isLocked());
    auto* dialog = window->findChild<LockDialog*>();
    ASSERT_NE(dialog, nullptr);
    EXPECT_FALSE(dialog->isModal());
    auto* fresh = dialog->findChild<QWidget*>(QStringLiteral("newPassphrase"));
    fresh->findChild<QLineEdit*>(QStringLiteral("passphrase"))->setText(kWords);
    fresh->findChild<QLineEdit*>(QStringLiteral("passphraseAgain"))->setText(kWords);
    dialog->findChild<QPushButton*>(QStringLiteral("setLock"))->click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return window->screenLock().isLocked(); }));
    EXPECT_FALSE(dialog->isVisible());
    attempt(*window, kWords);
    EXPECT_FALSE(window->screenLock().isLocked());
    shell.settings.sync();
    QFile kept(shell.settings.fileName());
    ASSERT_TRUE(kept.open(QIODevice::ReadOnly));
    EXPECT_FALSE(kept.readAll().contains("gherkins"));
}

TEST_F(ScreenLockTest, IsChangedAndTakenAwayOnlyByWhoKnowsThePassphrase)
{
    setLock(shell.settings);
    const auto window = shell.open();
    window->screenLock().lock();
    attempt(*window, kWords);
    window->action(QStringLiteral("book.lockSettings"))->trigger();
    auto* dialog = window->findChild<LockDialog*>();
    ASSERT_NE(dialog, nullptr);
    auto* present = dialog->findChild<QWidget*>(QStringLiteral("presentPassphrase"))
                        ->findChild<QLineEdit*>(QStringLiteral("passphrase"));
    auto* remove = dialog->findChild<QPushButton*>(QStringLiteral("removeLock"));
    remove->click();
    EXPECT_TRUE(window->screenLock().canLock());
    present->setText(QStringLiteral("twelve crooked cucumbers"));
    remove->click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return window->screenLock().kept().failures() == 1; }));
    EXPECT_TRUE(window->screenLock().canLock());
    ASSERT_TRUE(QTest::qWaitFor([&] { return present->isEnabled(); }));
    present->setText(kWords);
    remove->click();
    EXPECT_TRUE(QTest::qWaitFor([&] { return !window->screenLock().canLock(); }));
}

TEST_F(ScreenLockTest, KeepsTheMinutesThatAreChosen)
{
    const auto window = shell.open();
    window->action(QStringLiteral("book.lockSettings"))->trigger();
    auto* minutesField = window->findChild<LockDialog*>()->findChild<QComboBox*>(QStringLiteral("lockMinutes"));
    EXPECT_EQ(minutesField->currentData().toInt(), 10);
    minutesField->setCurrentIndex(minutesField->findData(2));
    EXPECT_EQ(LockSettings(shell.settings).minutes(), 2);
}

// A lock of its own on a bare window, with a clock that the test moves.
class TimedLock : public testing::Test {
protected:
    void SetUp() override
    {
        setLock(settings);
        window.setCentralWidget(lock().curtain());
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    }
    ScreenLock& lock()
    {
        if (!m_lock) m_lock = new ScreenLock(window, new QWidget, settings, jobs, [this] { return now; });
        return *m_lock;
    }
    // Runs a try to its end; whether it was looked at and right.
    bool check(const QString& words)
    {
        std::optional<bool> answer;
        lock().check(std::make_shared<Passphrase>(*Passphrase::make(words)), &window,
                     [&](bool right) { answer = right; });
        EXPECT_TRUE(QTest::qWaitFor([&] { return answer.has_value(); }));
        return answer.value_or(false);
    }

    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat};
    JobRunner jobs;
    milliseconds now{0};
    QMainWindow window;

private:
    ScreenLock* m_lock = nullptr;
};

TEST_F(TimedLock, LocksByItselfAfterTheMinutesAndNotBefore)
{
    lock().kept().setMinutes(5);
    now += minutes(5) - milliseconds(1);
    lock().lockIfIdle();
    EXPECT_FALSE(lock().isLocked());
    QTest::mouseMove(&window, QPoint(20, 20));
    QTest::keyClick(&window, Qt::Key_Shift);
    now += minutes(5) - milliseconds(1);
    lock().lockIfIdle();
    EXPECT_FALSE(lock().isLocked());
    now += milliseconds(1);
    lock().lockIfIdle();
    EXPECT_TRUE(lock().isLocked());
}

TEST_F(TimedLock, NeverLocksByItselfWhereThatIsNotWanted)
{
    lock().kept().setMinutes(0);
    now += std::chrono::hours(100);
    lock().lockIfIdle();
    EXPECT_FALSE(lock().isLocked());
}

TEST_F(TimedLock, SwallowsTheFirstKeyAfterASleepThatWasTooLong)
{
    auto* typing = new QLineEdit(lock().curtain()->findChild<QWidget*>());
    typing->show();
    typing->setFocus();
    lock().kept().setMinutes(5);
    now += std::chrono::hours(8);
    QTest::keyClick(window.windowHandle(), Qt::Key_A);
    EXPECT_TRUE(lock().isLocked());
    EXPECT_TRUE(typing->text().isEmpty());
}

TEST_F(TimedLock, LooksAtTheNextTryLaterAfterEachThatFailed)
{
    EXPECT_EQ(waitAfterFailures(0), seconds(0));
    EXPECT_EQ(waitAfterFailures(2), seconds(0));
    EXPECT_EQ(waitAfterFailures(3), seconds(2));
    EXPECT_EQ(waitAfterFailures(5), seconds(8));
    EXPECT_EQ(waitAfterFailures(1000), seconds(60));
    const QString wrong = QStringLiteral("twelve crooked cucumbers");
    for (int i = 0; i < 3; ++i) EXPECT_FALSE(check(wrong));
    EXPECT_EQ(lock().toWait(), seconds(2));
    EXPECT_FALSE(check(kWords));  // too soon, right or not
    now += seconds(2);
    EXPECT_EQ(lock().toWait(), seconds(0));
    EXPECT_FALSE(check(wrong));
    EXPECT_EQ(lock().toWait(), seconds(4));
    now += seconds(4);
    EXPECT_TRUE(check(kWords));
    EXPECT_EQ(lock().kept().failures(), 0);
}

TEST_F(TimedLock, CountsTriesOfTheRunBefore)
{
    lock().kept().setFailures(6);
    QMainWindow other;
    const ScreenLock next(other, new QWidget, settings, jobs, [this] { return now; });
    EXPECT_EQ(next.toWait(), seconds(16));
}

}  // namespace
}  // namespace steelyard
